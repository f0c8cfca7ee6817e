"""The one path from a text to its reply. Every channel takes it; nothing here touches a wire, a disk or a clock."""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import asdict, replace
from typing import Any, Final

from bot.as_read import message_to_json
from bot.job import State, Turn, fold, step, take
from bot.reply import Reply
from bot.wording import compose
from bot.wording.amounts import reading_words
from bot.wording.catalog import Catalog, catalog
from bot.wording.echo import changed, taken
from bot.wording.questions import (
    ALL_IS_WELL,
    CANNOT,
    EMPTY,
    NOTED,
    NOTHING_TO_UNDO,
    SWITCHED,
    UNDONE,
    help_lines,
    history_lines,
)
from core.advice import Answer, NextTest
from core.advise import advise, speaks_of_circuit
from core.cautions import Circumstances, after_a_stop, due, for_test, is_over_300, line, spoken, times_live
from core.dangers import DANGERS, DangerAnswer, Standing, respond
from core.measures import MEASURES
from core.readings import Job
from core.said import Said
from grammar import Message, read

__all__ = ["State", "Turn", "answer", "fold", "reply_to", "step"]

DESK_ASKS: Final = frozenset(
    {
        "new_job", "resume_job", "list_jobs", "close_job", "hand_over", "export", "forget", "report", "invite", "settings", "start",
    }
)  # fmt: skip
"""Asks that touch the store: the desk carries them out and says so."""


def answer(log: Sequence[Turn], sent: Turn) -> Reply:
    """The reply to `sent` after all that came before it."""
    return reply_to(fold(log), sent)


def reply_to(state: State, sent: Turn) -> Reply:
    """The reply to `sent` where the log before it comes to `state`."""
    before, after, message = _heard(state, sent)
    job = after.job(message)
    now = Circumstances(
        technician=sent.technician,
        day=sent.sent_at.date().isoformat(),
        over_300=is_over_300(job),
        times_live=times_live(job.readings),
    )
    held = after_a_stop(state.given) if state.halted else state.given
    state = replace(state, given={**held, **_told_careful(message, now)})
    danger = respond(job, Standing(halted=state.halted, given=state.given, now=now))
    words = catalog(after.language)
    if danger.halt:
        text = compose.text((*danger.lines, *taken(message)), words)
        return _reply(text, message, Answer(), danger, {}, after.language, words)
    core_answer = advise(job)
    step_due, finding_due = _one_line(*_due(core_answer, job, state, now, danger), job, danger)
    is_firm = any(DANGERS[name].kind != "caution" for name in danger.names)
    cautions = [said for names in (finding_due, step_due) if (said := line(names)) is not None]
    if not is_firm:  # a refusal comes before all else; a mere condition where the other cautions stand
        cautions = [*danger.lines, *cautions]
    body = [*(danger.lines if is_firm else ()), *_talk_lines(message, before, job, is_released=bool(state.halted))]
    is_circuit = speaks_of_circuit(job, core_answer.verdict) or bool(message.withdrawn)
    if not body and _is_only_talk(message):
        body = list(danger.lines)
    if body and _is_only_talk(message):
        core_answer, cautions, step_due, finding_due = replace(core_answer, lines=(), picture=None), [], (), ()
    if not _is_only_talk(message) or (danger.lines and (message.readings or message.facts)):
        shown = (
            core_answer if is_circuit or core_answer.lines or "next" in message.asks else replace(core_answer, next_test=None)
        )
        body += compose.lines(message, shown, cautions=cautions, speaks_of_circuit=is_circuit, language=after.language)
    if not body:
        body = [NOTED if message.chatter else EMPTY]
    given = {
        name: asdict(replace(now, live=_is_live(core_answer.next_test))) for name in (*spoken(finding_due), *spoken(step_due))
    }
    return _reply(compose.text(body, words), message, core_answer, danger, given, after.language, words, now=now)


def _told_careful(message: Message, now: Circumstances) -> dict[str, Circumstances]:
    """Who says to have proved dead is not told to: those cautions count as given."""
    return dict.fromkeys(("prove_dead", "lock_out"), now) if message.proved_dead else {}


def _heard(state: State, sent: Turn) -> tuple[State, State, Message]:
    """The state before the text and after it, and what the text says."""
    if sent.edits is None:
        message = read(sent.text, state.context())
        return state, take(state, sent.message_id, message), message
    others = tuple(turn for turn in state.turns if sent.edits not in {turn.message_id, turn.edits})
    base = fold(others)
    return state, fold((*state.turns, sent)), read(sent.text, replace(base, asked=None, asked_fact=None).context())


def _due(
    core_answer: Answer, job: Job, state: State, now: Circumstances, danger: DangerAnswer
) -> tuple[tuple[str, ...], tuple[str, ...]]:
    """The cautions still to be said: those of the next step, and those of the finding."""
    now = replace(now, live=_is_live(core_answer.next_test))
    of_step = for_test(core_answer.next_test, job)
    names = [name for name in core_answer.cautions if name not in danger.cautions]
    return (
        due([name for name in names if name in of_step], state.given, now),
        due([name for name in names if name not in of_step], state.given, now),
    )


def _one_line(
    step_due: tuple[str, ...], finding_due: tuple[str, ...], job: Job, danger: DangerAnswer
) -> tuple[tuple[str, ...], tuple[str, ...]]:
    """Of a reading that shows nothing bad one line of caution: the danger's, else the step's. What is left out stays due."""
    if job.dangers or "find_the_short_first" in finding_due:
        return step_due, finding_due
    if danger.lines:
        return (), ()
    return step_due, (() if step_due else finding_due)


def _is_live(test: NextTest | None) -> bool:
    return test is not None and MEASURES[test.measure].live


_TALK: Final = frozenset({"help", "history", "language", "yes", "no", "all_well", "start", *DESK_ASKS})


def _is_only_talk(message: Message) -> bool:
    """True where the message brought nothing for the engineering."""
    brought = message.readings or message.facts or message.unclear or message.unread
    return (
        not brought and (bool(message.asks) or bool(message.dangers)) and set(message.asks) <= _TALK - {"yes", "no", "all_well"}
    )


def _talk_lines(message: Message, before: State, job: Job, *, is_released: bool) -> Iterator[Said]:
    """What is said to the asks that need no engineering."""
    asked = set(message.asks)
    if "all_well" in asked and is_released:
        yield ALL_IS_WELL
    if asked & {"help", "start"}:
        yield from help_lines(message.name)
    if "history" in asked and message.name is None:
        yield from history_lines(job)
    if "language" in asked:
        yield SWITCHED
    if "cannot" in asked:
        yield CANNOT
    if "undo" in asked:
        yield UNDONE if before.kept else NOTHING_TO_UNDO
    if asked & {"undo", "correct"} or message.withdrawn:
        yield from changed(before.job(message).readings, job.readings)


def _reply(
    text: str,
    message: Message,
    core_answer: Answer,
    danger: DangerAnswer,
    given: Mapping[str, Any],
    language: str,
    words: Catalog,
    now: Circumstances | None = None,
) -> Reply:
    test = core_answer.next_test
    now = now or Circumstances()
    own = {name: asdict(now) for name in (*danger.cautions, *danger.names, *_told_careful(message, now))}
    talk = {
        "read": message_to_json(message),
        "asked": None if test is None or test.fact is not None else [test.measure, list(test.leads) if test.leads else None],
        "asked_fact": None if test is None else test.fact,
        "given": {**own, **given},
        "halted": list(danger.names) if danger.halt else [],
        "language": language,
    }
    return Reply(
        text=text,
        message=message,
        answer=core_answer,
        buttons=_buttons(message, test, words),
        cautions=tuple(dict.fromkeys((*danger.names, *danger.cautions, *given))),
        picture=core_answer.picture,
        language=language,
        document="report" if "report" in message.asks else None,
        talk=talk,
    )


def _buttons(message: Message, test: NextTest | None, words: Catalog) -> tuple[str, ...]:
    if message.unclear:
        choices = message.unclear[0]
        return tuple(words.tell(reading_words(r)) for r in choices.readings) or choices.choices
    return () if test is None else tuple(words.tell(button) for button in test.buttons)
