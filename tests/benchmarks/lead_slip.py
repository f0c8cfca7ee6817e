"""The bench's one way to read wrong, and what may stand behind a value that was read wrong."""

import math
from functools import cache

import numpy as np

LEAST = 0.2
"""Natural logarithm by which a wrong value is off at least."""
ANYTHING = (-1.0, 6.0)
"""Natural logarithm of ohms between which a value out of nowhere lies."""
GRID_OHM = 0.1


def slip(rng, seen):
    """One finite reading mistyped by a fifth or more, and which."""
    finite = [p for p, v in seen.items() if v != "open"]
    p = finite[rng.integers(len(finite))]
    value = seen[p]
    while abs(math.log(value / seen[p])) < LEAST:
        way = rng.integers(4)
        digits = f"{seen[p]:.1f}"
        if way == 0:
            value = seen[p] * 10
        elif way == 1:
            value = max(0.1, seen[p] / 10)
        elif way == 2:
            at = rng.integers(len(digits) - 2) if len(digits) > 3 else 0
            value = float(digits[:at] + str(rng.integers(1, 10)) + digits[at + 1 :])
        else:
            value = float(np.exp(rng.uniform(*ANYTHING)))
        value = max(0.1, round(value, 1))
    return {**seen, p: value}, p


@cache
def sources(value):
    """(what was to be read, chance that it became this value by a slipped point or digit) for each that may have."""
    tenths = round(value * 10)
    rows = [(tenths / 100.0, 0.25)] if tenths % 10 == 0 else []
    rows += [(near / 10.0, 0.25) for near in range(10 * tenths - 5, 10 * tenths + 6) if round(near / 100.0, 1) == tenths / 10.0]
    digits = f"{value:.1f}"
    places = range(len(digits) - 2) if len(digits) > 3 else (0,)
    for at in places:
        if digits[at] != "0":
            others = [float(digits[:at] + d + digits[at + 1 :]) for d in "0123456789"]
            rows += [(x, 0.25 / 9.0 / len(places)) for x in others if len(f"{x:.1f}") == len(digits)]
    return tuple((x, p / _told(x)) for x, p in rows if x >= GRID_OHM and abs(math.log(value / x)) >= LEAST)


def out_of_nowhere(value):
    """Density [1/ohm] of a value that has nothing to do with what was to be read."""
    low, high = ANYTHING
    return 0.25 / 0.85 / (high - low) / value if low <= math.log(value) <= high else 0.0


@cache
def _told(ohm):
    """Chance that one try at a wrong value is off far enough to count."""
    digits = f"{ohm:.1f}"
    places = range(len(digits) - 2) if len(digits) > 3 else (0,)
    changed = [float(digits[:at] + d + digits[at + 1 :]) for at in places for d in "123456789"]
    far = sum(abs(math.log(max(x, GRID_OHM) / ohm)) >= LEAST for x in changed) / len(changed)
    low, high = ANYTHING
    inside = max(0.0, min(high, math.log(ohm) + LEAST) - max(low, math.log(ohm) - LEAST)) / (high - low)
    tenth = abs(math.log(max(GRID_OHM, round(ohm / 10.0, 1)) / ohm)) >= LEAST
    return 0.25 * (1.0 + tenth + far + 1.0 - inside)
