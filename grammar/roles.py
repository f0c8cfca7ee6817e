"""Second pass: what each phrase does beside its neighbours. It tells the grammar where a number goes on, what joins, what is a unit."""

from collections.abc import Iterator
from typing import ClassVar

from lark import Token

from grammar.end_row import EndRow
from grammar.phrase import Phrase
from grammar.row import ENDS
from grammar.scan import scan

MOST_PIECES = 800
"""Pieces of a text that are read; a field message has a few dozen. What stands behind them is left unread."""


class Roles:
    """Lark's hook between lexer and parser."""

    always_accept: ClassVar[tuple[str, ...]] = ("WORD", "RETURN", "POINTS", "OTHER", "NUMERAL")

    def __init__(self) -> None:
        """Keeps what the last text gave besides its tokens; a reader makes one for each text."""
        self.repairs: list[tuple[str, str]] = []
        self.spanish = False
        self.phrases: list[Phrase] = []
        self.cut: int | None = None
        """Where reading ended, if before the end of the text."""

    def process(self, stream: Iterator[Token]) -> Iterator[Token]:
        """The tokens that the grammar knows."""
        pieces: list[Token] = []
        self.cut = None
        for piece in stream:
            if len(pieces) == MOST_PIECES:
                self.cut = piece.start_pos
                break
            pieces.append(piece)
        phrases, self.repairs = scan(pieces)
        self.phrases = phrases
        self.spanish = spanish(phrases)
        for phrase in LabelledRow(phrases, spanish=self.spanish).labelled():
            token = Token(_TERMINALS.get(phrase.kind) or _TERMINALS.setdefault(phrase.kind, phrase.kind.upper()), phrase.text)
            token.value = phrase
            yield token


_TERMINALS = {"link": "_LINK"}


def spanish(phrases: list[Phrase]) -> bool:
    """True where more words are Spanish than English."""
    es = sum(1 for p in phrases if p.language == "es")
    return es > sum(1 for p in phrases if p.language == "en")


class LabelledRow(EndRow):
    """A row that gives every phrase the kind that the grammar knows."""

    def labelled(self) -> Iterator[Phrase]:
        """The phrases with the kinds that the grammar knows, phrases that only link being taken in."""
        out: list[Phrase] = []
        while self.at < len(self.phrases):
            kind = self.kind(self.at)
            if self.numbered_lead(self.at):
                self.ends(out)
            elif self.number_starts(self.at):
                self.amounts(out)
            elif (kind in ENDS and self.phrases[self.at].meaning) or self.letter_joins(self.at):
                self.ends(out)
            else:
                out.append(self._alone(self.phrases[self.at]))
                self.at += 1
        return iter(out)

    def _alone(self, phrase: Phrase) -> Phrase:
        """A phrase that stands by itself, under the kind that the grammar knows for it."""
        if phrase.kind == "letter" and phrase.meaning in {"w", "y", "n", "o"}:
            phrase.kind = {"w": "with", "y": "and", "n": "and", "o": "or"}[phrase.meaning]
        phrase.kind = _ALONE.get(phrase.kind, phrase.kind)
        if phrase.kind == "alone" and phrase.text == "va" and self.spanish and self.kind(self.at + 1) != "colon":
            phrase.kind = "filler"  # "va y viene"
        if phrase.kind == "alone" and phrase.meaning in {
            "not_ours",
            "gauge",
            "foot",
            "meter",
            "inch",
            "yard",
            "hertz",
            "celsius",
            "square_mm",
        }:
            phrase.kind = "filler" if phrase.meaning != "gauge" else "gaugeword"
        return phrase


_ALONE = {
    "unit": "alone", "spoken": "filler", "about": "filler", "over": "filler", "under": "filler", "point": "filler", "fraction": "filler", "stripe": "filler",
    "dash": "sign", "slash": "sign", "stripeword": "filler", "letter": "filler",
}  # fmt: skip
"""What a phrase is that found no partner."""
