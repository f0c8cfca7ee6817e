"""What a message says to the record: what is to be forgotten, and that the unit was repaired."""

import re
from typing import Final, Literal

from grammar.binding.draft import Draft
from grammar.words.record import (
    AFTER_CLOSING,
    IN_STOCK,
    IS_IN,
    LONG_AGO,
    NEW,
    OF_EVERYTHING,
    OF_THE_JOB,
    OF_THE_READINGS,
    REPAIRED,
    TRANSFORMER,
    WITH_IT,
)
from grammar.words.repairs import PAST_OR_PLAN

Forgets = Literal["all", "job", "readings"]


def forgets(draft: Draft) -> Forgets | None:
    """What a message that asks to forget means: where it could be more than one thing, the most, since that is asked about in full."""
    if "forget" not in draft.asks:
        return None
    words = set(draft.words)
    if words & OF_EVERYTHING:
        return "all"
    if words & OF_THE_READINGS:
        return "readings"
    named = draft.name is not None or any(p.kind == "idword" for p in draft.parsed.words)
    return "job" if named or words & OF_THE_JOB else "all"


def repaired(draft: Draft) -> bool:
    """Whether a message says that the unit was repaired just now: readings from it on are of another circuit."""
    words = draft.words
    if set(words) & LONG_AGO or "?" in draft.text:
        return False
    if any(p.kind == "notours" and p.meaning in {"capacitor", "motor"} for p in draft.parsed.words):
        return False  # "replaced the 45/5 cap"
    if "close_job" in draft.asks:
        return bool(set(words) & AFTER_CLOSING) or bool(draft.facts)
    return _replaced(words, is_paused=bool(PAUSED.match(draft.text))) or says_it_is_in(draft)


PAUSED: Final = re.compile(r"\W*\w+\s*[,;.:]")
"""A first word with a pause behind it."""


def asks_whether_done(draft: Draft) -> bool:
    """In "all done?": a question closes nothing."""
    return draft.text.rstrip().endswith("?") and not draft.facts


def _replaced(words: list[str], *, is_paused: bool) -> bool:
    """In "replaced, 50 va", "replaced it, sec 26" and "swapped the transformer", not in "replaced the fuse"."""
    while words and words[0] in {"ok", "listo", "ya", "i", "we", "lo", "la", "se", "just"}:
        words = words[1:]
    if not words or words[0] not in REPAIRED:
        return False
    if words[1:2] == ["it"] or is_paused:
        return True
    behind = [w for w in words[1:] if w not in WITH_IT]
    return not behind or behind[0] in TRANSFORMER or not behind[0] or behind[0][0].isdecimal()


def says_it_is_in(draft: Draft) -> bool:
    """In "new one is in" and "new transformer installed"."""
    words = draft.words
    ins = [i for i, word in enumerate(words) if word in IS_IN]
    if set(words) & IN_STOCK or (("prove" in draft.asks or set(words) & PAST_OR_PLAN) and _size_is_new(words)):
        return False  # "need a new 40va in here"; a proof is of the new one anyway
    return any(
        _names_the_new_one([w for w in words[max(0, i - 5) : i] if w not in {"is", "s", "now", "esta", "ya"}]) for i in ins
    )


def _size_is_new(words: list[str]) -> bool:
    """In "new 40va in": the transformer is called by its size."""
    rows = zip(words, words[1:], words[2:], strict=False)
    return any(first in NEW and size.isdecimal() and unit == "va" for first, size, unit in rows)


def _names_the_new_one(before: list[str]) -> bool:
    """In "new one" and "trafo nuevo"."""
    pair = before[-2:]
    return _size_is_new(before[-3:]) or (bool(set(pair) & NEW) and bool(set(pair) & TRANSFORMER))
