"""The plant at its limits, where the answer is known without it."""

from dataclasses import replace

import numpy as np
import pytest

from core.circuit.plant import OPEN_OHM, Circuit, solve

SOUND = {
    "line_v": 120.0, "line_ohm": 1e-6, "tap_v": 120.0, "rated_va": 40.0, "rated_secondary_v": 24.0, "open_ratio": 1.13,
    "primary_ohm": 19.5, "secondary_ohm": 1.04, "warm": 1.0, "leakage": 0.3, "magnetising": 0.25, "core_loss": 0.06, "knee": 0.3,
    "primary_fault_ohm": 0.0, "secondary_fault_ohm": 0.0, "primary_shorted": 0.0, "secondary_shorted": 0.0, "contact": 0.0,
    "protection_ohm": 0.05, "wire_ohm": 0.2, "break_ohm": 0.0, "load_ohm": 14.4, "power_factor": 0.8, "short_ohm": OPEN_OHM,
}  # fmt: skip


def circuit(**changes: float) -> Circuit:
    """One sound circuit with changes."""
    return Circuit(**{name: np.array([value]) for name, value in (SOUND | changes).items()})


def test_rated_volts_at_rated_load() -> None:
    """A sound unit gives about what its nameplate says."""
    live = solve(circuit(power_factor=1.0, warm=1.15))

    assert live.secondary_v[0] == pytest.approx(24.0, rel=0.04)
    assert live.lifted_v[0] == pytest.approx(24.0 * 1.13, rel=0.02)


def test_open_primary_leaves_nothing() -> None:
    """No current, no flux, no volts; the supply still stands at the primary."""
    live = solve(circuit(primary_fault_ohm=OPEN_OHM))

    assert live.primary_v[0] == pytest.approx(120.0)
    assert live.secondary_v[0] == pytest.approx(0.0, abs=0.01)


def test_open_secondary_leaves_nothing_outside() -> None:
    """The flux is there, the terminals are dead."""
    live = solve(circuit(secondary_fault_ohm=OPEN_OHM))

    assert live.secondary_v[0] == pytest.approx(0.0, abs=0.01)
    assert live.lifted_v[0] < 0.5


@pytest.mark.parametrize("share", [0.02, 0.1, 0.4])
def test_a_tight_primary_short_hardly_shows_at_the_secondary(share: float) -> None:
    """Turns lost and drop made cancel; the amps tell."""
    sound, shorted = solve(circuit(leakage=0.0)), solve(circuit(leakage=0.0, primary_shorted=share))

    assert shorted.lifted_v[0] == pytest.approx(sound.lifted_v[0], rel=0.04)
    assert shorted.primary_a[0] > 1.05 * sound.primary_a[0]


def test_a_secondary_short_takes_more_than_its_turns() -> None:
    """Its turns are gone and its current drops volts in the primary."""
    sound, shorted = solve(circuit()), solve(circuit(secondary_shorted=0.1))

    assert shorted.lifted_v[0] < 0.9 * sound.lifted_v[0]


def test_an_open_fuse_carries_the_secondary_volts() -> None:
    """All the volts stand across the break."""
    live = solve(circuit(protection_ohm=OPEN_OHM))

    assert live.protection_v[0] == pytest.approx(live.secondary_v[0], rel=1e-3)
    assert live.control_v[0] == pytest.approx(0.0, abs=0.01)


def test_over_excitation_draws_current() -> None:
    """240 V on the 120 V tap saturates the core."""
    assert solve(circuit(line_v=240.0)).primary_a[0] > 4.0 * solve(circuit()).primary_a[0]


def test_many_equal_one_by_one() -> None:
    """Vector equals scalar."""
    changes = [{}, {"line_v": 100.0}, {"short_ohm": 0.3}, {"secondary_shorted": 0.2}, {"break_ohm": 30.0}]
    many = solve(Circuit(**{name: np.array([(SOUND | c)[name] for c in changes]) for name in SOUND}))

    for i, change in enumerate(changes):
        assert many.control_v[i] == pytest.approx(solve(circuit(**change)).control_v[0])
    assert replace(circuit(), warm=np.array([1.2])).warm[0] == 1.2
