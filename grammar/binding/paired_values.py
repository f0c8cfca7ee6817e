"""Places and values in two rows: "pri/sec 118/0", "primary and secondary are 120 and 26", "P 11.2 S 0.9"."""

from dataclasses import replace

from grammar.binding.draft import Draft, Figure, Site, settle
from grammar.binding.places import site_of
from grammar.phrase import End, Phrase

BETWEEN = frozenset({"is", "reads", "colon", "filler", "at", "both"})
"""Kinds that may stand between the places and their values."""
JOINS = frozenset({"and", "comma", "sign", "to"})
WINDINGS = frozenset({"primary", "secondary", "line", "control", "fuse", "coil"})


def paired_values(draft: Draft) -> None:
    """Gives the first of two values to the first of two places, and the second to the second."""
    _lettered(draft)
    for at in [at for at, phrase in enumerate(draft.phrases) if phrase.kind == "ends"]:
        places = _places(draft, at)
        if places is None:
            continue
        figures = _values(draft, places[1] + 1)
        if figures is None:
            _between(draft, places)
            continue
        for place, figure in zip(places, figures, strict=True):
            figure.site = draft.sites[place]
            figure.site.used += 1


def _places(draft: Draft, at: int) -> tuple[int, int] | None:
    """Two places side by side, only a join between them and no value."""
    step = at + 1
    while draft.kind(step) in JOINS:
        step += 1
    mine, other = draft.sites.get(at), draft.sites.get(step)
    if step == at + 1 or step - at > 2 or mine is None or other is None:
        return None
    named = {mine.name, other.name} <= WINDINGS and mine.name != other.name and mine.kind == other.kind == "place"
    return (at, step) if named and draft.kind(at - 1) not in {"amounts", "value"} else None


def _between(draft: Draft, places: tuple[int, int]) -> None:
    """In "pri/sec OL": a slash and one value, so from one place to the other."""
    first, second = places
    step = second + 1
    while draft.kind(step) in BETWEEN:
        step += 1
    figure = draft.figure_at(step)
    if draft.phrases[first + 1].text != "/" or figure is None or not (figure.kind == "open" or figure.unit == "ohm"):
        return
    one, two = draft.phrases[first], draft.phrases[second]
    site = site_of(draft, second, Phrase("ends", "", one.start, two.end, ends=(*one.ends, *two.ends), joins=("to",)))
    if site is not None:
        del draft.sites[first]
        draft.sites[second] = site


def _values(draft: Draft, at: int) -> tuple[Figure, Figure] | None:
    """Two values side by side: in one phrase, "118/25.6", or with a join between them."""
    while draft.kind(at) in BETWEEN:
        at += 1
    figure = draft.figure_at(at)
    if figure is None or figure.done:
        return None
    if len(figure.amounts) == 2 and figure.joins[0] in {"/", "slash", "and"}:
        return _split(draft, figure)
    step = at + 1
    while draft.kind(step) in JOINS:
        step += 1
    second = draft.figure_at(step)
    good = second is not None and step - at == 2 and draft.kind(step + 1) != "ends" and len(figure.amounts) <= 1
    return (figure, second) if good and second is not None else None


def _split(draft: Draft, figure: Figure) -> tuple[Figure, Figure]:
    """Two figures of one phrase."""
    one, two = figure.amounts
    unit = two.unit or one.unit
    second = Figure(figure.at, "amount", two.start, two.end, amounts=(replace(two, unit=unit),))
    figure.amounts, figure.joins, figure.low, figure.high, figure.end = (replace(one, unit=unit),), (), None, None, one.end
    settle(figure)
    settle(second)
    draft.figures.insert(draft.figures.index(figure) + 1, second)
    return figure, second


def _lettered(draft: Draft) -> None:
    """In "P 11.2 S 0.9": the letters are the windings where both stand before a value."""
    found = {
        phrase.text: at
        for at, phrase in enumerate(draft.phrases)
        if phrase.text in {"p", "s"} and phrase.kind in {"filler", "letter"} and _before_value(draft, at)
    }
    if set(found) != {"p", "s"}:
        return
    for letter, at in found.items():
        phrase = draft.phrases[at]
        name = "primary" if letter == "p" else "secondary"
        draft.phrases[at] = Phrase("ends", "", phrase.start, phrase.end, ends=(End("place", name, phrase.start, phrase.end),))
        site: Site | None = site_of(draft, at, draft.phrases[at])
        if site is not None:
            draft.sites[at] = site


def _before_value(draft: Draft, at: int) -> bool:
    step = at + 1
    while draft.kind(step) in {"colon", "is", "sign"}:
        step += 1
    return draft.kind(step) in {"amounts", "value"}
