"""
Which phrases a text may hold, by the words that each cannot do without.

Which word that is takes 40 ms to find out for all phrases. So it stands ready in `danger.tables`; `python -m grammar.write_tables` writes it anew
after a change, a test says when that was forgotten, and until then it is found out at the start.
"""

import hashlib
import pickle
from collections.abc import Mapping, Sequence
from functools import cache
from pathlib import Path
from typing import Any, Final

from grammar.dangers.phrases import Phrase, Text, needed, phrase
from grammar.words import danger_acts, danger_concepts, danger_parts, danger_senses, dangers
from grammar.words.row import Cue

Row = tuple[str, str]
"""What a phrase means, and the phrase as it is written."""
Keys = tuple[dict[str, list[int]], dict[str, list[int]], list[int]]
"""The numbers of the phrases by word, by the beginning of a word, and those that are always looked for."""

TABLES: Final = Path(__file__).with_name("danger.tables")
_FROM: Final = (danger_acts, danger_concepts, danger_parts, danger_senses, dangers)


def _of(cues: Sequence[Cue]) -> tuple[Row, ...]:
    return tuple((cue.meaning, written) for cue in cues for written in (*cue.en, *cue.es))


ROWS: Final[Mapping[str, tuple[Row, ...]]] = {
    "acts": _of(danger_acts.ACTS),
    "dangers": _of(dangers.DANGERS),
    "satisfied": _of(dangers.SATISFIED),
    "senses": tuple(("", written) for written in danger_senses.SENSES),
}
"""Every phrase, by the table that it stands in."""


def keys_of(rows: Sequence[Row]) -> Keys:
    """
    The words by which phrases are found: of each the part with the fewest spellings.

    Args:
        rows: The phrases.
    """
    by_word: dict[str, list[int]] = {}
    by_stem: dict[str, list[int]] = {}
    always: list[int] = []
    for number, (_, written) in enumerate(rows):
        parts = needed(phrase(written, danger_parts.PARTS))
        if not parts:
            always.append(number)
            continue
        rarest = min(parts, key=lambda one: len(one.star_starts) * 4 + len(one.starts))
        for word in sorted(rarest.starts):
            by_word.setdefault(word, []).append(number)
        for stem in rarest.star_starts:
            by_stem.setdefault(stem, []).append(number)
    return by_word, by_stem, always


class Index:
    """The phrases of one table: each is made ready when a text may hold it."""

    def __init__(self, rows: Sequence[Row], keys: Keys) -> None:
        """The phrases, and the words by which they are found."""
        self.rows = rows
        self._by_word, self._by_stem, self._always = keys
        self._longest = max((len(stem) for stem in self._by_stem), default=0)
        self._ready: dict[int, Phrase] = {}

    def held_by(self, text: Text) -> list[tuple[str, Phrase]]:
        """The phrases that may stand in a text, in their order."""
        numbers = set(self._always)
        for word in text.different:
            numbers.update(self._by_word.get(word, ()))
            for end in range(1, min(len(word), self._longest) + 1):
                numbers.update(self._by_stem.get(word[:end], ()))
        return [(self.rows[number][0], self._phrase(number)) for number in sorted(numbers)]

    def _phrase(self, number: int) -> Phrase:
        if number not in self._ready:
            self._ready[number] = phrase(self.rows[number][1], danger_parts.PARTS)
        return self._ready[number]


def stamp() -> str:
    """What the tables are made of: the words, and how phrases are read."""
    files = (*(module.__file__ for module in _FROM), str(Path(__file__).with_name("phrases.py")), __file__)
    return hashlib.sha256(b"".join(Path(file).read_bytes() for file in files if file)).hexdigest()


def write_tables() -> None:
    """Writes the tables of the words as they stand."""
    keys = {name: keys_of(rows) for name, rows in ROWS.items()}
    TABLES.write_bytes(pickle.dumps({"stamp": stamp(), "keys": keys}, protocol=4))


def from_tables() -> Mapping[str, Any]:
    """The keys of each table, or none where they are not those of the words."""
    if not TABLES.exists():
        return {}
    tables = pickle.loads(TABLES.read_bytes())  # noqa: S301  (our own file, shipped beside the code)
    keys: Mapping[str, Any] = tables["keys"] if tables["stamp"] == stamp() else {}
    return keys


@cache
def _tables() -> Mapping[str, Any]:
    return from_tables()


@cache
def index(name: str) -> Index:
    """
    The phrases of one table.

    Args:
        name: One of `ROWS`.
    """
    rows = ROWS[name]
    return Index(rows, _tables().get(name) or keys_of(rows))
