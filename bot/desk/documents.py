"""The files that go with a reply, by the name in its record, and the papers of a job."""

import json
from dataclasses import dataclass
from datetime import tzinfo
from typing import Literal

from sqlalchemy.orm import Session

from bot.desk.incoming import Taken
from bot.store.tables import Job, Technician

Paper = Literal["pdf", "text", "csv", "json"]


@dataclass(frozen=True, slots=True, kw_only=True)
class Document:
    """One file for the technician."""

    name: str
    media_type: str
    body: bytes


def document_for(session: Session, taken: Taken, zone: tzinfo) -> Document | None:
    """
    The file that a reply names, or None where it names none.

    Args:
        session: A session on the store that took the message.
        taken: What the desk made of it.
        zone: The technician's clock.
    """
    if taken.technician_id is None or taken.job_id is None:
        return None
    match taken.document:
        case "export":
            return _export(session, taken.technician_id)
        case "report":
            return report(session, session.get_one(Job, taken.job_id), "pdf", zone, taken.language)
    return None


def _export(session: Session, technician_id: int) -> Document:
    from bot.store.export import export  # noqa: PLC0415

    whole = export(session, session.get_one(Technician, technician_id))
    body = json.dumps(whole, ensure_ascii=False, indent=1).encode()
    return Document(name="ohmreply-export.json", media_type="application/json", body=body)


def report(session: Session, job: Job, paper: Paper, zone: tzinfo, language: str) -> Document:
    """
    The report of a job on the paper asked for.

    Args:
        session: A session on the store.
        job: The job.
        paper: How it is laid out.
        zone: The clock that it is written in.
        language: The reader's.
    """
    from bot import report as papers  # noqa: PLC0415  (only who prints loads what prints)
    from bot.desk.job_log import job_log  # noqa: PLC0415
    from bot.report.pictures import drawn  # noqa: PLC0415
    from bot.store.names import called  # noqa: PLC0415
    from bot.wording.catalog import catalog  # noqa: PLC0415

    tell = catalog(language).tell
    log = job_log(session, job, zone)
    laid = papers.compose(log, tell, language)
    stem = called(log.name).replace(" ", "-") or "report"
    match paper:
        case "pdf":
            body = papers.as_pdf(laid, drawn(log, tell), log.photos)
            return Document(name=f"{stem}.pdf", media_type="application/pdf", body=body)
        case "text":
            return Document(name=f"{stem}.txt", media_type="text/plain", body=papers.as_text(laid).encode())
        case "csv":
            return Document(name=f"{stem}.csv", media_type="text/csv", body=papers.as_csv(laid).encode("utf-8-sig"))
        case "json":
            return Document(name=f"{stem}.json", media_type="application/json", body=papers.as_json(laid).encode())
