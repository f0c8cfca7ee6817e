"""What a switch says that was found open or closed. Common practice, no source."""

from typing import Final

from core.heard.across import NAMED, OPENED
from core.heard.record import Heard
from core.heard.spoken import Spoken
from core.readings import OPEN
from core.said import say

PROVE: Final = say("Closes again: read volts R to C, then call")


def switch(read: Heard) -> Spoken:
    """
    What the state of a switch means.

    Args:
        read: The device; its value open, 0 for closed, None where it is only named.
    """
    name = NAMED[read.part]
    if read.values[0] is None:
        return Spoken(lines=(say("Call on: volts across the {name}. 24 V there, it is open; 0, go on toward C", name=name),))
    if read.values[0] == OPEN:
        return Spoken(lines=(say("The {name} is open: the break is there", name=name), OPENED[read.part], PROVE))
    return Spoken(lines=(say("The {name} is closed: it passes, go on toward C", name=name),), decides=False)
