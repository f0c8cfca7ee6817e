"""Writing to the log of a job and reading it. Rows are added and never changed."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from datetime import datetime
from typing import Any

from sqlalchemy import Row, bindparam, insert, null, select
from sqlalchemy.orm import Session

from bot.store.tables import Base, Job, LoggedMessage, LoggedReply, Technician


@dataclass(frozen=True, slots=True, kw_only=True)
class Sent:
    """One text as it goes into the log."""

    message_id: str
    revision: int
    text: str
    sent_at: datetime


@dataclass(frozen=True, slots=True, kw_only=True)
class Answered:
    """What was answered, as it is kept."""

    record: Mapping[str, Any]
    talk: Mapping[str, Any] | None = None
    document: str | None = None
    language: str = "en"


_MESSAGES, _REPLIES = Base.metadata.tables["logged_message"], Base.metadata.tables["logged_reply"]
_MESSAGE = insert(_MESSAGES).returning(_MESSAGES.c.id)
_REPLY = insert(_REPLIES)
"""Said to the tables themselves: nobody asks for these rows again in the turn that writes them."""


def append(session: Session, technician: Technician, job: Job, sent: Sent, answered: Answered) -> int:
    """One message and its reply, at the end of the job's log; the number of the message."""
    job.turns += 1
    job.last_at = max(job.last_at, sent.sent_at)
    message = {
        "job_id": job.id,
        "technician_id": technician.id,
        "written_by": technician.name,
        "number": job.turns,
        "message_id": sent.message_id,
        "revision": sent.revision,
        "text": sent.text,
        "sent_at": sent.sent_at,
    }
    connection = session.connection()
    number: int = connection.execute(_MESSAGE, message).scalar_one()
    reply = {"record": answered.record, "talk": answered.talk, "document": answered.document, "language": answered.language}
    connection.execute(_REPLY, {"logged_message_id": number, **reply})
    return number


_LATEST = (
    select(LoggedMessage.id)
    .where(LoggedMessage.technician_id == bindparam("who"), LoggedMessage.message_id == bindparam("known_as"))
    .order_by(LoggedMessage.revision.desc())
    .limit(1)
)
"""Built once: it is asked with every message."""


def latest(session: Session, technician: Technician, message_id: str) -> LoggedMessage | None:
    """The latest text of a message: its last edit, or itself, or None where the technician sent no such message."""
    number = session.connection().scalar(_LATEST, {"who": technician.id, "known_as": message_id})
    return None if number is None else session.get(LoggedMessage, number)


def reply_to(session: Session, message: LoggedMessage) -> LoggedReply | None:
    """What was answered to a message."""
    return session.get(LoggedReply, message.id)


def read(session: Session, job: Job, *, after: int = 0) -> Sequence[tuple[LoggedMessage, LoggedReply | None]]:
    """The log of a job from a number on, in order, each message with what was answered."""
    rows = session.execute(
        select(LoggedMessage, LoggedReply)
        .outerjoin(LoggedReply, LoggedReply.logged_message_id == LoggedMessage.id)
        .where(LoggedMessage.job_id == job.id, LoggedMessage.number > after)
        .order_by(LoggedMessage.number)
    )
    return [(message, reply) for message, reply in rows]


def lines(session: Session, job: Job, *, after: int = 0, records: bool = True) -> Sequence[Row[*tuple[Any, ...]]]:
    """
    The same as plain columns, for a fold of thousands: number, technician, ids, text, time, author, talk, record.

    Without records, which a fold does not need, half the time is saved.
    """
    asked = select(
        LoggedMessage.number,
        LoggedMessage.technician_id,
        LoggedMessage.message_id,
        LoggedMessage.revision,
        LoggedMessage.text,
        LoggedMessage.sent_at,
        LoggedMessage.written_by,
        LoggedReply.talk,
        LoggedReply.record if records else null(),
    )
    joined = asked.outerjoin(LoggedReply, LoggedReply.logged_message_id == LoggedMessage.id)
    of_job = joined.where(LoggedMessage.job_id == job.id, LoggedMessage.number > after)
    return session.execute(of_job.order_by(LoggedMessage.number)).all()


def last_read(session: Session, job: Job) -> Mapping[str, Any] | None:
    """What was read of the last message of a job's log, as it is kept."""
    talk = session.scalar(
        select(LoggedReply.talk)
        .join(LoggedMessage, LoggedReply.logged_message_id == LoggedMessage.id)
        .where(LoggedMessage.job_id == job.id, LoggedMessage.number == job.turns)
    )
    return talk.get("read") if talk else None
