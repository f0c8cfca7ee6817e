"""Of maps said to be sure, none is wrong, on units wound by other rules than the priors; the floor stands just below today's score."""

from dataclasses import replace

import numpy as np
import pytest

from core.leads import map_leads
from core.readings import Fact, Reading
from tests.benchmarks.lead_bench import play
from tests.core.leads.test_answer import label, told

UNITS = 60


@pytest.mark.parametrize("missing", [0, 2])
def test_sure_maps_are_right(missing: int) -> None:
    """With all pairs and with two missing."""
    score, _, _ = play(np.random.default_rng(3), UNITS, missing=missing)

    assert score["wrong and sure"] == 0
    assert score["sides"] == UNITS
    assert score["sure"] >= (0.70 if missing == 0 else 0.35) * UNITS


def test_a_typo_is_named_and_never_makes_a_wrong_map_sure() -> None:
    """Wherever other readings can show it."""
    score, _, _ = play(np.random.default_rng(3), UNITS, wrong=True)

    assert score["typo named"] >= 0.8 * UNITS
    assert score["wrong and sure"] == 0


def test_two_leads_with_one_reading_are_not_sure_by_themselves() -> None:
    """It may be mistyped, and nothing would show it."""
    answer = map_leads(told("white black 20.4, blue yellow 1.2"))

    assert answer.leads.confidence < 0.9
    assert set(answer.next_test.leads) == {"white", "black"}


@pytest.mark.parametrize(
    "fact", [Fact(fact="supply_volts", value=120.0), Fact(fact="nameplate_taps", value=(120.0,)), label("black", "120")]
)
def test_a_supply_a_nameplate_or_a_label_bears_them_out(fact: Fact) -> None:
    """One of them is enough."""
    assert map_leads(told("white black 20.4, blue yellow 1.2", fact)).leads.confidence >= 0.9


def test_reading_it_again_bears_it_out() -> None:
    """The same ohms a second time."""
    job = told("white black 20.4, blue yellow 1.2")
    again = Reading(measure="lead_ohms", value=20.2, leads=("black", "white"), repeated=True)

    assert map_leads(replace(job, readings=(*job.readings, again))).leads.confidence >= 0.9


def test_two_equal_halves_bear_each_other_out() -> None:
    """A wrong reading would not come out the same as the other half."""
    assert map_leads(told("h1 h2 30, h3 h4 31, x1 x2 .9")).leads.confidence >= 0.9


def test_what_is_left_of_three_readings_with_a_wrong_one_makes_no_map_sure() -> None:
    """Two readings put three leads on some line, whatever they say."""
    answer = map_leads(told("violet black 19.3, black orange 40.2, violet orange 0.8, blue yellow 1.3"))

    assert answer.leads.confidence < 0.9
    assert answer.next_test is not None


def test_a_reading_that_others_bear_out_is_not_asked_for_again() -> None:
    """Three pairs of three leads that add up."""
    answer = map_leads(told("white black 20.4, white red 53, black red 32.8, blue yellow 1.2"))

    assert answer.leads.confidence >= 0.9 or answer.next_test.measure != "lead_ohms" or answer.next_test.fact is not None


def test_labels_alone_ask_for_the_pair_that_is_missing() -> None:
    """They may be another unit's."""
    labels = (label("white", "common"), label("black", "240"), label("orange", "208"))
    answer = map_leads(told("white orange 41.2, black orange 7.1, blue yellow 0.9, white blue OL", *labels, rest_open=False))

    assert answer.leads.confidence < 0.9
    assert set(answer.next_test.leads) == {"white", "black"}


def test_a_pair_that_closes_the_ring_bears_out_more_than_a_second_reading() -> None:
    """Three pairs hang four leads together, the fourth would check all three."""
    answer = map_leads(told("a b 20.4, a c 53, b d 46.6, e f 1.2, a e OL", rest_open=False))

    assert answer.leads.confidence < 0.9
    assert set(answer.next_test.leads) == {"c", "d"}


def test_a_ratio_test_waits_until_the_ohms_are_read() -> None:
    """It needs a source; a pair that is not read yet needs none, and neither do the leads of the secondary."""
    unread = map_leads(told("white black 20.4, white red 53, blue yellow 1.2, white blue OL", rest_open=False))
    lone = map_leads(told("white black 20.4, white red 53, black red 32.8"))

    assert unread.next_test.measure == "lead_ohms"
    assert lone.next_test.measure == "lead_ohms"


def test_two_equal_primaries_stand_in_the_order_of_their_names() -> None:
    """As they were told."""
    windings = map_leads(told("h1 h2 30, h3 h4 31, x1 x2 .9")).leads.windings

    assert [w.leads[0][0] for w in windings] == ["h1", "h3", "x1"]
