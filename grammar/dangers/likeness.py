"""
Dangers by likeness: a message in which no phrase and no scene tells a danger is weighed, word by word, against messages that are known.

Phrases tell what their writer thought of, and people find other words. So each word, each pair of words and each concept has a weight for
each danger, learned from the examples in `danger_examples.jsonl`; `python -m grammar.learn_dangers` learns them anew. A likeness counts only
in a message of some length, and only where it is clear.
"""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from functools import cache
from itertools import pairwise
from pathlib import Path
from typing import Final

import numpy as np
from numpy.typing import NDArray

from grammar.dangers.phrases import BREAK, Text, concept
from grammar.words.danger_parts import PARTS

WEIGHTS: Final = Path(__file__).with_name("likeness.npz")
EXAMPLES: Final = Path(__file__).with_name("danger_examples.jsonl")
NONE: Final = "none"
FEWEST_WORDS: Final = 7
"""A shorter message is told by phrases or not at all: too little stands in it to be weighed."""
MOST_HARMLESS: Final = 0.35
"""So probable, at most, may it be that the message is harmless."""
LEAST_SURE: Final = 0.25
"""So probable, at least, must the danger be."""
ANCHORS: Final[Mapping[str, tuple[str, ...]]] = {
    "bypass_fuse": ("FUSE", "PROTECTION", "FOIL"),
    "bigger_fuse": ("FUSE", "BLOWS"),
    "bigger_breaker": ("BREAKER",),
    "bypass_float": ("FLOAT",),
    "bypass_pressure": ("PRESSURE",),
    "bypass_gas_safety": ("LIMIT",),
    "bypass_freeze": ("FREEZE",),
    "defeat_interlock": ("DOOR",),
    "disable_alarm": ("ALARM",),
    "force_gas_valve": ("GASVALVE", "VALVE"),
    "gas_valve_beyond_24v": ("GASVALVE", "VALVE"),
    "push_contactor": ("CONTACTOR",),
    "charged_capacitor": ("CAP",),
    "short_capacitor": ("CAP",),
    "megohm_on_boards": ("MEGGER",),
    "no_meter_for_it": ("METERGEAR",),
    "proximity_only": ("PEN",),
    "parallel_class2": ("TWOUNITS", "SOURCES24"),
    "remove_ground": ("GROUND",),
    "ground_both": ("GROUND",),
    "wrong_wire": ("TWIRE",),
    "unqualified": ("LAY",),
    "ohms_live": ("OHM",),
    "keep_resetting": ("RESETWORD", "FUSE"),
    "leave_jumper": ("JUMPWORD",),
    "test_jumper": ("JUMPWORD",),
}
"""Of these one must stand in the text, for a danger that is of a thing."""
_STEM: Final = 5
"""Letters of a word that count."""
_SAFETIES: Final = ("FLOAT", "LIMIT", "PRESSURE", "FREEZE", "DOOR", "FUSE")
_COUNTED: Final = tuple(sorted(name for name in PARTS if name not in {"ODDV", "NUM", "COUNT"}))


@dataclass(frozen=True, slots=True)
class Weights:
    """What was learned."""

    features: dict[str, int]
    classes: tuple[str, ...]
    matrix: NDArray[np.float32]
    base: NDArray[np.float32]


def features(text: Text) -> set[str]:
    """
    What is weighed of a text: beginnings of words, pairs of them, concepts, and the words beside a safety or a fuse.

    Args:
        text: A message without the words that stand in it in a harmless sense.
    """
    stems = ["#" if word[0].isdigit() else word[:_STEM] for word in words_of(text)]
    found = {f"w:{stem}" for stem in stems} | {f"b:{left} {right}" for left, right in pairwise(stems)}
    concepts = {name for name in _COUNTED if text.has(concept(name, PARTS))}
    if not concepts.isdisjoint(_SAFETIES):
        found |= {f"s:{stem}" for stem in stems}
    return found | {f"c:{name}" for name in concepts}


def words_of(text: Text) -> list[str]:
    """
    The words of a text without its pauses and what was taken out.

    Args:
        text: The message.
    """
    return [word for word in text.words if word not in {BREAK, "_"}]


def row_of(found: set[str], known: dict[str, int]) -> tuple[list[int], float]:
    """
    Where the features stand in the matrix, and what each counts: a long message weighs no more than a short one.

    Args:
        found: From `features`.
        known: The place of each feature.
    """
    places = sorted(known[name] for name in found if name in known)
    return places, len(places) ** -0.5 if places else 0.0


def probabilities(text: Text, weights: Weights) -> NDArray[np.float32]:
    """
    How probable each class is.

    Args:
        text: A message without the words that stand in it in a harmless sense.
        weights: What was learned.
    """
    places, each = row_of(features(text), weights.features)
    scores = weights.matrix[places].sum(axis=0) * each + weights.base
    grown: NDArray[np.float32] = np.exp(scores - scores.max())
    shares: NDArray[np.float32] = grown / grown.sum()
    return shares


@cache
def learned() -> Weights:
    """The weights that stand beside this file."""
    with np.load(WEIGHTS) as stored:
        names: Sequence[str] = stored["features"].tolist()
        return Weights(
            {name: at for at, name in enumerate(names)},
            tuple(stored["classes"].tolist()),
            stored["matrix"].astype(np.float32),
            stored["base"].astype(np.float32),
        )


def likeness(text: Text) -> str | None:
    """
    The danger that a text is like.

    Args:
        text: A message without the words that stand in it in a harmless sense.

    Returns:
        Its name, or None where the text is too short, harmless or unlike any.
    """
    if sum(len(word) > 1 and word.isalpha() for word in words_of(text)) < FEWEST_WORDS:
        return None
    weights = learned()
    like = decided(probabilities(text, weights), weights.classes)
    return like if like is not None and has_anchor(text, like) else None


def has_anchor(text: Text, danger: str) -> bool:
    """
    True where the thing that a danger is of stands in a text.

    Args:
        text: The message.
        danger: A name.
    """
    anchors = ANCHORS.get(danger)
    return anchors is None or any(text.has(concept(name, PARTS)) for name in anchors)


def decided(probable: NDArray[np.float32], classes: Sequence[str]) -> str | None:
    """
    The danger that is clear enough, or None.

    Args:
        probable: From `probabilities`.
        classes: The name of each.
    """
    harmless = classes.index(NONE)
    if probable[harmless] > MOST_HARMLESS:
        return None
    best = max((at for at in range(len(classes)) if at != harmless), key=lambda at: float(probable[at]))
    return classes[best] if probable[best] >= LEAST_SURE else None
