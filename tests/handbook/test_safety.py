"""Safety figures against the published ones. Each source stands beside its check."""

import pytest

from core.cautions import for_test
from core.dangers import DANGERS
from core.measures import MEASURES
from core.readings import Job
from core.standards.electrical_safety import (
    CAPACITOR_LEFT_V,
    CAPACITOR_WAIT_S,
    CONTROLS_ARE_NO_LOCKOUT,
    DE_ENERGISE_FROM_V,
    LARGEST_240_V,
    boundary,
)


def test_what_need_not_be_made_dead() -> None:
    """29 CFR 1910.333(a)(1): live parts below 50 V to ground, where no burn or explosion is added."""
    assert DE_ENERGISE_FROM_V == 50.0


def test_how_a_capacitor_is_left() -> None:
    """NEC 460.6: 50 V or less within one minute, up to 600 V (now 1000 V)."""
    assert (CAPACITOR_LEFT_V, CAPACITOR_WAIT_S) == (50.0, 60.0)


@pytest.mark.parametrize(
    ("volts_v", "limited_ft", "restricted_ft"),
    [
        pytest.param(208.0, 3.5, 1.0, id="NFPA 70E table 130.4(E)(a): 151 to 750 V; the 120/208 V panel is judged at 208"),
        pytest.param(480.0, 3.5, 1.0, id="same row"),
        pytest.param(120.0, 3.5, None, id="50 to 150 V: avoid contact (from memory; found in an older table for 50 to 300 V)"),
    ],
)
def test_how_near_a_person_may_come(volts_v: float, limited_ft: float, restricted_ft: float | None) -> None:
    """NFPA 70E table 130.4(E)(a), fixed parts."""
    row = boundary(volts_v)

    assert row is not None
    assert (row.limited_ft, row.restricted_ft) == (limited_ft, restricted_ft)


def test_below_50_volts_no_boundary_is_given() -> None:
    """Older NFPA 70E tables: not specified."""
    assert boundary(24.0) is None


def test_a_240_volt_supply_is_never_taken_for_277() -> None:
    """ANSI C84.1 table 1, range B (from memory): 240 V goes to 254 V, and 277 V begins at 240 or 245 V of utilisation."""
    assert LARGEST_240_V == 254.0


def test_a_control_device_is_no_lockout() -> None:
    """29 CFR 1910.333(b)(2)(ii), and WAC 296-24-975: push buttons, selector switches and interlocks are not the sole means."""
    assert DANGERS["control_as_lockout"].source == CONTROLS_ARE_NO_LOCKOUT
    assert DANGERS["control_as_lockout"].kind == "no"


def test_dead_is_proved_on_a_live_source_before_and_after() -> None:
    """DOE Electrical Safety Handbook 2.13.2.1: the tester is checked before and after, also at 600 V and below."""
    assert str(DANGERS["not_proved_dead"].says).count("live source") == 2
    assert all("prove_dead" in for_test(_step(m.name), Job()) for m in MEASURES.values() if not m.live)


def test_a_proximity_tester_proves_nothing() -> None:
    """DOE Electrical Safety Handbook 2.13.2.1: not for proving the absence of AC."""
    assert DANGERS["proximity_only"].kind == "no"


def test_class_2_outputs_are_kept_apart() -> None:
    """NEC 725.121(B): not interconnected unless listed for it."""
    assert str(DANGERS["parallel_class2"].source) == "NEC, 725.121(B)"
    assert "unless listed" in str(DANGERS["parallel_class2"].says)


def _step(measure: str):
    from core.advice import NextTest
    from core.said import say

    return NextTest(measure=measure, instruction=say("Read it"))
