"""The sizes that control transformers are sold in, the spare that is left, and what a change of supply does to one."""

from typing import Final

from core.said import say
from core.standards.rule import Rule
from core.standards.source import COMMON_PRACTICE, Source

SIZES_VA: Final = (20.0, 30.0, 40.0, 50.0, 60.0, 75.0, 100.0)
SELDOM_STOCKED_VA: Final = (30.0, 60.0)
SPARE: Final = 0.25
"""Of the steady load."""
PULL_IN_POWER_FACTOR: Final = 0.7
"""Of the sum while a coil pulls in. Common practice, no source."""
MULTI_TAP_V: Final = (120.0, 208.0, 240.0)
"""The taps that every multi-tap unit of the trade has. Common practice, no source."""
ON_TAP: Final = 0.02
"""A supply this near to the tap is on it."""
MOST_SUPPLY_V: Final = 600.0
"""Primary rating of a listed Class 2 unit (UL 1585 listing text)."""
LEAST_SUPPLY_V: Final = 20.0

FLUX_SOURCE: Final = Source("I. Kosow, Electric Machinery and Transformers", "Ex. 14-9, p. 500")
"""Volts and VA of a unit fall with the frequency."""

STANDARD_SIZES: Final = Rule(
    says=say("25 % spare: common practice"),
    source=COMMON_PRACTICE,
    limits="Steady load up to 80 VA; the largest inrush is checked apart.",
)
BY_LABEL: Final = Rule(
    says=say("by its label: NEC 110.3(B)"),
    source=Source("NEC", "110.3(B)", "from memory"),
    limits="Listed units, put in as their instructions say.",
)
FREQUENCY: Final = Rule(
    says=say("volts per hertz: Kosow Ex. 14-9"),
    source=FLUX_SOURCE,
    limits="Flux alone; the nameplate decides what a unit may run on.",
)


def next_size_va(load_va: float) -> float | None:
    """
    The size to buy for a steady load.

    Args:
        load_va: Sealed sum. [VA]

    Returns:
        Next size over the load with its spare, or None where that is over 100 VA. [VA]

    Source:
        Common practice.

    >>> next_size_va(34.0)
    50.0
    """
    need = load_va * (1.0 + SPARE) - 1e-9
    return next((size for size in SIZES_VA if size >= need), None)


def stocked_after(size_va: float) -> float | None:
    """The next size that is commonly stocked, where this one seldom is [VA]."""
    if size_va not in SELDOM_STOCKED_VA:
        return None
    return next(size for size in SIZES_VA if size > size_va and size not in SELDOM_STOCKED_VA)


def volts_at_hertz(rated_v: float, rated_hertz: float, hertz: float) -> float:
    """
    The most volts that keep the flux of a unit on another frequency.

    Args:
        rated_v: At its own frequency. [V]
        rated_hertz: Its own frequency. [Hz]
        hertz: The other. [Hz]

    Returns:
        Volts. [V]

    Source:
        `FLUX_SOURCE`

    >>> round(volts_at_hertz(220, 400, 60), 1)
    33.0
    """
    return rated_v * hertz / rated_hertz
