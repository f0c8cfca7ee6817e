"""Second pass: what each phrase does beside its neighbours. It tells the grammar where a number goes on, what joins, what is a unit."""

from collections.abc import Iterator
from typing import ClassVar

from lark import Token

from grammar.phrase import Phrase
from grammar.scan import scan

MOST_PIECES = 1400
"""Pieces of a text that are read; a field message has a few dozen. What stands behind them is left unread."""

UNIT_LETTERS = {"v": "volt", "a": "amp", "k": "kiloohm", "m": "m?"}
"""Letters that are a unit behind a number; `m` is metres or megohms, the sense tells."""
GLUED_LETTERS = {
    "c": "celsius",
    "f": "not_ours",
    "w": "not_ours",
    "h": "not_ours",
    "s": "not_ours",
    "g": "gauge",
    "x": "not_ours",
}
"""Letters that are a unit only where they stick to the number."""
PAIR_LETTERS = frozenset("abcdegoprstwxyvn")
"""Letters that can be a lead or a terminal."""
SMALL_WORDS = frozenset({"the", "el", "la", "los", "las", "my", "metal", "one", "that", "its", "un", "una", "lead", "wire"})
"""Words that may stand between a join and the place it leads to."""
STRIPE_SMALL = frozenset({"w", "a", "the", "una", "la", "con", "its", "y"})
"""Words that may stand between a colour and its stripe."""
JOINS = frozenset({"to", "dash", "slash"})
SOUND_ALIKE = {"to": 2, "too": 2, "for": 4, "won": 1, "ate": 8}
"""Words that dictation writes for a number."""
COUNT_WORDS = frozenset({"one", "un", "una", "uno"})
ENDS = frozenset({"place", "colour", "mark"})
PIECE = Phrase


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
        for phrase in Row(phrases, spanish=self.spanish).labelled():
            token = Token(_TERMINALS.get(phrase.kind) or _TERMINALS.setdefault(phrase.kind, phrase.kind.upper()), phrase.text)
            token.value = phrase  # type: ignore[assignment]
            yield token


_TERMINALS = {"link": "_LINK"}


def spanish(phrases: list[Phrase]) -> bool:
    """True where more words are Spanish than English."""
    es = sum(1 for p in phrases if p.language == "es")
    return es > sum(1 for p in phrases if p.language == "en")


class Row:
    """One text's phrases while they get their roles."""

    def __init__(self, phrases: list[Phrase], *, spanish: bool) -> None:
        """Takes the phrases of `scan`; they are changed in place."""
        self.phrases = phrases
        self.spanish = spanish
        self.at = 0

    def kind(self, at: int) -> str:
        """Kind of a phrase, empty beyond the ends."""
        return self.phrases[at].kind if 0 <= at < len(self.phrases) else ""

    def glued(self, at: int) -> bool:
        """True where a phrase sticks to the one before it."""
        return 0 < at < len(self.phrases) and self.phrases[at].start == self.phrases[at - 1].end

    def labelled(self) -> Iterator[Phrase]:
        """The phrases with the kinds that the grammar knows, phrases that only link being taken in."""
        out: list[Phrase] = []
        while self.at < len(self.phrases):
            kind = self.kind(self.at)
            if self._numbered_lead(self.at):
                self._ends(out)
            elif self._number_starts(self.at):
                self._amounts(out)
            elif (kind in ENDS and self.phrases[self.at].meaning) or self._letter_joins(self.at):
                self._ends(out)
            else:
                out.append(self._alone(self.phrases[self.at]))
                self.at += 1
        return iter(out)

    # ---- numbers ---------------------------------------------------------------------------------------------------------------------

    def _number_starts(self, at: int) -> bool:
        kind = self.kind(at)
        if kind == "numeral":
            return True
        if self._sounds_alike(at):
            return True
        if kind == "dash":
            return (
                self.kind(at + 1) == "numeral" and self.glued(at + 1) and not self.glued(at) and self.kind(at - 1) != "numeral"
            )
        if kind in {"about", "over", "under"}:
            return self._number_starts(at + 1)
        if kind == "point":
            return self.kind(at + 1) == "spoken" or (self.kind(at + 1) == "numeral" and not self.glued(at))
        return kind == "spoken" and self._counts(at)

    def _sounds_alike(self, at: int) -> bool:
        """A word that dictation writes for a number: "primary to oh eight", "for eighty on the primary"."""
        if (
            not 0 <= at < len(self.phrases)
            or self.phrases[at].text not in SOUND_ALIKE
            or self.kind(at + 1) not in {"spoken", "point"}
        ):
            return False
        if self.kind(at + 1) == "spoken" and self.phrases[at + 1].text in COUNT_WORDS | {"a hundred"}:
            return False
        zero = self.phrases[at + 1].text == "oh"
        return self.kind(at - 1) == "place" or (
            zero and self.kind(at - 1) in {"", "line", "stop", "comma", "reads", "is", "filler"}
        )

    def _counts(self, at: int) -> bool:
        """A number word that is one here: "one" and "un" only before a unit or more of a number."""
        phrase, following = self.phrases[at], self.kind(at + 1)
        if phrase.text in COUNT_WORDS:
            return (
                following in {"spoken", "unit", "fraction", "device", "point"}
                or (following == "numeral" and phrase.text == "one")
                or (following == "letter" and self.phrases[at + 1].meaning in UNIT_LETTERS)
                or (
                    phrase.text == "one"
                    and following in {"", "stop", "comma", "line", "at", "and"}
                    and self.kind(at - 1) in {"is", "place", "alone", "reads", "ends", "unit"}
                )
            )
        if phrase.text in {"once", "mil", "oh", "media", "quarter"}:
            return self.spanish or following in {"spoken", "point", "unit"} or self.kind(at - 1) == "spoken"
        return True

    def _amounts(self, out: list[Phrase]) -> None:
        self._amount(out)
        while (join := self._range_join(self.at)) is not None:
            phrase, skipped = join
            phrase.kind = "upto"
            out.append(phrase)
            self.at += skipped
            self._amount(out)

    def _range_join(self, at: int) -> tuple[Phrase, int] | None:
        """What joins two numbers: "18 or 19", "3 to 4", "14-23", "de 18 a 25"."""
        phrase = self.phrases[at] if at < len(self.phrases) else None
        if phrase is None or not self._number_starts(at + 1) or self.kind(at + 1) == "dash":
            return None
        es_join = phrase.kind == "letter" and phrase.meaning in {"a", "o", "y"} and (self.spanish or phrase.meaning == "a")
        times = phrase.kind == "letter" and phrase.meaning == "x"
        dash = phrase.kind in {"dash", "slash"} and (self.glued(at) == self.glued(at + 1))
        joined = phrase.kind in {"to", "or"} or es_join or times or dash
        if phrase.kind == "and" or (phrase.meaning == "y" and es_join):
            joined = self.kind(at + 2) != "device" and any(self.kind(b) == "between" for b in range(max(0, at - 5), at))
        return (phrase, 1) if joined else None

    def _amount(self, out: list[Phrase]) -> None:
        while self.kind(self.at) in {"about", "over", "under", "dash"}:
            phrase = self.phrases[self.at]
            phrase.kind, phrase.meaning = "bound", "minus" if phrase.kind == "dash" else phrase.kind
            out.append(phrase)
            self.at += 1
        first = self.phrases[self.at]
        if self._sounds_alike(self.at):
            first.kind, first.meaning = "spoken", f"{SOUND_ALIKE[first.text]}!"
        if first.kind != "numeral":
            first.kind, first.meaning = "spoken", "." if first.kind == "point" else first.meaning
        out.append(first)
        self.at += 1
        pointed = first.meaning == "."
        while self._goes_on(self.at, pointed=pointed):
            phrase = self.phrases[self.at]
            if phrase.kind == "point":
                pointed, phrase.meaning = True, "."
            if phrase.kind != "dash":
                phrase.kind = "more"
                out.append(phrase)
            self.at += 1
        if self.kind(self.at) == "fraction":
            out.append(self.phrases[self.at])
            self.at += 1
        self._unit(out)

    def _goes_on(self, at: int, *, pointed: bool) -> bool:
        """True where the number goes on with the phrase at `at`."""
        kind, before = self.kind(at), self.phrases[at - 1]
        if kind == "point":
            return (
                not pointed
                and (self.kind(at + 1) in {"spoken", "numeral"})
                and not (self.kind(at + 1) == "numeral" and before.meaning == ".")
            )
        if kind == "dash":
            return before.kind in {"spoken", "more"} and self.kind(at + 1) == "spoken"
        if before.meaning == ".":
            return kind in {"spoken", "numeral"}
        spoken_before = before.kind in {"spoken", "more"} and not before.meaning.replace(".", "").startswith("05")
        if kind != "spoken" or self._before_a_device(at):
            return False
        if spoken_before:
            return before.meaning not in {"0.5", "0.25", "0.75"} and self.phrases[at].meaning not in {"0.5", "0.25", "0.75"}
        return self.phrases[at].text in {"oh", "hundred", "thousand", "million", "mil", "hundred and"}

    def _before_a_device(self, at: int) -> bool:
        """A number word that counts a device: "118 and two relays", "zero one contactor"."""
        return (
            self.kind(at + 1) == "device"
            and self.kind(at - 1) in {"spoken", "more"}
            and self.phrases[at].text in {"one", "un", "una", "two", "dos"}
        )

    def _unit(self, out: list[Phrase]) -> None:
        at = self.at
        if self.kind(at) == "dash" and (self.kind(at + 1) == "unit" or self._unit_letter(at + 1)) and self.glued(at):
            self.phrases[at].kind = "link"
            link: Phrase | None = self.phrases[at]
            at += 1
        else:
            link = None
        phrase = self.phrases[at] if at < len(self.phrases) else None
        if phrase is None:
            return
        if phrase.kind == "unit" or self._unit_letter(at):
            if phrase.kind == "letter":
                phrase.meaning = UNIT_LETTERS.get(phrase.meaning) or GLUED_LETTERS[phrase.meaning]
            phrase.kind = "unit"
            out.extend([link] if link else [])
            out.append(phrase)
            self.at = at + 1
        elif link:
            link.kind = "dash"

    def _unit_letter(self, at: int) -> bool:
        if self.kind(at) != "letter":
            return False
        letter = self.phrases[at].meaning
        if letter in UNIT_LETTERS:
            if letter == "a" and not self.glued(at):
                return not self._number_starts(at + 1) and not (self.kind(at + 1) in ENDS and self.spanish)
            return not (letter in "ak" and self.kind(at + 1) in JOINS and self.kind(at + 2) == "letter")
        return (
            letter in GLUED_LETTERS
            and self.glued(at)
            and self.kind(at + 1) not in {"dash", "slash", "to"}
            and not (letter == "x" and self._number_starts(at + 1))
        )

    # ---- places and leads ------------------------------------------------------------------------------------------------------------

    def _is_end(self, at: int) -> bool:
        kind = self.kind(at)
        return kind in ENDS or (kind == "letter" and self.phrases[at].meaning in PAIR_LETTERS)

    def _letter_joins(self, at: int) -> bool:
        """A letter that is one end of a pair, or a lead by the word before it."""
        if self.kind(at) != "letter" or self.phrases[at].meaning not in PAIR_LETTERS:
            return False
        return self._join(at + 1) is not None or (
            self.kind(at - 1) == "leadword" and self.kind(at + 1) not in {"unknown", "filler"}
        )

    def _numbered_lead(self, at: int) -> bool:
        """A digit that is a lead by the word before it: "lead 1 to lead 2"."""
        if self.kind(at - 1) != "leadword" or not self._lead_digit(at):
            return False
        self.phrases[at].kind = "mark"
        if self._join(at + 1) is not None:
            return True
        self.phrases[at].kind = "numeral"
        return False

    def _lead_digit(self, at: int) -> bool:
        return (
            self.kind(at) == "numeral"
            and self.phrases[at].text.isdecimal()
            and 0 < int(self.phrases[at].text) <= 12
            and self.kind(at + 1) != "unit"
            and not self._unit_letter(at + 1)
        )

    def _join(self, at: int) -> tuple[Phrase | None, int] | None:
        """What joins the end before `at` to an end behind it: (the join or None where they only touch, pieces taken)."""
        skip = at
        while self._small(skip) and skip - at < 2:
            skip += 1
        if self.kind(skip) not in {"to", "dash", "slash", "letter", "and", "with", "sign", "over", *ENDS}:
            return None
        phrase = self.phrases[skip]
        before = self.phrases[at - 1]
        behind = skip + 1
        while self._small(behind) and behind - skip < 4:
            behind += 1
        if before.kind == "mark" and before.meaning.isdecimal() and self._lead_digit(behind):
            self.phrases[behind].kind = "mark"
        if self._is_end(behind) and self._joins(phrase, before, self.phrases[behind], behind):
            return phrase, behind - at
        if skip == at and self._touch(before, phrase, at):
            return None, 0
        return None

    def _small(self, at: int) -> bool:
        return self.kind(at) in {"leadword", "winding", "transformer"} or (
            0 <= at < len(self.phrases) and self.phrases[at].text in SMALL_WORDS
        )

    def _joins(self, join: Phrase, before: Phrase, behind: Phrase, at: int) -> bool:
        letters = "letter" in {before.kind, behind.kind}
        if join.kind == "to" or join.text in {">", "→"}:
            return not letters or (before.kind, behind.kind) != ("place", "letter")
        if join.kind == "dash":
            return not (letters and before.kind == "place") and not (
                letters and behind.kind == "place" and behind.meaning != "ground"
            )
        if join.kind == "slash":
            return before.kind != "place" and behind.kind != "place"
        if join.kind == "letter" and join.meaning == "a":
            return not self._is_lettered(before, behind) or self.spanish
        between = any(self.kind(b) in {"between", "leadword"} for b in range(max(0, at - 6), at))
        if join.kind == "and" or (join.kind == "letter" and join.meaning == "y"):
            return between or (before.kind != "place" and behind.kind != "place")
        return join.kind == "with" and (
            before.kind == behind.kind == "colour" or (join.text == "con" and before.kind == behind.kind == "place")
        )

    @staticmethod
    def _is_lettered(before: Phrase, behind: Phrase) -> bool:
        return before.kind == "letter" and behind.kind == "letter"

    def _touch(self, before: Phrase, phrase: Phrase, at: int) -> bool:
        """Two ends side by side: "blk wht 3.9", "R C 25.9", "sec ground OL"."""
        if before.kind == "colour" and phrase.kind == "colour":
            return True
        if before.kind == "place" and phrase.kind == "place":
            return phrase.meaning == "ground" and before.meaning in {"primary", "secondary"}
        if before.kind in {"colour", "mark"} and phrase.kind == "place":
            return phrase.meaning == "ground"
        if before.kind == "mark" and phrase.kind == "mark":
            return True
        return before.kind == "letter" and phrase.kind == "letter" and {before.meaning, phrase.meaning} == {"r", "c"}

    def _ends(self, out: list[Phrase]) -> None:
        self._end(out)
        while (join := self._join(self.at)) is not None:
            phrase, skipped = join
            if phrase is None:
                phrase = Phrase("join", "touch", self.phrases[self.at].start, self.phrases[self.at].start)
            else:
                phrase.meaning = {"dash": "-", "slash": "/", "letter": "to", "sign": "to"}.get(phrase.kind, phrase.kind)
                phrase.kind = "join"
            out.append(phrase)
            self.at += skipped
            self._end(out)

    def _end(self, out: list[Phrase]) -> None:
        phrase = self.phrases[self.at]
        out.append(phrase)
        self.at += 1
        if phrase.kind == "colour" and (stripe := self._stripe(self.at)) is not None:
            colour, self.at = stripe
            colour.kind = "stripe"
            out.append(colour)

    def _stripe(self, at: int) -> tuple[Phrase, int] | None:
        """The stripe of the colour before `at`: "w/ white tracer", "red stripe", "con raya blanca": (its colour, where it ends)."""
        colour = stripe = None
        for step in range(at, min(at + 6, len(self.phrases))):
            phrase = self.phrases[step]
            if phrase.kind == "colour" and colour is None:
                colour = phrase
            elif phrase.kind == "stripeword" and stripe is None:
                stripe = step
            elif not (phrase.kind in {"with", "slash", "dash", "and"} or phrase.text in STRIPE_SMALL):
                return None
            if colour is not None and stripe is not None:
                return colour, step + 1
        return None

    # ---- the rest --------------------------------------------------------------------------------------------------------------------

    def _alone(self, phrase: Phrase) -> Phrase:
        """A phrase that stands by itself, under the kind that the grammar knows for it."""
        if phrase.kind == "letter" and phrase.meaning in {"w", "y", "n", "o"}:
            phrase.kind = {"w": "with", "y": "and", "n": "and", "o": "or"}[phrase.meaning]
        phrase.kind = _ALONE.get(phrase.kind, phrase.kind)
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
