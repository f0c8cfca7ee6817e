"""Opening, finding and closing jobs. Each verb takes a technician and sees no job of another."""

from collections.abc import Sequence
from datetime import datetime

from sqlalchemy import ColumnElement, CompoundSelect, Select, bindparam, delete, select, union_all
from sqlalchemy.orm import Session

from bot.store.names import WIDEST, called, means
from bot.store.tables import Guest, Job, Technician, Unit, WorkingOn


def open_job(
    session: Session, technician: Technician, now: datetime, *, name: str | None = None, channel_job: str | None = None
) -> Job:
    """A new job that the technician's next messages belong to."""
    job = Job(owner_id=technician.id, channel_job=channel_job, opened_at=now, last_at=now, turns=0)
    session.add(job)
    if name:
        name_job(session, job, name)
    session.flush()
    if channel_job is None:
        work_on(session, technician, job)
    return job


def name_job(session: Session, job: Job, name: str) -> None:
    """Give a job its name, and with it the unit that it is about."""
    job.name = name.strip()[:WIDEST]
    unit = unit_called(session, job.owner_id, name)
    if unit is None:
        unit = Unit(owner_id=job.owner_id, name=job.name, called=called(name))
        session.add(unit)
        session.flush()
    job.unit_id = unit.id


def unit_called(session: Session, owner_id: int, name: str) -> Unit | None:
    """The technician's unit of exactly this name, however it is written."""
    return session.scalar(select(Unit).filter_by(owner_id=owner_id, called=called(name)))


def units_meant(session: Session, technician: Technician, name: str) -> Sequence[Unit]:
    """The units that somebody can mean by a name: the one of that name, or all whose names have its words."""
    exact = unit_called(session, technician.id, name)
    if exact is not None:
        return [exact]
    own = session.scalars(select(Unit).filter_by(owner_id=technician.id).order_by(Unit.called))
    return [unit for unit in own if means(name, unit.name)]


def job_with(session: Session, technician: Technician, channel_job: str) -> Job | None:
    """The job that a program calls by this word."""
    return session.scalar(select(Job).filter_by(owner_id=technician.id, channel_job=channel_job))


def hold(session: Session, job: Job) -> None:
    """
    Let nobody else write to the job before this transaction ends, and see what they wrote until now.

    SQLite lets one write at a time as it is. The row is taken in: only then is it the one that was waited for.
    """
    if session.get_bind().dialect.name != "sqlite":
        session.flush()
        session.scalars(select(Job).where(Job.id == job.id).with_for_update().execution_options(populate_existing=True)).one()


_CURRENT = select(Job).join(WorkingOn).where(WorkingOn.technician_id == bindparam("who"), Job.closed_at.is_(None))


def current_job(session: Session, technician: Technician) -> Job | None:
    """The job that the technician's next message belongs to, or None."""
    return session.scalar(_CURRENT, {"who": technician.id})


def work_on(session: Session, technician: Technician, job: Job | None) -> None:
    """Make a job the current one, or none."""
    session.flush()
    now_on = session.get(WorkingOn, technician.id)
    if job is None:
        session.execute(delete(WorkingOn).where(WorkingOn.technician_id == technician.id))
    elif now_on is None:
        session.add(WorkingOn(technician_id=technician.id, job_id=job.id))
    else:
        now_on.job_id = job.id
    session.flush()


def own(technician: Technician) -> Select[tuple[int]]:
    """The numbers of the jobs that a technician may see: those opened by them, and those given to them."""
    opened = select(Job.id).where(Job.owner_id == technician.id)
    given = select(Guest.job_id).where(Guest.technician_id == technician.id)
    return select(union_all(opened, given).subquery().c.id)


def _open(*also: ColumnElement[bool]) -> CompoundSelect[int]:
    """The numbers of the open jobs of somebody."""
    opened = select(Job.id).where(Job.owner_id == bindparam("who"), Job.closed_at.is_(None), *also)
    given = select(Job.id).join(Guest).where(Guest.technician_id == bindparam("who"), Job.closed_at.is_(None), *also)
    return union_all(opened, given)


_OPEN = select(Job).where(Job.id.in_(select(_open().subquery().c.id))).order_by(Job.last_at.desc(), Job.id.desc())
_OTHER = _open(Job.id != bindparam("this"), Job.turns > 0, Job.channel_job.is_(None)).limit(1)
"""Built once: one of them is asked with every message, and building it costs more than asking it."""


def open_jobs(session: Session, technician: Technician) -> Sequence[Job]:
    """The technician's open jobs, the one last spoken of first."""
    return session.scalars(_OPEN, {"who": technician.id}).all()


def has_other_open(session: Session, technician: Technician, job: Job) -> bool:
    """Whether the technician has another open job in which anything was told, beside those that a program keeps apart."""
    session.flush()
    return session.connection().scalar(_OTHER, {"who": technician.id, "this": job.id}) is not None


def open_jobs_meant(session: Session, technician: Technician, name: str) -> Sequence[Job]:
    """The open jobs that somebody can mean by a name; only the one of exactly that name where there is one."""
    meant = [job for job in open_jobs(session, technician) if job.name and means(name, job.name)]
    exact = [job for job in meant if job.name and called(job.name) == called(name)]
    return exact or meant


def last_closed(session: Session, technician: Technician, since: datetime) -> Job | None:
    """The job that the technician worked on last, where it was closed since a moment and nothing else was begun."""
    working = WorkingOn.technician_id == technician.id
    return session.scalar(select(Job).join(WorkingOn).where(working, Job.closed_at >= since))


def close_job(session: Session, job: Job, outcome: str | None, now: datetime) -> None:
    """Close a job with what was done. It is nobody's current one any more; whoever worked on it last may still prove it."""
    job.closed_at = now
    job.outcome = outcome or job.outcome
    session.flush()


def reopen_job(session: Session, technician: Technician, job: Job) -> None:
    """Go on with a job, closed or not."""
    job.closed_at = None
    work_on(session, technician, job)
