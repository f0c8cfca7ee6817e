"""A whole job about leads: what is answered, and that the circuit stays out of it."""

from dataclasses import replace

from core.advise import advise
from core.readings import Fact, Job, Reading
from tests.core.leads.test_answer import FIVE, told

HALVES = (
    Reading(measure="primary_ohms", value=22.0, leads=("h1", "h2")),
    Reading(measure="primary_ohms", value=22.4, leads=("h3", "h4")),
    Reading(measure="secondary_ohms", value=1.1, leads=("x1", "x2")),
    Reading(measure="primary_ohms", value="open", leads=("h1", "h3")),
)


def test_an_open_between_two_primaries_condemns_nothing() -> None:
    """It is what it should read."""
    answer = advise(Job(readings=HALVES, fresh=frozenset({"primary_ohms", "secondary_ohms"})))

    assert answer.verdict is None or answer.verdict.transformer != "bad"
    assert [w.role for w in answer.leads.windings] == ["primary", "primary", "secondary"]


def test_an_open_primary_still_condemns() -> None:
    """Between its only two leads."""
    readings = (Reading(measure="primary_ohms", value="open", leads=("h1", "h2")), HALVES[2])
    answer = advise(Job(readings=readings, fresh=frozenset({"primary_ohms", "secondary_ohms"})))

    assert answer.verdict.finding == "primary_open"


def test_a_supply_told_after_the_leads_is_answered_with_the_tap() -> None:
    """Without being asked which."""
    job = replace(told(FIVE, Fact(fact="supply_volts", value=208.0)), fresh=frozenset({"supply_volts"}))

    assert advise(job).leads.land.lead == "red"


def test_no_test_of_the_circuit_comes_into_a_talk_about_leads() -> None:
    """The leads are sure and nothing was asked but the picture."""
    assert advise(replace(told(FIVE), asks=("winding_picture",))).next_test is None


def test_a_tap_that_was_asked_ends_at_the_secondary() -> None:
    """Not with a question about the supply that was just read."""
    base = told(FIVE)
    line = Reading(measure="line_volts", value=203.0)
    job = Job(readings=(*base.readings, line), asks=("tap",), fresh=frozenset({"line_volts"}))

    assert advise(job).next_test.measure == "secondary_volts"


def test_what_cannot_be_done_is_followed_by_another_test_of_the_leads() -> None:
    """Not by one of the circuit."""
    base = told("a b 20.0, a c 46.0, b c 26.1, d e 1.1")
    declined = frozenset({("lead_volts", ("a", "b"))})
    test = advise(Job(readings=base.readings, asks=("cannot",), declined=declined)).next_test

    assert test is None or test.measure in {"lead_ohms", "lead_volts"}


def test_a_core_size_is_told_for_the_rating() -> None:
    """Whoever sends inches wants the VA."""
    base = told("white black 20.4, blue yellow 1.2")
    facts = (Fact(fact="core_inches", value=(2.5, 2.1, 1.1)),)
    lines = advise(Job(readings=base.readings, facts=facts, fresh=frozenset({"core_inches"}))).lines

    assert any("VA" in str(line) for line in lines)
