"""Fuses against the code's tables and worked examples."""

import pytest

from core.sizing.protection import line_fuse
from core.standards.fuse_sizes import CARRIES_FOR_AN_HOUR, NEC_STANDARD_A, TIME_DELAY_A, at_most
from core.standards.transformer_protection import motor_control_ceiling_a

CEILINGS = {
    (40.0, 120.0): 1.00, (40.0, 240.0): 0.50, (40.0, 277.0): 0.43, (50.0, 480.0): 0.31, (75.0, 120.0): 1.88, (100.0, 120.0): 2.50,
    (250.0, 120.0): 3.48, (500.0, 120.0): 6.96,
}  # fmt: skip
"""300 % under 2 A, 167 % from 2 A. NEC 450.3(B) as told in a technical Q&A on sizing control circuits (2000)."""


@pytest.mark.parametrize(("unit", "amps"), CEILINGS.items())
def test_the_ceiling_of_450_3_b(unit: tuple[float, float], amps: float) -> None:
    """The fuse is the largest made size not above it: neither row lets it round up."""
    fuse = line_fuse(*unit)

    assert fuse.ceiling_a == pytest.approx(amps, abs=0.006)
    assert fuse.size_a is not None
    assert fuse.size_a <= fuse.ceiling_a + 1e-9


def test_the_125_per_cent_row_may_round_up() -> None:
    """9 A and over, note 1 to the table: 10 A x 1.25 = 12.5 A may be 15 A (NEC 240.6(A))."""
    fuse = line_fuse(1200.0, 120.0)

    assert (fuse.ceiling_a, fuse.size_a) == (12.5, 15.0)


def test_a_350_va_motor_control_unit_on_480_volts_may_have_3_6_amps() -> None:
    """0.73 A at 500 %: 3.6 A. electrician2.com training page on 430.72(C)(4)."""
    ceiling = motor_control_ceiling_a(350.0 / 480.0)

    assert ceiling == pytest.approx(3.6, abs=0.05)
    assert at_most(ceiling) == 3.5
    assert motor_control_ceiling_a(2.0) is None


def test_two_and_five_amps_are_no_standard_ratings() -> None:
    """NEC 240.6(A) adds 1, 3, 6 and 10 A fuses to 15 A and up (ECM Code Q&A, 2019); others are allowed, not standard."""
    assert NEC_STANDARD_A == (1.0, 3.0, 6.0, 10.0, 15.0, 20.0, 25.0, 30.0, 35.0, 40.0, 45.0, 50.0, 60.0)
    assert {2.5, 2.8, 3.2, 3.5, 4.0, 4.5, 5.0, 5.6, 6.25, 7.0, 7.5, 8.0, 9.0, 10.0, 12.0, 15.0, 17.5} <= set(TIME_DELAY_A)


def test_a_3_amp_fuse_may_carry_4_amps_for_an_hour() -> None:
    """UL/CSA 248-14: opens at 135 % within an hour."""
    assert pytest.approx(4.05) == 3.0 * CARRIES_FOR_AN_HOUR
