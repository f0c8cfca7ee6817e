"""A job's state is a fold over its log: an edit, an undo, a correction and a restart are the same thing."""

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass, field, replace
from datetime import datetime
from functools import reduce
from types import MappingProxyType
from typing import Any, Final

from bot.as_read import message_from_json
from core.cautions import Circumstances
from core.measures import MEASURES
from core.readings import Fact, Job, Reading
from grammar import Context, Message, Unclear, read

NOTHING: Final[Mapping[str, Any]] = MappingProxyType({})


@dataclass(frozen=True, slots=True, kw_only=True)
class Turn:
    """One message as it was logged, and what was answered."""

    number: int
    text: str
    message_id: str
    edits: str | None = None
    """Id of the message whose text this one replaces."""
    sent_at: datetime
    technician: str = ""
    reply: Mapping[str, Any] | None = None
    """The record of the reply as it was given, with its `talk`."""

    @property
    def talk(self) -> Mapping[str, Any]:
        """What the reply left for the fold."""
        return NOTHING if self.reply is None else self.reply.get("talk") or NOTHING


@dataclass(frozen=True, slots=True, kw_only=True)
class State:
    """What a job's log comes to."""

    turns: tuple[Turn, ...] = ()
    kept: tuple[tuple[str, Message], ...] = ()
    """The messages that still count, with their ids, in the order first sent."""
    stood: tuple[tuple[tuple[Reading, ...], tuple[Fact, ...]], ...] = ()
    """What stood after each of `kept`: a long log is gone through neither for a reply nor for an undo."""
    given: Mapping[str, Circumstances] = field(default_factory=dict)
    """The circumstances in which each caution was last said."""
    halted: tuple[str, ...] = ()
    """Dangers that wait for word that all is well."""
    asked: tuple[str, tuple[str, str] | None] | None = None
    asked_fact: str | None = None
    unclear: tuple[Unclear, ...] = ()
    declined: frozenset[tuple[str, tuple[str, str] | None]] = frozenset()
    language: str = "en"
    qualified: bool | None = None

    @property
    def readings(self) -> tuple[Reading, ...]:
        """The readings that stand."""
        return self.stood[-1][0] if self.stood else ()

    @property
    def facts(self) -> tuple[Fact, ...]:
        """The facts that stand."""
        return self.stood[-1][1] if self.stood else ()

    def context(self) -> Context:
        """What the grammar is told before it reads the next text."""
        return Context(
            asked=self.asked,
            asked_fact=self.asked_fact,
            unclear=self.unclear,
            readings=self.readings,
            facts=self.facts,
            language=self.language,
        )

    def job(self, message: Message) -> Job:
        """What core is told, `message` being the one that is answered."""
        return Job(
            readings=self.readings,
            facts=self.facts,
            asks=message.asks,
            fresh=frozenset(r.measure for r in message.readings) | frozenset(f.fact for f in message.facts),
            declined=self.declined,
            dangers=message.dangers,
            qualified=self.qualified,
            at_switch=message.at_switch,
        )


def fold(log: Sequence[Turn]) -> State:
    """The state that a log comes to, oldest turn first."""
    edited = {turn.edits: turn for turn in log if turn.edits is not None}
    if not edited:
        return reduce(step, log, State())
    effective = (
        # What was read stands as it was told, but for the messages that were edited: those are read again.
        replace(turn, text=edited[turn.message_id].text, reply=_unread(turn)) if turn.message_id in edited else turn
        for turn in log
        if turn.edits is None
    )
    state = reduce(step, effective, State())
    last = log[-1]
    return replace(remember(state, last), turns=tuple(log)) if last.edits is not None else replace(state, turns=tuple(log))


def _unread(turn: Turn) -> Mapping[str, Any]:
    return {"talk": {name: value for name, value in turn.talk.items() if name != "read"}}


def step(state: State, turn: Turn) -> State:
    """The state after one more turn."""
    if turn.edits is not None:
        return fold((*state.turns, turn))
    as_read = turn.talk.get("read")
    message = message_from_json(as_read) if as_read is not None else read(turn.text, state.context())
    taken = take(state, turn.message_id, message)
    return replace(remember(taken, turn), turns=(*state.turns, turn))


def remember(state: State, turn: Turn) -> State:
    """The state with what the reply of a turn said and asked."""
    talk = turn.talk
    asked = talk.get("asked")
    given = {name: Circumstances(**then) for name, then in talk.get("given", {}).items()}
    return replace(
        state,
        given={**state.given, **given} if given else state.given,
        halted=tuple(talk.get("halted", ())),
        asked=None if asked is None else (asked[0], tuple(asked[1]) if asked[1] else None),
        asked_fact=talk.get("asked_fact"),
        language=talk.get("language", state.language),
    )


def take(state: State, message_id: str, message: Message) -> State:
    """The state with a message taken in: what it adds, replaces, takes back or refuses."""
    kept, stood = state.kept, state.stood
    if "undo" in message.asks:
        kept, stood = kept[:-1], stood[:-1]
    elif message.readings or message.facts or message.withdrawn:
        kept = (*kept, (message_id, message))
        stood = (*stood, (readings_after(state.readings, message), facts_after(state.facts, message)))
    declined = state.declined
    if "cannot" in message.asks and state.asked is not None:
        declined |= {state.asked}
    return replace(
        state,
        kept=kept,
        stood=stood,
        declined=declined,
        unclear=message.unclear,
        language=message.language or state.language,
        qualified=state.qualified if message.qualified is None else message.qualified,
    )


def standing_readings(kept: tuple[tuple[str, Message], ...]) -> tuple[Reading, ...]:
    """The latest reading of each measure and pair of leads that was not taken back, in the order in which those were taken."""
    return reduce(readings_after, (message for _, message in kept), ())


def readings_after(standing: tuple[Reading, ...], message: Message) -> tuple[Reading, ...]:
    """The readings that stand once a message came after those that stood."""
    latest = {_place(reading): reading for reading in standing}
    for key in [key for key, reading in latest.items() if _is_taken_back(reading, message, latest)]:
        del latest[key]
    for reading in message.readings:
        key = _place(reading)
        latest.pop(key, None)
        latest[key] = reading
    return tuple(latest.values())


def _place(reading: Reading) -> tuple[str, frozenset[str]]:
    pair = frozenset(reading.leads) if reading.leads and MEASURES[reading.measure].pair else frozenset[str]()
    return reading.measure, pair


def _is_taken_back(old: Reading, message: Message, latest: Mapping[tuple[str, frozenset[str]], Reading]) -> bool:
    """
    True where a message withdraws an earlier reading.

    A correction may change the place and keep the value: "that 26.3 V is with R off".
    """
    if old.measure in message.withdrawn:
        return True
    if "correct" not in message.asks:
        return False
    return any(
        new.value == old.value
        and _place(new) != _place(old)
        and _place(new) not in latest
        and MEASURES[new.measure].unit == MEASURES[old.measure].unit
        for new in message.readings
    )


def facts_after(standing: tuple[Fact, ...], message: Message) -> tuple[Fact, ...]:
    """The latest of each fact, of loads, symptoms and leads that of each device, symptom and lead, once a message came in."""
    left = (fact for fact in standing if fact.fact not in message.withdrawn)
    return tuple({**_counted(left), **_counted(message.facts)}.values())


def _counted(facts: Iterable[Fact]) -> dict[tuple[str, object, int], Fact]:
    """Two loads of one device in one message are two loads; in a later message they replace the earlier ones, each its own."""
    counted: dict[tuple[str, object, int], Fact] = {}
    times: dict[tuple[str, object], int] = {}
    for fact in facts:
        which = (fact.fact, _which(fact))
        times[which] = times.get(which, 0) + 1
        counted[*which, times[which]] = fact
    return counted


def _which(fact: Fact) -> object:
    return fact.value if fact.fact == "symptom" else fact.device or fact.lead
