"""What the diagnosis says to a job: verdict, what to do about it, and the one next test."""

from dataclasses import replace
from functools import lru_cache
from typing import Final

from core.advice import Answer, NextTest, Reason, Verdict
from core.diagnosis.belief import Belief, Known, believed, known, usable
from core.diagnosis.causes import BEHIND, CAUSES, FUSE_BACK, LOOK_BEHIND
from core.diagnosis.ghost import LINE_SIDE, may_be_ghost
from core.diagnosis.meter import M
from core.diagnosis.next_test import BEHIND_OF, Worth, ranked
from core.diagnosis.outlook import proof
from core.diagnosis.reasons import reasons
from core.diagnosis.verdict import INSULATION, is_doubtful_insulation, to_recheck, verdict
from core.diagnosis.worlds import LOST_OHM, NAMES, SOUND_OHM
from core.measures import MEASURES
from core.readings import Job, Value
from core.said import Said, say
from core.standards.supply_limits import OUT_OF_LIMITS, WORTH_A_WORD

SAID_FROM: Final = 0.8
"""From this probability on it is worth saying what to do about a finding."""
SAID_OF_DEAD_LINE: Final = 0.5
"""The same of a dead line: whatever tripped it, the way to it is the same."""
SURE: Final = 0.97
"""From this probability on one more test would be for its own sake."""
DOUBLED: Final = 1.5
"""Supply to tap from which the 24 V side stands far too high."""
THOUGHTS: Final = 256
"""As many jobs are in hand at a time; more are thought out anew."""
ASK: Final[dict[str, Said]] = {
    "tap_volts": say("Which primary tap is landed: its volts or its colour?"),
    "supply_volts": say("What is the supply here: 120, 208, 240, 277 or 480 V?"),
    "rated_va": say("How many VA does the transformer's nameplate say?"),
}
ANSWERS: Final[dict[str, tuple[Said, ...]]] = {
    "tap_volts": (say("120 tap"), say("208 tap"), say("240 tap")),
    "supply_volts": (say("120 V supply"), say("208 V supply"), say("240 V supply")),
    "rated_va": (say("40 VA"), say("50 VA"), say("75 VA")),
    "line_volts": (say("0 V"), say("120 V"), say("240 V")),
    "primary_volts": (say("0 V"), say("120 V"), say("240 V")),
    "secondary_volts": (say("0 V"), say("24 V"), say("27 V")),
    "secondary_volts_lifted": (say("0 V"), say("24 V"), say("27 V")),
    "control_volts": (say("0 V"), say("24 V"), say("27 V")),
    "coil_volts": (say("0 V"), say("24 V"), say("27 V")),
    "fuse_volts": (say("0 V"), say("24 V"), say("27 V")),
}
"""Likely answers as they would be typed; any resistance may be open."""


def diagnose(job: Job) -> Answer:
    """
    The verdict on the circuit so far and what to do next.

    Args:
        job: All that is known.

    Returns:
        Verdict None where nothing was told that tells anything; the next test then only where it was asked for.
    """
    tells = (
        bool(usable(job))
        or bool(job.symptoms())
        or (job.told("tap_volts") is not None and job.told("supply_volts") is not None)
    )
    if not tells and "next" not in job.asks and "cannot" not in job.asks:
        return Answer()
    found = _thought(_standing(job), tuple(r.before for r in job.readings), tells=tells)
    word = None if found.verdict is None or found.verdict.finding == "low_supply" else _weak_supply(job)
    return found if word is None else replace(found, lines=(*found.lines, word))


def _standing(job: Job) -> Job:
    """The job without what only the message brought that is answered."""
    nothing = Job()
    return replace(
        job,
        asks=nothing.asks,
        fresh=nothing.fresh,
        dangers=nothing.dangers,
        topics=nothing.topics,
        new=nothing.new,
        meant_va=nothing.meant_va,
        heard=nothing.heard,
        asks_cause=nothing.asks_cause,
        put_right=nothing.put_right,
    )


@lru_cache(maxsize=THOUGHTS)
def _thought(job: Job, before: tuple[Value | None, ...], *, tells: bool) -> Answer:  # noqa: ARG001 - jobs are not compared by what was read before
    """What follows from all that stands: thought out once for every message that adds nothing to it."""
    k = known(job)
    belief = believed(k)
    steps = ranked(k, belief)
    why = reasons(k, belief.best)
    test = _recheck(k, belief) or _test(k, belief, steps, why) or _behind(job, belief)
    if not tells:
        return Answer(next_test=test)
    says = verdict(k, belief, why, settled=test is None)
    lines, cautions = _advice(k, belief, says)
    return Answer(lines=lines, cautions=cautions, next_test=test, verdict=says)


def _test(k: Known, belief: Belief, steps: list[Worth], why: tuple[Reason, ...]) -> NextTest | None:
    """The step most worth its cost; for insulation that no hand meter can judge, a megohm test."""
    is_unread = bool(steps) and not k.readings  # nothing is decided before something is read
    if is_unread or (any(step.value > 0.0 for step in steps) and not is_sure(belief, why)):
        return _asked(k.job, steps)
    value = k.evidence.value[0]
    for name in INSULATION:
        if LOST_OHM <= value[M[name]] <= SOUND_OHM and k.times[name] == 1 and (name, None) not in k.job.declined:
            how = say("Boards and thermostat off, leads dry: megohm test {place}", place=MEASURES[name].place)
            return NextTest(measure=name, instruction=how)
    return None


def is_sure(belief: Belief, why: tuple[Reason, ...]) -> bool:
    """
    True where the finding, the transformer and what may stand behind are all decided: one more test would be for its own sake.

    Not where a reading lies outside all that the finding would show: then a number may be wrong.

    Args:
        belief: What is believed of the job.
        why: How each reading bears on the likeliest finding.
    """
    is_behind_open = bool(BEHIND_OF[NAMES.index(belief.best)]) and 1.0 - SURE < belief.short < SURE
    if belief.confidence < SURE or 1.0 - SURE < belief.bad < SURE or is_behind_open:
        return False
    return all(_is_inside(reason) for reason in why)


def _is_inside(reason: Reason) -> bool:
    value = reason.reading.value
    if value == "open":
        return reason.high is None
    is_over = reason.high is not None and value > 1.15 * reason.high + 1.0
    return not is_over and (reason.low is None or value >= 0.85 * reason.low - 1.0)


def _recheck(k: Known, belief: Belief) -> NextTest | None:
    """No transformer is condemned on one reading of its insulation."""
    measure = to_recheck(k, belief)
    return None if measure is None else _asked(k.job, [Worth(measure, 0.0)])


def _behind(job: Job, belief: Belief) -> NextTest | None:
    """After an opened winding or fuse the control circuit is read, however unlikely a short is: the new part would pay for it."""
    opened = belief.best in {"primary_open", "secondary_open", "protection_open"}
    if not opened or job.last("load_ohms") is not None or ("load_ohms", None) in job.declined:
        return None
    return _asked(job, [Worth("load_ohms", 0.0)])


def _asked(job: Job, steps: list[Worth]) -> NextTest:
    first = steps[0]
    if first.fact is not None:
        measure = next((s.measure for s in steps if s.fact is None), "primary_volts")
        return NextTest(measure=measure, instruction=ASK[first.fact], fact=first.fact, buttons=ANSWERS[first.fact])
    row = MEASURES[first.measure]
    how = row.how
    if job.last(first.measure) is not None:
        how = say("Once more, to be sure: {how}", how=row.how)
        if row.live and row.unit == "V":
            how = say("Once more, in low-impedance mode: {how}", how=row.how)
    opened = (say("open"),) if row.unit == "ohm" else ()
    return NextTest(measure=first.measure, instruction=how, buttons=ANSWERS.get(first.measure, opened))


def _advice(k: Known, belief: Belief, says: Verdict) -> tuple[tuple[Said, ...], tuple[str, ...]]:
    """What to do about the finding, once it is likely enough; the proof of the repair once it is decided."""
    job = k.job
    if belief.confidence < (SAID_OF_DEAD_LINE if belief.best == "no_supply" else SAID_FROM):
        # A short that was read is looked for at once, whatever else is still open.
        is_short_read = "load_short" in {says.finding, *says.also} and job.last("load_ohms") is not None
        return (BEHIND.lines[1:], BEHIND.cautions) if is_short_read else ((), ())
    cause = CAUSES[says.finding]
    lines, cautions = list(cause.lines), list(cause.cautions)
    if says.also:
        lines = [*lines[:1], *BEHIND.lines]
        cautions = [*BEHIND.cautions, *cautions]
    elif says.transformer == "bad" and job.last("load_ohms") is None and BEHIND_OF[NAMES.index(says.finding)]:
        lines.append(LOOK_BEHIND)
    elif says.finding == "protection_open" and job.last("load_ohms") is not None:
        lines = list(FUSE_BACK)
    if says.finding == "load_short":
        cautions = ["find_the_short_first", *cautions]
    if says.finding == "wrong_tap" and _is_doubled(job):
        cautions = ["double_volts", *cautions]
    if says.finding == "no_supply" and any(may_be_ghost(job.last(name), job) for name in LINE_SIDE):
        cautions = ["ghost_voltage", *cautions]
    if says.transformer == "bad" and says.settled:
        lines.append(proof(job))
    if says.transformer == "unproven" and is_doubtful_insulation(k):
        cautions = [*cautions, "no_megohm_on_boards"]
    return tuple(lines), tuple(dict.fromkeys(cautions))


def _weak_supply(job: Job) -> Said | None:
    """A word on a supply that is low but within its limits; only where the nominal volts are told and the message brought the reading."""
    nominal, line = job.number("supply_volts"), job.figure("line_volts")
    if nominal is None or line is None or "line_volts" not in job.fresh:
        return None
    share = line / nominal
    if not OUT_OF_LIMITS[0] <= share < WORTH_A_WORD:
        return None
    return say(
        "Line {volts:.0f} V is weak for {nominal:.0f} V, within limits: read it again with the unit running",
        volts=line,
        nominal=nominal,
    )


def _is_doubled(job: Job) -> bool:
    supply, tap = job.number("supply_volts"), job.number("tap_volts")
    out = [v for m in ("secondary_volts", "secondary_volts_lifted") if (v := job.figure(m)) is not None]
    return bool((supply and tap and supply / tap >= DOUBLED) or max(out, default=0.0) >= 24.0 * DOUBLED)
