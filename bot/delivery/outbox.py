"""What is to go out: committed with the state that it speaks of, sent later, in order, and marked when it arrived."""

import json
from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from datetime import datetime
from typing import Any

from sqlalchemy import Connection, bindparam, delete, func, insert, select, update

from bot.delivery.letters import Letter, Unsent
from bot.store.tables import Outbox

LONGEST_WAIT_S = 3_600.0
"""No row rests longer: a clock that was set back must not silence a chat. [s]"""

_INSERT = insert(Outbox)
_UNSENT = (
    select(
        Outbox.update_id,
        Outbox.number,
        Outbox.chat_id,
        Outbox.kind,
        Outbox.body,
        Outbox.answers,
        Outbox.file,
        Outbox.tried,
        Outbox.attempts,
        Outbox.due_at,
    )
    .where(Outbox.chat_id == bindparam("chat"), Outbox.done_at.is_(None))
    .order_by(Outbox.update_id, Outbox.number)
)
_ROW = (Outbox.update_id == bindparam("of_update"), Outbox.number == bindparam("of_number"))
_TRIED = update(Outbox).where(*_ROW).values(tried=True)
_DONE = (
    update(Outbox)
    .where(*_ROW)
    .values(tried=True, done_at=bindparam("now"), message_id=bindparam("given"), error=bindparam("why"), body=None, file=None)
)
_GONE = delete(Outbox).where(*_ROW)
_LATER = (
    update(Outbox)
    .where(*_ROW)
    .values(tried=bindparam("maybe"), attempts=Outbox.attempts + 1, due_at=bindparam("due"), error=bindparam("why"))
)
_REPLY_TO = (
    select(Outbox.message_id)
    .where(
        Outbox.chat_id == bindparam("chat"),
        Outbox.answers == bindparam("message"),
        Outbox.kind.in_(("text", "edit")),
        Outbox.message_id.is_not(None),
    )
    .order_by(Outbox.update_id, Outbox.number)
)


@dataclass(frozen=True, slots=True, kw_only=True)
class Mark:
    """What became of one row: it went out (with the id that it got), or it never will (with the reason)."""

    key: tuple[int, int]
    message_id: int | None = None
    error: str | None = None
    next_tried: tuple[int, int] | None = None
    """The row that is sent next: marked as tried in the same commit."""
    gone: bool = False
    """Nothing is kept of the row."""


def put(connection: Connection, update_id: int, chat_id: int, letters: Sequence[Letter]) -> list[Unsent]:
    """
    Lay letters into the outbox.

    The first is marked as tried at once: whoever commits this sends it next, which saves a commit of its own.
    """
    if not letters:
        return []
    connection.execute(_INSERT, [_row(update_id, chat_id, n, letter) for n, letter in enumerate(letters)])
    return [
        Unsent(update_id=update_id, number=number, chat_id=chat_id, letter=letter, armed=number == 0)
        for number, letter in enumerate(letters)
    ]


def _row(update_id: int, chat_id: int, number: int, letter: Letter) -> dict[str, Any]:
    return {
        "update_id": update_id,
        "number": number,
        "chat_id": chat_id,
        "answers": letter.answers,
        "kind": letter.kind,
        "body": json.dumps(letter.body),
        "file": letter.file,
        "tried": number == 0,
        "attempts": 0,
    }


def unsent(connection: Connection, chat_id: int, now: datetime) -> list[Unsent]:
    """What a chat still has to get, oldest first."""
    return [_unsent(tuple(row), now) for row in connection.execute(_UNSENT, {"chat": chat_id})]


def _unsent(row: tuple[Any, ...], now: datetime) -> Unsent:
    update_id, number, chat_id, kind, body, answers, file, tried, attempts, due_at = row
    wait_s = 0.0 if due_at is None else (due_at - now).total_seconds()
    return Unsent(
        update_id=update_id,
        number=number,
        chat_id=chat_id,
        letter=Letter(kind=kind, body=json.loads(body), answers=answers, file=file),
        again=tried,
        armed=tried,
        attempts=attempts,
        wait_s=min(max(wait_s, 0.0), LONGEST_WAIT_S),
    )


def mark_tried(connection: Connection, key: tuple[int, int]) -> None:
    """From this commit on the row may have arrived."""
    connection.execute(_TRIED, {"of_update": key[0], "of_number": key[1]})


def mark(connection: Connection, marks: Iterable[Mark], now: datetime) -> None:
    """Write down what became of rows."""
    for one in marks:
        row = {"of_update": one.key[0], "of_number": one.key[1]}
        if one.gone:
            connection.execute(_GONE, row)
        else:
            why = one.error and one.error[:120]
            connection.execute(_DONE, {**row, "now": now, "given": one.message_id, "why": why})
        if one.next_tried is not None:
            mark_tried(connection, one.next_tried)


def put_off(connection: Connection, key: tuple[int, int], due: datetime, *, maybe_sent: bool, why: str) -> None:
    """Keep a row for later."""
    connection.execute(_LATER, {"of_update": key[0], "of_number": key[1], "due": due, "maybe": maybe_sent, "why": why[:120]})


def move(connection: Connection, old_chat: int, new_chat: int) -> None:
    """A group got another number: what is unsent goes there."""
    connection.execute(update(Outbox).where(Outbox.chat_id == old_chat, Outbox.done_at.is_(None)).values(chat_id=new_chat))


def forget(connection: Connection, chat_id: int, now_at: int) -> None:
    """Delete the letters of a private chat, sent or not, but those that answer the update that is worked on."""
    connection.execute(delete(Outbox).where(Outbox.chat_id == chat_id, Outbox.update_id != now_at))


def replies_to(connection: Connection, chat_id: int, message_id: int) -> Sequence[int]:
    """Our messages that answer one of theirs, first part first."""
    rows = connection.scalars(_REPLY_TO, {"chat": chat_id, "message": message_id})
    return list(dict.fromkeys(row for row in rows if row is not None))


def chats_waiting(connection: Connection) -> Sequence[int]:
    """Every chat that still has to get something."""
    return connection.scalars(select(Outbox.chat_id).where(Outbox.done_at.is_(None)).distinct()).all()


def waiting(connection: Connection) -> int:
    """How many letters are unsent."""
    return connection.scalar(select(func.count()).select_from(Outbox).where(Outbox.done_at.is_(None))) or 0


def parts_of(connection: Connection, chat_id: int, message_id: int) -> int:
    """Of how many messages our reply to one of theirs consists, those not sent yet included."""
    first = select(func.min(Outbox.update_id)).where(
        Outbox.chat_id == chat_id, Outbox.answers == message_id, Outbox.kind == "text"
    )
    asked = select(func.count()).where(
        Outbox.update_id == first.scalar_subquery(), Outbox.chat_id == chat_id, Outbox.kind == "text"
    )
    return connection.scalar(asked) or 0
