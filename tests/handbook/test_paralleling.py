"""Windings in parallel, phase and frequency against worked examples."""

import pytest

from core.circuit.windings import output_volts
from core.sizing.paralleling import circulating_a, phase_test_volts
from core.standards.transformer_ratings import volts_at_hertz


def test_unequal_windings_in_parallel_drive_over_four_times_the_rating() -> None:
    """6.3 V with 0.2 ohm on 5 V with 0.15 ohm, 0.885 A rated: 3.71 A, 420 %. I. Kosow, Electric Machinery and Transformers, Ex. 14-32."""
    amps = circulating_a(6.3, 5.0, 0.2 + 0.15)

    assert amps == pytest.approx(3.71, abs=0.005)
    assert amps / 0.885 == pytest.approx(4.20, abs=0.005)


@pytest.mark.parametrize(("first", "second", "apart", "together"), [(120.0, 240.0, 120.0, 360.0), (120.0, 12.0, 108.0, 132.0)])
def test_two_windings_read_their_difference_or_their_sum(first: float, second: float, apart: float, together: float) -> None:
    """Motiratech elec-d-0526 (360 V aiding, 120 V opposing); the polarity test of USBR FIST, p. 25, on 2300/230 V with 120 V."""
    assert phase_test_volts(first, second) == (apart, together)


def test_a_400_hertz_unit_is_good_for_33_volts_on_60() -> None:
    """220/110 V, 1 kVA at 400 Hz: 33 V and 16.5 V, 0.15 kVA. I. Kosow, Ex. 14-9, p. 500."""
    assert volts_at_hertz(220.0, 400.0, 60.0) == pytest.approx(33.0)
    assert volts_at_hertz(110.0, 400.0, 60.0) == pytest.approx(16.5)
    assert volts_at_hertz(1.0, 400.0, 60.0) == pytest.approx(0.15)


def test_a_textbook_unit_lies_within_our_regulation() -> None:
    """27.3 V open, 24 V at full load, unity: 13.75 %. G. McPherson, Electrical Machines and Transformers, Ex. 1.7, p. 10."""
    low, _, high = output_volts(40.0, 120.0, 120.0, 0.0)
    loaded_low, _, loaded_high = output_volts(40.0, 120.0, 120.0, 40.0, power_factor=1.0)

    assert low < 27.3 < high
    assert loaded_low < 24.0 < loaded_high
    assert pytest.approx(0.1375) == (27.3 - 24.0) / 24.0
