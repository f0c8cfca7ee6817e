"""Runs of control wire."""

import pytest

from core.readings import Fact
from core.sizing.wire import Draw, longest_feet, loop_ohm, volts_left
from tests.core.sizing.jobs import answered, fact, load, sized, text

RUN = (fact("run_feet", 150), fact("wire_awg", 18))
VALVE = load("gas valve", 0.4, unit="A")


def test_amps_told_are_a_constant_current() -> None:
    """0.4 A through 300 ft of 7.77 ohm: 0.93 V."""
    assert sized(*RUN, VALVE, asks=("wire_run",)).drop_volts == 0.93


def test_va_told_are_a_constant_impedance() -> None:
    """9.6 VA are 60 ohm behind 2.33 ohm: 0.90 V."""
    assert sized(*RUN, load("gas valve", 9.6), asks=("wire_run",)).drop_volts == pytest.approx(24 * 2.33 / 62.33, abs=0.01)


def test_drop_and_rest_make_the_rated_volts() -> None:
    """To the hundredth."""
    sizing = sized(*RUN, VALVE, asks=("wire_run",))

    assert sizing.drop_volts is not None
    assert sizing.volts_at_load is not None
    assert sizing.drop_volts + sizing.volts_at_load == pytest.approx(24.0)


def test_cool_copper_drops_less_and_stranded_more() -> None:
    """20 degC is 17.8 % less, stranded 2.3 % more."""
    warm = sized(*RUN, VALVE, asks=("wire_run",)).drop_volts
    cool = sized(*RUN, VALVE, fact("copper_celsius", 20), asks=("wire_run",)).drop_volts
    stranded = sized(*RUN, VALVE, Fact(fact="stranded", value="yes"), asks=("wire_run",)).drop_volts

    assert warm is not None
    assert cool == pytest.approx(warm / 1.21611, abs=0.01)
    assert stranded == pytest.approx(warm * 1.0227, abs=0.01)


def test_a_run_that_starves_the_coil_says_so() -> None:
    """400 ft of 20 AWG with 20 VA."""
    answer = answered(fact("run_feet", 400), fact("wire_awg", 20), load("contactor", 20.0), asks=("wire_run",))

    assert str(answer.lines[0]).startswith("Too long")
    assert answer.picture == "wire_run"


def test_a_gauge_alone_gives_the_longest_run() -> None:
    """At its end the coil has 85 %."""
    sizing = sized(fact("wire_awg", 20), load("contactor", 20.0), asks=("wire_run",))

    assert sizing.longest_feet is not None
    assert volts_left(Draw(va=20.0), loop_ohm(20, sizing.longest_feet)) == pytest.approx(20.4, abs=0.01)
    assert (sizing.drop_volts, sizing.pick_va) == (None, None)


def test_a_length_alone_gives_the_thinnest_gauge() -> None:
    """No drop without a gauge."""
    answer = answered(fact("run_feet", 120), load("contactor", 20.0), asks=("wire_run",))

    assert "AWG or thicker" in text(answer)
    assert answer.sizing is not None
    assert answer.sizing.drop_volts is None


def test_no_load_gives_volts_for_each_amp_and_asks() -> None:
    """The drop is not known."""
    answer = answered(*RUN, asks=("wire_run",))

    assert answer.sizing is not None
    assert answer.sizing.drop_volts is None
    assert "2.33 V lost for each amp" in text(answer)
    assert "Send the VA or amps" in text(answer)


def test_a_rating_without_loads_is_the_worst_case() -> None:
    """40 VA at the far end."""
    assert "Full rating at the far end" in text(answered(*RUN, fact("rated_va", 40), asks=("wire_run",)))


def test_loads_on_one_common_count_together() -> None:
    """Two of 5 VA are one of 10."""
    together = sized(*RUN, load("relay", 5.0, count=2), asks=("wire_run",)).drop_volts

    assert together == sized(*RUN, load("relay", 10.0), asks=("wire_run",)).drop_volts


def test_feet_and_metres_both_stand() -> None:
    """150 ft are 46 m."""
    assert "150 ft (46 m) one way" in text(answered(*RUN, VALVE, asks=("wire_run",)))


def test_the_longest_run_shrinks_with_load_and_grows_with_copper() -> None:
    """Both ways."""
    base = longest_feet(Draw(va=20.0), loop_ohm(18, 1.0))

    assert longest_feet(Draw(va=40.0), loop_ohm(18, 1.0)) == pytest.approx(base / 2)
    assert longest_feet(Draw(va=20.0), loop_ohm(15, 1.0)) == pytest.approx(base * 2, rel=0.01)


def test_a_dead_short_of_a_run_gives_no_number() -> None:
    """More amps than the wire can carry at all."""
    answer = answered(fact("run_feet", 5000), fact("wire_awg", 26), load("gas valve", 4.0, unit="A"), asks=("wire_run",))

    assert "can't carry that load" in text(answer)
    assert answer.sizing is not None
    assert answer.sizing.drop_volts is None


def test_a_run_that_starves_the_pull_in_is_called_out_first() -> None:
    """2 contactors of 10 VA hold at 200 ft of 18 AWG; with 70 VA while one pulls in it never closes."""
    told = (fact("run_feet", 200), fact("wire_awg", 18), load("contactor", 10.0, count=2, inrush=60.0))
    answer = answered(*told, asks=("wire_run",))

    # 70 VA are 8.23 ohm behind 3.106 ohm.
    assert str(answer.lines[0]).startswith("Too long for the pull-in: 70 VA on 200 ft of 18 AWG leaves 17.4 V")
    assert "For 200 ft: 14 AWG or thicker" in text(answer)
    assert answer.sizing is not None
    assert answer.sizing.drop_volts == pytest.approx(24.0 * 3.106 / (28.8 + 3.106), abs=0.01)
