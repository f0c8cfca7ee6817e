"""
The legs of the control circuit, told by their terminals. Common practice, no source; the ohms of coils are those of small 24 V parts.

Each leg of a call ends in a coil to C. So a leg to C reads that coil, a leg to ground reads nothing unless C is bonded, and two legs
read nothing to each other but through their coils.
"""

from typing import Final

from core.advice import NextTest
from core.heard.across import CLOSED_TO_V, FULL_FROM_V
from core.heard.record import Heard
from core.heard.sides import DEAD_TO_V
from core.heard.spoken import Spoken
from core.readings import OPEN, Job
from core.said import Said, say

SHORT_BELOW_OHM: Final = 3.0
"""Below this a leg reads less than the coil of one contactor does. [ohm]"""
SURELY_BELOW_OHM: Final = 1.0
"""Below this no coil is left that could be it: all that 100 VA can carry reads more. [ohm]"""
COIL_TO_OHM: Final = 500.0
"""Up to here it can be a coil. [ohm]"""

ENDS_AT: Final[dict[str, Said]] = {
    "y": say("Condenser cable or contactor coil"),
    "w": say("Heat cable, gas valve or heat relay"),
    "g": say("Fan cable or fan relay"),
    "o": say("Cable or coil of the reversing valve"),
    "b": say("Cable or coil of the reversing valve"),
    "r": say("Thermostat cable, or what R feeds"),
}
"""Where each leg goes, and so what can be shorted on it."""
BOND: Final = Spoken(
    lines=(say("C to ground: many units bond C to the cabinet, that alone is no fault"),),
    next_test=NextTest(
        measure="secondary_ground_ohms",
        instruction=say("Power off, lift the bond and both secondary leads, read secondary to case again: must be OL"),
        buttons=(say("open"),),
    ),
)
"""A common that is grounded on purpose looks like a grounded winding."""
GO_ON: Final = say("Still a short? Read the other legs to C, and wiggle the cable while you read")
TWO_ENDS: Final = 2
APART: Final = ("prove_dead",)
"""Leads are lifted for the next step."""


def leg(read: Heard) -> Spoken:
    """
    What a reading between two terminals says.

    Args:
        read: Its `part` the two terminals, the leg first; `ground` or `c` behind it.
    """
    first, second = read.part.split()
    value = read.values[-1]
    if value is None:
        return Spoken(lines=())
    pair = say("{first} to {second}", first=_name(first), second=_name(second))
    if read.unit == "V" and (lost := _lost_between(first, pair, read.values)) is not None:
        return lost
    if isinstance(value, float) and read.unit != "ohm":
        return _volts(first, second, pair, value) if read.unit == "V" else _no_unit(pair, value)
    if second == "ground":
        return _to_ground(first, pair, value)
    if second == "c":
        return _to_common(first, pair, value)
    return _to_each_other(pair, value)


def leg_of_job(read: Heard, job: Job) -> Spoken:
    """
    The same beside what is known of the coil at the other end of the leg.

    Args:
        read: As in `leg`.
        job: What is known.
    """
    coil, volts = job.figure("coil_volts"), read.values[-1]
    is_fed = read.part.startswith("y") and read.part.endswith(" c") and isinstance(volts, float) and volts >= FULL_FROM_V
    if not is_fed or coil is None or coil > DEAD_TO_V:
        return leg(read)
    pair = say("{first} to {second}", first=_name("y"), second=_name("c"))
    lost = say("{pair} {high:.4g} V at one end, {low:.4g} at the other", pair=pair, high=volts, low=coil)
    return Spoken(lines=(lost, say("{leg} or C is open between the two: use a spare wire", leg=_name("y"))))


def _lost_between(leg_: str, pair: Said, values: tuple[float | str | None, ...]) -> Spoken | None:
    """Volts at one end of a leg and none at the other."""
    volts = [value for value in values if isinstance(value, float)]
    if len(volts) < TWO_ENDS or max(volts) < FULL_FROM_V or min(volts) > DEAD_TO_V:
        return None
    lost = say("{pair} {high:.4g} V at one end, {low:.4g} at the other", pair=pair, high=max(volts), low=min(volts))
    return Spoken(lines=(lost, say("{leg} or C is open between the two: use a spare wire", leg=_name(leg_))))


def _no_unit(pair: Said, value: float) -> Spoken:
    if value == 0.0:
        return Spoken(lines=(say("{pair} 0: in ohms a dead short, in volts no call. Which?", pair=pair),))
    line = say("{pair} {value:.4g}: in ohms a sound coil, in volts the call gets there. Which?", pair=pair, value=value)
    return Spoken(lines=(line,))


def leg_lifted(read: Heard) -> Spoken:
    """
    What R to C says with one leg lifted.

    Args:
        read: Its `part` the leg that is off.
    """
    name, value = _name(read.part), read.values[0]
    least = FULL_FROM_V if read.unit == "V" else SHORT_BELOW_OHM
    if isinstance(value, float) and value < least:
        still = say(
            "{value:.3g} {unit} with {leg} off: the short is not on {leg}. Put it back, lift the next",
            value=value,
            unit="V" if read.unit == "V" else "Ω",
            leg=name,
        )
        return Spoken(lines=(still,))
    return Spoken(lines=(say("Clears with {leg} off: the short is on {leg}", leg=name), _look_at(read.part)), cautions=APART)


def call(read: Heard) -> Spoken:
    """
    What R to C says with one call made.

    Args:
        read: Its `part` the leg that is called.
    """
    value = read.values[0]
    if not isinstance(value, float) or value >= SHORT_BELOW_OHM:
        return Spoken(lines=(), decides=False)
    found = say("{value:.3g} Ω with {leg} called: the short is on {leg}", value=value, leg=_name(read.part))
    return Spoken(lines=(found, _look_at(read.part)), cautions=APART)


def _to_common(leg_: str, pair: Said, value: float | str) -> Spoken:
    name = _name(leg_)
    if value == OPEN:
        line = say("{pair} open: coil or cable of {leg} is open, or its input is electronic", pair=pair, leg=name)
        return Spoken(lines=(line,))
    ohms = float(value)
    if ohms < SHORT_BELOW_OHM:
        found = say("{pair} {ohms:.3g} Ω: the short is on {leg}", pair=pair, ohms=ohms, leg=name)
        if ohms >= SURELY_BELOW_OHM:
            found = say("{pair} {ohms:.3g} Ω: a short on {leg}, or large coils side by side", pair=pair, ohms=ohms, leg=name)
        return Spoken(lines=(found, _look_at(leg_)), cautions=APART)
    if ohms <= COIL_TO_OHM:
        sound = say("{pair} {ohms:.4g} Ω: a sound coil, no short on {leg} now", pair=pair, ohms=ohms, leg=name)
        return Spoken(lines=(sound, GO_ON))
    return Spoken(lines=(say("{pair} {ohms:.4g} Ω: no short on {leg}", pair=pair, ohms=ohms, leg=name),))


def _to_ground(leg_: str, pair: Said, value: float | str) -> Spoken:
    if value == OPEN:
        return Spoken(lines=(say("{pair} open: clear of ground", pair=pair),))
    if leg_ == "c":
        return BOND
    ohms = float(value)
    if ohms < SHORT_BELOW_OHM:
        found = say("{pair} {ohms:.3g} Ω: shorted to ground, in the cable or what it feeds", pair=pair, ohms=ohms)
    else:
        found = say("{pair} {ohms:.4g} Ω: a path to ground, maybe through its coil and a bonded C", pair=pair, ohms=ohms)
    again = say("Lift {leg} at both ends, read again. Still there: new cable or a spare wire", leg=_name(leg_))
    return Spoken(lines=(found, again), cautions=APART)


def _to_each_other(pair: Said, value: float | str) -> Spoken:
    if value == OPEN:
        return Spoken(lines=(say("{pair} open: these two do not touch", pair=pair),))
    ohms = float(value)
    if ohms < SHORT_BELOW_OHM:
        found = say("{pair} {ohms:.3g} Ω: they touch in the cable, or a closed contact joins them", pair=pair, ohms=ohms)
        again = say("Lift both at both ends, read again. Still there: new cable or spare wires")
        return Spoken(lines=(found, again), cautions=APART)
    return Spoken(lines=(say("{pair} {ohms:.4g} Ω: through their coils, no short between them", pair=pair, ohms=ohms),))


def _volts(first: str, second: str, pair: Said, volts: float) -> Spoken:
    if second not in {"c", "ground"}:
        if volts >= FULL_FROM_V:
            return Spoken(lines=(say("{pair} {volts:.4g} V: open between them, no call there", pair=pair, volts=volts),))
        return Spoken(lines=(say("{pair} {volts:.4g} V: joined, or not fed. Read each to C", pair=pair, volts=volts),))
    if second == "ground":
        if volts <= CLOSED_TO_V:
            line = say("{pair} {volts:.4g} V: dead, or C is not bonded. Read it to C", pair=pair, volts=volts)
        else:
            line = say("{pair} {volts:.4g} V: ground is no return. Read it to C", pair=pair, volts=volts)
        return Spoken(lines=(line,))
    name = _name(first)
    if volts >= FULL_FROM_V:
        line = say(
            "{pair} {volts:.4g} V: the call on {leg} reaches here. Follow it to its coil", pair=pair, volts=volts, leg=name
        )
    elif volts <= CLOSED_TO_V:
        line = say("{pair} {volts:.4g} V: no call on {leg} here. Read it at the thermostat", pair=pair, volts=volts, leg=name)
    else:
        line = say("{pair} {volts:.4g} V: weak, a bad joint or an overload. Read R to C beside it", pair=pair, volts=volts)
    return Spoken(lines=(line,))


def _look_at(leg_: str) -> Said:
    """Where the short on a leg is looked for."""
    parts = ENDS_AT.get(leg_[:1])
    if parts is None:
        return say("Lift it at its far end, read again: gone, the part is shorted; still there, the cable")
    return say("{parts}: lift the far end, read again. Still there: the cable", parts=parts)


def _name(terminal: str) -> str | Said:
    """A terminal as it is written on a board."""
    return say("ground") if terminal == "ground" else terminal.upper()
