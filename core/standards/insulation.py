"""Insulation resistance: the test voltage for a circuit, and what it must read."""

from dataclasses import dataclass
from typing import Final

from core.standards.source import Source

SOURCE: Final = Source("ANSI/NETA MTS-2019", "table 100.1")
ONE_MEGOHM: Final = Source("the one-megohm rule", "1 megohm per 1000 V of working voltage, 1 megohm at least")
WIRING: Final = Source("ANSI/NETA", "switchgear section, control wiring")
"""Control wiring is tested at 500 V DC (300 V cable) or 1000 V DC (600 V cable), solid-state parts disconnected first."""


@dataclass(frozen=True, slots=True, kw_only=True)
class InsulationTest:
    """One row: equipment up to a rating."""

    rating_v: float
    test_v: float
    """DC. [V]"""
    least_ohm: float


INSULATION_TESTS: Final = (
    InsulationTest(rating_v=250.0, test_v=500.0, least_ohm=25e6),
    InsulationTest(rating_v=600.0, test_v=1000.0, least_ohm=100e6),
    InsulationTest(rating_v=1000.0, test_v=1000.0, least_ohm=100e6),
)
"""Source: `SOURCE`."""


def insulation_test(working_v: float) -> InsulationTest:
    """
    How to test the insulation of a winding.

    Args:
        working_v: What the winding works at. [V]

    Returns:
        The first row whose rating covers it.

    Raises:
        ValueError: Over 1000 V the table goes on, and this house does not.

    Source:
        ANSI/NETA MTS-2019 table 100.1.

    >>> insulation_test(240).test_v
    500.0
    """
    for row in INSULATION_TESTS:
        if working_v <= row.rating_v:
            return row
    raise ValueError(f"no insulation test for {working_v} V: the table here ends at 1000 V")


def least_insulation_ohm(working_v: float) -> float:
    """
    The floor below which insulation is bad whatever the table asks of new equipment.

    Args:
        working_v: What the winding works at. [V]

    Returns:
        Insulation resistance. [ohm]

    Source:
        The one-megohm rule.

    >>> least_insulation_ohm(480)
    1000000.0
    """
    return 1e6 * max(1.0, working_v / 1000.0)
