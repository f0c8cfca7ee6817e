"""Annotated field messages are read as a careful person reads them. All of them are invented."""

import json
from pathlib import Path

import pytest

from tests.benchmarks.reading_score import score

HERE = Path(__file__).parent
PUBLISHED = [json.loads(line) for line in (HERE / "field_messages.jsonl").read_text(encoding="utf-8").splitlines()]
MORE = [json.loads(line) for line in (HERE / "more_messages.jsonl").read_text(encoding="utf-8").splitlines()]
OTHERS = [json.loads(line) for line in (HERE / "other_hand_messages.jsonl").read_text(encoding="utf-8").splitlines()]
"""Written and annotated by somebody who knew the rules of the field and not the reading."""


@pytest.mark.parametrize("row", [*PUBLISHED, *MORE, *OTHERS], ids=lambda row: row["id"])
def test_a_message_is_read_exactly(row: dict) -> None:
    """All readings, facts and asks, none extra, doubtful where a careful reader doubts."""
    assert score(row).wrong == ()


@pytest.mark.parametrize(
    "row", [r for r in (*PUBLISHED, *MORE) if not r["flag"] and r["text"].isascii()], ids=lambda row: row["id"]
)
def test_capitals_change_nothing(row: dict) -> None:
    """The same message in capitals is never read as something else in silence."""
    shouted = score(row | {"text": row["text"].upper()})

    assert not shouted.silent, shouted.wrong
