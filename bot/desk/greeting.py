"""What a technician is told who comes back."""

from collections.abc import Sequence
from datetime import tzinfo

from sqlalchemy.orm import Session

from bot.desk.deed import title, verdict_of
from bot.store.jobs import current_job
from bot.store.technicians import technician
from core.said import Said, say


def standing(session: Session, channel: str, address: str, zone: tzinfo | None) -> Sequence[Said]:
    """The job in hand, or nothing for somebody new."""
    known = technician(session, channel, address)
    job = None if known is None else current_job(session, known)
    if job is None or job.turns == 0:
        return ()
    lines = [say("In hand: {job}. Messages: {count}", job=title(job, zone), count=job.turns)]
    if (found := verdict_of(job)) is not None:
        lines.append(say("So far: {finding}", finding=found))
    return lines
