"""What a place can have: live volts, ohms, and the slip that is likely where a value cannot be."""

from dataclasses import dataclass

from core.said import Said, say

OPEN_FROM_OHM = 20e6
"""Over the range of a hand meter; "over 20 M" is open. Common practice, no source. [ohm]"""
SECONDARY_TENS_OHM = 10.0
"""A 24 V secondary reads a few ohms at most; from here on it is doubted. Common practice, no source. [ohm]"""


@dataclass(frozen=True, slots=True)
class Live:
    """Volts of a place. Common practice, no source."""

    low: float
    """Least that a bare number counts as volts from. [V]"""
    high: float
    sure_to: float
    """Most that is recorded as said. [V]"""
    slip_low: float
    """From here to `slip_high` a value times ten is a usual one: a point set one place too far. [V]"""
    slip_high: float


LIVE = {
    "line": Live(90, 600, 700, 9.5, 60),
    "primary": Live(90, 600, 700, 9.5, 60),
    "secondary": Live(21.5, 32, 60, 2.15, 3.2),
    "control": Live(18, 32, 60, 2.15, 3.2),
    "load": Live(18, 32, 60, 2.15, 3.2),
    "coil": Live(21.5, 32, 60, 2.15, 3.2),
    "fuse": Live(20, 32, 60, 2.15, 2.9),
}
MOST = {"V": 1000.0, "A": 50.0, "ohm": 1e12}
"""Beyond this nothing is a reading of ours, whatever the place."""


def fits_live(place: str, value: float) -> bool:
    """
    A bare number at a place fits a live reading.

    >>> fits_live("primary", 118), fits_live("secondary", 2.4)
    (True, False)
    """
    return place in LIVE and LIVE[place].low <= value <= LIVE[place].high


SUPPLIES_V = (120.0, 208.0, 240.0, 277.0, 480.0)
"""The usual supplies. ANSI C84.1, from memory. [V]"""
GHOST_OF_480_V = 40.0
"""From here on low volts of a line are a ghost rather than a slip. Common practice, no source. [V]"""
FAR_OFF = 0.25
"""A line this far off its nominal is doubted where two digits changed places would explain it. Common practice, no source."""
NEAR = 0.1
"""A line this near to its nominal is the usual one: ANSI C84.1, the range of the utility, from memory."""


def is_usual_supply(volts: float) -> bool:
    """Near a usual supply: only then does a point look misplaced. Any other low value may be a ghost, and is recorded as said."""
    return any(abs(volts - supply) <= 0.1 * supply for supply in SUPPLIES_V)


def swapped(volts: float, nominal: float) -> float | None:
    """
    The volts near the nominal that two neighbouring digits make which changed places, or None.

    Args:
        volts: As said. [V]
        nominal: Of the supply. [V]

    Returns:
        The likely volts.

    >>> swapped(181, 120), swapped(240, 120), swapped(96, 120)
    (118.0, None, None)
    """
    if abs(volts / nominal - 1.0) < FAR_OFF or is_usual_supply(volts) or volts != int(volts):
        return None
    digits = str(int(volts))
    made = [float(digits[:i] + digits[i + 1] + digits[i] + digits[i + 2 :]) for i in range(len(digits) - 1)]
    return next((other for other in made if abs(other / nominal - 1.0) <= NEAR), None)


@dataclass(frozen=True, slots=True)
class Slip:
    """Why a value cannot be, and what was likely meant."""

    value: float
    """The likely one, in the same unit; the value itself where only its place is in doubt."""
    question: Said


def slip(place: str, unit: str, value: float) -> Slip | None:
    """
    The likely slip in a value that the place cannot have, or None where it is recorded as said.

    Args:
        place: A place of `binding/places.py`.
        unit: V, A or ohm.
        value: As said. [unit]

    Returns:
        The slip, or None.

    >>> slip("secondary", "V", 246).value, slip("primary", "V", 11.8).value, slip("secondary", "V", 24.6)
    (24.6, 118.0, None)
    """
    if value < 0:
        return Slip(
            -value, say("{value:g} {unit} has a minus. Did you mean {likely:g} {unit}?", value=value, unit=unit, likely=-value)
        )
    if value > MOST[unit]:
        return Slip(value, say("{value:g} {unit} is more than this circuit can have. Read it again?", value=value, unit=unit))
    if unit != "V" or place not in LIVE:
        return None
    live = LIVE[place]
    is_line = place in {"primary", "line"}
    if (
        live.slip_low <= value <= live.slip_high
        and live.low <= value * 10 <= live.high
        and (not is_line or is_usual_supply(value * 10))
        and not (place == "line" and value > GHOST_OF_480_V)
    ):
        likely = round(value * 10, 6)
    elif value > live.sure_to and live.low <= value / 10 <= live.high:
        likely = round(value / 10, 6)
    elif value > live.sure_to or (is_line and fits_live("secondary", value)):
        return Slip(value, say("{value:g} V can't be there. Wrong place, or swapped windings?", value=value))
    else:
        return None
    return Slip(likely, say("{value:g} V can't be there. Did you mean {likely:g} V?", value=value, likely=likely))
