"""Nothing that can be sent breaks the reading, and nothing of it gets lost."""

import math

import pytest
from hypothesis import example, given, settings
from hypothesis import strategies as st

from core.measures import MEASURES
from core.readings import ASKS, FACTS, OPEN, SYMPTOMS
from grammar import Message, nearest, read
from grammar.binding.plausible import MOST
from grammar.nearest import EXAMPLES

FIELD = ("pri", "sec", "118v", "24.6", "ohms", "blk-wht", "to", "case", "OL", "not", "no", "contactor", "8VA", "loaded", "one", "eighteen", "point", "and a half", "fuse", "R", "C", "R-C", "/", "-", ",", ".", "\n",
         "which tap", "240", "tap", "scratch that", "meant", "208 bldg", "two", "gas valve", "ft", "18/5", "label:", "common", "everything else OL", "both", "1e9", "-5", "primario", "abierto", "de", "a", "y", "blanco", "nada", "live:", "dead", "new job", "*")  # fmt: skip


def sound(message: Message) -> bool:
    """What a message may hold."""
    values = all(
        r.value == OPEN
        or (isinstance(r.value, float) and math.isfinite(r.value) and 0 <= r.value <= MOST[MEASURES[r.measure].unit])
        for r in message.readings
    )
    symptoms = all(f.value in SYMPTOMS for f in message.facts if f.fact == "symptom")
    pairs = all(r.leads is not None for r in message.readings if MEASURES[r.measure].pair)
    return values and symptoms and pairs and set(message.asks) <= set(ASKS) and {f.fact for f in message.facts} <= FACTS.keys()


@settings(max_examples=300)
@example("/\n")
@example("¹TO")
@given(st.one_of(st.text(), st.lists(st.sampled_from(FIELD)).map(" ".join), st.lists(st.sampled_from(FIELD)).map("".join)))
def test_any_text_is_read(text: str) -> None:
    """No error, and every reading is one that core can take."""
    assert sound(read(text))


@given(st.lists(st.sampled_from(FIELD), min_size=1, max_size=12).map(" ".join))
def test_reading_is_the_same_every_time(text: str) -> None:
    """The reader keeps nothing of the last text."""
    first = read(text)
    read("sec 24.6 " + text)

    assert read(text) == first


@pytest.mark.parametrize("text", ["", "   ", "\n\n", "\x00\x01\x02", "😀😀😀", "\u202e\u200f", "....", "?", "-", "—"])
def test_nothing_is_nothing(text: str) -> None:
    """No reading, no fact."""
    message = read(text)

    assert (message.readings, message.facts) == ((), ())


@pytest.mark.parametrize("text", ["مرحبا كيف الحال", "привет как дела", "你好世界", "zqxv jkwp"])
def test_another_alphabet_is_unread(text: str) -> None:
    """It is told that it was not understood."""
    assert read(text).unread


@pytest.mark.parametrize("text", ["pri 1e9 V", "pri -5 ohm", "sec 99999 V", "pri 5000 amps"])
def test_a_value_out_of_all_bounds_is_asked_about(text: str) -> None:
    """It is no reading."""
    message = read(text)

    assert message.readings == ()
    assert message.unclear


def test_a_text_of_ten_thousand_characters_is_read_as_far_as_it_goes() -> None:
    """The beginning is read, the rest is told."""
    message = read("pri 118V sec 0V " + "and so on " * 1000)

    assert [(r.measure, r.value) for r in message.readings] == [("primary_volts", 118.0), ("secondary_volts", 0.0)]
    assert message.unread


@pytest.mark.parametrize(("language", "text"), [(language, text) for language, texts in EXAMPLES.items() for text in texts])
def test_every_example_that_is_offered_is_read(language: str, text: str) -> None:
    """What the bot shows as readable is."""
    message = read(text)

    assert message.readings or message.facts or message.asks
    assert not message.unread
    assert nearest(text, language) is not None
