"""A conversation with a peer that we did not write. Needs node and `npm install telegram-test-api`; OHMREPLY_EMULATOR names that folder."""

import json
from collections.abc import Iterator

import pytest
from sqlalchemy import URL

from tests.bot.telegram.emulator import Emulator, is_there
from tests.bot.telegram.served import OWNER, Served

pytestmark = pytest.mark.skipif(not is_there(), reason="OHMREPLY_EMULATOR names no folder with telegram-test-api")


@pytest.fixture
def emulator(sqlite_url: URL) -> Iterator[Emulator]:
    """The emulator, and a bot on it."""
    with Emulator() as running, Served(running, sqlite_url):
        yield running


def test_readings_are_answered(emulator: Emulator) -> None:
    """The emulator keeps what we sent as it was sent: text with marks, to the right chat, quoting the message."""
    emulator.send(OWNER, text="pri 118V sec 0V pri-ohm open")

    (shown,) = emulator.wait(1)

    assert shown["text"].startswith("<b>The primary is open")
    assert (str(shown["chat_id"]), shown["parse_mode"]) == (str(OWNER), "HTML")
    assert json.loads(shown["reply_parameters"])["message_id"] > 0


def test_a_command_is_answered(emulator: Emulator) -> None:
    """With the entity that marks it."""
    emulator.send(OWNER, "sendCommand", text="/help", entities=[{"type": "bot_command", "offset": 0, "length": 5}])

    assert emulator.wait(1)


def test_a_tap_is_answered_and_changes_its_message(emulator: Emulator) -> None:
    """What comes back with a tap is what we put under the button; the emulator's copy of the message is changed."""
    emulator.send(OWNER, text="pri 118V sec 0V pri-ohm open")
    (question,) = emulator.wait(1)
    button = _keyboard(question)[0][0]
    told = {"message_id": question["id"], "chat": {"id": OWNER, "type": "private"}, "text": question["text"], "date": 1}

    emulator.send(OWNER, "sendCallback", id="1", data=button["callback_data"], message=told)
    emulator.wait(2)

    changed = emulator._until(lambda: next((one for one in emulator.shown() if "▸" in one["text"]), None))
    assert changed["id"] == question["id"]
    assert button["text"] in changed["text"]


def test_a_stranger_gets_the_polite_line(emulator: Emulator) -> None:
    """And nothing else."""
    emulator.send(4711, text="pri 118V")

    assert "invitation" in emulator.wait(1)[0]["text"]


def _keyboard(shown: dict) -> list:
    markup = shown["reply_markup"]
    return (json.loads(markup) if isinstance(markup, str) else markup)["inline_keyboard"]
