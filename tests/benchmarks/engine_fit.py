"""
Fits the belief of `core.diagnosis` and the worth of each step on worlds of its own plant; writes `core/diagnosis/belief.npy` and `worth.npy`.

    python -m tests.benchmarks.engine_fit --rounds 3000

Every round draws new worlds, new meters and new technicians, and lets the engine that is being fitted hold the calls, with many steps at random: so
nothing is seen twice, nothing can be learned by heart, and it is fitted where it will be used. What comes out is a probability because the loss is
its logarithm. The worth of a step is what it takes from the loss at stake and what the best steps after it will take, less what those cost, learned
from the calls held. Reproducible by its seed.
"""

import argparse
import time
from dataclasses import dataclass, field
from pathlib import Path

import numpy as np

from core.diagnosis.features import encode
from core.diagnosis.network import SIZES, Name, Network, believe, forward, pack, unpack
from tests.benchmarks.fitting.calls import Calls, at_stake
from tests.benchmarks.fitting.descent import Fit, fit_belief, fit_worth

HOME = Path(__file__).parents[2] / "core" / "diagnosis"
LONGEST = 12
"""Steps of a call."""
AT_RANDOM = 0.3
GOES_ON = 0.6
"""Chance that a call goes on where no step is worth its cost."""
BATCH = 2048


@dataclass
class State:
    """Some calls at one moment."""

    rows: np.ndarray
    x: np.ndarray
    finding: np.ndarray
    short: np.ndarray
    stake: np.ndarray
    """Loss of deciding now."""
    best: np.ndarray
    """What the best step would take from it; 0 where none is worth its cost."""
    step: np.ndarray = field(default_factory=lambda: np.empty(0))
    worth: np.ndarray = field(default_factory=lambda: np.empty(0))

    def __post_init__(self) -> None:
        """A call that ends takes no step, and that is worth nothing."""
        self.worth = np.zeros(len(self.rows), dtype=np.float32)

    def learned(self, after: "State") -> None:
        """What the steps taken here were worth, seen from the state after them."""
        took = self.step >= 0
        self.worth[took] = self.stake[took] - after.stake + after.best


class Engine:
    """Both networks on their way."""

    def __init__(self, seed: int, calls: int, start: dict[Name, Network | None]) -> None:
        self.rng = np.random.default_rng(seed)
        self.calls = calls
        self.belief = Fit(self.rng, SIZES["belief"], start["belief"])
        self.worth = Fit(self.rng, SIZES["worth"], start["worth"])
        self.is_new = start["worth"] is None
        self.warm = 150 if start["belief"] is None else 0

    def held(self) -> dict[str, np.ndarray]:
        """Every state of a batch of calls: inputs, truth, the step taken and what it was worth."""
        rng, c = self.rng, Calls(self.rng, self.calls)
        c.open()
        states: list[State] = []
        going = np.arange(self.calls)
        for number in range(LONGEST + 1):
            state, value = self._state(c, going)
            if states:
                states[-1].learned(state)
            states.append(state)
            goes_on = (state.best > 0.0) | (rng.random(len(going)) < GOES_ON)
            state.step = np.where(goes_on & (number < LONGEST), self._chosen(value), -1)
            going = going[state.step >= 0]
            c.take(_spread(state, self.calls))
        return {
            name: np.concatenate([getattr(state, name) for state in states])
            for name in ("x", "step", "finding", "short", "worth")
        }

    def _state(self, c: Calls, going: np.ndarray) -> tuple["State", np.ndarray]:
        x = encode(c.evidence(going))
        value = forward(x, self.worth.averaged) - c.prices(going)
        value = np.where(c.possible(going), value, -np.inf)
        state = State(
            rows=going,
            x=x,
            finding=c.worlds.finding[going],
            short=c.worlds.short[going],
            stake=at_stake(*believe(x, self.belief.averaged)),
            best=np.maximum(value.max(axis=1), 0.0),
        )
        return state, value

    def _chosen(self, value: np.ndarray) -> np.ndarray:
        rng, shape, possible = self.rng, value.shape, np.isfinite(value)
        at_random = np.argmax(np.where(possible, rng.random(shape), -1.0), axis=1)
        lively = np.argmax(value + 0.04 * rng.gumbel(size=shape), axis=1)
        kind = rng.random(len(value))
        chosen = np.where(kind < AT_RANDOM, at_random, np.where(kind < 2 * AT_RANDOM, lively, np.argmax(value, axis=1)))
        return np.where(possible.any(axis=1), chosen, -1)

    def round(self, rate: float) -> tuple[float, float]:
        """One batch of calls, and the steps down on it."""
        got = self.held()
        # The states of one call are much alike: half of them say nearly as much as all.
        order = self.rng.permutation(len(got["step"]))[: len(got["step"]) // 2]
        losses = []
        for rows in np.array_split(order, max(1, len(order) // BATCH)):
            x, step = got["x"][rows], got["step"][rows]
            one = fit_belief(self.belief, x, got["finding"][rows], got["short"][rows], rate)
            took = step >= 0
            two = 0.0
            if self.warm == 0 and took.any():
                two = fit_worth(self.worth, x[took], step[took], got["worth"][rows][took].astype(np.float32), rate)
            losses.append((one, two))
        self.warm = max(0, self.warm - 1)
        return tuple(np.mean(losses, axis=0))


def _spread(state: State, calls: int) -> np.ndarray:
    """The step of every call, -1 for those that have ended."""
    steps = np.full(calls, -1)
    steps[state.rows] = state.step
    return steps


def main() -> None:
    """Fit and write."""
    ask = argparse.ArgumentParser(description=__doc__)
    ask.add_argument("--rounds", type=int, default=3000)
    ask.add_argument("--calls", type=int, default=1024, help="calls a round")
    ask.add_argument("--rate", type=float, default=1.5e-3)
    ask.add_argument("--seed", type=int, default=1)
    ask.add_argument("--out", type=Path, default=HOME)
    ask.add_argument("--go-on", type=Path, help="start from what stands in this folder")
    told = ask.parse_args()
    start: dict[Name, Network | None] = {"belief": None, "worth": None}
    if told.go_on is not None:
        start = {name: unpack(np.load(told.go_on / f"{name}.npy"), SIZES[name]) for name in start}
    engine = Engine(told.seed, told.calls, start)
    began, mean = time.process_time(), np.zeros(2)
    for number in range(told.rounds):
        rate = told.rate * 0.5 * (1 + np.cos(np.pi * number / told.rounds)) * min(1.0, (number + 1) / 50) + 1e-6
        mean = 0.95 * mean + 0.05 * np.array(engine.round(rate))
        if number % 50 == 49:
            print(f"{number + 1:6d} belief {mean[0]:.4f} worth {mean[1]:.5f} {time.process_time() - began:.0f} s", flush=True)
        if number % 100 == 99 or number == told.rounds - 1:
            np.save(told.out / "belief.npy", pack(engine.belief.averaged))
            np.save(told.out / "worth.npy", pack(engine.worth.averaged))


if __name__ == "__main__":
    main()
