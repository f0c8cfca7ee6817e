"""Readings as tags at the places where they were taken, and the place of the next test."""

from collections.abc import Iterator
from dataclasses import dataclass
from typing import Final

from bot.pictures import Tell
from bot.pictures.canvas import INK, MARK, PAPER, Box, Dot, Line, Shape, Text, text_width
from bot.pictures.circuit.layout import LINE_HEIGHT, MEASURED_AT, PLACES, ROOM_ACROSS, ROOM_LEFT, ROOM_RIGHT, VALUE, Place
from bot.report.amounts import amount, rounded
from core.advice import NextTest
from core.measures import MEASURES
from core.readings import Job, Reading
from core.said import say

LONGEST: Final = 9
"""Signs of a value as sent; a longer one is rounded on the picture."""
_PAD: Final = 14.0
_ROOM: Final = {"across": ROOM_ACROSS, "beside": ROOM_ACROSS, "left": ROOM_LEFT, "right": ROOM_RIGHT}
_SIGN: Final = {"V": "V", "A": "A", "ohm": "Ω"}


@dataclass(frozen=True, slots=True, kw_only=True)
class Tag:
    """What stands at one place."""

    place: Place
    words: tuple[str, ...]
    """One of each reading, and of the next test."""
    is_next: bool
    """True where the next test is to be taken there."""


def tags(job: Job, test: NextTest | None, tell: Tell) -> tuple[Tag, ...]:
    """
    The tags of all places where something was read or is to be read.

    Args:
        job: The readings.
        test: The next test, or None.
        tell: Sets a sentence in the technician's language.
    """
    asked = MEASURED_AT.get(test.measure) if test is not None and test.fact is None else None
    found = []
    for name, place in PLACES.items():
        read = [job.last(measure) for measure, at in MEASURED_AT.items() if at == name]
        words = [_value(reading, tell) for reading in read if reading is not None]
        if name == asked and test is not None:
            words.append(tell(say("NEXT: {unit}", unit=_SIGN[MEASURES[test.measure].unit])))
        if words:
            found.append(Tag(place=place, words=tuple(words), is_next=name == asked))
    return tuple(found)


def _value(reading: Reading, tell: Tell) -> str:
    unit = MEASURES[reading.measure].unit
    value = amount(reading.value, unit)
    if len(value) > LONGEST:
        value = rounded(float(reading.value), unit)
    value += " ?" if reading.assumed else ""
    if reading.measure == "secondary_volts_lifted":
        return tell(say("{value} lifted", value=value))
    return tell(say("{value} into the load", value=value)) if reading.measure == "load_ohms" else value


def drawn(tag: Tag) -> Iterator[Shape]:
    """
    One tag with the lines to what the meter touches.

    Args:
        tag: The tag.
    """
    rows = tuple(in_rows(tag.words, _ROOM[tag.place.side] - 2 * _PAD))
    width = max(text_width(row, VALUE, bold=True) for row in rows) + 2 * _PAD
    step = VALUE * LINE_HEIGHT
    height = step * len(rows) + 14.0
    left = {"across": tag.place.x - width / 2.0, "beside": tag.place.x, "right": tag.place.x, "left": tag.place.x - width}[
        tag.place.side
    ]
    top = tag.place.y - height / 2.0
    for x, y in tag.place.ties:
        yield Line(points=((x, y), (tag.place.x, tag.place.y)), stroke=MARK, width=4.0, dash="2 11")
        yield Dot(x=x, y=y, radius=10.0, fill=MARK)
    yield Box(
        x=left, y=top, width=width, height=height, fill=PAPER, stroke=MARK if tag.is_next else INK, stroke_width=7.0 if tag.is_next else 4.0,
        round=10.0, dash="20 12" if tag.is_next else "",
    )  # fmt: skip
    for n, row in enumerate(rows):
        yield Text(
            x=left + width / 2.0, y=top + 7.0 + step * n + VALUE * 0.95, text=row, size=VALUE, bold=True, anchor="middle"
        )


def in_rows(words: tuple[str, ...], room: float) -> Iterator[str]:
    """
    Words side by side as far as there is room, then in the next row.

    Args:
        words: Each stays whole.
        room: Width. [px]
    """
    row = words[0]
    for word in words[1:]:
        longer = f"{row} · {word}"
        if text_width(longer, VALUE, bold=True) > room:
            yield row
            row = word
        else:
            row = longer
    yield row
