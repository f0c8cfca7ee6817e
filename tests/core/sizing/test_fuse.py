"""Fuses on both sides, and the one that was told."""

from dataclasses import replace

import pytest

from core.readings import Reading
from core.sizing import size
from core.sizing.protection import low_voltage_fuse_a
from tests.core.sizing.jobs import answered, fact, job, load, sized, text

NAMEPLATE = (fact("rated_va", 40), fact("rated_secondary_volts", 24))


@pytest.mark.parametrize(("unit_va", "fuse"), [(20, 1.0), (30, 1.5), (40, 2.0), (50, 2.5), (60, 3.0), (75, 3.0), (100, 3.5)])
def test_a_rating_alone_gets_the_fuse_for_the_load_it_is_picked_for(unit_va: float, fuse: float) -> None:
    """Four fifths of the rating fill the fuse to three quarters, under 100/28 A."""
    assert low_voltage_fuse_a(unit_va, 28.0) == fuse


def test_a_known_load_gets_the_smallest_fuse_that_carries_it_for_good() -> None:
    """1.42 A over 0.75."""
    assert low_voltage_fuse_a(50.0, 28.0, load_a=34 / 24) == 2.0


def test_an_overload_does_not_make_the_fuse_grow() -> None:
    """The rating is the most that counts."""
    assert low_voltage_fuse_a(20.0, 28.0, load_a=3.0) == low_voltage_fuse_a(20.0, 28.0, load_a=20 / 24)


def test_three_amps_on_40_va_are_allowed_but_guard_little() -> None:
    """Under the Class 2 ceiling, over the winding's 1.67 A."""
    answer = answered(*NAMEPLATE, fact("fuse_amps", 3), asks=("fuse",))

    assert str(answer.lines[0]).startswith("3 A is allowed, but passes 4.1 A for an hour")
    assert answer.sizing is not None
    assert (answer.sizing.fuse_amps, answer.sizing.class2) == (2.0, True)
    assert answer.sizing.secondary_amps == pytest.approx(1.67, abs=0.005)
    assert "no_bigger_fuse" in answer.cautions


@pytest.mark.parametrize("amps", [4.0, 5.0, 10.0])
def test_a_fuse_over_the_ceiling_is_turned_down(amps: float) -> None:
    """100 over the open volts, 28.4 at the most for 40 VA."""
    assert str(answered(*NAMEPLATE, fact("fuse_amps", amps), asks=("fuse",)).lines[0]).startswith(f"No: {amps:g} A is over")


def test_the_open_volts_that_were_read_set_the_ceiling() -> None:
    """25 V open allows 4 A, 29 V only 3.4 A."""
    read = Reading(measure="secondary_volts_lifted", value=29.0)

    assert "limit 3.45 A: 100 / 29.0 V open" in text(answered(*NAMEPLATE, read, asks=("fuse",)))


def test_a_fuse_too_small_for_the_load_is_turned_down() -> None:
    """1 A against 30 VA."""
    answer = answered(*NAMEPLATE, load("zone valve", 10.0, count=3), fact("fuse_amps", 1), asks=("fuse",))

    assert "No: 1 A opens on this load" in text(answer)


def test_only_the_line_side_asked_for_repeats_it() -> None:
    """40 VA on 480 V: 300 % of 0.083 A."""
    answer = answered(fact("rated_va", 40), fact("supply_volts", 480), asks=("fuse",), topics=("line_fuse",))

    assert answer.sizing is not None
    assert (answer.sizing.primary_fuse_amps, answer.sizing.fuse_amps) == (0.25, 0.25)
    assert "Ground one side of the secondary" in text(answer)


def test_both_sides_are_answered_where_both_are_told() -> None:
    """40 VA, 24 V, 120 V supply."""
    sizing = sized(*NAMEPLATE, fact("supply_volts", 120), asks=("fuse",))

    assert (sizing.fuse_amps, sizing.primary_fuse_amps) == (2.0, 1.0)


def test_over_100_va_no_low_voltage_fuse_is_named() -> None:
    """150 VA is no Class 2 source."""
    answer = answered(fact("rated_va", 150), fact("rated_secondary_volts", 24), asks=("fuse",))

    assert answer.sizing is not None
    assert (answer.sizing.fuse_amps, answer.sizing.class2) == (None, False)
    assert "licensed_hand" in answer.cautions


def test_a_12_volt_secondary_has_the_flat_5_amps() -> None:
    """Up to 20 V open."""
    assert "limit 5 A up to 20 V" in text(answered(fact("rated_va", 40), fact("rated_secondary_volts", 12), asks=("fuse",)))


def test_it_says_why_a_bigger_fuse_is_no_mend() -> None:
    """What a fuse will not protect."""
    assert "A fuse stops a short, not a small overload" in text(answered(*NAMEPLATE, asks=("fuse",)))


def test_without_a_rating_it_asks_for_one() -> None:
    """No number from nothing."""
    answer = answered(asks=("fuse",))

    assert "Send the transformer's VA" in text(answer)
    assert answer.sizing is not None
    assert answer.sizing.fuse_amps is None


@pytest.mark.parametrize(("amps", "verdict"), [(0.25, "0.25 A is within the limit"), (1.0, "No: 1 A is over the limit")])
def test_a_line_side_fuse_that_was_told_is_judged(amps: float, verdict: str) -> None:
    """40 VA on 480 V: 0.25 A is the ceiling."""
    answer = answered(
        fact("rated_va", 40), fact("supply_volts", 480), fact("fuse_amps", amps), asks=("fuse",), topics=("line_fuse",)
    )

    assert str(answer.lines[0]) == verdict


@pytest.mark.parametrize(
    ("amps", "verdict"),
    [(3.0, "3 A is within Class 2 on any"), (4.0, "4 A is within Class 2 up to 25.0 V"), (5.0, "No: 5 A is over")],
)
def test_a_fuse_without_a_transformer_is_judged_by_class_2_alone(amps: float, verdict: str) -> None:
    """100 over 24 to 30 open volts."""
    answer = answered(fact("fuse_amps", amps), asks=("fuse",))

    assert str(answer.lines[0]).startswith(verdict)
    assert "Send the transformer's VA" in text(answer)


def test_a_fuse_of_an_earlier_message_is_not_judged_again() -> None:
    """3 A was for the 24 V side; now the line side is asked about."""
    told = job(*NAMEPLATE, fact("fuse_amps", 3), fact("supply_volts", 480), asks=("fuse",), topics=("line_fuse",))
    answer = size(replace(told, fresh=frozenset({"supply_volts"})))

    assert answer is not None
    assert not any(str(line).startswith(("3 A", "No: 3 A")) for line in answer.lines)


def test_both_sides_are_answered_where_no_side_is_asked_for() -> None:
    """40 VA on 208 V without a word of the side."""
    sizing = sized(fact("rated_va", 40), fact("supply_volts", 208), asks=("fuse",))

    assert (sizing.fuse_amps, sizing.primary_fuse_amps) == (2.0, 0.5)


def test_a_unit_too_small_gets_its_own_fuse_and_the_right_unit_another() -> None:
    """51 VA on 40 VA: 2 A opens; on the 75 VA that it needs 2.13 A fill 3 A to three quarters."""
    answer = answered(fact("rated_va", 40), load("load", 51.0), asks=("fuse",))
    said = text(answer)

    assert "24 V fuse for 40 VA: 2 A" in said
    assert "On 40 VA the 2 A opens" in said
    assert "On the 75 VA it needs: 3 A" in said
    assert answer.sizing is not None
    assert answer.sizing.fuse_amps == 2.0


@pytest.mark.parametrize(
    ("supply", "volts"), [(120, "250 V type"), (208, "250 V type"), (277, "600 V type"), (480, "600 V type")]
)
def test_a_line_fuse_is_of_the_type_for_its_volts(supply: float, volts: str) -> None:
    """Fuses are made for 250 and 600 V."""
    assert volts in text(answered(fact("rated_va", 40), fact("supply_volts", supply), asks=("fuse",), topics=("line_fuse",)))


def test_one_small_coil_makes_no_fuse_that_its_pull_in_opens() -> None:
    """9 VA draws 0.4 A, and pulls in with 2.6 A: half an amp would be opened by what it feeds."""
    assert low_voltage_fuse_a(40.0, 28.4, load_a=9 / 24) == low_voltage_fuse_a(40.0, 28.4)
