"""How the volts fall along each run of a job, as points to draw."""

from dataclasses import dataclass

from core.readings import Job
from core.said import Said, say
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
