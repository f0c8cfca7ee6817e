"""
What a meter across a safety or a control switch says. Common practice, no source; it follows from the loop itself.

In a series loop the whole control voltage stands across the one open contact, and a closed contact drops next to nothing.
"""

from typing import Final

from core.heard.record import Heard
from core.heard.spoken import Spoken
from core.said import Said, say

FULL_FROM_V: Final = 15.0
"""From here the control voltage stands across the contact. [V]"""
CLOSED_TO_V: Final = 1.0
"""Up to here a contact that carries the call drops nothing worth a word. [V]"""

NAMED: Final[dict[str, Said]] = {
    "float switch": say("float switch"),
    "limit switch": say("limit switch"),
    "pressure switch": say("pressure switch"),
    "door switch": say("door switch"),
    "switch": say("switch"),
}
"""A word a switch; a test holds it complete."""

OPENED: Final[dict[str, Said]] = {
    "float switch": say("Water lifted it: clear the drain and the pan. It closes by itself, never jump it"),
    "limit switch": say("Heat opened it: filter, blower, airflow, flame. Find that first, never jump it"),
    "pressure switch": say("No draft or a pressure out of range opened it: hose, port, inducer, charge. Never jump it"),
    "door switch": say("The door or panel is not seated. Seat it, never jump it"),
    "switch": say("Find what opened it before it closes again, never jump it"),
}
"""Why each opens, and what to do about it."""


def across(read: Heard) -> Spoken:
    """
    What the volts across a switch say.

    Args:
        read: The device and its volts.
    """
    name = NAMED[read.part]
    volts = read.values[0]
    if not isinstance(volts, float):
        return Spoken(lines=())
    if volts >= FULL_FROM_V:
        opened = say("{volts:.4g} V across the {name}: it is open, the break is there", volts=volts, name=name)
        return Spoken(lines=(opened, OPENED[read.part]))
    if volts <= CLOSED_TO_V:
        line = say("{volts:.4g} V across the {name}: closed, or not fed. Read each side to C", volts=volts, name=name)
    else:
        line = say(
            "{volts:.4g} V across the {name}: a bad contact, or a break besides. Read each side to C", volts=volts, name=name
        )
    return Spoken(lines=(line,))
