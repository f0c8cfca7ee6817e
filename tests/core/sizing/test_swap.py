"""A change of kind: bigger, multi-tap, another frequency."""

from dataclasses import replace

import pytest

from core.advice import Answer
from core.readings import Fact, Job, Reading
from core.sizing import size
from tests.core.sizing.jobs import fact, job, text


def asked(told: Job, meant_va: float | None = None) -> Answer:
    """The answer to a change of kind."""
    answer = size(replace(told, meant_va=meant_va))
    assert answer is not None
    return answer


def test_a_bigger_unit_in_the_same_box_is_fine_on_terms() -> None:
    """75 VA for 40 VA on 240 V: the 24 V fuse stays, the line fuse is at most 300 % of 0.3125 A."""
    answer = asked(job(fact("rated_va", 40), fact("supply_volts", 240), asks=("size",), topics=("bigger_unit",)), 75.0)
    said = text(answer)

    assert str(answer.lines[0]).startswith("Yes, 75 VA")
    assert "The 24 V fuse stays as it is" in said
    assert "Line fuse: 0.8 A" in said
    assert answer.sizing is not None
    assert answer.sizing.class2 is True


def test_over_100_va_is_not_put_into_a_class_2_box() -> None:
    """150 VA."""
    answer = asked(job(fact("rated_va", 40), asks=("size",), topics=("bigger_unit",)), 150.0)

    assert str(answer.lines[0]).startswith("No: 150 VA is over the 100 VA of Class 2")
    assert "licensed_hand" in answer.cautions


def test_a_smaller_one_needs_the_load() -> None:
    """40 VA for 75 VA: 32 VA steady is the most."""
    answer = asked(job(fact("rated_va", 75), asks=("size",), topics=("bigger_unit",)), 40.0)

    assert str(answer.lines[0]) == "Not smaller without the load: 40 VA carries 32 VA steady. Send the devices"


@pytest.mark.parametrize(
    ("supply", "taps", "line"),
    [
        (208, (120.0, 208.0, 240.0), "Land common and the 208 V lead"),
        (480, (120.0, 208.0, 240.0), "No: none of its taps is for 480 V"),
        (480, (120.0, 208.0, 240.0, 480.0), "Land common and the 480 V lead"),
        (None, (208.0, 240.0), "Read the line first"),
    ],
)
def test_a_multi_tap_takes_the_place_of_two_taps(supply: float | None, taps: tuple[float, ...], line: str) -> None:
    """Which lead, or none."""
    facts = [Fact(fact="nameplate_taps", value=(208.0, 240.0)), Fact(fact="nameplate_taps", value=taps)]
    facts += [fact("supply_volts", supply)] if supply is not None else []
    answer = asked(job(*facts, topics=("multi_tap",)))

    assert line in text(answer)
    assert ("cap_unused_leads" in answer.cautions) is not line.startswith("No")


@pytest.mark.parametrize(
    ("topic", "hertz", "opening"),
    [
        ("unit_60_hertz", 50, "No: a 60 Hz unit on 50 Hz saturates"),
        ("unit_50_hertz", 60, "A 50 Hz unit on 60 Hz runs cool"),
        (None, 50, "No: a 60 Hz unit on 50 Hz saturates"),
    ],
)
def test_the_frequency_is_answered_both_ways(topic: str | None, hertz: float, opening: str) -> None:
    """Flux follows volts over hertz."""
    answer = asked(job(fact("supply_hertz", hertz), topics=() if topic is None else (topic,)))

    assert str(answer.lines[0]).startswith(opening)


@pytest.mark.parametrize(("symptom", "warned"), [("burnt", True), ("blows_fuse", True), ("hum", False)])
def test_a_unit_that_died_is_not_just_replaced_by_a_bigger_one(symptom: str, *, warned: bool) -> None:
    """The short would burn that one too; without a sign of one nothing is said of it."""
    told = job(fact("rated_va", 40), Fact(fact="symptom", value=symptom), asks=("size",), topics=("bigger_unit",))

    assert ("find_the_short_first" in asked(told, 75.0).cautions) is warned


@pytest.mark.parametrize(
    ("va", "opening", "is_class_2"),
    [(100, "Yes, 100 VA can be Class 2", True), (40, "Yes, 40 VA can", True), (120, "No: 120 VA is over", False)],
)
def test_a_rating_is_judged_by_class_2(va: float, opening: str, *, is_class_2: bool) -> None:
    """100 VA is the last."""
    answer = asked(job(fact("rated_va", va), topics=("class_2",)))

    assert str(answer.lines[0]).startswith(opening)
    assert answer.sizing is not None
    assert answer.sizing.class2 is is_class_2


def test_open_volts_over_30_are_no_class_2() -> None:
    """UL 1585 listing text: 30 V under any load or open."""
    answer = asked(job(fact("rated_va", 40), Reading(measure="secondary_volts_lifted", value=31.0), topics=("class_2",)))

    assert str(answer.lines[0]) == "No: 31 V open is over the 30 V of Class 2"
