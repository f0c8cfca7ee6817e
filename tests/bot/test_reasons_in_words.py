"""A reason is told by what a sound unit would read: that is what an apprentice can check."""

import pytest

from bot.wording.catalog import catalog
from bot.wording.verdict import why_lines
from core.advice import Ranked, Reason, Verdict
from core.readings import OPEN, Reading


def told(measure: str, value: float | str, good: tuple[float | None, float | None], speaks: str = "for") -> list[str]:
    """The lines of a verdict with one reason."""
    reading = Reading(measure=measure, value=value)
    reason = Reason(reading=reading, low=0.0, high=0.4, good_low=good[0], good_high=good[1], speaks=speaks)
    verdict = Verdict(
        finding="primary_open",
        confidence=0.99,
        settled=True,
        transformer="bad",
        ranked=(Ranked(finding="primary_open", probability=0.99),),
        reasons=(reason,),
    )
    words = catalog("en")
    return [words.tell(line) for line in why_lines(verdict)]


@pytest.mark.parametrize(
    ("measure", "value", "good", "line"),
    [
        ("secondary_volts", 0.0, (24.1, 28.42), "Why: secondary 0 V; good is 24.1 V to 28.4 V"),
        ("primary_ohms", OPEN, (4.95, 42.3), "Why: primary open; good is 5 Ω to 42.3 Ω"),
        ("secondary_ground_ohms", 12.0, (None, None), "Why: secondary–core 12 Ω; good is open"),
        ("secondary_amps", 3.1, (0.02, 1.41), "Why: secondary 3.1 A; good is 1.4 A at most"),
        ("load_ohms", 0.3, (3.2, None), "Why: R–C into the load 0.3 Ω; good is 3.2 Ω or more"),
        ("primary_volts", 118.0, (110.0, 126.0), "Why: primary 118 V is good"),
        ("fuse_ohms", 0.1, (0.2, 0.6), "Why: fuse 0.1 Ω is good"),
    ],
)
def test_a_reason_sets_the_reading_beside_what_is_good(
    measure: str, value: float | str, good: tuple[float | None, float | None], line: str
) -> None:
    """Out of the band the band is named; inside it the reading is called good."""
    lines = told(measure, value, good)

    assert lines == [line]


def test_a_reading_that_any_sound_unit_could_show_convinces_nobody() -> None:
    """A primary of 30 ohm beside a band of 5 to 400 is left out."""
    lines = told("primary_ohms", 30.0, (5.0, 400.0))

    assert lines == []


def test_what_speaks_against_is_set_beside_what_the_finding_would_read() -> None:
    """The misfit is the one line that names the finding's own band."""
    lines = told("secondary_volts", 25.0, (24.0, 28.0), speaks="against")

    assert lines == ["Against it: secondary 25 V; it would read 0.4 V at most"]
