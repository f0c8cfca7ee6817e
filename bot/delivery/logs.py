"""Structured logs: one JSON object a line, with ids and kinds of errors, and never a word that a person wrote nor a secret."""

import json
import logging
import sys
import traceback
from datetime import UTC, datetime
from typing import TextIO

FIELDS = ("chat", "update", "letters", "kind", "why", "then", "given_up", "code", "mode", "signal", "address", "count")
"""What a line may carry beside its event. Anything else stays out."""


class Line(logging.Formatter):
    """A record as JSON."""

    def format(self, record: logging.LogRecord) -> str:
        """
        Our own events by name. Of a library's record only who, how bad, and its template: its arguments can hold anything.

        An exception is told by its kind and its places in the code: its text can quote a message, a statement or an address.
        """
        ours = record.name.startswith("bot.")
        line: dict[str, object] = {
            "at": datetime.fromtimestamp(record.created, UTC).isoformat(timespec="milliseconds"),
            "level": record.levelname.lower(),
            "from": record.name,
            "event": record.msg if ours or record.args else "message of a library",
        }
        line |= {name: vars(record)[name] for name in FIELDS if name in vars(record)}
        if record.exc_info and record.exc_info[1] is not None:
            line["error"] = told(record.exc_info[1])
        return json.dumps(line)


def told(error: BaseException) -> list[dict[str, object]]:
    """An exception and what it came from: kinds and places."""
    chain: list[dict[str, object]] = []
    at: BaseException | None = error
    while at is not None and len(chain) < 5:
        frames = traceback.extract_tb(at.__traceback__)[-8:]
        chain.append(
            {"kind": type(at).__name__, "where": [f"{f.filename.rsplit('/', 3)[-1]}:{f.lineno} {f.name}" for f in frames]}
        )
        at = at.__cause__ or at.__context__
    return chain


def set_up(stream: TextIO | None = None) -> None:
    """All logging of the program goes out as lines. The HTTP library's lines, which have the token in them, are not made at all."""
    handler = logging.StreamHandler(stream or sys.stderr)
    handler.setFormatter(Line())
    logging.basicConfig(level=logging.INFO, handlers=[handler], force=True)
    for chatty in ("httpx", "httpcore", "telegram", "tornado", "asyncio", "alembic", "sqlalchemy"):
        logging.getLogger(chatty).setLevel(logging.WARNING)
