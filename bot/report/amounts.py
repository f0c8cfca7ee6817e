"""Numbers as they stand in a report."""

from typing import Final

from core.readings import OPEN, Value
from core.said import Said, say

SIGNS: Final = {"ohm": "Ω", "degC": "°C", "AWG": "AWG"}
OVER_RANGE: Final = "OL"
"""What the meter shows of a resistance over its range, in every language."""
_MEGA, _KILO = 1e6, 1e3


def amount(value: Value, unit: str) -> str:
    """
    A value with its unit.

    Args:
        value: A number, or `"open"`.
        unit: A unit of the contract.

    >>> amount(2200.0, "ohm"), amount(24.6, "V"), amount("open", "ohm")
    ('2.2 kΩ', '24.6 V', 'OL')
    """
    if value == OPEN:
        return OVER_RANGE
    number = float(value)
    sign = SIGNS.get(unit, unit)
    if unit == "ohm" and abs(number) >= _MEGA:
        return f"{number / _MEGA:.9g} M{sign}"
    if unit == "ohm" and abs(number) >= _KILO:
        return f"{number / _KILO:.9g} k{sign}"
    return f"{number:.9g} {sign}"


def rounded(value: float, unit: str) -> str:
    """
    A computed value with its unit, to three figures and at most two places.

    Args:
        value: A number in the unit.
        unit: A unit of the contract.

    >>> rounded(26.7431, "V"), rounded(0.0153, "V"), rounded(1234567.0, "ohm")
    ('26.7 V', '0.02 V', '1.23 MΩ')
    """
    return amount(round(float(f"{value:.3g}"), 2), unit)


def percent(probability: float) -> Said:
    """
    A probability that never claims to be certain.

    Args:
        probability: 0 to 1.

    >>> str(percent(0.9996)), str(percent(0.87)), str(percent(0.0003))
    ('over 99 %', '87 %', 'under 1 %')
    """
    if probability >= 0.995:
        return say("over 99 %")
    return say("{percent:.0f} %", percent=100 * probability) if probability >= 0.005 else say("under 1 %")
