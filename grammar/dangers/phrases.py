"""
Turns of phrase, found in any wording: `bypass|jump* .. {FLOAT}` is one of two verbs, up to five other words, a float switch.

`a|b` one of them, `stem*` anything that begins so, `two_words` joined, `{NAME}` a concept, `.` up to two other words, `..` up to five,
`~` up to the next pause, `...` up to nine and across pauses, `&` articles, `{BIG}` and `{SMALL}` two numbers of which the first must be larger, `@NAME` the
concept stands anywhere in the text, `!NAME` it stands nowhere.
"""

import re
import unicodedata
from bisect import bisect_left
from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass, field
from typing import Final

BREAK: Final = "|"
"""The token that stands for a comma, a full stop, a new line."""
MOST_STARTS: Final = 64
"""At how many places of a text a phrase is tried: who writes a word so often tells nothing with it."""
_GAPS: Final = {".": 2, "..": 5, "~": 14, "...": 9}
_MARKS: Final = frozenset({"{BIG}", "{SMALL}", "&", *_GAPS})
_ARTICLES: Final = frozenset(
    (
        "the",
        "that",
        "this",
        "these",
        "those",
        "my",
        "a",
        "an",
        "your",
        "his",
        "her",
        "its",
        "their",
        "el",
        "la",
        "los",
        "las",
        "un",
        "una",
        "unos",
        "ese",
        "esa",
        "este",
        "esta",
        "mi",
        "su",
        "le",
        "lo",
        "al",
        "del",
        "de",
    )
)
_HALTS: Final = frozenset(
    (
        "blew",
        "blows",
        "pops",
        "popped",
        "trips",
        "tripped",
        "because",
        "but",
        "then",
        "when",
        "unless",
        "got",
        "get",
        "gets",
        "read",
        "reads",
        "reading",
        "off",
        "dead",
        "quemo",
        "cuando",
        "porque",
        "pero",
        "entonces",
        "lei",
        "leo",
    )
)
"""A gap does not reach over these: another thing is being said."""
DENIALS: Final = frozenset({
    "not", "never", "didnt", "dont", "wont", "isnt", "wasnt", "arent", "aint", "havent", "hasnt", "doesnt", "wouldnt", "shouldnt",
    "without", "nobody", "nothing", "none", "neither", "nor", "cannot", "cant", "couldnt", "refuse", "refused", "nunca", "tampoco", "nadie", "nada", "ningun", "ninguno", "ni", "sin",
})  # fmt: skip
"""They deny what follows within a few words."""
_SPLIT: Final = re.compile(r"\d+(?:[.,]\d+)?|[a-z]+|[^\sa-z\d]")
_APART: Final = re.compile(r"(?<=\d)(?=[a-z])|(?<=[a-z])(?=\d)")
_PAUSE: Final = frozenset(".,;:!?()\n—")


def tokens(text: str) -> tuple[str, ...]:
    """
    The words of a text in lower case, without accents and apostrophes, its pauses as `BREAK`.

    Args:
        text: As it was sent.

    >>> tokens("Didn't jump it, ¿sí?")
    ('didnt', 'jump', 'it', '|', 'si', '|')
    """
    plain = "".join(c for c in unicodedata.normalize("NFD", text.casefold()) if not unicodedata.combining(c))
    plain = plain.replace("'", "").replace("’", "").replace("w/o", "without").replace("\n", " . ")
    found: list[str] = []
    for token in _SPLIT.findall(plain):
        if token in _PAUSE:
            found.append(BREAK)
        elif token.isalnum() or token[0].isdigit():
            found.append(token)
    return tuple(found)


@dataclass(frozen=True, slots=True, eq=False)
class OneOf:
    """Words of which one must stand here."""

    exact: frozenset[str]
    stems: tuple[str, ...]
    longer: Mapping[str, tuple[tuple[str, ...], ...]]
    """Spellings of several words by their first, those that begin with a stem under the star."""
    starts: frozenset[str]
    """The first words of the spellings that have no star."""
    star_starts: tuple[str, ...]
    """The stems that a spelling may begin with."""

    @classmethod
    def of(cls, rows: Iterable[tuple[str, ...]]) -> "OneOf":
        """From spellings as words, a star at the end of a stem."""
        exact: list[str] = []
        stems: list[str] = []
        longer: dict[str, tuple[tuple[str, ...], ...]] = {}
        starts: list[str] = []
        star_starts: list[str] = []
        for row in rows:
            first = row[0]
            starred = first[-1] == "*"
            (star_starts if starred else starts).append(first[:-1] if starred else first)
            if len(row) > 1:
                key = "*" if starred else first
                longer[key] = (*longer.get(key, ()), row)
            elif starred:
                stems.append(first[:-1])
            else:
                exact.append(first)
        return cls(frozenset(exact), tuple(stems), longer, frozenset(starts), tuple(star_starts))

    def says(self, words: frozenset[str]) -> bool:
        """True where one of these words stands in one of the spellings."""
        return not self.exact.isdisjoint(words) or any(
            not words.isdisjoint(row) for rows in self.longer.values() for row in rows
        )

    def ends(self, words: tuple[str, ...], at: int) -> Iterator[int]:
        """Where what begins at a place ends, for each spelling that fits."""
        if words[at] in self.exact or (self.stems and words[at].startswith(self.stems)):
            yield at + 1
        for row in (*self.longer.get(words[at], ()), *self.longer.get("*", ())):
            here = words[at : at + len(row)]
            if len(here) == len(row) and all(_is(word, spelling) for word, spelling in zip(here, row, strict=True)):
                yield at + len(row)


def _is(word: str, spelling: str) -> bool:
    return word.startswith(spelling[:-1]) if spelling.endswith("*") else word == spelling


@dataclass(frozen=True, slots=True)
class Phrase:
    """One turn of phrase, ready to be looked for."""

    parts: tuple[OneOf | str, ...]
    """A `OneOf`, or a mark: a gap, the articles, a number."""
    anywhere: tuple[OneOf, ...] = ()
    nowhere: tuple[OneOf, ...] = ()
    denies: bool = False
    """True where it has a denial of its own: "not rated"."""


@dataclass(slots=True)
class Found:
    """A phrase in a text: from its first word up to the one after its last."""

    start: int
    end: int
    numbers: dict[str, float] = field(default_factory=dict)


def phrase(written: str, concepts: Mapping[str, tuple[str, ...]]) -> Phrase:
    """
    A phrase as it is written in the vocabulary.

    Args:
        written: See the head of this file.
        concepts: What the names in braces stand for.

    Raises:
        KeyError: A concept that is not there.
    """
    pieces = written.split()
    parts = tuple(p if p in _MARKS else _one_of(p, concepts) for p in pieces if p[0] not in "@!")
    return Phrase(
        parts,
        tuple(_one_of("{" + p[1:] + "}", concepts) for p in pieces if p[0] == "@"),
        tuple(_one_of("{" + p[1:] + "}", concepts) for p in pieces if p[0] == "!"),
        any(part.says(DENIALS) for part in parts if isinstance(part, OneOf)),
    )


_KNOWN: Final[dict[str, OneOf]] = {}
_ROWS: Final[dict[str, tuple[tuple[str, ...], ...]]] = {}


def _one_of(piece: str, concepts: Mapping[str, tuple[str, ...]]) -> OneOf:
    """Alternatives that many phrases share are made once."""
    if piece not in _KNOWN:
        rows: list[tuple[str, ...]] = []
        for choice in piece.split("|"):
            rows += _concept_rows(choice[1:-1], concepts) if choice[0] == "{" else [_row(choice.replace("_", " "))]
        _KNOWN[piece] = OneOf.of(rows)
    return _KNOWN[piece]


def concept(name: str, concepts: Mapping[str, tuple[str, ...]]) -> OneOf:
    """
    A concept by itself.

    Args:
        name: Its name.
        concepts: All of them.
    """
    return _one_of("{" + name + "}", concepts)


def _concept_rows(name: str, concepts: Mapping[str, tuple[str, ...]]) -> tuple[tuple[str, ...], ...]:
    if name not in _ROWS:
        _ROWS[name] = tuple(_row(spelling) for spelling in concepts[name])
    return _ROWS[name]


def _row(spelling: str) -> tuple[str, ...]:
    """The words of one spelling, figures apart from letters as in a text."""
    return tuple((spelling if spelling.replace(" ", "").isalpha() else _APART.sub(" ", spelling)).split())


_NOWHERE: Final[dict[int, tuple[int, ...]]] = {}


class Text:
    """The words of one message, with where each alternative stands found once."""

    def __init__(self, words: tuple[str, ...]) -> None:
        self.words = words
        self._at: dict[str, list[int]] = {}
        for at, word in enumerate(words):
            places = self._at.setdefault(word, [])
            if len(places) < MOST_STARTS:
                places.append(at)
        self.different = sorted(self._at)
        self._words = frozenset(self._at)
        self._initials = frozenset(word[0] for word in self._words)
        self._seen: dict[OneOf, dict[int, tuple[int, ...]]] = {}

    def where(self, one: OneOf) -> dict[int, tuple[int, ...]]:
        """Start to ends of each place where one of the spellings stands."""
        if one not in self._seen:
            first = set() if one.starts.isdisjoint(self._words) else set(one.starts & self._words)
            for stem in one.star_starts:
                if stem[0] in self._initials:
                    first.update(self.beginning(stem))
            if not first:
                self._seen[one] = _NOWHERE
                return _NOWHERE
            ends = {at: tuple(one.ends(self.words, at)) for word in first for at in self._at[word]}
            self._seen[one] = {at: ends[at] for at in sorted(ends) if ends[at]}
        return self._seen[one]

    def beginning(self, stem: str) -> list[str]:
        """The different words that begin with a stem."""
        first = bisect_left(self.different, stem)
        last = first
        while last < len(self.different) and self.different[last].startswith(stem):
            last += 1
        return self.different[first:last]

    def has(self, one: OneOf) -> bool:
        """True where one of the spellings is in the text."""
        return bool(self.where(one))


def needed(sought: Phrase) -> tuple[OneOf, ...]:
    """
    What a text must have anywhere for a phrase to stand in it.

    Args:
        sought: From `phrase`.
    """
    return (*(part for part in sought.parts if isinstance(part, OneOf)), *sought.anywhere)


def places(sought: Phrase, text: Text) -> Iterator[Found]:
    """
    Everywhere that a phrase stands.

    Args:
        sought: From `phrase`.
        text: The message.
    """
    if not all(text.has(one) for one in needed(sought)) or any(text.has(one) for one in sought.nowhere):
        return
    first = sought.parts[0]
    for start in text.where(first) if isinstance(first, OneOf) else range(min(len(text.words), MOST_STARTS)):
        for end, numbers in _match(sought.parts, text, start):
            if not numbers or numbers["{BIG}"] > numbers.get("{SMALL}", 0.0):
                yield Found(start, end, numbers)
                break


def _match(parts: tuple[OneOf | str, ...], text: Text, at: int) -> Iterator[tuple[int, dict[str, float]]]:
    if not parts:
        yield at, {}
        return
    first, rest = parts[0], parts[1:]
    if isinstance(first, OneOf):
        for end in text.where(first).get(at, ()):
            yield from _match(rest, text, end)
    elif first in {"{BIG}", "{SMALL}"}:
        yield from _number(first, rest, text, at)
    else:
        for end in _skipped(first, text.words, at):
            yield from _match(rest, text, end)


_UNITS: Final = frozenset(
    ("v", "volt", "volts", "vac", "va", "a", "amp", "amps", "ampere", "amperes", "amperios", "amperio", "awg", "gauge")
)


def _number(name: str, rest: tuple[OneOf | str, ...], text: Text, at: int) -> Iterator[tuple[int, dict[str, float]]]:
    words = text.words
    if at >= len(words) or not words[at][0].isdecimal():
        return
    value = {name: float(words[at].replace(",", "."))}
    has_unit = at + 1 < len(words) and words[at + 1] in _UNITS
    for after in (at + 1, at + 2)[: 1 + has_unit]:
        for end, numbers in _match(rest, text, after):
            yield end, value | numbers


def _skipped(gap: str, words: tuple[str, ...], at: int) -> Iterator[int]:
    """Where a gap may end: the shortest first."""
    yield at
    for end in range(at, min(len(words), at + _GAPS.get(gap, 2))):
        word = words[end]
        if gap == "&" and word not in _ARTICLES:
            return
        if (gap == "~" and word == BREAK) or (gap in {".", ".."} and (word == BREAK or word in _HALTS)):
            return
        yield end + 1
