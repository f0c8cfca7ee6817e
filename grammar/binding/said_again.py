"""One place with two values in a message: the later one where a word takes the first back, else a question which of them stands."""

from core.readings import Reading
from core.said import say
from grammar.binding.draft import Draft, Figure
from grammar.binding.places import MEASURE_AT
from grammar.message import Unclear

TAKES_BACK = frozenset({"withdraw", "no", "replace"})
"""Kinds of words that take an earlier value back."""
TIMES = frozenset({"now", "was", "condition", "withdraw", "replace", "no", "not", "expected", "heading", "device"})
"""Kinds of words that set two values of one place apart."""
LATER = frozenset({
    "then", "first", "before", "after", "when", "while", "once", "until", "if", "later", "again", "between", "dropped", "drops", "drop", "jumped", "jumps", "goes", "went", "start", "started", "starts", "came", "up", "down",
    "luego", "despues", "antes", "cuando", "primero", "mientras", "si", "baja", "sube", "otra", "old", "new", "other", "second", "meter", "unit", "sometimes", "or",
})  # fmt: skip
"""Words that tell times, states, or things apart."""


MOST_BACK = 12
"""Values before one that are looked at for another of the same place."""


def taken_back(draft: Draft) -> None:
    """In "pri 118 sec 0. oops pri 108": behind such a word the value of a place replaces the one before it."""
    marks = [at for at, p in enumerate(draft.phrases) if p.kind in TAKES_BACK]
    if not marks:
        return
    placed = [
        f for f in draft.figures if f.site is not None and f.site.kind in {"place", "pair"} and not f.withdrawn and not f.done
    ]
    known = {id(f) for f in placed}
    for later in placed:
        near = [f for f in draft.around(later.at) if id(f) in known]
        mark = next((m for m in reversed(marks) if m < later.at), None)
        if mark is None or any(mark < f.at < later.at and not f.withdrawn for f in near if _same(f, later)):
            continue
        for earlier in near:
            if earlier.at < mark and earlier is not later and _same(earlier, later) and not earlier.withdrawn:
                earlier.withdrawn = True
                if later.unit is None and later.kind == "amount":
                    later.unit, later.unit_from = earlier.unit, earlier.unit_from


def _same(one: Figure, other: Figure) -> bool:
    """The same place, and a value of the same kind in the same state."""
    assert one.site is not None
    assert other.site is not None
    units = one.unit == other.unit or None in {one.unit, other.unit} or "amount" not in {one.kind, other.kind}
    return (one.site.name, one.site.leads) == (other.site.name, other.site.leads) and units and one.state == other.state


def ask_which(draft: Draft, figures: list[Figure]) -> None:
    """In "sec 0 sec 26": neither counts until the reader is told which."""
    for at, later in enumerate(figures):
        if later.done or later.kind != "amount" or later.unit is None or later.site is None or later.low is not None:
            continue
        earlier = next((f for f in figures[max(0, at - MOST_BACK) : at] if _clashes(draft, f, later)), None)
        if earlier is None:
            continue
        measure = MEASURE_AT.get(later.site.name, {}).get(later.unit)
        if measure is None:
            continue
        pair = (earlier, later)
        question = say(
            "{first:g} or {second:g} {unit}: which stands?", first=earlier.value, second=later.value, unit=later.unit
        )
        readings = tuple(Reading(measure=measure, value=f.value, leads=later.site.leads) for f in reversed(pair))
        fragment = draft.fragment(min(f.start for f in pair), max(f.end for f in pair))
        draft.unclear.append(Unclear(fragment=fragment, choices=(measure, measure), readings=readings, question=question))
        earlier.done = later.done = True


def idle_and_loaded(figures: list[Figure]) -> None:
    """In "sec 26, drops to 17 when it pulls in": the value of no told state is doubted beside the loaded one."""
    volts = [f for f in figures if f.site is not None and f.kind == "amount" and f.unit == "V"]
    loaded = {f.site.name for f in volts if f.site is not None and f.state == "loaded"}
    for figure in volts:
        if figure.state is None and figure.site is not None and figure.site.name in loaded & {"secondary", "control"}:
            figure.doubt = figure.doubt or "disagree"


def _clashes(draft: Draft, earlier: Figure, later: Figure) -> bool:
    if (
        earlier.done
        or earlier.kind != "amount"
        or earlier.site is None
        or earlier.low is not None
        or earlier.unit != later.unit
    ):
        return False
    if not _same(earlier, later) or abs(earlier.value - later.value) <= 0.02 * max(earlier.value, later.value):
        return False
    begin = min(earlier.site.at, earlier.at)
    if earlier.site.name == "coil":
        return False  # a circuit has many
    words = draft.phrases[max(0, begin - 2) : later.at + 4]
    apart = any(p.kind in TIMES or p.text in LATER for p in words) or earlier.site is later.site
    return not apart
