"""What primaries and secondaries are made with: taps, wire, and how often. The priors of the map, as tables."""

from dataclasses import dataclass
from typing import Final

from core.standards.source import COMMON_PRACTICE, Source

SOURCE: Final = COMMON_PRACTICE
SERIES_PARALLEL: Final = Source("TM 5-6115-593-34", "paragraph 5-3")
"""A primary of two equal windings: in parallel for the lower volts, in series for twice as much."""


@dataclass(frozen=True, slots=True, kw_only=True)
class TapSet:
    """One primary: the volts of its taps, counted from common."""

    volts: tuple[float, ...]
    share: float
    """Of the primaries with this many leads. Common practice, no source."""


TAP_SETS: Final = (
    TapSet(volts=(120.0,), share=0.40),
    TapSet(volts=(240.0,), share=0.28),
    TapSet(volts=(208.0,), share=0.12),
    TapSet(volts=(277.0,), share=0.08),
    TapSet(volts=(480.0,), share=0.12),
    TapSet(volts=(208.0, 240.0), share=0.46),
    TapSet(volts=(120.0, 240.0), share=0.40),
    TapSet(volts=(240.0, 480.0), share=0.03),
    TapSet(volts=(120.0, 208.0), share=0.010),
    TapSet(volts=(120.0, 277.0), share=0.004),
    TapSet(volts=(277.0, 480.0), share=0.006),
    TapSet(volts=(120.0, 208.0, 240.0), share=0.70),
    TapSet(volts=(208.0, 240.0, 480.0), share=0.24),
    TapSet(volts=(120.0, 240.0, 480.0), share=0.04),
    TapSet(volts=(208.0, 240.0, 277.0), share=0.02),
    TapSet(volts=(120.0, 208.0, 240.0, 480.0), share=0.75),
    TapSet(volts=(120.0, 208.0, 240.0, 277.0), share=0.15),
    TapSet(volts=(208.0, 240.0, 277.0, 480.0), share=0.10),
    TapSet(volts=(120.0, 208.0, 240.0, 277.0, 480.0), share=1.0),
)
"""Every primary with taps that is met."""

HALVES: Final = (TapSet(volts=(120.0,), share=0.7), TapSet(volts=(240.0,), share=0.3))
"""A primary of two equal windings, each for these volts."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Wire:
    """How the wire goes on from the common end outward, as lognormal bands."""

    name: str
    share: float
    """Of the units. Common practice, no source."""
    thinner: tuple[float, float]
    """Mean and standard deviation of the power of (this tap's volts / first tap's volts) by which ohms per volt rise: 0 is one wire
    throughout, 1 is a wire sized for the current of each tap."""
    own: float
    """Standard deviation of each section's own ohms per volt, natural logarithm."""


WIRES: Final = (
    Wire(name="one wire", share=0.42, thinner=(0.0, 0.01), own=0.012),
    Wire(name="sized for each tap", share=0.46, thinner=(0.75, 0.40), own=0.12),
    Wire(name="any", share=0.12, thinner=(0.5, 0.4), own=0.25),
)
"""One wire throughout differs from section to section only by its turns. 20, 53 and 66.5 ohm from common to 120, 208 and 240 V are common practice: 0.17, 0.38 and 0.42 ohm per volt."""

BROAD_WIRE: Final = Wire(name="not asked", share=1.0, thinner=(0.4, 0.5), own=0.15)
"""All of them in one, where it makes no difference."""

LONGER_TURNS: Final = (0.15, 0.06)
"""Mean and standard deviation of the natural logarithm by which an outermost turn is longer than an innermost one."""

VA_MID: Final = 47.0
VA_SPREAD: Final = 0.42
"""Natural logarithm of the rating where none is told, as far apart as `core.circuit.windings.SHARE` has them. Common practice, no source."""
COMMON_SPREAD: Final = 0.24
"""Standard deviation of the natural logarithm by which both windings of one make lie above or below another's of the same rating: with
`OWN_SPREAD` that of `core.circuit.windings.OHM_SPREAD`. Common practice, no source."""
OWN_SPREAD: Final = 0.14
"""The same of each winding by itself: the copper loss is shared about evenly, the ratio of the two differs little. Common practice, no
source."""
HALVES_SPREAD: Final = 0.08
"""The same, between two halves meant to be equal."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Build:
    """How many windings of each side a unit has."""

    primaries: int
    secondaries: int
    share: float
    """Weight before any reading, among builds that explain all the leads. Common practice, no source."""


BUILDS: Final = (
    Build(primaries=1, secondaries=1, share=1.0),
    Build(primaries=2, secondaries=1, share=0.12),
    Build(primaries=1, secondaries=2, share=0.02),
    Build(primaries=2, secondaries=2, share=0.01),
    Build(primaries=1, secondaries=0, share=0.05),
    Build(primaries=2, secondaries=0, share=0.004),
    Build(primaries=0, secondaries=1, share=0.01),
)
"""A build without a secondary is one whose secondary nobody named."""

OPEN_SECTION: Final = 0.03
"""Weight of an open inside a winding. Common practice, no source."""
SLIP: Final = 0.03
"""Chance that one ohms reading is not what it says: a typo, wet fingers, the wrong lead. How sure a map is does not hang on it: see
`core.leads.sureness.ONE_WRONG`. Common practice, no source."""
MISSED_CONTACT: Final = 0.003
"""Chance that a sound pair is given as open."""
SAID_TOO_WIDELY: Final = 0.15
"""Chance that "the rest OL" also covers pairs along one winding that nobody read. Common practice, no source."""
