"""How much a unit carries: steady, with its spare, and how many of one device."""

from dataclasses import replace
from typing import Final

from core.said import Said, say
from core.sizing.inrush_lines import mend
from core.sizing.loads import Part as Load
from core.sizing.told import Part, Told
from core.standards.class_2 import CLASS_2_POWER, MOST_VA
from core.standards.device_loads import MOST_DEVICES, TYPICAL_LOADS
from core.standards.transformer_ratings import SPARE, STANDARD_SIZES

SPARE_PERCENT: Final = 100.0 * SPARE


def capacity_part(told: Told) -> Part | None:
    """
    What the unit that is there carries.

    Args:
        told: The job.

    Returns:
        The part of the answer, or None where that was not asked, or no rating is known.
    """
    rated = told.rated_va
    if "capacity" not in told.job.topics or "amps" in told.job.topics or rated is None:  # "how many amps on the secondary"
        return None
    if rated > MOST_VA:
        return Part(
            lines=(say("{rated:g} VA is over Class 2: not sized here, ask a licensed hand", rated=rated),),
            numbers={"class2": False},
            rules=(CLASS_2_POWER,),
            cautions=("licensed_hand",),
        )
    most, volts = rated / (1.0 + SPARE), told.loads.rated_v
    carries = say(
        "{rated:g} VA carries {most:g} VA steady ({amps:.2f} A), {spare:g} % spare kept",
        rated=rated,
        most=most,
        amps=most / volts,
        spare=SPARE_PERCENT,
    )
    told_kinds = {fact.device for fact in told.job.new if fact.fact == "load"}
    parts = [part for part in told.loads.parts if part.device in told_kinds]
    if told.job.asked_device is not None and not parts:
        parts = [Load(device=told.job.asked_device, count=1, va=None)]
    if len(parts) != 1:
        return Part(lines=(carries,), numbers={"class2": True}, rules=(STANDARD_SIZES,))
    lines, by_usual = _how_many(told, parts[0], rated)
    rules = (TYPICAL_LOADS, STANDARD_SIZES) if by_usual else (STANDARD_SIZES,)
    return Part(lines=(*lines, carries), numbers={"class2": True}, rules=rules)


def _how_many(told: Told, part: Load, rated: float) -> tuple[tuple[Said, ...], bool]:
    """How many of one device, each by its figure or by what such a device usually draws; the pull-in of one of them counts."""
    if part.va is not None:
        number = most_of(told, part, part.va, rated)
        return (say("{number} × {device} at {va:g} VA", number=number, device=part.device, va=part.va),), False
    row = part.typical
    if row is None:
        return (), False
    few, many = most_of(told, part, row.high_va, rated), most_of(told, part, row.low_va, rated)
    named = {"few": few, "many": many, "device": part.device, "low": row.low_va, "high": row.high_va}
    return (say("{few} to {many} × {device}: usually {low:g} to {high:g} VA each, the label decides", **named),), True


def most_of(told: Told, part: Load, va: float, rated: float) -> int:
    """
    The most of one device that a unit carries with its spare, and still pulls in.

    Args:
        told: The job.
        part: The device.
        va: Of each, steady. [VA]
        rated: Of the unit. [VA]

    Returns:
        How many. [-]
    """
    number = min(int(rated / (1.0 + SPARE) / va + 1e-9), MOST_DEVICES)
    while number > 0:
        loads = replace(told.loads, parts=(replace(part, va=va, count=number),))
        if mend(replace(told, loads=loads, wired=loads)) is None:
            return number
        number -= 1
    return 0
