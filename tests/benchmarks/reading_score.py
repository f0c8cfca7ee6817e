"""How many annotated messages are read exactly: `python -m tests.benchmarks.reading_score [FILE ...] [--all]`."""

import json
import re
import sys
from collections.abc import Iterator
from dataclasses import dataclass
from pathlib import Path
from typing import Any

from core.readings import Fact, Reading
from grammar import Message, read

GRAMMAR = Path(__file__).parents[1] / "grammar"


@dataclass(frozen=True)
class Score:
    """One message beside what it should be."""

    row: dict[str, Any]
    message: Message
    wrong: tuple[str, ...]
    """What is not as annotated."""
    silent: bool
    """True where a value that is not there was recorded as plain."""


def rows(path: Path) -> Iterator[dict[str, Any]]:
    """The rows of a file."""
    for line in path.read_text(encoding="utf-8").splitlines():
        if line.strip():
            yield json.loads(line)


def near(told: object, value: object, note: str) -> bool:
    """Two values agree within 0.5 %, converted metres within 1 %, a range anywhere between its ends."""
    if isinstance(told, int | float) and isinstance(value, int | float):
        if "any value from" in note:
            low, high = (float(word) for word in re.findall(r"any value from ([\d.]+) to ([\d.]*\d)", note)[0])
            if low <= told <= high:
                return True
        return abs(told - value) <= max(0.005 * abs(value), 1e-9) * (2 if "metres" in note else 1)
    return told == value or (value == "open" and told == 20e6)


def same_reading(reading: Reading, row: dict[str, Any], note: str) -> bool:
    """A reading is the annotated one."""
    leads = set(row["leads"]) if row.get("leads") else None
    mine = set(reading.leads) if reading.leads else None
    if leads is None and row["measure"] not in {"lead_ohms", "lead_volts"}:
        mine = None
    return reading.measure == row["measure"] and near(reading.value, row["value"], note) and mine == leads


def same_fact(fact: Fact, row: dict[str, Any], note: str) -> bool:
    """A fact is the annotated one."""
    names = ("device", "count", "unit", "lead", "role") if row["fact"] == "load" else ("lead", "role")
    value = list(fact.value) if isinstance(fact.value, tuple) else fact.value
    return (
        fact.fact == row["fact"] and near(value, row.get("value"), note) and all(getattr(fact, n) == row.get(n) for n in names)
    )


def score(row: dict[str, Any]) -> Score:
    """Reads one annotated message."""
    message = read(row["text"])
    extra, missing, wrong = _readings(message, row)
    wrong += [f"extra: {r.measure} {r.value} {r.leads}" for r in extra]
    wrong += [] if row["flag"] else [f"missing: {w}" for w in missing]
    facts, more = list(row["facts"]), []
    for fact in message.facts:
        match = next((w for w in facts if same_fact(fact, w, row["note"])), None)
        if match is None:
            more.append(fact)
        else:
            facts.remove(match)
    silent = (
        any(not r.assumed for r in extra) or any(f.fact != "symptom" for f in more) or any("plain, not" in w for w in wrong)
    )
    wrong += [f"extra: {fact}" for fact in more] + [f"missing: {w}" for w in facts]
    wrong += _asks(message, row) + _flags(message, row)
    return Score(row, message, tuple(wrong), silent and bool(wrong))


def _readings(message: Message, row: dict[str, Any]) -> tuple[list[Reading], list[dict[str, Any]], list[str]]:
    """Readings that are too many, those that are missing, and what is wrong with the others."""
    note, flag, wanted = row["note"], row["flag"], list(row["readings"])
    doubtful = flag and any(word in note for word in ("assumed:", "unclear:", "unread:"))
    extra, wrong = [], []
    for reading in message.readings:
        match = next((w for w in wanted if same_reading(reading, w, note)), None)
        if match is not None:
            wanted.remove(match)
            if reading.assumed and not flag and "assumed is right too" not in note:
                wrong.append(f"assumed: {reading.measure} {reading.value}")
            if flag and not reading.assumed and len(row["readings"]) == 1 and not _is_clear(reading, note):
                wrong.append(f"plain, not assumed: {reading.measure} {reading.value}")
        elif not (reading.assumed and doubtful) and not (
            ("everything else" in note or "lo demás" in note) and reading.value == "open"
        ):
            extra.append(reading)
    return extra, wanted, wrong


def _is_clear(reading: Reading, note: str) -> bool:
    """The doubt of the message is about something else than this reading."""
    return f"{reading.measure} is plain" in note or "plain or assumed" in note


def _asks(message: Message, row: dict[str, Any]) -> list[str]:
    asks = set(message.asks)
    may_correct = "may stand in asks too" in row["note"]
    right = asks == set(row["asks"]) or (may_correct and asks - {"correct"} == set(row["asks"]))
    return [] if right else [f"asks: {sorted(asks)}"]


def _flags(message: Message, row: dict[str, Any]) -> list[str]:
    """A doubtful message is flagged, a clear one is not."""
    if row["flag"]:
        flagged = message.unclear or message.unread or any(r.assumed for r in message.readings)
        return [] if flagged else ["not flagged"]
    wrong = [f"unclear: {[u.fragment for u in message.unclear]}"] if message.unclear else []
    told = message.unread and (row["readings"] or row["facts"])
    return [*wrong, f"unread: {message.unread}"] if told else wrong


def main() -> None:
    """Prints the wrong ones and the counts."""
    paths = [Path(a) for a in sys.argv[1:] if not a.startswith("-")] or [
        GRAMMAR / "field_messages.jsonl",
        GRAMMAR / "more_messages.jsonl",
    ]
    for path in paths:
        scores = [score(row) for row in rows(path)]
        for s in scores:
            if s.wrong:
                print(s.row["id"], "SILENT" if s.silent else "", repr(s.row["text"]), "|", "; ".join(s.wrong))
        right = sum(not s.wrong for s in scores)
        print(
            f"{path.name}: {right} of {len(scores)} exactly right ({right / len(scores):.1%}), {sum(s.silent for s in scores)} silent misreads"
        )


if __name__ == "__main__":
    main()
