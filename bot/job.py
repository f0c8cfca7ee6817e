"""A job's state is a fold over its log: an edit, an undo, a correction and a restart are the same thing."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field, replace
from datetime import datetime
from functools import reduce
from types import MappingProxyType
from typing import Any, Final

from bot.as_read import message_from_json
from bot.standing import facts_after, readings_after
from core.cautions import Circumstances
from core.measures import MEASURES
from core.readings import Fact, Job, Reading
from grammar import Context, Message, Unclear, read

SAID_BEFORE: Final = 3
"""How many messages back a pronoun may reach."""
NOTHING: Final[Mapping[str, Any]] = MappingProxyType({})
PROOF: Final = frozenset({"secondary_volts", "secondary_volts_lifted", "control_volts", "coil_volts", "secondary_amps"})
"""The readings that prove a repair; the line side alone proves none."""
LINE_SIDE: Final = frozenset({"line_volts", "primary_volts"})


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
class Repair:
    """The message from which on readings are of the repaired unit."""

    by: str
    """Its id."""
    since: int
    """As many messages counted before it."""
    told: bool
    """True where it says that the transformer was; False where the job was only closed, the proof asked for, or a part put right."""
    keeps: bool = False
    """True where only a part was put right: what was read elsewhere still counts."""
    parts: tuple[str, ...] = ()
    """Names of `core.repairs.REPAIRS`: the parts put right, where only those were."""
    again: str | None = None
    """Id of the message that took the job up again: from it on the repaired unit is diagnosed, and no longer proved."""


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
    repair: Repair | None = None
    closed_by: str | None = None
    """Id of the message that closed the job, where nothing counted after it: to undo it opens the job again."""
    clearing: bool = False
    """True where the last reply asked whether the readings are to be started over."""
    finding: str | None = None
    transformer: str | None = None
    """What the last verdict said."""

    @property
    def readings(self) -> tuple[Reading, ...]:
        """The readings that stand: after a repair those of the repaired unit, as soon as there is one."""
        return self.since_repair or self.before_repair

    @property
    def since_repair(self) -> tuple[Reading, ...]:
        """The readings of the unit as it is now."""
        return self.stood[-1][0] if len(self.stood) > (0 if self.repair is None else self.repair.since) else ()

    @property
    def standing(self) -> tuple[Reading, ...]:
        """The readings that count beside the next ones."""
        return self.readings if self.repair is not None and self.repair.keeps else self.since_repair

    @property
    def before_repair(self) -> tuple[Reading, ...]:
        """The readings that stood when the unit was repaired; none where it was not."""
        return self.stood[self.repair.since - 1][0] if self.repair is not None and self.repair.since else ()

    @property
    def is_proved(self) -> bool:
        """Whether what is read now proves a repair."""
        return self.repair is not None and self.repair.again is None

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
            said_before=tuple(turn.text for turn in self.turns[-SAID_BEFORE:]),
            finding=self.finding,
            transformer=self.transformer,
            repaired=self.is_proved,
        )

    def job(self, message: Message) -> Job:
        """What core is told, `message` being the one that is answered. Live readings after a repair ask for its proof."""
        proves = self._proves(message)
        if message.turn == "cause" and self.before_repair:  # what failed is no more
            return Job(readings=self.before_repair, facts=self.facts, asks=message.asks, asks_cause=True)
        return Job(
            readings=self.proof() if proves else self.readings,
            facts=self.facts,
            asks=tuple(dict.fromkeys((*message.asks, "prove"))) if proves else message.asks,
            fresh=frozenset(
                (
                    *(r.measure for r in message.readings),
                    *(f.fact for f in message.facts),
                    *message.renewed,
                    *(("load",) if message.withdrawn_loads else ()),
                )
            ),
            declined=self.declined,
            dangers=message.dangers,
            qualified=self.qualified,
            heard=message.heard,
            topics=message.topics,
            unread=bool(message.unread_numbers or message.unknown_loads),
            unknown_loads=message.unknown_loads,
            asked_device=message.asked_device,
            new=message.facts,
            meant_va=message.meant_va,
            asks_cause=message.turn == "cause",
            put_right=frozenset(self.repair.parts) if proves and self.repair is not None else frozenset(),
        )

    def _proves(self, message: Message) -> bool:
        if self.repair is None or not self.is_proved:
            return False
        measures = {reading.measure for reading in message.readings}
        goes_on = self.repair.told and (bool(measures & LINE_SIDE) or bool({"next", "undo"} & set(message.asks)))
        if self.asked is not None:  # the proof has asked for it, or for a reading behind it
            goes_on |= self.asked[0] in measures & LINE_SIDE or (self.asked[0] in PROOF and bool(measures & LINE_SIDE))
        return "prove" in message.asks or bool(measures & PROOF) or goes_on or bool(message.renewed)

    def proof(self) -> tuple[Reading, ...]:
        """The readings since the repair, and the line side as it was last read before it: that is not what was repaired."""
        if self.repair is None:
            return ()
        since = self.since_repair
        if "supply" in self.repair.parts:
            return since
        again = {reading.measure for reading in since}
        line = tuple(r for r in self.before_repair if r.measure in LINE_SIDE - again and r.value != 0.0)
        return (*line, *since)


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
        clearing=bool(talk.get("clearing")),
        finding=talk.get("finding", state.finding),
        transformer=talk.get("transformer", state.transformer),
        language=talk.get("language", state.language),
    )


def take(state: State, message_id: str, message: Message) -> State:
    """The state with a message taken in: what it adds, replaces, takes back or refuses."""
    if state.clearing and "yes" in message.asks:
        message = replace(message, withdrawn=tuple(dict.fromkeys(reading.measure for reading in state.readings)))
    state = repaired(state, message_id, message)
    if "undo" in message.asks and not message.withdrawn:
        for _ in range(message.undoes or 1):
            state = undone(state)
    elif message.readings or message.facts or message.withdrawn or message.renewed:
        standing = (readings_after(state.standing, message), facts_after(state.facts, message))
        state = replace(state, kept=(*state.kept, (message_id, message)), stood=(*state.stood, standing), closed_by=None)
    if "close_job" in message.asks:
        state = replace(state, closed_by=message_id)
    declined = state.declined
    if "cannot" in message.asks and state.asked is not None:
        declined |= {state.asked}
    elif "cannot" in message.asks and state.asked_fact is not None:
        declined |= {(state.asked_fact, None)}
    declined |= {(measure, None) for measure in message.lacks}
    return replace(
        state,
        declined=declined,
        unclear=message.unclear or (state.unclear if _tells_facts_alone(message) else ()),
        language=message.language or state.language,
        qualified=state.qualified if message.qualified is None else message.qualified,
    )


def _tells_facts_alone(message: Message) -> bool:
    """What was unclear stays so over a fact told in between."""
    return bool(message.facts) and not (message.readings or message.asks or message.withdrawn)


def repaired(state: State, message_id: str, message: Message) -> State:
    """
    The state with the repair that a message tells or takes back.

    A repair needs something that was found before it: "replaced it" in a job without readings is what happened before. Closing a job
    and asking for the proof, which needs nothing before it, are taken for one too, until the job is taken up again, or a dead test shows that nothing was closed up.
    """
    told, now = state.repair, message.repaired or bool("close_job" in message.asks and message.facts)
    if told is not None and not told.told and not now and _goes_on(told, message):
        return restored(state)
    if told is not None and "resume_job" in message.asks:
        return replace(state, repair=replace(told, again=message_id))
    closes, asks = "close_job" in message.asks, "prove" in message.asks
    if told is not None and told.again is None:  # the same repair, told better
        keeps = told.keeps and not now
        parts = (*told.parts, *message.renewed) if keeps else ()
        return replace(state, repair=replace(told, told=told.told or now, keeps=keeps, parts=parts))
    put_right = bool(message.renewed) and not now
    if asks or (state.readings and (now or put_right)) or (closes and (state.kept or message.facts)):
        return replace(
            state,
            repair=Repair(
                by=message_id, since=len(state.kept), told=now, keeps=put_right, parts=message.renewed if put_right else ()
            ),
        )
    return state


def _goes_on(repair: Repair, message: Message) -> bool:
    """Whether a message shows that what looked like a repair was none."""
    dead = any(MEASURES[reading.measure].unit == "ohm" for reading in message.readings)
    fails = any(fact.fact == "symptom" for fact in message.facts)
    return "resume_job" in message.asks or ((dead or fails) and repair.again is None)


def restored(state: State) -> State:
    """The state without its repair: what was read before it counts again."""
    stood: list[tuple[tuple[Reading, ...], tuple[Fact, ...]]] = []
    for _, message in state.kept:
        readings, facts = stood[-1] if stood else ((), ())
        stood.append((readings_after(readings, message), facts_after(facts, message)))
    return replace(state, stood=tuple(stood), repair=None)


def undone(state: State) -> State:
    """The state without the last message that counts, or without the word that closed the job or told its repair where that came last."""
    told = state.repair
    if state.closed_by is not None:
        was_told_there = told is not None and told.by == state.closed_by
        is_kept = state.kept[-1:] and state.kept[-1][0] == state.closed_by
        left = replace(state, kept=state.kept[:-1], stood=state.stood[:-1]) if is_kept else state
        return replace(left, closed_by=None, repair=None if was_told_there else told)
    if told is not None and len(state.kept) <= told.since:
        return replace(state, repair=None)
    is_told_there = told is not None and state.kept[-1:] and state.kept[-1][0] == told.by
    return replace(state, kept=state.kept[:-1], stood=state.stood[:-1], repair=None if is_told_there else told)
