"""The grammar itself: no collisions, tables current, nothing that it refuses."""

import pickle
import re

from hypothesis import given
from hypothesis import strategies as st

from grammar.parser import GRAMMAR, TABLES, build, parse, stamp
from grammar.phrase import Phrase
from grammar.vocabulary import ROWS
from tests.field_words import WORDS


def test_the_grammar_has_no_collisions() -> None:
    """Lark's strict mode makes each conflict and each pair of terminals that match one text an error."""
    parsed = build(strict=True).parse("pri 118V sec 0V")

    assert [p.kind for p in parsed] == ["ends", "amounts", "ends", "amounts"]


def test_the_tables_are_those_of_the_grammar() -> None:
    """`python -m grammar.write_tables` was run after the last change."""
    assert pickle.loads(TABLES.read_bytes())["stamp"] == stamp()


def test_every_kind_of_word_has_its_terminal() -> None:
    """A kind without a terminal would be a word that the grammar refuses."""
    declared = set(
        re.findall(
            r"\b_?[A-Z_]{2,}\b", "\n".join(line for line in GRAMMAR.read_text().splitlines() if line.startswith("%declare"))
        )
    )
    inner = {
        "to",
        "unit",
        "about",
        "over",
        "under",
        "point",
        "stripeword",
        "spoken",
        "fraction",
        "place",
        "colour",
        "gaugeword",
    }

    assert {row.kind.upper() for row in ROWS if row.kind not in inner} <= declared


def test_every_alternative_shows_a_message_of_the_field() -> None:
    """The grammar is its own reference."""
    rules = (
        GRAMMAR.read_text().split("// What the lexer cuts")[0]
        if "// What the lexer cuts" in GRAMMAR.read_text()
        else GRAMMAR.read_text()
    )
    bare = [line for line in rules.splitlines() if re.match(r"\s+[|:] [A-Z_]+\s*$", line)]

    assert bare == []


def pieces(text: str) -> list[Phrase]:
    """The row of phrases."""
    return list(parse(text).phrases)


FIELD = (
    *WORDS,
    "and a half",
    "R",
    "C",
    "R-C",
    "/",
    "-",
    ",",
    ".",
    "\n",
    "w/",
    "red",
    "tracer",
    "a",
    "y",
    "de",
    "medio",
    "H1",
    "1",
    "2",
    "x",
    ":",
    "*",
    "lead",
    "k",
    "m",
    "v",
    "18/5",
    "½",
    "'",
    "é",
)


ESCAPE = re.compile(r"\x1b(?:\[[0-?]*[ -/]*[@-~]|\][^\x07\x1b]*\x07)")
"""What a terminal takes as an order and shows to nobody."""


@given(
    st.one_of(
        st.text(max_size=300),
        st.lists(st.sampled_from(FIELD), max_size=40).map(" ".join),
        st.lists(st.sampled_from(FIELD), max_size=40).map("".join),
    )
)
def test_every_character_is_in_a_phrase(text: str) -> None:
    """Whatever was sent, the phrases cover all that is no space, and none covers another."""
    covered = {i for phrase in pieces(text) for i in range(phrase.start, phrase.end)}
    covered |= {i for found in ESCAPE.finditer(text) for i in range(*found.span())}

    assert {i for i, c in enumerate(text) if not c.isspace()} - covered - small_words(text, covered) == set()


def small_words(text: str, covered: set[int]) -> set[int]:
    """Characters of words that a pair took in: "red wire to the black wire"."""
    inside = set()
    for phrase in parse(text).words:
        if phrase.end <= len(text) and not set(range(phrase.start, phrase.end)) <= covered:
            between = any(p.kind in {"ends", "amounts"} for p in pieces(text))
            inside |= set(range(phrase.start, phrase.end)) if between else set()
    return inside
