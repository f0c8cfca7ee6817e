"""A job as it stands in the store, for the report."""

from datetime import tzinfo

from sqlalchemy.orm import Session

from bot.desk.deed import title
from bot.desk.turns import turns
from bot.report.gather import About, gather
from bot.report.job_log import JobLog, Photo
from bot.store.attachments import attachments
from bot.store.tables import Job, Unit


def job_log(session: Session, job: Job, zone: tzinfo) -> JobLog:
    """
    Everything of a job that a report may show.

    Args:
        session: A session on the store.
        job: The job.
        zone: The clock that the report is written in.
    """
    unit = session.get(Unit, job.unit_id) if job.unit_id else None
    photos = (file for file in attachments(session, job) if file.kind == "photo")
    about = About(
        name=str(title(job, zone)),
        unit=unit.name if unit else None,
        opened=job.opened_at,
        closed=job.closed_at,
        outcome=job.outcome,
        photos=tuple(Photo(at=file.added_at, body=file.body, caption=file.caption or "") for file in photos),
        zone=zone,
    )
    return gather(turns(session, job), about)
