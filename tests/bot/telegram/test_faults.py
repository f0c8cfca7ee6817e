"""What an error means for the row that was being sent; how fast is not too fast; what a log line may hold."""

import asyncio
import io
import json
import logging
import time

import pytest
from telegram.error import BadRequest, ChatMigrated, Forbidden, InvalidToken, NetworkError, RetryAfter, TimedOut

from bot.delivery import logs
from bot.delivery.faults import ATTEMPTS, LONGEST_WAIT_S, back_off_s, fault_of
from bot.delivery.pace import Pace
from bot.delivery.wire import NeverLeftError

CASES = [
    (RetryAfter(7), "later", False),
    (ChatMigrated(-100), "moved", False),
    (Forbidden("blocked"), "never", False),
    (BadRequest("Message is not modified: x"), "done", False),
    (BadRequest("Can't parse entities: x"), "plain", False),
    (BadRequest("Message to edit not found"), "anew", False),
    (BadRequest("Query is too old and response timeout expired"), "done", False),
    (BadRequest("Chat not found"), "never", False),
    (BadRequest("something new"), "later", False),
    (NetworkError("Bad Gateway"), "later", True),
    (TimedOut(), "later", True),
    (NeverLeftError("refused"), "later", False),
    (InvalidToken(), "later", True),
    (ZeroDivisionError(), "later", True),
]


@pytest.mark.parametrize(("error", "then", "maybe_sent"), CASES, ids=lambda one: type(one).__name__)
def test_each_error_has_its_meaning(error: Exception, then: str, maybe_sent: bool) -> None:  # noqa: FBT001
    """Only where it may have arrived is the next try silent."""
    fault = fault_of(error, attempts=0)

    assert (fault.then, fault.maybe_sent) == (then, maybe_sent)


def test_a_wait_that_was_told_is_kept() -> None:
    """Never sooner."""
    assert 7.0 <= fault_of(RetryAfter(7), attempts=0).wait_s < 8.0


@pytest.mark.parametrize("error", [BadRequest("something new"), ZeroDivisionError()])
def test_what_is_refused_for_no_known_reason_does_not_block_a_chat_for_ever(error: Exception) -> None:
    """After a few tries it is given up; a network that is down is never given up."""
    assert fault_of(error, attempts=ATTEMPTS - 1).then == "never"
    assert fault_of(NetworkError("x"), attempts=10_000).then == "later"


def test_the_rests_grow_to_a_minute_and_are_never_in_step() -> None:
    """Doubled each time."""
    rests = [[back_off_s(attempts) for _ in range(50)] for attempts in range(12)]

    assert all(0.5 * min(0.5 * 2**n, LONGEST_WAIT_S) <= rest <= LONGEST_WAIT_S for n, row in enumerate(rests) for rest in row)
    assert max(rests[0]) <= 0.5
    assert len({round(rest, 6) for rest in rests[3]}) > 40


def test_a_chat_that_was_too_fast_holds_up_no_other() -> None:
    """Two of them at nearly the same time hold up all: then the limit is the bot's."""

    async def waited(*refused: int) -> float:
        pace = Pace(a_second=None)
        for chat in refused:
            pace.refused(chat, 0.2)
        began = time.monotonic()
        await pace.wait(99)
        return time.monotonic() - began

    assert asyncio.run(waited(1, 1)) < 0.1
    assert asyncio.run(waited(1, 2)) >= 0.19


def test_a_bot_sends_no_more_than_its_limit() -> None:
    """A burst of the limit, and then no faster."""

    async def burst() -> float:
        pace = Pace(a_second=20.0)
        began = time.monotonic()
        for chat in range(30):
            await pace.wait(chat + 1)
        return time.monotonic() - began

    assert asyncio.run(burst()) >= 0.45


def logged(record: logging.LogRecord) -> dict:
    """A record as it goes out."""
    stream = io.StringIO()
    handler = logging.StreamHandler(stream)
    handler.setFormatter(logs.Line())
    handler.emit(record)
    return json.loads(stream.getvalue())


def record(name: str, message: str, *args: object, **extra: object) -> logging.LogRecord:
    """A record of some logger."""
    made = logging.LogRecord(name, logging.WARNING, "x.py", 1, message, args, None)
    vars(made).update(extra)
    return made


def test_a_line_of_a_library_shows_its_template_alone() -> None:
    """Its arguments can be an address with the token in it, its whole text a message."""
    assert logged(record("httpx", "HTTP Request: %s", "https://x/bot1:secret/getMe"))["event"] == "HTTP Request: %s"
    assert "secret" not in json.dumps(logged(record("telegram", "sent to bot1:secret")))


def test_a_line_of_ours_carries_only_known_fields() -> None:
    """A text that got into a record by mistake stays out."""
    line = logged(record("bot.x", "answered", chat=5, text="pri 118V"))

    assert line["chat"] == 5
    assert "118" not in json.dumps(line)


def test_an_error_is_told_by_kind_and_place() -> None:
    """Neither its text nor that of what it came from."""
    made = record("bot.x", "turn failed")
    try:
        try:
            raise ValueError("pri 118V secret")  # noqa: TRY301
        except ValueError as inner:
            raise RuntimeError("token 1:secret") from inner
    except RuntimeError as error:
        made.exc_info = (type(error), error, error.__traceback__)

    line = logged(made)

    assert [one["kind"] for one in line["error"]] == ["RuntimeError", "ValueError"]
    assert "test_faults.py" in line["error"][0]["where"][0]
    assert "secret" not in json.dumps(line)
