"""Where places and leads are joined to pairs, and where a second colour is a stripe."""

from grammar.number_row import NumberRow
from grammar.phrase import Phrase
from grammar.row import ENDS

PAIR_LETTERS = frozenset("abcdeghoprstwxyvn")
"""Letters that can be a lead or a terminal."""
SMALL_WORDS = frozenset({"the", "el", "la", "los", "las", "my", "metal", "one", "that", "its", "un", "una", "lead", "wire"})
"""Words that may stand between a join and the place it leads to."""
LINE_MARKS = frozenset({"l1", "l2", "l3"})
MARKS = frozenset("abcdef")
"""Letters that leads without a colour are called by."""
CONTROLS = frozenset({"r", "y", "w", "g", "o", "b"})
"""Letters of a thermostat, whose common is C."""
NEUTRAL = frozenset({"n", "neutral", "neut", "neutro"})
"""What stands for the neutral behind one of the legs of a supply."""
STRIPE_SMALL = frozenset({"w", "a", "the", "una", "la", "con", "its", "y"})
"""Words that may stand between a colour and its stripe."""


class EndRow(NumberRow):
    """A row that knows its pairs as well."""

    def _is_end(self, at: int) -> bool:
        kind = self.kind(at)
        return kind in ENDS or (kind == "letter" and self.phrases[at].meaning in PAIR_LETTERS)

    def letter_joins(self, at: int) -> bool:
        """A letter that is one end of a pair, or a lead by the word before it."""
        if self.kind(at) != "letter" or self.phrases[at].meaning not in PAIR_LETTERS:
            return False
        return self._join(at + 1) is not None or (
            self.kind(at - 1) == "leadword" and self.kind(at + 1) not in {"unknown", "filler"}
        )

    def numbered_lead(self, at: int) -> bool:
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
            and not self.unit_letter(at + 1)
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
        if before.meaning in LINE_MARKS and self.kind(behind) and self.phrases[behind].text in NEUTRAL:
            self.phrases[behind].kind, self.phrases[behind].meaning = "mark", "n"
        if before.kind == "letter" and before.meaning in CONTROLS and self.kind(behind) == "common":
            self.phrases[behind].kind, self.phrases[behind].meaning = "letter", "c"
        if self._is_end(behind) and self._joins(phrase, before, self.phrases[behind], behind):
            return phrase, behind - at
        if skip == at and (self._touch(before, phrase) or self._are_marks(before, phrase, at)):
            return None, 0
        return None

    def _are_marks(self, before: Phrase, phrase: Phrase, at: int) -> bool:
        """In "a b 20.0, a c 40.1": two letters of the alphabet's beginning side by side before a number."""
        letters = before.kind == phrase.kind == "letter" and {before.meaning, phrase.meaning} <= MARKS
        return letters and before.meaning != phrase.meaning and self.kind(at + 1) == "numeral" and not self.spanish

    def _small(self, at: int) -> bool:
        return self.kind(at) in {"leadword", "winding", "transformer"} or (
            0 <= at < len(self.phrases) and self.phrases[at].text in SMALL_WORDS
        )

    def _joins(self, join: Phrase, before: Phrase, behind: Phrase, at: int) -> bool:
        letters = "letter" in {before.kind, behind.kind}
        if join.text in {"into", "looking into"} and behind.meaning == "load":
            return False  # "R to C into the field wires": where R and C look, no third end
        if join.kind == "to" or join.text in {">", "→"}:
            return not letters or (before.kind, behind.kind) != ("place", "letter")
        if join.text == "+":
            return before.kind == behind.kind and before.kind in {"colour", "mark"}
        if join.kind == "dash":
            return not (letters and before.kind == "place") and not (
                letters and behind.kind == "place" and behind.meaning != "ground"
            )
        if join.kind == "slash":
            return before.kind != "place" and behind.kind != "place"
        if join.kind == "letter" and join.meaning == "a":
            to_common = behind.meaning == "c" and before.meaning in {"r", "y", "w", "g"}  # "y a c 22 ohms"
            return (
                not self._is_lettered(before, behind)
                or self.spanish
                or to_common
                or (before.meaning, behind.meaning) == ("c", "r")
            )
        between = any(self.kind(b) in {"between", "leadword"} for b in range(max(0, at - 6), at))
        if join.kind == "and" or (join.kind == "letter" and join.meaning == "y"):
            alike = before.kind == behind.kind or "letter" in {before.kind, behind.kind}
            return between or (alike and before.kind != "place" and behind.kind != "place")
        if join.text == "con" and {before.meaning, behind.meaning} == {"r", "c"}:
            return True
        return join.kind == "with" and (
            before.kind == behind.kind == "colour"
            or (join.text == "con" and before.kind == behind.kind and before.kind in {"place", "mark"})
            or (join.text == "con" and behind.meaning == "ground" and before.kind in {"colour", "mark", "place"})
        )

    @staticmethod
    def _is_lettered(before: Phrase, behind: Phrase) -> bool:
        return before.kind == "letter" and behind.kind == "letter"

    def _touch(self, before: Phrase, phrase: Phrase) -> bool:
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

    def ends(self, out: list[Phrase]) -> None:
        """Takes one place or lead, or all that are joined, into the row."""
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
