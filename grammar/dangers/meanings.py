"""
Which meanings a text holds: words as they are written, and those that nobody knows by their sound.

What is denied is another meaning than what is told: "no smoke" is `~SMOKE`. Numbers have meanings as well: a mains voltage, many amps,
two voltages of which one is far above the other.
"""

import hashlib
import pickle
import re
from collections.abc import Iterable, Iterator
from functools import cache, lru_cache
from pathlib import Path
from typing import Final, NamedTuple

from grammar.dangers.phrases import BREAK, tokens
from grammar.words import danger_meanings
from grammar.words.danger_numbers import NUMBERS

OUT: Final = "_"
"""What stands for a word that was taken out."""
_DENIERS: Final = frozenset({
    "no", "not", "never", "didnt", "dont", "wont", "isnt", "wasnt", "arent", "aint", "havent", "hasnt", "doesnt", "wouldnt",
    "shouldnt", "without", "nobody", "none", "nor", "cannot", "cant", "couldnt", "refuse", "refused", "nunca", "tampoco",
    "nadie", "ningun", "ninguno", "ni", "sin", "jamas",
})  # fmt: skip
_TURNS: Final = frozenset({
    "so", "but", "then", "and", "y", "pero", "entonces", "because", "porque", "just", "gotta", "im", "ill", "i",
})  # fmt: skip
"""Behind these another thing is said, which a denial before them does not reach."""
_REACH: Final = 4
_SOUNDS: Final = tuple(
    (re.compile(spelt), heard)
    for spelt, heard in (
        ("ph", "f"), ("qu", "k"), ("ck", "k"), ("ll", "y"), ("gue", "ge"), ("gui", "gi"), ("c(?=[eiy])", "s"), ("c", "k"), ("z", "s"), ("v", "b"), ("h", ""),
        ("w", "u"), ("y", "i"), ("g(?=[ei])", "j"), ("x", "ks"), (r"(.)\1+", r"\1"), ("[ae]?d$", "t"),
    )
)  # fmt: skip
"""What is heard alike is spelt alike by who writes as they speak: English and Spanish."""
_SHORTEST: Final = 4
"""Letters of a word whose sound says enough."""
_FAR: Final = 1.4
_SAME: Final = 1.1


TABLES: Final = Path(__file__).with_name("meanings.tables")


class Spellings(NamedTuple):
    """The meanings by what is written."""

    exact: dict[str, frozenset[str]]
    stems: dict[str, frozenset[str]]
    longer: dict[str, tuple[tuple[tuple[str, ...], str], ...]]
    """Spellings of several words by their first, which may be a stem."""
    sounds: dict[str, frozenset[str]]
    """By sound, those that begin so under a star, and by consonants under a dash."""


def spellings() -> Spellings:
    """All of them, from the vocabulary: it takes 50 ms, so they stand ready in `meanings.tables`."""
    exact: dict[str, set[str]] = {}
    stems: dict[str, set[str]] = {}
    longer: dict[str, list[tuple[tuple[str, ...], str]]] = {}
    for name, line in danger_meanings.MEANINGS.items():
        for words in map(_spelt, line.split(", ")):
            if len(words) > 1:
                longer.setdefault(words[0].rstrip("*"), []).append((words, name))
            elif words[0].endswith("*"):
                stems.setdefault(words[0][:-1], set()).add(name)
            else:
                exact.setdefault(words[0], set()).add(name)
    return Spellings(
        _frozen(exact), _frozen(stems), {first: tuple(rows) for first, rows in longer.items()}, _heard(exact, stems)
    )


def _heard(exact: dict[str, set[str]], stems: dict[str, set[str]]) -> dict[str, frozenset[str]]:
    sounds: dict[str, set[str]] = {}
    for word, names in exact.items():
        if len(word) > _SHORTEST:
            sounds.setdefault(sound(word), set()).update(names)
            if len(bones(word)) >= _SHORTEST:
                sounds.setdefault("-" + bones(word), set()).update(names)
    for stem, names in stems.items():
        if len(stem) > _SHORTEST:
            sounds.setdefault(sound(stem) + "*", set()).update(names)
    return _frozen(sounds)


def _frozen(names: dict[str, set[str]]) -> dict[str, frozenset[str]]:
    return {word: frozenset(found) for word, found in names.items()}


def stamp() -> str:
    """What the tables are made of: the words, and how they are read."""
    files = (danger_meanings.__file__, __file__, str(Path(__file__).with_name("phrases.py")))
    return hashlib.sha256(b"".join(Path(file).read_bytes() for file in files)).hexdigest()


def write_tables() -> None:
    """Writes the spellings as they stand."""
    TABLES.write_bytes(pickle.dumps((stamp(), tuple(spellings())), protocol=4))


def from_tables() -> Spellings | None:
    """The spellings that stand ready, or None where they are not those of the words."""
    if not TABLES.exists():
        return None
    of, ready = pickle.loads(TABLES.read_bytes())  # noqa: S301  (our own file, shipped beside the code)
    return Spellings(*ready) if of == stamp() else None


@cache
def lexicon() -> "Lexicon":
    """The spellings of all meanings, ready to be looked up."""
    return Lexicon(from_tables() or spellings())


class Lexicon:
    """Meanings by word, by beginning of a word, by the first of several words, and by sound."""

    def __init__(self, of: Spellings) -> None:
        self._of = of
        self._most = max(map(len, (*of.stems, *of.longer)))

    def at(self, words: tuple[str, ...], at: int) -> Iterator[str]:
        """The meanings of what begins at a place."""
        word = words[at]
        yield from self._of.exact.get(word, frozenset())
        for end in range(1, min(len(word), self._most) + 1):
            start = word[:end]
            yield from self._of.stems.get(start, frozenset())
            for spelling, name in self._of.longer.get(start, ()):
                here = words[at : at + len(spelling)]
                if len(here) == len(spelling) and all(map(_is, here, spelling)):
                    yield name

    def by_sound(self, word: str) -> frozenset[str]:
        """The meanings of the words that sound so, or have the same consonants."""
        if len(word) < _SHORTEST or not word.isalpha():
            return frozenset()
        sounds = self._of.sounds
        heard = sound(word)
        found = set(sounds.get(heard, frozenset()))
        for end in range(_SHORTEST, len(heard) + 1):
            found |= sounds.get(heard[:end] + "*", frozenset())
        return frozenset(found or sounds.get("-" + bones(word), frozenset()))


def _spelt(spelling: str) -> tuple[str, ...]:
    return tuple(
        word + "*" * (piece.endswith("*") and word == words[-1])
        for piece in spelling.split()
        for words in [tokens(piece.rstrip("*"))]
        for word in words
    )


def _is(word: str, spelling: str) -> bool:
    return word == spelling or (spelling.endswith("*") and word.startswith(spelling[:-1]))


@lru_cache(maxsize=4096)
def sound(word: str) -> str:
    """
    How a word sounds, whoever spelt it.

    Args:
        word: In lower case.

    >>> sound("brinque") == sound("brinke"), sound("abajo") == sound("avajo")
    (True, True)
    """
    for spelt, heard in _SOUNDS:
        word = spelt.sub(heard, word)
    return word


def bones(word: str) -> str:
    """
    A word without its vowels, as hurried people write.

    Args:
        word: In lower case.

    >>> bones("breaker"), bones("brkr")
    ('brkr', 'brkr')
    """
    return word[0] + re.sub("[aeiou]", "", word[1:])


def meanings(words: tuple[str, ...], known: frozenset[str]) -> set[str]:
    """
    The meanings of a text, those that are denied under a tilde.

    Args:
        words: As `tokens` gives them.
        known: Words that are spelt as they should be, whatever they sound like.

    >>> told = meanings(("no", "smoke", "|", "float", "jumped"), frozenset())
    >>> "~SMOKE" in told, "SMOKE" in told, "JUMP" in told
    (True, False, True)
    """
    told = in_figures(words)
    spellings = lexicon()
    found: set[str] = set()
    reaches = -1
    for at, word in enumerate(told):
        if word == BREAK or word in _TURNS:
            reaches = -1
        if word in (BREAK, OUT):
            continue
        names = set(spellings.at(told, at))
        if not names and word not in known:
            names = set(spellings.by_sound(word))
        found |= {f"~{name}" for name in names} if at <= reaches else names
        if word in _DENIERS:
            reaches = at + _REACH
    return found | set(_of_numbers(told))


def in_figures(words: Iterable[str]) -> tuple[str, ...]:
    """
    A text with its number words as figures.

    Args:
        words: The text.

    >>> in_figures(("two", "oh", "eight", "on", "the", "one", "twenty"))
    ('208', 'on', 'the', '120')
    """
    left = tuple(words)
    told: list[str] = []
    at = 0
    while at < len(left):
        spelt, figure = next(
            (row for row in NUMBERS.get(left[at], ()) if left[at : at + len(row[0])] == row[0]), ((left[at],), left[at])
        )
        told.append(figure)
        at += len(spelt)
    return tuple(told)


_VOLTS: Final = frozenset({"v", "vac", "volt", "volts", "voltio", "voltios", "bolts"})
_AMPS: Final = frozenset({"a", "amp", "amps", "amper", "ampere", "amperes", "amperio", "amperios"})
_OTHER: Final = (
    "hz", "ft", "feet", "foot", "pie", "metro", "awg", "ga", "uf", "mfd", "psi", "deg", "grad", "perc", "min", "hour", "hr", "hora", "year", "ano", "dollar", "buck",
    "pes", "stor", "pis", "lb", "ppm", "inch", "x", "times", "veces", "time", "w",
)  # fmt: skip
"""Beginnings of units of which no danger is told by its size."""


def _of_numbers(words: tuple[str, ...]) -> Iterator[str]:
    mains: set[float] = set()
    for word, unit in zip(words, (*words[1:], ""), strict=False):
        if not word[0].isdecimal():
            continue
        value = float(word.replace(",", "."))
        if unit in _AMPS:
            yield from ("a:big" if value > 5 else "a:small", "a:big15" if value >= 15 else "a:lt15")
        elif unit in {"va", "vas"}:
            yield "v:VA"
        elif unit.startswith(("ohm", "om", "k", "meg")):
            yield "o:0" if value < 1 else "o:"
        elif not unit.startswith(_OTHER):
            yield _size(value, unit)
            if 100 <= value <= 630:
                mains.add(value)
    if len(mains) > 1:
        yield "v:TWO"
        ratio = max(mains) / min(mains)
        if ratio >= _FAR or ratio < _SAME:
            yield "v:FAR" if ratio >= _FAR else "v:SAME"


_SIZES: Final = (
    (630.0, "n:more"), (265.0, "v:HV"), (100.0, "v:MAIN"), (31.0, "MID"), (18.0, "24"), (5.01, "n:5-18"), (0.01, "n:<5"),
)  # fmt: skip


def _size(value: float, unit: str) -> str:
    name = next((name for least, name in _SIZES if value >= least), "n:0")
    return name if ":" in name else ("v:" if unit in _VOLTS else "n:") + name
