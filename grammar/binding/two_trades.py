"""Words that two trades share: the low side of a transformer and of a refrigerant circuit, the load side of a disconnect and of R to C."""

from grammar.binding.draft import Draft, Figure
from grammar.binding.plausible import fits_live
from grammar.phrase import End, Phrase

LOW_V = frozenset({0.0, 12.0})
"""Volts besides those of a live secondary that a low side of a transformer can have and a suction pressure hardly. [V]"""


def two_trades(draft: Draft) -> None:
    """Makes places of such words where the message shows which trade is meant."""
    _low_side(draft)
    _load_side(draft)
    _second(draft)


def _low_side(draft: Draft) -> None:
    for at, phrase in enumerate(draft.phrases):
        if phrase.text != "low side" or phrase.kind != "notours" or not _is_electric(draft, at):
            continue
        end = End("place", "secondary", phrase.start, phrase.end)
        draft.phrases[at] = Phrase("ends", "", phrase.start, phrase.end, ends=(end,))


def _is_electric(draft: Draft, at: int) -> bool:
    """Volts, ohms or a state beside it, or a value that only a secondary has."""
    if any(f.unit == "other" for f in draft.figures) or any(
        p.kind == "notours" and p.meaning == "pressure" and p.text != "low side" for p in draft.phrases
    ):
        return False
    near = [f for f in draft.around(at) if draft.sentence[f.at] == draft.sentence[at]]
    own = _own(draft, at)
    stated = any(p.kind == "condition" and p.meaning in {"lifted", "loaded"} for p in draft.phrases)
    told = any(f.unit in {"V", "ohm", "A"} or f.kind != "amount" for f in near)
    return told or stated or (own is not None and (fits_live("secondary", own.value) or own.value in LOW_V))


def _own(draft: Draft, at: int) -> Figure | None:
    return draft.figure_at(at + 1) or draft.figure_at(at + 2)


def _second(draft: Draft) -> None:
    """In "prim 120 second 26": the word cut off, behind a value of the primary and before its own."""
    for at, phrase in enumerate(draft.phrases):
        figure, before = draft.figure_at(at + 1), draft.figure_at(at - 1)
        if phrase.text not in {"second", "secon"} or figure is None or before is None or figure.kind == "good":
            continue
        if any(e.name == "primary" for i in range(max(0, at - 3), at) for e in draft.phrases[i].ends):
            end = End("place", "secondary", phrase.start, phrase.end)
            draft.phrases[at] = Phrase("ends", "", phrase.start, phrase.end, ends=(end,))


def _load_side(draft: Draft) -> None:
    """In "line side of the disconnect 241, load side 0": both are of the line."""
    for at, phrase in enumerate(draft.phrases):
        if phrase.kind != "ends" or draft.fragment(phrase.start, phrase.end).lower() != "load side":
            continue
        before = [draft.phrases[i] for i in range(max(0, at - 9), at) if draft.sentence[i] == draft.sentence[at]]
        places = [p.ends[0] for p in before if p.kind == "ends" and len(p.ends) == 1]
        if places and places[-1].name == "line":
            end = End("place", "line", phrase.start, phrase.end)
            draft.phrases[at] = Phrase("ends", "", phrase.start, phrase.end, ends=(end,))
