"""Where a number begins, goes on and ends, and what its unit is."""

from grammar.phrase import Phrase
from grammar.row import ENDS, JOINS, Row

UNIT_LETTERS = {"v": "volt", "a": "amp", "k": "kiloohm", "m": "m?"}
"""Letters that are a unit behind a number; `m` is metres or megohms, the sense tells."""
GLUED_LETTERS = {
    "c": "celsius",
    "f": "not_ours",
    "w": "watt",
    "h": "not_ours",
    "s": "not_ours",
    "g": "gauge",
    "x": "not_ours",
}
"""Letters that are a unit only where they stick to the number."""
SOUND_ALIKE = {"to": 2, "too": 2, "for": 4, "won": 1, "ate": 8}
"""Words that dictation writes for a number."""
GETS = frozenset(
    {
        "got",
        "i got",
        "get",
        "i get",
        "gets",
        "getting",
        "im getting",
        "reads",
        "shows",
        "showing",
        "is",
        "its",
        "gives me",
        "shows me",
    }
)
"""Verbs behind which a value stands, and no purpose."""
TENS = frozenset({"20", "30", "40", "70", "80"})
"""Second parts of usual supplies: 120, 208, 240, 277, 480."""
OF_SEVERAL = frozenset({"new", "old", "other", "bad", "good", "last", "first", "second", "which", "same", "next"})
"""Words before "one" that make it a thing."""
TENS_AND_TEENS = frozenset(str(number) for number in (*range(10, 20), 20, 30, 40, 50, 60, 70, 80, 90))
"""Second parts of "2 forty", "1 eighteen", as dictation writes them."""
GOES_TO = frozenset({"veces", "ratos", "la", "las", "los", "el", "un", "una", "mi", "su", "cada"})
"""Words behind a Spanish "a" that is no unit."""
COUNT_WORDS = frozenset({"one", "un", "una", "uno"})


class NumberRow(Row):
    """A row that knows its numbers."""

    def number_starts(self, at: int) -> bool:
        """True where a number begins at `at`."""
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
            return self.number_starts(at + 1)
        if kind == "point":
            return self.kind(at + 1) == "spoken" or (self.kind(at + 1) == "numeral" and not self.glued(at))
        return kind == "spoken" and self._counts(at)

    def _sounds_alike(self, at: int) -> bool:
        """A word that dictation writes for a number: "primary to oh eight", "for eighty on the primary"."""
        if self._sounds_alone(at):
            return True
        if (
            not 0 <= at < len(self.phrases)
            or self.phrases[at].text not in SOUND_ALIKE
            or self.kind(at + 1) not in {"spoken", "point"}
        ):
            return False
        if self.kind(at + 1) == "spoken" and self.phrases[at + 1].text in COUNT_WORDS | {"a hundred"}:
            return False
        zero = self.phrases[at + 1].text == "oh"
        if self.kind(at - 1) == "is" and self.phrases[at].text in {"to", "too"} and self.phrases[at + 1].meaning in TENS:
            return True  # "primary is to forty volts"
        if self.kind(at + 1) == "point" and self.kind(at - 1) in {"is", "reads"}:
            return True  # "secondary is too point one ohms"
        return self.kind(at - 1) == "place" or (
            zero and self.kind(at - 1) in {"", "line", "stop", "comma", "reads", "is", "filler"}
        )

    def _sounds_alone(self, at: int) -> bool:
        """In "I got for ohms on the primary": between a verb of reading and a unit stands a number."""
        return (
            0 < at < len(self.phrases)
            and self.phrases[at].text in SOUND_ALIKE
            and self.phrases[at - 1].text in GETS
            and self.kind(at + 1) == "unit"
        )

    def _counts(self, at: int) -> bool:
        """A number word that is one here: "one" and "un" only before a unit or more of a number."""
        phrase, following = self.phrases[at], self.kind(at + 1)
        if phrase.text == "half" and following in {"", "comma", "stop", "line", "of"}:
            return False  # "the secondary is half, 12 V"
        if phrase.text == "one" and at and self.phrases[at - 1].text in OF_SEVERAL and following != "unit":
            return False  # "new one 0.2 ohms"
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

    def amounts(self, out: list[Phrase]) -> None:
        """Takes one amount, or all that a range or a list joins, into the row."""
        gauge = self.kind(self.at - 1) == "gaugeword"
        self._amount(out)
        while (join := self._range_join(self.at)) is not None and not (gauge and join[0].kind == "letter"):
            phrase, skipped = join
            phrase.kind = "upto"
            out.append(phrase)
            self.at += skipped
            self._amount(out)

    def _range_join(self, at: int) -> tuple[Phrase, int] | None:
        """What joins two numbers: "18 or 19", "3 to 4", "14-23", "de 18 a 25"."""
        phrase = self.phrases[at] if at < len(self.phrases) else None
        if phrase is None or not self.number_starts(at + 1) or self.kind(at + 1) == "dash":
            return None
        if (phrase.kind == "to" or phrase.meaning == "a") and self._goes_to(at):
            return None
        es_join = phrase.kind == "letter" and phrase.meaning in {"a", "o", "y"} and (self.spanish or phrase.meaning == "a")
        times = phrase.kind == "letter" and phrase.meaning == "x"
        dash = phrase.kind in {"dash", "slash"} and (self.glued(at) == self.glued(at + 1))
        times = times or (phrase.text in {"by", "por"} and self.kind(at - 1) != "device")
        joined = phrase.kind in {"to", "or"} or phrase.text in {"maybe", "quizas", "tal vez"} or es_join or times or dash
        if phrase.kind == "and" or (phrase.meaning == "y" and es_join):
            joined = self.kind(at + 2) != "device" and any(self.kind(b) == "between" for b in range(max(0, at - 5), at))
        return (phrase, 1) if joined else None

    def _goes_to(self, at: int) -> bool:
        """In "20 awg to 2 contactors" and "100 ft to 10va contactor": what a run leads to is no end of a range."""
        before, behind = self.phrases[at - 1], self.kind(at + 2)
        if self.kind(at - 1) == "unit" and before.meaning == "volt_ampere":  # "added 12va to 40va", "40 va a 24 volts"
            return behind == "unit" or self.unit_letter(at + 2)
        if self.kind(at - 1) != "unit" or before.meaning not in {"foot", "meter", "yard", "gauge"}:
            return False
        return behind == "device" or (behind == "unit" and self.phrases[at + 2].meaning != before.meaning)

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
            if phrase.kind in {"point", "with"}:
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
                and not any(c in ".," for c in before.meaning[:-1])
                and (self.kind(at + 1) in {"spoken", "numeral"})
                and not (self.kind(at + 1) == "numeral" and before.meaning == ".")
            )
        if kind == "with" and self._spoken_point(at) and not pointed:
            return True
        if kind == "dash":
            return before.kind in {"spoken", "more"} and self.kind(at + 1) == "spoken"
        if before.meaning == ".":
            return kind in {"spoken", "numeral"}
        spoken_before = before.kind in {"spoken", "more"} and not before.meaning.replace(".", "").startswith("05")
        if kind != "spoken" or self._before_a_device(at):
            return False
        if spoken_before:
            return before.meaning not in {"0.5", "0.25", "0.75"} and self.phrases[at].meaning not in {"0.5", "0.25", "0.75"}
        if self.phrases[at].text in {"oh", "hundred", "thousand", "million", "mil", "hundred and"}:
            return True
        digit = before.kind == "numeral" and before.meaning.isdecimal() and len(before.meaning) == 1 and before.meaning != "0"
        return digit and self.phrases[at].meaning in TENS_AND_TEENS and not self._rated(at)

    def _rated(self, at: int) -> bool:
        """In "2 forty va transformers": so many of a size."""
        behind = self.phrases[at + 1] if at + 1 < len(self.phrases) else None
        return behind is not None and (behind.meaning == "volt_ampere" or behind.kind in {"device", "transformer"})

    def _spoken_point(self, at: int) -> bool:
        """In "veintisiete con nueve": Spanish says "con" for the point; nothing that is counted or has another unit follows."""
        if self.phrases[at].text != "con" or self.kind(at + 1) not in {"spoken", "numeral"}:
            return False
        whole = self.phrases[at + 1].meaning.isdecimal() and float(self.phrases[at + 1].meaning) < 10
        behind = self.phrases[at + 2] if at + 2 < len(self.phrases) else None
        free = behind is None or behind.kind in {"comma", "stop", "line", "at", "and", "place"}
        return whole and (free or (behind is not None and behind.meaning in {"volt", "ohm", "v"}))

    def _before_a_device(self, at: int) -> bool:
        """A number word that counts a device: "118 and two relays", "zero one contactor"."""
        return (
            self.kind(at + 1) == "device"
            and self.kind(at - 1) in {"spoken", "more"}
            and self.phrases[at].text in {"one", "un", "una", "two", "dos"}
        )

    def _unit(self, out: list[Phrase]) -> None:
        at = self.at
        if self.kind(at) == "dash" and (self.kind(at + 1) == "unit" or self.unit_letter(at + 1)) and self.glued(at):
            self.phrases[at].kind = "link"
            link: Phrase | None = self.phrases[at]
            at += 1
        else:
            link = None
        phrase = self.phrases[at] if at < len(self.phrases) else None
        if phrase is None:
            return
        if phrase.kind == "unit" or self.unit_letter(at):
            if phrase.kind == "letter" and phrase.meaning == "s" and self._counted(out):
                phrase.meaning = "volt_ampere"  # "two 50s"
            elif phrase.kind == "letter":
                phrase.meaning = UNIT_LETTERS.get(phrase.meaning) or GLUED_LETTERS[phrase.meaning]
            phrase.kind = "unit"
            out.extend([link] if link else [])
            out.append(phrase)
            self.at = at + 1
            if self.kind(self.at) == "fraction" and self.phrases[self.at].text not in {"½", "¼", "¾"}:
                out.append(self.phrases[self.at])
                self.at += 1
        elif link:
            link.kind = "dash"

    def _counted(self, out: list[Phrase]) -> bool:
        """A count stands before the number: "two 50s", "both 75s"."""
        before = out[-2] if len(out) > 1 else None
        return before is not None and (before.kind == "both" or before.text in {"two", "2", "dos", "three", "3"})

    def unit_letter(self, at: int) -> bool:
        """True where the letter at `at` is a unit behind a number."""
        if self.kind(at) != "letter":
            return False
        letter = self.phrases[at].meaning
        if letter in UNIT_LETTERS:
            if letter in "ak" and self.kind(at + 1) in JOINS and self.kind(at + 2) == "letter":
                return False  # "A-B 14.0 A-C 7.2"
            if letter == "a" and not self.glued(at):
                if self.spanish and at + 1 < len(self.phrases) and self.phrases[at + 1].text in GOES_TO:
                    return False  # "trae 24 a veces"
                return not self.number_starts(at + 1) and not (self.kind(at + 1) in ENDS and self.spanish)
            return True
        return (
            letter in GLUED_LETTERS
            and self.glued(at)
            and self.kind(at + 1) not in {"dash", "slash", "to"}
            and not (letter == "x" and self.number_starts(at + 1))
        )
