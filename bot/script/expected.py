"""What a conversation expects of a record, beside the words of the reply."""

from collections.abc import Callable, Mapping
from typing import Any

Record = Mapping[str, Any]


def _verdict(record: Record, words: list[str]) -> bool:
    verdict = record["verdict"]
    if verdict is None:
        return words == ["none"]
    settled = "settled" if verdict["settled"] else "open"
    return {verdict["finding"], verdict["transformer"], settled}.issuperset(words)


def _also(record: Record, words: list[str]) -> bool:
    return record["verdict"] is not None and set(words) <= set(record["verdict"]["also"])


def _next(record: Record, words: list[str]) -> bool:
    test = record["next_test"]
    if test is None:
        return words == ["none"]
    return words in ([test["measure"]], [test["measure"], *(test["leads"] or ())], [str(test.get("fact"))])


def _reading(record: Record, words: list[str]) -> bool:
    measure, value = words
    return any(r["measure"] == measure and _same(r["value"], value) for r in record["readings"])


def _same(told: object, value: str) -> bool:
    return told == value if isinstance(told, str) else told == float(value)


def _leads(record: Record, words: list[str]) -> bool:
    """`white common black 120`: each lead with its role, in whatever winding."""
    if record["leads"] is None:
        return words == ["none"]
    roles = {lead: role for winding in record["leads"]["windings"] for lead, role in winding["leads"].items()}
    return all(roles.get(lead) == role for lead, role in zip(words[::2], words[1::2], strict=True))


def _sizing(record: Record, words: list[str]) -> bool:
    name, value = words
    sizing = record["sizing"]
    return sizing is not None and (sizing[name] is None if value == "none" else sizing[name] == float(value))


def _listed(name: str) -> Callable[[Record, list[str]], bool]:
    """Every word stands in a list of the record; `none` is the empty list."""
    return lambda record, words: not record[name] if words == ["none"] else set(words) <= set(record[name])


def _named(name: str) -> Callable[[Record, list[str]], bool]:
    return lambda record, words: record[name] == (None if words == ["none"] else " ".join(words))


def _unread(record: Record, words: list[str]) -> bool:
    return not record["unread"] if words == ["none"] else " ".join(words) in record["unread"]


EXPECTATIONS: dict[str, Callable[[Record, list[str]], bool]] = {
    "verdict": _verdict,
    "also": _also,
    "next_test": _next,
    "reading": _reading,
    "leads": _leads,
    "sizing": _sizing,
    "caution": _listed("cautions"),
    "ask": _listed("asks"),
    "unread": _unread,
    "picture": _named("picture"),
    "document": _named("document"),
}
"""First word of an expectation -> whether a record meets the rest of it."""


def met(record: Record, expectation: str) -> bool:
    """
    Whether a record meets an expectation.

    Raises:
        KeyError: No expectation starts with that word.
        ValueError: The expectation lacks a word.
    """
    kind, *words = expectation.split()
    return EXPECTATIONS[kind](record, words)
