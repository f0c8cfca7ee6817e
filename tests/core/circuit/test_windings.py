"""What a sound unit is made of."""

import pytest

from core.circuit.windings import RATINGS_VA, SHARE, TAPS, estimate_rating, output_volts, typical_unit


def test_shares_are_whole() -> None:
    """Every unit has a size and a tap."""
    assert sum(SHARE.values()) == pytest.approx(1.0)
    assert sum(TAPS.values()) == pytest.approx(1.0)


@pytest.mark.parametrize("rated_va", RATINGS_VA)
def test_rated_volts_come_out_at_the_rated_load(rated_va: float) -> None:
    """That is what the nameplate says."""
    low, mid, high = output_volts(rated_va, 120, 120, rated_va, power_factor=1.0)

    assert low < mid < high
    assert mid == pytest.approx(24.0, rel=0.01)


def test_nothing_connected_gives_the_open_ratio() -> None:
    """No load, no loss."""
    assert output_volts(40, 208, 208, 0.0)[1] == pytest.approx(24.0 * typical_unit(40, 208).open_ratio[1])


def test_volts_follow_the_supply_and_the_tap() -> None:
    """208 V on a 240 V tap gives 86.7 %."""
    assert output_volts(40, 240, 208, 20)[1] / output_volts(40, 240, 240, 20)[1] == pytest.approx(208 / 240)


def test_more_load_less_volts() -> None:
    """Monotone in the load."""
    volts = [output_volts(40, 120, 120, va)[1] for va in (0, 10, 20, 40, 80, 400)]

    assert volts == sorted(volts, reverse=True)


@pytest.mark.parametrize("rated_va", RATINGS_VA)
def test_a_middling_unit_is_recognised(rated_va: float) -> None:
    """Its own size is among the two likeliest, and more so than without readings."""
    unit = typical_unit(rated_va, 120)
    odds = estimate_rating(unit.primary_ohm[1], unit.secondary_ohm[1] + 0.1, None, 120)

    assert sum(odds.values()) == pytest.approx(1.0)
    assert rated_va in sorted(odds, key=odds.get)[-3:]
    assert odds[rated_va] > SHARE[rated_va]


def test_without_readings_only_custom_speaks() -> None:
    """No reading, no news."""
    assert estimate_rating() == pytest.approx(SHARE)
