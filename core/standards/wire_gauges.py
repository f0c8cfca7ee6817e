"""Copper wire: size by gauge, ohms by length and temperature."""

import math
from typing import Final

from core.said import say
from core.standards.rule import Rule
from core.standards.source import Source

GAUGE_SOURCE: Final = Source("ASTM B258", "diameter 0.005 in x 92^((36 - n)/39)", "from memory")
COPPER_SOURCE: Final = Source("IEC 60028 (1925)", "standard annealed copper, 1/58 ohm mm2/m at 20 degC")
TABLE_8: Final = Source("NEC Chapter 9", "Table 8, uncoated copper, DC, 75 degC", "edition not told by the copy that was read")
ZERO_OHM_SOURCE: Final = Source("MIL-DTL-28778A", "4.6.9")

RESISTIVITY_OHM_MM2_M: Final = 1.0 / 58.0
"""At 20 degC."""
ZERO_OHM_CELSIUS: Final = -234.5
"""Where the straight line of copper's resistance meets zero."""
STRANDED: Final = 1.0227
"""Ohms of seven strands to those of solid wire: mean of Table 8's 18, 16 and 14 AWG (1.0238, 1.0218, 1.0224)."""
WIRE_CELSIUS: Final = 75.0
"""What Table 8 is given at; control wire runs cooler, so the drop is on the safe side."""

THICKEST_AWG: Final = 10
THINNEST_AWG: Final = 26
SHORTEST_FT: Final = 1.0
LONGEST_FT: Final = 5000.0
CONTROL_GAUGES: Final = (24, 22, 20, 18, 16, 14, 12, 10)
"""Sizes to choose among, thinnest first."""

FEET_PER_METRE: Final = 1.0 / 0.3048
MM_PER_INCH: Final = 25.4

WIRE_OHMS: Final = Rule(
    says=say("wire: NEC Ch. 9 Table 8, ASTM B258"),
    source=TABLE_8,
    limits="Copper, 10 to 26 AWG; Table 8 itself starts at 18 AWG. DC ohms, which at these sizes are the 60 Hz ohms too.",
)


def diameter_mm(awg: float) -> float:
    """
    Diameter of a solid wire.

    Args:
        awg: Gauge number. [AWG]

    Returns:
        Diameter. [mm]

    Source:
        `GAUGE_SOURCE`

    >>> round(diameter_mm(18), 4)
    1.0237
    """
    return 0.005 * math.pow(92.0, (36.0 - awg) / 39.0) * MM_PER_INCH


def area_mm2(awg: float) -> float:
    """
    Cross-section of a solid wire.

    Args:
        awg: Gauge number. [AWG]

    Returns:
        Area. [mm2]

    >>> round(area_mm2(18), 4)
    0.823
    """
    return math.pi / 4.0 * diameter_mm(awg) ** 2


def warmed(ohms: float, from_celsius: float, to_celsius: float) -> float:
    """
    Ohms of a piece of copper at another temperature.

    Args:
        ohms: At the first temperature. [ohm]
        from_celsius: First temperature. [degC]
        to_celsius: Second temperature. [degC]

    Returns:
        Ohms at the second temperature. [ohm]

    Source:
        `ZERO_OHM_SOURCE`

    >>> round(warmed(29.23, 25, 5), 3)
    26.977
    """
    return ohms * (to_celsius - ZERO_OHM_CELSIUS) / (from_celsius - ZERO_OHM_CELSIUS)


def ohms_per_1000_ft(awg: float, celsius: float = WIRE_CELSIUS, *, stranded: bool = False) -> float:
    """
    Ohms of one conductor.

    Args:
        awg: Gauge number. [AWG]
        celsius: Temperature of the copper. [degC]
        stranded: Seven strands in place of a solid wire.

    Returns:
        Ohms of 1,000 ft, one way. [ohm]

    Source:
        `GAUGE_SOURCE`, `COPPER_SOURCE`; checked against `TABLE_8`

    >>> round(ohms_per_1000_ft(18, 20), 3)
    6.385
    """
    cold = RESISTIVITY_OHM_MM2_M / area_mm2(awg) * 1000.0 / FEET_PER_METRE
    return warmed(cold, 20.0, celsius) * (STRANDED if stranded else 1.0)
