"""Values that a message denies: "26.4v not 24.6", "no es 240, es 208", "no 24.6"."""

from grammar.binding.draft import Draft, Figure
from grammar.binding.replacing import alike, amounts, inherit

BETWEEN_DENIAL = frozenset({"filler", "is", "at", "reads", "between", "to"})


def denied(draft: Draft) -> bool:
    """In "26.4v not 24.6", "no es 240, es 208", "no 24.6": True where it replaces what an earlier message said."""
    denials = [at for at, phrase in enumerate(draft.phrases) if phrase.kind in {"not", "no"}]
    for at in denials:
        _deny_a_place(draft, at)
    return True in [_denies(draft, at) for at in denials]  # every one of them is looked at


def _deny_a_place(draft: Draft, at: int) -> None:
    """In "that was white to orange not white to red, 11.9 ohms": the place behind "not" is none, where one stands before it."""
    step = at + 1
    while draft.kind(step) in {"filler", "at", "between", "is"}:
        step += 1
    denied = draft.sites.get(step)
    before = [i for i in range(max(0, at - 6), at) if i in draft.sites and draft.sentence[i] == draft.sentence[at]]
    if denied is None or denied.kind not in {"place", "pair"} or not before or draft.sites[before[-1]].kind != denied.kind:
        return
    between = any(draft.kind(i) in {"amounts", "value"} for i in range(before[-1], at))
    if not between:
        del draft.sites[step]
        draft.taken.add(step)


def _denies(draft: Draft, at: int) -> bool:
    """One denial: what it withdraws, and whether that was said by an earlier message."""
    phrase, step = draft.phrases[at], at + 1
    paused = phrase.kind == "no" and draft.kind(step) in {"comma", "line"}
    tapped = {"tapword"} if draft.kind(step) == "is" else set()  # "no es el tap de 208"
    while draft.kind(step) in BETWEEN_DENIAL | tapped or (paused and draft.kind(step) in {"comma", "line"}):
        step += 1
    if draft.phrases[min(step, len(draft.phrases) - 1)].text in {
        "era",
        "eran",
        "fue",
        "was",
        "were",
    }:  # "no era de 9 VA, es de 12"
        step += 1
        while draft.kind(step) in BETWEEN_DENIAL:
            step += 1
    figure = draft.figure_at(step)
    if figure is not None and figure.kind in {"open", "short"} and step <= at + 2:
        return _deny_a_word(draft, figure, at)
    if figure is None or figure.kind != "amount" or figure.done:
        return False
    opens = (paused or draft.phrases[max(0, at - 1)].text.startswith("..")) and draft.kind(at - 1) == "stop"  # "... no, 75 va"
    others = [
        f
        for f in amounts(draft, at)
        if f is not figure and (_beside(draft, f, figure, at) or (opens and f.at < at and alike(f, figure)))
    ]
    before = [f for f in others if f.at < at]
    holds = step == at + 1 or draft.phrases[at + 1].text in {"its", "thats"}  # "no its 24.6", and not "no es 24.6"
    at_once = phrase.kind == "no" and (paused or holds) and not (before and _said_no_before(draft, at))
    if at_once and (paused or not others or draft.kind(at - 1) != "is"):
        if before and not _says_what_is(draft, before[-1], at):  # "118 no 108", "118 no, 108"
            before[-1].withdrawn = True
            inherit(figure, before[-1])
            return False
        if at == 0 and (paused or not others):  # "no 24.6": the value that holds
            return True
    if others:
        figure.withdrawn = True
        inherit(others[-1], figure)  # "its a 50 not a 40 va"
        return phrase.text not in INSTEAD or draft.phrases[0].text in ORDERS_TO_PUT
    if phrase.kind == "not" or draft.kind(at + 1) == "is":
        figure.withdrawn = True
        draft.unread.append((phrase.start, figure.end))
    return False


def _deny_a_word(draft: Draft, figure: Figure, at: int) -> bool:
    """In "primary ain't open": no value, so told where no number says what it is; where one does, that takes its place."""
    figure.withdrawn = True
    numbers = [f for f in amounts(draft, at) if f.kind == "amount" and draft.sentence[f.at] == draft.sentence[at]]
    if not numbers:
        draft.unread.append((draft.phrases[at].start, figure.end))
    return bool(numbers) and draft.phrases[figure.at].text not in SUPPOSED


SUPPOSED = frozenset({"open", "opened", "is open", "abierto", "abierta", "esta abierto", "esta abierta"})
"""What may have been thought of a winding; "OL" was read, so that denying it replaces a reading."""


def _said_no_before(draft: Draft, at: int) -> bool:
    """In "no, the secondary is 25.2 no 22.5": the message itself corrects, and the later "no" denies."""
    first = next((f.at for f in amounts(draft)), at)
    return any(p.kind in {"no", "withdraw", "star"} for p in draft.phrases[: min(at, first)])


def _says_what_is(draft: Draft, figure: Figure, at: int) -> bool:
    """In "es 25.2 no 22.5": what is and what is not, in one breath; Spanish has one word for "no" and "not"."""
    if not draft.parsed.spanish or draft.kind(at + 1) != "amounts" or draft.kind(at - 1) == "stop":
        return False
    near = figure.at == at - 1 or (figure.at == at - 2 and draft.kind(at - 1) == "comma")  # "14 ohms, no 41"
    return near or draft.phrases[figure.at - 1].text == "era"  # "era 240, no 208"


ORDERS_TO_PUT = frozenset({"make", "put", "set", "use", "call", "mark", "pon", "ponle", "pone", "apunta", "anota", "usa"})
"""First words that turn a comparison into a correction: "make the coil 21.2 instead of 12.2"."""
INSTEAD = frozenset({"instead of", "rather than", "en vez de", "en lugar de"})
"""Denials that compare and take nothing back."""


def _beside(draft: Draft, one: Figure, other: Figure, at: int) -> bool:
    return not one.withdrawn and draft.sentence[one.at] == draft.sentence[at] and alike(one, other)
