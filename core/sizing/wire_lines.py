"""What a run of control wire costs, in sentences and numbers."""

from core.said import Said, say
from core.sizing.told import Part, Told
from core.sizing.wire import Draw, longest_feet, loop_ohm, thinnest_awg, volts_left
from core.standards.coil_range import COIL_RANGE, PULL_IN_SHARE
from core.standards.voltage_drop import ADVISED_DROP, ADVISED_SHARE
from core.standards.wire_gauges import FEET_PER_METRE, LONGEST_FT, WIRE_OHMS

RULES = (WIRE_OHMS, COIL_RANGE, ADVISED_DROP)


def wire_part(told: Told) -> Part | None:
    """
    Volts at the far coil, the longest run of a gauge, the thinnest gauge of a run: as much as what was told allows.

    Args:
        told: The job.

    Returns:
        The part of the answer, or None where no wire was spoken of.
    """
    feet, awg, draw = told.job.number("run_feet"), told.job.number("wire_awg"), told.draw
    if feet is None and awg is None:
        asked = "wire_run" in told.job.asks
        return Part(lines=(say("Send length one way, gauge and the VA at the far end"),)) if asked else None
    if draw is None:
        return _without_load(told, feet, awg)
    if feet is None:
        assert awg is not None, "one of the two was told"
        return _how_far(told, draw, awg)
    if awg is None:
        return Part(lines=_gauges(told, draw, feet), numbers={}, rules=RULES)
    return _drop(told, draw, feet, awg)


def _per_foot(told: Told, awg: float) -> float:
    return loop_ohm(awg, 1.0, told.celsius, stranded=told.stranded)


def _drop(told: Told, draw: Draw, feet: float, awg: float) -> Part:
    volts = volts_left(draw, told.run_ohm)
    least = PULL_IN_SHARE * draw.rated_v
    if volts <= 0.0:
        return Part(
            lines=(
                say("{feet:g} ft of {awg:g} AWG can't carry that load at all", feet=feet, awg=awg),
                *_gauges(told, draw, feet),
            ),
            numbers={},
            rules=RULES,
        )
    drop = draw.rated_v - volts
    verdict = (
        say(
            "{volts:.2f} V left at the far end: {drop:.2f} V lost ({share:.1%})",
            volts=volts,
            drop=drop,
            share=drop / draw.rated_v,
        )
        if volts >= least
        else say(
            "Too long: {volts:.2f} V left at the far end, a coil needs {least:.1f} V. {drop:.2f} V lost ({share:.1%})",
            volts=volts,
            least=least,
            drop=drop,
            share=drop / draw.rated_v,
        )
    )
    lines = [verdict, _how_reckoned(told, feet, awg), *_reach(told, draw, awg), *_pull_in_reach(told, awg)]
    if volts < (1.0 - ADVISED_SHARE) * draw.rated_v:
        lines += _gauges(told, draw, feet)
    return Part(
        lines=tuple(lines),
        numbers={
            "drop_volts": round(drop, 2),
            "volts_at_load": round(draw.rated_v - round(drop, 2), 2),
        },
        rules=RULES,
        picture="wire_run",
    )


def _how_reckoned(told: Told, feet: float, awg: float) -> Said:
    """What was assumed, so that a misread shows."""
    whole = told.load_va is None
    who = say("the full rating") if whole else say("all loads told")
    kind = say("stranded") if told.stranded else say("solid")
    return say(
        "{feet:g} ft ({metres:.0f} m) one way, {awg:g} AWG {kind}, copper {celsius:g} °C, {ohms:.2f} ohm there and back, {who} at the far end",
        feet=feet,
        metres=feet / FEET_PER_METRE,
        awg=awg,
        kind=kind,
        celsius=told.celsius,
        ohms=told.run_ohm,
        who=who,
    )


def _reach(told: Told, draw: Draw, awg: float) -> tuple[Said, ...]:
    per_foot = _per_foot(told, awg)
    far, short = longest_feet(draw, per_foot), longest_feet(draw, per_foot, 1.0 - ADVISED_SHARE)
    return (
        say(
            "Longest run in {awg:g} AWG: {far:.0f} ft ({metres:.0f} m) to keep 85 %, {short:.0f} ft for 3 %",
            awg=awg,
            far=far,
            metres=far / FEET_PER_METRE,
            short=short,
        ),
    )


def _pull_in_reach(told: Told, awg: float) -> tuple[Said, ...]:
    """The run that the inrush allows, from full volts at the transformer."""
    if told.loads.inrush_va is None:
        return ()
    far = longest_feet(Draw(va=told.loads.inrush_va, rated_v=told.loads.rated_v), _per_foot(told, awg))
    return (say("While the largest coil pulls in: {far:.0f} ft, with full volts at the transformer", far=far),)


def _how_far(told: Told, draw: Draw, awg: float) -> Part:
    far = min(longest_feet(draw, _per_foot(told, awg)), LONGEST_FT)
    return Part(
        lines=(
            *_reach(told, draw, awg),
            *_pull_in_reach(told, awg),
            say("One way, copper {celsius:g} °C, {volts:g} V at the transformer", celsius=told.celsius, volts=draw.rated_v),
        ),
        numbers={"longest_feet": round(far, 1)},
        rules=RULES,
    )


def _gauges(told: Told, draw: Draw, feet: float) -> tuple[Said, ...]:
    least = thinnest_awg(draw, feet, PULL_IN_SHARE, told.celsius, stranded=told.stranded)
    better = thinnest_awg(draw, feet, 1.0 - ADVISED_SHARE, told.celsius, stranded=told.stranded)
    if least is None:
        return (say("Even 10 AWG is too thin for {feet:g} ft: move the transformer nearer or use a relay there", feet=feet),)
    if better is None:
        return (say("For {feet:g} ft: {least} AWG at the thinnest; no control gauge stays within 3 %", feet=feet, least=least),)
    return (
        say(
            "For {feet:g} ft: {least} AWG at the thinnest, {better} AWG to stay within 3 %",
            feet=feet,
            least=least,
            better=better,
        ),
    )


def _without_load(told: Told, feet: float | None, awg: float | None) -> Part:
    ask = say("Send the VA or amps at the far end")
    if feet is None or awg is None:
        return Part(lines=(ask,))
    return Part(
        lines=(
            say(
                "{ohms:.2f} ohm there and back: {ohms:.2f} V lost for each amp on {feet:g} ft ({metres:.0f} m) of {awg:g} AWG",
                ohms=told.run_ohm,
                feet=feet,
                metres=feet / FEET_PER_METRE,
                awg=awg,
            ),
            ask,
        ),
        rules=(WIRE_OHMS,),
    )
