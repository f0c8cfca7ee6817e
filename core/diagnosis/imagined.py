"""
A few hundred worlds that agree with what is known of a job: what would be read next, and what should have been read.

The fitted belief says how likely each finding is; these worlds say in volts and ohms what each finding would show here.
"""

from dataclasses import dataclass, replace
from functools import lru_cache
from typing import Final

import numpy as np

from core.circuit.plant import Floats, solve
from core.diagnosis.belief import Belief
from core.diagnosis.features import FACTS, T
from core.diagnosis.meter import OHMS, SEEN, Hand, M, connected_values, show, true_values
from core.diagnosis.worlds import NAMES, Counts, Pins, Worlds, draw

EACH: Final = 60
"""Worlds of each finding."""
USUAL_V: Final = 24.0
BLUR: Final = 0.12
"""How far a reading may be off in the logarithm before a world counts less. Wide: few worlds stand for all."""
FLOOR: Final = 0.02
"""What a world keeps against each reading that contradicts it."""
SAME: Final = 0.1
"""A finding can show a reading where one of its worlds is at least this like it."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Imagined:
    """Worlds with the readings that a decent meter shows in them."""

    worlds: Worlds
    shown: Floats
    """A row a world, a column a measure of `SEEN`."""
    facts: Floats
    """What the technician would answer when asked for a fact."""


@lru_cache(maxsize=32)
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
    facts = np.full((n, len(FACTS)), np.nan)
    facts[:, T["supply_volts"]] = w.supply_v
    facts[:, T["tap_volts"]] = w.circuit.tap_v
    facts[:, T["rated_va"]] = w.circuit.rated_va
    return Imagined(worlds=w, shown=shown, facts=facts)


def scaled(value: Floats) -> Floats:
    """Readings where distance means something: the logarithm, with open as the largest, a floor near nothing."""
    return np.where(
        np.isinf(value), np.where(OHMS, 24.0, 8.0), np.log(np.nan_to_num(value, nan=0.0, posinf=1.0) + np.where(OHMS, 0.3, 0.7))
    )


def likeness(imagined: Imagined, value: Floats) -> Floats:
    """
    How well each world agrees with the readings.

    Args:
        imagined: The worlds.
        value: One row of readings, `nan` where nothing was read.

    Returns:
        One weight a world, 0 to 1.
    """
    read = ~np.isnan(value)
    off = (scaled(imagined.shown)[:, read] - scaled(value[None, :])[:, read]) / (BLUR + 0.25 * OHMS[read])
    each = np.maximum(np.exp(-0.5 * off**2), FLOOR)
    each = np.where(np.isnan(imagined.shown[:, read]), FLOOR, each)
    return np.asarray(each.prod(axis=1), dtype=np.float64)


def weights(imagined: Imagined, belief: Belief, value: Floats) -> Floats:
    """
    Share of each world in what is believed now: each finding has its probability, its worlds share it by their likeness.

    Args:
        imagined: The worlds.
        belief: What is believed.
        value: One row of readings.

    Returns:
        One weight a world, together 1.
    """
    like = likeness(imagined, value).reshape(len(NAMES), EACH)
    inside = like / like.sum(axis=1, keepdims=True)
    return np.asarray((inside * belief.findings[:, None]).ravel(), dtype=np.float64)


def picked(weight: Floats, count: int) -> Counts:
    """Numbers of `count` worlds that stand for all, at even steps of the summed weight."""
    steps = (np.arange(count) + 0.5) / count
    return np.asarray(np.minimum(np.searchsorted(np.cumsum(weight), steps * weight.sum()), len(weight) - 1), dtype=np.intp)


def again(imagined: Imagined, measure: str, value: float, chosen: Counts) -> Floats:
    """
    What a second reading of the same measure would show: the same where the finding can show it at all, else what the world shows.

    Args:
        imagined: The worlds.
        measure: What is read again.
        value: The first reading.
        chosen: Worlds that stand for all.

    Returns:
        One reading a chosen world.
    """
    row = np.full(len(SEEN), np.nan)
    row[M[measure]] = value
    able = likeness(imagined, row).reshape(len(NAMES), EACH).max(axis=1) > SAME
    return np.where(able[imagined.worlds.finding[chosen]], value, imagined.shown[chosen, M[measure]])


def quantiles(values: Floats, weight: Floats, shares: tuple[float, ...]) -> tuple[float, ...]:
    """Weighted quantiles; `nan` where nothing has weight."""
    good = ~np.isnan(values)
    if not good.any() or weight[good].sum() <= 0.0:
        return tuple(float("nan") for _ in shares)
    order = np.argsort(values[good])
    summed = np.cumsum(weight[good][order])
    at = np.searchsorted(summed, np.array(shares) * summed[-1])
    return tuple(float(v) for v in values[good][order][np.minimum(at, len(order) - 1)])


def column(imagined: Imagined, measure: str) -> Floats:
    """What every world shows at one measure."""
    return imagined.shown[:, SEEN.index(measure)]
