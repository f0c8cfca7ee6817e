"""What a run of control wire costs, in sentences and numbers."""

from typing import Final

from core.said import Said, say
from core.sizing.inrush_lines import remedy, size_for_pull_in, thinnest_for_pull_in
from core.sizing.pull_in import end_volts
from core.sizing.run_lines import common_part, runs_part
from core.sizing.told import Part, Told
from core.sizing.wire import Draw, longest_feet, thinnest_awg, told_drop, volts_left
from core.standards.coil_range import COIL_RANGE, PULL_IN_SHARE
from core.standards.voltage_drop import ADVISED_DROP, ADVISED_SHARE
from core.standards.wire_gauges import FEET_PER_METRE, LONGEST_FT, WIRE_OHMS

RULES: Final = (WIRE_OHMS, COIL_RANGE, ADVISED_DROP)


def wire_part(told: Told) -> Part | None:
    """
    Volts at the far coil, the longest run of a gauge, the thinnest gauge of a run: as much as what was told allows.

    Args:
        told: The job.

    Returns:
        The part of the answer, or None where no wire was spoken of.
    """
    if told.runs:
        return runs_part(told)
    feet, awg, draw = told.feet, told.job.number("wire_awg"), told.draw
    if feet is None and awg is None:
        asked = "wire_run" in told.job.asks
        return Part(lines=(say("Send length one way, gauge and the VA at the far end"),)) if asked else None
    if draw is None or feet is None or awg is None:
        return _as_far_as_told(told, draw, feet, awg)
    shared = common_part(told, feet, awg) if "shared_common" in told.job.topics else None
    return shared or _drop(told, draw, feet, awg)


def _as_far_as_told(told: Told, draw: Draw | None, feet: float | None, awg: float | None) -> Part:
    """What can be said where one of load, length and gauge is missing."""
    if draw is None:
        return _without_load(told, feet, awg)
    if feet is None:
        return _how_far(told, draw, awg or 0.0)
    return Part(lines=_gauges(told, draw, feet), numbers={}, rules=RULES)


def _drop(told: Told, draw: Draw, feet: float, awg: float) -> Part:
    volts = volts_left(draw, told.run_ohm)
    if volts <= 0.0:
        return Part(
            lines=(
                say("{feet:.0f} ft of {awg:g} AWG can't carry that load at all", feet=feet, awg=awg),
                *_gauges(told, draw, feet),
            ),
            numbers={},
            rules=RULES,
        )
    drop = draw.rated_v - volts
    sags = () if told.is_about_size else _pull_in(told, feet, awg)  # a size weighs the pull-in by itself
    is_short = (bool(sags) and _is_starved(told)) or volts < PULL_IN_SHARE * draw.rated_v
    thinner = _gauges(told, draw, feet) if volts < (1.0 - ADVISED_SHARE) * draw.rated_v else ()
    return Part(
        lines=(*sags, _verdict(feet, awg, volts, draw.rated_v), *(thinner if is_short else ())),
        more=(*_reach(told, draw, awg), *_pull_in_reach(told, awg), *(() if is_short else thinner), _how_reckoned(told, feet)),
        numbers={
            "drop_volts": told_drop(drop),
            "volts_at_load": round(draw.rated_v - told_drop(drop), 6),
        },
        rules=RULES,
        picture="wire_run",
    )


def _verdict(feet: float, awg: float, volts: float, rated_v: float) -> Said:
    least, lost = PULL_IN_SHARE * rated_v, rated_v - volts
    if volts < least:
        return say(
            "Too long: {feet:.0f} ft of {awg:g} AWG leaves {volts:.2f} V, a coil needs {least:.1f} V",
            feet=feet,
            awg=awg,
            volts=volts,
            least=least,
        )
    return say(
        "{feet:.0f} ft of {awg:g} AWG leaves {volts:.2f} V, {lost:.2f} V lost: a coil needs {least:.1f} V",
        feet=feet,
        awg=awg,
        volts=volts,
        lost=lost,
        least=least,
    )


def _peak(told: Told) -> Draw | None:
    """What the far end is while the largest coil pulls in, where that was told."""
    inrush = told.wired.inrush_va
    return None if inrush is None else Draw(va=inrush, rated_v=told.loads.rated_v)


def _pull_in(told: Told, feet: float, awg: float) -> tuple[Said, ...]:
    """Whether the coil at the far end pulls in: the run that carries the steady load can starve it."""
    peak, volts = _peak(told), end_volts(told, told.wired, told.run_ohm)
    if peak is None or volts is None:
        return ()
    least = PULL_IN_SHARE * peak.rated_v
    named = {"peak": peak.va, "feet": feet, "awg": awg, "volts": volts, "least": least, "unit": told.rated_va}
    if volts >= least:
        return (say("Pull-in {peak:g} VA leaves {volts:.1f} V at the coil, {least:.1f} V needed: it pulls in", **named),)
    if told.rated_va is None:
        return (
            say(
                "Too long for the pull-in: {peak:g} VA on {feet:.0f} ft of {awg:g} AWG leaves {volts:.1f} V, {least:.1f} V needed",
                **named,
            ),
        )
    if (end_volts(told, told.wired, 0.0) or 0.0) < least:
        return (
            say(
                "{unit:g} VA is too small for the pull-in: {peak:g} VA leaves {volts:.1f} V, {least:.1f} V needed: {remedy}",
                remedy=remedy(told),
                **named,
            ),
        )
    return (
        say(
            "Too long for the pull-in: {peak:g} VA from {unit:g} VA over {feet:.0f} ft of {awg:g} AWG leaves {volts:.1f} V, {least:.1f} V needed",
            **named,
        ),
    )


def _is_starved(told: Told) -> bool:
    volts = end_volts(told, told.wired, told.run_ohm)
    return volts is not None and volts < PULL_IN_SHARE * told.wired.rated_v


def _how_reckoned(told: Told, feet: float) -> Said:
    """What was assumed, so that a misread shows."""
    return say(
        "{who}, {feet:.0f} ft ({metres:.0f} m) one way, {ohms:.2f} ohm there and back, {kind} copper at {celsius:g} °C",
        who=say("Full rating at the far end") if told.wired.load_va is None else say("All loads at the far end"),
        feet=feet,
        metres=feet / FEET_PER_METRE,
        ohms=told.run_ohm,
        kind=say("stranded") if told.copper.stranded else say("solid"),
        celsius=told.copper.celsius,
    )


def _reach(told: Told, draw: Draw, awg: float) -> tuple[Said, ...]:
    per_foot = told.copper.loop_ohm(awg, 1.0)
    far, short = longest_feet(draw, per_foot), longest_feet(draw, per_foot, 1.0 - ADVISED_SHARE)
    return (
        say(
            "Longest in {awg:g} AWG: {far:.0f} ft ({metres:.0f} m) to keep 85 %, {short:.0f} ft for 3 %",
            awg=awg,
            far=far,
            metres=far / FEET_PER_METRE,
            short=short,
        ),
    )


def _pull_in_reach(told: Told, awg: float) -> tuple[Said, ...]:
    """The run that the inrush allows, from full volts at the transformer."""
    peak = _peak(told)
    if peak is None or told.rated_va is not None:  # through its windings it is less
        return ()
    far = longest_feet(peak, told.copper.loop_ohm(awg, 1.0))
    return (say("While the largest coil pulls in: {far:.0f} ft, with full volts at the transformer", far=far),)


def _how_far(told: Told, draw: Draw, awg: float) -> Part:
    far = min(longest_feet(draw, told.copper.loop_ohm(awg, 1.0)), LONGEST_FT)
    return Part(
        lines=(*_reach(told, draw, awg), *_pull_in_reach(told, awg)),
        more=(
            say(
                "One way, {kind} copper at {celsius:g} °C, {volts:g} V at the transformer",
                kind=say("stranded") if told.copper.stranded else say("solid"),
                celsius=told.copper.celsius,
                volts=draw.rated_v,
            ),
        ),
        numbers={"longest_feet": round(far, 1)},
        rules=RULES,
    )


def _unit(told: Told) -> float | None:
    """The unit that feeds a pull-in that was told: the one that is there, else the one that the answer says to buy."""
    if told.loads.inrush_va is None:
        return None
    return told.rated_va or ((size_for_pull_in(told) or told.likely_va) if told.is_about_size else None)


def _gauges(told: Told, draw: Draw, feet: float) -> tuple[Said, ...]:
    unit = _unit(told)
    if unit is None:
        least = thinnest_awg(_peak(told) or draw, feet, PULL_IN_SHARE, told.copper)
    elif (least := thinnest_for_pull_in(told, unit)) is None:
        return ()  # the unit is too small, or near it: no wire mends that
    better = thinnest_awg(draw, feet, 1.0 - ADVISED_SHARE, told.copper)
    if least is None:
        return (say("Even 10 AWG is too thin for {feet:.0f} ft: move the transformer nearer or use a relay there", feet=feet),)
    if better is None:
        return (say("For {feet:.0f} ft: {least} AWG or thicker; no control gauge stays within 3 %", feet=feet, least=least),)
    better = min(least, better)  # where the pull-in asks for more than the 3 % do
    return (
        say(
            "For {feet:.0f} ft: {least} AWG or thicker, {better} AWG to stay within 3 %", feet=feet, least=least, better=better
        ),
    )


def _without_load(told: Told, feet: float | None, awg: float | None) -> Part:
    ask = say("Send the VA or amps at the far end")
    if feet is None or awg is None:
        return Part(lines=(ask,))
    return Part(
        lines=(
            say(
                "{ohms:.2f} ohm there and back: {ohms:.2f} V lost for each amp on {feet:.0f} ft ({metres:.0f} m) of {awg:g} AWG",
                ohms=told.run_ohm,
                feet=feet,
                metres=feet / FEET_PER_METRE,
                awg=awg,
            ),
            ask,
        ),
        rules=(WIRE_OHMS,),
    )
