"""What came in: written once however often it comes, and taken out oldest first."""

import json
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass
from datetime import datetime
from typing import Any

from sqlalchemy import ColumnElement, Connection, bindparam, delete, func, select, update

from bot.store.insert import insert_into
from bot.store.tables import Inbox

WIDEST = 65_536
"""No update that a person can cause is longer; one that is gets kept without its body. [characters]"""
OWN_CHAT = ("message", "edited_message", "callback_query")
"""The kinds of update that are asked for."""

_INSERT = {
    name: insert_into(Inbox, name).on_conflict_do_nothing(index_elements=["update_id"]) for name in ("sqlite", "postgresql")
}
_OLDEST = (
    select(Inbox.update_id, Inbox.body, Inbox.failures, Inbox.received_at)
    .where(Inbox.chat_id == bindparam("chat"), Inbox.done_at.is_(None))
    .order_by(Inbox.update_id)
    .limit(2)
)
_DONE = (
    update(Inbox)
    .where(Inbox.update_id == bindparam("key"), Inbox.done_at.is_(None))
    .values(done_at=bindparam("now"), body=None, chat_id=None)
)
"""What stays is a number by which a repeat is known, and not whose it was."""
_FAILED = (
    update(Inbox)
    .where(Inbox.update_id == bindparam("key"))
    .values(failures=Inbox.failures + 1, error=bindparam("why"), done_at=bindparam("now"))
)


@dataclass(frozen=True, slots=True, kw_only=True)
class Waiting:
    """One update that is not worked on yet."""

    update_id: int
    body: Mapping[str, Any]
    failures: int
    received_at: datetime
    more: bool = False
    """Another one waits behind it."""


def receive(connection: Connection, updates: Iterable[Mapping[str, Any]], now: datetime) -> list[int]:
    """
    Write updates down; one that is there already changes nothing.

    Returns:
        The chats that have something to be worked on.
    """
    rows = [_row(raw, now) for raw in updates]
    if rows:
        connection.execute(_INSERT[connection.dialect.name], rows)
    return list(dict.fromkeys(row["chat_id"] for row in rows if row["done_at"] is None))


def take(connection: Connection, raw: Mapping[str, Any], now: datetime) -> bool:
    """
    Write an update down as worked on already, for whoever does that in the same transaction.

    Returns:
        False where it came before, or is none that can be worked on: then nothing is written.
    """
    row = _row(raw, now)
    if row["error"] is not None:
        return False
    done = {**row, "done_at": now, "body": None, "chat_id": None}
    return connection.execute(_INSERT[connection.dialect.name], done).rowcount == 1


def _row(raw: Mapping[str, Any], now: datetime) -> dict[str, Any]:
    chat = chat_of(raw)
    body = json.dumps(raw)
    error = None
    if len(body) > WIDEST:
        body, error = json.dumps({"update_id": raw["update_id"]}), f"longer than {WIDEST} characters"
    if chat is None:
        error = error or "names no chat"
    return {
        "update_id": raw["update_id"],
        "chat_id": chat,
        "body": body,
        "received_at": now,
        "done_at": None if chat is not None else now,
        "failures": 0,
        "error": error,
    }


def is_update(raw: object) -> bool:
    """Whether something has the number by which an update is kept."""
    number = raw.get("update_id") if isinstance(raw, Mapping) else None
    return isinstance(number, int) and not isinstance(number, bool) and abs(number) < 2**63


def chat_of(raw: Mapping[str, Any]) -> int | None:
    """The chat that an update belongs to, read without trusting its shape."""
    for kind in OWN_CHAT:
        part = raw.get(kind)
        if not isinstance(part, Mapping):
            continue
        message = part.get("message") if kind == "callback_query" else part
        chat = message.get("chat") if isinstance(message, Mapping) else None
        number = chat.get("id") if isinstance(chat, Mapping) else None
        if isinstance(number, int) and not isinstance(number, bool) and abs(number) < 2**63:
            return number
    return None


def oldest(connection: Connection, chat_id: int) -> Waiting | None:
    """The oldest update of a chat that is not worked on."""
    rows = connection.execute(_OLDEST, {"chat": chat_id}).all()
    if not rows:
        return None
    update_id, body, failures, received_at = rows[0]
    return Waiting(
        update_id=update_id, body=json.loads(body or "{}"), failures=failures, received_at=received_at, more=len(rows) > 1
    )


def done(connection: Connection, update_id: int, now: datetime) -> bool:
    """Mark an update as worked on. False where somebody else did it meanwhile: then nothing of ours may stand."""
    return connection.execute(_DONE, {"key": update_id, "now": now}).rowcount == 1


def failed(connection: Connection, update_id: int, why: str, given_up: datetime | None) -> None:
    """Count one failure; with a moment, give up. The update is kept with its error."""
    connection.execute(_FAILED, {"key": update_id, "why": why, "now": given_up})


def chats_waiting(connection: Connection) -> Sequence[int]:
    """Every chat with an update that is not worked on."""
    return connection.scalars(select(Inbox.chat_id).where(Inbox.done_at.is_(None)).distinct()).all()  # type: ignore[return-value]


def waiting(connection: Connection) -> int:
    """How many updates are not worked on."""
    return connection.scalar(select(func.count()).select_from(Inbox).where(Inbox.done_at.is_(None))) or 0


def forget(connection: Connection, user_id: int, now_at: int, group: int | None = None) -> None:
    """
    Delete what is kept of somebody's updates because they could not be worked on; those that still wait are left.

    Args:
        connection: The turn's.
        user_id: Whose; a private chat has the number of its person.
        now_at: The update that is worked on; it stays.
        group: Only what was sent there; None is everywhere.
    """
    there: ColumnElement[bool] = (
        Inbox.chat_id == group if group is not None else (Inbox.chat_id == user_id) | (Inbox.chat_id < 0)
    )
    given_up = select(Inbox.update_id, Inbox.chat_id, Inbox.body).where(
        there, Inbox.done_at.is_not(None), Inbox.update_id != now_at
    )
    theirs = [
        update_id
        for update_id, chat_id, body in connection.execute(given_up).all()
        if chat_id == user_id or sender_of(json.loads(body or "{}")) == user_id
    ]
    connection.execute(delete(Inbox).where(Inbox.update_id.in_(theirs)))


def sender_of(raw: Mapping[str, Any]) -> int | None:
    """Who sent an update, read without trusting its shape."""
    for kind in OWN_CHAT:
        part = raw.get(kind)
        sender = part.get("from") if isinstance(part, Mapping) else None
        if isinstance(sender, Mapping):
            number = sender.get("id")
            return number if isinstance(number, int) else None
    return None
