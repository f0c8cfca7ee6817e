"""All lines of a reply in the order in which they are to be read: danger, verdict, echo, why, what to do next, and the caution of that step."""

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import replace

from bot.wording.catalog import Catalog
from bot.wording.echo import not_taken, taken
from bot.wording.verdict import verdict_lines, why_lines
from core.advice import Answer, NextTest, Verdict
from core.said import Said, say
from grammar import nearest
from grammar.message import Message

MOST_LINES = 16
"""A reply longer than this is not read on a roof."""


def lines(
    message: Message, answer: Answer, *, cautions: Sequence[Said], speaks_of_circuit: bool, language: str
) -> Iterator[Said]:
    """
    The lines of an ordinary reply.

    Args:
        message: What was read.
        answer: What core says.
        cautions: The cautions to be said with the next step.
        speaks_of_circuit: True where the message brought something that the verdict lives on.
        language: For the nearest example of what was not understood.
    """
    verdict = answer.verdict if speaks_of_circuit else None
    if verdict is not None:
        yield from verdict_lines(verdict)
    yield from taken(message)
    if verdict is not None:
        yield from why_lines(verdict)
    yield from answer.lines
    fragment = message.unread[0] if message.unread else ""
    is_lost = bool(fragment) and not (message.readings or message.facts or verdict)
    yield from not_taken(message, nearest(fragment, language) if is_lost else None)
    if answer.next_test is not None:
        yield next_line(answer.next_test)
    elif verdict is not None and verdict.settled:
        yield say("Decided: no further test would change it")
    for caution in cautions:
        yield say("Caution: {caution}", caution=caution)


def beside_refusal(message: Message, verdict: Verdict | None) -> Iterator[Said]:
    """
    The lines under a refusal: what was read and what it shows, nothing that would draw from the refusal.

    Args:
        message: What was read.
        verdict: What core says, where the message brought readings.
    """
    if verdict is not None:
        yield from verdict_lines(verdict)
    yield from taken(message)
    if verdict is not None:
        yield from why_lines(verdict)
    yield from not_taken(replace(message, unread=message.unread_numbers), None)


def next_line(test: NextTest) -> Said:
    """The one next step."""
    return say("Next: {instruction}", instruction=test.instruction)


def text(said: Iterable[Said], catalog: Catalog) -> str:
    """The lines in the technician's language, each once."""
    told = dict.fromkeys(catalog.tell(line) for line in said)
    return "\n".join(list(told)[:MOST_LINES])
