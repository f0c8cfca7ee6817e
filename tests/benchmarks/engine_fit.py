"""
Fits the belief of `core.diagnosis` and the worth of each step on a mixture of worlds; writes `core/diagnosis/belief.npy` and `worth.npy`.

    pip install ".[fit]"
    python -m tests.benchmarks.fitting.bank first 110000 BANKS/first_1.npz --seed 102
    python -m tests.benchmarks.fitting.bank second 60000 BANKS/second_1.npz --seed 101
    python -m tests.benchmarks.fitting.bank third 70000 BANKS/third_1.npz --seed 203
    python -m tests.benchmarks.engine_fit --banks BANKS --rounds 9000

Every round draws units, some of the engine's own worlds and some of each bank, and lets the engine that is being fitted hold the calls, with many steps
at random: so it is fitted where it will be used. What comes out is a probability because the loss is its logarithm. The worth of a step is what it
takes from the loss at stake and what the best steps after it will take, less what those cost, learned from the calls held, for any price of a step.
Two that run at once, each with the other's folder as `--beside`, share their weights and learn from twice as many calls. What is shipped is the mean of two
such, about 9,000 rounds together after some 1,500 on fewer banks and other prices: the command gives its like, not its very numbers.
"""

import argparse
import time
from dataclasses import dataclass, field
from itertools import pairwise
from pathlib import Path

import numpy as np
import torch
from torch import nn

from core.diagnosis.features import encode
from core.diagnosis.network import SIZES, Name, pack
from core.diagnosis.steps import situation
from tests.benchmarks.fitting.calls import Calls, at_stake
from tests.benchmarks.fitting.mixture import Mixture

HOME = Path(__file__).parents[2] / "core" / "diagnosis"
LONGEST = 11
"""Steps of a call."""
AT_RANDOM, LIVELY = 0.2, 0.35
GOES_ON = 0.5
"""Chance that a call goes on where no step is worth its cost."""
BATCH = 1024
KEPT = 0.7
"""Share of the states that are learned from: those of one call are much alike."""
DEAR = (0.4, 5.0)
"""How dear steps are held, from call to call."""
SHARED_EVERY = 25


class Fit:
    """One network on its way down; `averaged` is the mean of its last thousand or so steps."""

    def __init__(self, name: Name, start: Path | None) -> None:
        self.name = name
        layers: list[nn.Module] = []
        for i, o in pairwise(SIZES[name]):
            layers += [nn.Linear(i, o), nn.ReLU()]
        self.net = nn.Sequential(*layers[:-1])
        self.averaged = nn.Sequential(
            *[type(m)(m.in_features, m.out_features) if isinstance(m, nn.Linear) else nn.ReLU() for m in self.net]
        )
        if start is not None:
            self._read(np.load(start / f"{name}.npy"))
        self.averaged.load_state_dict(self.net.state_dict())
        self.descent = torch.optim.AdamW(self.net.parameters(), lr=1e-3, weight_decay=1e-4)
        self.steps = 0

    def _read(self, row: np.ndarray) -> None:
        at = 0
        for layer in self.net:
            if isinstance(layer, nn.Linear):
                i, o = layer.in_features, layer.out_features
                layer.weight.data = torch.tensor(row[at : at + i * o].astype(np.float32).reshape(i, o).T.copy())
                layer.bias.data = torch.tensor(row[at + i * o : at + i * o + o].astype(np.float32))
                at += i * o + o

    def down(self, loss: torch.Tensor, rate: float) -> None:
        """One step."""
        for group in self.descent.param_groups:
            group["lr"] = rate
        self.descent.zero_grad()
        loss.backward()
        self.descent.step()
        self.steps += 1
        keep = min(0.999, self.steps / (self.steps + 10))
        with torch.no_grad():
            for mean, now in zip(self.averaged.parameters(), self.net.parameters(), strict=True):
                mean.lerp_(now, 1.0 - keep)

    @torch.no_grad()
    def out(self, x: np.ndarray) -> np.ndarray:
        """What comes out of the averaged one."""
        return self.averaged(torch.from_numpy(x)).numpy()

    def share(self, own: Path, other: Path) -> None:
        """Goes halfway to where a fit beside is, as of its last word, and leaves its own."""
        torch.save([self.net.state_dict(), self.averaged.state_dict()], own / f"{self.name}.new")
        (own / f"{self.name}.new").replace(own / f"{self.name}.pt")
        if (other / f"{self.name}.pt").exists():
            for net, theirs in zip((self.net, self.averaged), torch.load(other / f"{self.name}.pt"), strict=True):
                for mine, value in zip(net.state_dict().values(), theirs.values(), strict=True):
                    mine.lerp_(value, 0.5)

    def write(self, folder: Path) -> None:
        """As it is shipped."""
        parts = [
            p
            for layer in self.averaged
            if isinstance(layer, nn.Linear)
            for p in (layer.weight.detach().numpy().T, layer.bias.detach().numpy())
        ]
        np.save(folder / f"{self.name}.npy", pack(tuple(parts)))


@dataclass
class State:
    """Some calls at one moment."""

    rows: np.ndarray
    x: np.ndarray
    around: np.ndarray
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

    def __init__(self, seed: int, calls: int, banks: Path | None, start: Path | None) -> None:
        self.rng = np.random.default_rng(seed)
        torch.manual_seed(seed)
        self.mixture = Mixture(self.rng, banks)
        self.calls = calls
        self.belief, self.worth = Fit("belief", start), Fit("worth", start)
        self.warm = 100 if start is None else 0

    def held(self) -> dict[str, np.ndarray]:
        """Every state of a batch of calls: inputs, truth, the step taken and what it was worth."""
        rng, c = self.rng, Calls(self.rng, self.mixture.drawn(self.calls))
        c.open()
        dear = np.exp(rng.uniform(*np.log(DEAR), c.count))
        states: list[State] = []
        going = np.arange(c.count)
        for number in range(LONGEST + 1):
            state, value = self._state(c, going, dear)
            if states:
                states[-1].learned(state)
            states.append(state)
            goes_on = (state.best > 0.0) | (rng.random(len(going)) < GOES_ON)
            state.step = np.where(goes_on & (number < LONGEST), self._chosen(value), -1)
            c.take(_spread(state, c.count))
            going = going[state.step >= 0]
            if not len(going):
                break
        return {
            name: np.concatenate([getattr(state, name) for state in states])
            for name in ("x", "around", "step", "finding", "short", "worth")
        }

    def _state(self, c: Calls, going: np.ndarray, dear: np.ndarray) -> tuple[State, np.ndarray]:
        x = encode(c.evidence(going))
        can = c.possible(going)
        around = situation(can, c.last[going], c.times[going].sum(axis=1), dear[going]).astype(np.float32)
        value = self.worth.out(np.concatenate([x, around], axis=1)) - dear[going, None] * c.prices(going)
        value = np.where(can, value, -np.inf)
        out = torch.from_numpy(self.belief.out(x))
        state = State(
            rows=going,
            x=x,
            around=around,
            finding=c.units.finding[going],
            short=c.units.short[going],
            stake=at_stake(out[:, :-1].softmax(1).numpy(), out[:, -1].sigmoid().numpy()),
            best=np.maximum(value.max(axis=1), 0.0) if self.warm == 0 else np.zeros(len(going)),
        )
        return state, value

    def _chosen(self, value: np.ndarray) -> np.ndarray:
        rng, shape, possible = self.rng, value.shape, np.isfinite(value)
        at_random = np.argmax(np.where(possible, rng.random(shape), -1.0), axis=1)
        if self.warm:
            return np.where(possible.any(axis=1), at_random, -1)
        lively = np.argmax(value + 0.04 * rng.gumbel(size=shape), axis=1)
        kind = rng.random(len(value))
        chosen = np.where(kind < AT_RANDOM, at_random, np.where(kind < AT_RANDOM + LIVELY, lively, np.argmax(value, axis=1)))
        return np.where(possible.any(axis=1), chosen, -1)

    def round(self, rate: float) -> tuple[float, float]:
        """One batch of calls, and the steps down on it."""
        got = self.held()
        order = self.rng.permutation(len(got["step"]))[: int(KEPT * len(got["step"]))]
        losses = [
            self._down({name: torch.from_numpy(values[rows]) for name, values in got.items()}, rate)
            for rows in np.array_split(order, max(1, len(order) // BATCH))
        ]
        self.warm = max(0, self.warm - 1)
        return tuple(np.mean(losses, axis=0))

    def _down(self, some: dict[str, torch.Tensor], rate: float) -> tuple[float, float]:
        out = self.belief.net(some["x"])
        one = nn.functional.cross_entropy(out[:, :-1], some["finding"].long())
        one = one + nn.functional.binary_cross_entropy_with_logits(out[:, -1], some["short"].float())
        self.belief.down(one, rate)
        took = some["step"] >= 0
        x = torch.cat([some["x"][took], some["around"][took]], dim=1)
        worth = self.worth.net(x).gather(1, some["step"][took][:, None].long())[:, 0]
        two = ((worth - some["worth"][took].float()) ** 2).mean()
        self.worth.down(two, rate)
        return float(one.detach()), float(two.detach())


def _spread(state: State, calls: int) -> np.ndarray:
    """The step of every call, -1 for those that have ended."""
    steps = np.full(calls, -1)
    steps[state.rows] = state.step
    return steps


def main() -> None:
    """Fit and write."""
    ask = argparse.ArgumentParser(description=__doc__)
    ask.add_argument("--rounds", type=int, default=9000)
    ask.add_argument("--calls", type=int, default=1024, help="calls a round")
    ask.add_argument("--rate", type=float, default=1.5e-3)
    ask.add_argument("--seed", type=int, default=1)
    ask.add_argument("--banks", type=Path, help="folder of banks; without it the engine's own worlds alone")
    ask.add_argument("--out", type=Path, default=HOME)
    ask.add_argument("--go-on", type=Path, help="start from what stands in this folder")
    ask.add_argument("--beside", type=Path, help="folder where another fit writes that shares its weights")
    told = ask.parse_args()
    engine = Engine(told.seed, told.calls, told.banks, told.go_on)
    began, mean = time.process_time(), np.zeros(2)
    for number in range(1, told.rounds + 1):
        rate = told.rate * 0.5 * (1 + np.cos(np.pi * number / told.rounds)) * min(1.0, number / 50) + 1e-6
        mean = 0.95 * mean + 0.05 * np.array(engine.round(rate))
        if number % 50 == 0:
            print(f"{number:6d} belief {mean[0]:.4f} worth {mean[1]:.5f} {time.process_time() - began:.0f} s", flush=True)
        for fit in (engine.belief, engine.worth):
            if told.beside is not None and number % SHARED_EVERY == 0:
                fit.share(told.out, told.beside)
            if number % 200 == 0 or number == told.rounds:
                fit.write(told.out)


if __name__ == "__main__":
    main()
