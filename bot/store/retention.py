"""How long closed jobs are kept."""

from datetime import datetime, timedelta

from sqlalchemy import delete, select
from sqlalchemy.orm import Session

from bot.store.tables import Job, Setting, Technician

KEEP_DAYS = "keep_days"


def keep_for(session: Session, days: int | None) -> None:
    """Keep closed jobs of everybody who chose nothing for so many days; None keeps them for good."""
    session.merge(Setting(name=KEEP_DAYS, value=days))


def kept_for(session: Session) -> int | None:
    """The days that closed jobs are kept where their technician chose nothing, or None."""
    found = session.get(Setting, KEEP_DAYS)
    return None if found is None else found.value


def is_set(session: Session) -> bool:
    """Whether anybody's jobs have an end at all."""
    own = session.scalar(select(Technician.id).where(Technician.keep_days.is_not(None)).limit(1))
    return own is not None or kept_for(session) is not None


def clear_out(session: Session, now: datetime) -> int:
    """Delete the closed jobs whose time is over, with their logs and files; how many it were."""
    common = kept_for(session)
    cleared = 0
    for technician_id, days in session.execute(select(Technician.id, Technician.keep_days)).all():
        keep = common if days is None else days
        if keep is None:
            continue
        over = delete(Job).where(Job.owner_id == technician_id, Job.closed_at < now - timedelta(days=keep))
        cleared += len(session.execute(over.returning(Job.id)).all())
    return cleared
