"""Finds turns of phrase: the words of a cue in their order, at most a few others between them where the cue allows it."""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from functools import cache
from itertools import product

from grammar.uncollected import uncollected
from grammar.vocabulary import pieces
from grammar.words.asks import ASKS
from grammar.words.dangers import DANGERS
from grammar.words.row import Cue
from grammar.words.symptoms import SYMPTOMS

GAP = 5
"""Other words that `..` allows."""

Step = tuple[frozenset[str], bool]
"""The words that fit, and whether others may stand before them."""


@dataclass(frozen=True, slots=True)
class Turn:
    """One cue, ready to be looked for."""

    meaning: str
    language: str
    steps: tuple[Step, ...]
    """Those behind the first word."""


@dataclass(frozen=True, slots=True)
class Found:
    """A cue in a text: which, and the words it took."""

    meaning: str
    language: str
    at: tuple[int, ...]


Index = dict[str, tuple[dict[str, list[Turn]], list[Turn], list[Turn]]]
"""First word to: turns by the next word, turns with a gap next, turns of a single word."""


def turns(cue: Cue) -> Iterable[tuple[str, Turn]]:
    """A cue as its turns, each with a first word."""
    for language, texts in (("en", cue.en), ("es", cue.es)):
        for text in texts:
            for steps in _steps(text):
                turn = Turn(cue.meaning, language, steps[1:])
                for first in steps[0][0]:
                    yield first, turn


def _steps(text: str) -> Iterable[tuple[Step, ...]]:
    """The steps of a cue's text; alternatives of several pieces make turns of their own."""
    slots: list[list[tuple[Step, ...]]] = []
    gap = False
    for word in text.split():
        if word == "..":
            gap = True
            continue
        cut = [_cut(choice) for choice in word.split("|")]
        short = frozenset(c[0] for c in cut if len(c) == 1)
        choices: list[tuple[Step, ...]] = [((short, gap),)] if short else []
        choices += [tuple((frozenset({p}), gap and not i) for i, p in enumerate(c)) for c in cut if len(c) > 1]
        slots.append(choices)
        gap = False
    if all(len(choices) == 1 for choices in slots):
        return (tuple(step for choices in slots for step in choices[0]),)
    return (tuple(step for part in parts for step in part) for parts in product(*slots))


def _cut(choice: str) -> tuple[str, ...]:
    if choice.isascii() and choice.isalpha():
        return (choice,)
    return (choice,) if choice.startswith("/") else tuple(p for p in pieces(choice) if p not in {"-", "/"})


def index(cues: Iterable[Cue]) -> Index:
    """Cues by their first words."""
    found: Index = {}
    for cue in cues:
        for first, turn in turns(cue):
            near, gapped, alone = found.setdefault(first, ({}, [], []))
            if not turn.steps:
                alone.append(turn)
            elif turn.steps[0][1]:
                gapped.append(turn)
            else:
                for second in turn.steps[0][0]:
                    near.setdefault(second, []).append(turn)
    return found


def find(words: Sequence[str], cues: Index) -> list[Found]:
    """
    All cues in a row of folded words; an empty word is the end of a sentence, which no cue crosses.

    >>> which = index([Cue("tap", en=("which|what .. tap",))])
    >>> find(["which", "one", "of", "the", "tap"], which)
    [Found(meaning='tap', language='en', at=(0, 4))]
    """
    found = []
    for i, word in enumerate(words):
        rows = cues.get(word)
        if rows is None:
            continue
        near, gapped, alone = rows
        found += [Found(turn.meaning, turn.language, (i,)) for turn in alone]
        following = near.get(words[i + 1], ()) if i + 1 < len(words) else ()
        for turn in (*following, *gapped):
            if (at := _walk(words, i, turn.steps)) is not None:
                found.append(Found(turn.meaning, turn.language, at))
    return found


def _walk(words: Sequence[str], start: int, steps: tuple[Step, ...]) -> tuple[int, ...] | None:
    at, taken = start, [start]
    for fits, gap in steps:
        for step in range(1, (GAP + 2) if gap else 2):
            if at + step >= len(words) or not words[at + step]:
                return None
            if words[at + step] in fits:
                at += step
                taken.append(at)
                break
        else:
            return None
    return tuple(taken)


@cache
@uncollected()
def vocabulary(name: str) -> Index:
    """The cues of one table, indexed at first use."""
    return index({"asks": ASKS, "symptoms": SYMPTOMS}[name])


@cache
def known_stems() -> tuple[str, ...]:
    """Beginnings of words that dangers are told by."""
    return tuple(
        {
            word[:-1]
            for cue in DANGERS
            for text in (*cue.en, *cue.es)
            for word in text.translate(str.maketrans("|._", "   ")).split()
            if word.endswith("*") and word[:-1].isalpha() and len(word) > 4
        }
    )


@cache
def known_words() -> frozenset[str]:
    """Every word that stands in a cue or a danger: never mended, never unread by itself."""
    dangerous = {
        word
        for cue in DANGERS
        for text in (*cue.en, *cue.es)
        for word in text.translate(str.maketrans("|._", "   ")).split()
        if word.isalpha() and word.islower()
    }
    return frozenset(dangerous) | frozenset(
        word
        for name in ("asks", "symptoms")
        for first, (near, gapped, alone) in vocabulary(name).items()
        for word in (
            first,
            *(
                w
                for turn in (*(t for ts in near.values() for t in ts), *gapped, *alone)
                for fits, _ in turn.steps
                for w in fits
            ),
        )
    )
