"""Voltage drop against worked examples and against drops reckoned from published tables alone."""

import pytest

from core.readings import Fact, Job
from core.sizing import size
from core.sizing.common import common_v
from core.sizing.loads import Budget, Part
from core.sizing.wire import Copper, Draw, longest_feet, loop_ohm, thinnest_awg, volts_left
from core.standards.coil_range import HIGHEST_SHARE, PULL_IN_SHARE
from core.standards.voltage_drop import ADVISED_SHARE
from tests.handbook.test_wire import AT_20

AT_75 = {14: 3.07, 16: 4.89, 18: 7.77} | {awg: ohms * 1.21611 for awg, ohms in AT_20.items() if awg not in {14, 16, 18}}
"""NEC Chapter 9 Table 8 where it has the gauge; elsewhere the 20 degC table times 1.21611 (IEC 60028's 0.00393 at 20 degC)."""


@pytest.mark.parametrize("feet", [10.0, 50.0, 100.0, 300.0, 1000.0])
@pytest.mark.parametrize("awg", AT_20)
@pytest.mark.parametrize("celsius", [20.0, 75.0])
def test_the_drop_is_within_a_hundredth_of_the_table(awg: int, celsius: float, feet: float) -> None:
    """A tenth of an amp over table ohms, there and back, as it stands in the record of the answer."""
    table = (AT_20 if celsius == 20.0 else AT_75)[awg]
    told = (
        Fact(fact="run_feet", value=feet),
        Fact(fact="wire_awg", value=float(awg)),
        Fact(fact="copper_celsius", value=celsius),
        Fact(fact="load", device="relay", value=0.1, unit="A"),
    )
    answer = size(Job(facts=told, asks=("wire_run",)))

    assert answer is not None
    assert answer.sizing is not None
    assert answer.sizing.drop_volts == pytest.approx(0.1 * 2.0 * table * feet / 1000.0, rel=0.01)
    assert answer.sizing.volts_at_load == pytest.approx(24.0 - answer.sizing.drop_volts)


@pytest.mark.parametrize("feet", [10.0, 100.0, 300.0, 1000.0])
@pytest.mark.parametrize("awg", [14, 18, 24])
def test_va_at_the_far_end_are_ohms_behind_those_of_the_table(awg: int, feet: float) -> None:
    """10 VA taken as 57.6 ohm behind the table's ohms."""
    told = (
        Fact(fact="run_feet", value=feet),
        Fact(fact="wire_awg", value=float(awg)),
        Fact(fact="load", device="relay", value=10.0),
    )
    loop = 2.0 * AT_75[awg] * feet / 1000.0
    answer = size(Job(facts=told, asks=("wire_run",)))

    assert answer is not None
    assert answer.sizing is not None
    assert answer.sizing.drop_volts == pytest.approx(24.0 * loop / (57.6 + loop), rel=0.01)


def test_40_va_over_100_feet_of_18_gauge_lose_2_59_volts() -> None:
    """1.667 A on Table 8's 7.77 ohm: 2.59 V, 21.41 V or 89 % left."""
    assert volts_left(Draw(amps=40 / 24), loop_ohm(18, 100.0)) == pytest.approx(21.41, abs=0.02)


def test_a_two_wire_run_with_a_load_of_250_ohm() -> None:
    """14 V, two wires of 15 ohm, 250 ohm: 12.5 V. T. Kuphaldt, Lessons in Electric Circuits, DC, "Temperature coefficient"."""
    assert volts_left(Draw(va=14.0**2 / 250.0, rated_v=14.0), 30.0) == pytest.approx(12.5, abs=0.001)


def test_2300_feet_of_14_gauge_are_about_5_7_ohm_a_wire() -> None:
    """
    5.651 ohm. T. Kuphaldt, Lessons in Electric Circuits, DC, "Specific resistance".

    The book takes 10.09 ohm cmil/ft for copper where IEC 60028 gives 10.371, so 2.8 % more is right here.
    """
    one_wire = loop_ohm(14, 2300.0, 20.0) / 2.0

    assert one_wire == pytest.approx(5.651 * 10.371 / 10.09, rel=1e-3)


@pytest.mark.parametrize(("awg", "feet"), [(16, 89.7), (18, 56.4), (20, 35.5), (22, 22.3), (24, 14.0)])
def test_the_run_for_three_per_cent_at_one_amp(awg: int, feet: float) -> None:
    """0.72 V over the published ohms per 1,000 ft at 20 degC (HyperPhysics table)."""
    assert feet == pytest.approx(0.72 / (2.0 * AT_20[awg] / 1000.0), abs=0.06)
    assert longest_feet(Draw(amps=1.0), loop_ohm(awg, 1.0, 20.0), 1.0 - ADVISED_SHARE) == pytest.approx(feet, abs=0.06)


def test_the_thinnest_gauge_is_the_first_of_the_table_that_serves() -> None:
    """Search through the published table by hand: 1 A, 100 ft, at 20 degC, 20.4 V to be left."""
    serves = max(awg for awg in (14, 16, 18, 20, 22, 24) if 24.0 - 0.2 * AT_20[awg] >= 20.4)

    assert thinnest_awg(Draw(amps=1.0), 100.0, copper=Copper(celsius=20.0)) == serves == 22


def test_a_coil_is_good_from_85_to_110_per_cent() -> None:
    """TM 5-683 / NAVFAC MO-116 / AFJMAN 32-1083, chapter 5."""
    assert pytest.approx((20.4, 26.4)) == (24.0 * PULL_IN_SHARE, 24.0 * HIGHEST_SHARE)


def test_two_loads_on_one_common_draw_their_sum() -> None:
    """400 and 500 ohm on 240 V: 0.6 + 0.48 = 1.08 A. A. Beiser, Basic Mathematics for Electricity, prob. 15.1, p. 176; wires of next to nothing."""
    loads = Budget(
        parts=(Part(device="relay", count=1, va=240.0**2 / 400.0), Part(device="relay", count=1, va=240.0**2 / 500.0)),
        rated_v=240.0,
    )

    assert common_v(loads, 1e-6) / 1e-6 == pytest.approx(1.08, abs=0.0001)
