"""From rows of the log to the turns that the conversation folds."""

from collections.abc import Sequence

from sqlalchemy.orm import Session

from bot.conversation import Turn
from bot.desk.incoming import Incoming
from bot.store import log
from bot.store.tables import Job, Technician


def turns(session: Session, job: Job, *, after: int = 0, records: bool = True) -> Sequence[Turn]:
    """
    The turns of a job from a number on.

    Args:
        session: A session on the store.
        job: The job.
        after: Number of the last turn that is known already.
        records: Whether each reply's record is wanted beside its talk. A fold needs only the talk.
    """
    return [
        Turn(
            number=number,
            text=text,
            message_id=_own_id(technician_id, message_id, revision),
            edits=_own_id(technician_id, message_id, 0) if revision else None,
            sent_at=sent_at,
            technician=written_by,
            reply=None if talk is None else {**(record or {}), "talk": talk},
        )
        for number, technician_id, message_id, revision, text, sent_at, written_by, talk, record in log.lines(
            session, job, after=after, records=records
        )
    ]


def turn_of(sent: Incoming, job: Job, technician: Technician, message_id: str, revision: int) -> Turn:
    """The turn that a message will be, before it is answered."""
    return Turn(
        number=job.turns + 1,
        text=sent.text,
        message_id=_own_id(technician.id, message_id, revision),
        edits=_own_id(technician.id, message_id, 0) if revision else None,
        sent_at=sent.sent_at,
        technician=technician.name,
        reply=None,
    )


def _own_id(technician_id: int, message_id: str, revision: int) -> str:
    """An id that is unique in a job on which two technicians work, whose channels count from 1 alike."""
    return f"{technician_id}.{message_id}" if revision == 0 else f"{technician_id}.{message_id}.{revision}"
