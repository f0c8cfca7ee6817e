"""Volts at the panel, before the unit's own disconnect. Common practice, no source."""

from typing import Final

from core.heard.record import Heard
from core.heard.spoken import Spoken
from core.readings import Job
from core.said import Said, say

SAME: Final = 0.04
"""Share within which panel and unit read the same. Common practice, no source."""
DEAD_TO_V: Final = 20.0
"""Up to here the unit is dead. [V]"""


def panel(read: Heard, job: Job) -> Spoken:
    """
    What volts at the panel mean beside those of the unit.

    Args:
        read: The volts at the panel.
        job: What is known of the line at the unit.
    """
    volts, line = read.values[0], job.figure("line_volts")
    if not isinstance(volts, float):
        return Spoken(decides=False)
    if line is None:
        return Spoken(
            lines=(say("{volts:.0f} V at the panel: read it at the unit's line terminals too", volts=volts),), decides=False
        )
    if line > DEAD_TO_V:
        return Spoken(lines=(_beside(volts, line),), decides=False)
    return Spoken(
        lines=(
            say("{volts:.0f} V at the panel and none at the unit: disconnect, its fuses, or the wire between", volts=volts),
        ),
        decides=False,
    )


def _beside(volts: float, line: float) -> Said:
    """What both say where both are fed."""
    if abs(volts - line) <= SAME * volts:
        return say("{volts:.0f} V at the panel too: it comes so, panel or utility, not the unit", volts=volts)
    return say(
        "{volts:.0f} V at the panel, {line:.0f} V at the unit: the difference is lost between the two", volts=volts, line=line
    )
