"""What somebody may try, and what comes of it. The table of threats in DEVELOPERS.md names these tests."""

import io
import json
import struct
import warnings
import zlib

import pytest
from PIL import Image

from bot.channels.telegram.photos import LARGEST, LIMIT, kind_of
from tests.bot.telegram.bot_api import BotApi
from tests.bot.telegram.phone import Phone
from tests.bot.telegram.served import OWNER, Served


def bomb(width: int = 60_000, height: int = 60_000) -> bytes:
    """A picture of a few kilobytes that says it has 3.6 thousand million pixels."""

    def chunk(kind: bytes, body: bytes) -> bytes:
        return struct.pack(">I", len(body)) + kind + body + struct.pack(">I", zlib.crc32(kind + body))

    head = struct.pack(">IIBBBBB", width, height, 8, 0, 0, 0, 0)
    rows = zlib.compress(b"\0" * 1_000_000, 9)
    return b"\x89PNG\r\n\x1a\n" + chunk(b"IHDR", head) + chunk(b"IDAT", rows) + chunk(b"IEND", b"")


@pytest.mark.parametrize("width", [60_000, LARGEST // 60_000 + 1])
def test_a_decompression_bomb_is_not_kept(served: Served, owner: Phone, width: int) -> None:
    """It is refused by its head: the gross one, and the one that the library would let pass."""
    told = owner.wait(owner.photo(bomb(width)))["text"]

    assert "JPEG" in told
    assert served.ask_store("SELECT count(*) FROM attachment") == [(0,)]


def test_no_pixel_of_a_photo_is_unpacked(served: Served, owner: Phone, monkeypatch: pytest.MonkeyPatch) -> None:
    """Also of a photo that is kept: whatever hides behind the head stays packed."""
    made = io.BytesIO()
    Image.new("RGB", (60, 40)).save(made, "PNG")
    monkeypatch.setattr("PIL.ImageFile.ImageFile.load", lambda *_: pytest.fail("unpacked"))

    told = owner.wait(owner.photo(made.getvalue()))["text"]

    assert "Photo kept" in told


@pytest.mark.parametrize(
    "body", [b"", b"MZ\x90", b"<svg onload=alert(1)/>", b"\xff\xd8\xff", b"GIF89a" + b"\0" * 50, b"\x89PNG\r\n\x1a\n"]
)
def test_what_is_no_photo_is_not_kept(served: Served, owner: Phone, body: bytes) -> None:
    """Whatever it calls itself."""
    assert kind_of(body) is None


def test_a_large_photo_is_kept_and_a_larger_one_not() -> None:
    """The line is where no phone's camera is."""
    made = io.BytesIO()
    with warnings.catch_warnings():
        warnings.simplefilter("ignore")
        Image.new("1", (7_000, 7_000)).save(made, "PNG")

    assert kind_of(made.getvalue()) == "image/png"
    assert kind_of(bomb(LARGEST // 1_000 + 1, 1_000)) is None


def test_a_file_over_the_limit_is_not_fetched(served: Served, owner: Phone, api: BotApi) -> None:
    """What the messenger says of its size is enough."""
    sent = owner.photo(b"x", file_size=LIMIT + 1)

    assert "MB" in owner.wait(sent)["text"]
    assert not [call for call in api.calls if call.method == "getFile"]


@pytest.mark.parametrize(
    "text",
    [
        "<b>pri</b> 118V",
        "pri 118V <script>alert(1)</script>",
        "pri 118V & sec < 3V > &lt; &amp;amp;",
        '<a href="tg://user?id=1">pri 118V</a>',
        "pri 118V </b></blockquote>",
        "pri 118V <",
    ],
)
def test_markup_in_a_message_stays_text(served: Served, owner: Phone, api: BotApi, text: str) -> None:
    """What is echoed is shown as it was written; the messenger refuses nothing."""
    owner.ask(text)

    assert not [call for call in api.calls if call.refused]


def test_markup_in_a_name_stays_text(served: Served, owner: Phone, api: BotApi) -> None:
    """Names are what strangers choose."""
    served.let_in(4001, "<b>x</b>&")

    assert "<b>x</b>&" in owner.ask("/members")["text"]
    assert not [call for call in api.calls if call.refused]


@pytest.mark.parametrize(
    "text",
    [
        "'; DROP TABLE job; --",
        "pri 118V'); DELETE FROM member; --",
        "new job x'; UPDATE member SET role='owner",
        "%s %(x)s :x {x} {0}",
    ],
)
def test_sql_and_templates_in_a_message_stay_text(served_on_each: Served, owner: Phone, text: str) -> None:
    """The log has the words; the tables stand."""
    owner.ask(text)

    assert (text,) in served_on_each.ask_store("SELECT text FROM logged_message")
    assert served_on_each.ask_store("SELECT count(*) FROM member") == [(1,)]


@pytest.mark.parametrize(
    "text", ["pri 118V \x00 sec 0V", "pri 118V \ud83d sec 0V", "\u202e pri 118V", "pri 118V " + "\u0301" * 500]
)
def test_signs_that_break_databases_and_screens_break_nothing(served_on_each: Served, owner: Phone, text: str) -> None:
    """Zero signs, half signs, signs that turn the line round."""
    assert owner.ask(text)["text"]
    assert owner.ask("help")["text"]


def test_another_technicians_job_is_not_reached_by_its_number_or_name(served: Served, api: BotApi, owner: Phone) -> None:
    """By no command that takes a name."""
    served.let_in(4002)
    thief = Phone(api, 4002)
    owner.ask("new job harbor cooler")
    owner.ask("pri 117.3V sec 0V pri-ohm open")

    shown = [
        thief.ask(text)["text"]
        for text in (
            "resume harbor cooler",
            "back to harbor cooler",
            "/report 1",
            "report 1",
            "history harbor cooler",
            "/jobs",
            "history",
            "next",
            "/export",
        )
    ]
    served.settle()

    assert not [text for text in shown if "117.3" in text or "primary is open" in text or "Back on" in text]
    files = [call.files["document"] for call in api.sent("sendDocument") if call.args["chat_id"] == "4002"]
    exports = [json.loads(body) for body in files if body.startswith(b"{")]
    assert len(exports) == 1
    assert "117.3" not in json.dumps(exports)


def test_a_tap_on_anothers_question_is_not_theirs_to_answer(served: Served, api: BotApi) -> None:
    """In a group everybody sees the buttons; only the one who was asked can answer, and keeps them."""
    served.let_in(4003)
    asked, other = Phone(api, OWNER, chat_id=-1009), Phone(api, 4003, chat_id=-1009)
    question = asked.ask("@ohmreply_bot pri 118V sec 0V pri-ohm open")
    label = question["reply_markup"]["inline_keyboard"][0][0]["text"]

    other.tap(question, label)
    served.settle()

    assert "for another" in api.sent("answerCallbackQuery")[0].args["text"]
    assert "reply_markup" in api.messages[-1009, question["message_id"]]
    assert served.ask_store("SELECT count(*) FROM logged_message WHERE message_id LIKE 'tap %'") == [(0,)]


@pytest.mark.parametrize("data", ["1001.0.99", "1.0.0", "x", "1001.0.-1", "1001.0.0; DROP", "9" * 60, ""])
def test_a_made_up_tap_is_over(served: Served, api: BotApi, owner: Phone, data: str) -> None:
    """A changed program can send any data with a tap."""
    question = owner.ask("pri 118V sec 0V pri-ohm open")

    owner.tap(question, "", data=data or " ")
    api.wait(lambda: api.sent("answerCallbackQuery"))

    assert "over" in api.sent("answerCallbackQuery")[0].args["text"]
    assert served.ask_store("SELECT count(*) FROM logged_message WHERE message_id LIKE 'tap %'") == [(0,)]


def test_a_strangers_tap_does_nothing(served: Served, api: BotApi, owner: Phone) -> None:
    """A forwarded message can carry its buttons to anyone."""
    question = owner.ask("pri 118V sec 0V pri-ohm open")
    stranger = Phone(api, 4999)
    logged = served.ask_store("SELECT count(*) FROM logged_message")

    stranger.tap(question, question["reply_markup"]["inline_keyboard"][0][0]["text"])
    served.settle()

    assert "invitation" in api.sent("answerCallbackQuery")[0].args["text"]
    assert not api.sent("editMessageText")
    assert served.ask_store("SELECT count(*) FROM logged_message") == logged


def test_another_bot_is_not_answered(served: Served, api: BotApi, owner: Phone) -> None:
    """Two bots that answer each other never end."""
    robot = Phone(api, OWNER, chat_id=-1010)
    robot.user = {**robot.user, "is_bot": True}
    sent = robot.send("@ohmreply_bot pri 118V")

    owner.ask("help")
    served.settle()

    assert robot.answers(sent) == []
