"""
How far likeness hears a danger in the words of somebody else: `python -m tests.benchmarks.danger_likeness`.

The messages of one writer are judged by weights learned from those of the others. What phrases and scenes say is left out first, and then
told with it.
"""

from core.dangers import DANGERS
from grammar.dangers import read
from grammar.dangers.likeness import NONE, Like, likeliest, probabilities
from grammar.dangers.read import sensible
from grammar.learn_dangers import Example, examples, learn
from tests.grammar.danger_equals import answers

WRITERS = ("second", "third")
ALL = ("first", "second", "third", "own", "field")


def judged(writer: str) -> list[tuple[Example, Like]]:
    """Each message of a writer, and what it is like to who has read all the others."""
    weights = learn([row for other in ALL if other != writer for row in examples(other)])
    return [(row, likeliest(probabilities(sensible(row[0]), weights), weights.classes)) for row in examples(writer)]


def together(text: str, like: Like) -> set[str]:
    """What is heard by phrases, scenes and likeness."""
    usual = read.likeness
    read.dangers_in.cache_clear()
    read.likeness = lambda _, __=(): like  # type: ignore[assignment]
    try:
        return set(read.dangers_in(text).names)
    finally:
        read.likeness = usual
        read.dangers_in.cache_clear()


def main() -> None:
    """Prints of each writer how many dangers are answered, and how many harmless messages are refused."""
    for writer in WRITERS:
        rows = judged(writer)
        for how in ("likeness alone", "all together"):
            heard = [
                (row[1], together(row[0], like) if how == "all together" else {like.danger} if like.is_clear else set())
                for row, like in rows
            ]
            dangers = [answers(danger, names) for danger, names in heard if danger != NONE]
            harmless = [any(DANGERS[name].kind != "caution" for name in names) for danger, names in heard if danger == NONE]
            print(
                f"{writer} writer, {how}: answered {sum(dangers)} of {len(dangers)}, "
                f"harmless refused {sum(harmless)} of {len(harmless)}"
            )


if __name__ == "__main__":
    main()
