"""Whole calls, message after message in one job: what each brings, and that none is met by a shrug."""

from datetime import UTC, datetime, timedelta
from pathlib import Path

import pytest

from bot.conversation import DESK_ASKS, Turn, answer
from bot.wording.catalog import catalog
from bot.wording.questions import EMPTY
from tests.bot.call_file import CALLS, Message, fixed, messages, outcome, wrong

START = datetime(2026, 3, 2, 9, 0, tzinfo=UTC)
FILES = sorted(CALLS.glob("*.chat"))
SHRUGS = {catalog("en").tell(EMPTY), catalog("es").tell(EMPTY)}


def played(call: list[Message]) -> list[str]:
    """Everything that is not as the file says."""
    log: tuple[Turn, ...] = ()
    found: list[str] = []
    for message in call:
        sent = Turn(
            number=message.number,
            text=message.text,
            message_id=f"m{message.number}",
            sent_at=START + timedelta(minutes=message.number),
            technician="dana",
        )
        reply = answer(log, sent)
        record = {**reply.record(), "talk": fixed(message, dict(reply.talk))}
        found += wrong(message, outcome(record, reply.message.renewed, is_new=bool(reply.message.repaired)))
        if SHRUGS & set(reply.text.splitlines()) and not DESK_ASKS & set(reply.message.asks):  # the desk answers those
            found.append(f"{message.number} {message.text!r} is met by a shrug")
        log = (
            *log,
            Turn(
                number=sent.number,
                text=sent.text,
                message_id=sent.message_id,
                sent_at=sent.sent_at,
                technician="dana",
                reply=record,
            ),
        )
    return found


@pytest.mark.parametrize("path", FILES, ids=lambda path: path.stem)
def test_a_call_goes_whole(path: Path) -> None:
    """Every message of it is taken, or told back; nothing is misread, and no question is left without its answer."""
    assert played(messages(path)) == []


def test_there_are_calls_in_both_languages() -> None:
    """As many of one as of the other, near enough."""
    spanish = [path for path in FILES if path.stem.endswith("_es")]

    assert len(FILES) >= 24
    assert abs(2 * len(spanish) - len(FILES)) <= 2


def test_a_wrong_outcome_is_told() -> None:
    """The reader of the files can fail."""
    call = [Message(1, "pri 118 sec 0", {"read": "primary_volts 119, secondary_volts 0"})]

    assert len(played(call)) == 1
