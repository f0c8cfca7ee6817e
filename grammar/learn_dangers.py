"""Learns the weights of likeness from the examples and the frames anew: `python -m grammar.learn_dangers`. It takes half a minute."""

import json
from collections import Counter
from collections.abc import Iterator, Sequence

import numpy as np
from numpy.typing import NDArray

from grammar.dangers.likeness import EXAMPLES, NONE, WEIGHTS, Weights, features, of_meanings, row_of
from grammar.dangers.phrases import Text
from grammar.dangers.read import sensible
from grammar.words.danger_frames import BESIDE, FRAMES

ROUNDS = 20
STEP = 0.3
BASE_STEP = 0.002
DECAY = 0.03
"""Keeps weights of what was seen once small."""
HARMLESS_COUNTS = 1.0
"""What a harmless example counts beside a dangerous one."""
SEEN = 2
"""What stands in fewer examples is not weighed."""
SPELT_RIGHT = 4
"""A word that stands in as many examples is no misspelt one."""
TURNS = 5
"""How often each frame is shown: as it is, and with what may stand beside it."""
SMALLEST = 1.0 / 127.0
"""The share of a danger's largest weight below which a weight is dropped."""

Shown = tuple[list[int], NDArray[np.float32], int]
"""Where the features of an example stand, what each counts, and the number of its danger."""
Example = tuple[str, str]
"""A text, and its danger or `none`."""


def examples(by: str | None = None) -> list[Example]:
    """
    The examples that stand beside the code.

    Args:
        by: The writer whose examples are meant; all of them where it is None.
    """
    rows = (json.loads(line) for line in EXAMPLES.read_text(encoding="utf-8").splitlines())
    return [(row["text"], row["danger"] or NONE) for row in rows if by in {None, row["by"]}]


def frames() -> Iterator[tuple[frozenset[str], str]]:
    """Each frame as it is, and with some of what may stand beside it: none of that is a sign of it."""
    luck = np.random.default_rng(5)
    for danger, line in FRAMES.items():
        for told in line.split("; "):
            for turn in range(TURNS):
                beside = luck.choice(BESIDE, luck.integers(1, 4), replace=False) if turn else ()
                yield frozenset((*told.split(), *map(str, beside))), danger


def learn(rows: Sequence[Example], rounds: int = ROUNDS) -> Weights:
    """
    The weights that tell the examples apart: softmax regression by descent.

    Args:
        rows: The examples.
        rounds: How often all are gone through.
    """
    texts = [sensible(text) for text, _ in rows]
    known = _known(texts)
    found = [features(text, known) for text in texts]
    dangers = [danger for _, danger in rows]
    for told, danger in frames():
        found.append(of_meanings(told))
        dangers.append(danger)
    counted = Counter(name for names in found for name in names)
    places = {name: at for at, name in enumerate(sorted(name for name, times in counted.items() if times >= SEEN))}
    classes = tuple(sorted(set(dangers)))
    shown = [(*row_of(names, places), classes.index(danger)) for names, danger in zip(found, dangers, strict=True)]
    matrix, base = _descend(shown, len(places), [HARMLESS_COUNTS if name == NONE else 1.0 for name in classes], rounds)
    return Weights(places, classes, matrix, base, known)


def _known(texts: Sequence[Text]) -> frozenset[str]:
    counted = Counter(word for text in texts for word in text.different)
    return frozenset(word for word, times in counted.items() if times >= SPELT_RIGHT)


def _descend(
    shown: Sequence[Shown], features_count: int, counts: Sequence[float], rounds: int
) -> tuple[NDArray[np.float32], NDArray[np.float32]]:
    """One example after the other, each weight with steps of its own that grow smaller the more it moved."""
    luck = np.random.default_rng(3)
    matrix = np.zeros((features_count, len(counts)), np.float32)
    moved = np.full_like(matrix, 1e-2)
    base = np.zeros(len(counts), np.float32)
    for _ in range(rounds):
        for number in luck.permutation(len(shown)):
            places, each, danger = shown[number]
            scores = each @ matrix[places] + base
            off = np.exp(scores - scores.max())
            off /= off.sum()
            off[danger] -= 1.0
            off *= counts[danger]
            slope = np.outer(each, off)
            moved[places] += slope * slope
            matrix[places] -= STEP * slope / np.sqrt(moved[places])
            base -= BASE_STEP * off
        matrix *= 1.0 - DECAY
    return matrix, base


def write(weights: Weights) -> None:
    """
    Writes the weights beside the code, each in one byte.

    Args:
        weights: What was learned.
    """
    scale = np.abs(weights.matrix).max(axis=0) * np.float32(SMALLEST)
    small = np.rint(weights.matrix / scale).astype(np.int8)
    kept = np.abs(small).max(axis=1) > 0
    names = [name for name, is_kept in zip(weights.features, kept, strict=True) if is_kept]
    np.savez_compressed(
        WEIGHTS,
        features=_line(names),
        classes=_line(weights.classes),
        known=_line(sorted(weights.known)),
        matrix=small[kept],
        scale=scale,
        base=weights.base,
    )


def _line(names: Sequence[str]) -> NDArray[np.uint8]:
    return np.frombuffer("\n".join(names).encode(), np.uint8)


if __name__ == "__main__":
    write(learn(examples()))
