"""Single letters of a label: "sticker: W common / BK 120 / R 208 / O 240"."""

from grammar.binding.draft import Draft
from grammar.binding.told import NOMINAL_V
from grammar.phrase import End, Phrase
from grammar.words.colours import LETTER_COLOURS

LEAST = 2
"""Leads with a role that make a list."""


def lettered_label(draft: Draft) -> None:
    """Makes colours of them, where a word for a label stands before and at least two leads have a role."""
    label = next((i for i, p in enumerate(draft.phrases) if p.kind in {"label", "nameplate"}), None)
    if label is None:
        return
    letters = [
        at for at in range(label, len(draft.phrases)) if draft.phrases[at].text in LETTER_COLOURS and _has_a_role(draft, at)
    ]
    colours = sum(
        p.kind == "ends" and len(p.ends) == 1 and p.ends[0].kind == "colour" and _has_a_role(draft, at)
        for at, p in enumerate(draft.phrases)
    )
    if len(letters) + colours < LEAST:
        return
    for at in letters:
        phrase = draft.phrases[at]
        end = End("colour", LETTER_COLOURS[phrase.text], phrase.start, phrase.end)
        draft.phrases[at] = Phrase("ends", "", phrase.start, phrase.end, ends=(end,))


def _has_a_role(draft: Draft, at: int) -> bool:
    step = at + 1
    while draft.kind(step) in {"is", "colon", "sign"}:
        step += 1
    figure = draft.figure_at(step)
    nominal = (
        figure is not None and figure.kind == "amount" and figure.unit in {None, "V"} and figure.value in NOMINAL_V | {24.0}
    )
    return draft.kind(step) == "common" or nominal
