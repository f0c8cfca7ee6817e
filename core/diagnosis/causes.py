"""What made it fail, what to do before the new one goes in, and which cautions belong to that. Common practice, no source."""

from dataclasses import dataclass
from typing import Final

from core.said import Said, say

HALVE: Final = say("Find the short: halve the control circuit, lift one leg at a time, read R to C after each")
LAMP: Final = say("While you look, a 24 V lamp or a resettable breaker stands in for the fuse, never a bigger fuse")
NOT_YET: Final = say("Don't energise a new one before the short is found")
LOOK_BEHIND: Final = say("Before a new one goes in: read R to C into the control circuit, and add up the VA")
FUSE_BACK: Final = (
    say("No short reads there now: put the same rating back in, then read volts R to C"),
    say("Blows again on a call: the short is on the leg of that call"),
)
"""After an open fuse whose circuit was read and is sound."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Cause:
    """What belongs to one finding."""

    lines: tuple[Said, ...]
    cautions: tuple[str, ...] = ()


CAUSES: Final[dict[str, Cause]] = {
    "healthy": Cause(lines=(say("Follow the call from R: thermostat, float switch, limits, then the coil and C"),)),
    "no_supply": Cause(
        lines=(
            say("Look at the breaker, disconnect, line fuse, door switch, in this order"),
            say("If it trips again: primary leads off and capped, try once. Holds: ohm out the transformer"),
        )
    ),
    "low_supply": Cause(
        lines=(say("Read it at the panel, leg by leg, unit running: wrong there too goes to the electrician or utility"),)
    ),
    "loose_line": Cause(
        lines=(say("Power off, then follow the line to the primary: a burnt joint, a loose screw, a contact"),),
        cautions=("lock_out",),
    ),
    "wrong_tap": Cause(
        lines=(say("Power off, land the lead of this supply, cap the others singly, then read the secondary"),),
        cautions=("cap_unused_leads",),
    ),
    "primary_open": Cause(
        lines=(say("A primary or its hidden one-shot link opens from heat: a 24 V short, overload, a wrong tap"),)
    ),
    "primary_shorted_turns": Cause(lines=(say("Turns short from heat: look for overload, a 24 V short, a wrong tap, no air"),)),
    "secondary_open": Cause(
        lines=(say("A secondary burns open when nothing clears a short: fit low-voltage protection with the new one"),)
    ),
    "secondary_shorted_turns": Cause(
        lines=(say("Turns short from heat: look for overload, a 24 V short, a wrong tap, no air"),)
    ),
    "windings_bridged": Cause(
        lines=(
            say("Line volts can stand on the control wires: leave it off until it is out, then check boards and thermostat"),
        ),
        cautions=("lock_out",),
    ),
    "winding_grounded": Cause(
        lines=(say("Its core and the cabinet can be live: leave it off until it is out, and check the earth bond"),),
        cautions=("lock_out",),
    ),
    "protection_open": Cause(
        lines=(say("A fuse opens for a reason: read R to C for a short before a new one of the same rating goes in"),),
        cautions=("no_bigger_fuse",),
    ),
    "load_short": Cause(lines=(HALVE, LAMP), cautions=("no_bigger_fuse",)),
    "overload": Cause(lines=(say("Add up the VA called at once: take load off, split it, or go up a size"),)),
    "control_open": Cause(
        lines=(say("Walk R and C with the meter: the break is where 24 V ends. Look at joints, plugs, safeties"),)
    ),
}
"""By finding."""

BEHIND: Final = Cause(lines=(NOT_YET, HALVE, LAMP), cautions=("find_the_short_first", "no_bigger_fuse"))
"""Where a short stands behind an opened winding or fuse."""
