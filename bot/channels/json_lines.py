"""`ohmreply pipe`: one JSON object a line in, one a line out."""

import json
from collections.abc import Callable, Iterator
from dataclasses import dataclass
from datetime import UTC, datetime
from typing import Any, BinaryIO, TextIO

from sqlalchemy import Engine
from sqlalchemy.orm import Session

from bot.desk import Incoming, Memory, take
from bot.store.trouble import store_trouble
from core.said import Said, say

LONGEST_BYTES = 1_000_000
"""A line longer than this is not kept in memory. [byte]"""

FIELDS = {"technician": str, "text": str, "job": str, "message_id": str, "edit": bool}
"""What a line may hold, and of what kind."""
MUST = ("technician", "text")


class BadLineError(Exception):
    """A line that can't be read."""

    def __init__(self, said: Said) -> None:
        super().__init__(str(said))


@dataclass(frozen=True, slots=True)
class Pipe:
    """The store that the run writes to, and what it remembers."""

    engine: Engine
    memory: Memory
    now: Callable[[], datetime] = lambda: datetime.now(UTC)


def run(pipe: Pipe, lines_in: BinaryIO, lines_out: TextIO) -> None:
    """Answer each line at once, in order, until there are no more."""
    for line in lines(lines_in):
        lines_out.write(json.dumps(answer(pipe, line), ensure_ascii=False) + "\n")
        lines_out.flush()


def lines(source: BinaryIO) -> Iterator[bytes | None]:
    """The lines of a stream that aren't blank; None for one that is too long."""
    while line := source.readline(LONGEST_BYTES + 1):
        if len(line) > LONGEST_BYTES and not line.endswith(b"\n"):
            while (rest := source.readline(LONGEST_BYTES)) and not rest.endswith(b"\n"):
                pass
            yield None
        elif line.strip():
            yield line


def answer(pipe: Pipe, line: bytes | None) -> dict[str, Any]:
    """The record that answers a line, or the error that does."""
    try:
        sent = incoming(line, pipe.now())
        with Session(pipe.engine) as session, session.begin():
            return dict(take(session, sent, pipe.memory).record)
    except BadLineError as bad:
        return {"error": str(bad)}
    except Exception as error:  # noqa: BLE001  (whatever it was, the lines after this one are answered)
        return {"error": str(store_trouble(error) or say("That message could not be worked on, and was not stored"))}


def incoming(line: bytes | None, now: datetime) -> Incoming:
    """
    The message of a line.

    Raises:
        BadLineError: The line is too long, no JSON object, or lacks what a message needs.
    """
    if line is None:
        raise BadLineError(say("The line is longer than {longest} bytes", longest=LONGEST_BYTES))
    try:
        told = json.loads(line)
    except (ValueError, RecursionError):
        raise BadLineError(say("The line is not JSON")) from None
    if not isinstance(told, dict):
        raise BadLineError(say('A line is one JSON object: {{"technician": "t1", "text": "pri 118V sec 0V"}}'))
    for field in MUST:
        if field not in told:
            raise BadLineError(say("The line has no {field}", field=field))
    for field, kind in FIELDS.items():
        if not isinstance(told.get(field), kind | None):
            raise BadLineError(say("{field} has to be {kind}", field=field, kind=KINDS[kind]))
    return Incoming(
        channel="local",
        address=told["technician"],
        name=told["technician"],
        text=told["text"],
        sent_at=now,
        message_id=told.get("message_id"),
        edit=bool(told.get("edit")),
        job=told.get("job"),
    )


KINDS = {str: say("text"), bool: say("true or false")}
