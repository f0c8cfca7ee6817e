"""What stands where a device would and is none that we know: its name is told back, and no number is made from it."""

from grammar.binding.bare_devices import ARTICLES, LEADS_IN, LIST_ENDS
from grammar.binding.counts import whole
from grammar.binding.draft import Draft

STRANGE = frozenset({"unknown", "notours"})
OF_A_LOAD = frozenset({"VA", "W", "A"})
BEHIND = frozenset({"each", "at", "is", "colon", "sealed"})
"""What may stand between a device and its figure."""


def unknown_loads(draft: Draft) -> None:
    """In "2 contactors 9va and a whatchamacallit" and "size for 3 gizmos 4va": the last item of each."""
    listed = "size" in draft.asks or any(f.fact == "load" for _, f in draft.facts)
    goes_on = draft.context.asked is None and any(f.fact == "load" for f in draft.context.facts)
    for at, phrase in enumerate(draft.phrases):
        if phrase.kind not in STRANGE or len(phrase.text) < 3:
            continue
        first, last = _before(draft, at), _behind(draft, at)
        figure = draft.figure_at(last)
        has_figure = last > at and figure is not None and figure.unit in OF_A_LOAD
        alone = (
            first != at
            and first == 0
            and last == len(draft.phrases) - 1
            and phrase.kind == "unknown"
            and draft.context.asked is None
        )
        in_va = has_figure and figure is not None and figure.unit in {"VA", "W"} and phrase.kind == "unknown"
        if not (alone or listed or in_va or (goes_on and len(draft.phrases) <= 5)) or (
            phrase.kind == "notours" and not has_figure
        ):
            continue
        led = draft.kind(first - 1) in LIST_ENDS or draft.phrases[first - 1].text in LEADS_IN
        ended = draft.kind(last + 1) in LIST_ENDS or (has_figure and not draft.figure_at(last + 1))
        if led and ended:
            _keep(draft, first, last)


def _before(draft: Draft, at: int) -> int:
    """Where the item begins: with its count or its article."""
    count = draft.figure_at(at - 1)
    if count is not None and whole(count):
        return at - 1
    return at - 1 if draft.kind(at - 1) == "filler" and draft.phrases[at - 1].text in ARTICLES else at


def _behind(draft: Draft, at: int) -> int:
    """Where the item ends: with its figure, or with the word itself."""
    here = at + 1
    while draft.kind(here) in BEHIND:
        here += 1
    figure = draft.figure_at(here)
    return here if figure is not None and figure.unit in OF_A_LOAD and draft.clause[here] == draft.clause[at] else at


def _keep(draft: Draft, first: int, last: int) -> None:
    begin = first if draft.figure_at(first) is not None else first + (draft.phrases[first].text in ARTICLES)
    span = (draft.phrases[begin].start, draft.phrases[last].end)
    for at in range(first, last + 1):
        figure = draft.figure_at(at)
        if figure is not None:
            figure.done = True
    draft.unknown_loads.append(span)
    draft.unread.append(span)
