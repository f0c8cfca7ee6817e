"""What stands no more once something was put right."""

import pytest

from core.diagnosis import diagnose
from core.measures import MEASURES
from core.readings import Job, Reading
from core.repairs import REPAIRS, made_history, still_true


def read(**values: float | str) -> tuple[Reading, ...]:
    """Readings in order."""
    return tuple(Reading(measure=name, value=value) for name, value in values.items())


@pytest.mark.parametrize("what", REPAIRS)
def test_a_repair_beside_the_transformer_leaves_its_insulation_standing(what: str) -> None:
    """A new fuse changes no winding; and only measures that exist are named."""
    gone = made_history([what])

    assert gone <= set(MEASURES)
    assert not gone & {"primary_secondary_ohms", "primary_ground_ohms", "secondary_ground_ohms", "secondary_ohms"}


def test_volts_behind_an_open_fuse_say_that_it_is_open_no_more() -> None:
    """Kirchhoff: no current, no volts over a load; a ghost stays under it."""
    assert [r.measure for r in still_true(read(fuse_ohms="open", control_volts=25.8))] == ["control_volts"]
    assert [r.measure for r in still_true(read(fuse_ohms="open", control_volts=6.0))] == ["fuse_ohms", "control_volts"]


def test_an_open_read_after_the_volts_stands() -> None:
    """The later reading is the truth of now."""
    assert [r.measure for r in still_true(read(control_volts=25.8, fuse_ohms="open"))] == ["control_volts", "fuse_ohms"]


def test_a_live_secondary_says_nothing_of_what_hangs_behind_it() -> None:
    """The fuse may well be open."""
    assert [r.measure for r in still_true(read(fuse_ohms="open", secondary_volts=26.0))] == ["fuse_ohms", "secondary_volts"]


def test_a_fuse_that_was_replaced_decides_no_more() -> None:
    """R to C live again: nothing is open there."""
    before = Job(readings=read(primary_volts=120.0, secondary_volts=26.4, control_volts=0.0, fuse_ohms="open"))
    after = Job(readings=read(primary_volts=120.0, secondary_volts=26.4, fuse_ohms="open", control_volts=26.0))
    first, second = diagnose(before).verdict, diagnose(after).verdict

    assert first is not None
    assert first.finding == "protection_open"
    assert second is not None
    assert second.finding == "healthy"


def test_a_primary_read_open_by_mistake_is_forgotten_once_the_secondary_lives() -> None:
    """A dead winding makes no volts."""
    verdict = diagnose(
        Job(readings=read(primary_ohms="open", primary_volts=119.0, secondary_volts=26.5, control_volts=26.3))
    ).verdict

    assert verdict is not None
    assert verdict.transformer != "bad"
