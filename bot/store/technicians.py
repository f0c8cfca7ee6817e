"""Finding who writes."""

from collections.abc import Sequence
from datetime import datetime

from sqlalchemy import bindparam, delete, select
from sqlalchemy.orm import Session

from bot.store.names import WIDEST
from bot.store.tables import Notice, Technician
from core.said import Said

_WHO = select(Technician).where(Technician.channel == bindparam("on"), Technician.address == bindparam("at"))
_NOTICES = select(Notice.id, Notice.template, Notice.named).where(Notice.technician_id == bindparam("who")).order_by(Notice.id)


def technician(session: Session, channel: str, address: str) -> Technician | None:
    """Whoever has this address on this channel, or None."""
    return session.scalar(_WHO, {"on": channel, "at": address})


def welcome(session: Session, channel: str, address: str, name: str, now: datetime) -> Technician:
    """Whoever has this address, taken in where it is the first message."""
    known = technician(session, channel, address)
    if known is None:
        known = Technician(channel=channel, address=address, name=name[:WIDEST], joined_at=now)
        session.add(known)
        session.flush()
    elif name and known.name != name[:WIDEST]:
        known.name = name[:WIDEST]
    return known


def tell_later(session: Session, technician_id: int, said: Said, now: datetime) -> None:
    """Keep a sentence for the technician's next reply. Its values are text or numbers."""
    session.add(Notice(technician_id=technician_id, template=said.template, named=dict(said.values), made_at=now))


def take_notices(session: Session, technician_id: int) -> Sequence[Said]:
    """What the technician is still to be told, oldest first; it is not kept."""
    session.flush()
    rows = session.connection().execute(_NOTICES, {"who": technician_id}).all()
    if rows:
        session.execute(delete(Notice).where(Notice.id.in_([number for number, _, _ in rows])))
    return [Said(template, tuple(named.items())) for _, template, named in rows]
