"""Giving a job, or a copy of it, to somebody else by a code."""

import re
import secrets
from datetime import datetime, timedelta
from typing import Literal

from sqlalchemy import insert, select
from sqlalchemy.orm import Session

from bot.store.jobs import hold, name_job, work_on
from bot.store.tables import Attachment, Guest, HandOver, Job, LoggedMessage, LoggedReply, Technician

LETTERS = "ABCDEFGHJKMNPQRSTUVWXYZ23456789"
"""No sign that could be read as another over the phone."""
GROUP = 4
"""A code is two groups of four with a dash: nothing else in the trade is written so."""
CODE = re.compile(rf"(?<![\w-])[{LETTERS}]{{{GROUP}}}-[{LETTERS}]{{{GROUP}}}(?![\w-])", re.IGNORECASE)
GOOD_FOR = timedelta(days=2)

Kind = Literal["copy", "job"]


def offer(session: Session, giver: Technician, job: Job, kind: Kind, now: datetime) -> HandOver:
    """A code that gives the job to the first who sends it, for two days."""
    code = "-".join("".join(secrets.choice(LETTERS) for _ in range(GROUP)) for _ in range(2))
    made = HandOver(code=code, job_id=job.id, giver_id=giver.id, kind=kind, made_at=now, ends_at=now + GOOD_FOR)
    session.add(made)
    session.flush()
    return made


def code_in(text: str) -> str | None:
    """
    The code that a text holds, or None.

    >>> code_in("take j7kq-2mfp"), code_in("compressor AB12-CD34X")
    ('J7KQ-2MFP', None)
    """
    found = CODE.search(text)
    return found[0].upper() if found else None


def offered(session: Session, code: str, now: datetime) -> HandOver | None:
    """What a code gives, or None where nobody made it, its time is over, or it was taken."""
    found = session.scalar(select(HandOver).filter_by(code=code).with_for_update())  # of two who send it at once one is first
    return found if found is not None and found.taken_at is None and now <= found.ends_at else None


def accept(session: Session, taker: Technician, offer_made: HandOver, now: datetime) -> Job:
    """Take what was offered; it becomes the taker's current job."""
    job = session.get_one(Job, offer_made.job_id)
    hold(session, job)  # a copy made while the giver writes would have more messages than it counts
    offer_made.taken_at = now
    offer_made.taker_id = taker.id
    if offer_made.kind == "copy":
        job = _copy(session, taker, job, offer_made.code, now)
    elif job.owner_id != taker.id and session.get(Guest, (job.id, taker.id)) is None:
        session.add(Guest(job_id=job.id, technician_id=taker.id, since=now))
        session.flush()
    work_on(session, taker, job)
    return job


def _copy(session: Session, taker: Technician, job: Job, code: str, now: datetime) -> Job:
    """The job as it stands now, as one of the taker's own; from here on the two go their own ways."""
    columns = ("opened_at", "last_at", "turns", "outcome", "finding", "transformer", "confidence", "settled")
    more = ("supply_volts", "tap_volts", "rated_va")
    copied = Job(
        owner_id=taker.id, copied_from_id=job.id, closed_at=None, **{name: getattr(job, name) for name in columns + more}
    )
    session.add(copied)
    if job.name:
        name_job(session, copied, job.name)
    session.flush()
    log = session.execute(
        select(LoggedMessage, LoggedReply)
        .outerjoin(LoggedReply, LoggedReply.logged_message_id == LoggedMessage.id)
        .where(LoggedMessage.job_id == job.id)
        .order_by(LoggedMessage.number)
    ).all()
    for message, reply in log:
        twin = LoggedMessage(
            job_id=copied.id,
            technician_id=taker.id,
            written_by=message.written_by,
            author_id=message.author_id or message.technician_id,
            number=message.number,
            message_id=_copied_id(message, code),
            revision=message.revision,
            text=message.text,
            sent_at=message.sent_at,
        )
        session.add(twin)
        session.flush()
        if reply is not None:
            kept = {name: getattr(reply, name) for name in ("record", "talk", "document", "language")}
            session.execute(insert(LoggedReply).values(logged_message_id=twin.id, **kept))
    _copy_files(session, taker, job, copied, now)
    return copied


def _copied_id(message: LoggedMessage, code: str) -> str:
    """An id that can't be one of the taker's own messages, nor that of another author's message in the same log."""
    return f"{code}.{message.technician_id}.{message.message_id}"[-120:]


def _copy_files(session: Session, taker: Technician, job: Job, copied: Job, now: datetime) -> None:
    names = ("message_id", "kind", "name", "media_type", "caption", "sha256", "body")
    for file in session.scalars(select(Attachment).filter_by(job_id=job.id)).all():
        kept = {name: getattr(file, name) for name in names}
        session.add(Attachment(job_id=copied.id, technician_id=taker.id, added_at=now, **kept))
    session.flush()
