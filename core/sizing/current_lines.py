"""Amps on both sides, the fuses for them, the tap, the frequency and the ground, in sentences and numbers."""

from core.said import Said, say
from core.sizing.protection import LineFuse, is_class_2, line_fuse, low_voltage_fuse_a, open_volts
from core.sizing.side import is_line_side
from core.sizing.told import Part, Told
from core.standards.class_2 import CLASS_2_FUSE, CLASS_2_POWER, largest_fuse_a
from core.standards.fuse_sizes import CARRIES_FOR_AN_HOUR, FUSE_BEHAVIOUR, FUSE_LOADING
from core.standards.transformer_protection import (
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
    if va is None:
        return None
    secondary = va / told.loads.rated_v
    supply = told.supply_v
    if supply is None:
        return Part(
            lines=(say("{secondary:.2f} A on the {volts:g} V side", secondary=secondary, volts=told.loads.rated_v),),
            numbers={"secondary_amps": round(secondary, 3)},
        )
    return Part(
        lines=(
            say(
                "{secondary:.2f} A on the {volts:g} V side, {primary:.2f} A at {supply:g} V",
                secondary=secondary,
                volts=told.loads.rated_v,
                primary=va / supply,
                supply=supply,
            ),
        ),
        numbers={"secondary_amps": round(secondary, 3), "primary_amps": round(va / supply, 3)},
    )


def fuse_part(told: Told) -> Part | None:
    """
    The fuses on both sides, and a word on the one that was told.

    Args:
        told: The job.

    Returns:
        The part of the answer, or None where neither rating nor load is known.
    """
    if is_line_side(told.job):
        return _line_side(told, alone=True)
    unit, asked = told.unit_va, "fuse" in told.job.asks
    if unit is None:
        return Part(lines=(say("Send the transformer's VA and volts: the fuse follows from them"),)) if asked else None
    open_v = open_volts(told.job, unit, told.loads.rated_v)
    load_a = None if told.load_va is None else told.load_va / told.loads.rated_v
    size, ceiling = low_voltage_fuse_a(unit, open_v, load_a, told.loads.rated_v), largest_fuse_a(open_v)
    if size is None or ceiling is None:
        return Part(
            lines=(
                say(
                    "{unit:g} VA at {open_v:.1f} V open is not Class 2: no fuse named here, ask a licensed hand",
                    unit=unit,
                    open_v=open_v,
                ),
            ),
            numbers={"class2": False},
            rules=(CLASS_2_POWER,),
            cautions=("licensed_hand",),
        )
    numbers: dict[str, float | bool | None] = {"fuse_amps": size, "class2": is_class_2(unit, open_v)}
    low = _low_side(told, unit, open_v, ceiling, size)
    line = _line_side(told, alone=False) if asked and told.supply_v else None
    return Part(
        lines=low + (line.lines if line else ()) + (_never_bigger() if asked else ()),
        numbers=numbers | (line.numbers if line else {}),
        rules=(CLASS_2_FUSE, FUSE_LOADING, *((FUSE_BEHAVIOUR,) if asked else ()), *(line.rules if line else ())),
        cautions=("no_bigger_fuse", "local_code"),
    )


def _low_side(told: Told, unit: float, open_v: float, ceiling: float, size: float) -> tuple[Said, ...]:
    fuse = told.job.number("fuse_amps")
    recommended = say("{volts:g} V side: {size:g} A time-delay, in R at the transformer", volts=told.loads.rated_v, size=size)
    limit = (
        say("Class 2 ceiling {ceiling:.2f} A: 100 over {open_v:.1f} V open", ceiling=ceiling, open_v=open_v)
        if open_v > 20.0
        else say("Class 2 ceiling {ceiling:g} A up to 20 V", ceiling=ceiling)
    )
    if fuse is None:
        return recommended, limit
    rated_a = unit / told.loads.rated_v
    if fuse > ceiling + 1e-9:
        verdict = say("No: {fuse:g} A is over the Class 2 ceiling", fuse=fuse)
    elif told.load_va is not None and told.load_va / told.loads.rated_v > fuse:
        verdict = say("No: {fuse:g} A opens on this load", fuse=fuse)
    elif fuse > size:
        verdict = say(
            "{fuse:g} A is allowed by Class 2, but may pass {hour:.1f} A for an hour, and {unit:g} VA is good for {rated:.2f} A."
            " {size:g} A guards it better",
            fuse=fuse,
            hour=CARRIES_FOR_AN_HOUR * fuse,
            unit=unit,
            rated=rated_a,
            size=size,
        )
    else:
        verdict = say("{fuse:g} A is fine", fuse=fuse)
    return (verdict, limit) if fuse == size else (verdict, recommended, limit)


def _line_side(told: Told, *, alone: bool) -> Part | None:
    unit, supply = told.unit_va, told.supply_v
    if unit is None or supply is None:
        return Part(lines=(say("Send the transformer's VA and the supply volts: the line-side fuse follows from them"),))
    fuse = line_fuse(unit, supply)
    lines: list[Said] = []
    rules = [PRIMARY_FUSE]
    if alone:
        lines += _told_line_fuse(fuse, told.job.number("fuse_amps"))
    if fuse.size_a is None:
        lines.append(
            say(
                "Line side: ceiling {ceiling:.3f} A, under the smallest listed fuse. Ask a licensed hand",
                ceiling=fuse.ceiling_a,
            )
        )
    else:
        lines.append(
            say(
                "Line side: {size:g} A time-delay at most, rated for {supply:g} V ({share:.0%} of {rated:.3f} A)",
                size=fuse.size_a,
                supply=supply,
                share=fuse.row.share,
                rated=fuse.rated_a,
            )
        )
    lines.append(say("A listed Class 2 unit on a branch up to 20 A may need no line fuse of its own"))
    motor = motor_control_ceiling_a(fuse.rated_a)
    if alone and motor is not None:
        lines.append(say("Only inside a motor controller: up to {ceiling:.2f} A", ceiling=motor))
        rules.append(MOTOR_CONTROL_FUSE)
    numbers: dict[str, float | bool | None] = {"primary_fuse_amps": fuse.size_a}
    return Part(
        lines=tuple(lines) + (_never_bigger() if alone else ()),
        numbers=numbers | ({"fuse_amps": fuse.size_a} if alone else {}),
        rules=tuple(rules),
        cautions=("no_bigger_fuse", "local_code", "licensed_hand"),
    )


def _told_line_fuse(fuse: LineFuse, told_a: float | None) -> tuple[Said, ...]:
    """A word on the line-side fuse that is there or meant."""
    if told_a is None:
        return ()
    if told_a > fuse.ceiling_a + 1e-9 and told_a != fuse.size_a:
        return (say("No: {fuse:g} A is over the ceiling", fuse=told_a),)
    return (say("{fuse:g} A is within the ceiling", fuse=told_a),)


def _never_bigger() -> tuple[Said, ...]:
    return (
        say(
            "A fuse stops a short, not a small overload: if it opens again find the short, a bigger one only burns the winding"
        ),
    )
