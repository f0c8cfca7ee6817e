"""Volts at the panel, before the unit's own disconnect. Common practice, no source."""

from typing import Final

from core.heard.record import Heard
from core.heard.spoken import Spoken
from core.readings import Job
from core.said import say

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
        return Spoken(decides=False)
    return Spoken(
        lines=(
            say("{volts:.0f} V at the panel and none at the unit: disconnect, its fuses, or the wire between", volts=volts),
        ),
        decides=False,
    )
