"""The one path from a text to its reply. Every channel takes it; nothing here touches a wire, a disk or a clock."""

from collections.abc import Iterator, Sequence
from dataclasses import replace
from typing import Final

from bot.as_read import message_to_json
from bot.care import Care, meet, with_step
from bot.job import State, Turn, fold, step, take
from bot.news import only_news
from bot.reply import Reply
from bot.wording import compose
from bot.wording.amounts import reading_words
from bot.wording.catalog import Catalog, catalog
from bot.wording.echo import changed, taken
from bot.wording.questions import (
    ALL_IS_WELL,
    CANNOT,
    CLEARED,
    CLOSE_IT,
    EMPTY,
    KEPT,
    NOTED,
    NOTHING_TO_UNDO,
    PUT_RIGHT,
    RUNS,
    SWITCHED,
    UNDONE,
    clear_lines,
    help_lines,
    history_lines,
)
from core.advice import Answer, NextTest
from core.advise import advise, speaks_of_circuit
from core.heard.answers import spoken
from core.measures import MEASURES
from core.readings import Job
from core.said import Said, say
from grammar import Message, read

__all__ = ["State", "Turn", "answer", "fold", "reply_to", "step"]

DESK_ASKS: Final = frozenset(
    {
        "new_job", "resume_job", "list_jobs", "close_job", "hand_over", "export", "forget", "report", "invite", "settings", "start",
    }
)  # fmt: skip
"""Asks that touch the store: the desk carries them out and says so."""
_ONLY_TALK: Final = frozenset({"help", "history", "language", *DESK_ASKS})


def answer(log: Sequence[Turn], sent: Turn) -> Reply:
    """The reply to `sent` after all that came before it."""
    return reply_to(fold(log), sent)


def reply_to(state: State, sent: Turn) -> Reply:
    """The reply to `sent` where the log before it comes to `state`."""
    after, message = _heard(state, sent)
    job = _complained(after.job(message), message)
    care = meet(state, sent, job, message)
    words = catalog(after.language)
    if care.danger.halt:  # what was sent is kept, and nothing else is answered
        return _reply((*care.danger.lines, *taken(message)), message, Answer(), care, words)
    core_answer = advise(job)
    if message.renewed and not message.readings and "prove" not in message.asks:  # the whole list of what proves it comes later
        core_answer = replace(core_answer, lines=())
    talk = tuple(_talk_lines(message, state, after, job, is_released=care.halted))
    if _is_only_talk(message) or _answers_clearing(message, state):
        silent = replace(core_answer, lines=(), picture=None)
        clearing = message.forgets == "readings" and bool(after.readings)
        return _reply((*care.danger.lines, *talk) or (EMPTY,), message, silent, care, words, clearing=clearing)
    if care.refused:  # the refusal names the safe step: no other stands beside it
        answered = core_answer.lines if care.leaves_an_answer(job) and not message.readings else _heard_lines(job)
        core_answer = replace(core_answer, lines=answered, next_test=None, cautions=(), picture=None)
        is_told = bool(message.readings) and speaks_of_circuit(job, core_answer.verdict)
        verdict = only_news(core_answer, state, job, words).verdict if is_told else None
        lines = (*care.danger.lines, *talk, *compose.beside_refusal(message, verdict), *answered)
        return _reply(lines, message, core_answer, care, words)
    talk = (*talk, *((PUT_RIGHT,) if message.renewed and state.readings else ()))
    care = with_step(care, core_answer, job)
    is_circuit = speaks_of_circuit(job, core_answer.verdict) or len(message.withdrawn) > len(message.withdrawn_loads)
    goes_on = is_circuit or core_answer.lines or {"next", "why"} & set(message.asks) or message.renewed
    news = only_news(core_answer, state, job, words)
    shown = news if goes_on else replace(news, next_test=None)
    body = compose.lines(message, shown, cautions=care.cautions, speaks_of_circuit=is_circuit, language=after.language)
    lines = (*care.first, *talk, *body) or (NOTED if message.chatter or _goes_with(state, sent) else EMPTY,)
    return _reply(lines, message, core_answer, care, words)


def _goes_with(state: State, sent: Turn) -> bool:
    """A word in the middle of a job that asks nothing: it stays with it."""
    return bool(state.kept) and "?" not in sent.text and not any(sign.isdigit() for sign in sent.text)


def _heard(state: State, sent: Turn) -> tuple[State, Message]:
    """The state after the text, and what the text says."""
    if sent.edits is None:
        message = _under_load(read(sent.text, state.context()), state)
        return take(state, sent.message_id, message), message
    others = tuple(turn for turn in state.turns if sent.edits not in {turn.message_id, turn.edits})
    context = replace(fold(others), asked=None, asked_fact=None).context()
    return fold((*state.turns, sent)), read(sent.text, context)


def _under_load(message: Message, state: State) -> Message:
    """The message with its secondary read under load, where the proof of a repair has asked for that."""
    if state.repair is None or state.asked is None or state.asked[0] != "secondary_volts":
        return message
    readings = tuple(replace(r, loaded=True) if r.measure == "secondary_volts" else r for r in message.readings)
    return replace(message, readings=readings)


def _heard_lines(job: Job) -> tuple[Said, ...]:
    """What is said to things heard stands beside a refusal too: it never goes around one."""
    heard = spoken(job)
    steps = (said.next_test.instruction for said in heard if said.next_test is not None)
    return (*(line for said in heard for line in said.lines), *steps)


def _small_words(message: Message, before: State) -> Iterator[Said]:
    """What is said to a word of thanks and to a call for help."""
    if message.turn in CLOSING and (before.kept or before.turns):
        if message.renewed:
            yield PUT_RIGHT
        yield CLOSING[message.turn]
    if {"help", "start"} & set(message.asks):
        yield from help_lines(message.name)


CLOSING: Final = {"runs": RUNS, "thanks": CLOSE_IT}
"""What a word that asks for nothing is answered with."""


def _complained(job: Job, message: Message) -> Job:
    """A call that begins with what is wrong gets its first test, and a part that is not there the test after it."""
    goes_on = message.turn == "complaint" or bool(message.lacks)
    return replace(job, asks=(*job.asks, "next")) if goes_on and not message.asks else job


def _is_only_talk(message: Message) -> bool:
    """True where the message brought nothing for the engineering."""
    brought = message.readings or message.facts or message.unclear or message.unread
    if message.turn in CLOSING and not brought and not message.asks:
        return True
    if "secondary_ground" in message.dangers:  # a question that sizing answers
        return False
    return not brought and bool(message.asks or message.dangers) and set(message.asks) <= _ONLY_TALK


def _answers_clearing(message: Message, before: State) -> bool:
    """Whether a message says yes or no to the readings being started over."""
    return before.clearing and bool({"yes", "no"} & set(message.asks))


def _talk_lines(message: Message, before: State, after: State, job: Job, *, is_released: bool) -> Iterator[Said]:
    """What is said to the asks that need no engineering."""
    asked = set(message.asks)
    if "all_well" in asked and is_released:
        yield ALL_IS_WELL
    yield from _small_words(message, before)
    if "history" in asked and message.name is None:
        yield from history_lines(job, after.before_repair if after.since_repair else ())
    if message.forgets == "readings":
        yield from clear_lines(len(before.readings))
    if _answers_clearing(message, before):
        yield CLEARED if "yes" in asked else KEPT
        return
    if "language" in asked:
        yield SWITCHED
    if "cannot" in asked:
        yield CANNOT
    if "undo" in asked and not message.withdrawn:
        yield UNDONE if before.kept else NOTHING_TO_UNDO
    if asked & {"undo", "correct"} or message.withdrawn:
        yield from changed(before.job(message).readings, job.readings)


def _reply(
    lines: Sequence[Said], message: Message, core_answer: Answer, care: Care, words: Catalog, *, clearing: bool = False
) -> Reply:
    test = core_answer.next_test
    return Reply(
        text=compose.text(lines, words),
        message=message,
        answer=core_answer,
        buttons=_buttons(message, test, words, clearing=clearing),
        cautions=care.names,
        picture=core_answer.picture,
        language=words.language,
        talk={
            "read": message_to_json(message),
            "asked": None
            if test is None or test.fact is not None
            else [test.measure, list(test.leads) if test.leads else None],
            "asked_fact": None if test is None else test.fact,
            "given": care.remembered(),
            "clearing": clearing,
            **_found(core_answer),
            "halted": list(care.danger.names) if care.danger.halt else [],
            "language": words.language,
        },
    )


def _found(core_answer: Answer) -> dict[str, str]:
    """What the verdict says, for what the next message leans on."""
    verdict = core_answer.verdict
    return {} if verdict is None else {"finding": verdict.finding, "transformer": verdict.transformer}


def _buttons(message: Message, test: NextTest | None, words: Catalog, *, clearing: bool) -> tuple[str, ...]:
    if clearing:
        return words.tell(say("yes")), words.tell(say("no"))
    if message.unclear:
        choices = message.unclear[0]
        names = tuple(choice for choice in choices.choices if choice not in MEASURES)  # our own names are nobody's words
        return tuple(words.tell(reading_words(r)) for r in choices.readings) or names
    return () if test is None else tuple(words.tell(button) for button in test.buttons)
