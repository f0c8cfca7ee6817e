"""How big an unmarked unit is."""

import pytest

from core.circuit.windings import RATINGS_VA, typical_unit
from core.leads import estimate_va
from core.leads.estimate_va import likely_range
from core.readings import Fact, Job, Reading


def unmarked(va: float, tap_v: float = 120.0) -> Job:
    """A middling unit of that size on the bench."""
    unit = typical_unit(va, tap_v)
    return Job(
        readings=(
            Reading(measure="primary_ohms", value=round(unit.primary_ohm[1], 1)),
            Reading(measure="secondary_ohms", value=round(unit.secondary_ohm[1], 2)),
        ),
        facts=(Fact(fact="tap_volts", value=tap_v),),
    )


@pytest.mark.parametrize("va", RATINGS_VA)
def test_the_low_end_is_never_above_a_middling_unit(va: float) -> None:
    """Who loads it to the low end does not overload it."""
    line = next(str(line) for line in estimate_va(unmarked(va)).lines if "Don't load" in str(line))

    assert float(line.split()[4]) <= va


def test_a_bigger_core_says_a_bigger_unit() -> None:
    """Width, height and stack."""
    small = Job(facts=(Fact(fact="core_inches", value=(2.25, 1.9, 0.9)),))
    big = Job(facts=(Fact(fact="core_inches", value=(3.4, 2.8, 1.6)),))

    assert str(estimate_va(small).lines[0]) != str(estimate_va(big).lines[0])


def test_nothing_read_asks_for_ohms() -> None:
    """No guess without a reading."""
    assert estimate_va(Job()).next_test.measure == "secondary_ohms"


def test_a_range_is_the_shortest_that_holds_four_fifths() -> None:
    """Not wider than needed."""
    assert likely_range({20.0: 0.0, 30.0: 0.1, 40.0: 0.5, 50.0: 0.35, 60.0: 0.05}) == (40.0, 50.0, 0.85)
