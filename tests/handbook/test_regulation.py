"""Regulation and ratio: worked examples of textbooks and public handbooks, each with its page."""

import numpy as np
import pytest

from core.circuit.plant import OPEN_OHM, Circuit, solve


def circuit(line_v: float, tap_v: float, secondary_v: float, **changes: float) -> Circuit:
    """A nearly lossless transformer with the load and losses given."""
    values = {
        "line_v": line_v, "line_ohm": 1e-9, "tap_v": tap_v, "rated_va": 1000.0, "rated_secondary_v": secondary_v, "open_ratio": 1.0,
        "primary_ohm": 1e-9, "secondary_ohm": 1e-9, "warm": 1.0, "leakage": 0.0, "magnetising": 1e-9, "core_loss": 1e-9, "knee": 0.0,
        "primary_fault_ohm": 0.0, "secondary_fault_ohm": 0.0, "primary_shorted": 0.0, "secondary_shorted": 0.0, "contact": 0.0,
        "protection_ohm": 0.0, "wire_ohm": 0.0, "break_ohm": 0.0, "load_ohm": 1e7, "power_factor": 1.0, "short_ohm": OPEN_OHM,
    }  # fmt: skip
    return Circuit(**{name: np.array([value]) for name, value in (values | changes).items()})


RATIOS = (
    (240.0, 250.0, 50.0, 48.0, "DOE-HDBK-1011/4 ES-13 p. 6 example 2"),
    (15.0, 1250.0, 5000.0, 60.0, "DOE-HDBK-1011/4 ES-13 p. 6 example 3"),
    (120.0, 5.0, 1.0, 24.0, "Malvino & Bates, Electronic Principles, example 4-2 p. 94"),
    (120.0, 200.0, 20.0, 12.0, "Hubert, Electric Machines, example 2.4 p. 51"),
    (240.0, 3000.0, 300.0, 24.0, "US Army correspondence course MM0704, by its ratio"),
)


@pytest.mark.parametrize(("line", "turns1", "turns2", "volts", "source"), RATIOS)
def test_volts_follow_turns(line: float, turns1: float, turns2: float, volts: float, source: str) -> None:
    """An ideal transformer gives line volts times its ratio."""
    live = solve(circuit(line, turns1, turns2))

    assert live.lifted_v[0] == pytest.approx(volts, rel=1e-4), source


def test_amps_follow_turns_the_other_way() -> None:
    """DOE-HDBK-1011/4 ES-13 p. 7 example 2: 480 : 60 turns, 0.6 A from 120 V carries 4.8 A."""
    live = solve(circuit(120.0, 480.0, 60.0, load_ohm=15.0 / 4.8))

    assert live.primary_a[0] == pytest.approx(0.6, rel=1e-3)
    assert live.secondary_a[0] == pytest.approx(4.8, rel=1e-3)


def test_a_load_is_seen_through_the_ratio() -> None:
    """Hubert example 2.4 p. 51: 200 : 20 turns, 120 V, 100 ohm at 30 degrees: 0.12 A out, 0.012 A in."""
    live = solve(circuit(120.0, 200.0, 20.0, load_ohm=100.0, power_factor=np.cos(np.pi / 6)))

    assert live.secondary_a[0] == pytest.approx(0.12, rel=1e-3)
    assert live.primary_a[0] == pytest.approx(0.012, rel=1e-3)


@pytest.mark.parametrize(("power_factor", "percent"), [(1.0, 1.26), (0.7, 2.14)])
def test_regulation_from_a_short_circuit_test(power_factor: float, percent: float) -> None:
    """Kosow, Electric Machinery and Transformers, example 14-17 p. 511: 2300/230 V, 20 kVA, Re 3.30 and Xe 4.70 ohm on the high side."""
    unit = {"primary_ohm": 3.30, "leakage": 4.70 / 3.30}
    full = circuit(2300.0, 2300.0, 230.0, load_ohm=230.0**2 / 20_000.0, power_factor=power_factor, **unit)
    live = solve(full)
    # The book holds the full-load volts and asks for the open ones; the load here is an impedance, so its amps are scaled to the rated ones.
    amps = live.secondary_a[0] / (20_000.0 / 230.0)
    regulation = 100.0 * (live.lifted_v[0] - live.secondary_v[0]) / live.secondary_v[0] / (amps * 230.0 / live.secondary_v[0])

    assert regulation == pytest.approx(percent, abs=0.06)


def test_regulation_of_a_24_v_unit_as_a_book_gives_it() -> None:
    """McPherson & Laramore, Electrical Machines, example 1.7 p. 10: 27.3 V open, 24 V at full load unity: 13.75 % on the full-load volts."""
    va, ohm = 40.0, (27.3 - 24.0) / (40.0 / 24.0)
    live = solve(circuit(120.0, 120.0, 24.0, open_ratio=27.3 / 24.0, secondary_ohm=ohm, rated_va=va, load_ohm=24.0**2 / va))

    assert live.lifted_v[0] == pytest.approx(27.3, rel=1e-4)
    assert live.secondary_v[0] == pytest.approx(24.0, rel=1e-4)
    assert 100 * (live.lifted_v[0] - live.secondary_v[0]) / live.secondary_v[0] == pytest.approx(13.75, abs=0.01)


WRONG_TAPS = (
    (240, 208, 27.7),
    (208, 240, 20.8),
    (277, 240, 27.7),
    (240, 120, 48.0),
    (120, 240, 12.0),
    (208, 120, 41.6),
    (480, 240, 48.0),
)


@pytest.mark.parametrize(("line", "tap", "volts"), WRONG_TAPS)
def test_a_wrong_tap_scales_the_output(line: float, tap: float, volts: float) -> None:
    """The law of turns, 24 V times line over tap."""
    assert solve(circuit(line, tap, 24.0)).lifted_v[0] == pytest.approx(volts, abs=0.06)
