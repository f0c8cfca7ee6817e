"""Which lead to land for a supply, which to cap, what comes out."""

import pytest

from core.leads import choose_tap
from core.readings import Fact, Job, Reading
from tests.core.leads.test_answer import FIVE, label, told


def supply(volts: float) -> Fact:
    """The supply as named."""
    return Fact(fact="supply_volts", value=volts)


def read(measure: str, volts: float) -> Reading:
    """One live reading."""
    return Reading(measure=measure, value=volts)


def test_the_lead_of_the_supply_is_landed_and_the_others_are_capped() -> None:
    """208 V."""
    answer = choose_tap(told(FIVE, supply(208.0)))

    assert answer.leads.land.lead == "red"
    assert set(answer.leads.land.cap) == {"black", "orange"}
    assert "cap_unused_leads" in answer.cautions


def test_measured_volts_come_before_named_ones() -> None:
    """Named 240, measured 203 with nothing that speaks of a delta."""
    base = told(FIVE, supply(208.0))
    job = Job(readings=(*base.readings, read("line_volts", 243.0)), facts=base.facts)

    assert choose_tap(job).leads.land.lead == "orange"


@pytest.mark.parametrize(("volts", "right"), [(203.0, "red"), (216.0, "red"), (232.0, "orange"), (118.0, "black")])
def test_the_nearest_tap_by_ratio_is_taken(volts: float, right: str) -> None:
    """As measured."""
    base = told(FIVE)

    assert choose_tap(Job(readings=(*base.readings, read("line_volts", volts)))).leads.land.lead == right


@pytest.mark.parametrize("volts", [277.0, 480.0])
def test_no_tap_for_the_supply_is_said(volts: float) -> None:
    """And over 300 V has its caution."""
    answer = choose_tap(told(FIVE, supply(volts)))

    assert not answer.leads.land.fits
    assert answer.leads.land.lead is None
    assert "over_300" in answer.cautions


def test_208_on_taps_of_120_and_240_fits_neither() -> None:
    """From the nameplate alone."""
    answer = choose_tap(Job(facts=(supply(208.0), Fact(fact="nameplate_taps", value=(120.0, 240.0)))))

    assert not answer.leads.land.fits


def test_labels_alone_name_the_lead() -> None:
    """Nobody read an ohm."""
    facts = (label("black", "common"), label("red", "208"), label("orange", "240"), supply(208.0))
    answer = choose_tap(Job(facts=facts))

    assert (answer.leads.land.lead, answer.leads.land.cap) == ("red", ("orange",))
    assert str(answer.lines[0]) == "208 V: line on red (208 V tap) and black"


def test_without_leads_the_tap_is_named_and_the_nameplate_asked_for() -> None:
    """Which tap for 208?"""
    answer = choose_tap(Job(facts=(supply(208.0),)))

    assert "208 V: land the 208 V tap" in map(str, answer.lines)
    assert answer.next_test.fact == "nameplate_taps"


def test_without_a_supply_it_is_asked_for() -> None:
    """Measure first."""
    assert choose_tap(told(FIVE)).next_test.measure == "line_volts"


def test_208_to_neutral_of_a_delta_is_no_208_volt_supply() -> None:
    """120, 208 and 240 V at one panel: the tap is for phase to phase."""
    base = told(FIVE)
    readings = (read("line_volts", 120.0), read("line_volts", 240.0), read("line_volts", 208.0))
    answer = choose_tap(Job(readings=(*base.readings, *readings)))

    assert "high_leg" in answer.cautions
    assert answer.leads.land.lead == "orange"


def test_a_high_leg_that_is_named_makes_208_volts_no_208_volt_supply() -> None:
    """Whoever writes of a high leg reads 208 V to neutral, and no 208 V tap is for that."""
    job = Job(
        readings=(read("line_volts", 208.0),),
        facts=(Fact(fact="nameplate_taps", value=(120.0, 208.0, 240.0)),),
        dangers=("high_leg",),
    )
    answer = choose_tap(job)

    assert "high_leg" in answer.cautions
    assert str(answer.lines[0]) == "240 V: land the 240 V tap"


def test_twice_the_volts_is_stopped() -> None:
    """The 120 V tap on 240 V."""
    answer = choose_tap(Job(facts=(supply(240.0), Fact(fact="tap_volts", value=120.0))))

    assert "double_volts" in answer.cautions


def test_two_primaries_are_joined_in_series_or_in_parallel() -> None:
    """By the supply."""
    text = "h1 h2 30, h3 h4 31, x1 x2 0.9"

    assert "240 V: both primaries in series" in map(str, choose_tap(told(text, supply(240.0))).lines)
    assert "120 V: both primaries in parallel" in map(str, choose_tap(told(text, supply(120.0))).lines)


HALVES = "a b 20.0, a c 40.1, b c 20.1, d e 1.1"


def test_a_doubtful_map_is_confirmed_before_landing() -> None:
    """Equal halves without a label: for 120 V it matters which end is common."""
    answer = choose_tap(told(HALVES, supply(120.0)))

    assert answer.next_test is not None
    assert "confirm" in str(answer.lines[0])


def test_the_whole_winding_is_landed_whichever_end_is_common() -> None:
    """For 240 V both ends are landed and the middle is capped, either way."""
    taps = Fact(fact="nameplate_taps", value=(120.0, 240.0))
    base = told(HALVES, taps)
    answer = choose_tap(Job(readings=(*base.readings, read("line_volts", 243.0)), facts=base.facts))

    assert answer.leads.confidence < 0.9
    assert not any("confirm" in str(line) for line in answer.lines)
    assert answer.leads.land.cap == ("b",)
    assert answer.next_test.measure == "secondary_volts"


def test_a_supply_that_is_only_named_is_to_be_measured() -> None:
    """208 and 240 V buildings look alike."""
    assert choose_tap(told(FIVE, supply(208.0))).next_test.measure == "line_volts"


def test_a_tap_that_is_landed_is_proved_at_the_secondary() -> None:
    """No other question comes in between."""
    facts = (Fact(fact="nameplate_taps", value=(208.0, 240.0)),)
    answer = choose_tap(Job(readings=(read("line_volts", 203.0),), facts=facts))

    assert answer.next_test.measure == "secondary_volts"


OPEN_OUTSIDE = "white black 20.4, white red 53, black red 32.9, red orange OL, blue yellow 1.2"
OPEN_INSIDE = "white black OL, black red 33, black orange 46.6, red orange 13.9, blue yellow 1.2"


def test_no_tap_behind_an_open_is_landed() -> None:
    """240 V lies behind it, 208 V before it."""
    behind, before = (choose_tap(told(OPEN_OUTSIDE, supply(volts))).leads.land for volts in (240.0, 208.0))

    assert (behind.fits, behind.lead) == (False, None)
    assert (before.lead, set(before.cap)) == ("red", {"black", "orange"})


@pytest.mark.parametrize("facts", [(), (supply(240.0),), (supply(120.0),)])
def test_an_open_next_to_common_leaves_nothing_to_land(facts: tuple[Fact, ...]) -> None:
    """Whatever the supply."""
    answer = choose_tap(told(OPEN_INSIDE, *facts))

    assert "No tap works any more: replace it" in map(str, answer.lines)
    assert answer.leads.land is None or answer.leads.land.lead is None
    assert answer.next_test is None


def test_no_lead_is_landed_that_is_more_likely_wrong_than_right() -> None:
    """Two halves alike, 120 V: either could be the one."""
    answer = choose_tap(told("a b 20.0, a c 40.0, b c 20.0, d e 1.1", supply(120.0)))

    assert answer.leads.land is None
    assert str(answer.lines[0]).startswith("First tell the leads apart")
