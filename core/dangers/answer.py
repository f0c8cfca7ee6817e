"""The answer to the dangers of a message: its lines, and whether the diagnosis waits."""

from collections.abc import Callable, Iterable, Mapping
from dataclasses import dataclass, field
from typing import Final

from core.cautions import CAUTIONS, Circumstances, due, is_over_300
from core.dangers.recognise import from_readings, from_words, tap_ratio
from core.dangers.table import DANGERS
from core.readings import Job
from core.said import Said, say


@dataclass(frozen=True, slots=True, kw_only=True)
class Standing:
    """What the conversation remembers: the conversation fills it from the log."""

    halted: tuple[str, ...] = ()
    """Names of the stops that were not yet answered by all being well."""
    given: Mapping[str, Circumstances] = field(default_factory=dict)
    """Cautions, by name, with the circumstances in which they were last said."""
    now: Circumstances = field(default_factory=Circumstances)


@dataclass(frozen=True, slots=True, kw_only=True)
class DangerAnswer:
    """What is said before anything else."""

    lines: tuple[Said, ...] = ()
    halt: bool = False
    """True where nothing else is answered: the readings are kept, the diagnosis waits for `all_well`."""
    names: tuple[str, ...] = ()
    """The dangers that the lines speak of, the worst first."""
    cautions: tuple[str, ...] = ()
    """The cautions that the lines say with them: given, from now on."""


_MOST_BY_WORDS: Final = 2
"""Refusals and referrals of one reply."""
_MOST_CONDITIONS: Final = 3
"""Conditions that the words show, of one reply: high voltage, tired and alone are three."""
_ANNOUNCED: Final = frozenset({"not_proved_dead", "charged_capacitor", "test_jumper", "ghost_voltage"})
"""Conditions of an act that is about to be done: said whenever it is announced, whatever was said before."""
ALL_WELL: Final = say("No diagnosis until you write that all is well. What you sent is kept")
AFTER_A_SHOCK: Final = say(
    "A shock has a cause: line off and locked, ground wire landed, ohms primary to case. No power until it is found"
)
STILL_HALTED: Final = say("First: is everybody safe and unhurt? Write: all is well")


def is_firm(names: Iterable[str]) -> bool:
    """
    True where one of these dangers stops or is refused.

    Args:
        names: Names of dangers.

    >>> is_firm(("alone", "bypass_fuse"))
    True
    """
    return any(name in DANGERS and DANGERS[name].kind in {"stop", "no"} for name in names)


def respond(job: Job, state: Standing) -> DangerAnswer:
    """
    The answer to what is dangerous in the newest message.

    A stop outweighs everything and holds until `all_well`. Of refusals and referrals two are said; where there are none, of conditions
    three that the words show or one that the readings show, and only where it is due.

    Args:
        job: What is known, with the dangers of the newest message.
        state: What was said before.

    Returns:
        Lines in the order they are to be read; nothing where there is no danger.

    >>> [str(line) for line in respond(Job(dangers=("wet",)), Standing()).lines][0]
    'No. Nothing live in the wet'
    """
    words, readings = from_words(job), from_readings(job)
    names = tuple(name for name in DANGERS if name in words or name in readings)
    stops = tuple(name for name in names if DANGERS[name].kind == "stop")
    if stops:
        worst = DANGERS[stops[0]]
        return DangerAnswer(lines=(*_lines(worst.name, job), ALL_WELL), halt=True, names=stops)
    if state.halted and "all_well" not in job.asks:
        return DangerAnswer(lines=(DANGERS[state.halted[0]].says, STILL_HALTED), halt=True, names=state.halted)
    if "shock" in state.halted and not names:
        return DangerAnswer(lines=(AFTER_A_SHOCK,))
    return _answer(tuple(name for name in names if DANGERS[name].kind in {"no", "refer"}), names, job, state)


def _answer(firm: tuple[str, ...], names: tuple[str, ...], job: Job, state: Standing) -> DangerAnswer:
    said = [caution for name in firm for caution in DANGERS[name].cautions]
    conditions = () if firm else _conditions(names, job, state)
    said += [caution for name in conditions for caution in DANGERS[name].cautions]
    return DangerAnswer(
        lines=tuple(line for name in (*firm[:_MOST_BY_WORDS], *conditions) for line in _lines(name, job)),
        names=(*firm, *conditions),
        cautions=tuple(dict.fromkeys(said)),
    )


def _conditions(names: tuple[str, ...], job: Job, state: Standing) -> tuple[str, ...]:
    """Three that the words show, else the worst that the readings show: more than one line on a reading is a nuisance."""
    due_now = tuple(
        n for n in names if DANGERS[n].kind == "caution" and ((n in job.dangers and n in _ANNOUNCED) or _is_due(n, job, state))
    )
    by_words = tuple(n for n in due_now if n in job.dangers)
    return by_words[:_MOST_CONDITIONS] or _first_by_readings(due_now)


def _first_by_readings(due_now: tuple[str, ...]) -> tuple[str, ...]:
    """The worst; what would condemn a sound part is told before the voltage, which is told at the next live step."""
    return ("ground_meant",) if "ground_meant" in due_now else due_now[:1]


def _is_due(name: str, job: Job, state: Standing) -> bool:
    """A condition is said again only when its caution is; one without a caution of its own counts under its own name, and so does a live test over 300 V."""
    cautions = [c for c in DANGERS[name].cautions if c in CAUTIONS]
    if not cautions or (name == "live_check" and is_over_300(job)):
        then = state.given.get(name)
        return then is None or (then.technician, then.day) != (state.now.technician, state.now.day)
    return bool(due(cautions[:1], state.given, state.now))


def _lines(name: str, job: Job) -> tuple[Said, ...]:
    danger = DANGERS[name]
    says = _TOLD[name](job) if name in _TOLD else danger.says
    return (says,) if danger.instead is None else (says, danger.instead)


def _live_check(job: Job) -> Said:
    return DANGERS["over_300" if is_over_300(job) else "live_check"].says


def _tap_too_low(job: Job) -> Said:
    ratio = tap_ratio(job)
    if ratio is None:
        return DANGERS["tap_too_low"].says
    tap_v = job.number("tap_volts") or 0.0
    nominal_v = job.number("rated_secondary_volts") or 24.0
    return say(
        "No. Power off: {supply:.0f} V on the {tap:.0f} V tap puts about {out:.0f} V on the controls and burns them",
        supply=ratio * tap_v,
        tap=tap_v,
        out=ratio * nominal_v,
    )


def _backfeed(job: Job) -> Said:
    if "backfeed" not in from_readings(job) or "backfeed" in job.dangers:
        return DANGERS["backfeed"].says
    return say("No. Hands off: it is live from somewhere else, a second supply or backfeed. Find it before you touch a lead")


def _bigger_fuse(job: Job) -> Said:
    amps = job.number("fuse_amps")
    if amps is None or "bigger_fuse" not in from_readings(job):
        return DANGERS["bigger_fuse"].says
    return say("No. {amps:g} A is too big for a 24 V circuit: wire and transformer burn first", amps=amps)


_TOLD: Final[dict[str, Callable[[Job], Said]]] = {
    "live_check": _live_check,
    "tap_too_low": _tap_too_low,
    "backfeed": _backfeed,
    "bigger_fuse": _bigger_fuse,
}
"""Refusals that name the numbers of the job."""
