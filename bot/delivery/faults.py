"""What an error of the messenger means for the row that was being sent: one table, and nothing else decides it."""

import os
import random
from dataclasses import dataclass
from datetime import timedelta

from telegram.error import BadRequest, ChatMigrated, Forbidden, NetworkError, RetryAfter, TelegramError

from bot.delivery.wire import NeverLeftError

os.environ.setdefault("PTB_TIMEDELTA", "true")  # the library's way from its next version on; without it each 429 warns

FIRST_WAIT_S = 0.5
LONGEST_WAIT_S = 60.0
ATTEMPTS = 8
"""So often is a row tried that the messenger refuses for a reason that is not known here."""

REFUSALS = (
    ("message is not modified", "done"),
    ("query is too old", "done"),
    ("query id is invalid", "done"),
    ("can't parse entities", "plain"),
    ("message to edit not found", "anew"),
    ("message can't be edited", "anew"),
    ("message_id_invalid", "anew"),
)
"""What a refusal says -> what to do: it is as wanted; send without marks; send as a message of its own."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Fault:
    """What to do with the row."""

    then: str
    """`later`, `done`, `plain`, `anew`, `moved`, `never`."""
    why: str
    """The kind of error. Never its text, which can quote the message."""
    maybe_sent: bool = False
    wait_s: float = 0.0
    new_chat: int | None = None


def fault_of(error: Exception, attempts: int) -> Fault:  # noqa: PLR0911  (a table, written as cases)
    """
    What an error means.

    Args:
        error: What sending raised.
        attempts: How often the row was tried before.
    """
    why = type(error).__name__
    match error:
        case RetryAfter():
            return Fault(then="later", why=why, wait_s=_retry_after_s(error) + random.uniform(0.1, 0.5))
        case ChatMigrated():
            return Fault(then="moved", why=why, new_chat=error.new_chat_id)
        case Forbidden():
            return Fault(then="never", why=why)
        case BadRequest():
            return _refused(error, attempts)
        case NetworkError():
            left = not isinstance(error, NeverLeftError)
            return Fault(then="later", why=why, maybe_sent=left, wait_s=back_off_s(attempts))
        case TelegramError():  # a token that was withdrawn, an answer that is no JSON: waits for a person or passes
            return Fault(then="later", why=why, maybe_sent=True, wait_s=back_off_s(attempts))
        case _:
            if attempts + 1 >= ATTEMPTS:
                return Fault(then="never", why=why)
            return Fault(then="later", why=why, maybe_sent=True, wait_s=back_off_s(attempts))


def _refused(error: BadRequest, attempts: int) -> Fault:
    text = error.message.lower()
    for says, then in REFUSALS:
        if says in text:
            return Fault(then=then, why="BadRequest")
    if "chat not found" in text or attempts + 1 >= ATTEMPTS:
        return Fault(then="never", why="BadRequest")
    return Fault(then="later", why="BadRequest", wait_s=back_off_s(attempts))


def _retry_after_s(error: RetryAfter) -> float:
    told = error.retry_after
    return told.total_seconds() if isinstance(told, timedelta) else float(told)


def back_off_s(attempts: int) -> float:
    """
    How long to wait before the next try: doubled each time, up to a minute, never in step with others.

    Args:
        attempts: How often it was tried before.
    """
    longest = min(LONGEST_WAIT_S, FIRST_WAIT_S * 2.0 ** min(attempts, 10))
    return longest * random.uniform(0.5, 1.0)
