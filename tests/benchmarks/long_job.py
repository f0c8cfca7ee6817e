"""Invented logs of many messages for the benchmarks, as they are stored: with what was read of each text."""

import io
from datetime import UTC, datetime, timedelta

from PIL import Image

from bot.as_read import message_to_json
from bot.conversation import answer
from bot.job import Turn
from bot.report.gather import About
from bot.report.job_log import Photo
from core.readings import Fact, Reading
from grammar.message import Message

START = datetime(2026, 7, 14, 15, 0, tzinfo=UTC)
VALUES = {
    "line_volts": 208.0, "primary_volts": 207.5, "secondary_volts": 20.8, "secondary_volts_lifted": 21.6, "control_volts": 20.4,
    "coil_volts": 20.1, "fuse_volts": 0.1, "primary_amps": 0.2, "secondary_amps": 1.6, "primary_ohms": 66.0, "secondary_ohms": 1.1,
    "load_ohms": 9.5, "fuse_ohms": 0.2, "coil_ohms": 12.0,
}  # fmt: skip


def _read(number: int) -> Message:
    """What was read of a message: now and then a fact, a correction or an undo, else one or two readings."""
    if number % 41 == 0:
        return Message(asks=("undo",))
    measures = list(VALUES)
    first, second = measures[number % len(measures)], measures[(5 * number + 3) % len(measures)]
    readings = tuple(Reading(measure=m, value=VALUES[m] + number % 7 / 10) for m in dict.fromkeys((first, second)))
    if number % 17 == 0:
        return Message(asks=("correct",), readings=readings[:1])
    facts = (Fact(fact="supply_volts", value=208.0),) if number % 13 == 0 else ()
    return Message(readings=readings, facts=facts)


def stored(count: int) -> list[Turn]:
    """A log as it comes out of the store: nothing of it has to be read again."""
    return [
        Turn(
            number=number,
            text=f"invented message {number}",
            message_id=f"m{number}",
            sent_at=START + timedelta(minutes=number),
            technician="Robin Example",
            reply={"asks": [], "cautions": [], "talk": {"read": message_to_json(_read(number)), "language": "en"}},
        )
        for number in range(1, count + 1)
    ]


def forty_messages() -> tuple[list[Turn], About]:
    """A log with leads, a sizing and a repair that was proved, and two photos."""
    texts = [
        "208 building, on the 240 tap, 40 va 24 v", "white-black 20.4, white-red 53, white-orange 66.5, blue-yellow 1.2, which is common?",
        "which tap for 208?", "2 contactors 9va, gas valve 16 va, 60 ft of 18, what size?",
    ]  # fmt: skip
    places = ("line {} V", "pri {} V", "sec {} V", "r-c {} V", "coil {} V")
    volts = (208, 207, 20.8, 20.4, 20.1)
    texts += [places[i % 5].format(volts[i % 5] + i // 5 / 10) for i in range(30)]
    texts += [
        "sec ohms 1.1",
        "pri ohms 66",
        "done, replaced, 50 va, 208 tap, 2 a fuse",
        "sec 25.2 V",
        "r-c 24.9 V",
        "sec amps 1.4",
    ]
    turns: list[Turn] = []
    for number, text in enumerate(texts, start=1):
        turn = Turn(
            number=number,
            text=text,
            message_id=f"m{number}",
            sent_at=START + timedelta(minutes=number),
            technician="Robin Example",
        )
        reply = answer(turns, turn)
        turns.append(
            Turn(
                number=number, text=text, message_id=f"m{number}", sent_at=turn.sent_at, technician="Robin Example",
                reply=reply.record() | {"talk": reply.talk},
            )
        )  # fmt: skip
    photos = tuple(Photo(at=START, body=_photo(shade), caption="invented") for shade in (90, 150))
    outcome = "replaced, 50 va, 208 tap, 2 a fuse"
    return turns, About(name="rtu 3 library", opened=START, closed=turns[-1].sent_at, outcome=outcome, photos=photos)


def _photo(shade: int) -> bytes:
    """A picture of the size that a phone sends through a chat."""
    out = io.BytesIO()
    Image.linear_gradient("L").resize((1280, 960)).point(lambda value: (value + shade) % 256).convert("RGB").save(out, "JPEG")
    return out.getvalue()
