"""Every measure a technician can take: its unit, whether the circuit is live, where to put the leads, and what it costs."""

from dataclasses import dataclass
from typing import Literal

from core.said import Said, say


@dataclass(frozen=True, slots=True, kw_only=True)
class Measure:
    """One place to put the meter."""

    name: str
    """The contract's name."""
    unit: Literal["V", "A", "ohm"]
    live: bool
    """True where the circuit is energised while reading."""
    place: Said
    """Where it is read, as it stands in a sentence: "across the secondary"."""
    how: Said
    """What the hands do, as an instruction."""
    minutes: float
    """What it costs a practised person at the unit. [min] Common practice, no source."""
    risk: float
    """What it risks against a dead test, 0 to 1; only for choosing between tests. Common practice, no source."""
    setup: str
    """What the circuit must be for it; tests of one setup are done together."""
    pair: bool = False
    """True where the measure means nothing without two named leads."""


def _live(
    name: str, unit: Literal["V", "A"], place: Said, how: Said, minutes: float, setup: str = "live", **more: bool
) -> Measure:
    return Measure(name=name, unit=unit, live=True, place=place, how=how, minutes=minutes, risk=0.3, setup=setup, **more)


def _dead(name: str, place: Said, how: Said, minutes: float, setup: str = "isolated", **more: bool) -> Measure:
    return Measure(name=name, unit="ohm", live=False, place=place, how=how, minutes=minutes, risk=0.05, setup=setup, **more)


MEASURES: dict[str, Measure] = {
    row.name: row
    for row in (
        _live(
            "line_volts",
            "V",
            say("at the line terminals"),
            say("Live: read volts at the unit's line terminals, after disconnect and fuse"),
            1.5,
        ),
        _live(
            "primary_volts",
            "V",
            say("across the primary"),
            say("Live: read volts across the primary leads in use, right at the transformer"),
            1.0,
        ),
        _live(
            "secondary_volts",
            "V",
            say("across the secondary"),
            say("Live: read volts across the secondary, right at the transformer"),
            1.0,
        ),
        _live(
            "secondary_volts_lifted",
            "V",
            say("across the secondary with one lead lifted"),
            say("Power off, lift one secondary lead, power on, read volts across the secondary"),
            5.0,
            "lifted",
        ),
        _live("control_volts", "V", say("R to C"), say("Live: read volts R to C at the board or thermostat"), 1.0),
        _live(
            "coil_volts",
            "V",
            say("across the coil"),
            say("Live, with a call: read volts across the contactor or relay coil"),
            1.5,
        ),
        _live(
            "fuse_volts",
            "V",
            say("across the low-voltage fuse"),
            say("Live: read volts across the low-voltage fuse or breaker"),
            1.0,
        ),
        _live("primary_amps", "A", say("in the primary"), say("Live: clamp or read amps in one primary lead"), 3.0),
        _live(
            "secondary_amps",
            "A",
            say("in the secondary"),
            say("Live: clamp or read amps in one secondary lead, everything called"),
            2.0,
        ),
        _dead(
            "primary_ohms",
            say("across the primary winding"),
            say("Power off and proved dead, primary leads off: read ohms across the primary"),
            3.0,
        ),
        _dead(
            "secondary_ohms",
            say("across the secondary winding"),
            say("Power off and proved dead, secondary leads off: read ohms across the secondary"),
            3.0,
        ),
        _dead(
            "primary_secondary_ohms",
            say("primary to secondary"),
            say("Power off and proved dead, all leads off: read ohms primary to secondary"),
            3.0,
        ),
        _dead(
            "primary_ground_ohms",
            say("primary to the core"),
            say("Power off and proved dead, primary leads off: read ohms primary to the core"),
            3.0,
        ),
        _dead(
            "secondary_ground_ohms",
            say("secondary to the core"),
            say("Power off and proved dead, secondary leads off: read ohms secondary to the core"),
            3.0,
        ),
        _dead(
            "load_ohms",
            say("R to C, looking into the control circuit"),
            say("Power off and proved dead, R lifted from the transformer: read ohms R to C into the control circuit"),
            2.5,
            "load",
        ),
        _dead(
            "fuse_ohms",
            say("across the low-voltage fuse"),
            say("Power off, fuse pulled: read ohms across the low-voltage fuse"),
            1.0,
            "dead",
        ),
        _dead(
            "coil_ohms",
            say("across the coil"),
            say("Power off, one coil lead off: read ohms across the coil"),
            2.0,
            "dead",
        ),
        _dead(
            "lead_ohms",
            say("between two leads"),
            say("Power off and proved dead, leads free: read ohms between the two leads"),
            1.0,
            pair=True,
        ),
        _live("lead_volts", "V", say("between two leads"), say("Live: read volts between the two leads"), 1.0, pair=True),
    )
}
"""All measures by name, in the contract's order."""
