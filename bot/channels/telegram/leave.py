"""Leaving: what this messenger's own tables hold of somebody goes in the same transaction as their jobs."""

from collections.abc import Sequence
from dataclasses import replace
from datetime import datetime

from sqlalchemy import Select, func, select
from sqlalchemy.orm import Session

from bot import members
from bot.channels.telegram import talk
from bot.channels.telegram.arrival import Arrival
from bot.delivery import inbox, outbox, questions
from bot.delivery.letters import Letter
from bot.desk import Taken
from bot.store.forget import forget
from bot.store.tables import Job, Technician
from core.said import Said, say


def is_asked(taken: Taken) -> bool:
    """Whether the reply asks if everything is to be deleted."""
    return taken.technician_id is not None and taken.reply is not None and taken.reply.message.forgets == "all"


def beforehand(session: Session, arrival: Arrival, role: str) -> list[Said]:
    """What there is to know here before somebody says yes."""
    if arrival.is_group:
        return [talk.FORGET_HERE]
    elsewhere = session.scalar(select(func.count()).select_from(Job).where(Job.owner_id.in_(in_groups(arrival.user_id)))) or 0
    lines = [say("Jobs in groups go too: {jobs}", jobs=elsewhere)] if elsewhere else []
    return lines if role == "owner" else [*lines, talk.FORGET_SHUTS]


def leave(session: Session, arrival: Arrival, now: datetime) -> list[Said]:
    """
    Delete what is left of somebody whose jobs were just deleted; what there is to say of it.

    In a group only what was sent there is meant. The update that is worked on stays as a number, so that it is not worked on again.
    """
    connection, user_id = session.connection(), arrival.user_id
    group = arrival.chat_id if arrival.is_group else None
    inbox.forget(connection, user_id, arrival.update_id, group)
    questions.forget(connection, user_id, group)
    if group is not None:
        return []
    for technician in session.scalars(select(Technician).where(Technician.id.in_(in_groups(arrival.user_id)))).all():
        forget(session, technician, now)
    outbox.forget(connection, arrival.chat_id, arrival.update_id)
    return [talk.FORGOTTEN_OUT] if members.forget(session, user_id) else []


def last(letters: Sequence[Letter]) -> list[Letter]:
    """The letters so that nothing of them is kept once they went out."""
    return [replace(one, body={**one.body, "last": True}) for one in letters]


def in_groups(user_id: int) -> Select[int]:
    """The numbers under which somebody has jobs in groups."""
    address = Technician.address.startswith(f"{user_id}@", autoescape=True)
    return select(Technician.id).where(Technician.channel == "telegram", address)
