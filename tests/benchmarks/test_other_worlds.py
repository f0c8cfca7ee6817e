"""The third and the fourth world against circuits worked out by hand: Ohm's law and the turns ratio, not a program."""

import math

import numpy as np
import pytest

from tests.benchmarks.fourth_world import circuit
from tests.benchmarks.fourth_world.winder import INF, Device, Wound, beside
from tests.benchmarks.third_world import nodal
from tests.benchmarks.third_world.draw import draw
from tests.benchmarks.third_world.unit import Unit


def plain_unit() -> Unit:
    """120 V, 20 ohm and 0.8 ohm, 5 to 1, an ideal core, 14.4 ohm on it, nothing stray."""
    unit = next(u for seed in range(200) if (u := draw(np.random.default_rng(seed))).finding == "healthy" and u.supply == 120.0)
    unit.p |= {
        "np": 120.0, "ns": 24.0, "rp": 20.0, "rs": 0.8, "xp": 0.0, "xs": 0.0, "yg": 1e-6, "yb": 1e-6, "ratio": 1.0, "source_r": 1e-6,
        "line_joint": [1e-3, 1e-3], "other": None, "call": True, "z0": None, "z1": 14.4, "coil_open": False, "fuse": None,
        "joint_r": [1e-3, 1e-3], "joint_c": 1e-3, "c_bond": None,
    }  # fmt: skip
    unit.live.clear()
    return unit


def test_a_loaded_unit_of_the_third_world_gives_what_turns_and_ohms_say() -> None:
    """120 / (20 + 25 * (0.8 + 14.4)) is 0.3 A in, 1.5 A out, 21.6 V; the wire to Y takes 0.05 ohm of it."""
    state = plain_unit().state()

    assert state.volts(nodal.S1, nodal.S2, 1e7) == pytest.approx(21.6, rel=0.01)
    assert abs(state.line_a) == pytest.approx(0.3, rel=0.01)


def test_a_lifted_secondary_of_the_third_world_gives_its_turns() -> None:
    """120 V through 5 to 1."""
    assert plain_unit().state(lifted=True).volts(nodal.S1, nodal.S2, 1e7) == pytest.approx(24.0, rel=0.01)


def test_resistors_of_the_third_world_add_up() -> None:
    """10 ohm beside 6 and 4 in series is 5; nothing between is open."""
    branches = ((nodal.R, nodal.C, 10.0), (nodal.R, nodal.Y, 6.0), (nodal.Y, nodal.C, 4.0))

    assert nodal.dc_ohm(branches, nodal.R, nodal.C) == pytest.approx(5.0, rel=1e-6)
    assert math.isinf(nodal.dc_ohm(branches, nodal.R, nodal.K))


def fourth(**changes: object) -> dict[str, object]:
    """The same unit in the fourth world."""
    wound = Wound({120.0: 20.0}, 0.8, 120.0, 0.0, 0.0, 1e-6, 1e-6, 3.0, 24.0)
    return {
        "t": wound, "r1": 20.0, "r2": 0.8, "n1": 120.0, "n2": 24.0, "x1": 0.0, "x2": 0.0, "line_on": True, "joint": 1e-4, "loop": None,
        "opened1": 0.0, "opened2": 0.0, "stray": None, "before": 0.0, "after": 0.0, "c_leg": 0.0, "fuse_r": 0.0, "wire": 0.0, "calling": True,
        "down": "none", "short_r": None, "short_far": False, "ratio": 1.0, "devices": [Device("contactor", 40.0, 14.4 + 0j, 3.0)],
    } | changes  # fmt: skip


def test_a_unit_of_the_fourth_world_gives_what_turns_and_ohms_say() -> None:
    """0.3 A in, 1.5 A out, 21.6 V; 24 V with a lead lifted."""
    loaded, lifted = (circuit.solve(fourth(), 120.0, lifted=is_lifted) for is_lifted in (False, True))

    assert loaded.secondary == pytest.approx(21.6, rel=1e-3)
    assert (loaded.primary_a, loaded.secondary_a) == (pytest.approx(0.3, rel=1e-3), pytest.approx(1.5, rel=1e-3))
    assert lifted.secondary == pytest.approx(24.0, rel=1e-3)


def test_shorted_turns_of_the_fourth_world_draw_their_own_current() -> None:
    """A loop of 12 turns and 2 ohm on 120 turns: 120 V a turn of 1, so 12 V over 2 ohm, 72 VA, 0.6 A less the drop in 20 ohm: 120 / (20 + 200)."""
    live = circuit.solve(fourth(loop=(12.0, 2.0 + 0j)), 120.0, lifted=True)

    assert live.primary_a == pytest.approx(120.0 / 220.0, rel=1e-3)


def test_resistors_side_by_side() -> None:
    """10 beside 10 is 5, beside an open itself, beside a dead short nothing."""
    assert (beside(10.0, 10.0), beside(10.0, INF), beside(10.0, 0.0)) == (5.0, 10.0, 0.0)
