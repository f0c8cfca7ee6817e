"""The tap in use, and the taps of a nameplate."""

from core.readings import Fact
from grammar.binding.draft import Draft, Figure
from grammar.binding.told import NOMINAL_V, measured_between, neighbour, open_amounts, volts

LOW_SIDE = frozenset({12.0, 16.0, 18.0, 24.0})
"""Volts of a low side."""


def taps(draft: Draft) -> None:
    """Volts of a tap: beside the word, or several in a row."""
    plate = any(p.kind in {"plate_high", "nameplate", "tapword", "transformer"} for p in draft.phrases)
    plate = plate or any(f.unit == "VA" for f in draft.figures)
    for figure in open_amounts(draft):
        if figure.unit not in {None, "V"}:
            continue
        if len(figure.amounts) > 1:
            _tap_list(draft, figure, plate=plate)
        elif figure.value >= 100 and (at := _tap_beside(draft, figure)) is not None:
            draft.fact(figure, Fact(fact="tap_volts", value=figure.value, unit="V"))
            draft.taken.add(at)
    _plate_list(draft)
    _withdrawn_taps(draft)


def _tap_list(draft: Draft, figure: Figure, *, plate: bool) -> None:
    """In "120/208/240", "120/208/240 to 24v": the taps of a nameplate."""
    values = tuple(a.value for a in figure.amounts)
    high, low = (values[:-1], values[-1]) if len(values) > 2 and values[-1] in LOW_SIDE else (values, None)
    if figure.joins[0] not in TAP_JOINS or not all(v in NOMINAL_V for v in high) or not (plate or len(values) > 2):
        return
    draft.fact(figure, Fact(fact="nameplate_taps", value=high, unit="V"))
    if low is not None:
        draft.fact(figure, Fact(fact="rated_secondary_volts", value=low, unit="V"))


TAP_JOINS = frozenset({"/", "slash", "-", "or", "and", "to"})


def _tap_beside(draft: Draft, figure: Figure) -> int | None:
    """The word that makes the figure a tap: right behind it, or before it with nothing measured between."""
    ohms = draft.figure_at(figure.at - 2)
    if ohms is not None and ohms.unit == "ohm" and draft.phrases[figure.at - 1].text == "on" and figure.value in NOMINAL_V:
        return figure.at - 1  # "pri 20 ohms on 120"
    behind = neighbour(draft, figure.at, 1, {"tapword"}, 0)
    if behind is not None:
        reach = range(behind, min(behind + 5, len(draft.phrases)))
        capped = any(draft.kind(i) == "capped" for i in reach if draft.clause[i] == draft.clause[behind])
        return None if capped or _wired_to_another(draft, figure, behind) else behind
    before = neighbour(draft, figure.at, -1, {"tapword"}, 3)
    if before is None and figure.heir_of is not None and figure.heir_of is not figure:
        denied = figure.heir_of  # "the tap isnt the 208 its the 240"
        near = range(max(0, denied.at - 6), min(denied.at + 2, len(draft.phrases)))
        return next((i for i in near if draft.kind(i) == "tapword"), None)
    supplied = (
        draft.kind(figure.at + 1) == "supply" and draft.kind(figure.at + 2) != "amounts"
    )  # not "wired for 240 fed with 208"
    if before is None or draft.kind(before - 1) == "amounts" or supplied:
        return None
    meant = draft.phrases[before].text not in {"taps", "tomas"} and not _asked_for(draft, before)
    return before if meant and not measured_between(draft, before, figure.at) else None


WIRED = frozenset({"conectado", "connected", "wired", "landed", "hooked", "tied", "tapped"})


def _wired_to_another(draft: Draft, figure: Figure, at: int) -> bool:
    """In "240 wired to the 208 tap": the first is the supply."""
    words = draft.phrases[at].text.split(" ")
    if words[0] not in WIRED or words[-1] in {"for", "at"}:
        return False
    other = next((f for f in draft.around(at) if at < f.at <= at + 4 and volts(f) and f.value in NOMINAL_V), None)
    if other is None or figure.value not in NOMINAL_V:
        return False
    if draft.told("supply_volts") is None:
        draft.fact(figure, Fact(fact="supply_volts", value=figure.value, unit="V"))
    return True


def _asked_for(draft: Draft, at: int) -> bool:
    """In "which tap for 208": the tap is asked for, the number is the supply."""
    return "tap" in draft.asks and any(draft.phrases[i].text in ASKING for i in range(max(0, at - 3), at))


ASKING = frozenset({"which", "what", "wich", "cual", "que", "right", "correct", "correcto", "whats", "best", "proper", "mejor"})


def _plate_list(draft: Draft) -> None:
    """In "multi tap 120, 208, 240": several nominal volts in a row behind such a word."""
    words = {"taps", "tomas", "placa"}
    at = next((i for i, p in enumerate(draft.phrases) if p.kind in {"plate_high", "nameplate"} or p.text in words), None)
    if at is None:
        return
    row = [
        f
        for f in open_amounts(draft)
        if f.at > at and volts(f) and f.value in NOMINAL_V and draft.sentence[f.at] == draft.sentence[at]
    ]
    in_a_row = all(draft.kind(i) in LIST for i in range(row[0].at, row[-1].at)) if row else False
    if len(row) > 1 and (in_a_row or draft.kind(at) == "plate_high"):
        for figure in row:
            figure.done = True
        draft.fact(row[0], Fact(fact="nameplate_taps", value=tuple(f.value for f in row), unit="V"))


LIST = frozenset({"amounts", "and", "comma", "sign", "or"})
"""Kinds between the volts of a list."""


def _withdrawn_taps(draft: Draft) -> None:
    """Of two taps with a mark of correction between them the last one stands."""
    taps = [row for row in draft.facts if row[1].fact == "tap_volts"]
    moved = any(
        p.text in {"moved", "switched", "swapped", "changed", "from", "moving", "cambie", "movi"} for p in draft.phrases
    )
    if len(taps) > 1 and (moved or any(p.kind == "withdraw" for p in draft.phrases[taps[0][0] : taps[-1][0]])):
        draft.facts = [row for row in draft.facts if row[1].fact != "tap_volts" or row is taps[-1]]
