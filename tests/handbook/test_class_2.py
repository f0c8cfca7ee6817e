"""Class 2 against the numbers of a second standard."""

import pytest

from core.sizing.protection import low_voltage_fuse_a
from core.standards.class_2 import MOST_VA, largest_fuse_a

TABLE_2C = {20.0: 5.0, 24.0: 4.17, 27.5: 3.64, 28.0: 3.57, 30.0: 3.33}
"""IEC 60950-1 Table 2C, limited power source: 5 A to 20 V, then 100/Uoc."""


@pytest.mark.parametrize(("open_v", "amps"), TABLE_2C.items())
def test_the_ceiling_is_100_over_the_open_volts(open_v: float, amps: float) -> None:
    """The open-circuit volts count, not the nominal ones (NEC Chapter 9, note 1 to Table 11)."""
    assert largest_fuse_a(open_v) == pytest.approx(amps, abs=0.005)


def test_above_30_volts_it_is_not_class_2() -> None:
    """UL 1585 listing text: 30 V rms under any load or open."""
    assert largest_fuse_a(30.5) is None


def test_100_va_is_the_most() -> None:
    """NEC Chapter 9 Table 11(A); ECMag, "Stay Classy", tells that the 1940 NEC had the same ceiling."""
    assert MOST_VA == 100.0


@pytest.mark.parametrize("unit_va", [20.0, 30.0, 40.0, 50.0, 60.0, 75.0, 100.0])
@pytest.mark.parametrize("open_v", [24.5, 26.0, 28.0, 30.0])
def test_no_fuse_we_name_is_over_the_ceiling(unit_va: float, open_v: float) -> None:
    """Whatever is asked, IEC 60950-1 Table 2C holds."""
    named = low_voltage_fuse_a(unit_va, open_v)

    assert named is not None
    assert named <= 100.0 / open_v
