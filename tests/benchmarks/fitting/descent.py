"""Small networks fitted by hand: slopes by the chain rule written out, steps by Adam, the answer an average of the last ones."""

from itertools import pairwise

import numpy as np

from core.diagnosis.network import Network


class Fit:
    """One network on its way down."""

    def __init__(self, rng: np.random.Generator, sizes: tuple[int, ...], start: Network | None = None) -> None:
        drawn = [
            part
            for i, o in pairwise(sizes)
            for part in (rng.normal(0, np.sqrt(2 / i), (i, o)).astype(np.float32), np.zeros(o, np.float32))
        ]
        self.parts: list[np.ndarray] = drawn if start is None else [part.copy() for part in start]
        if start is None:
            self.parts[-2] *= 0.1
        self.first = [np.zeros_like(part) for part in self.parts]
        self.second = [np.zeros_like(part) for part in self.parts]
        self.mean: list[np.ndarray] = [part.copy() for part in self.parts]
        self.steps = 0

    @property
    def averaged(self) -> Network:
        """The average of the last thousand or so."""
        return tuple(part.astype(np.float32) for part in self.mean)

    def out(self, x: np.ndarray) -> tuple[list[np.ndarray], np.ndarray]:
        """Every layer, and what comes out."""
        hidden, h = [x], x
        for i in range(0, len(self.parts) - 2, 2):
            h = np.maximum(h @ self.parts[i] + self.parts[i + 1], 0)
            hidden.append(h)
        return hidden, h @ self.parts[-2] + self.parts[-1]

    def down(self, hidden: list[np.ndarray], slope: np.ndarray, rate: float) -> None:
        """One step against the slope of the loss by what comes out."""
        d = slope.astype(np.float32)
        found: list[np.ndarray] = []
        for i in range(len(self.parts) - 2, -1, -2):
            h = hidden[i // 2]
            found = [h.T @ d, d.sum(0), *found]
            if i:
                d = (d @ self.parts[i].T) * (h > 0)
        self.steps += 1
        keep = min(0.999, self.steps / (self.steps + 10))
        for i, g in enumerate(found):
            self.first[i] += 0.1 * (g - self.first[i])
            self.second[i] += 0.001 * (g * g - self.second[i])
            move = (self.first[i] / (1 - 0.9**self.steps)) / (np.sqrt(self.second[i] / (1 - 0.999**self.steps)) + 1e-8)
            self.parts[i] -= np.float32(rate) * move
            self.mean[i] += np.float32(1 - keep) * (self.parts[i] - self.mean[i])


def fit_belief(fit: Fit, x: np.ndarray, finding: np.ndarray, short: np.ndarray, rate: float) -> float:
    """One step on the logarithmic loss; returns it."""
    hidden, out = fit.out(x)
    z = out[:, :-1] - out[:, :-1].max(1, keepdims=True)
    prob = np.exp(z) / np.exp(z).sum(1, keepdims=True)
    q = 1 / (1 + np.exp(-np.clip(out[:, -1], -30, 30)))
    n = len(finding)
    loss = -np.log(prob[np.arange(n), finding] + 1e-9).mean() - np.log(np.where(short, q, 1 - q) + 1e-9).mean()
    slope = np.concatenate([prob, q[:, None]], 1)
    slope[np.arange(n), finding] -= 1
    slope[:, -1] -= short
    fit.down(hidden, slope / n, rate)
    return float(loss)


def fit_worth(fit: Fit, x: np.ndarray, step: np.ndarray, worth: np.ndarray, rate: float) -> float:
    """One step on the squared error of the step that was taken; returns it."""
    hidden, out = fit.out(x)
    n = len(step)
    error = out[np.arange(n), step] - worth
    slope = np.zeros_like(out)
    slope[np.arange(n), step] = error / n
    fit.down(hidden, slope, rate)
    return float((error**2).mean())
