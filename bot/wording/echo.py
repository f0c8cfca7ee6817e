"""What was taken from the message, and what was not: so that a misread is seen at once."""

from collections.abc import Iterator, Sequence

from bot.wording.amounts import PLACES, fact_words, reading_words
from core.measures import MEASURES
from core.readings import OPEN, Reading
from core.said import Said, say
from grammar.message import Message, Unclear

LONGEST = 60
"""How much of a fragment that was not understood is repeated. [characters]"""
MOST = 8
"""How many items an echo names before it counts the rest."""


def listed(items: Sequence[Said]) -> Said:
    """Some items in a row, set apart by middle dots."""
    shown = list(items[:MOST])
    line = shown[0]
    for item in shown[1:]:
        line = say("{left} · {right}", left=line, right=item)
    return say("{line} and {more} more", line=line, more=len(items) - MOST) if len(items) > MOST else line


def taken(message: Message) -> Iterator[Said]:
    """What was read of the message."""
    readings = sorted(message.readings, key=lambda r: r.measure == "lead_ohms" and r.value == OPEN)  # opens tell least
    items = [*(reading_words(r) for r in readings), *(fact_words(f) for f in message.facts)]
    if items:
        yield say("Read: {items}", items=listed(items))
    for device in message.withdrawn_loads:
        yield say("Taken off: {device}", device=device)
    if any(r.assumed for r in message.readings):
        yield say("(?) is my guess: say if it is wrong")
    for written, meant in message.repairs:
        yield say("Took “{written}” for {meant}", written=written, meant=meant)


def not_taken(message: Message, nearest: str | None) -> Iterator[Said]:
    """What needs a word from the technician, and what could not be read."""
    for unclear in message.unclear:
        if unclear.question is not None:
            yield unclear.question
        else:
            yield say("“{fragment}”: which of these? {choices}", fragment=unclear.fragment, choices=listed(_choices(unclear)))
    unread = [fragment for fragment in message.unread if not _is_answered(fragment, message)]
    if unread:
        yield say("Not understood: “{fragments}”", fragments="”, “".join(_cut(fragment) for fragment in unread[:4]))
        if nearest is not None:
            yield say("Try it like this: {example}", example=nearest)


def _is_answered(fragment: str, message: Message) -> bool:
    """Whether nothing is left of a fragment beside what was heard and is answered."""
    if any(fragment in heard.fragment for heard in message.heard) or fragment in message.unknown_loads:
        return True
    left = fragment
    for heard in message.heard:
        left = left.replace(heard.fragment, "")
    return left != fragment and not any(letter.isalnum() for letter in left)


def _choices(unclear: Unclear) -> list[Said]:
    """What a fragment could be, as places with their units; a choice that is no measure stands as it is."""
    return [
        say("{place} {value}", place=PLACES[name], value=MEASURES[name].unit)
        if name in MEASURES
        else say("{place}", place=name)
        for name in unclear.choices
    ]


def _cut(fragment: str) -> str:
    """The start of a fragment: enough to find it again."""
    return fragment if len(fragment) <= LONGEST else f"{fragment[:LONGEST]}…"


def changed(before: Sequence[Reading], after: Sequence[Reading]) -> Iterator[Said]:
    """What an undo, an edit or a correction changed."""
    gone = [r for r in before if r not in after]
    come = [r for r in after if r not in before]
    for old in gone:
        new = next((r for r in come if r.measure == old.measure and r.leads == old.leads), None)
        if new is None:
            yield say("Taken back: {reading}", reading=reading_words(old))
        else:
            yield say("Changed: {old} is now {new}", old=reading_words(old), new=reading_words(new))
