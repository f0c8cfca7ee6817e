"""How long closed jobs are kept."""

from datetime import datetime, timedelta

from sqlalchemy import delete, func, select
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


def clear_out(session: Session, now: datetime, at_most: int | None = None) -> int:
    """
    Delete the closed jobs whose time is over, with their logs and files; how many it were.

    Args:
        session: An open session on the store.
        now: The present moment.
        at_most: So many at once, where others wait for the store.
    """
    keep = func.coalesce(Technician.keep_days, kept_for(session))
    cleared = 0
    for days in session.scalars(select(keep).distinct()).all():
        if days is None:
            continue
        theirs = select(Technician.id).where(keep == days)
        over = select(Job.id).where(Job.owner_id.in_(theirs), Job.closed_at < now - timedelta(days=days))
        if at_most is not None:
            over = over.limit(at_most - cleared)
        cleared += len(session.execute(delete(Job).where(Job.id.in_(over)).returning(Job.id)).all())
    return cleared
