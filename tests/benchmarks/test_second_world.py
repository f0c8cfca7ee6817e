"""The solver of the second world against circuits worked out by hand: phasors on paper, not by a program."""

import math

import pytest

from tests.benchmarks.second_world.nodal import EARTH, Net, W
from tests.benchmarks.second_world.unit import Unit


def between(*windings: tuple[str, str, float, complex], volts: float = 120.0) -> Net:
    """A stiff source at `a`, and windings."""
    net = Net()
    net.source("a", EARTH, volts, 1e-6)
    for a, b, turns, ohm in windings:
        net.winding(a, b, turns, ohm)
    return net


def test_an_ideal_transformer_changes_volts_by_its_turns_and_amps_against_them() -> None:
    """240 to 24 V, 10 ohm: 2.4 A out, 0.24 A in."""
    net = between(("a", EARTH, 240, 1e-9), ("x", EARTH, 24, 1e-9), volts=240.0)
    net.impedance("x", EARTH, 10)
    at = net.solve()

    assert abs(at.volts("x")) == pytest.approx(24.0, rel=1e-3)
    assert abs(at.amps(0)) == pytest.approx(0.24, rel=1e-3)


def test_the_secondary_is_seen_by_the_square_of_the_turns() -> None:
    """120 / (20 + 25 * (0.8 + 14.4)) is 0.3 A; 0.3 * 5 * 14.4 is 21.6 V."""
    net = between(("a", EARTH, 120, 20), ("x", EARTH, 24, 0.8))
    net.impedance("x", EARTH, 14.4)
    at = net.solve()

    assert abs(at.volts("x")) == pytest.approx(21.6, rel=2e-3)
    assert abs(at.amps(0)) == pytest.approx(0.3, rel=2e-3)


def test_the_core_draws_its_watts_and_its_reactive_current() -> None:
    """4.8 W and 14.4 VAR at 120 V: the root of 0.04 and 0.12 squared."""
    at = between(("a", EARTH, 120, 1e-6)).solve(lambda _: 4.8 - 14.4j)

    assert abs(at.amps(0)) == pytest.approx(math.hypot(0.04, 0.12), rel=2e-3)


@pytest.mark.parametrize("share", [0.02, 0.1, 0.4])
def test_tightly_shorted_turns_of_the_primary_leave_the_secondary_as_it_was(share: float) -> None:
    """The turns lost and the drop made by the circulating current cancel; the line sees V * s / ((1 - s) * R)."""
    rest = (1 - share) / 2
    net = between(
        ("a", "b", 120 * rest, 20 * rest), ("b", "c", 120 * share, 20 * share), ("c", EARTH, 120 * rest, 20 * rest), ("x", EARTH, 24, 1e-6)
    )  # fmt: skip
    net.impedance("b", "c", 1e-6)
    net.impedance("x", EARTH, 1e9)
    at = net.solve()

    assert abs(at.volts("x")) == pytest.approx(24.0, rel=0.01)
    assert abs(at.amps(0)) == pytest.approx(120 * share / ((1 - share) * 20), rel=0.01)


def test_a_meter_loads_what_it_reads() -> None:
    """Lessons in Electric Circuits, vol. 1, ch. 8: a divider of 250 Mohm halves on 24 V reads 0.889 V with a 10 Mohm meter."""
    net = between(volts=24.0)
    net.impedance("a", "m", 250e6)
    net.impedance("m", EARTH, 250e6)
    net.impedance("m", EARTH, 10e6)

    assert abs(net.solve(least_siemens=1e-16).volts("m")) == pytest.approx(0.88889, rel=2e-3)


def test_a_ghost_comes_through_a_stray_capacitor() -> None:
    """100 pF into 10 Mohm from 120 V."""
    net = between()
    net.capacitor("a", "m", 1e-10)
    net.impedance("m", EARTH, 1e7)

    assert abs(net.solve(least_siemens=1e-16).volts("m")) == pytest.approx(abs(120e7 / (1e7 + 1 / (1j * W * 1e-10))), rel=2e-3)


def test_copper_is_read_cold_hot_and_beside_what_hangs_on_it() -> None:
    """30 ohm across a primary that is not isolated; 21.6 % more at 75 degC (IEC 60028:1925, 0.00393 per degC)."""
    unit = Unit(beside_dc=30.0, celsius=20.0, opens_neutral=True)

    assert unit.ohms("primary_ohms", isolated=True) == pytest.approx(18.0, rel=2e-3)
    assert unit.ohms("primary_ohms", isolated=False) == pytest.approx(18.0 * 30.06 / 48.06, rel=4e-3)
    unit.celsius = 75.0
    assert unit.ohms("primary_ohms", isolated=True) == pytest.approx(18.0 * 1.21615, rel=2e-3)


def test_two_legs_of_three_phases_make_208_volts() -> None:
    """120 V to earth each, 120 degrees apart."""
    unit = Unit(supply=208.0, line=208.0, tap=208.0, neutral=False, leg_angle=120.0)

    assert unit.volts("line_volts", 1e7) == pytest.approx(208.0, rel=4e-3)
