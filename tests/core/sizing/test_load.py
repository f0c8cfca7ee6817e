"""What to buy for a load: sums, sizes, inrush, what is missing."""

from dataclasses import replace

import pytest

from core.readings import Reading
from core.sizing import size
from core.sizing.loads import budget
from core.sizing.wire import loop_ohm, pull_in_volts
from core.standards.device_loads import DEVICE_LOADS
from core.standards.transformer_ratings import next_size_va, stocked_after
from tests.core.sizing.jobs import answered, fact, job, load, sized, text

SUPPLY_HOUSE = (
    load("contactor", 9.0, count=2),
    load("gas valve", 0.5, unit="A"),
    load("board"),
    fact("run_feet", 120),
    fact("wire_awg", 18),
)
"""2 contactors 9 VA, gas valve half an amp, a board, 120 ft of 18."""


def test_the_supply_house_message_is_answered_whole() -> None:
    """2 contactors 9 VA, gas valve half an amp, a board, 120 ft of 18: by hand 18 + 12 VA, next over 37.5, wire at 1.863 ohm."""
    answer = answered(*SUPPLY_HOUSE, asks=("size",))

    assert answer.sizing is not None
    assert (answer.sizing.load_va, answer.sizing.pick_va, answer.sizing.class2) == (30.0, 40.0, True)
    # Half an amp steady and 18 VA as 32 ohm: (24 - 0.5 x 1.864) / (1 + 1.864 / 32) = 21.80 V.
    assert answer.sizing.volts_at_load == pytest.approx(21.80, abs=0.01)
    assert str(answer.lines[0]).startswith("Buy 50 VA: 30 VA known, the rest usually 3 to 12 VA")
    assert "1 × board (usually 3 to 12 VA)" in text(answer)
    assert "Local code decides" in text(answer)


def test_the_record_of_a_known_load_with_its_inrush() -> None:
    """34 VA of which one contactor takes 56 VA for its 10 while pulling in, 120 V, 28.4 ft of 18."""
    told = (load("contactor", 10.0, inrush=56.0), load("zone valve", 6.0, count=4), fact("supply_volts", 120))
    sizing = sized(*told, fact("run_feet", 28.4), fact("wire_awg", 18), asks=("size",))

    assert (sizing.load_va, sizing.inrush_va, sizing.pick_va, sizing.fuse_amps) == (34.0, 80.0, 50.0, 2.0)
    assert (sizing.secondary_amps, sizing.primary_amps) == pytest.approx((1.42, 0.28), abs=0.005)
    assert (sizing.drop_volts, sizing.volts_at_load) == (0.61, 23.39)
    assert (sizing.longest_feet, sizing.output_volts, sizing.refused, sizing.primary_fuse_amps) == (None, None, None, None)


@pytest.mark.parametrize(
    ("load_va", "pick"),
    [(1, 20), (16, 20), (16.1, 30), (24, 30), (32, 40), (33, 50), (40, 50), (48, 60), (60, 75), (80, 100), (80.1, None)],
)
def test_the_next_size_leaves_a_quarter_of_spare(load_va: float, pick: float | None) -> None:
    """Right at each edge."""
    assert next_size_va(load_va) == pick


@pytest.mark.parametrize(("size_va", "stocked"), [(30, 40), (60, 75), (40, None)])
def test_a_size_seldom_stocked_names_the_next(size_va: float, stocked: float | None) -> None:
    """30 and 60 VA."""
    assert stocked_after(size_va) == stocked


def test_a_seldom_stocked_size_is_said_with_the_next() -> None:
    """20 VA steady is 25 VA with spare, and boards pull in no coil."""
    assert str(answered(load("board", 10.0, count=2), asks=("size",)).lines[0]).startswith("Buy 30 VA, or 40")


def test_only_known_parts_are_summed() -> None:
    """A part without a figure is named with its usual range, and never put into the sum."""
    answer = answered(load("contactor", 9.0), load("gas valve"), asks=("size",))

    assert answer.sizing is not None
    assert answer.sizing.load_va == 9.0
    assert "gas valve (usually 7 to 22 VA)" in text(answer)
    assert "usual VA" in text(answer)


def test_nothing_known_gives_no_size() -> None:
    """Only devices without figures: words, no number."""
    answer = answered(load("contactor"), asks=("size",))

    assert answer.sizing is not None
    assert (answer.sizing.load_va, answer.sizing.pick_va) == (None, None)
    assert str(answer.lines[0]).startswith("No size yet")


def test_a_device_of_no_known_kind_is_asked_for() -> None:
    """No range is made up for it."""
    assert "Send the VA off the label: 1 × flux box" in text(answered(load("flux box"), load("relay", 3.0), asks=("size",)))


def test_amps_stay_amps_and_become_va_at_the_rated_volts() -> None:
    """0.4 A is 9.6 VA at 24 V and 4.8 VA at 12 V."""
    assert sized(load("gas valve", 0.4, unit="A"), asks=("size",)).load_va == pytest.approx(9.6)
    assert sized(load("gas valve", 0.4, unit="A"), fact("rated_secondary_volts", 12), asks=("size",)).load_va == pytest.approx(
        4.8
    )


def test_inrush_is_the_largest_with_the_rest_sealed() -> None:
    """3 reversing valves at 12, a contactor 10 sealed and 52 inrush: 36 + 52."""
    assert sized(load("reversing valve", 12.0, count=3), load("contactor", 10.0, inrush=52.0)).inrush_va == 88.0


def test_inrush_not_told_stays_unknown_and_is_said_as_a_range() -> None:
    """No ratio of ours becomes a number of the record."""
    answer = answered(load("contactor", 9.0), asks=("size",))

    assert answer.sizing is not None
    assert answer.sizing.inrush_va is None
    assert "Pull-in not told, usually 27 to 63 VA" in text(answer)


def test_a_unit_that_sags_under_the_pull_in_is_called_out() -> None:
    """20 VA with 70 VA of pull-in leaves the coils under 20.4 V, whatever the steady load says."""
    answer = answered(load("contactor", 10.0, inrush=70.0), asks=("size",))

    assert "16.1 V at the coils on 20 VA, 21.3 V on 40 VA, 20.4 V needed" in text(answer)
    assert "Buy 40 VA: 10 VA steady needs 20, its pull-in 40" in text(answer)


def test_pull_in_volts_fall_with_inrush_and_wire_and_rise_with_size() -> None:
    """The plant's regulation, not a rule of thumb."""
    at = pull_in_volts(40.0, 60.0)[1]

    assert pull_in_volts(40.0, 90.0)[1] < at
    assert pull_in_volts(40.0, 60.0, 2.0)[1] < at
    assert pull_in_volts(75.0, 60.0)[1] > at


def test_a_furnace_does_not_heat_and_cool_at_once() -> None:
    """Contactors 18 VA in cooling against gas valve and humidifier 22 VA in heating; the sum stays the plain sum."""
    answer = answered(load("contactor", 9.0, count=2), load("gas valve", 12.0), load("humidifier", 10.0), asks=("size",))

    assert answer.sizing is not None
    assert answer.sizing.load_va == 40.0
    assert "Most on at once: 22 VA (heating)" in text(answer)


def test_a_heat_pump_has_its_contactor_on_in_heating_too() -> None:
    """With a reversing valve everything may be on at once."""
    sums = budget(job(load("contactor", 9.0), load("reversing valve", 10.0), load("gas valve", 12.0))).by_mode()

    assert sums["heating"] == 31.0


def test_over_100_va_is_no_longer_class_2() -> None:
    """No size, the split, and the licensed hand."""
    answer = answered(load("contactor", 12.0, count=10), asks=("size",))

    assert answer.sizing is not None
    assert (answer.sizing.pick_va, answer.sizing.class2, answer.sizing.fuse_amps) == (None, False, None)
    assert "Split the load" in text(answer)
    assert "licensed_hand" in answer.cautions


def test_a_coil_of_150_va_steady_is_asked_about() -> None:
    """It may be the inrush."""
    assert "That may be its inrush" in text(answered(load("contactor", 150.0), asks=("size",)))


@pytest.mark.parametrize(
    ("rated", "opening"),
    [
        (20.0, "20 VA carries 15 VA steady with 33 % spare"),
        (15.0, "15 VA carries"),
        (10.0, "Too small"),
        (40.0, "40 VA is enough"),
    ],
)
def test_a_nameplate_is_judged_against_its_load(rated: float, opening: str) -> None:
    """2 relays at 3 and a contactor at 9 VA: 15 VA."""
    answer = answered(load("relay", 3.0, count=2), load("contactor", 9.0), fact("rated_va", rated), asks=("size",))

    assert str(answer.lines[0]).startswith(opening)


def test_every_usual_range_is_a_range() -> None:
    """Low under high, inrush not under sealed, inside the limits of a device."""
    for row in DEVICE_LOADS.values():
        assert 1.0 <= row.low_va < row.high_va <= 100.0
        assert 1.0 <= row.inrush_low <= row.inrush_high
        assert row.on


def test_a_pull_in_that_asks_for_more_is_bought_for() -> None:
    """9 VA steady would do on 20 VA; 60 VA of pull-in leave 18.7 V there."""
    answer = answered(load("contactor", 9.0, inrush=60.0), asks=("size",))

    assert str(answer.lines[0]) == "Buy 30 VA: 9 VA steady needs 20, its pull-in 30"


def test_a_unit_that_is_there_is_not_called_enough_where_it_sags() -> None:
    """Steady is not all."""
    answer = answered(load("contactor", 9.0, inrush=60.0), fact("rated_va", 20), asks=("size",))

    assert str(answer.lines[0]) == "20 VA carries 9 VA steady, not the pull-in: buy 30 VA"


def test_a_mode_names_no_size_that_the_pull_in_does_not_allow() -> None:
    """21 VA in cooling would go on 30 VA, but 60 VA of pull-in beside them would not."""
    told = (load("contactor", 9.0, count=2, inrush=60.0), load("gas valve", 0.5, unit="A"), load("thermostat", 3.0))

    assert "30 VA" not in text(answered(*told, asks=("size",)))


def test_clamped_amps_are_a_load_where_no_device_is_told() -> None:
    """1.2 A at 24 V are 28.8 VA."""
    answer = answered(Reading(measure="secondary_amps", value=1.2), asks=("size",))

    assert answer.sizing is not None
    assert (answer.sizing.load_va, answer.sizing.pick_va) == (28.8, 40.0)
    assert "By the clamp, 1.2 A" in text(answer)


def test_a_load_told_as_one_sum_is_no_coil() -> None:
    """110 VA in all are over Class 2, and no inrush of one coil."""
    answer = answered(load("load", 110.0), asks=("size",))

    assert str(answer.lines[0]).startswith("Over Class 2")


def test_every_answer_is_short() -> None:
    """Five lines and the rules, unless more must be said: here the board without a figure brings its two."""
    assert len(answered(*SUPPLY_HOUSE, fact("supply_volts", 208), asks=("size",)).lines) <= 6


@pytest.mark.parametrize(
    ("rated", "opening"),
    [(40.0, "Not sure yet for 40 VA: 8 VA known"), (20.0, "20 VA is likely too small"), (75.0, "75 VA is likely enough")],
)
def test_a_unit_is_not_called_enough_while_devices_have_no_figure(rated: float, opening: str) -> None:
    """Damper 8 VA, three zone valves of 5 to 12 VA."""
    answer = answered(load("damper", 8.0), load("zone valve", count=3), fact("rated_va", rated), asks=("size",))

    assert str(answer.lines[0]).startswith(opening)


def test_no_size_is_sure_while_something_was_not_understood() -> None:
    """With and without a unit that is there."""
    unrated = size(replace(job(load("contactor", 8.0, count=2), asks=("size",)), unread=True))
    rated = size(replace(job(load("contactor", 8.0, count=2), fact("rated_va", 40), asks=("size",)), unread=True))

    assert unrated is not None
    assert rated is not None
    assert str(unrated.lines[0]) == "At least 20 VA: 16 VA read, and something was not understood"
    assert str(rated.lines[0]).startswith("Not sure yet: 16 VA read")
    assert "fuse" not in text(unrated)


def test_what_is_added_to_a_unit_is_not_its_whole_load() -> None:
    """12 VA more on a 40 VA that carries others."""
    answer = answered(load("economizer", 12.0), fact("rated_va", 40), topics=("added",))

    assert str(answer.lines[0]) == "12 VA more: send what the 40 VA carries now"


def test_devices_without_any_figure_are_guessed_together() -> None:
    """6 zone valves of 5 to 12 VA beside 40 VA."""
    answer = answered(load("zone valve", count=6), fact("rated_va", 40))

    assert str(answer.lines[0]) == "Not sure yet for 40 VA: such devices usually draw 30 to 72 VA in all"


def test_one_mode_at_a_time_still_pulls_in_the_coils_of_every_mode() -> None:
    """Heating draws more, 20 VA; the contactor of cooling asks for the bigger unit, and the fuse goes with that unit."""
    told = (load("contactor", 9.0), load("board", 8.0), load("gas valve", 0.5, unit="A"))
    answer = answered(*told, asks=("size",), topics=("apart",))

    assert answer.sizing is not None
    assert (answer.sizing.load_va, answer.sizing.pick_va, answer.sizing.fuse_amps) == (20.0, 30.0, 2.0)
    assert "Buy 40 VA: 20 VA steady needs 30, the usual pull-in 40" in text(answer)
    assert "Counted what is on at once: 20 of 29 VA (heating)" in text(answer)
    assert "Pull-in not told, usually 35 to 71 VA" in text(answer)


def test_no_smaller_size_is_named_where_another_mode_pulls_in_harder() -> None:
    """29 VA in all on 40; one mode at a time would still need 40 for the contactor."""
    told = (load("contactor", 9.0), load("board", 8.0), load("gas valve", 0.5, unit="A"))

    assert "Most on at once: 20 VA (heating)\n" in text(answered(*told, asks=("size",)))


def test_a_single_coil_that_no_size_pulls_in_is_not_split() -> None:
    """900 VA of pull-in for one contactor."""
    said = text(answered(load("contactor", 60.0, inrush=900.0), asks=("size",)))

    assert said.startswith("No size holds it: 60 VA steady needs 75 VA, its pull-in more than any")
    assert "Mend: a coil that pulls in with less" in said
    assert "split" not in said


def test_a_pull_in_over_a_long_run_names_size_and_gauge() -> None:
    """60 VA over 200 ft of 20: 40 VA, and 12 AWG, through the windings of a weak unit."""
    told = (load("contactor", 9.0, inrush=60.0), fact("run_feet", 200), fact("wire_awg", 20))
    said = text(answered(*told, asks=("size",)))

    assert said.startswith("Buy 40 VA: 9 VA steady needs 20, its pull-in 40")
    assert "Run 12 AWG or thicker" in said
    assert pull_in_volts(40.0, 60.0, loop_ohm(12, 200))[0] >= 20.4 > pull_in_volts(40.0, 60.0, loop_ohm(14, 200))[0]


@pytest.mark.parametrize("inrush", [0.0, -5.0, 5000.0])
def test_an_inrush_without_its_sealed_va_has_limits_too(inrush: float) -> None:
    """No number is built on it."""
    sizing = sized(load("contactor", None, inrush=inrush), asks=("size",))

    assert sizing.refused is not None
    assert sizing.pick_va is None


@pytest.mark.parametrize(
    ("rated", "device", "va", "inrush", "said"),
    [
        (40.0, "zone valve", 8.0, None, "4 × zone valve at 8 VA"),
        (75.0, "board", 6.0, None, "10 × board at 6 VA"),
        # Steady 3 would go on 40 VA; 27 + 81 VA while one pulls in leave the coils too little, 2 x 9 + 81 as well.
        (40.0, "contactor", 9.0, 90.0, "0 × contactor at 9 VA"),
    ],
)
def test_how_many_of_a_device_a_unit_carries(rated: float, device: str, va: float, inrush: float | None, said: str) -> None:
    """With a quarter of spare, and as long as one of them still pulls in."""
    answer = answered(load(device, va, inrush=inrush), fact("rated_va", rated), topics=("capacity",))

    assert str(answer.lines[0]) == said
    assert f"{rated:g} VA carries {rated / 1.25:g} VA steady" in text(answer)
