"""The worlds that the belief is fitted on and explained with."""

import numpy as np
import pytest

from core.circuit.plant import OPEN_OHM, solve
from core.diagnosis.worlds import LOST_OHM, NAMES, SOUND_OHM, F, Pins, draw


def some(name: str, n: int = 300, pins: Pins | None = None):
    """Worlds of one finding."""
    return draw(np.random.default_rng(1), np.full(n, F[name]), pins)


def test_the_same_seed_draws_the_same_worlds() -> None:
    """Reproducible."""
    assert np.array_equal(some("overload").circuit.load_ohm, some("overload").circuit.load_ohm)


@pytest.mark.parametrize("name", NAMES)
def test_every_finding_solves_to_finite_readings(name: str) -> None:
    """No world breaks the plant."""
    live = solve(some(name).circuit)

    for field in live.__dataclass_fields__:
        assert np.isfinite(getattr(live, field)).all(), field


def test_a_short_draws_at_least_four_times_the_rating() -> None:
    """At rated volts across it."""
    w = some("load_short")

    assert (w.circuit.rated_secondary_v**2 / w.circuit.short_ohm >= 4.0 * w.circuit.rated_va * 0.999).all()


def test_an_overload_is_between_105_and_250_percent() -> None:
    """Of the rating, with everything called."""
    w = some("overload")

    assert (w.load_share >= 1.05).all()
    assert (w.load_share <= 2.5).all()


def test_a_sound_load_is_within_the_rating() -> None:
    """Elsewhere nobody overloads."""
    assert (some("healthy").load_share <= 1.0).all()


def test_shorted_turns_reach_from_2_to_40_percent_and_sometimes_to_all() -> None:
    """From barely visible to gross, and a few that burnt on."""
    turns = some("primary_shorted_turns", 2000).circuit.primary_shorted

    assert turns.min() == pytest.approx(0.02, abs=0.001)
    assert 0.2 < (turns > 0.4).mean() < 0.36
    assert turns.max() > 0.9


def test_only_a_low_supply_is_out_of_its_limits() -> None:
    """Under 90 or over 110 % of nominal."""
    low, sound = some("low_supply"), some("healthy")

    assert (np.abs(low.circuit.line_v / low.supply_v - 1.0) > 0.1).all()
    assert (np.abs(sound.circuit.line_v / sound.supply_v - 1.0) < 0.1).all()


def test_a_wrong_tap_is_another_tap() -> None:
    """And no other finding has one."""
    wrong, sound = some("wrong_tap"), some("healthy")

    assert (wrong.circuit.tap_v != wrong.supply_v).all()
    assert (sound.circuit.tap_v == sound.supply_v).all()


def test_an_opened_part_sometimes_has_a_short_behind_it() -> None:
    """Neither never nor always; a control break never."""
    for name in ("primary_open", "secondary_open", "protection_open"):
        assert 0.2 < some(name).short.mean() < 0.7
    assert not some("control_open").short.any()


def test_insulation_is_lost_or_sound() -> None:
    """A lost one reaches up to a megohm, a sound one starts at eight."""
    lost, sound = some("windings_bridged").between_ohm, some("healthy").between_ohm

    assert lost.max() <= 1e6
    assert np.median(lost) < LOST_OHM
    assert sound.min() >= SOUND_OHM


def test_what_is_told_pins_the_worlds() -> None:
    """Supply, tap and rating as the nameplate says."""
    w = some("healthy", pins=Pins(supply_v=208.0, tap_v=208.0, rated_va=75.0))

    assert set(w.supply_v) == {208.0}
    assert set(w.circuit.rated_va) == {75.0}
    assert (w.circuit.primary_fault_ohm < OPEN_OHM).all()
