"""
A few hundred worlds that agree with what is known of a job: what should have been read.

The fitted belief says how likely each finding is; these worlds say in volts and ohms what each finding would show here.
"""

from dataclasses import dataclass, replace
from functools import lru_cache
from typing import Final

import numpy as np

from core.circuit.plant import Floats, solve
from core.diagnosis.meter import OHMS, Hand, connected_values, show, true_values
from core.diagnosis.worlds import NAMES, Counts, Pins, draw

EACH: Final = 40
"""Worlds of each finding."""
KEPT: Final = 128
"""As many nameplates and buildings are kept: few differ."""
USUAL_V: Final = 24.0
BLUR: Final = 0.12
"""How far a reading may be off in the logarithm before a world counts less. Wide: few worlds stand for all."""
FLOOR: Final = 0.02
"""What a world keeps against each reading that contradicts it."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Imagined:
    """Worlds with the readings that a decent meter shows in them."""

    finding: Counts
    shown: Floats
    """A row a world, a column a measure of `SEEN`."""
    scaled: Floats
    """The same where distance means something."""


@lru_cache(maxsize=KEPT)
def imagine(pins: Pins) -> Imagined:
    """
    Worlds of every finding, drawn from a fixed seed.

    Args:
        pins: What the nameplate and the building say.

    Returns:
        The worlds.
    """
    rng = np.random.default_rng(5)
    # A few worlds stand for all: a 12 V unit that nobody spoke of would stand for too many.
    pins = replace(pins, rated_secondary_v=pins.rated_secondary_v or USUAL_V)
    n = EACH * len(NAMES)
    w = draw(rng, np.repeat(np.arange(len(NAMES)), EACH), pins)
    true = true_values(rng, w, solve(w.circuit))
    even = np.ones(n)
    hand = Hand(
        slip=0.0 * even, forgets=0.0 * even, accuracy=0.007 * even, lead_ohm=0.2 * even, range_ohm=2e7 * even, amps=0.01 * even,
        ghosts=0.15 * even,
    )  # fmt: skip
    shown = show(rng, w, hand, true, connected_values(rng, w, true)).value
    return Imagined(finding=w.finding, shown=shown, scaled=scaled(shown))


def scaled(value: Floats) -> Floats:
    """Readings where distance means something: the logarithm, with open as the largest, a floor near nothing."""
    return np.where(
        np.isinf(value), np.where(OHMS, 24.0, 8.0), np.log(np.nan_to_num(value, nan=0.0, posinf=1.0) + np.where(OHMS, 0.3, 0.7))
    )


def likeness(imagined: Imagined, value: Floats, columns: Counts) -> Floats:
    """
    How well each world agrees with each reading.

    Args:
        imagined: The worlds.
        value: One row of readings.
        columns: Numbers of the measures that were read.

    Returns:
        A row a world, a column a reading, `FLOOR` to 1.
    """
    off = (imagined.scaled[:, columns] - scaled(value)[columns]) / (BLUR + 0.25 * OHMS[columns])
    like = np.maximum(np.exp(-0.5 * off**2), FLOOR)
    return np.asarray(np.where(np.isnan(imagined.shown[:, columns]), FLOOR, like), dtype=np.float64)


def quantiles(values: Floats, weight: Floats, shares: tuple[float, ...]) -> tuple[float, ...]:
    """Weighted quantiles; `nan` where nothing has weight."""
    good = ~np.isnan(values)
    if not good.any() or weight[good].sum() <= 0.0:
        return tuple(float("nan") for _ in shares)
    order = np.argsort(values[good])
    summed = np.cumsum(weight[good][order])
    at = np.searchsorted(summed, np.array(shares) * summed[-1])
    return tuple(float(v) for v in values[good][order][np.minimum(at, len(order) - 1)])
