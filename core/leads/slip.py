"""How a reading goes wrong: a point slips, a digit is another, or the value has nothing to do with what was to be read."""

from collections.abc import Sequence
from functools import lru_cache
from typing import Final

import numpy as np

from core.leads.meter import MOST_OHM, slip_density
from core.leads.section_fit import Floats, Indices

POINT: Final = 0.24
"""Share of wrong readings that are ten times too high, and as many ten times too low. Common practice, no source."""
DIGIT: Final = 0.22
"""Share with one digit that is another. Common practice, no source."""
ANYTHING: Final = 1.0 - 2.0 * POINT - DIGIT
_LEAST_OHM: Final = 0.05
_ROOT: Final = np.sqrt(2.0 * np.pi)
_SHARPEST: Final = 0.01


def log_density(ohm: Sequence[float], which: Indices, due: Floats, log_spread: Floats) -> Floats:
    """
    How likely wrong readings are, where the others foretell what was to be read.

    Args:
        ohm: As read, of each pair. [ohm]
        which: Rows: the pair that each takes for wrong.
        due: Rows: what was to be read there. [ohm]
        log_spread: Rows: standard deviation of its natural logarithm.

    Returns:
        Natural logarithm of the density of what was read. [1/ohm]
    """
    rows = [_meant(float(v)) for v in ohm]
    most = max(len(values) for values, _ in rows)
    meant, share = np.ones((len(rows), most)), np.zeros((len(rows), most))
    for i, (values, shares) in enumerate(rows):
        meant[i, : len(values)], share[i, : len(values)] = values, shares
    spread = np.maximum(log_spread, _SHARPEST)[:, None]
    value = meant[which]
    off = (np.log(value) - np.log(np.maximum(due, _LEAST_OHM))[:, None]) / spread
    near = (share[which] * np.exp(-0.5 * off**2) / (value * spread * _ROOT)).sum(axis=1)
    anything = ANYTHING * np.array([slip_density(float(v)) for v in ohm])
    density: Floats = np.log(near + anything[which])
    return density


@lru_cache(maxsize=512)
def _meant(ohm: float) -> tuple[tuple[float, ...], tuple[float, ...]]:
    """What may have been meant by a value, and the share of each, per ohm of what was read."""
    digits = f"{ohm:g}"
    places = [i for i, d in enumerate(digits) if d.isdigit()]
    others = [(i, d) for i in places for d in "0123456789" if d != digits[i]]
    changed = [float(digits[:i] + d + digits[i + 1 :]) for i, d in others]
    rows = [(ohm / 10.0, POINT / 10.0), (ohm * 10.0, POINT * 10.0), *((x, DIGIT / len(others)) for x in changed)]
    kept = [row for row in rows if _LEAST_OHM <= row[0] <= MOST_OHM] or [(ohm, 0.0)]
    return tuple(x for x, _ in kept), tuple(share for _, share in kept)
