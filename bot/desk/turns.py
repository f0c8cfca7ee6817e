"""From rows of the log to the turns that the conversation folds."""

from collections.abc import Sequence

from sqlalchemy.orm import Session

from bot.conversation import Turn
from bot.desk.incoming import Incoming
from bot.store import log
from bot.store.tables import Job, LoggedMessage, LoggedReply, Technician


def turns(session: Session, job: Job, *, after: int = 0) -> Sequence[Turn]:
    """The turns of a job from a number on."""
    return [_turn(message, reply) for message, reply in log.read(session, job, after=after)]


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


def _turn(message: LoggedMessage, reply: LoggedReply | None) -> Turn:
    return Turn(
        number=message.number,
        text=message.text,
        message_id=_own_id(message.technician_id, message.message_id, message.revision),
        edits=_own_id(message.technician_id, message.message_id, 0) if message.revision else None,
        sent_at=message.sent_at,
        technician=message.written_by,
        reply=None if reply is None else {**reply.record, "talk": reply.talk},
    )


def _own_id(technician_id: int, message_id: str, revision: int) -> str:
    """An id that is unique in a job on which two technicians work, whose channels count from 1 alike."""
    return f"{technician_id}.{message_id}" if revision == 0 else f"{technician_id}.{message_id}.{revision}"
