"""All that is kept of one technician, as plain records."""

from base64 import b64encode
from collections.abc import Mapping
from datetime import datetime
from typing import Any, Final

from sqlalchemy import Select, inspect, or_, select
from sqlalchemy.orm import Session

from bot.aside import is_aside
from bot.store.attachments import attachments
from bot.store.columns import Base
from bot.store.jobs import own
from bot.store.log import read
from bot.store.tables import Guest, HandOver, Job, LoggedMessage, LoggedReply, Notice, Technician, Unit, WorkingOn


def export(session: Session, technician: Technician) -> Mapping[str, Any]:
    """Everything kept of a technician: person, units, jobs with their whole log and files, codes, what waits. Ready for JSON."""
    jobs = session.scalars(select(Job).where(Job.id.in_(own(technician))).order_by(Job.id)).all()
    return {
        "technician": row_record(technician),
        "jobs": [_job(session, technician, job) for job in jobs],
        **{name: [row_record(row) for row in session.scalars(_theirs(table, technician))] for name, table in ROWS.items()},
    }


ROWS: Final[Mapping[str, type[Base]]] = {
    "units": Unit,
    "hand_overs": HandOver,
    "given_to_them": Guest,
    "in_hand": WorkingOn,
    "notices": Notice,
}
"""What points to a technician beside their jobs, by its name in the file."""


def _theirs(table: type[Base], technician: Technician) -> Select[Any]:
    """The rows of a table that point to a technician."""
    rows = inspect(table).local_table
    points = [key.parent for key in rows.foreign_keys if key.column.table.name == Technician.__tablename__]
    return select(table).where(or_(*(column == technician.id for column in points))).order_by(*rows.primary_key)


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
