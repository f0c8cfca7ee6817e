"""How a hand meter reads ohms between two free leads, as far as a map of leads needs it."""

import math
from typing import Final

from core.standards.source import COMMON_PRACTICE, Source

LEAD_SOURCE: Final = Source(
    "multimeter manuals, resistance measurement", note="found: test leads add 0.2 to 0.5 ohm unless nulled"
)
ACCURACY_SOURCE: Final = COMMON_PRACTICE
TEST_LEADS_OHM: Final = (0.25, 0.20)
"""Mean and standard deviation of what the test leads add to every reading: some meters are nulled, some are not. [ohm]"""
SHARE_OF_READING: Final = 0.005
"""Of one reading to another of the same meter in the same minutes: what its gain is off by is in all of them."""
COUNTS_OHM: Final = 0.09
"""Standard deviation of the last digits. [ohm]"""
WHOLE_OHM: Final = 0.20
"""More of it where a value came without decimals. [ohm]"""
MOST_OHM: Final = 3000.0
_DECADES: Final = math.log(MOST_OHM / 0.1)


def spread(ohm: float) -> float:
    """
    Standard deviation of one reading.

    Args:
        ohm: As read. [ohm]

    Returns:
        Its spread, test leads not counted. [ohm]

    >>> round(spread(20.4), 2)
    0.14
    """
    counts = math.hypot(COUNTS_OHM, WHOLE_OHM) if ohm >= 10.0 and ohm == int(ohm) else COUNTS_OHM
    return math.hypot(SHARE_OF_READING * ohm, counts)


def slip_density(ohm: float) -> float:
    """
    Probability density of a reading that is a slip: any decade as likely.

    Args:
        ohm: As read. [ohm]

    Returns:
        The density. [1/ohm]
    """
    return 1.0 / (max(ohm, 0.1) * _DECADES)
