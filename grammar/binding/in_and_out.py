"""The two sides of a transformer by the words for them: "120 in 0 out", "in: 209 V", "entrada 120, salida 0"."""

from grammar.binding.draft import Draft
from grammar.binding.places import site_of
from grammar.binding.plausible import fits_live
from grammar.phrase import End, Phrase

NOUNS = frozenset({"entrada", "salida", "input", "output"})
"""Words for the two sides that are nothing else."""
FIGURES = frozenset({"amounts", "value"})
ENDS = frozenset({"", "comma", "stop", "line", "and", "sign", "but", *FIGURES})
"""What may stand behind such a word, so that it belongs to the value before it."""
STARTS = frozenset({"", "comma", "stop", "line", "and", "sign", "transformer", *FIGURES})
"""What may stand before one that belongs to the value behind it."""


def in_and_out(draft: Draft) -> None:
    """Makes places of the words, where a figure touches them and no place follows."""
    if _only_warm(draft):
        return
    found = [
        at
        for at, phrase in enumerate(draft.phrases)
        if phrase.kind == "inout" and _touched(draft, at) and not _of_the_disconnect(draft, at)
    ]
    both = {draft.phrases[at].meaning for at in found} == {"primary", "secondary"}
    named = any(e.name in {"primary", "secondary"} for p in draft.phrases for e in p.ends)
    for at in found:
        phrase = draft.phrases[at]
        if not both and phrase.text in {"in", "out"} and not _alone(draft, at, named=named):
            continue
        end = End("place", phrase.meaning, phrase.start, phrase.end)
        draft.phrases[at] = Phrase("ends", "", phrase.start, phrase.end, ends=(end,))
        site = site_of(draft, at, draft.phrases[at])
        if site is not None:
            site.assumed = not both
            draft.sites[at] = site


def _only_warm(draft: Draft) -> bool:
    """The message speaks of temperatures or pressures, and of neither transformer nor places."""
    warm = any(p.kind == "notours" and p.meaning in {"temperature", "pressure"} for p in draft.phrases)
    warm = warm or any("wc" in f.amount.unit_text for f in draft.figures if f.amount is not None and f.unit == "other")
    return warm and not any(p.kind in {"transformer", "ends"} for p in draft.phrases)


def _of_the_disconnect(draft: Draft, at: int) -> bool:
    """In "disconnect 241 in 0 out": the two sides of what switches the line."""
    for step in range(at - 1, max(-1, at - 8), -1):
        phrase = draft.phrases[step]
        if draft.sentence[step] != draft.sentence[at] or phrase.kind == "transformer":
            return False
        if phrase.kind == "ends":
            return len(phrase.ends) == 1 and phrase.ends[0].name == "line"
    return False


def _touched(draft: Draft, at: int) -> bool:
    """A figure belongs to the word."""
    phrase = draft.phrases[at]
    if draft.kind(at - 1) == "notours":
        return False
    if phrase.text in NOUNS:
        return any(draft.clause[f.at] == draft.clause[at] and abs(f.at - at) <= 5 for f in draft.around(at))
    before, behind = draft.kind(at - 1), draft.kind(at + 1)
    if behind in {"colon", "is", "reads"}:  # "in: 209 V, out: 22.4 V"
        behind = draft.kind(at + 2)
    text = draft.phrases[at + 1].text if at + 1 < len(draft.phrases) else ""
    of_it = text == "of" and at + 2 < len(draft.phrases) and draft.phrases[at + 2].text == "it"  # "0 out of it"
    if text in {"but", "pero", "then"} or of_it:
        behind = ""
    if behind == "at" and _fits_its_side(draft, at):  # "208 in on the 240 tap, sec 22"
        behind = ""
    return (before in FIGURES and behind in ENDS) or (behind in FIGURES and before in STARTS)


def _alone(draft: Draft, at: int, *, named: bool) -> bool:
    """One of the two words stands for its winding by itself: not in "it's 95 out and pri is 118", nor in "on my way, 15 out"."""
    if named:
        return _fits_its_side(draft, at)
    meaning = draft.phrases[at].meaning
    near = draft.figure_at(at - 1) or draft.figure_at(at + 1)
    bare = near is not None and near.kind == "amount" and near.unit is None and near.value != 0
    if bare and near is not None and not fits_live(meaning, near.value):
        return False
    return meaning == "secondary"


def _fits_its_side(draft: Draft, at: int) -> bool:
    """In "208 in, sec 24": the value right before the word is one of that winding, and the message names only the other."""
    meaning, figure = draft.phrases[at].meaning, draft.figure_at(at - 1)
    other = "secondary" if meaning == "primary" else "primary"
    names = {e.name for p in draft.phrases for e in p.ends if e.kind == "place"}
    return figure is not None and other in names and meaning not in names and fits_live(meaning, figure.value)
