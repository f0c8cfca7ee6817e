"""
The fitted belief: inputs of `features` to the probability of each finding, and of a short in the control circuit.

Fitted by `tests/benchmarks/engine_fit.py` on worlds of the plant. Weighing sampled worlds by their likelihood was the other way: three sharp
readings leave a handful of samples alive, and the answer is sure of itself for no reason. A fitted belief has seen millions of worlds, slips
and forgotten leads among them, and costs two matrix products.
"""

import io
import pkgutil
from functools import cache
from itertools import pairwise
from typing import Final

import numpy as np
import numpy.typing as npt

from core.diagnosis.features import WIDTH, Inputs
from core.diagnosis.worlds import NAMES

LAYERS: Final = (160, 96)
Network = tuple[npt.NDArray[np.float32], ...]
"""Weights and offsets by turns."""


def pack(network: Network) -> npt.NDArray[np.float16]:
    """All numbers in one row, half precision: a belief needs no more."""
    return np.concatenate([part.ravel() for part in network]).astype(np.float16)


def unpack(row: npt.NDArray[np.float16]) -> Network:
    """The parts again."""
    sizes = (WIDTH, *LAYERS, len(NAMES) + 1)
    parts: list[npt.NDArray[np.float32]] = []
    at = 0
    for rows, columns in pairwise(sizes):
        for shape in ((rows, columns), (columns,)):
            size = int(np.prod(shape))
            parts.append(row[at : at + size].astype(np.float32).reshape(shape))
            at += size
    return tuple(parts)


@cache
def fitted() -> Network:
    """The one that is shipped."""
    data = pkgutil.get_data("core.diagnosis", "fitted.npy")
    assert data is not None
    return unpack(np.load(io.BytesIO(data)))


def believe(inputs: Inputs, network: Network | None = None) -> tuple[Inputs, Inputs]:
    """
    Probabilities of many jobs at once.

    Args:
        inputs: Rows of `features.encode`.
        network: Another than the shipped one.

    Returns:
        A column a finding, and the probability of a short in the control circuit.
    """
    network = network or fitted()
    hidden = inputs
    for at in range(0, len(network) - 2, 2):
        hidden = np.maximum(hidden @ network[at] + network[at + 1], 0.0)
    out = hidden @ network[-2] + network[-1]
    rise = np.exp(out[:, :-1] - out[:, :-1].max(axis=1, keepdims=True))
    short = 1.0 / (1.0 + np.exp(-np.clip(out[:, -1], -30.0, 30.0)))
    return rise / rise.sum(axis=1, keepdims=True), short
