"""A job's log, as it is stored, put into the record that a report is made of."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from datetime import UTC, datetime, tzinfo

from bot.as_read import message_from_json
from bot.aside import is_aside
from bot.job import State, Turn, fold
from bot.report.job_log import Given, JobLog, Photo, Sent, Taken, Told
from bot.standing import standing_readings
from core.advice import Answer
from core.advise import advise, leads_and_sizing
from core.cautions import CAUTIONS
from core.dangers import DANGERS
from core.readings import Fact, Reading
from core.said import Said
from core.sizing import prove
from grammar.message import Message


@dataclass(frozen=True, slots=True, kw_only=True)
class About:
    """What is known of a job beside its log."""

    name: str
    unit: str | None = None
    opened: datetime
    closed: datetime | None = None
    outcome: str | None = None
    photos: tuple[Photo, ...] = ()
    zone: tzinfo = UTC


@dataclass(frozen=True, slots=True, kw_only=True)
class _Whole:
    """A log and what it comes to."""

    turns: Sequence[Turn]
    after: frozenset[str]
    """Ids of the messages that speak of the repaired unit."""
    before: State
    """What the others come to."""
    end: State
    old: frozenset[str] = frozenset()
    """Ids of the messages before a repair after which the unit was diagnosed anew."""

    def state_of(self, turn: Turn) -> State:
        """What the turns on its side of the repair come to."""
        return self.end if turn.message_id in self.after else self.before


def gather(turns: Sequence[Turn], about: About) -> JobLog:
    """
    The record of a job.

    The verdict is that of the readings before the repair: those after it speak of the new part.

    Args:
        turns: The job's log, oldest first, edits included.
        about: Name, times and photos.
    """
    whole = _whole(turns)
    diagnosis = advise(whole.before.job(Message(asks=("next",))))
    taken = tuple(_taken(whole))
    return JobLog(
        name=about.name,
        unit=about.unit,
        technicians=tuple(dict.fromkeys(turn.technician for turn in turns if turn.technician)),
        opened=about.opened,
        closed=about.closed,
        outcome=about.outcome,
        sent=tuple(
            Sent(number=t.number, at=t.sent_at, by=t.technician, text=t.text, edits=t.edits)
            for t in turns
            if not is_aside(t.talk.get("read", {}))
        ),
        taken=taken,
        told=tuple(_told(whole)),
        given=tuple(_given(turns)),
        verdict=diagnosis.verdict,
        next_test=None if about.closed else diagnosis.next_test,
        leads=_last_answer(whole, "leads").leads,
        sizing=_last_answer(whole, "sizing").sizing,
        proved=_proved(whole, taken),
        photos=about.photos,
        zone=about.zone,
    )


def _whole(turns: Sequence[Turn]) -> _Whole:
    """A log cut where the unit was repaired, if it was: an edit speaks of what the message that it replaces spoke of."""
    end = fold(turns)
    if end.repair is None:
        return _Whole(turns=turns, after=frozenset(), before=end, end=end)
    own = [turn.message_id for turn in turns if turn.edits is None]
    begin = own.index(end.repair.by)
    if end.repair.again is not None:  # what was read before the repair says nothing of the unit as it is
        after = frozenset(own[begin : own.index(end.repair.again)])
        return _Whole(turns=turns, after=after, before=end, end=end, old=frozenset(own[:begin]))
    after = frozenset(own[begin:])
    early = [turn for turn in turns if (turn.edits or turn.message_id) not in after]
    return _Whole(turns=turns, after=after, before=fold(early), end=end)


def _first_read(turn: Turn) -> Message:
    """What was read of a turn when it came."""
    as_read = turn.talk.get("read")
    return message_from_json(as_read) if as_read is not None else Message()


def _counting(whole: _Whole) -> Iterator[tuple[Turn, Message, Message]]:
    """Each message that was no edit: as it was first read, and as it counts now; nothing of one that was undone."""
    counts = {id(state): dict(state.kept) for state in (whole.before, whole.end)}
    for turn in whole.turns:
        if turn.edits is None:
            yield turn, _first_read(turn), counts[id(whole.state_of(turn))].get(turn.message_id, Message())


def _taken(whole: _Whole) -> Iterator[Taken]:
    gone = _taken_back(whole.before) | _taken_back(whole.end)
    for turn, once, now in _counting(whole):
        for reading in (*(r for r in once.readings if r not in now.readings), *now.readings):
            yield Taken(
                number=turn.number,
                at=turn.sent_at,
                reading=reading,
                stands=reading in now.readings and (turn.message_id, reading) not in gone,
                proof=turn.message_id in whole.after,
                old=turn.message_id in whole.old,
            )


def _taken_back(state: State) -> frozenset[tuple[str, Reading]]:
    """Readings, with the message that brought them, that a later message withdrew or corrected; one merely taken again stood."""
    gone: set[tuple[str, Reading]] = set()
    for i, (_, message) in enumerate(state.kept):
        if message.withdrawn or "correct" in message.asks:
            left = standing_readings(state.kept[: i + 1])
            dropped = [old for old in standing_readings(state.kept[:i]) if old not in left]
            gone |= {(key, old) for key, earlier in state.kept[:i] for old in dropped if old in earlier.readings}
    return frozenset(gone)


def _told(whole: _Whole) -> Iterator[Told]:
    for turn, once, now in _counting(whole):
        standing: Sequence[Fact] = whole.state_of(turn).job(Message()).facts
        for fact in (*(f for f in once.facts if f not in now.facts), *now.facts):
            stands = fact in now.facts and fact in standing
            yield Told(number=turn.number, at=turn.sent_at, fact=fact, stands=stands, after=turn.message_id in whole.after)


def _given(turns: Sequence[Turn]) -> Iterator[Given]:
    for turn in turns:
        for name in turn.reply["cautions"] if turn.reply is not None else ():
            row = CAUTIONS.get(name) or DANGERS.get(name)
            if row is not None:
                yield Given(number=turn.number, at=turn.sent_at, name=name, says=row.says, source=row.source)


def _last_answer(whole: _Whole, part: str) -> Answer:
    """
    What core says to the last message that was answered with this part, knowing all that was told on its side of the repair.

    What was asked before the repair comes first: the proof of the new part has a sizing too, and a poor one.
    """
    answered = [turn for turn in reversed(whole.turns) if turn.reply is not None and turn.reply.get(part) is not None]
    for turn in sorted(answered, key=lambda turn: turn.message_id in whole.after):
        found = leads_and_sizing(whole.state_of(turn).job(_first_read(turn)))
        if getattr(found, part) is not None:
            return found
    return Answer()


def _proved(whole: _Whole, taken: Sequence[Taken]) -> tuple[Said, ...]:
    """What the readings after the repair say, taken alone."""
    after = tuple(t.reading for t in taken if t.proof and t.stands)
    return prove(replace(whole.end.job(Message(asks=("prove",))), readings=after)).lines if after else ()
