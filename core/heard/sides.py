"""
What volts from each side of a switch or fuse to C say. Common practice, no source; it follows from the loop itself.

Fed on one side and dead on the other, the part is open; the same on both sides, it passes, and the break is past it.
"""

from typing import Final

from core.advice import NextTest
from core.heard.across import FULL_FROM_V, NAMED, OPENED
from core.heard.record import Heard
from core.heard.spoken import Spoken
from core.said import Said, say

DEAD_TO_V: Final = 5.0
"""Up to here a side is dead: what a meter of high resistance picks up from beside it. Common practice, no source. [V]"""
SAME_V: Final = 1.5
"""So far apart the two sides still read the same. Common practice, no source. [V]"""
FUSE: Final = say("fuse")
FUSE_OPENED: Final = NextTest(
    measure="load_ohms",
    instruction=say("Power off, R lifted: read R to C for a short before the same rating goes back in"),
    buttons=(say("open"),),
)


def sides(read: Heard) -> Spoken:
    """
    What the volts before and behind a part say.

    Args:
        read: The device with the volts of its fed side and of its other side; None where one was not told.
    """
    fed, other = read.values
    name = FUSE if read.part == "fuse" else NAMED[read.part]
    if not isinstance(fed, float) or not isinstance(other, float):
        return Spoken(lines=(_one_side(name, fed if isinstance(fed, float) else None, other),))
    if fed < FULL_FROM_V:
        return Spoken(lines=(say("{volts:.4g} V into the {name}: not fed. Go back toward R", volts=fed, name=name),))
    if other <= DEAD_TO_V:
        opened = say("{fed:.4g} V in, {other:.4g} out: the {name} is open", fed=fed, other=other, name=name)
        if read.part == "fuse":
            return Spoken(lines=(opened,), next_test=FUSE_OPENED)
        return Spoken(lines=(opened, OPENED[read.part]))
    if fed - other <= SAME_V:
        passes = say("{other:.4g} V on both sides: the {name} passes, go on toward C", other=other, name=name)
        return Spoken(lines=(passes,))
    lost = say("{fed:.4g} V in, {other:.4g} out: the {name} drops too much, a bad contact", fed=fed, other=other, name=name)
    return Spoken(lines=(lost,))


def _one_side(name: Said, fed: float | None, other: object) -> Said:
    if fed is not None:
        if fed < FULL_FROM_V:
            return say("{volts:.4g} V into the {name}: not fed. Go back toward R", volts=fed, name=name)
        return say("{volts:.4g} V into the {name}: read its other side to C. 0 there, it is open", volts=fed, name=name)
    if isinstance(other, float) and other >= FULL_FROM_V:
        return say("{volts:.4g} V past the {name}: it passes, go on toward C", volts=other, name=name)
    return say("Nothing past the {name}: read its fed side to C. 24 V there, it is open", name=name)
