"""Many simulated calls at once, each at a world of the plant: what is known so far, what can be asked, and what the answer is."""

from typing import Final

import numpy as np

from core.circuit.plant import solve
from core.diagnosis.features import FACTS, Evidence, T
from core.diagnosis.meter import OHMS, SEEN, Hand, M, connected_values, hands, show, true_values
from core.diagnosis.next_test import loss
from core.diagnosis.steps import ASKED_FACTS, STEPS, price
from core.diagnosis.worlds import NAMES, draw
from core.findings import FINDINGS
from core.standards.electrical_safety import LARGEST_240_V
from tests.benchmarks.fitting.talk import told

PRIOR: Final = np.sqrt(np.array([row.prior for row in FINDINGS.values()]))
LINE_SIDE_LIVE: Final = ("line_volts", "primary_volts", "primary_amps")
"""What nobody unqualified is sent to over 300 V."""
SEEN_COUNT: Final = len(SEEN)
FUSES: Final = [M["fuse_volts"], M["fuse_ohms"]]
OPENING: Final = (
    "secondary_volts",
    "primary_volts",
    "control_volts",
    "line_volts",
    "coil_volts",
    "primary_ohms",
    "secondary_ohms",
    "load_ohms",
    "fuse_volts",
)
OPENING_ODDS: Final = np.array([0.6, 0.5, 0.3, 0.2, 0.1, 0.1, 0.1, 0.07, 0.07])


class Calls:
    """A batch of calls. All that is chosen in them depends on what is known in them, never on the truth."""

    def __init__(self, rng: np.random.Generator, count: int) -> None:
        self.rng, self.count = rng, count
        self.worlds = w = draw(rng, rng.choice(len(NAMES), count, p=PRIOR / PRIOR.sum()))
        live = solve(w.circuit)
        self.true = true_values(rng, w, live)
        self.joined = connected_values(rng, w, self.true)
        self.hand = hands(rng, count)
        self.first = show(rng, w, self.hand, self.true, self.joined)
        # Volts are read again in the low-impedance mode.
        plain = Hand(**{name: getattr(self.hand, name) for name in Hand.__dataclass_fields__} | {"ghosts": np.zeros(count)})
        self.second = show(rng, w, plain, self.true, self.joined)
        self.answers, self.symptoms = told(rng, w)
        self.truth = np.full((count, len(FACTS)), np.nan)
        for name, volts_or_va in (
            ("supply_volts", w.supply_v),
            ("tap_volts", w.circuit.tap_v),
            ("rated_va", w.circuit.rated_va),
        ):
            self.truth[:, T[name]] = volts_or_va
        self.unfused = ~w.fused | (rng.random(count) < 0.03)
        self.is_barred = rng.random(count) < 0.5
        self._nothing_known()

    def _nothing_known(self) -> None:
        n = self.count
        self.value = np.full((n, SEEN_COUNT), np.nan)
        self.confirmed, self.connected, self.low = (np.zeros((n, SEEN_COUNT), dtype=bool) for _ in range(3))
        self.times = np.zeros((n, SEEN_COUNT), dtype=int)
        self.no_fuse = np.zeros(n, dtype=bool)
        self.facts = self.answers.copy()
        self.refused = np.zeros((n, SEEN_COUNT + len(FACTS)), dtype=bool)
        self.last = np.full(n, -1)

    def open(self) -> None:
        """What the first message brings: little, or a heap of readings."""
        rng, n = self.rng, self.count
        order = [M[name] for name in OPENING]
        odds = np.zeros((n, SEEN_COUNT))
        odds[:, order] = OPENING_ODDS * rng.choice([0.0, 0.6, 1.0, 1.6], n)[:, None]
        heap = rng.random(n) < 0.2
        share = rng.beta(1.0, 2.0, n)[:, None] * np.exp(rng.normal(0, 0.9, (n, SEEN_COUNT)))
        odds[heap] = share[heap]
        mask = rng.random((n, SEEN_COUNT)) < odds
        for column in rng.permutation(SEEN_COUNT):
            self.take(np.where(mask[:, column], column, -1))
        # What is sent unasked is sometimes what was read twice.
        for column in np.flatnonzero(OHMS):
            self.take(np.where(mask[:, column] & (rng.random(n) < 0.1), SEEN_COUNT + column, -1))

    def evidence(self, rows: np.ndarray) -> Evidence:
        """What is known in some of the calls, as the engine is told it."""
        return Evidence(
            value=self.value[rows], confirmed=self.confirmed[rows], connected=self.connected[rows], low_impedance=self.low[rows],
            unfused=self.no_fuse[rows, None] * 1.0, facts=self.facts[rows], symptoms=self.symptoms[rows],
        )  # fmt: skip

    def possible(self, rows: np.ndarray) -> np.ndarray:
        """Which steps can be asked for."""
        value, facts, times = self.value[rows], self.facts[rows], self.times[rows]
        told = [facts[:, T["supply_volts"]], facts[:, T["tap_volts"]], value[:, M["line_volts"]], value[:, M["primary_volts"]]]
        high = np.max([np.nan_to_num(column) for column in told], axis=0)
        refused = self.refused[rows]
        barred = refused[:, :SEEN_COUNT].copy()
        barred[:, [M[name] for name in LINE_SIDE_LIVE]] |= (self.is_barred[rows] & (high > LARGEST_240_V))[:, None]
        unread = np.isnan(value) & ~barred
        unread[:, FUSES] &= ~self.no_fuse[rows, None]
        again = (times == 1) & ~barred & ~self.confirmed[rows]
        asked = [np.isnan(facts[:, T[name]]) & ~refused[:, SEEN_COUNT + T[name]] for name in ASKED_FACTS]
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
                knows = self.rng.random(len(rows)) < 0.85
                self.facts[rows[knows], T[step.fact]] = self.truth[rows[knows], T[step.fact]]
                self.refused[rows[~knows], SEEN_COUNT + T[step.fact]] = True
            else:
                self._read(rows, number % SEEN_COUNT, again=step.again)

    def _read(self, rows: np.ndarray, column: int, *, again: bool) -> None:
        if column in FUSES:
            none = self.unfused[rows] | np.isnan(self.first.value[rows, column])
            self.no_fuse[rows[none]] = True
            rows = rows[~none]
        shown = self.second if again else self.first
        before, now = self.value[rows, column], shown.value[rows, column]
        with np.errstate(all="ignore"):
            alike = (before == now) | (
                np.isfinite(before) & np.isfinite(now) & (np.abs(np.log((now + 0.5) / (before + 0.5))) < 0.1)
            )
        self.confirmed[rows, column] = alike
        self.value[rows, column] = now
        self.connected[rows, column] = shown.told_connected[rows, column]
        self.low[rows, column] = shown.low_impedance[rows, column] | (again and not OHMS[column])
        self.times[rows, column] += 1
        self.last[rows] = column


def at_stake(findings: np.ndarray, short: np.ndarray) -> np.ndarray:
    """The loss of the best decision."""
    return loss(findings.astype(float), short.astype(float))
