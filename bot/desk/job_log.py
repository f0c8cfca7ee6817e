"""A job as it was logged and folded, for the report."""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from datetime import tzinfo

from sqlalchemy.orm import Session

from bot.as_read import message_from_json
from bot.conversation import State, Turn, fold
from bot.desk.deed import title
from bot.desk.turns import turns
from bot.report.job_log import Given, JobLog, Photo, Sent, Taken, Told
from bot.store.attachments import attachments
from bot.store.tables import Job, Unit
from core.advice import Answer
from core.advise import advise
from core.cautions import CAUTIONS
from core.readings import Fact, Reading
from core.said import Said
from core.sizing import prove
from grammar import Message

REPAIRED = frozenset({"prove", "close_job"})
"""Asks after which a reading proves the repair."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Folded:
    """A job's turns, what each was read as, and what they come to: before the repair, and in the end."""

    log: Sequence[Turn]
    read: Sequence[Message]
    repaired: int | None
    """Number of the message from which on readings prove the repair."""
    before: State
    end: State


def folded(session: Session, job: Job) -> Folded:
    """The job, read from the store."""
    log = turns(session, job)
    read = [message_from_json(turn.talk.get("read", {})) for turn in log]
    repaired = next((t.number for t, m in zip(log, read, strict=True) if not REPAIRED.isdisjoint(m.asks)), None)
    end = fold(log)
    if repaired is None:
        return Folded(log=log, read=read, repaired=None, before=end, end=end)
    early = {turn.message_id for turn in log if turn.number < repaired}
    before = fold([turn for turn in log if turn.number < repaired or turn.edits in early])
    return Folded(log=log, read=read, repaired=repaired, before=before, end=end)


def job_log(session: Session, job: Job, zone: tzinfo) -> JobLog:
    """
    Everything of a job that a report may show.

    Args:
        session: A session on the store.
        job: The job.
        zone: The clock that the report is written in.
    """
    whole = folded(session, job)
    answer = advise(whole.before.job(Message(asks=("next",))))
    unit = session.get(Unit, job.unit_id) if job.unit_id else None
    return JobLog(
        name=str(title(job, zone)),
        unit=unit.name if unit else None,
        technicians=tuple(dict.fromkeys(turn.technician for turn in whole.log)),
        opened=job.opened_at,
        closed=job.closed_at,
        outcome=job.outcome,
        sent=tuple(_sent(whole)),
        taken=tuple(_taken(whole)),
        told=tuple(_told(whole)),
        given=tuple(_given(whole)),
        verdict=answer.verdict,
        next_test=None if job.closed_at else answer.next_test,
        leads=_asked_last(whole, "leads").leads,
        sizing=_asked_last(whole, "sizing").sizing,
        proved=_proved(whole),
        photos=tuple(_photos(session, job)),
        zone=zone,
    )


def _sent(whole: Folded) -> Iterator[Sent]:
    for turn in whole.log:
        yield Sent(number=turn.number, at=turn.sent_at, by=turn.technician, text=turn.text, edits=turn.edits)


def _standing(whole: Folded) -> Mapping[int, tuple[Sequence[Reading], Sequence[Fact]]]:
    """By number, what of a message still counts: nothing of one undone, and of an edited one only its last text."""
    last = {turn.edits or turn.message_id: turn.number for turn in whole.log}
    counting = dict[int, tuple[Sequence[Reading], Sequence[Fact]]]()
    for state in (whole.end, whole.before):  # what a proof put another value in place of had stood until then
        told = state.job(Message())
        for name, message in state.kept:
            readings = [reading for reading in message.readings if reading in told.readings]
            counting[last[name]] = (readings, [fact for fact in message.facts if fact in told.facts])
    return counting


def _taken(whole: Folded) -> Iterator[Taken]:
    standing = _standing(whole)
    for turn, message in zip(whole.log, whole.read, strict=True):
        proof = whole.repaired is not None and turn.number >= whole.repaired
        for reading in message.readings:
            stands = reading in standing.get(turn.number, ((), ()))[0]
            yield Taken(number=turn.number, at=turn.sent_at, reading=reading, stands=stands, proof=proof)


def _told(whole: Folded) -> Iterator[Told]:
    standing = _standing(whole)
    for turn, message in zip(whole.log, whole.read, strict=True):
        for fact in message.facts:
            stands = fact in standing.get(turn.number, ((), ()))[1]
            yield Told(number=turn.number, at=turn.sent_at, fact=fact, stands=stands)


def _given(whole: Folded) -> Iterator[Given]:
    for turn in whole.log:
        for name in (turn.reply or {}).get("cautions", ()):
            caution = CAUTIONS.get(name)
            if caution is not None:
                yield Given(number=turn.number, at=turn.sent_at, name=name, says=caution.says, source=caution.source)


def _asked_last(whole: Folded, part: str) -> Answer:
    """What core says now to the last message that was answered with a map of leads, or with a sizing."""
    for turn, message in zip(reversed(whole.log), reversed(whole.read), strict=True):
        if (turn.reply or {}).get(part) is not None:
            return advise(whole.end.job(message))
    return Answer()


def _proved(whole: Folded) -> tuple[Said, ...]:
    """What the readings after the repair say, where a proof was asked for."""
    if not any("prove" in message.asks for message in whole.read):
        return ()
    return prove(whole.end.job(Message(asks=("prove",)))).lines


def _photos(session: Session, job: Job) -> Iterator[Photo]:
    for file in attachments(session, job):
        if file.kind == "photo":
            yield Photo(at=file.added_at, body=file.body, caption=file.caption or "")
