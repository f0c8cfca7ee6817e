"""Volt-amperes while a coil pulls in: they are no steady load."""

from core.standards.device_loads import CONTROLS_V
from grammar.binding.draft import Draft, Figure


def inrush(draft: Draft) -> None:
    """In "10 va sealed 52 inrush": the figure that touches the word is no steady load."""
    _bare_beside_sealed(draft)
    for at, phrase in enumerate(draft.phrases):
        if phrase.kind != "inrush":
            continue
        if phrase.text in WITH_A_UNIT and ((told := _next_figure(draft, at)) is None or told.unit not in {"VA", "A"}):
            continue  # "pulls in at 22" are volts
        if (behind := _told_first(draft, at)) is not None:
            _take(draft, at, behind)
            continue
        before, behind = draft.figure_at(at - 1), draft.figure_at(at + 1)
        two_before = draft.figure_at(at - 2) if draft.kind(at - 1) in {"filler", "alone"} else None
        two_behind = (
            draft.figure_at(at + 2) if draft.phrases[min(at + 1, len(draft.phrases) - 1)].text in {"de", "of", "is"} else None
        )
        found = [before, two_before, behind, two_behind]
        if before is not None and behind is not None and behind.value > before.value and draft.kind(at - 2) == "device":
            found.insert(0, behind)  # "contactor 9va inrush 60": the larger is the inrush
        for figure in found:
            if _is_free(figure):
                _take(draft, at, figure)
                break


SMALL = frozenset({"is", "at", "colon", "filler", "alone"})


WITH_A_UNIT = frozenset({"pulls in at", "pull in at"})


def _bare_beside_sealed(draft: Draft) -> None:
    """In "contactor 9 sealed 60 inrush": bare numbers of a device beside the words for steady and pull-in are volt-amperes."""
    if not any(p.kind == "inrush" for p in draft.phrases) or not any(p.kind == "device" for p in draft.phrases):
        return
    for at, phrase in enumerate(draft.phrases):
        if phrase.kind != "sealed":
            continue
        told_first = any(_told_first(draft, i) is not None for i, p in enumerate(draft.phrases) if p.kind == "inrush")
        figure = _next_figure(draft, at) if told_first else draft.figure_at(at - 1)
        if _is_free(figure) and figure is not None and figure.unit is None and len(figure.amounts) == 1:
            figure.unit, figure.unit_from = "VA", "word"


def _told_first(draft: Draft, at: int) -> Figure | None:
    """In "sealed 9va inrush 72va" and "inrush 60 sealed 9": each word stands before its own figure."""
    behind = _next_figure(draft, at)
    sealed = next((i for i in range(max(0, at - 5), min(len(draft.phrases), at + 6)) if draft.kind(i) == "sealed"), None)
    if behind is None or sealed is None or not _is_free(behind):
        return None
    steady = _next_figure(draft, sealed)
    first = min(at, sealed)
    if steady is None or steady is behind or draft.figure_at(first - 1) is not None:
        return None
    return behind


def _next_figure(draft: Draft, at: int) -> Figure | None:
    """The figure behind a word, only small words between."""
    here = at + 1
    while draft.kind(here) in SMALL:
        here += 1
    return draft.figure_at(here)


def _is_free(figure: Figure | None) -> bool:
    return figure is not None and figure.kind == "amount" and figure.unit in {None, "VA", "A"} and not figure.done


def _take(draft: Draft, at: int, figure: Figure | None) -> None:
    """Makes the figure the inrush of the word."""
    assert figure is not None
    phrase = draft.phrases[at]
    figure.done = True
    draft.cue_spans.append((figure.start, figure.end))
    phrase.ends = ()
    phrase.text = f"inrush {figure.value * (CONTROLS_V if figure.unit == 'A' else 1.0):g}"


def is_taken(draft: Draft, at: int) -> bool:
    """True for a figure that the word beside it has made an inrush."""
    figure = draft.figure_at(at)
    return figure is not None and figure.done and "inrush" in {draft.kind(at + 1), draft.kind(at - 1)}


def _value(draft: Draft, at: int) -> float | None:
    """What an inrush word has taken, where it has."""
    text = draft.phrases[at].text.split()
    return float(text[1]) if draft.kind(at) == "inrush" and len(text) == 2 and text[1][0].isdecimal() else None


def inrush_near(draft: Draft, first: int, last: int) -> float | None:
    """
    The inrush of a load whose device and figure stand at two places.

    Args:
        draft: The message.
        first: The earlier of the two.
        last: The later.

    Returns:
        Volt-amperes, or None where none was told. [VA]
    """
    end = next((i for i in range(last + 1, len(draft.phrases)) if draft.kind(i) == "device"), len(draft.phrases))
    places = list(range(first, min(end, last + 6)))
    at = first - 1
    while draft.kind(at) in OF_BOTH or is_taken(draft, at):  # "inrush 60 sealed 9 contactor"
        places.append(at)
        at -= 1
    found = next((i for i in places if _value(draft, i) is not None), None)
    if found is None:
        return None
    value = _value(draft, found)
    draft.phrases[found].text = "inrush"  # one device's only
    return value


OF_BOTH = frozenset({"sealed", "inrush", "comma", "and"})


def behind_inrush(draft: Draft, at: int) -> int:
    """Past "inrush 60va" and the comma before it; the place itself where no inrush stands there."""
    here = at
    while draft.kind(here) in OF_BOTH or is_taken(draft, here):
        here += 1
    return here if any(draft.kind(i) == "inrush" for i in range(at, here)) else at
