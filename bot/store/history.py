"""What happened on a unit before."""

from collections.abc import Sequence

from sqlalchemy import select
from sqlalchemy.orm import Session

from bot.store.tables import Job, Unit

SHOWN = 5
"""As many earlier jobs as a message can hold."""


def jobs_on(session: Session, units: Sequence[Unit], *, but: Job | None = None, limit: int = SHOWN) -> Sequence[Job]:
    """The latest jobs on some units that have anything in their log, newest first, the present one left out."""
    asked = select(Job).where(Job.unit_id.in_([unit.id for unit in units]), Job.turns > 0)
    if but is not None:
        asked = asked.where(Job.id != but.id)
    return session.scalars(asked.order_by(Job.opened_at.desc(), Job.id.desc()).limit(limit)).all()
