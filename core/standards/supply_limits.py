"""What a supply may be: the limits of the law that can be cited freely, and those by which a supply is called out of its limits here."""

from typing import Final

from core.standards.source import COMMON_PRACTICE, Source

SERVICE_SOURCE: Final = Source("COMAR 20.50.07.02", "service voltage limits, Maryland")
SERVICE_V: Final[dict[float, tuple[float, float]]] = {
    120.0: (114.0, 126.0),
    208.0: (197.0, 219.0),
    240.0: (216.0, 252.0),
    277.0: (249.0, 291.0),
    480.0: (432.0, 504.0),
}
"""Nominal: least and most at the service, from `SERVICE_SOURCE`; 240 V as the single voltage, not as 120/240 V. [V]"""

OUT_OF_LIMITS_SOURCE: Final = COMMON_PRACTICE
OUT_OF_LIMITS: Final = (0.90, 1.10)
"""Under and over these shares of nominal the supply itself is the finding."""
WORTH_A_WORD: Final = 0.95
"""Between the lower limit and this share it is worth a word, not a verdict."""


def is_out(volts: float, nominal_v: float) -> bool:
    """
    Whether the supply itself is the finding.

    Args:
        volts: Read at the line terminals. [V]
        nominal_v: What it should be. [V]

    Source:
        `OUT_OF_LIMITS_SOURCE`

    >>> is_out(107.0, 120.0), is_out(108.5, 120.0)
    (True, False)
    """
    low, high = OUT_OF_LIMITS
    return not low * nominal_v <= volts <= high * nominal_v
