"""
What was fitted by `tests/benchmarks/engine_fit.py` on worlds of the plant: `belief`, inputs of `features` to the probability of each finding and of
a short in the control circuit; and `worth`, the same inputs to what each step is expected to take from the loss, all later steps included.

Weighing sampled worlds by their likelihood was the other way: three sharp readings leave a handful of samples alive, and the answer is sure of
itself for no reason. A fitted belief has seen millions of worlds, slips and forgotten leads among them, and costs a few matrix products. The worth alone is
too coarse to choose by; it leaves the steps that `next_test` looks at more closely.
"""

import io
import pkgutil
from functools import cache
from itertools import pairwise
from typing import Final, Literal

import numpy as np
import numpy.typing as npt

from core.diagnosis.features import WIDTH, Inputs
from core.diagnosis.steps import SITUATION, STEPS
from core.diagnosis.worlds import NAMES

Name = Literal["belief", "worth"]
SIZES: Final[dict[Name, tuple[int, ...]]] = {
    "belief": (WIDTH, 448, 192, len(NAMES) + 1),
    "worth": (WIDTH + SITUATION, 320, 160, len(STEPS)),
}
Network = tuple[npt.NDArray[np.float32], ...]
"""Weights and offsets by turns."""


def pack(network: Network) -> npt.NDArray[np.float16]:
    """All numbers in one row, half precision: a belief needs no more."""
    return np.concatenate([part.ravel() for part in network]).astype(np.float16)


def unpack(row: npt.NDArray[np.float16], sizes: tuple[int, ...]) -> Network:
    """The parts again."""
    parts: list[npt.NDArray[np.float32]] = []
    at = 0
    for rows, columns in pairwise(sizes):
        for shape in ((rows, columns), (columns,)):
            size = int(np.prod(shape))
            parts.append(row[at : at + size].astype(np.float32).reshape(shape))
            at += size
    return tuple(parts)


@cache
def fitted(name: Name) -> Network:
    """One that is shipped."""
    data = pkgutil.get_data("core.diagnosis", f"{name}.npy")
    assert data is not None
    return unpack(np.load(io.BytesIO(data)), SIZES[name])


def forward(inputs: Inputs, network: Network) -> Inputs:
    """What comes out at the end."""
    hidden = inputs
    for at in range(0, len(network) - 2, 2):
        hidden = np.maximum(hidden @ network[at] + network[at + 1], 0.0)
    return np.asarray(hidden @ network[-2] + network[-1], dtype=np.float32)


def believe(inputs: Inputs, network: Network | None = None) -> tuple[Inputs, Inputs]:
    """
    Probabilities of many jobs at once.

    Args:
        inputs: Rows of `features.encode`.
        network: Another than the shipped one.

    Returns:
        A column a finding, and the probability of a short in the control circuit.
    """
    out = forward(inputs, network or fitted("belief"))
    rise = np.exp(out[:, :-1] - out[:, :-1].max(axis=1, keepdims=True))
    short = 1.0 / (1.0 + np.exp(-np.clip(out[:, -1], -30.0, 30.0)))
    return np.asarray(rise / rise.sum(axis=1, keepdims=True)), np.asarray(short, dtype=np.float32)
