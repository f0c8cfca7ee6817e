"""What no repeat and no edit can ask for any more is deleted, a little at a time."""

from datetime import datetime, timedelta

from sqlalchemy import Connection, delete, select

from bot.store.tables import Inbox, Outbox

KEPT = timedelta(hours=72)
"""A messenger repeats an update for a day at most, and lets a person edit a message for two."""
KEPT_WITH_ERROR = timedelta(days=30)
"""Of an update that could not be worked on."""


def clear(connection: Connection, now: datetime, at_once: int = 1_000) -> int:
    """
    Delete what is too old; how many rows went.

    The messenger's numbers rise, so what is old stands at the low end, or at the high end where it began them anew. Only so many rows
    at both ends are looked at: no message waits for a walk through all of them.
    """
    gone = 0
    old = now - KEPT
    given_up = Inbox.error.is_(None) | (Inbox.done_at < now - KEPT_WITH_ERROR)
    for table, is_old in ((Inbox, (Inbox.done_at < old) & given_up), (Outbox, Outbox.done_at < old)):
        for end in (table.update_id.asc(), table.update_id.desc()):
            seen = select(table.update_id).order_by(end).limit(at_once).subquery()
            gone += connection.execute(delete(table).where(table.update_id.in_(select(seen.c.update_id)), is_old)).rowcount
    return gone
