"""The jobs of everybody, for whoever runs the crew. No technician's message reaches these."""

from collections.abc import Sequence

from sqlalchemy import select
from sqlalchemy.orm import Session

from bot.store.names import means
from bot.store.tables import Job, Technician


def all_jobs(session: Session, *, only_open: bool, limit: int) -> Sequence[tuple[Job, Technician]]:
    """The jobs last spoken of, newest first, with whom they belong to."""
    asked = select(Job, Technician).join(Technician, Technician.id == Job.owner_id).where(Job.turns > 0)
    if only_open:
        asked = asked.where(Job.closed_at.is_(None))
    rows = session.execute(asked.order_by(Job.last_at.desc(), Job.id.desc()).limit(limit))
    return [(job, owner) for job, owner in rows]


def jobs_named(session: Session, name: str) -> Sequence[Job]:
    """The job of this number, or those that somebody can mean by this name, newest first."""
    if name.isdecimal():
        found = session.get(Job, int(name))
        return [found] if found is not None else []
    rows = session.execute(select(Job.id, Job.name).where(Job.name.is_not(None)).order_by(Job.last_at.desc()))
    return [session.get_one(Job, number) for number, called in rows if called and means(name, called)]
