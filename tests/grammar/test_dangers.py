"""Danger is heard in many wordings, and nowhere else."""

import json
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from core.dangers import DANGERS
from grammar import read
from grammar.dangers import dangers_in
from grammar.dangers.phrases import phrase, tokens
from grammar.words.danger_concepts import CONCEPTS
from grammar.words.dangers import DANGERS as PHRASES
from grammar.words.dangers import SATISFIED

ROWS = [json.loads(line) for line in (Path(__file__).parent / "danger_messages.jsonl").read_text(encoding="utf-8").splitlines()]
DANGEROUS = [(row["text"], row["danger"]) for row in ROWS if row["danger"]]
HARMLESS = [row["text"] for row in ROWS if row["danger"] is None]


@pytest.mark.parametrize(("text", "danger"), DANGEROUS)
def test_a_danger_is_heard(text: str, danger: str) -> None:
    """Each invented message shows the danger that it was written to show."""
    assert danger in read(text).dangers


@pytest.mark.parametrize("text", HARMLESS)
def test_a_harmless_message_shows_no_danger(text: str) -> None:
    """Readings, denials, questions and repairs done well are silent."""
    assert read(text).dangers == ()


@pytest.mark.parametrize(
    "text",
    [
        "no smoke",
        "no smoke or burning smell",
        "not jumping it",
        "never jumped the float",
        "didn't get shocked",
        "smoke: none",
        "the smell is gone now, smoke cleared",
        "I won't bypass the limit",
        "got shocked last year on one of these",
        "no hay humo",
        "no huele a gas",
        "no voy a puentear el fusible",
        "sin humo ni olor",
        "nadie se lastimó",
        "what about the shock hazard",
        "found the float jumped, removed the jumper",
    ],
)
def test_what_is_denied_or_past_is_no_danger(text: str) -> None:
    """A denial, a time long past and a jumper that is out again take it back."""
    assert dangers_in(text).names == ()


@pytest.mark.parametrize(
    ("text", "danger"),
    [
        ("no heat, jumped the limit", "bypass_gas_safety"),
        ("why not just jump the fuse", "bypass_fuse"),
        ("no fuses left so I jumped the fuse", "bypass_fuse"),
        ("no smoke but I smell gas", "gas_smell"),
        ("smelled gas last week and still do", "gas_smell"),
    ],
)
def test_a_denial_reaches_no_further_than_it_says(text: str, danger: str) -> None:
    """What is denied is one thing; the danger beside it stands."""
    assert danger in dangers_in(text).names


def test_a_jumper_to_test_is_practice_and_one_that_stays_is_not() -> None:
    """A safety may be jumped for a moment by somebody who watches; never a fuse."""
    assert dangers_in("jumped the float for a second to test, watching it").names == ("test_jumper",)
    assert "bypass_float" in dangers_in("jumped the float to test and leaving it until tomorrow").names
    assert "bypass_fuse" in dangers_in("jump the fuse for a second to test").names


@pytest.mark.parametrize(
    "text", ["locked out and proved dead", "verified dead with my meter", "ya lo bloqueé y comprobé que está muerto"]
)
def test_who_proved_dead_is_heard(text: str) -> None:
    """It answers the caution, and shows no danger."""
    warned = dangers_in(text)

    assert warned.proved_dead
    assert warned.names == ()


def test_who_did_not_prove_dead_is_not_believed() -> None:
    """The same words, denied."""
    assert not dangers_in("haven't proved dead yet").proved_dead


@pytest.mark.parametrize(
    ("text", "qualified"),
    [
        ("I'm qualified for 480", True),
        ("I'm an apprentice, it's 480", False),
        ("not qualified for 480", False),
        ("pri 478", None),
    ],
)
def test_qualification_is_heard(text: str, *, qualified: bool | None) -> None:
    """It is said, denied or not spoken of."""
    assert dangers_in(text).qualified is qualified


def test_every_danger_of_the_words_is_in_the_table() -> None:
    """A name that core does not know would be dropped in silence."""
    assert {cue.meaning for cue in PHRASES} <= DANGERS.keys()


def test_every_phrase_can_be_read() -> None:
    """No phrase names a concept that is not there, and every concept is used."""
    written = [text for cue in (*PHRASES, *SATISFIED) for text in (*cue.en, *cue.es)]
    used = " ".join(written)
    by_name = {"PAST", "UNDONE", "WATCH"}

    assert all(phrase(text, CONCEPTS).parts for text in written)
    assert {name for name in CONCEPTS if not any(f"{mark}{name}" in used for mark in "{@!")} == by_name


@given(st.text(max_size=200))
def test_any_text_can_be_read(text: str) -> None:
    """Nothing that can be sent breaks it."""
    assert isinstance(dangers_in(text).names, tuple)
    assert all(word == "|" or word.isalnum() or word[0].isdigit() for word in tokens(text))
