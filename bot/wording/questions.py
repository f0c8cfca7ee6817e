"""Answers that need no engineering: help by example, what was sent so far, and the few words of a conversation."""

from collections.abc import Iterator, Sequence
from typing import Final

from bot.wording.amounts import fact_words, reading_words
from core.readings import Job, Reading
from core.said import Said, say

HELP: Final = (
    say("Text what the meter reads, in your own shorthand:"),
    say("  pri 118V sec 0V pri-ohm open"),
    say("  wht-blk 20.4, wht-red 53, blu-yel 1.2 ohms, which is common?"),
    say("  which tap for 208?"),
    say("  size for 2 contactors 9va, gas valve half amp"),
    say("Then: next, why, undo, report, new job NAME, lang es"),
    say("More: help readings, help leads, help size, help job"),
)
TOPICS: Final[dict[str, tuple[Said, ...]]] = {
    "readings": (
        say("Place, value, unit, in any order; several at once:"),
        say("  208 building, on the 240 tap, pri 206 sec 20.6"),
        say("  ohms: pri 19.8 sec 1.1 pri-case OL"),
        say("  sec 26.4 with R off, R-C 0, fuse OL"),
        say("Wrong number: *24.6, or undo, or edit the message"),
    ),
    "leads": (
        say("Ohms between pairs, in any order, and what the label says:"),
        say("  white-black 20.4, white-red 53, blue-yellow 1.2, everything else OL"),
        say("  label: black common, red 208"),
        say("Then: which is common? which tap for 208?"),
    ),
    "size": (
        say("What hangs on it, how far, on what wire:"),
        say("  2 contactors 9va, thermostat 3va, what size?"),
        say("  40 va 24 v, is a 3 amp fuse ok?"),
        say("  150 ft of 18/5 to a gas valve at .4 amp, how much do I lose?"),
    ),
    "job": (
        say("  new job rtu 3 library"),
        say("  my jobs · back to rtu 3 · report"),
        say("  done, replaced, 50 va, 208 tap, 2 a fuse"),
        say("  hand this over · export · forget"),
    ),
}
WORD_TOPICS: Final[dict[str, str]] = {
    "reading": "readings", "lead": "leads", "tap": "leads", "wires": "leads", "sizing": "size", "fuse": "size", "wire": "size",
    "va": "size", "jobs": "job", "report": "job", "lecturas": "readings", "cables": "leads", "tamaño": "size", "trabajo": "job",
}  # fmt: skip
"""Other words for the topics."""


def help_lines(topic: str | None) -> tuple[Said, ...]:
    """Help on a topic, or the short help."""
    word = (topic or "").strip().lower()
    return TOPICS.get(WORD_TOPICS.get(word, word), HELP)


def history_lines(job: Job, before_repair: Sequence[Reading] = ()) -> Iterator[Said]:
    """All that stands, a line each; what was read before a repair comes first."""
    if not job.readings and not job.facts and not before_repair:
        yield say("Nothing on this job yet")
        return
    yield say("On this job so far:")
    if before_repair:
        for reading in before_repair:
            yield reading_words(reading)
        yield say("After the repair:")
    for reading in job.readings:
        yield reading_words(reading)
    for fact in job.facts:
        yield fact_words(fact)


def clear_lines(count: int) -> Iterator[Said]:
    """The question before the readings of a job are started over."""
    if not count:
        yield say("No readings on this job yet")
        return
    yield say("This starts the readings of this job over: {count} no longer count", count=count)
    yield say("yes starts over, anything else keeps")


CLEARED: Final = say("Started over: no reading counts. To bring them back: undo")
KEPT: Final = say("Kept. Every reading counts as before")
PUT_RIGHT: Final = say("Put right: what was read there before counts no more")
EMPTY: Final = say("Nothing to read in that. Text the meter's readings, or: help")
NOTHING_TO_UNDO: Final = say("Nothing left to undo on this job")
UNDONE: Final = say("Undone. What stands is as before that message")
SWITCHED: Final = say("English from here on")
ALL_IS_WELL: Final = say("Good. Going on. What you sent is kept")
NOTED: Final = say("Noted with the job. Not a reading")
CLOSE_IT: Final = say("To close the job: done, and what you did")
RUNS: Final = say("Noted: it runs. To close the job: done, and what you did")
CANNOT: Final = say("All right, another way then")
