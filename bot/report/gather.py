"""A job's log, as it is stored, put into the record that a report is made of."""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, replace
from datetime import UTC, datetime, tzinfo
from itertools import takewhile
from typing import Final

from bot.as_read import message_from_json
from bot.conversation import answer
from bot.job import State, Turn, fold, standing_readings
from bot.report.job_log import Given, JobLog, Photo, Sent, Taken, Told
from core.advice import Answer
from core.advise import advise
from core.cautions import CAUTIONS
from core.dangers import DANGERS
from core.readings import Job, Reading
from core.said import Said
from core.sizing import prove
from grammar.message import Message

PROOF_ASK: Final = "prove"
"""From the message with this ask on, readings prove the repair."""


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


def gather(turns: Sequence[Turn], about: About) -> JobLog:
    """
    The record of a job.

    The verdict is that of the readings before the repair: those after it speak of the new part.

    Args:
        turns: The job's log, oldest first, edits included.
        about: Name, times and photos.
    """
    before = tuple(takewhile(lambda turn: not _is_proof(turn), turns))
    state = fold(turns)
    diagnosis = advise((state if len(before) == len(turns) else fold(before)).job(Message()))
    taken = tuple(_taken(turns, state, first_proof=before[-1].number + 1 if before else 0))
    return JobLog(
        name=about.name,
        unit=about.unit,
        technicians=tuple(dict.fromkeys(turn.technician for turn in turns if turn.technician)),
        opened=about.opened,
        closed=about.closed,
        outcome=about.outcome,
        sent=tuple(Sent(number=t.number, at=t.sent_at, by=t.technician, text=t.text, edits=t.edits) for t in turns),
        taken=taken,
        told=tuple(_told(turns, state)),
        given=tuple(_given(turns)),
        verdict=diagnosis.verdict,
        next_test=diagnosis.next_test,
        leads=_last_answer(turns, "leads").leads,
        sizing=_last_answer(turns, "sizing").sizing,
        proved=_proved(state.job(Message()), taken),
        photos=about.photos,
        zone=about.zone,
    )


def _is_proof(turn: Turn) -> bool:
    return turn.reply is not None and PROOF_ASK in turn.reply["asks"]


def _as_answered(turn: Turn) -> Message:
    """What was read of a turn when it came."""
    as_read = turn.talk.get("read")
    return message_from_json(as_read) if as_read is not None else Message()


def _messages(turns: Sequence[Turn], state: State) -> Iterator[tuple[Turn, Message | None, Message | None]]:
    """Each message that was no edit: as it was first read, where that counts no more, and as it counts now."""
    counts = dict(state.kept)
    for turn in turns:
        if turn.edits is not None:
            continue
        now, first = counts.get(turn.message_id), _as_answered(turn)
        yield turn, (None if first == now else first), now


def _taken(turns: Sequence[Turn], state: State, first_proof: int) -> Iterator[Taken]:
    gone = _taken_back(state)
    for turn, once, now in _messages(turns, state):
        counted = now.readings if now is not None else ()
        dropped = [reading for reading in (once.readings if once is not None else ()) if reading not in counted]
        for reading in (*dropped, *counted):
            yield Taken(
                number=turn.number,
                at=turn.sent_at,
                reading=reading,
                stands=reading in counted and (turn.message_id, reading) not in gone,
                proof=turn.number >= first_proof,
            )


def _taken_back(state: State) -> frozenset[tuple[str, Reading]]:
    """Readings, with the message that brought them, that a later message withdrew or corrected."""
    gone: set[tuple[str, Reading]] = set()
    for i, (_, message) in enumerate(state.kept):
        if not message.withdrawn and "correct" not in message.asks:
            continue
        left = standing_readings(state.kept[: i + 1])
        for old in standing_readings(state.kept[:i]):
            if old not in left:
                gone |= {(key, old) for key, earlier in state.kept[:i] if old in earlier.readings}
    return frozenset(gone)


def _told(turns: Sequence[Turn], state: State) -> Iterator[Told]:
    standing = state.job(Message()).facts
    for turn, once, now in _messages(turns, state):
        counted = now.facts if now is not None else ()
        dropped = [fact for fact in (once.facts if once is not None else ()) if fact not in counted]
        for fact in (*dropped, *counted):
            stands = fact in counted and fact in standing
            yield Told(number=turn.number, at=turn.sent_at, fact=fact, stands=stands)


def _given(turns: Sequence[Turn]) -> Iterator[Given]:
    for turn in turns:
        for name in turn.reply["cautions"] if turn.reply is not None else ():
            row = CAUTIONS.get(name) or DANGERS.get(name)
            if row is not None:
                yield Given(number=turn.number, at=turn.sent_at, name=name, says=row.says, source=row.source)


def _last_answer(turns: Sequence[Turn], part: str) -> Answer:
    """What core said when it last spoke of leads or of a size, worked out again from the log."""
    last = next((i for i in range(len(turns) - 1, -1, -1) if _record(turns[i]).get(part) is not None), None)
    return Answer() if last is None else answer(turns[:last], turns[last]).answer


def _record(turn: Turn) -> Mapping[str, object]:
    return turn.reply or {}


def _proved(job: Job, taken: Sequence[Taken]) -> tuple[Said, ...]:
    """What the readings after the repair say, taken alone."""
    after = tuple(t.reading for t in taken if t.proof and t.stands)
    return prove(replace(job, readings=after)).lines if after else ()
