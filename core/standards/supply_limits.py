"""By which limits a supply is called out of its limits. Those of the service in law are narrower; a test holds the two together."""

from typing import Final

from core.standards.source import COMMON_PRACTICE

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
