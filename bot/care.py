"""What a reply says of danger: what comes before all else, which cautions go with the next step, and what counts as said."""

from collections.abc import Mapping
from dataclasses import asdict, dataclass, field, replace
from typing import Any

from bot.job import State, Turn
from core.advice import Answer, NextTest
from core.cautions import Circumstances, after_a_stop, due, for_test, is_over_300, line, spoken, times_live
from core.dangers import DANGERS, DangerAnswer, Standing, respond
from core.measures import MEASURES
from core.readings import Job
from core.said import Said
from grammar import Message

ANSWERED_BESIDE = frozenset({"bigger_fuse", "parallel_class2"})
"""Refusals beside which sizing answers what was asked."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Care:
    """The words of danger of one reply."""

    danger: DangerAnswer
    now: Circumstances
    first: tuple[Said, ...] = ()
    """Refusals: before all else."""
    cautions: tuple[Said, ...] = ()
    """With the next step."""
    spoken: tuple[str, ...] = ()
    """Names of the cautions said, beside those of the danger itself."""
    careful: tuple[str, ...] = ()
    """Names of the cautions that the technician said to have heeded: they count as given."""
    live: bool = False
    halted: bool = False
    """True where a stop was in force before this message."""
    given: Mapping[str, Circumstances] = field(default_factory=dict)
    """What was said before."""

    @property
    def refused(self) -> frozenset[str]:
        """Names of what is refused."""
        return frozenset(name for name in self.danger.names if DANGERS[name].kind == "no")

    def leaves_an_answer(self, job: Job) -> bool:
        """True where what is refused was a question with an answer of its own: which fuse instead, what two units together would take."""
        return self.refused <= ANSWERED_BESIDE and bool({"fuse", "parallel"} & set(job.asks))

    @property
    def names(self) -> tuple[str, ...]:
        """For the record: dangers and cautions that stand in the text."""
        return tuple(dict.fromkeys((*self.danger.names, *self.danger.cautions, *self.spoken)))

    def remembered(self) -> dict[str, Any]:
        """For the fold, ready for JSON: what was said, and in which circumstances."""
        own = {name: asdict(self.now) for name in (*self.danger.cautions, *self.danger.names, *self.careful)}
        return own | {name: asdict(replace(self.now, live=self.live)) for name in self.spoken}


def meet(state: State, sent: Turn, job: Job, message: Message) -> Care:
    """The answer to what is dangerous in a message, before any engineering."""
    now = Circumstances(
        technician=sent.technician,
        day=sent.sent_at.date().isoformat(),
        over_300=is_over_300(job),
        times_live=times_live(job.readings),
    )
    careful = ("prove_dead", "lock_out") if message.proved_dead else ()
    held = after_a_stop(state.given) if state.halted else state.given
    given = {**held, **dict.fromkeys(careful, now)}
    danger = respond(job, Standing(halted=state.halted, given=given, now=now))
    return Care(danger=danger, now=now, careful=careful, given=given, halted=bool(state.halted))


def with_step(care: Care, answer: Answer, job: Job) -> Care:
    """The same with the cautions that belong to what core asks for."""
    step_due, finding_due = _one_line(*_due(care, answer, job), job, care.danger)
    told = [said for names in (finding_due, step_due) if (said := line(names)) is not None]
    # A refusal comes before all else; a mere condition stands where the other cautions stand.
    is_firm = any(DANGERS[name].kind != "caution" for name in care.danger.names)
    return replace(
        care,
        first=care.danger.lines if is_firm else (),
        cautions=tuple(told) if is_firm else (*care.danger.lines, *told),
        spoken=(*spoken(finding_due), *spoken(step_due)),
        live=_is_live(answer.next_test),
    )


def _due(care: Care, answer: Answer, job: Job) -> tuple[tuple[str, ...], tuple[str, ...]]:
    """The cautions still to be said: those of the next step, and those of the finding."""
    now = replace(care.now, live=_is_live(answer.next_test))
    of_step = for_test(answer.next_test, job)
    names = [name for name in answer.cautions if name not in care.danger.cautions]
    return (
        due([name for name in names if name in of_step], care.given, now),
        due([name for name in names if name not in of_step], care.given, now),
    )


def _one_line(
    step_due: tuple[str, ...], finding_due: tuple[str, ...], job: Job, danger: DangerAnswer
) -> tuple[tuple[str, ...], tuple[str, ...]]:
    """Of a reading that shows nothing bad one line of caution: the danger's, else the step's. What is left out stays due."""
    if job.dangers or "find_the_short_first" in finding_due:
        return step_due, finding_due
    if danger.lines and danger.names:
        return (), ()
    return step_due, (() if step_due else finding_due)


def _is_live(test: NextTest | None) -> bool:
    return test is not None and MEASURES[test.measure].live
