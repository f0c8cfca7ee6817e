"""First pass over the lexer's pieces: shapes that are no words, then the longest entries of the vocabulary."""

from collections.abc import Sequence

from lark import Token

from grammar.cues import known_stems, known_words
from grammar.fold import fold
from grammar.phrase import Phrase
from grammar.spelling import mended, spelt
from grammar.vocabulary import Node, longest, tree
from grammar.words.plain import PLAIN, SHARED

SIGNS = {
    ",": "comma", ".": "stop", "-": "dash", "–": "dash", "—": "dash", "−": "dash", "/": "slash", "*": "star", "#": "gaugeword",
    "½": "fraction", "¼": "fraction", "¾": "fraction",
}  # fmt: skip
"""What single signs are, besides those that stand in the vocabulary."""

SPOKEN_SIGNS = {
    "period": "stop",
    "comma": "comma",
    "slash": "slash",
    "dash": "dash",
    "hyphen": "dash",
    "newline": "line",
    "colon": "colon",
    "semicolon": "stop",
}
"""Signs that dictation writes as words."""
FRACTIONS = {"½": "0.5", "¼": "0.25", "¾": "0.75"}
MARK_LETTERS = frozenset("hxlt")
"""Letters that make a mark with a digit behind them: H1, X2, L1, T1."""
MOST_MENDED = 40
"""Unknown words of one message that are looked up for a slip of spelling: the rest is hardly a field message."""


def scan(pieces: Sequence[Token]) -> tuple[list[Phrase], list[tuple[str, str]]]:
    """The pieces as phrases, each with a kind, and the spellings that were mended."""
    texts = [_bare(str(piece)) for piece in pieces]
    repairs = _mend(pieces, texts)
    phrases: list[Phrase] = []
    at = 0
    while at < len(pieces):
        if taken := _shape(pieces, texts, at):
            kind, count, meaning = taken
            phrases.append(_phrase(pieces, texts, at, count, kind, meaning))
        elif (entry := longest(texts, at)) is not None and not _is_zero_apart(pieces, texts, at):
            count, node = _unit_alone(texts, at, phrases) or entry
            phrases.append(_entry(pieces, texts, at, count, node))
        else:
            count = 1
            kind, meaning, language = _single(pieces[at], texts[at])
            if kind == "stop" and set(texts[at]) == {"."} and _glued(pieces, at) and _leads_to_a_number(pieces, at):
                kind = "colon"  # "primary.....13.3"
            phrases.append(_phrase(pieces, texts, at, 1, kind, meaning))
            phrases[-1].language = language
        at += count
    _abbreviations(phrases)
    return phrases, repairs


def _unit_alone(texts: Sequence[str], at: int, before: Sequence[Phrase]) -> tuple[int, Node] | None:
    """In "0.1 ohms out of the holder" and "40 va conectado": behind a number the unit, and no "ohms out", no "va a"."""
    node = tree().steps.get(texts[at])
    unit = node is not None and node.row is not None and node.row.kind == "unit"
    return (
        (1, node)
        if node is not None and unit and (texts[at] == "va" or texts[at + 1 : at + 2] == ["out"]) and _is_number(before)
        else None
    )


def _is_zero_apart(pieces: Sequence[Token], texts: Sequence[str], at: int) -> bool:
    """In "0 L1 to L2": a zero and a terminal, and no "0L" of a meter."""
    return texts[at] == "0" and texts[at + 1 : at + 2] == ["l"] and not _glued(pieces, at + 1)


def _leads_to_a_number(pieces: Sequence[Token], at: int) -> bool:
    return len(str(pieces[at])) > 1 and _glued(pieces, at + 1) and pieces[at + 1].type == "NUMERAL"


def _is_number(before: Sequence[Phrase]) -> bool:
    return bool(before) and before[-1].kind in {"numeral", "spoken"}


def _mend(pieces: Sequence[Token], texts: list[str]) -> list[tuple[str, str]]:
    """Puts the word that was meant in the place of one that nobody knows; gives those that mean something."""
    repairs: list[tuple[str, str]] = []
    unknown = 0
    spanish = sum({"es": 1, "en": -1}.get(PLAIN.get(text, ""), 0) for text in texts if text not in SHARED) > 0
    for at, piece in enumerate(pieces):
        text = texts[at]
        if unknown == MOST_MENDED:
            break
        if piece.type != "WORD" or len(text) < SHORTEST_MENDED or text in tree().steps or _single(piece, text)[0] != "unknown":
            continue
        if text in spelt() or (_glued(pieces, at + 1) and pieces[at + 1].type == "NUMERAL"):
            continue
        unknown += 1
        if (better := mended(text, spanish=spanish)) is not None:
            texts[at] = better
            if better not in PLAIN:
                repairs.append((str(piece), better))
    return repairs


SHORTEST_MENDED = 3
"""Letters of the shortest word that is looked up for a slip of spelling."""


SHORTENED = frozenset(
    {
        "pri",
        "prim",
        "sec",
        "secd",
        "prmry",
        "volt",
        "vac",
        "v",
        "amp",
        "xfmr",
        "transf",
        "xformer",
        "gnd",
        "grd",
        "term",
        "org",
        "blk",
        "wht",
        "grn",
        "yel",
        "blu",
        "brn",
        "secun",
        "approx",
        "aprox",
        "no",
        "num",
        "temp",
        "comp",
        "cap",
        "cond",
    }
)
"""Words that are written with a point behind them that ends no sentence."""


def _abbreviations(phrases: list[Phrase]) -> None:
    """Takes the point of an abbreviation for nothing: "sec. 0V"."""
    for before, point, behind in zip(phrases, phrases[1:], phrases[2:], strict=False):
        if (
            point.text == "."
            and before.text in SHORTENED
            and before.end == point.start
            and behind.kind != "line"
            and (before.kind not in {"unit", "letter"} or behind.kind in {"at", "letter"})
        ):
            point.kind, point.text = "filler", ""


def _bare(word: str) -> str:
    """The folded word, a "'s" behind a word of the trade taken off: "pri's" is "pri"."""
    text = fold(word)
    if len(word) > 3 and word[-2] in "'’" and word[-1] in "sS" and text not in tree().steps and fold(word[:-2]) in tree().steps:
        return fold(word[:-2])
    return text


def _phrase(pieces: Sequence[Token], texts: Sequence[str], at: int, count: int, kind: str, meaning: str) -> Phrase:
    start, last = pieces[at].start_pos or 0, pieces[at + count - 1]
    text = texts[at] if count == 1 else " ".join(texts[at : at + count])
    return Phrase(kind, meaning, start, last.end_pos or start, text)


def _entry(pieces: Sequence[Token], texts: Sequence[str], at: int, count: int, node: Node) -> Phrase:
    assert node.row is not None
    phrase = _phrase(pieces, texts, at, count, node.row.kind, node.row.meaning)
    phrase.language = node.language
    return phrase


def _single(piece: Token, text: str) -> tuple[str, str, str | None]:
    """Kind, meaning and language of a piece that begins no entry."""
    if piece.type == "NUMERAL":
        return "numeral", str(piece), None
    if piece.type == "RETURN":
        return "line", "\n", None
    if piece.type == "POINTS":
        return ("colon" if set(text) == {":"} else "stop"), text, None
    if text in FRACTIONS:
        return "fraction", FRACTIONS[text], None
    if text in SIGNS:
        return SIGNS[text], text, None
    if piece.type != "WORD":
        return ("unknown" if text.isalnum() else "sign"), text, None
    if len(text) == 1 and text.isascii():
        return "letter", text, None
    if text in SPOKEN_SIGNS:
        return SPOKEN_SIGNS[text], text, None
    if text in PLAIN:
        return "filler", text, None if text in SHARED else PLAIN[text]
    return ("filler" if text in known_words() or text.startswith(known_stems()) or _inflected(text) else "unknown"), text, None


ENDINGS = ("s", "es", "ed", "d", "ing", "ly", "er", "n", "mos", "ndo", "do", "da", "ron")
"""Endings that make a form of an ordinary word."""


def _inflected(text: str) -> bool:
    """A form of an ordinary word: "lookin", "rewired", "ventanas"."""
    if text.endswith("in") and text + "g" in PLAIN:
        return True
    return len(text) > 4 and any(
        text.endswith(end) and (text[: -len(end)] in PLAIN or text[: -len(end)] + "e" in PLAIN) for end in ENDINGS
    )


def _glued(pieces: Sequence[Token], at: int) -> bool:
    """True where piece `at` stands directly behind the one before it."""
    return 0 < at < len(pieces) and pieces[at].start_pos == pieces[at - 1].end_pos


def _shape(pieces: Sequence[Token], texts: Sequence[str], at: int) -> tuple[str, int, str] | None:
    """A mark, a time, a price, a phone or part number at `at`: (kind, pieces taken, meaning)."""
    kind, text = pieces[at].type, texts[at]
    if kind == "OTHER" and text == "$" and at + 1 < len(pieces) and pieces[at + 1].type == "NUMERAL":
        return "shape", 2, "price"
    if kind == "WORD" and _glued(pieces, at + 1) and pieces[at + 1].type == "NUMERAL":
        return _letters_then_digits(pieces, texts, at)
    if kind == "NUMERAL" and _glued(pieces, at + 1):
        return _digits_then_more(pieces, texts, at)
    return None


def _letters_then_digits(pieces: Sequence[Token], texts: Sequence[str], at: int) -> tuple[str, int, str] | None:
    text, digits = texts[at], texts[at + 1]
    ended = not (_glued(pieces, at + 2) and pieces[at + 2].type == "WORD")
    if len(text) == 1 and text in MARK_LETTERS and len(digits) == 1 and ended:
        return "mark", 2, text + digits
    if longest(texts, at) is not None and not (len(text) == 1 and len(digits) > 1 and text not in "rc"):
        return None
    if len(text) == 1 and len(digits) == 1 and ended:
        return "mark", 2, text + digits
    count = 2
    while _glued(pieces, at + count) and (pieces[at + count].type in {"WORD", "NUMERAL"} or texts[at + count] == "-"):
        count += 1
    return "shape", count, "part"


def _digits_then_more(pieces: Sequence[Token], texts: Sequence[str], at: int) -> tuple[str, int, str] | None:
    first, sign = texts[at], texts[at + 1]
    third = texts[at + 2] if _glued(pieces, at + 2) and pieces[at + 2].type == "NUMERAL" else None
    if sign in {"a", "b", "c"} and first in REFRIGERANTS:
        return "shape", 2, "part"
    if sign == ":" and third is not None and len(third) == 2 and len(first) <= 2:
        return "shape", 3, "time"
    if sign == "-" and third is not None and third.isdecimal() and first.isdecimal() and _like_a_part(first, third):
        count = 3
        while _glued(pieces, at + count) and (texts[at + count] == "-" or pieces[at + count].type in {"NUMERAL", "WORD"}):
            count += 1
        return "shape", count, "part"
    if sign == "/" and third is not None and _glued(pieces, at + 4) and texts[at + 3] == "/" and len(texts[at + 4]) in {2, 4}:
        days, months = first, third
        if days.isdecimal() and months.isdecimal() and max(int(days), int(months)) <= 31:
            return "shape", 5, "date"
    if sign in {"st", "nd", "rd", "th"} and first.isdecimal():
        return "shape", 2, "ordinal"
    if (
        pieces[at + 1].type == "WORD"
        and third is not None
        and longest(texts, at + 1) is None
        and len(sign) < 3
        and sign not in "kmvar"
    ):
        return "shape", 3, "part"
    return None


REFRIGERANTS = frozenset({"410", "407", "404", "134", "454", "448", "449", "452", "513", "507", "402"})
"""Numbers of refrigerants. ANSI/ASHRAE Standard 34, from memory."""


def _like_a_part(first: str, second: str) -> bool:
    """Two whole numbers with a dash that are no range: 555-0142, 77-2408."""
    return len(second) >= 4 or len(first) >= 4 or (second.startswith("0") and len(second) > 1)
