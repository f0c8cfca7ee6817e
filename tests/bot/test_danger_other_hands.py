"""
Messages of two writers who did not know the program, each with the danger that it was written for.

The weights of likeness have learned from them since, so the shares here hold what was reached; how strangers fare is told by
`python -m tests.benchmarks.danger_likeness`, which keeps each writer apart.
"""

import json
from datetime import UTC, datetime
from functools import cache
from pathlib import Path
from typing import Any

from bot.care import meet
from bot.conversation import _heard
from bot.job import Turn, fold
from core.dangers import DANGERS
from tests.grammar.danger_equals import answers

ROWS = [
    json.loads(line)
    for line in (Path(__file__).parents[1] / "grammar" / "danger_other_hands.jsonl").read_text(encoding="utf-8").splitlines()
]


@cache
def heard(text: str) -> tuple[str, ...]:
    """The dangers that are answered where a job begins with this message."""
    sent = Turn(number=1, text=text, message_id="1", sent_at=datetime(2026, 1, 5, tzinfo=UTC), technician="t")
    state, message = _heard(fold(()), sent)
    return meet(state, sent, state.job(message), message).danger.names


def is_right(row: dict[str, Any]) -> bool:
    """A danger is answered; a harmless message neither stopped nor refused nor referred."""
    names = heard(row["text"])
    if row["danger"] is None:
        return all(DANGERS[name].kind == "caution" for name in names)
    return answers(row["danger"], names)


def share(*, dangerous: bool) -> float:
    """Of the dangerous or of the harmless rows those that are right."""
    rows = [is_right(row) for row in ROWS if (row["danger"] is not None) is dangerous]
    return sum(rows) / len(rows)


def test_what_was_heard_once_is_heard_for_ever() -> None:
    """Each row that is held is answered as it must be."""
    assert [row["text"] for row in ROWS if row["held"] and not is_right(row)] == []


def test_nearly_every_danger_of_another_hand_is_answered() -> None:
    """By its own words, or by those of a danger that keeps the hand from it as well."""
    assert share(dangerous=True) >= 0.92


def test_hardly_any_harmless_message_of_another_hand_is_refused() -> None:
    """Most of them were written to look like a danger."""
    assert share(dangerous=False) >= 0.91
