"""Learns the weights of likeness from the examples anew: `python -m grammar.learn_dangers`. It takes a minute."""

import json
from collections import Counter
from collections.abc import Sequence

import numpy as np
from numpy.typing import NDArray

from grammar.dangers.likeness import EXAMPLES, NONE, WEIGHTS, Weights, features, row_of
from grammar.dangers.read import sensible

ROUNDS = 400
STEP = 8.0
MOMENTUM = 0.9
DECAY = 2e-5
"""Keeps weights of what was seen once small."""
HARMLESS_COUNTS = 0.5
"""There are many more harmless examples than of any danger."""

Example = tuple[str, str]
"""A text, and its danger or `none`."""


def examples() -> list[Example]:
    """The examples that stand beside the code."""
    rows = (json.loads(line) for line in EXAMPLES.read_text(encoding="utf-8").splitlines())
    return [(row["text"], row["danger"] or NONE) for row in rows]


def learn(rows: Sequence[Example], rounds: int = ROUNDS) -> Weights:
    """
    The weights that tell the examples apart: softmax regression by descent.

    Args:
        rows: The examples.
        rounds: How often all are gone through.
    """
    found = [features(sensible(text)) for text, _ in rows]
    counted = Counter(name for names in found for name in names)
    known = {name: at for at, name in enumerate(sorted(name for name, times in counted.items() if times > 1))}
    classes = tuple(sorted({danger for _, danger in rows}))
    given = np.zeros((len(rows), len(known)), np.float32)
    for at, names in enumerate(found):
        places, each = row_of(names, known)
        given[at, places] = each
    wanted = np.eye(len(classes), dtype=np.float32)[[classes.index(danger) for _, danger in rows]]
    counts = np.array([[HARMLESS_COUNTS if danger == NONE else 1.0] for _, danger in rows], np.float32)
    matrix, base = _descend(given, wanted, counts, rounds)
    return Weights(known, classes, matrix, base)


def _descend(
    given: NDArray[np.float32], wanted: NDArray[np.float32], counts: NDArray[np.float32], rounds: int
) -> tuple[NDArray[np.float32], NDArray[np.float32]]:
    matrix = np.zeros((given.shape[1], wanted.shape[1]), np.float32)
    base = np.zeros(wanted.shape[1], np.float32)
    speed = np.zeros_like(matrix)
    for _ in range(rounds):
        scores = given @ matrix + base
        grown = np.exp(scores - scores.max(axis=1, keepdims=True))
        off = (grown / grown.sum(axis=1, keepdims=True) - wanted) * counts
        speed = MOMENTUM * speed + given.T @ off / len(given) + DECAY * matrix
        matrix -= STEP * speed
        base -= off.mean(axis=0) / 2
    return matrix, base


def write(weights: Weights) -> None:
    """
    Writes the weights beside the code.

    Args:
        weights: What was learned.
    """
    np.savez_compressed(
        WEIGHTS,
        features=np.array(list(weights.features)),
        classes=np.array(weights.classes),
        matrix=weights.matrix.astype(np.float16),
        base=weights.base.astype(np.float16),
    )


if __name__ == "__main__":
    write(learn(examples()))
