"""What a fuse on the line side says: it is not the 24 V fuse. Common practice, no source."""

from typing import Final

from core.advice import NextTest
from core.heard.record import Heard
from core.heard.spoken import Spoken
from core.readings import OPEN
from core.said import say

SOUND_TO_OHM: Final = 5.0
"""Up to here a fuse out of its holder is whole. Common practice, no source. [ohm]"""
DEAD_TO_SHARE: Final = 0.2
"""Share of the fed side up to which the other side is dead; ghosts reach that far. Common practice, no source."""
FED_FROM_V: Final = 90.0
"""From here the line side is fed. [V]"""

OPENED: Final = Spoken(
    lines=(say("Line fuse open: that is your dead primary"),),
    cautions=("lock_out",),
    next_test=NextTest(
        measure="primary_ohms",
        instruction=say("Ohm the primary, and primary to case, before the same rating goes back"),
        buttons=(say("open"),),
    ),
)
PASSES: Final = (say("Line fuse passes: go on to the primary, read volts there"),)
NOT_FED: Final = (say("Line fuse not fed: breaker and disconnect first"),)


def line_fuse(read: Heard) -> Spoken:
    """
    What a line fuse says.

    Args:
        read: Open or its ohms, the volts across it (one) or of its fed and its other side (two).
    """
    if read.unit == "V" and len(read.values) == 1:
        (volts,) = read.values
        opened = isinstance(volts, float) and volts >= FED_FROM_V
    elif read.unit == "V":
        fed, other = (value if isinstance(value, float) else 0.0 for value in read.values)
        if fed < FED_FROM_V:
            return Spoken(lines=NOT_FED)
        opened = other <= DEAD_TO_SHARE * fed
    else:
        opened = not read.values or read.values[0] == OPEN or float(read.values[0] or 0.0) > SOUND_TO_OHM
    if not opened:
        return Spoken(lines=PASSES)
    return OPENED
