"""Volts that a high-impedance meter sees on a dead conductor of the line side as well as on a live one."""

from typing import Final

from core.readings import OPEN, Job, Reading

LINE_SIDE: Final = ("line_volts", "primary_volts")
GHOSTLY: Final = (0.02, 0.85)
"""Share of the nominal volts that a ghost may show."""
USUAL_SUPPLY_V: Final = 120.0


def may_be_ghost(reading: Reading | None, job: Job) -> bool:
    """
    Whether a reading may be a ghost.

    Args:
        reading: One of a job, or None.
        job: The job, for its nominal volts.

    >>> may_be_ghost(Reading(measure="line_volts", value=54.0), Job())
    True
    >>> may_be_ghost(Reading(measure="line_volts", value=54.0, low_impedance=True), Job())
    False
    """
    if reading is None or reading.measure not in LINE_SIDE or reading.low_impedance or reading.value == OPEN:
        return False
    nominal = job.number("supply_volts") or USUAL_SUPPLY_V
    return GHOSTLY[0] * nominal < float(reading.value) < GHOSTLY[1] * nominal
