"""A breaker or disconnect that was found off. Common practice, no source."""

from typing import Final

from core.heard.record import Heard
from core.heard.spoken import Spoken
from core.readings import Job
from core.said import say

LINE_FROM_V: Final = 90.0
SECONDARY_FROM_V: Final = 20.0
"""From these volts on the side is fed. [V]"""

THAT_WAS_IT: Final = say("That was it: it was off. Call everything and watch it run once")
WHY: Final = say("Find out who or what turned it off. Trips again: leave it off, ohm it out")
ON_AGAIN: Final = say("Off: that is your dead unit. Ask who turned it off, then on once, and read the line")


def breaker_off(read: Heard, job: Job) -> Spoken:
    """
    What a breaker found off means.

    Args:
        read: That it was off; its value the bare volts that came with it.
        job: What is known since.
    """
    volts = [value for value in read.values if isinstance(value, float)]
    back = any(value >= LINE_FROM_V for value in volts) or any(
        name in job.fresh and (job.figure(name) or 0.0) >= least for name, least in LIVE.items()
    )
    return Spoken(lines=(THAT_WAS_IT, WHY) if back else (ON_AGAIN,))


LIVE: Final = {
    "line_volts": LINE_FROM_V,
    "primary_volts": LINE_FROM_V,
    "secondary_volts": SECONDARY_FROM_V,
    "control_volts": SECONDARY_FROM_V,
}
"""Where volts show that it is on again, and from how many. [V]"""
