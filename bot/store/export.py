"""All that is kept of one technician, as plain records."""

from base64 import b64encode
from collections.abc import Mapping
from datetime import datetime
from typing import Any

from sqlalchemy import inspect, select
from sqlalchemy.orm import Session

from bot.aside import is_aside
from bot.store.attachments import attachments
from bot.store.columns import Base
from bot.store.jobs import own
from bot.store.log import read
from bot.store.tables import HandOver, Job, LoggedMessage, LoggedReply, Technician, Unit


def export(session: Session, technician: Technician) -> Mapping[str, Any]:
    """Everything kept of a technician: person, units, jobs with their whole log and files, codes. Ready for JSON."""
    jobs = session.scalars(select(Job).where(Job.id.in_(own(technician))).order_by(Job.id)).all()
    units = session.scalars(select(Unit).filter_by(owner_id=technician.id).order_by(Unit.id)).all()
    codes = session.scalars(select(HandOver).filter_by(giver_id=technician.id).order_by(HandOver.id)).all()
    return {
        "technician": row_record(technician),
        "units": [row_record(unit) for unit in units],
        "jobs": [_job(session, technician, job) for job in jobs],
        "hand_overs": [row_record(code) for code in codes],
    }


def _job(session: Session, technician: Technician, job: Job) -> dict[str, Any]:
    return row_record(job) | {
        "log": [_line(technician, message, reply) for message, reply in read(session, job)],
        "attachments": [row_record(file) for file in attachments(session, job)],
    }


def _line(technician: Technician, message: LoggedMessage, reply: LoggedReply | None) -> dict[str, Any]:
    """One message with its reply. What another said here of jobs of their own is theirs: only that there was something is told."""
    others = technician.id not in {message.author_id, message.technician_id} or message.author_id not in {None, technician.id}
    if others and reply is not None and is_aside((reply.talk or {}).get("read", {})):
        return row_record(message) | {"text": None, "reply": None}
    return row_record(message) | {"reply": None if reply is None else dict(reply.record)}


def row_record(row: Base) -> dict[str, Any]:
    """One row, its times as text and its bytes as base64."""
    return {column.key: _plain(getattr(row, column.key)) for column in inspect(type(row)).columns}


def _plain(value: Any) -> Any:
    match value:
        case datetime():
            return value.isoformat()
        case bytes():
            return b64encode(value).decode("ascii")
    return value
