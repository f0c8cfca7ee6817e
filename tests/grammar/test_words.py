"""The vocabulary: each word can be reached, and no two meanings share one."""

from collections import defaultdict

import pytest

from core.readings import ASKS, SYMPTOMS
from grammar.cues import find, index, vocabulary
from grammar.parser import parse
from grammar.scan import scan
from grammar.vocabulary import ROWS, entries, longest, pieces
from grammar.words.asks import ASKS as ASKING
from grammar.words.symptoms import SYMPTOMS as TELLING
from grammar.words.whole import WHOLE

ENTRIES = [(words, row) for words, row, _ in entries()]


def test_no_two_meanings_share_a_word() -> None:
    """One word, one meaning."""
    meanings = defaultdict(set)
    for words, row in ENTRIES:
        meanings[words].add((row.kind, row.meaning))

    assert {words: found for words, found in meanings.items() if len(found) > 1} == {}


def test_no_word_stands_twice() -> None:
    """A word that is written twice in a row of the table is written once too often."""
    twice = [(row.meaning, w) for row in ROWS for words in (row.en, row.es, row.both) for w in set(words) if words.count(w) > 1]

    assert twice == []


def test_every_word_is_reached() -> None:
    """Each entry, alone in a text, is found whole and with its own meaning."""
    lost = []
    for words, row in ENTRIES:
        found = longest(words, 0)
        if (
            found is None
            or found[0] != len(words)
            or found[1].row is None
            or (found[1].row.kind, found[1].row.meaning) != (row.kind, row.meaning)
        ):
            lost.append((words, row.meaning))

    assert lost == []


def test_every_word_survives_the_lexer() -> None:
    """Each entry as a person writes it comes out of the lexer as the pieces that the vocabulary has."""
    lost = [
        (word, row.meaning)
        for row in ROWS
        for word in (*row.en, *row.es, *row.both)
        if not word[0].isdigit() and row.kind != "unit" and not any(_holds(phrase, word) for phrase in parse(word).words)
    ]

    assert lost == []


def _holds(phrase, word: str) -> bool:
    return phrase.text == " ".join(pieces(word)) or phrase.text == "".join(pieces(word))


@pytest.mark.parametrize("cue", [*ASKING], ids=lambda cue: cue.meaning)
def test_every_turn_of_an_ask_is_found(cue) -> None:
    """The first wording of each cue finds its meaning."""
    table = vocabulary("asks")
    for text in (*cue.en, *cue.es):
        words = [part for word in text.split() if word != ".." for part in _first(word)]
        assert cue.meaning in {f.meaning for f in find(words, table)}, text


def _first(word: str) -> list[str]:
    choice = word.split("|", maxsplit=1)[0]
    return [choice] if choice.startswith("/") else [p for p in pieces(choice) if p not in {"-", "/"}]


def test_asks_and_symptoms_are_those_of_core() -> None:
    """A name that core does not know would be dropped in silence."""
    assert {cue.meaning for cue in (*ASKING, *WHOLE)} <= set(ASKS)
    assert {cue.meaning for cue in TELLING} == set(SYMPTOMS)


def test_a_gap_ends_where_the_sentence_ends() -> None:
    """A cue is not put together from two sentences."""
    from grammar.words.row import Cue

    table = index([Cue("tap", en=("which .. tap",))])

    assert find(["which", "", "tap"], table) == []
    assert len(find(["which", "one", "tap"], table)) == 1


def test_scan_and_grammar_are_given_the_same_words() -> None:
    """Scanning nothing gives nothing."""
    assert scan([]) == ([], [])
