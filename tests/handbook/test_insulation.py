"""Insulation tests against the published tables. Each source stands beside its check."""

import pytest

from core.standards.insulation import insulation_test, least_insulation_ohm


@pytest.mark.parametrize(
    ("working_v", "test_v", "least_ohm"),
    [(120.0, 500.0, 25e6), (208.0, 500.0, 25e6), (240.0, 500.0, 25e6), (277.0, 1000.0, 100e6), (480.0, 1000.0, 100e6)],
)
def test_the_test_of_a_winding(working_v: float, test_v: float, least_ohm: float) -> None:
    """ANSI/NETA MTS-2019 table 100.1: 250 V equipment 500 V DC, 25 megohm; 600 V equipment 1000 V DC, 100 megohm."""
    row = insulation_test(working_v)

    assert (row.test_v, row.least_ohm) == (test_v, least_ohm)


def test_above_the_table_nothing_is_made_up() -> None:
    """The table here ends with the 1000 V row."""
    assert insulation_test(1000.0).test_v == 1000.0
    with pytest.raises(ValueError, match="1000 V"):
        insulation_test(1001.0)


@pytest.mark.parametrize(("working_v", "floor_ohm"), [(24.0, 1e6), (480.0, 1e6), (1000.0, 1e6), (4160.0, 4.16e6)])
def test_the_one_megohm_rule(working_v: float, floor_ohm: float) -> None:
    """One megohm per 1000 V of working voltage, one megohm at least (IET discussion of the rule)."""
    assert least_insulation_ohm(working_v) == pytest.approx(floor_ohm)
