"""How the volts fall along each run of a job, as points to draw."""

from dataclasses import dataclass

from core.readings import Job
from core.said import Said, say
from core.sizing.pull_in import common_end_volts, end_volts
from core.sizing.run_lines import devices
from core.sizing.runs import Run, in_a_row
from core.sizing.told import told


@dataclass(frozen=True, slots=True, kw_only=True)
class Fall:
    """One run: volts over feet, from the transformer on."""

    points: tuple[tuple[float, float], ...]
    says: Said


def falls(job: Job, source: float, volts: float) -> tuple[Fall, ...]:
    """
    The runs of a job.

    Args:
        job: What is known.
        source: Volts at the transformer. [V]
        volts: Volts at the worst far end, as they were told. [V]

    Returns:
        One fall for each run; pieces in a row are one, with a bend where the gauge changes.
    """
    facts = told(job)
    if not facts.runs:
        feet, awg = facts.feet or 1.0, facts.job.number("wire_awg") or 0.0
        return (Fall(points=((0.0, source), (feet, volts)), says=say("{feet:.0f} ft, {awg:g} AWG", feet=feet, awg=awg)),)
    if in_a_row(facts.runs):
        return (_row(facts.runs, source, volts),)
    fed = [run for run in facts.runs if run.loads.load_va is not None and run.volts > 0.0]
    return tuple(_own(run, source) for run in sorted(fed, key=lambda run: run.volts))


def pull_ins(job: Job, source: float) -> tuple[Fall, ...]:
    """
    What the far coils see while the largest of them pulls in, for each run where that was told.

    Args:
        job: What is known.
        source: Volts at the transformer, steady. [V]

    Returns:
        One fall for each, from what is left at the transformer on.
    """
    facts = told(job)
    if "shared_common" in job.topics and facts.feet is not None and facts.wire_awg is not None:
        ohm = facts.copper.loop_ohm(facts.wire_awg, facts.feet) / 2.0
        return _pulling(source, common_end_volts(facts.wired, ohm), facts.feet)
    if not facts.runs or in_a_row(facts.runs):
        feet = sum(run.feet for run in facts.runs) if facts.runs else facts.feet or 1.0
        start = end_volts(facts, facts.wired, 0.0)
        return _pulling(start, end_volts(facts, facts.wired, facts.run_ohm), feet)
    found: tuple[Fall, ...] = ()
    for run in facts.runs:
        found += _pulling(end_volts(facts, run.loads, 0.0), end_volts(facts, run.loads, run.ohm), run.feet)
    return found


def _pulling(start: float | None, end: float | None, feet: float) -> tuple[Fall, ...]:
    if start is None or end is None or end <= 0.0:
        return ()
    return (Fall(points=((0.0, start), (feet, end)), says=say("pull-in {volts:.1f} V", volts=end)),)


def _own(run: Run, source: float) -> Fall:
    says = say(
        "{device}: {volts:.2f} V, {feet:.0f} ft, {awg:g} AWG", device=devices(run), volts=run.volts, feet=run.feet, awg=run.awg
    )
    return Fall(points=((0.0, source), (run.feet, run.volts)), says=says)


def _row(pieces: tuple[Run, ...], source: float, volts: float) -> Fall:
    """The same amps run through every piece, so each takes its share of the drop by its ohms."""
    whole, feet, ohm = sum(run.ohm for run in pieces), 0.0, 0.0
    points = [(0.0, source)]
    says = say("{feet:.0f} ft of {awg:g}", feet=pieces[0].feet, awg=pieces[0].awg)
    for i, run in enumerate(pieces):
        feet, ohm = feet + run.feet, ohm + run.ohm
        points.append((feet, source - (source - volts) * ohm / whole))
        if i:
            says = say("{one} + {other}", one=says, other=say("{feet:.0f} ft of {awg:g}", feet=run.feet, awg=run.awg))
    return Fall(points=tuple(points), says=says)
