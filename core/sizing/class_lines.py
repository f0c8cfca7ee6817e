"""Whether something is still Class 2, in sentences and numbers."""

from core.said import Said, say
from core.sizing.protection import is_class_2
from core.sizing.told import Part, Told
from core.standards.class_2 import CLASS_2_FUSE, CLASS_2_OPEN, CLASS_2_POWER, MOST_OPEN_V, MOST_VA
from core.standards.device_loads import CONTROLS_V


def class_part(told: Told) -> Part | None:
    """
    The limits of Class 2, and on which side of them the unit and its load stand.

    Args:
        told: The job.
    """
    over = told.rated_va is not None and told.rated_va > MOST_VA
    if "class_2" not in told.job.topics and not (over and "size" in told.job.asks):
        return None
    unit, open_v = told.rated_va, _open_v(told)
    lines = [
        say(
            "Class 2 at {volts:g} V: {va:g} VA and {open:g} V open at most, fuse 100 / open volts",
            volts=CONTROLS_V,
            va=MOST_VA,
            open=MOST_OPEN_V,
        )
    ]
    if open_v is not None and open_v > MOST_OPEN_V:
        lines[:0] = [say("No: {volts:g} V open is over the {most:g} V of Class 2", volts=open_v, most=MOST_OPEN_V)]
    elif unit is not None:
        lines[:0] = _judged(unit)
    holds = None if unit is None else is_class_2(unit, open_v or CONTROLS_V)
    return Part(
        lines=tuple(lines),
        numbers={"class2": holds},
        rules=(CLASS_2_POWER, CLASS_2_OPEN, CLASS_2_FUSE),
        cautions=("licensed_hand",) if holds is False else (),
    )


def _judged(unit_va: float) -> tuple[Said, ...]:
    if unit_va > MOST_VA:
        return (
            say("No: {va:g} VA is over Class 2", va=unit_va),
            say("Split the load on two Class 2 units, or leave it to a licensed hand"),
        )
    return (say("Yes, {va:g} VA can be Class 2: where the label says so", va=unit_va),)


def _open_v(told: Told) -> float | None:
    """As it was read with a lead off; or with a load on, where even that is over the limit."""
    read, loaded = told.job.figure("secondary_volts_lifted"), told.job.figure("secondary_volts")
    return loaded if read is None and loaded is not None and loaded > MOST_OPEN_V else read
