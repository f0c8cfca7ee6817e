"""When a 24 V secondary must be grounded, against federal law."""

import pytest

from core.standards.grounding import must_be_grounded, usual_supply


@pytest.mark.parametrize(
    ("supply_v", "must"),
    [
        pytest.param(480.0, True, id="480 to 24 V is the stated example of 250.20(A) (code forum)"),
        pytest.param(277.0, True, id="277 V to ground is over 150 V"),
        pytest.param(240.0, False, id="120/240 has 120 V to ground"),
        pytest.param(208.0, False, id="208Y/120 has 120 V to ground"),
        pytest.param(120.0, False, id="120 V to ground"),
    ],
)
def test_a_secondary_under_50_volts_follows_the_volts_to_ground(supply_v: float, *, must: bool) -> None:
    """29 CFR 1926.404(f)(1)(iii), the same rule as NEC 250.20(A)."""
    row = usual_supply(supply_v)

    assert row is not None
    assert must_be_grounded(row.to_ground_v) is must


def test_an_ungrounded_or_overhead_supply_always_must() -> None:
    """29 CFR 1926.404(f)(1)(iii)(A) and (C)."""
    assert must_be_grounded(120.0, grounded_supply=False)
    assert must_be_grounded(120.0, overhead=True)


def test_the_high_leg_counts_with_its_208_volts() -> None:
    """A 240 V delta with a grounded centre has 120 x 1.732 V to ground on one leg."""
    assert must_be_grounded(120.0 * 3**0.5)
