"""The fourth world's meters: each range is off by its own constant amount."""

from typing import Final

import numpy as np

from tests.benchmarks.fourth_world.winder import INF, pick

KINDS: Final = {"clamp": (4000, 0.012, 3, 4e7, 0.7), "trade": (6000, 0.009, 3, 6e7, 0.95), "old": (2000, 0.012, 4, 2e7, 0.4)}
"""Counts, accuracy, digits, top of the ohms, how often there is a low-impedance mode."""


class Meter:
    """One of three kinds met."""

    def __init__(self, rng: np.random.Generator) -> None:
        self.rng = rng
        kind = pick(rng, tuple(KINDS), (4, 4, 2))
        self.counts, self.accuracy, self.digits, self.top_ohm, low = KINDS[kind]
        if kind == "old" and rng.random() < 0.35:
            self.top_ohm = 2e6
        self.off: dict[tuple[str, float], float] = {}
        self.leads_ohm, self.is_zeroed = 0.05 + rng.gamma(2.0, 0.11), rng.random() < 0.5
        self.has_low_impedance = bool(rng.random() < low)
        self.amp_gain, self.step_a = 1 + rng.uniform(-0.025, 0.025), 0.02 if kind == "old" else 0.01

    def _gain(self, what: str, full: float) -> float:
        if (what, full) not in self.off:
            self.off[what, full] = 1 + self.rng.uniform(-self.accuracy, self.accuracy) * 0.9
        return self.off[what, full]

    def _full(self, value: float, first: float) -> float:
        while value >= first:
            first *= 10
        return first

    def volts(self, value: float) -> float:
        """As shown."""
        rng = self.rng
        full = self._full(value, self.counts / 1000)
        step = max(full / self.counts, 0.01)
        value = value * self._gain("v", full) * (1 + rng.uniform(-0.002, 0.002)) + rng.uniform(-1, 1) * self.digits * step * 0.8
        if value < 0.15:
            value = abs(value) + rng.exponential(0.012)
        return float(round(max(0.0, round(value / step) * step), 3))

    def ohms(self, value: float) -> float:
        """As shown, k and M mixed up now and then; `inf` over the range."""
        rng = self.rng
        value = value + self.leads_ohm * (rng.uniform(-0.1, 0.25) if self.is_zeroed else rng.uniform(0.95, 1.3))
        if value >= self.top_ohm:
            return INF
        full = self._full(value, self.counts / 10)
        step, far = full / self.counts, 4 if value > 4e6 else 1
        value = value * self._gain("r", full) * (1 + rng.uniform(-0.003, 0.003) * far) + rng.uniform(-1, 1) * 2 * step
        value = max(0.0, round(value / step) * step)
        if value >= 1000 and rng.random() < 0.01:
            value = value * 1000 if rng.random() >= 0.8 and value < 2e4 else value / 1000
        return float(round(value, 3))

    def amps(self, value: float) -> float:
        """By a clamp."""
        value = value * self.amp_gain + self.rng.uniform(-1, 1) * 3 * self.step_a * 0.6 + 0.002
        return float(round(max(0.0, round(value / self.step_a) * self.step_a), 3))
