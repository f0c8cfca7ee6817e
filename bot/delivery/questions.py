"""Which buttons are live: those of the last reply that a person got in a chat, and no others."""

import json
from dataclasses import dataclass

from sqlalchemy import Connection, bindparam, delete, select

from bot.store.insert import insert_into
from bot.store.tables import Question

_OF = (Question.chat_id == bindparam("chat"), Question.user_id == bindparam("user"))
_CLOSE = delete(Question).where(*_OF)
_LIVE = select(Question.update_id, Question.number, Question.labels).where(*_OF)


@dataclass(frozen=True, slots=True)
class Whose:
    """One person in one chat."""

    chat_id: int
    user_id: int


def put(connection: Connection, whose: Whose, key: tuple[int, int], labels: tuple[str, ...]) -> None:
    """Make the buttons of a reply the live ones; none, where it has none."""
    if not labels:
        connection.execute(_CLOSE, {"chat": whose.chat_id, "user": whose.user_id})
        return
    values = {"update_id": key[0], "number": key[1], "labels": json.dumps(labels)}
    insert = insert_into(Question, connection.dialect.name).values(chat_id=whose.chat_id, user_id=whose.user_id, **values)
    connection.execute(insert.on_conflict_do_update(index_elements=["chat_id", "user_id"], set_=values))


def is_anothers(connection: Connection, whose: Whose, tapped: str) -> bool:
    """Whether the button that was tapped is live, for somebody else in the chat."""
    there = select(Question.update_id, Question.number).where(
        Question.chat_id == whose.chat_id, Question.user_id != whose.user_id
    )
    return any(tapped.startswith(f"{update_id}.{number}.") for update_id, number in connection.execute(there))


def forget(connection: Connection, user_id: int, group: int | None = None) -> None:
    """Close somebody's questions: those in one group, or all."""
    there = () if group is None else (Question.chat_id == group,)
    connection.execute(delete(Question).where(Question.user_id == user_id, *there))


def tag(key: tuple[int, int], index: int) -> str:
    """What comes back with a tap: under the messenger's 64 bytes, and a secret to nobody."""
    return f"{key[0]}.{key[1]}.{index}"


def label(connection: Connection, whose: Whose, tapped: str) -> str | None:
    """The text of the button that was tapped; None where it is not live for this person."""
    row = connection.execute(_LIVE, {"chat": whose.chat_id, "user": whose.user_id}).first()
    if row is None:
        return None
    labels = json.loads(row[2])
    return next((text for index, text in enumerate(labels) if tag((row[0], row[1]), index) == tapped), None)
