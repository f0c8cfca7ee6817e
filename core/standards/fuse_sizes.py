"""The sizes that fuses are made in, and what a fuse carries for how long."""

from typing import Final

from core.said import say
from core.standards.rule import Rule
from core.standards.source import COMMON_PRACTICE, Source

NEC_SOURCE: Final = Source("NEC", "240.6(A)", "as a code Q&A of 2019 gives it")
BEHAVIOUR: Final = Source(
    "UL/CSA 248-14", "carries 100 %, opens at 135 % within 1 h, at 200 % within 2 min", "as a fuse guide quotes it"
)

NEC_STANDARD_A: Final = (1.0, 3.0, 6.0, 10.0, 15.0, 20.0, 25.0, 30.0, 35.0, 40.0, 45.0, 50.0, 60.0)
"""The small end of the standard ratings; other sizes are allowed, not standard."""

TIME_DELAY_A: Final = (
    0.1, 0.125, 0.15, 0.2, 0.25, 0.3, 0.4, 0.5, 0.6, 0.75, 0.8, 1.0, 1.125, 1.25, 1.4, 1.5, 1.6, 1.8, 2.0, 2.25, 2.5, 2.8, 3.0,
    3.2, 3.5, 4.0, 4.5, 5.0, 5.6, 6.0, 6.25, 7.0, 7.5, 8.0, 9.0, 10.0, 12.0, 15.0, 17.5, 20.0, 25.0, 30.0,
)  # fmt: skip
"""Small time-delay sizes. 2.5 A and up as in a public fuse table, those below common practice."""

COMMON_LOW_VOLTAGE_A: Final = (0.5, 0.75, 1.0, 1.25, 1.5, 2.0, 2.5, 3.0, 4.0, 5.0)
"""What is in the truck for the 24 V side. Common practice, no source."""

CARRIES_FOR_AN_HOUR: Final = 1.35
LOADED_TO: Final = 0.75
"""Share of its rating that a fuse is loaded to for good. Common practice, no source."""

FUSE_BEHAVIOUR: Final = Rule(
    says=say("135 % for an hour: UL 248-14"),
    source=BEHAVIOUR,
    limits="UL fuses up to 30 A; IEC fuses carry their rating for good and open at other multiples.",
)
FUSE_LOADING: Final = Rule(
    says=say("fuse at 75 %: common practice"),
    source=COMMON_PRACTICE,
    limits="Steady load; time delay rides through the inrush.",
)


FUSE_TYPES_V: Final = (250.0, 600.0)
"""Volts that small fuses for the line side are made for; the next one up is taken. Common practice, no source."""


def fuse_type_v(supply_v: float) -> float:
    """The volts that a line-side fuse must be made for [V]."""
    return next((volts for volts in FUSE_TYPES_V if supply_v <= volts), FUSE_TYPES_V[-1])


def at_most(ceiling_a: float, sizes_a: tuple[float, ...] = TIME_DELAY_A) -> float | None:
    """
    Largest size not above a ceiling.

    Args:
        ceiling_a: Ceiling. [A]
        sizes_a: Sizes to choose from. [A]

    Returns:
        Size, or None below the smallest. [A]

    >>> at_most(0.4375)
    0.4
    """
    return max((size for size in sizes_a if size <= ceiling_a + 1e-9), default=None)


def at_least(need_a: float, sizes_a: tuple[float, ...] = TIME_DELAY_A) -> float | None:
    """Smallest size not under a need, or None above the largest [A]."""
    return min((size for size in sizes_a if size >= need_a - 1e-9), default=None)
