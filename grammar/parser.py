"""
Builds the grammar once and turns a text into its row of phrases.

Building from the text of the grammar costs 170 ms, most of it for lark to read it. So the finished tables stand beside it in
`message.tables`; `python -m grammar.write_tables` writes them anew after a change, a test says when that was forgotten, and until then
the text counts.
"""

import hashlib
import pickle
from dataclasses import dataclass
from functools import cache
from pathlib import Path
from typing import Any

import lark
from lark import Lark, Token, Transformer, v_args
from lark.grammar import Rule
from lark.lexer import TerminalDef

from grammar.numerals import amount_of
from grammar.phrase import Amount, End, Phrase
from grammar.roles import Roles
from grammar.uncollected import uncollected

GRAMMAR = Path(__file__).with_name("message.lark")
TABLES = GRAMMAR.with_suffix(".tables")


@dataclass(frozen=True, slots=True)
class Parsed:
    """A text after the grammar."""

    phrases: tuple[Phrase, ...]
    repairs: tuple[tuple[str, str], ...]
    spanish: bool
    words: tuple[Phrase, ...]
    """The vocabulary's phrases before the grammar joined them."""
    cut: int | None = None
    """Where reading ended, if before the end of the text."""


@v_args(inline=True)
class Phrases(Transformer[Token, Any]):
    """One method a rule of the grammar, named as the rule."""

    def number(self, *parts: Token) -> tuple[Phrase, ...]:
        """The words of a number."""
        return tuple(part.value for part in parts)

    def amount(self, *parts: Any) -> Amount:
        """A number with what stands before and behind it."""
        before = [p.value for p in parts if isinstance(p, Token) and p.type == "BOUND"]
        unit = next((p.value for p in parts if isinstance(p, Token) and p.type == "UNIT"), None)
        number = next(p for p in parts if isinstance(p, tuple))
        behind = tuple(p.value for p in parts if isinstance(p, Token) and p.type == "FRACTION")  # "24 volts and a half"
        return amount_of(before, (*number, *behind), unit)

    def amounts(self, *parts: Any) -> Phrase:
        """One amount, or several that are joined."""
        amounts = tuple(p for p in parts if isinstance(p, Amount))
        joins = tuple(p.value.meaning if p.value.kind != "letter" else p.value.text for p in parts if isinstance(p, Token))
        return Phrase("amounts", "", amounts[0].start, amounts[-1].end, amounts=amounts, joins=joins)

    def end(self, *parts: Token) -> End:
        """One place or lead."""
        first: Phrase = parts[0].value
        last: Phrase = parts[-1].value
        return End(first.kind, first.meaning, first.start, last.end, last.meaning if len(parts) > 1 else None)  # type: ignore[arg-type]

    def ends(self, *parts: Any) -> Phrase:
        """One end, or several that are joined."""
        ends = tuple(p for p in parts if isinstance(p, End))
        joins = tuple(p.value.meaning for p in parts if isinstance(p, Token))
        return Phrase("ends", "", ends[0].start, ends[-1].end, ends=ends, joins=joins)

    def message(self, *parts: Any) -> tuple[Phrase, ...]:
        """The row."""
        return tuple(p.value if isinstance(p, Token) else p for p in parts)


def build(*, strict: bool = False, roles: Roles | None = None) -> Lark:
    """The grammar as a parser; `strict` makes every collision in it an error."""
    return Lark(
        GRAMMAR.read_text(encoding="utf-8"),
        parser="lalr",
        lexer="basic",
        start="message",
        postlex=roles or Roles(),
        transformer=Phrases(),
        strict=strict,
        maybe_placeholders=False,
    )


def stamp() -> str:
    """What the tables are made of: this grammar, by this lark."""
    return hashlib.sha256(GRAMMAR.read_bytes() + lark.__version__.encode()).hexdigest()


def write_tables() -> None:
    """Writes the tables of the grammar as it stands."""
    data, memo = build().memo_serialize([TerminalDef, Rule])
    data["options"] |= {"transformer": None, "postlex": None}  # given anew when they are read
    TABLES.write_bytes(pickle.dumps({"stamp": stamp(), "data": data, "memo": memo}, protocol=4))


def from_tables(roles: Roles) -> Lark | None:
    """The parser from its tables, or None where they are not those of the grammar."""
    if not TABLES.exists():
        return None
    tables = pickle.loads(TABLES.read_bytes())  # noqa: S301  (our own file, shipped beside the grammar)
    if tables["stamp"] != stamp():
        return None
    # what lark's own standalone parsers call: plain dictionaries in, no grammar read
    return Lark._load_from_dict(tables["data"], tables["memo"], transformer=Phrases(), postlex=roles)  # type: ignore[no-any-return, no-untyped-call]  # noqa: SLF001


@cache
@uncollected()
def _parser() -> tuple[Lark, Roles]:
    roles = Roles()
    return from_tables(roles) or build(roles=roles), roles


def parse(text: str) -> Parsed:
    """The phrases of any text."""
    lark, roles = _parser()
    phrases: Any = lark.parse(text)
    return Parsed(phrases, tuple(roles.repairs), roles.spanish, tuple(roles.phrases), roles.cut)
