"""Many simulated calls at once, each at a unit of some world: what is known so far, what can be asked, and what the answer is."""

from typing import Final

import numpy as np

from core.diagnosis.features import FACTS, Evidence, T
from core.diagnosis.meter import OHMS, SEEN, M
from core.diagnosis.next_test import NEAR_ENOUGH, loss
from core.diagnosis.steps import ASKED_FACTS, STEPS, price
from core.diagnosis.worlds import SUPPLIES
from core.standards.electrical_safety import LARGEST_240_V
from tests.benchmarks.fitting.bank import Bank

LINE_SIDE_LIVE: Final = [M[name] for name in ("line_volts", "primary_volts", "primary_amps")]
"""What nobody unqualified is sent to over 300 V."""
SEEN_COUNT: Final = len(SEEN)
FUSES: Final = [M["fuse_volts"], M["fuse_ohms"]]
HEAP: Final = 0.25
"""How often the first message brings readings of any kind, few or many."""


class Calls:
    """A batch of calls. All that is chosen in them depends on what is known in them, never on the truth."""

    def __init__(self, rng: np.random.Generator, units: Bank) -> None:
        self.rng, self.units, self.count = rng, units, len(units)
        n = self.count
        self.is_barred = rng.random(n) < 0.3
        self.value = np.full((n, SEEN_COUNT), np.nan)
        self.confirmed, self.connected, self.low = (np.zeros((n, SEEN_COUNT), dtype=bool) for _ in range(3))
        self.times = np.zeros((n, SEEN_COUNT), dtype=int)
        self.no_fuse = np.zeros(n, dtype=bool)
        self.facts = units.told.astype(float)
        self.refused = np.zeros((n, SEEN_COUNT + len(FACTS)), dtype=bool)
        self.last = np.full(n, -1)

    def open(self) -> None:
        """What the first message brings: little, or a heap of readings."""
        rng, n = self.rng, self.count
        mask = self.units.opening.copy()
        heap = rng.random(n) < HEAP
        share = rng.beta(1.0, 2.0, n)[:, None] * np.exp(rng.normal(0, 0.9, (n, SEEN_COUNT)))
        mask[heap] = (rng.random(mask.shape) < share)[heap]
        for column in rng.permutation(SEEN_COUNT):
            self.take(np.where(mask[:, column] & ~np.isnan(self.units.first[:, column]), column, -1))
        # What is sent unasked is sometimes what was read twice.
        for column in np.flatnonzero(OHMS):
            self.take(np.where(mask[:, column] & heap & (rng.random(n) < 0.15), SEEN_COUNT + column, -1))

    def evidence(self, rows: np.ndarray) -> Evidence:
        """What is known in some of the calls, as the engine is told it."""
        return Evidence(
            value=self.value[rows], confirmed=self.confirmed[rows], connected=self.connected[rows], low_impedance=self.low[rows],
            unfused=self.no_fuse[rows, None] * 1.0, facts=self.facts[rows], symptoms=self.units.symptoms[rows],
        )  # fmt: skip

    def possible(self, rows: np.ndarray) -> np.ndarray:
        """Which steps can be asked for."""
        value, facts, times = self.value[rows], self.facts[rows], self.times[rows]
        told = [facts[:, T["supply_volts"]], facts[:, T["tap_volts"]], value[:, M["line_volts"]], value[:, M["primary_volts"]]]
        high = np.max([np.nan_to_num(column) for column in told], axis=0)
        refused = self.refused[rows]
        barred = refused[:, :SEEN_COUNT].copy()
        barred[:, LINE_SIDE_LIVE] |= (self.is_barred[rows] & (high > LARGEST_240_V))[:, None]
        unread = np.isnan(value) & ~barred
        unread[:, FUSES] &= ~self.no_fuse[rows, None]
        again = (times == 1) & ~barred & ~self.confirmed[rows]
        line = value[:, [M["line_volts"], M["primary_volts"]], None]
        is_read = (np.abs(line / np.array(SUPPLIES) - 1.0) < NEAR_ENOUGH).any(axis=(1, 2))
        asked = [
            np.isnan(facts[:, T[name]]) & ~refused[:, SEEN_COUNT + T[name]] & ~(is_read & (name == "supply_volts"))
            for name in ASKED_FACTS
        ]
        return np.concatenate([unread, again, np.column_stack(asked)], axis=1)

    def prices(self, rows: np.ndarray) -> np.ndarray:
        """What each step costs."""
        return price(self.last[rows], self.times[rows].sum(axis=1))

    def take(self, chosen: np.ndarray) -> None:
        """Each call takes the step of its number; -1 takes none."""
        for number in np.unique(chosen[chosen >= 0]):
            rows = np.flatnonzero(chosen == number)
            step = STEPS[number]
            if step.fact is not None:
                answer = self.units.known[rows, T[step.fact]]
                knows = ~np.isnan(answer)
                self.facts[rows[knows], T[step.fact]] = answer[knows]
                self.refused[rows[~knows], SEEN_COUNT + T[step.fact]] = True
            else:
                self._read(rows, number % SEEN_COUNT, again=step.again)

    def _read(self, rows: np.ndarray, column: int, *, again: bool) -> None:
        answer = (self.units.second if again else self.units.first)[rows, column]
        cannot = rows[np.isnan(answer)]
        self.refused[cannot, column] = True
        if column in FUSES:
            self.no_fuse[cannot] = True
        rows, now = rows[~np.isnan(answer)], answer[~np.isnan(answer)].astype(float)
        before = self.value[rows, column]
        with np.errstate(all="ignore"):
            alike = (before == now) | (
                np.isfinite(before) & np.isfinite(now) & (np.abs(np.log((now + 0.5) / (before + 0.5))) < 0.1)
            )
        self.confirmed[rows, column] = alike
        self.value[rows, column] = now
        self.connected[rows, column] = self.units.connected[rows, int(again), column]
        self.low[rows, column] = self.units.low[rows, int(again), column]
        self.times[rows, column] += 1
        self.last[rows] = column


def at_stake(findings: np.ndarray, short: np.ndarray) -> np.ndarray:
    """The loss of the best decision."""
    return loss(findings.astype(float), short.astype(float))
