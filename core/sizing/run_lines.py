"""Several runs, and one common for several loads, in sentences and numbers."""

from core.said import Said, say
from core.sizing.common import common_v, volts_on_common
from core.sizing.pull_in import common_end_volts, end_volts
from core.sizing.runs import Run, in_a_row
from core.sizing.told import Part, Told
from core.sizing.wire import Draw, told_drop, volts_left
from core.standards.coil_range import COIL_RANGE, PULL_IN_SHARE
from core.standards.wire_gauges import WIRE_OHMS

RULES = (WIRE_OHMS, COIL_RANGE)


def runs_part(told: Told) -> Part:
    """
    Volts at the end of each run, the worst first, or at the end of all pieces laid in a row.

    Args:
        told: The job, with several runs.
    """
    if in_a_row(told.runs):
        return _row_part(told)
    fed = [run for run in told.runs if run.loads.load_va is not None]
    if not fed:
        return Part(lines=(say("Send the VA or amps at the end of each run"),), rules=(WIRE_OHMS,))
    worst = sorted(fed, key=lambda run: run.volts)
    starved = [line for run in worst for line in _starved(told, run)]
    bare = [say("{feet:.0f} ft of {awg:g} AWG: send its VA", feet=r.feet, awg=r.awg) for r in told.runs if r not in fed]
    return Part(
        lines=(*starved, *(_run_line(run) for run in worst if not _starved(told, run)), *bare),
        numbers=_numbers(worst[0].volts, told.loads.rated_v),
        rules=RULES,
        picture="wire_run" if worst[0].volts > 0.0 else None,
    )


def _numbers(volts: float, rated_v: float) -> dict[str, float | bool | None]:
    """The record of the worst place; nothing where the wire can't carry its load at all."""
    if volts <= 0.0:
        return {}
    drop = told_drop(rated_v - volts)
    return {"drop_volts": drop, "volts_at_load": round(rated_v - drop, 6)}


def _run_line(run: Run) -> Said:
    least = PULL_IN_SHARE * run.loads.rated_v
    named = {"feet": run.feet, "awg": run.awg, "devices": devices(run)}
    if run.volts <= 0.0:
        return say("{feet:.0f} ft of {awg:g} AWG can't carry the {devices} at all", **named)
    if run.volts < least:
        return say(
            "Too long: {volts:.2f} V at the {devices}, {feet:.0f} ft of {awg:g} AWG, {least:.1f} V needed",
            volts=run.volts,
            least=least,
            **named,
        )
    return say("{volts:.2f} V at the {devices}, {feet:.0f} ft of {awg:g} AWG: good", volts=run.volts, **named)


def _starved(told: Told, run: Run) -> tuple[Said, ...]:
    """The run that carries its steady load, and starves the coil that pulls in; a size weighs that by itself."""
    volts, least = end_volts(told, run.loads, run.ohm), PULL_IN_SHARE * run.loads.rated_v
    if volts is None or volts >= least or told.is_about_size:
        return ()
    return (
        say(
            "Too long for the pull-in: {volts:.1f} V at the {devices}, {feet:.0f} ft of {awg:g} AWG, {least:.1f} V needed",
            volts=max(volts, 0.0),
            devices=devices(run),
            feet=run.feet,
            awg=run.awg,
            least=least,
        ),
    )


def devices(run: Run) -> Said:
    """What hangs on a run, by name: "contactor + relay"."""
    names = [say("{device}", device=part.device) for part in run.loads.parts]
    line = names[0]
    for name in names[1:]:
        line = say("{one} + {other}", one=line, other=name)
    return line


def _row_part(told: Told) -> Part:
    draw = told.draw
    pieces = say("{feet:.0f} ft of {awg:g}", feet=told.runs[0].feet, awg=told.runs[0].awg)
    for run in told.runs[1:]:
        pieces = say("{one} + {other}", one=pieces, other=say("{feet:.0f} ft of {awg:g}", feet=run.feet, awg=run.awg))
    if draw is None:
        return Part(
            lines=(
                say("{pieces} in a row: {ohms:.2f} ohm there and back", pieces=pieces, ohms=told.run_ohm),
                say("Send the VA or amps at the far end"),
            ),
            rules=(WIRE_OHMS,),
        )
    volts, least = volts_left(draw, told.run_ohm), PULL_IN_SHARE * draw.rated_v
    verdict = (
        say("{pieces} in a row leave {volts:.2f} V: a coil needs {least:.1f} V", pieces=pieces, volts=volts, least=least)
        if volts >= least
        else say(
            "Too long: {pieces} in a row leave {volts:.2f} V, a coil needs {least:.1f} V",
            pieces=pieces,
            volts=max(volts, 0.0),
            least=least,
        )
    )
    return Part(
        lines=(verdict, say("Two runs of their own? Send what hangs on each")),
        numbers=_numbers(volts, draw.rated_v),
        rules=RULES,
        picture="wire_run" if volts > 0.0 else None,
    )


def common_part(told: Told, feet: float, awg: float) -> Part | None:
    """
    Volts at each load of several that have hot wires of their own and one common.

    Args:
        told: The job.
        feet: One way. [ft]
        awg: Gauge of every conductor. [AWG]

    Returns:
        The part, or None where the one wire can't carry all of them, or where there is nothing to share.
    """
    loads, ohm = told.wired, told.copper.loop_ohm(awg, feet) / 2.0
    if sum(part.count for part in loads.known) <= 1:
        return None
    ends = sorted(((volts_on_common(part, loads, ohm), part) for part in loads.known), key=lambda end: end[0])
    if ends[0][0] <= 0.0:
        return None
    least, lost = PULL_IN_SHARE * loads.rated_v, common_v(loads, ohm)
    volts, part = ends[0]
    verdict = (
        say(
            "One common holds: {volts:.2f} V at the {device}, {least:.1f} V needed",
            volts=volts,
            device=part.device,
            least=least,
        )
        if volts >= least
        else say(
            "Too much on one common: {volts:.2f} V at the {device}, {least:.1f} V needed",
            volts=volts,
            device=part.device,
            least=least,
        )
    )
    pulling = common_end_volts(loads, ohm)
    starved = (
        (say("Too much on one common for the pull-in: {volts:.1f} V, {least:.1f} V needed", volts=pulling, least=least),)
        if pulling is not None and pulling < least
        else ()
    )
    if starved:
        verdict = say("Steady {volts:.2f} V at the {device}", volts=volts, device=part.device)
    apart = volts_left(_alone(part.va, part.amps, loads.rated_v), 2.0 * ohm)
    return Part(
        lines=(
            *starved,
            verdict,
            say(
                "All {amps:.2f} A come back on the common: it alone loses {lost:.2f} V",
                amps=lost / ohm,
                lost=lost,
            ),
            say("With a common of its own it would have {apart:.2f} V", apart=apart),
        ),
        numbers=_numbers(volts, loads.rated_v),
        rules=RULES,
        picture="wire_run",
    )


def _alone(va: float | None, amps: float | None, rated_v: float) -> Draw:
    return Draw(va=0.0 if amps is not None else va or 0.0, amps=amps or 0.0, rated_v=rated_v)
