"""Photos and papers of a job."""

from collections.abc import Sequence
from dataclasses import dataclass
from datetime import datetime
from hashlib import sha256

from sqlalchemy import select
from sqlalchemy.orm import Session, undefer

from bot.store.names import WIDEST
from bot.store.tables import Attachment, Job, Technician


@dataclass(frozen=True, slots=True, kw_only=True)
class File:
    """One file as it came in."""

    kind: str
    """`photo` or `document`."""
    media_type: str
    body: bytes
    name: str | None = None
    caption: str | None = None
    message_id: str | None = None


def attach(session: Session, technician: Technician, job: Job, file: File, now: datetime) -> Attachment:
    """Keep a file with a job. The same bytes sent again are kept once."""
    digest = sha256(file.body).hexdigest()
    kept = session.scalar(select(Attachment).filter_by(job_id=job.id, sha256=digest))
    if kept is None:
        kept = Attachment(
            job_id=job.id,
            technician_id=technician.id,
            message_id=file.message_id,
            kind=file.kind,
            name=file.name[:WIDEST] if file.name else None,
            media_type=file.media_type,
            caption=file.caption,
            sha256=digest,
            body=file.body,
            added_at=now,
        )
        session.add(kept)
        session.flush()
    return kept


def attachments(session: Session, job: Job) -> Sequence[Attachment]:
    """The files of a job in the order they came, bytes included."""
    asked = select(Attachment).filter_by(job_id=job.id).order_by(Attachment.added_at, Attachment.id)
    return session.scalars(asked.options(undefer(Attachment.body))).all()
