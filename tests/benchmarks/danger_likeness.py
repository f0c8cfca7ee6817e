"""
How far likeness hears a danger in words that it has not seen: `python -m tests.benchmarks.danger_likeness`.

The examples are dealt into five parts; each is judged by weights learned from the other four. What phrases and scenes say is left out.
"""

import numpy as np

from grammar.dangers.likeness import FEWEST_WORDS, NONE, decided, has_anchor, probabilities, words_of
from grammar.dangers.read import sensible
from grammar.learn_dangers import Example, examples, learn

PARTS = 5
ROUNDS = 250


def judged(rows: list[Example]) -> list[tuple[str, str | None]]:
    """Each example's danger beside the one that is heard in it."""
    part = np.random.default_rng(7).integers(0, PARTS, len(rows))
    heard: list[tuple[str, str | None]] = []
    for number in range(PARTS):
        weights = learn([row for row, mine in zip(rows, part, strict=True) if mine != number], ROUNDS)
        for (text, danger), mine in zip(rows, part, strict=True):
            if mine == number:
                said = decided(probabilities(sensible(text), weights), weights.classes)
                heard.append((danger, said if said is not None and has_anchor(sensible(text), said) else None))
    return heard


def main() -> None:
    """Prints how many dangers are heard, and how many harmless messages are taken for one."""
    rows = [row for row in examples() if len(words_of(sensible(row[0]))) >= FEWEST_WORDS]
    heard = judged(rows)
    dangers = [(danger, said) for danger, said in heard if danger != NONE]
    harmless = [said for danger, said in heard if danger == NONE]
    right = sum(danger == said for danger, said in dangers)
    other = sum(said is not None and danger != said for danger, said in dangers)
    print(f"dangers heard: {right} of {len(dangers)}, taken for another: {other}")
    print(f"harmless taken for a danger: {sum(said is not None for said in harmless)} of {len(harmless)}")


if __name__ == "__main__":
    main()
