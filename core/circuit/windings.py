"""
What a sound small control transformer is made of, and what it gives at a load.

A small unit spends its copper so that the rated volts come out at the rated load. Everything follows from one number, the share of the
volts that is lost in copper at the rated load. It falls with size about as the square root of the VA: a 40 VA unit loses about 12 %, a
100 VA unit about 8 %, so they read 27 and 26 V with nothing connected.
"""

import math
from dataclasses import dataclass
from typing import Final

RATINGS_VA: Final = (20.0, 30.0, 40.0, 50.0, 60.0, 75.0, 100.0)
"""The sizes of the trade. Common practice, no source."""

SHARE: Final = {20.0: 0.09, 30.0: 0.06, 40.0: 0.40, 50.0: 0.16, 60.0: 0.05, 75.0: 0.17, 100.0: 0.07}
"""How often each size is met. Common practice, no source."""

TAPS: Final = {120.0: 0.40, 208.0: 0.14, 240.0: 0.28, 277.0: 0.06, 480.0: 0.12}
"""How often each primary is the one in use. Common practice, no source."""

PRIMARY_SHARE: Final = 0.054
"""Of the rated volts lost in the primary copper of a 40 VA unit: 19.5 ohm of 360 ohm. Common practice, no source."""
SECONDARY_SHARE: Final = 0.072
"""Of the rated volts lost in the secondary copper of a 40 VA unit: 1.04 ohm of 14.4 ohm. Common practice, no source."""
SIZE_POWER: Final = -0.45
"""How those shares fall with the VA; copper losses of similar shapes fall about with its square root."""
LEAKAGE_SHARE: Final = 0.35
"""Leakage reactance to winding resistance: side-by-side bobbins leak, but copper dominates below 100 VA."""
OHM_SPREAD: Final = 0.28
"""Standard deviation of the natural logarithm of either winding's ohms between makes."""
FULL_LOAD_SPREAD: Final = 0.022
"""Standard deviation of the volts at the rated load to the rated volts, between makes."""
BAND: Final = 1.645
"""Standard deviations that hold nine units of ten."""


@dataclass(frozen=True, slots=True, kw_only=True)
class TypicalUnit:
    """What nine of ten sound units lie in: (low, mid, high)."""

    primary_ohm: tuple[float, float, float]
    secondary_ohm: tuple[float, float, float]
    open_ratio: tuple[float, float, float]
    """Volts with nothing connected to rated volts, rated volts at the primary."""


def loss_shares(rated_va: float) -> tuple[float, float]:
    """
    Share of the rated volts that a middling unit loses in each winding at the rated load.

    Args:
        rated_va: Rating. [VA]

    Returns:
        Primary and secondary share. [-]

    >>> loss_shares(40.0)
    (0.054, 0.072)
    """
    size = (rated_va / 40.0) ** SIZE_POWER
    return PRIMARY_SHARE * size, SECONDARY_SHARE * size


def typical_unit(rated_va: float, tap_v: float, rated_secondary_v: float = 24.0) -> TypicalUnit:
    """
    What to expect of a sound unit on the bench.

    Args:
        rated_va: Rating. [VA]
        tap_v: Rated volts of the primary tap in use. [V]
        rated_secondary_v: Rated secondary volts. [V]

    Returns:
        Ohms of both windings at 20 degC and the open-circuit ratio, each (low, mid, high).

    >>> unit = typical_unit(40, 120)
    >>> [round(ohm, 1) for ohm in unit.primary_ohm]
    [12.3, 19.4, 30.8]
    >>> [round(24 * ratio, 1) for ratio in unit.open_ratio]
    [25.7, 27.0, 28.4]
    """
    primary, secondary = loss_shares(rated_va)
    spread = math.exp(BAND * OHM_SPREAD)
    primary_ohm = primary * tap_v**2 / rated_va
    secondary_ohm = secondary * rated_secondary_v**2 / rated_va
    mid, sway = _open_ratio(rated_va)
    return TypicalUnit(
        primary_ohm=(primary_ohm / spread, primary_ohm, primary_ohm * spread),
        secondary_ohm=(secondary_ohm / spread, secondary_ohm, secondary_ohm * spread),
        open_ratio=(mid - BAND * sway, mid, mid + BAND * sway),
    )


def _open_ratio(rated_va: float) -> tuple[float, float]:
    """Mid and standard deviation: full-load spread and that of the two windings' losses."""
    primary, secondary = loss_shares(rated_va)
    lost = primary + secondary
    mid = math.hypot(1.0 + lost, LEAKAGE_SHARE * lost)
    return mid, math.hypot(FULL_LOAD_SPREAD, OHM_SPREAD * math.hypot(primary, secondary))


def output_volts(
    rated_va: float,
    tap_v: float,
    supply_v: float,
    load_va: float,
    power_factor: float = 0.8,
    rated_secondary_v: float = 24.0,
) -> tuple[float, float, float]:
    """
    Secondary volts of a sound unit with a load on it, the load taken as an impedance at the rated secondary volts.

    Args:
        rated_va: Rating. [VA]
        tap_v: Rated volts of the tap in use. [V]
        supply_v: Volts at the primary. [V]
        load_va: What is connected; 0 for nothing. [VA]
        power_factor: Of the load, lagging. [-]
        rated_secondary_v: Rated secondary volts. [V]

    Returns:
        (low, mid, high) that hold nine units of ten. [V]

    >>> [round(v, 1) for v in output_volts(40, 120, 120, 40, power_factor=1.0)]
    [23.1, 24.0, 24.9]
    """
    scale = rated_secondary_v * supply_v / tap_v
    lost = sum(loss_shares(rated_va))
    used = load_va / rated_va

    def ratio(share: float) -> float:
        return math.hypot(1.0 + share, LEAKAGE_SHARE * share) * _divided(used * share, power_factor)

    mid = ratio(lost)
    # One winding's ohms hardly sway the other's, so the sum of the two sways by less than each.
    sway = 0.74 * OHM_SPREAD * lost
    by_ohms = (ratio(lost + sway) - ratio(lost - sway)) / 2.0
    band = BAND * math.hypot(FULL_LOAD_SPREAD * mid, by_ohms)
    return scale * (mid - band), scale * mid, scale * (mid + band)


def _divided(share: float, power_factor: float) -> float:
    """Volts left over a load of impedance 1 behind a winding impedance of that share."""
    reactive = math.sqrt(max(0.0, 1.0 - power_factor**2))
    return 1.0 / math.hypot(
        1.0 + share * (power_factor + LEAKAGE_SHARE * reactive), share * (LEAKAGE_SHARE * power_factor - reactive)
    )


def estimate_rating(
    primary_ohm: float | None = None,
    secondary_ohm: float | None = None,
    open_v: float | None = None,
    tap_v: float | None = None,
    rated_secondary_v: float = 24.0,
) -> dict[float, float]:
    """
    How big an unmarked unit is, from what can be read of it.

    Args:
        primary_ohm: Across the primary tap in use. [ohm]
        secondary_ohm: Across the secondary. [ohm]
        open_v: Secondary volts with nothing connected, rated volts at the primary. [V]
        tap_v: Rated volts of the tap that the ohms belong to; without it every tap of the trade is weighed. [V]
        rated_secondary_v: Rated secondary volts. [V]

    Returns:
        Probability of each size of `RATINGS_VA`.

    >>> odds = estimate_rating(primary_ohm=19.5, secondary_ohm=1.1, tap_v=120)
    >>> max(odds, key=odds.get)
    40.0
    """
    taps = {tap_v: 1.0} if tap_v else TAPS
    weight = {
        va: SHARE[va]
        * sum(share * _fit(va, tap, rated_secondary_v, primary_ohm, secondary_ohm, open_v) for tap, share in taps.items())
        for va in RATINGS_VA
    }
    total = sum(weight.values())
    return {va: w / total for va, w in weight.items()} if total > 0.0 else dict(SHARE)


def _fit(
    va: float,
    tap_v: float,
    rated_secondary_v: float,
    primary_ohm: float | None,
    secondary_ohm: float | None,
    open_v: float | None,
) -> float:
    """Likelihood of the readings; a hand meter on an ohm or two adds its own third (leads, counts)."""
    unit = typical_unit(va, tap_v, rated_secondary_v)
    score = 0.0
    if primary_ohm is not None and primary_ohm > 0.0:
        score += (math.log(primary_ohm / unit.primary_ohm[1]) / (1.1 * OHM_SPREAD)) ** 2
    if secondary_ohm is not None and secondary_ohm > 0.0:
        leads = 0.2 / max(secondary_ohm, 0.2)
        score += math.log(secondary_ohm / (unit.secondary_ohm[1] + 0.1)) ** 2 / (1.21 * OHM_SPREAD**2 + leads**2)
    if open_v is not None and open_v > 0.0:
        mid, sway = _open_ratio(va)
        score += ((open_v / rated_secondary_v - mid) / math.hypot(sway, 0.02)) ** 2
    return math.exp(-0.5 * min(score, 200.0))
