"""Every measure, fact and symptom has its words, and a reply keeps its order and its length."""

import pytest

from bot.wording.amounts import FACT_WORDS, PLACES, SYMPTOM_WORDS, amount, fact_words
from bot.wording.catalog import catalog
from bot.wording.compose import MOST_LINES, text
from bot.wording.questions import HELP, TOPICS, WORD_TOPICS, help_lines
from core.measures import MEASURES
from core.readings import FACTS, SYMPTOMS, Fact
from core.said import say


def test_every_measure_fact_and_symptom_has_its_words() -> None:
    """The tables of words and the tables of core have the same rows."""
    assert PLACES.keys() == MEASURES.keys()
    assert FACT_WORDS.keys() | {"load", "lead_is", "nameplate_taps", "symptom"} == FACTS.keys()
    assert SYMPTOM_WORDS.keys() == set(SYMPTOMS)


@pytest.mark.parametrize(
    ("value", "unit", "words"),
    [
        (118.0, "V", "118 V"),
        (19.84, "ohm", "19.8 Ω"),
        (470_000.0, "ohm", "470 kΩ"),
        (1.8e6, "ohm", "1.8 MΩ"),
        ("open", "ohm", "open"),
    ],
)
def test_a_value_is_written_as_a_meter_shows_it(value: float | str, unit: str, words: str) -> None:
    """Prefixes as on the meter, no digits beyond it."""
    assert str(amount(value, unit)) == words


def test_a_load_without_a_value_says_only_what_was_said() -> None:
    """Nothing is invented in an echo."""
    assert str(fact_words(Fact(fact="load", device="board", count=1))) == "1 × board"


@pytest.mark.parametrize("topic", [*TOPICS, *WORD_TOPICS])
def test_help_knows_its_topics(topic: str) -> None:
    """A word for a topic leads to it."""
    assert help_lines(topic) != HELP


def test_a_reply_says_a_line_once_and_stops_where_nobody_reads_on() -> None:
    """No reply is a wall."""
    lines = [say("Next: {instruction}", instruction=str(n // 2)) for n in range(100)]

    told = text(lines, catalog("en")).splitlines()

    assert len(told) == MOST_LINES
    assert len(set(told)) == len(told)
