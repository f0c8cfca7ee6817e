"""Technicians and messages for tests of the store. All invented."""

from datetime import UTC, datetime, timedelta

from sqlalchemy.orm import Session

from bot.store import jobs, log
from bot.store.tables import Job, LoggedMessage, Technician
from bot.store.technicians import welcome

NOW = datetime(2026, 3, 2, 8, 14, tzinfo=UTC)
LATER = NOW + timedelta(minutes=5)


def someone(session: Session, address: str = "t1") -> Technician:
    """A technician at a terminal."""
    return welcome(session, "local", address, address, NOW)


def wrote(session: Session, who: Technician, job: Job, text: str, message_id: str, revision: int = 0) -> LoggedMessage:
    """A message in a job, with a reply that says it back."""
    sent = log.Sent(message_id=message_id, revision=revision, text=text, sent_at=NOW)
    number = log.append(session, who, job, sent, log.Answered(record={"reply": f"read: {text}", "asks": []}))
    return session.get_one(LoggedMessage, number)


def a_job(session: Session, who: Technician, name: str | None = None) -> Job:
    """An open job."""
    return jobs.open_job(session, who, NOW, name=name)
