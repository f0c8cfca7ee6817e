"""What a text says: readings, facts, asks, and whatever was not understood."""

from dataclasses import dataclass, field
from typing import Literal

from core.heard.record import Heard
from core.readings import Fact, Reading
from core.said import Said


@dataclass(frozen=True, slots=True, kw_only=True)
class Unclear:
    """A fragment that reads in more than one way: it counts only after an answer."""

    fragment: str
    choices: tuple[str, ...]
    """The measures (or lead names) that it could be."""
    readings: tuple[Reading, ...] = ()
    """The reading for each choice, in the same order, where the choice is one: a "yes" takes the first."""
    question: Said | None = None
    """What to ask, with the likely slip named: "sec 246 V can't be: 24.6 V?"."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Message:
    """A text as it was read. Nothing of it is lost: what fits nothing stands in `unread`."""

    readings: tuple[Reading, ...] = ()
    facts: tuple[Fact, ...] = ()
    asks: tuple[str, ...] = ()
    unread: tuple[str, ...] = ()
    unclear: tuple[Unclear, ...] = ()
    dangers: tuple[str, ...] = ()
    """Names of dangers that the words show; `core.dangers` has the answers to them."""
    repairs: tuple[tuple[str, str], ...] = ()
    """(as written, as read): spellings mended in a way that changes meaning, to be echoed."""
    withdrawn: tuple[str, ...] = ()
    """Measures or facts of earlier messages that this text takes back without putting another value."""
    language: str | None = None
    """`en` or `es` where the words show it; None where they don't."""
    name: str | None = None
    """The name of the job that the text is about."""
    proved_dead: bool | None = None
    """True where the text says that the circuit was measured dead."""
    qualified: bool | None = None
    """Whether the writer says to be qualified for live work over 300 V; None where nothing is said of it."""
    heard: tuple[Heard, ...] = ()
    """What is no measure of ours and still decides the call; values among it stand in `unread` too."""
    topics: tuple[str, ...] = ()
    """What the words narrow the question down to; names of `core.readings.TOPICS`."""
    meant_va: float | None = None
    """The size that is to take the place of the unit that is there. [VA]"""
    asked_device: str | None = None
    """The device of which it is asked how many a unit carries: no load by that."""
    unknown_loads: tuple[str, ...] = ()
    """Fragments of `unread` that stand where a device would: no load is made of them."""
    chatter: tuple[str, ...] = ()
    """Fragments recognised as none of ours (times, pressures, phone numbers): kept in the log, not asked about."""
    undoes: int | None = None
    """How many messages are to be taken back, where it is more than the last."""
    forgets: Literal["all", "job", "readings"] | None = None
    """What is to be forgotten, where `forget` is asked."""
    repaired: bool | None = None
    """True where the text says that the unit was repaired just now: what is read from here on is of another circuit."""
    renewed: tuple[str, ...] = ()
    """Names of `core.repairs.REPAIRS`: what else the text says was put right just now."""
    lacks: tuple[str, ...] = ()
    """Measures of a part that the text says is not there: "no fuse here"."""
    turn: Literal["cause", "runs", "thanks", "complaint"] | None = None
    """What a text is in a conversation that brings nothing to read: what made it fail is asked, it runs again, thanks, or what is wrong."""

    @property
    def withdrawn_loads(self) -> tuple[str, ...]:
        """Devices that are taken off the load."""
        return tuple(name.removeprefix("load ") for name in self.withdrawn if name.startswith("load "))

    @property
    def unread_numbers(self) -> tuple[str, ...]:
        """What was not understood and has a number in it: that may have been a reading."""
        return tuple(fragment for fragment in self.unread if any(letter.isdigit() for letter in fragment))


@dataclass(frozen=True, slots=True, kw_only=True)
class Context:
    """What the conversation knows when the text arrives."""

    asked: tuple[str, tuple[str, str] | None] | None = None
    """Measure and leads of the test just asked: a bare value answers it."""
    asked_fact: str | None = None
    """The fact just asked for, where it was a fact."""
    unclear: tuple[Unclear, ...] = ()
    """What the last reply asked about: a "yes", a choice or a unit settles it."""
    readings: tuple[Reading, ...] = ()
    """All that stand, in order: a correction without a place means the last of them that it can mean."""
    facts: tuple[Fact, ...] = field(default=())
    language: str = "en"
    said_before: tuple[str, ...] = ()
    """The messages before this one, the newest last: "jump it" may speak of a part that stands there."""
    finding: str | None = None
    """What the last verdict found: "a new one" is the part that it speaks of."""
    transformer: str | None = None
    """What the last verdict said of the transformer."""
    repaired: bool = False
    """True where a repair was told, and what is read now proves it."""

    @property
    def is_of_leads(self) -> bool:
        """True where leads were read against each other before."""
        return any(reading.measure.startswith("lead_") for reading in self.readings)
