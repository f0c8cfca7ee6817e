"""Digits that are leads, told from digits that are numbers."""

from grammar.binding.counts import whole
from grammar.binding.draft import Draft
from grammar.phrase import End, Phrase

LAST_MARK = 12
"""Leads are not numbered any further."""


def number_pairs(draft: Draft) -> None:
    """Digits that are leads: "1 to 2: 3.1 ohm"."""
    for figure in list(draft.figures):
        phrase = draft.phrases[figure.at]
        if len(figure.amounts) != 2 or any(
            a.unit or a.value != int(a.value) or not 1 <= a.value <= LAST_MARK for a in figure.amounts
        ):
            continue
        at = figure.at + 1
        while draft.kind(at) in {"colon", "is", "reads"} or (draft.kind(at) == "sign" and draft.phrases[at].text == "-"):
            at += 1
        if draft.kind(at) not in {"amounts", "value"}:
            continue
        ends = tuple(End("mark", str(int(a.value)), a.start, a.end) for a in figure.amounts)
        draft.phrases[figure.at] = Phrase("ends", "", phrase.start, phrase.end, ends=ends, joins=figure.joins)
        draft.figures.remove(figure)
        del draft.by_phrase[figure.at]


def apart_pairs(draft: Draft) -> None:
    """In "1 and 2 read 4.1 ohms": two digits that "and" holds together before a value."""
    for first in list(draft.figures):
        second = draft.figure_at(first.at + 2)
        if second is None or draft.kind(first.at + 1) != "and" or not (whole(first, LAST_MARK) and whole(second, LAST_MARK)):
            continue
        at = second.at + 1
        while draft.kind(at) in {"colon", "is", "reads"}:
            at += 1
        third = draft.figure_at(at)
        if third is None or not (third.unit in {"ohm", "V"} or third.kind == "open"):
            continue
        ends = tuple(End("mark", str(int(f.value)), f.start, f.end) for f in (first, second))
        draft.phrases[first.at] = Phrase("ends", "", first.start, second.end, ends=ends, joins=("and",))
        draft.phrases[first.at + 1].kind = draft.phrases[second.at].kind = "filler"
        for figure in (first, second):
            draft.figures.remove(figure)
            del draft.by_phrase[figure.at]
