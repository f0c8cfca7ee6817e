"""Meter categories against the published ones. Each source stands beside its check."""

import pytest

from core.standards.meter_categories import CATEGORIES, LINE_SIDE, impulse_v


@pytest.mark.parametrize(
    ("category", "working_v", "expected_v"),
    [
        ("CAT II", 300.0, 2500.0),
        ("CAT III", 300.0, 4000.0),
        ("CAT IV", 300.0, 6000.0),
        ("CAT II", 600.0, 4000.0),
        ("CAT III", 600.0, 6000.0),
        ("CAT IV", 600.0, 8000.0),
    ],
)
def test_what_impulse_a_marking_survives(category: str, working_v: float, expected_v: float) -> None:
    """IEC 61010-1 and IEC 61010-2-030 (from memory)."""
    assert impulse_v(category, working_v) == expected_v


def test_a_lower_category_at_higher_volts_is_not_weaker() -> None:
    """CAT II 600 V and CAT III 300 V both stand 4000 V."""
    assert impulse_v("CAT II", 600.0) == impulse_v("CAT III", 300.0)


def test_the_line_side_of_a_control_transformer_is_fixed_equipment() -> None:
    """EN 61010-1 as quoted in instrument manuals: the building installation, panels, breakers, fixed equipment, is CAT III."""
    assert "fixed equipment" in CATEGORIES[LINE_SIDE].circuits


def test_an_unknown_marking_is_an_error() -> None:
    """CAT I was dropped."""
    with pytest.raises(KeyError):
        impulse_v("CAT I", 300.0)
