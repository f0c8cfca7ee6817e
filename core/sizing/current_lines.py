"""Amps on both sides and the fuses for them, in sentences and numbers."""

from core.said import Said, say
from core.sizing.load_lines import unit_to_have
from core.sizing.protection import LineFuse, is_class_2, line_fuse, low_voltage_fuse_a, open_volts
from core.sizing.told import Part, Told
from core.standards.class_2 import CLASS_2_FUSE, CLASS_2_OPEN, CLASS_2_POWER, MOST_OPEN_V, MOST_VA, largest_fuse_a
from core.standards.fuse_sizes import CARRIES_FOR_AN_HOUR, FUSE_BEHAVIOUR, FUSE_LOADING, fuse_type_v
from core.standards.transformer_protection import (
    LISTED_BRANCH_A,
    LISTED_ON_A_BRANCH,
    MOTOR_CONTROL_FUSE,
    PRIMARY_FUSE,
    motor_control_ceiling_a,
)


def amps_part(told: Told) -> Part | None:
    """
    Secondary and primary amps: of the load, else of the rating.

    Args:
        told: The job.
    """
    va = told.load_va if told.load_va is not None else told.rated_va
    asked = "amps" in told.job.topics
    if va is None:
        return Part(lines=(say("Send the VA and the supply: amps are VA / volts"),)) if asked and not told.job.asks else None
    secondary, volts, supply = va / told.loads.rated_v, told.loads.rated_v, told.supply_v
    numbers: dict[str, float | bool | None] = {"secondary_amps": round(secondary, 3)}
    numbers |= {} if supply is None else {"primary_amps": round(va / supply, 3)}
    if asked:
        return Part(lines=(_asked_amps(va, secondary, volts, supply),), numbers=numbers)
    if supply is None:
        line = say("{secondary:.2f} A at {volts:g} V", secondary=secondary, volts=volts)
        return Part(more=_known_amps(told, line), numbers=numbers)
    line = say(
        "{secondary:.2f} A at {volts:g} V, {primary:.2f} A at {supply:g} V",
        secondary=secondary,
        volts=volts,
        primary=va / supply,
        supply=supply,
    )
    return Part(more=_known_amps(told, line), numbers=numbers)


def _asked_amps(va: float, secondary: float, volts: float, supply: float | None) -> Said:
    """Amps as the answer itself, with what they come from."""
    named = {"va": va, "secondary": secondary, "volts": volts}
    if supply is None:
        return say("{va:g} VA / {volts:g} V = {secondary:.2f} A on the secondary. For the primary send the supply", **named)
    return say(
        "{va:g} VA: {primary:.2f} A on the primary ({va:g} / {supply:g} V), {secondary:.2f} A on the secondary ({va:g} / {volts:g} V)",
        primary=va / supply,
        supply=supply,
        **named,
    )


def _known_amps(told: Told, line: Said) -> tuple[Said, ...]:
    """Amps of a part of the load mislead, and of all of it where one run is asked about."""
    partly = bool(told.loads.known and told.loads.unknown)
    return (line,) if told.is_about_size and not partly else ()


def fuse_part(told: Told) -> Part | None:
    """
    The fuses on both sides, and a word on the one that was told.

    Args:
        told: The job.

    Returns:
        The part of the answer, or None where neither rating nor load is known.
    """
    topics, asked = told.job.topics, "fuse" in told.job.asks
    if "line_fuse" in topics and "low_fuse" not in topics:
        return _line_side(told, alone=True)
    unit = told.rated_va if asked and told.rated_va is not None else unit_to_have(told)
    if unit is None:
        return _without_unit(told) if asked or told.fuse_a is not None else None
    open_v = open_volts(told.job, unit, told.loads.rated_v)
    # Where a part is still without a figure, and where the unit is too small, the fuse is that for what the unit is picked for.
    plain = told.load_va is not None and not told.loads.unknown and told.load_va <= unit
    load_a = told.load_va / told.loads.rated_v if plain and told.load_va is not None else None
    size, ceiling = low_voltage_fuse_a(unit, open_v, load_a, told.loads.rated_v), largest_fuse_a(open_v)
    if size is None or ceiling is None:
        return _not_class_2(unit, open_v)
    numbers: dict[str, float | bool | None] = {"fuse_amps": size, "class2": is_class_2(unit, open_v)}
    line = _line_side(told, alone=False) if asked and told.supply_v and "low_fuse" not in topics else None
    return Part(
        lines=_low_side(told, unit, open_v, ceiling, size) + _overloaded(told, unit, size) + (line.lines[:1] if line else ()),
        more=(_never_bigger() if asked else ()) + (line.lines[1:] if line else ()),
        numbers=numbers | (line.numbers if line else {}),
        rules=(CLASS_2_FUSE, *(line.rules if line else ()), FUSE_LOADING, *((FUSE_BEHAVIOUR,) if asked else ())),
        cautions=("no_bigger_fuse", "local_code") if asked or told.fuse_a is not None else ("local_code",),
    )


def _without_unit(told: Told) -> Part:
    """What holds for any Class 2 unit, and what to send."""
    ask = say("Send the transformer's VA and volts: the fuse follows from them")
    asked = "fuse" in told.job.asks
    verdicts = tuple(line for fuse in told.fuses_a for line in _on_any_unit(fuse, told.loads.rated_v))
    return Part(
        lines=(*verdicts, *(_never_bigger() if asked else ()), ask),
        more=(say("Time-delay in R, so that no pull-in opens it. Class 2 allows 100 / open volts"),) if asked else (),
        rules=(CLASS_2_FUSE,),
        cautions=("no_bigger_fuse", "local_code"),
    )


def _on_any_unit(fuse: float, rated_v: float) -> tuple[Said, ...]:
    """A word on a fuse, whatever the unit."""
    most, least = largest_fuse_a(MOST_OPEN_V), largest_fuse_a(rated_v)
    if most is None or least is None:
        return ()
    if fuse <= most + 1e-9:
        return (say("{fuse:g} A is within Class 2 on any 24 V unit: the limit is 100 / open volts", fuse=fuse),)
    if fuse > least + 1e-9:
        return (say("No: {fuse:g} A is over Class 2 on any 24 V unit: the limit is 100 / open volts", fuse=fuse),)
    return (say("{fuse:g} A is within Class 2 up to {volts:.1f} V open: read the open volts", fuse=fuse, volts=100.0 / fuse),)


def _not_class_2(unit: float, open_v: float) -> Part:
    return Part(
        lines=(
            say(
                "{unit:g} VA at {open_v:.1f} V open is not Class 2: no fuse named here, ask a licensed hand",
                unit=unit,
                open_v=open_v,
            ),
        ),
        numbers={"class2": False},
        rules=(CLASS_2_POWER if unit > MOST_VA else CLASS_2_OPEN,),
        cautions=("licensed_hand",),
    )


def _low_side(told: Told, unit: float, open_v: float, ceiling: float, size: float) -> tuple[Said, ...]:
    named = {"unit": unit, "size": size, "ceiling": ceiling, "volts": told.loads.rated_v}
    recommended = (
        say(
            "{volts:g} V fuse for {unit:g} VA: {size:g} A time-delay in R (Class 2 limit {ceiling:.2f} A: 100 / {open_v:.1f} V open)",
            open_v=open_v,
            **named,
        )
        if open_v > 20.0  # the step of the table
        else say(
            "{volts:g} V fuse for {unit:g} VA: {size:g} A time-delay in R (Class 2 limit {ceiling:g} A up to 20 V)", **named
        )
    )
    return (*(_judged(told, fuse, unit, ceiling, size) for fuse in told.fuses_a), recommended)


def _overloaded(told: Told, unit: float, size: float) -> tuple[Said, ...]:
    """A unit too small for its load: its own fuse opens, and that of the right unit is another."""
    load, pick = told.load_va, told.pick_va
    if load is None or load <= unit:
        return ()
    opens = say("On {unit:g} VA the {size:g} A opens: {load:g} VA is too much for it", unit=unit, size=size, load=load)
    if pick is None:
        return (opens,)
    rated_v = told.loads.rated_v
    right = low_voltage_fuse_a(pick, open_volts(told.job, pick, rated_v), load / rated_v, rated_v)
    return (opens, say("On the {pick:g} VA it needs: {right:g} A", pick=pick, right=right))


def _judged(told: Told, fuse: float, unit: float, ceiling: float, size: float) -> Said:
    """A word on the low-voltage fuse that is there or meant."""
    rated_a = unit / told.loads.rated_v
    if fuse > ceiling + 1e-9:
        return say("No: {fuse:g} A is over the Class 2 limit", fuse=fuse)
    if told.load_va is not None and told.load_va / told.loads.rated_v > fuse:
        return say("No: {fuse:g} A opens on this load", fuse=fuse)
    if fuse > size:
        return say(
            "{fuse:g} A is allowed, but passes {hour:.1f} A for an hour and {unit:g} VA is good for {rated:.2f} A: {size:g} A guards it",
            fuse=fuse,
            hour=CARRIES_FOR_AN_HOUR * fuse,
            unit=unit,
            rated=rated_a,
            size=size,
        )
    return say("{fuse:g} A is fine", fuse=fuse)


def _line_side(told: Told, *, alone: bool) -> Part | None:
    unit, supply = told.job.meant_va or told.rated_va or unit_to_have(told), told.supply_v
    listed = say(
        "A listed Class 2 unit on a branch up to {branch:g} A may need no line fuse of its own", branch=LISTED_BRANCH_A
    )
    if unit is None or supply is None:
        ask = say("Send the transformer's VA and the supply volts: the line-side fuse follows from them")
        return Part(lines=(listed, ask), rules=(LISTED_ON_A_BRANCH,), cautions=("local_code",))
    fuse = line_fuse(unit, supply)
    lines = [*(_told_line_fuse(fuse, told.fuse_a) if alone else ()), _line_size(fuse, supply), listed]
    motor = motor_control_ceiling_a(fuse.rated_a) if alone else None
    if motor is not None:
        lines.append(say("Only inside a motor controller: up to {ceiling:.2f} A", ceiling=motor))
    numbers: dict[str, float | bool | None] = {"primary_fuse_amps": fuse.size_a}
    return Part(
        lines=tuple(lines) + (_never_bigger() if alone else ()),
        numbers=numbers | ({"fuse_amps": fuse.size_a} if alone else {}),
        rules=(PRIMARY_FUSE, LISTED_ON_A_BRANCH, *((MOTOR_CONTROL_FUSE,) if motor is not None else ())),
        cautions=("no_bigger_fuse", "local_code", "licensed_hand"),
    )


def _line_size(fuse: LineFuse, supply: float) -> Said:
    if fuse.size_a is None:
        return say(
            "Line fuse: limit {ceiling:.3f} A, under the smallest listed fuse. Ask a licensed hand", ceiling=fuse.ceiling_a
        )
    return say(
        "Line fuse for {unit:g} VA: {size:g} A time-delay at most, {volts:g} V type ({share:.0f} % of {rated:.3f} A)",
        unit=fuse.rated_a * supply,
        size=fuse.size_a,
        volts=fuse_type_v(supply),
        share=100.0 * fuse.row.share,
        rated=fuse.rated_a,
    )


def _told_line_fuse(fuse: LineFuse, told_a: float | None) -> tuple[Said, ...]:
    """A word on the line-side fuse that is there or meant."""
    if told_a is None:
        return ()
    if told_a > fuse.ceiling_a + 1e-9 and told_a != fuse.size_a:
        return (say("No: {fuse:g} A is over the limit", fuse=told_a),)
    if told_a < fuse.rated_a:
        return (say("{fuse:g} A opens at full load, {rated:.2f} A", fuse=told_a, rated=fuse.rated_a),)
    return (say("{fuse:g} A is within the limit", fuse=told_a),)


def _never_bigger() -> tuple[Said, ...]:
    return (say("A fuse stops a short, not a small overload. Opens again: find the short, a bigger one burns the winding"),)
