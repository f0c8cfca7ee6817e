"""Deleting all that one technician ever sent."""

from datetime import datetime
from uuid import uuid4

from sqlalchemy import delete, select, update
from sqlalchemy.orm import Session

from bot.store.tables import Attachment, BackupMade, Guest, Job, LoggedMessage, Technician, Unit, WorkingOn

GONE = "gone"
"""The channel of whoever wrote in a job that others still work on, after that person was forgotten."""
NOBODY = "-"
"""The name that such texts have from then on."""


def forget(session: Session, technician: Technician, now: datetime) -> None:
    """
    Delete a technician with jobs, messages, replies, files, units and codes.

    What somebody else was given, or gave, stays with them: there the texts lose their author's name.
    """
    shared = _shared(session, technician)
    _lose_name(session, technician, shared, now)
    _pass_on(session, technician, shared)
    session.execute(update(LoggedMessage).where(LoggedMessage.author_id == technician.id).values(written_by=NOBODY))
    session.flush()
    session.execute(delete(Technician).where(Technician.id == technician.id))  # the rest goes with it, by its keys
    session.expire_all()


def forget_job(session: Session, technician: Technician, job: Job, now: datetime) -> None:
    """
    Delete one job of a technician, and the unit of which nothing is left with it.

    One that somebody else works on too stays with them: there the texts lose their author's name.
    """
    unit, shared = job.unit_id, [number for number in _shared(session, technician) if number == job.id]
    _lose_name(session, technician, shared, now)
    if job.owner_id == technician.id and shared:
        _pass_on(session, technician, shared)
    elif job.owner_id == technician.id:
        session.execute(delete(Job).where(Job.id == job.id))
    session.execute(delete(Guest).where(Guest.job_id == job.id, Guest.technician_id == technician.id))
    session.execute(delete(WorkingOn).where(WorkingOn.job_id == job.id, WorkingOn.technician_id == technician.id))
    session.flush()
    is_used = select(Job.id).where(Job.unit_id == Unit.id).exists()
    session.execute(delete(Unit).where(Unit.id == unit, Unit.owner_id == technician.id, ~is_used))
    session.expire_all()


def _lose_name(session: Session, technician: Technician, shared: list[int], now: datetime) -> None:
    """What a technician wrote in jobs that others go on with is nobody's from now on."""
    if not shared:
        return
    nobody = Technician(channel=GONE, address=uuid4().hex, name=NOBODY, joined_at=now)
    session.add(nobody)
    session.flush()
    for table in (LoggedMessage, Attachment):
        of_them = (table.technician_id == technician.id, table.job_id.in_(shared))
        session.execute(update(table).where(*of_them).values(technician_id=nobody.id))
    session.execute(update(LoggedMessage).where(LoggedMessage.technician_id == nobody.id).values(written_by=NOBODY))


def _shared(session: Session, technician: Technician) -> list[int]:
    """The numbers of the jobs that somebody else sees too."""
    given_away = select(Job.id).join(Guest).where(Job.owner_id == technician.id)
    given_to = select(Guest.job_id).where(Guest.technician_id == technician.id)
    return list(session.scalars(given_away.union(given_to)))


def _pass_on(session: Session, technician: Technician, shared: list[int]) -> None:
    """The jobs that were given away belong to who was given them first."""
    for job in session.scalars(select(Job).where(Job.id.in_(shared), Job.owner_id == technician.id)).all():
        heir = session.scalars(select(Guest).filter_by(job_id=job.id).order_by(Guest.since)).first()
        assert heir is not None, "a shared job has a guest"
        job.owner_id = heir.technician_id
        job.unit_id = None
        job.channel_job = None
        session.delete(heir)


def backups_since(session: Session, since: datetime) -> list[BackupMade]:
    """The backups in which someone who joined then can still stand."""
    return list(session.scalars(select(BackupMade).where(BackupMade.made_at >= since).order_by(BackupMade.made_at)))
