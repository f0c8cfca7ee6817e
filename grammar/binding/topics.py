"""What the words narrow a question down to, and the two sizes of a change."""

from dataclasses import replace
from functools import cache

from core.readings import Fact
from grammar.binding.draft import Draft, Figure
from grammar.binding.told import NOMINAL_V, open_amounts, volts
from grammar.cues import Index, find, index
from grammar.uncollected import uncollected
from grammar.words.topics import TOPICS

SIZES_VA = frozenset({20.0, 30.0, 40.0, 50.0, 60.0, 75.0, 80.0, 100.0, 150.0, 200.0, 250.0, 300.0, 500.0})
"""Bare numbers that can be the size of a control transformer."""
FROM_FIRST = frozenset({"replace", "replacing", "swap", "swapping", "from", "was", "cambiar", "cambio", "reemplazar"})
"""Behind one of these the unit that is there comes first."""


def topics(draft: Draft) -> None:
    """Fills the topics of a message."""
    words = draft.words
    draft.topics = list(dict.fromkeys(f.meaning for f in find(words, _cues())))
    sized = any(f.unit == "VA" for f in open_amounts(draft))
    if {"line_fuse", "low_fuse"} & set(draft.topics) and sized and not draft.asks:
        draft.asks.append("fuse")  # "primary fuse, 50va on 480"
    if "bigger_unit" in draft.topics:
        _change_of_size(draft, words)
    if draft.meant_va is not None and "parallel" not in draft.asks:
        # A change of size has an answer by its own rule; likeness alone takes it for something worse.
        draft.warned = replace(draft.warned, names=tuple(n for n in draft.warned.names if n not in ANSWERED_BY_SIZE))


ANSWERED_BY_SIZE = frozenset({"outside_rating", "parallel_class2"})


def is_change_of_kind(draft: Draft) -> bool:
    """In "replace the 40 with a 75": a unit is replaced, and no value."""
    return draft.meant_va is not None or "multi_tap" in draft.topics


def narrowed(draft: Draft) -> tuple[str, ...]:
    """The topics of the finished message: amps that were read are not asked for."""
    is_read = any(reading.measure.endswith("_amps") for reading in draft.readings)
    return tuple(topic for topic in draft.topics if topic != "amps" or not is_read)


@cache
@uncollected()
def _cues() -> Index:
    return index(TOPICS)


def supply_of_sizing(draft: Draft) -> None:
    """In "4 zone valves 8va, 208" and "0.5 amp fuse on the 480 side of a 50va": the one nominal voltage of a sizing is the supply."""
    known = {f.fact for _, f in draft.facts}
    if (
        not known & {"load", "rated_va"}
        or known & {"supply_volts", "tap_volts", "nameplate_taps"}
        or draft.context.asked is not None
    ):
        return
    free = [f for f in open_amounts(draft) if volts(f)]
    if len(free) != 1 or free[0].value not in NOMINAL_V or any(p.kind == "reads" for p in draft.phrases):
        return
    figure = free[0]
    clause = [i for i in range(len(draft.phrases)) if draft.clause[i] == draft.clause[figure.at]]
    alone = all(draft.kind(i) in {"amounts", "comma", "stop", "line", "and", "at", "filler"} for i in clause)
    placed = any(i in draft.sites and draft.sites[i].name != "fuse" for i in clause)
    by_itself = alone and sum(draft.kind(i) == "amounts" for i in clause) == 1
    asked = "fuse" in draft.asks and ("line_fuse" in draft.topics or not placed)
    led = draft.phrases[figure.at - 1].text in {"on", "off"} and draft.kind(figure.at + 1) in {"", "comma", "stop", "line"}
    if by_itself or asked or led or ("line_fuse" in draft.topics and not placed):
        draft.fact(figure, Fact(fact="supply_volts", value=figure.value, unit="V"))


def _change_of_size(draft: Draft, words: list[str]) -> None:
    """In "can i put a 75 va in the same box as the 40": the 40 is there, the 75 is meant."""
    figures = [f for f in open_amounts(draft) if f.kind == "amount" and _is_size(f)]
    if len(figures) == 1 and len(figures[0].amounts) == 2:  # "40 to 75"
        there, meant = (a.value for a in figures[0].amounts)
    elif len({f.value for f in figures}) == 2:
        first, second = dict.fromkeys(f.value for f in figures)
        starts_with_old = bool(FROM_FIRST & set(words[: _word_of(words, first)]))
        there, meant = (first, second) if starts_with_old else (min(first, second), max(first, second))
    elif len(figures) == 1 and figures[0].unit == "VA" and any(f.fact == "rated_va" for f in draft.context.facts):
        draft.meant_va = figures[0].value
        figures[0].done = True
        draft.cue_spans.append((figures[0].start, figures[0].end))
        return
    else:
        return
    draft.meant_va = meant
    if not draft.asks:
        draft.asks.append("size")
    for figure in figures:
        figure.done = True
        draft.cue_spans.append((figure.start, figure.end))
    draft.fact(None, Fact(fact="rated_va", value=there, unit="VA"), figures[0].at)


def _word_of(words: list[str], value: float) -> int:
    return words.index(f"{value:g}") if f"{value:g}" in words else 0


def _is_size(figure: Figure) -> bool:
    if figure.unit not in {None, "VA"}:
        return False
    return all(a.value in SIZES_VA for a in figure.amounts) or (figure.unit == "VA" and len(figure.amounts) == 1)
