"""Designs the fourth world's transformers from iron and copper, and hangs devices on them."""

import math
from collections.abc import Sequence
from dataclasses import dataclass
from typing import Final, TypeVar

import numpy as np

RHO20: Final = 1 / 58e6
"""Copper at 20 degC, the standard of annealed copper. [ohm m]"""
INF: Final = math.inf
WARM: Final = 1 + 0.00393 * 40
Any = TypeVar("Any")


def pick(rng: np.random.Generator, options: Sequence[Any], weights: Sequence[float]) -> Any:
    """One of them by weight."""
    left = rng.random() * sum(weights)
    for option, weight in zip(options, weights, strict=True):
        left -= weight
        if left <= 0:
            return option
    return options[-1]


def even_in_log(rng: np.random.Generator, low: float, high: float) -> float:
    """Even in the logarithm."""
    return float(low * (high / low) ** rng.random())


def beside(*ohms: float) -> float:
    """Resistors in parallel."""
    if any(ohm == 0 for ohm in ohms):
        return 0.0
    siemens = sum(1 / ohm for ohm in ohms if ohm != INF)
    return INF if siemens == 0 else 1 / siemens


@dataclass(frozen=True)
class Wound:
    """A transformer as it was wound; ohms at 20 degC."""

    primary_ohm: dict[float, float]
    """Up to each tap."""
    secondary_ohm: float
    home: float
    """The tap that the rest belongs to. [V]"""
    primary_x: float
    secondary_x: float
    watts: float
    vars: float
    bend: float
    turns: float
    """Of the secondary, in volts at rated flux."""


def wind(rng: np.random.Generator, va: float, taps: tuple[float, ...]) -> Wound:
    """One wire for each tap section, later ones on longer turns; rated volts at rated load."""
    section = rng.uniform(0.72, 0.95) * math.sqrt(va) * 1e-4
    per_turn = 4.44 * 60 * rng.uniform(1.25, 1.55) * section * 0.94
    turn = 5.2 * math.sqrt(section) + rng.uniform(0.020, 0.035)
    density = rng.uniform(3.3, 4.6) * 1e6 * (40 / va) ** 0.06
    is_proper = rng.random() < 0.7
    ohm, rows, last, growth = 0.0, {}, 0.0, 1.0
    for tap in taps:
        amps = va * 1.12 / (tap if is_proper else math.sqrt(tap * math.sqrt(taps[0] * taps[-1])))
        ohm += RHO20 * turn * growth * (tap - last) / per_turn * density / amps
        growth += rng.uniform(0.05, 0.16)
        rows[tap], last = ohm, tap
    secondary = RHO20 * turn * growth * (26.5 / per_turn) * density * rng.uniform(0.85, 1.2) / (va / 24)
    home = taps[int(rng.integers(len(taps)))]
    base1, base2 = home * home / va, 576 / va
    # Between 10 and 20 % are lost at the rated load, whatever was drawn.
    total = 1.2 * (1.25 * rows[home] / base1 + secondary / base2)
    lost = min(max(total, 0.105 if va >= 75 else 0.125), 0.20)
    rows, secondary = {tap: value * lost / total for tap, value in rows.items()}, secondary * lost / total
    x = rng.uniform(0.05, 0.35) * lost
    watts = rng.uniform(0.035, 0.075) * va * (40 / va) ** 0.2 + rng.uniform(0.2, 0.8)
    var, bend = rng.uniform(0.09, 0.26) * va, rng.uniform(2.6, 4.4)
    z1, z2 = complex(rows[home] * WARM, x * base1 / 2), complex(secondary * WARM, x * base2 / 2)
    turns = 27.0
    for _ in range(4):
        y = complex(watts, -var) + turns * turns / (z2 + base2)
        turns *= 24.0 / abs(home / (home + z1 * y / home) * turns * base2 / (z2 + base2))
    return Wound(rows, secondary, home, x * base1 / 2, x * base2 / 2, watts, var, bend, turns * rng.uniform(0.988, 1.012))


@dataclass(frozen=True)
class Device:
    """One on the control circuit."""

    name: str
    va: float
    z: complex
    dc_ohm: float

    @property
    def is_always_on(self) -> bool:
        """Without a call."""
        return self.name in {"board", "stat"}


CATALOGUE: Final = (
    ("board", 3, 9, 0.9), ("stat", 1, 3, 0.9), ("contactor", 6, 12, 0.45), ("relay", 3, 6, 0.6), ("valve", 8, 15, 0.5), ("gas", 7, 14, 0.6),
    ("damper", 4, 9, 0.8), ("humidifier", 6, 12, 0.6),
)  # fmt: skip
"""Name, least and most VA, power factor. Common practice, no source."""
ELECTRONIC: Final = {"board", "stat", "damper"}
MOST: Final = 9


def devices(rng: np.random.Generator, va: float, share: float) -> list[Device]:
    """Up to a share of the rating."""
    rows = [CATALOGUE[0]] if rng.random() < 0.7 else []
    rows += [CATALOGUE[1]] if rng.random() < 0.6 else []
    rows.append(CATALOGUE[2])
    while len(rows) < MOST and sum((low + high) / 2 for _, low, high, _ in rows) < share * va * 0.9:
        rows.append(CATALOGUE[int(rng.integers(3, len(CATALOGUE)))])
    drawn = np.array([rng.uniform(low, high) for _, low, high, _ in rows])
    drawn *= share * va / drawn.sum()
    out = []
    for (name, _, _, usual), each in zip(rows, drawn, strict=True):
        factor = min(1.0, usual * rng.uniform(0.85, 1.1))
        z = 576 / each * complex(factor, math.sqrt(1 - factor * factor))
        dc = even_in_log(rng, 400, 2e4) if name in ELECTRONIC else abs(z) * rng.uniform(0.13, 0.30)
        out.append(Device(name, float(each), z, dc))
    return out
