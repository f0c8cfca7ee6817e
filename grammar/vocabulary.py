"""The vocabulary by its words: the longest entry that fits wins."""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass, field
from functools import cache
from itertools import chain, product

from grammar.fold import fold
from grammar.uncollected import uncollected
from grammar.words import conditions, places, values
from grammar.words.colours import COLOURS, LEADS
from grammar.words.conditions import CONDITIONS, HEADINGS
from grammar.words.devices import DEVICES
from grammar.words.links import LINKS
from grammar.words.not_ours import NOT_OURS
from grammar.words.numbers import NUMBERS
from grammar.words.places import PLACES
from grammar.words.row import Words
from grammar.words.units import UNITS
from grammar.words.values import VALUES

ROWS: tuple[Words, ...] = (
    *PLACES, *UNITS, *COLOURS, *LEADS, *DEVICES, *VALUES, *CONDITIONS, *HEADINGS, *NUMBERS, *LINKS, *NOT_OURS,
)  # fmt: skip
"""Every row of the vocabulary that the grammar's words are made of."""
PATTERNS = (*conditions.PATTERNS, *places.PATTERNS, *values.PATTERNS)
"""Rows that are put together."""


@dataclass(slots=True)
class Node:
    """One step into an entry: what may follow, and what has been said when it ends here."""

    steps: "dict[str, Node]" = field(default_factory=dict)
    row: Words | None = None
    language: str | None = None


def pieces(entry: str) -> tuple[str, ...]:
    """
    An entry cut as the lexer cuts a text.

    >>> pieces("w/ R off"), pieces("0-10v"), pieces("can't"), pieces("o.l.")
    (('w', '/', 'r', 'off'), ('0', '-', '10', 'v'), ('cant',), ('o', '.', 'l', '.'))
    """
    if not entry:
        return ()
    bare = entry.replace("'", "")
    if bare.replace(" ", "").isalpha():  # nearly all of them, and there are thousands
        return tuple(bare.lower().split()) if bare.isascii() else tuple(fold(word) for word in entry.split())
    found: list[str] = []
    for chunk in entry.split():
        run = ""
        for c in chunk:
            if run and _class(c) == _class(run[-1]) != "sign":
                run += c
            else:
                found += [run] if run else []
                run = c
        found.append(run)
    return tuple(fold(piece) for piece in found)


def _class(c: str) -> str:
    return "digit" if c.isdecimal() else "letter" if c.isalnum() or c in "'’" else "sign"


def entries() -> Iterable[tuple[tuple[str, ...], Words, str | None]]:
    """All entries, cut into pieces, with row and language."""
    for row in ROWS:
        for language, words in (("en", row.en), ("es", row.es), (None, row.both)):
            for word in words:
                yield pieces(word), row, language
    for pattern in PATTERNS:
        row = Words(pattern.kind, pattern.meaning)
        for parts in product(*([pieces(choice) for choice in part] for part in pattern.parts)):
            yield tuple(chain(*parts)), row, pattern.language


@cache
@uncollected()
def tree() -> Node:
    """The vocabulary as a tree of pieces, built at the first message."""
    root = Node()
    for row in ROWS:
        for language, words in (("en", row.en), ("es", row.es), (None, row.both)):
            for word in words:
                node = _step(root, pieces(word))
                node.row, node.language = row, language
    for pattern in PATTERNS:
        row, nodes = Words(pattern.kind, pattern.meaning), [root]
        for part in pattern.parts:  # each part on every end of the parts before it: nothing is walked twice
            choices = [pieces(choice) for choice in part]
            nodes = [_step(node, choice) for node in nodes for choice in choices]
        for node in nodes:
            node.row, node.language = row, pattern.language
    return root


def _step(node: Node, words: Sequence[str]) -> Node:
    """Where the words lead from a node, made where it is new."""
    for word in words:
        following = node.steps.get(word)
        if following is None:
            following = node.steps[word] = Node()
        node = following
    return node


def longest(texts: Sequence[str], start: int) -> tuple[int, Node] | None:
    """The longest entry that begins at `start`: how many pieces it has and where the tree ends."""
    steps, found, at = tree().steps, None, start
    while at < len(texts) and (node := steps.get(texts[at])) is not None:
        at += 1
        if node.row is not None:
            found = (at - start, node)
        steps = node.steps
    return found
