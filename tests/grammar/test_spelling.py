"""Slips of spelling are mended towards the vocabulary, and only there."""

import pytest

from grammar import read
from grammar.spelling import mended
from grammar.words.colours import COLOURS


@pytest.mark.parametrize(
    ("text", "measure"),
    [
        ("primry 118v", "primary_volts"),
        ("secondarry 24v", "secondary_volts"),
        ("discconect 240v", "line_volts"),
        ("contctor coil 12 ohms", "coil_ohms"),
        ("secundaro 24 volts", "secondary_volts"),
    ],
)
def test_a_misspelt_place_is_read_plainly(text: str, measure: str) -> None:
    """It can be only one place."""
    assert [(r.measure, r.assumed) for r in read(text).readings] == [(measure, False)]


def test_what_was_mended_is_told() -> None:
    """The word as written and as read."""
    assert read("secondarry 24v").repairs == (("secondarry", "secondary"),)


@pytest.mark.parametrize("word", ["broken", "reader", "loader", "phrase", "chance", "bloke", "brow", "crown", "frame's"])
def test_another_word_is_left_alone(word: str) -> None:
    """A word of its own is no slip."""
    assert mended(word) is None


def test_no_colour_is_mended_into_another() -> None:
    """Each spelling of a colour with one letter changed never becomes a different colour."""
    names = {w: row.meaning for row in COLOURS for w in (*row.en, *row.es)}
    wrong = []
    for word, meaning in names.items():
        for i in range(len(word)):
            for letter in "aeiourstln":
                slip = word[:i] + letter + word[i + 1 :]
                if slip not in names and (to := mended(slip)) in names and names[to] != meaning:
                    wrong.append((word, slip, to))

    assert wrong == []


def test_numbers_are_never_mended() -> None:
    """A slip in a number word stays unread."""
    assert mended("eigthen") is None
    assert mended("twenti") is None


@pytest.mark.parametrize("word", ["racket", "round", "heads", "tires", "contract", "shoes", "ports"])
def test_a_plain_word_is_never_a_slip(word: str) -> None:
    """However near a word of the trade stands."""
    assert mended(word) is None


@pytest.mark.parametrize(("slip", "word"), [("brackt", "bracket"), ("groud", "ground"), ("secondarry", "secondary")])
def test_a_slip_beside_a_plain_word_is_still_mended(slip: str, word: str) -> None:
    """The plain words take nothing from it."""
    assert mended(slip) == word


@pytest.mark.parametrize(
    ("slip", "word"),
    [("looad", "load"), ("wier", "wire"), ("volst", "volts"), ("soorry", "sorry"), ("waht", "what"), ("sek", "sec")],
)
def test_fingers_that_slipped_are_mended(slip: str, word: str) -> None:
    """A letter struck twice, two that changed places, or the key beside."""
    assert mended(slip) == word


def test_the_language_decides_between_two_words() -> None:
    """The same letters are a load and a side."""
    assert mended("laod") == "load"
    assert mended("laod", spanish=True) == "lado"


@pytest.mark.parametrize(
    "text",
    [
        "pri two hundred twentty volts", "white to red is eight ppoint nine ohms", "secondary is threee point one amps",
        "primario doscientos trinta y nueve volts", "two hundred and twentty feet of 18",
    ],
)  # fmt: skip
def test_a_misspelt_number_is_no_other_number(text: str) -> None:
    """What is left of it is told as unread, and nothing is read."""
    message = read(text)

    assert message.readings == ()
    assert not any(fact.fact == "run_feet" for fact in message.facts)
    assert message.unread
