"""
Dangers by likeness: a message is weighed, meaning by meaning and word by word, against messages that are known.

Phrases and scenes tell what their writer thought of, and people find other words. So each meaning (`meanings.py`), each pair of meanings, each
word and each pair of words has a weight for each danger. They are learned from the examples in `danger_examples.jsonl` and from the frames in
`grammar/words/danger_frames.py`; `python -m grammar.learn_dangers` learns them anew.
"""

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass
from functools import cache
from itertools import combinations, pairwise
from pathlib import Path
from typing import Final

import numpy as np
from numpy.typing import NDArray

from grammar.dangers.meanings import OUT, meanings
from grammar.dangers.phrases import BREAK, Text

WEIGHTS: Final = Path(__file__).with_name("likeness.npz")
EXAMPLES: Final = Path(__file__).with_name("danger_examples.jsonl")
NONE: Final = "none"
MOST_HARMLESS: Final = 0.4
"""So probable, at most, may it be that the message is harmless."""
LEAST_SURE: Final = 0.25
"""So probable, at least, must the danger be."""
FEWEST_WORDS: Final = 2
"""Fewer are told by phrases or not at all: too little stands in them to be weighed."""
FEW_WORDS: Final = 5
SURE_OF_FEW: Final = 0.5
"""So probable must a danger be where fewer words tell it, and the message half as harmless."""
_STEM: Final = 5
"""Letters of a word that count."""
_OF_PAIR: Final = 0.5
_OF_WORD: Final = 0.3
"""What a pair of meanings, a word and a pair of words count beside a meaning."""
_MOST_WORDS: Final = 160
"""Nobody tells a danger in more; the rest of a longer text is not weighed."""


_ACTS: Final = frozenset(
    {
        "JUMP",
        "JUMPER",
        "HOLDSHUT",
        "DISARM",
        "TAKEOUT",
        "GOWITHOUT",
        "LEAVE",
        "PUSH",
        "RESET",
        "FOIL",
        "BIGGER",
        "TOOLSHORT",
        "ADJUST",
        "ENERGISE",
        "PUT",
    }
)
"""What is done to something."""
_THINGS: Final = frozenset(
    {
        "FLOAT",
        "LIMITSW",
        "PRESSURE",
        "FREEZE",
        "DOORSW",
        "ALARM",
        "FUSE",
        "BREAKER",
        "CONTACTOR",
        "CAP",
        "GASVALVE",
        "GROUNDWIRE",
        "TWIRE",
        "SERVICE",
        "REFRIG",
        "TWOXF",
    }
)
"""What it is done to."""
_STATES: Final = frozenset({"SHORTED", "NOTFOUND", "o:0"})
"""What was told of it."""
_DONE_TO: Final = ((_ACTS, _THINGS), (frozenset({"OFF"}), frozenset({"MAINSW", "SOFTSW"})))


@dataclass(frozen=True, slots=True)
class Weights:
    """What was learned."""

    features: dict[str, int]
    classes: tuple[str, ...]
    matrix: NDArray[np.float32]
    base: NDArray[np.float32]
    known: frozenset[str]
    """Words that are not taken for a misspelt one."""


def features(text: Text, known: frozenset[str], before: Sequence[Text] = ()) -> dict[str, float]:
    """
    What is weighed of a text, and what each counts.

    Args:
        text: A message without the words that stand in it in a harmless sense.
        known: Words that are not taken for a misspelt one.
        before: The messages before it, the newest last: what is done to nothing here is done to what was spoken of there.
    """
    words = text.words[:_MOST_WORDS]
    stems = ["#" if word[0].isdigit() else word[:_STEM] for word in words if word not in {BREAK, OUT}]
    found = {f"w:{stem}": _OF_WORD for stem in stems} | {f"b:{left} {right}": _OF_WORD for left, right in pairwise(stems)}
    told = meanings(words, known)
    for acts, things in _DONE_TO:
        if before and not told.isdisjoint(acts) and told.isdisjoint(things):
            told |= _spoken_of(things, before, known)
    return found | of_meanings(told)


def _spoken_of(things: frozenset[str], before: Sequence[Text], known: frozenset[str]) -> set[str]:
    """The things and states that were last spoken of; none where they were put right."""
    for earlier in reversed(before):
        told = meanings(earlier.words[:_MOST_WORDS], known)
        if "UNDONE" in told:
            return set()
        if found := told & (things | _STATES):
            return found
    return set()


def of_meanings(told: Iterable[str]) -> dict[str, float]:
    """
    What is weighed of meanings: each, and each pair.

    Args:
        told: From `meanings`, or a frame.
    """
    names = sorted(told)
    return {f"m:{name}": 1.0 for name in names} | {f"p:{left} {right}": _OF_PAIR for left, right in combinations(names, 2)}


def row_of(found: Mapping[str, float], known: Mapping[str, int]) -> tuple[list[int], NDArray[np.float32]]:
    """
    Where the features stand in the matrix, and what each counts: a long message weighs no more than a short one.

    Args:
        found: From `features`.
        known: The place of each feature.
    """
    places = [(known[name], counts) for name, counts in found.items() if name in known]
    each = np.array([counts for _, counts in places], np.float32)
    return [place for place, _ in places], each / np.float32(max(np.sqrt((each * each).sum()), 1e-6))


def probabilities(text: Text, weights: Weights, before: Sequence[Text] = ()) -> NDArray[np.float32]:
    """
    How probable each class is.

    Args:
        text: A message without the words that stand in it in a harmless sense.
        weights: What was learned.
        before: The messages before it, the newest last.
    """
    places, each = row_of(features(text, weights.known, before), weights.features)
    scores = each @ weights.matrix[places] + weights.base
    grown: NDArray[np.float32] = np.exp(scores - scores.max())
    shares: NDArray[np.float32] = grown / grown.sum()
    return shares


@cache
def learned() -> Weights:
    """The weights that stand beside this file."""
    with np.load(WEIGHTS) as stored:
        names, known = (bytes(stored[name]).decode().split("\n") for name in ("features", "known"))
        return Weights(
            dict(zip(names, range(len(names)), strict=True)),
            tuple(bytes(stored["classes"]).decode().split("\n")),
            stored["matrix"].astype(np.float32) * stored["scale"],
            stored["base"],
            frozenset(known),
        )


@dataclass(frozen=True, slots=True)
class Like:
    """What a text is like."""

    danger: str
    """The likeliest danger."""
    sure: float
    """Its probability."""
    harmless: float
    """The probability that it is none."""

    of: Mapping[str, float]
    """The probability of each danger."""

    @property
    def is_clear(self) -> bool:
        """True where it may be said."""
        return self.harmless <= MOST_HARMLESS and self.sure >= LEAST_SURE


def likeness(text: Text, before: Sequence[Text] = ()) -> Like:
    """
    What a text is like.

    Args:
        text: A message without the words that stand in it in a harmless sense.
        before: The messages before it, the newest last.
    """
    weights = learned()
    like = likeliest(probabilities(text, weights, before), weights.classes)
    words = sum(len(word) > 1 and word.isalpha() for word in text.words)
    is_doubtful = like.harmless > MOST_HARMLESS / 2 or like.sure < SURE_OF_FEW
    if words < FEWEST_WORDS or (words < FEW_WORDS and is_doubtful):
        return Like(like.danger, like.sure, max(like.harmless, MOST_HARMLESS + 0.01), like.of)
    return like


def likeliest(probable: NDArray[np.float32], classes: Sequence[str]) -> Like:
    """
    The likeliest danger.

    Args:
        probable: From `probabilities`.
        classes: The name of each.
    """
    of = dict(zip(classes, map(float, probable), strict=True))
    harmless = of.pop(NONE)
    best = max(of, key=lambda name: of[name])
    return Like(best, of[best], harmless, of)
