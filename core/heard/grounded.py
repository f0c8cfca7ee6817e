"""A secondary that reads near nothing to ground: often C is bonded on purpose. Common practice, no source."""

from typing import Final

from core.heard.legs import BOND
from core.heard.spoken import Spoken
from core.readings import OPEN, Job

BOND_TO_OHM: Final = 5.0
"""Up to here it can be a bond: metal to metal, and the winding between. Common practice, no source. [ohm]"""


def bonded(job: Job) -> Spoken | None:
    """
    What is said beside a secondary that reads to ground; None where the message brought no such reading, or brought it
    once more.

    Args:
        job: What is known.
    """
    read = job.last("secondary_ground_ohms")
    if "secondary_ground_ohms" not in job.fresh or read is None or read.value == OPEN or read.repeated:
        return None
    return BOND if float(read.value) <= BOND_TO_OHM else None
