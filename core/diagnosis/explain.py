"""Why, for an apprentice: the relations behind the verdict in the numbers of this job."""

from collections.abc import Callable
from typing import Final

from core.advice import Answer
from core.diagnosis.belief import Belief, believed, known
from core.diagnosis.causes import CAUSES, LOOK_BEHIND
from core.diagnosis.next_test import BEHIND_OF
from core.diagnosis.outlook import Unit, unit
from core.diagnosis.worlds import NAMES
from core.findings import FINDINGS
from core.readings import Job
from core.said import Said, say

Lesson = Callable[[Job, Unit], Said | None]


def _ratio(job: Job, u: Unit) -> Said | None:
    primary, out = job.figure("primary_volts"), job.figure("secondary_volts_lifted") or job.figure("secondary_volts")
    if not primary or out is None:
        return None
    return say(
        "Volts follow turns: {tap:.0f} to {rated:.0f} V is {ratio:.2f} to 1, so {primary:.0f} V in gives {due:.1f} V and 5 to 15 % more unloaded. You read {out:.1f} V",
        tap=u.tap_v,
        rated=u.rated_secondary_v,
        ratio=u.tap_v / u.rated_secondary_v,
        primary=primary,
        due=primary * u.rated_secondary_v / u.tap_v,
        out=out,
    )


def _line(job: Job, _: Unit) -> Said | None:
    line, primary = job.figure("line_volts"), job.figure("primary_volts")
    if line is None or primary is None:
        return None
    return say(
        "Line {line:.0f} V, primary {primary:.0f} V: what is missing between them is lost in a joint or contact on the way",
        line=line,
        primary=primary,
    )


def _open_winding(job: Job, _: Unit) -> Said | None:
    opened = [m for m in ("primary_ohms", "secondary_ohms") if (r := job.last(m)) is not None and r.value == "open"]
    if not opened:
        return None
    return say(
        "A winding is one wire: isolated it must read ohms. Open means the wire or its hidden link is broken, so no current and no volts"
    )


def _ohms(job: Job, _: Unit) -> Said | None:
    ohms = job.figure("primary_ohms")
    if ohms is None:
        return None
    return say(
        "Ohms can condemn a winding, hardly acquit it: one turn in twenty shorted takes {change:.1f} of {ohms:.1f} Ω. Amps and heat show it",
        ohms=ohms,
        change=0.05 * ohms,
    )


def _load(job: Job, u: Unit) -> Said | None:
    ohms = job.figure("load_ohms")
    if ohms is None:
        return None
    return say(
        "Coil ohms are DC ohms, lower than what AC meets: a sound {va:.0f} VA load can read {low:.1f} Ω. You read {ohms:.1f} Ω",
        va=u.rated_va,
        low=0.3 * u.rated_secondary_v**2 / u.rated_va,
        ohms=ohms,
    )


def _amps(job: Job, u: Unit) -> Said | None:
    amps = job.figure("secondary_amps")
    if amps is None:
        return None
    return say(
        "{va:.0f} VA at {volts:.0f} V carries {rated:.2f} A. You read {amps:.2f} A: over it is overload, four times it a short",
        va=u.rated_va,
        volts=u.rated_secondary_v,
        rated=u.rated_va / u.rated_secondary_v,
        amps=amps,
    )


def _primary_amps(job: Job, u: Unit) -> Said | None:
    amps = job.figure("primary_amps")
    if amps is None:
        return None
    return say(
        "{va:.0f} VA at {volts:.0f} V draws {rated:.2f} A at full load, a third of it or less with nothing called. You read {amps:.2f} A",
        va=u.rated_va,
        volts=u.tap_v,
        rated=u.rated_va / u.tap_v,
        amps=amps,
    )


def _fuse(job: Job, _: Unit) -> Said | None:
    volts = job.figure("fuse_volts")
    if volts is None:
        return None
    return say("A closed fuse has no volts across it, an open one has all of them. You read {volts:.1f} V", volts=volts)


def _control(job: Job, _: Unit) -> Said | None:
    control, out = job.figure("control_volts"), job.figure("secondary_volts")
    if control is None or out is None:
        return None
    return say(
        "Secondary {out:.1f} V, R to C {control:.1f} V: what is missing stands across a fuse, joint or wire between",
        out=out,
        control=control,
    )


LESSONS: Final[tuple[Lesson, ...]] = (_open_winding, _line, _ratio, _fuse, _control, _amps, _primary_amps, _load, _ohms)
"""What convinces most first."""
MOST: Final = 4
WORTH_A_WORD: Final = 1.0
"""From this probability on the next likely finding is told. [%]"""


def explain(job: Job) -> Answer:
    """
    Why the verdict is what it is.

    Args:
        job: The job so far.

    Returns:
        The finding and the relations that the job's own numbers show, at most `MOST`.
    """
    k = known(job)
    if not k.readings:
        return Answer(lines=(say("Nothing is read yet: send me volts at the primary and the secondary first"),))
    belief = believed(k)
    u = unit(job)
    if job.asks_cause:
        return Answer(lines=(_head(belief), *_cause(job, belief)))
    lessons = [said for lesson in LESSONS if (said := lesson(job, u)) is not None]
    return Answer(lines=(_head(belief), *lessons[:MOST]))


def _cause(job: Job, belief: Belief) -> tuple[Said, ...]:
    """What makes such a thing fail, and what is to be read for it."""
    lines = CAUSES[belief.best].lines
    ohms = job.figure("load_ohms")
    if not BEHIND_OF[NAMES.index(belief.best)]:
        return lines
    if ohms is None:
        return (*lines, LOOK_BEHIND)
    u = unit(job)
    if ohms < SHORT_SHARE * u.rated_secondary_v**2 / u.rated_va:
        return (*lines, say("R to C reads {ohms:.3g} Ω: a short there did it", ohms=ohms))
    return (
        *lines,
        say("R to C reads {ohms:.3g} Ω, no short there now: add up the VA, and wiggle the cable while you read", ohms=ohms),
    )


SHORT_SHARE: Final = 0.1
"""Share of the impedance at full load under which the control circuit is shorted. Common practice, no source."""


def _head(belief: Belief) -> Said:
    """The finding, and the next likely one where it is worth a word."""
    second = int(belief.findings.argsort()[-2])
    rest = 100.0 * float(belief.findings[second])
    percent = min(99.0, 100.0 * belief.confidence)
    if rest < WORTH_A_WORD:
        return say("{finding}: {percent:.0f} %", finding=FINDINGS[belief.best].says, percent=percent)
    return say(
        "{finding}: {percent:.0f} %. Next likely, {other}: {rest:.0f} %",
        finding=FINDINGS[belief.best].says,
        percent=percent,
        other=FINDINGS[NAMES[second]].says,
        rest=rest,
    )
