"""Two together, other supplies, ground, proof, and when sizing has nothing to say."""

from dataclasses import replace

import pytest

from core.readings import Fact, Reading
from core.sizing import size
from tests.core.sizing.jobs import answered, fact, job, load, text


def test_paralleling_is_usually_not_the_way() -> None:
    """Verdict, the rule, the bigger unit, and the phase test with what to read."""
    answer = answered(fact("rated_va", 40), asks=("parallel",))
    said = text(answer)

    assert str(answer.lines[0]).startswith("Usually not")
    assert "One 100 VA unit carries what two of 40 VA would" in said
    assert "About 0 V: in phase. About 48 V: power off" in said
    assert "725.121(B)" in said
    assert "class2_no_interconnect" in answer.cautions


def test_two_of_75_va_would_leave_class_2() -> None:
    """150 VA."""
    assert "over the 100 VA of Class 2" in text(answered(fact("rated_va", 75), asks=("parallel",)))


@pytest.mark.parametrize(
    ("supply", "tap", "volts", "verdict"),
    [
        (240, 208, 27.7, "No:"),
        (208, 240, 20.8, "coils stand it"),
        (240, 120, 48.0, "No:"),
        (120, 240, 12.0, "No:"),
        (240, 240, 24.0, "right tap"),
    ],
)
def test_another_supply_on_a_tap_gives_the_ratio(supply: float, tap: float, volts: float, verdict: str) -> None:
    """24 V times supply over tap."""
    answer = answered(fact("supply_volts", supply), fact("tap_volts", tap))

    assert answer.sizing is not None
    assert answer.sizing.output_volts == pytest.approx(volts, abs=0.05)
    assert verdict in text(answer)


@pytest.mark.parametrize(("hertz", "word"), [(50, "saturates"), (60, "pull weaker")])
def test_another_frequency_is_answered(hertz: float, word: str) -> None:
    """Both ways."""
    assert word in text(answered(fact("supply_hertz", hertz)))


@pytest.mark.parametrize(("supply", "word"), [(208, "multi-tap on its 208 V lead"), (480, "one with a 480 V tap")])
def test_the_size_comes_with_the_primary_for_the_supply(supply: float, word: str) -> None:
    """Single or multi-tap."""
    assert word in text(answered(load("contactor", 9.0), fact("supply_volts", supply), asks=("size",)))


@pytest.mark.parametrize(
    ("supply", "word"),
    [(277, "Ground one side"), (480, "Ground one side"), (240, "Need not be grounded"), (208, "Need not be")],
)
def test_the_ground_follows_the_supply(supply: float, word: str) -> None:
    """By volts to ground, where it is asked about."""
    answer = size(replace(job(fact("supply_volts", supply)), dangers=("secondary_ground",)))

    assert answer is not None
    assert str(answer.lines[0]).startswith(word)
    assert "C to ground reads 0 V" in text(answer)


@pytest.mark.parametrize(("supply", "said"), [(480, True), (240, False)])
def test_a_size_comes_with_the_ground_only_where_it_must_be(supply: float, *, said: bool) -> None:
    """What need not be done is not said."""
    assert ("Ground one side" in text(answered(load("contactor", 9.0), fact("supply_volts", supply), asks=("size",)))) is said


@pytest.mark.parametrize(
    "told",
    [
        (Reading(measure="primary_volts", value=118.0), Reading(measure="secondary_volts", value=0.0)),
        (fact("rated_va", 40), Reading(measure="secondary_volts", value=0.0)),
        (Fact(fact="symptom", value="hum"),),
    ],
)
def test_a_message_for_the_diagnosis_is_left_to_it(told: tuple[Fact | Reading, ...]) -> None:
    """None where nothing is for sizing."""
    assert size(job(*told)) is None


def test_another_question_is_left_to_others() -> None:
    """Supply and tap in a message that asks which tap."""
    assert size(job(fact("supply_volts", 208), fact("tap_volts", 240), asks=("tap",))) is None


@pytest.mark.parametrize(
    ("volts", "word"),
    [
        (0.4, "in phase"),
        (2.5, "in phase"),
        (48.0, "out of phase"),
        (52.0, "out of phase"),
        (24.0, "neither 0 nor 48 V"),
        (12.0, "neither"),
    ],
)
def test_volts_from_r_to_r_of_two_units_are_judged(volts: float, word: str) -> None:
    """About nothing, about double, or something in between."""
    answer = answered(Reading(measure="lead_volts", value=volts, leads=("r", "r")))

    assert word in str(answer.lines[0])
    assert "725.121(B)" in text(answer)


def test_a_refusal_of_joining_is_not_said_twice() -> None:
    """Where the danger has said no, the bigger unit and the phase test are left to say."""
    answer = size(replace(job(fact("rated_va", 40), asks=("parallel",)), dangers=("parallel_class2",)))

    assert answer is not None
    assert str(answer.lines[0]) == "One 100 VA unit carries what two of 40 VA would"
    assert "Phase test for one common" in text(answer)
