"""
Whole calls as files: each message with what it is to come out as, whatever the wording.

A line `> TEXT` is a message. The lines under it say what is expected: `read:` the readings, `told:` the facts, `ask:` the asks, `right:` what was
put right, `find:` the finding, `unit:` what is thought of the transformer, `next:` the next test, `unread:` the fragments that may be left.
What a message says nothing of has to be empty, but for finding, transformer and next test. A `(?)` behind a reading: it is a guess.
`asked:` and `thought:` fix what the reply asks for and thinks, so that the next message is read alike whatever the diagnosis prefers.
"""

from dataclasses import dataclass, field
from pathlib import Path
from typing import Any

from core.readings import FACTS

CALLS = Path(__file__).with_name("calls")


@dataclass(frozen=True, slots=True)
class Message:
    """One message of a call, and what is expected of it."""

    number: int
    text: str
    expected: dict[str, str] = field(default_factory=dict)


def messages(path: Path) -> list[Message]:
    """The messages of a file, in order."""
    found: list[Message] = []
    for line in path.read_text(encoding="utf-8").splitlines():
        if line.startswith("> "):
            found.append(Message(len(found) + 1, line[2:]))
        elif line.strip() and not line.startswith("#"):
            name, _, value = line.strip().partition(":")
            found[-1].expected[name] = value.strip()
    return found


def _reading(row: dict[str, Any]) -> str:
    leads = " ".join(sorted(row["leads"])) + " " if row["leads"] else ""
    value = row["value"] if isinstance(row["value"], str) else f"{row['value']:g}"
    return f"{row['measure']} {leads}{value}{' (?)' if row['assumed'] else ''}"


def _fact(row: dict[str, Any]) -> str:
    value = row["value"]
    shown = (
        "/".join(f"{v:g}" for v in value)
        if isinstance(value, list)
        else f"{value:g}"
        if isinstance(value, float | int)
        else str(value)
    )
    if row["fact"] == "load":
        return f"load {row['count']} x {row['device']} {shown}"
    return f"{row['fact']} {shown}"


def outcome(record: dict[str, Any], renewed: tuple[str, ...], *, is_new: bool) -> dict[str, str]:
    """What came out of a message, as a file writes it."""
    verdict = record["verdict"] or {}
    return {
        "read": ", ".join(sorted(map(_reading, record["readings"]))),
        "told": ", ".join(sorted(map(_fact, record["facts"]))),
        "ask": ", ".join(sorted(record["asks"])),
        "right": ", ".join(sorted((*renewed, *(("transformer",) if is_new else ())))),
        "unread": ", ".join([*record["unread"], *(row["fragment"] for row in record["unclear"])]),
        "find": verdict.get("finding", ""),
        "unit": verdict.get("transformer", ""),
        "next": (record["next_test"] or {}).get("fact") or (record["next_test"] or {}).get("measure", ""),
    }


def fixed(message: Message, talk: dict[str, Any]) -> dict[str, Any]:
    """What a reply leaves for the next message, with what the file fixes of it."""
    name, *leads = message.expected.get("asked", "").split() or [""]
    finding, _, transformer = message.expected.get("thought", "").partition(" ")
    is_fact = name in FACTS
    return {
        **talk,
        "asked": [name, leads or None] if name and not is_fact else None,
        "asked_fact": name if is_fact else None,
        **({"finding": finding, "transformer": transformer} if finding else {}),
    }


ONLY_WHERE_SAID = frozenset({"find", "unit", "next"})
"""What is looked at only where a file speaks of it."""


def wrong(message: Message, came: dict[str, str]) -> list[str]:
    """Where the outcome of a message is not what its file expects."""
    rows = [
        (name, message.expected.get(name, ""), value)
        for name, value in came.items()
        if name in message.expected or name not in ONLY_WHERE_SAID
    ]
    return [
        f"{message.number} {message.text!r} {name}: {value or 'nothing'}, not {expected or 'nothing'}"
        for name, expected, value in rows
        if value != expected
    ]
