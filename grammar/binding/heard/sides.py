"""In "24v into the float switch, nothing out of it": the two sides of a switch or fuse are its own, and no windings."""

from dataclasses import replace
from itertools import pairwise

from core.heard.record import Heard, Read
from grammar.binding.draft import Draft, Figure
from grammar.binding.heard.line_fuses import LEAST_LINE_V, is_place, on_the_line
from grammar.binding.heard.taking import take
from grammar.words.devices import SWITCHES
from grammar.words.heard import FED_SIDES, INTO, OTHER_SIDES, OUT_OF

MOST_CONTROL_V = 60.0
"""More than this stands on no control circuit. [V]"""
LEAST_CONTROL_V = 15.0
"""From here a value is the control voltage. [V]"""
REACH = 9
"""Phrases between a part and a value of it."""
FIGURES = frozenset({"amounts", "value"})
HARD = frozenset({"stop", "line", "notours", "condition"})
"""Kinds over which nothing said of a part goes on."""
BOTH = frozenset({"both sides", "each side", "either side", "ambos lados", "los dos lados", "cada lado"})
BOTH_OF_THEM = 2.0
SIDE_WORDS = frozenset({"side", "sides", "lado", "lados"})
ONE = frozenset({"one", "un", "a", "first", "r", "hot", "this", "left", "top"})
OTHER = frozenset({"other", "otro", "the other"})


def sides(draft: Draft) -> None:
    """Every part whose sides are told."""
    for at in range(len(draft.phrases)):
        part, named = _part(draft, at)
        if part and not {"parallel", "fuse", "size"} & set(draft.asks):
            _of_part(draft, part, named)
    _joined(draft)


def _joined(draft: Draft) -> None:
    """In "26 before the fuse, 25.8 after the fuse": the two sides of one part."""
    for one, two in pairwise(draft.heard):
        (begin, _), first = one
        (_, end), second = two
        if first.what == second.what == "sides" and first.part == second.part:
            halves = [next((v for v in pair if v is not None), None) for pair in zip(first.values, second.values, strict=True)]
            if sum(v is None for v in (*first.values, *second.values)) == len(halves):
                whole = replace(first, values=tuple(halves))
                draft.heard = [row for row in draft.heard if row not in (one, two)] + [((begin, end), whole)]
                return


def _part(draft: Draft, at: int) -> tuple[str, tuple[int, int]]:
    if draft.kind(at) == "device" and draft.phrases[at].meaning in SWITCHES:
        return draft.phrases[at].meaning, (at, at)
    if (line := on_the_line(draft, at)) is not None:
        return "line fuse", line
    return ("fuse", (at, at)) if is_place(draft, at, frozenset({"fuse"})) else ("", (at, at))


def _of_part(draft: Draft, part: str, named: tuple[int, int]) -> None:
    begin, end = _window(draft, named)
    figures = [f for f in draft.figures if begin <= f.at <= end and not named[0] <= f.at <= named[1] and _can_be(draft, f)]
    if not 1 <= len(figures) <= 2 or any(f.kind == "amount" and not _is_sound(f, part) for f in figures):
        return
    said = _both_sides(draft, begin, end, figures) or _one_and_other(draft, begin, end, figures)
    said = said or _in_and_out(draft, begin, end, named, figures)
    if said is None:
        return
    values, ats = said
    if not any(isinstance(v, float) and v >= (LEAST_LINE_V if part == "line fuse" else 0.0) for v in values):
        return
    what = "line_fuse" if part == "line fuse" else "sides"
    if part == "line fuse" and None in values:
        return
    take(draft, (*named, *ats), Heard(what, part.removeprefix("line "), "", values, "V"), figures)
    if "ghost_voltage" in draft.warned.names:  # its words are those of the two sides
        draft.warned = replace(draft.warned, names=tuple(n for n in draft.warned.names if n != "ghost_voltage"))


def _window(draft: Draft, named: tuple[int, int]) -> tuple[int, int]:
    """The phrases around a part that can be about it: up to a sentence's end or another place, whose own value is left to it."""
    begin, end = named
    while begin > 0 and named[0] - begin < REACH and draft.kind(begin - 1) not in HARD and not _is_other(draft, begin - 1):
        begin -= 1
    if begin > 0 and _is_other(draft, begin - 1):
        step = begin
        while step < named[0] and draft.kind(step) in {"is", "reads", "colon", "at"}:
            step += 1
        begin = step + 1 if draft.kind(step) in FIGURES else begin
    last = len(draft.phrases) - 1
    while end < last and end - named[1] < REACH and draft.kind(end + 1) not in HARD and not _is_other(draft, end + 1):
        end += 1
    if end < last and _is_other(draft, end + 1):
        while end > named[1] and draft.kind(end) not in {"comma", "sign"}:
            end -= 1
    return begin, end


def _is_other(draft: Draft, at: int) -> bool:
    return not _named_side(draft, at) and draft.kind(at) in {"ends", "device", "transformer", "alone", "supply"}


def _can_be(draft: Draft, figure: Figure) -> bool:
    if (
        figure.done
        or draft.phrases[min(figure.at + 1, len(draft.phrases) - 1)].text in SIDE_WORDS
        or figure.kind not in {"amount", "nothing"}
        or len(figure.amounts) > 1
    ):
        return False
    return figure.kind == "nothing" or figure.unit in {None, "V"}


def _is_sound(figure: Figure, part: str) -> bool:
    return part == "line fuse" or figure.value <= MOST_CONTROL_V


def _value(figure: Figure) -> Read:
    return figure.value if figure.kind == "amount" else 0.0


Said = tuple[tuple[Read, Read], list[int]]


def _both_sides(draft: Draft, begin: int, end: int, figures: list[Figure]) -> Said | None:
    """In "24 both sides of the limit"."""
    at = next((i for i in range(begin, end + 1) if draft.phrases[i].text in BOTH or _is_each_side(draft, i)), None)
    if at is None or len(figures) != 1:
        return None
    value = _value(figures[0])
    return (value, value), [at, figures[0].at, *([at + 1] if _is_each_side(draft, at) else [])]


def _is_each_side(draft: Draft, at: int) -> bool:
    behind = draft.phrases[min(at + 1, len(draft.phrases) - 1)].text
    two = (figure := draft.figure_at(at)) is not None and figure.value == BOTH_OF_THEM  # "los dos lados"
    return (draft.kind(at) in {"each", "both"} or two) and behind in SIDE_WORDS


def _one_and_other(draft: Draft, begin: int, end: int, figures: list[Figure]) -> Said | None:
    """In "26 on one side of the float 0 on the other": the higher one is the fed side."""
    words = {i: draft.phrases[i].text for i in range(begin, end + 1)}
    one = next((i for i, text in words.items() if text in ONE and draft.kind(i + 1) == "winding"), None)
    other = next((i for i, text in words.items() if text in OTHER), None)
    if one is None or other is None or len(figures) != 2:
        return None
    low, high = sorted(float(_value(f) or 0.0) for f in figures)
    last = other + 1 if draft.kind(other + 1) == "winding" else other
    return (high, low), [one, last, *(f.at for f in figures)]


def _in_and_out(draft: Draft, begin: int, end: int, named: tuple[int, int], figures: list[Figure]) -> Said | None:
    """In "26 in to the float 0 out": each value with the word that stands nearest to it."""
    words = [(i, name) for i in range(begin, end + 1) if not named[0] <= i <= named[1] and (name := _side(draft, i))]
    pairs: dict[str, tuple[int, Figure]] = {}
    free = list(figures)
    for at, name in sorted(words, key=lambda row: min(abs(f.at - row[0]) for f in figures)):
        if name in pairs or not free:
            continue
        figure = min(free, key=lambda f: (abs(f.at - at), f.at > at))
        between = range(min(at, figure.at) + 1, max(at, figure.at))
        if any(draft.kind(i) in {*FIGURES, "comma", "stop"} for i in between):
            continue
        pairs[name] = (at, figure)
        free.remove(figure)
    if free or not pairs:
        return None
    used = [i for at, figure in pairs.values() for i in (at, figure.at)]
    fed = _value(pairs["in"][1]) if "in" in pairs else None
    touches = any(draft.clause[i] == draft.clause[named[0]] for i in used)
    no_winding = isinstance(fed, float) and fed >= LEAST_CONTROL_V  # "float tripped, 24 in and nothing out"
    if not (touches or no_winding) or (len(pairs) == 1 and not _leads_to(draft, next(iter(pairs.values()))[0], named)):
        return None
    other = _value(pairs["out"][1]) if "out" in pairs else None
    return (fed, other), [*used, *_it_behind(draft, used, end)]


def _side(draft: Draft, at: int) -> str:
    text = draft.phrases[at].text
    if named := _named_side(draft, at):
        return named
    if draft.kind(at) == "value":  # "no sale nada"
        words = set(text.split())
        return "in" if words & INTO else "out" if words & OUT_OF else ""
    return "in" if text in INTO else "out" if text in OUT_OF else ""


def _named_side(draft: Draft, at: int) -> str:
    """In "25 on the line side of the float": a side with a name, and no place of its own."""
    written = draft.fragment(draft.phrases[at].start, draft.phrases[at].end).lower()
    return "in" if written in FED_SIDES else "out" if written in OTHER_SIDES else ""


def _leads_to(draft: Draft, at: int, named: tuple[int, int]) -> bool:
    """The word stands before the part with nothing but small words between: "24v into the float"."""
    small = {"the", "of", "of the", "my", "del", "de", "el", "la", "al", "to", "to the"}
    return at < named[0] and all(
        draft.phrases[i].text in small or draft.kind(i) in {"to", "at"} for i in range(at + 1, named[0])
    )


def _it_behind(draft: Draft, used: list[int], end: int) -> list[int]:
    """In "nothing out of it": the words behind that stand for the part."""
    step = max(used) + 1
    while step <= end and draft.phrases[step].text in {"of", "it", "of it", "side", "the"}:
        step += 1
    return [step - 1]
