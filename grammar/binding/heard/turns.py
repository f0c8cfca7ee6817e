"""What is told in words: a contactor that stays out, a breaker found off, a leg lifted, a call made."""

from functools import cache

from core.heard.record import Heard, Read
from core.readings import OPEN, Reading
from grammar.binding.draft import Draft, Figure
from grammar.binding.heard.legs import MOST_COIL_OHM
from grammar.binding.heard.taking import take
from grammar.cues import Found, Index, find, index
from grammar.words.heard import BREAKER_OFF, CALLS, CONTACTOR, LEG_LIFTED, TRIPS

COIL_DEVICES = frozenset({"contactor", "relay", "fan relay", "heat relay"})
MOST_SHORT_OHM = 3.0
"""Below this R to C is no load but a short. [ohm]"""
LEAST_LINE_V = 90.0
MOST_LINE_V = 600.0


def told(draft: Draft) -> None:
    """All of it."""
    words, owners = draft.words, draft.owners
    cues = _cues()
    _contactor(draft, owners, find(words, cues["contactor"]))
    _breaker(draft, owners, find(words, cues["breaker"]))
    _lifted(draft, owners, find(words, cues["lifted"]))
    _called(draft, owners, find(words, cues["calls"]))


@cache
def _cues() -> dict[str, Index]:
    return {
        "contactor": index(CONTACTOR),
        "breaker": index(BREAKER_OFF),
        "lifted": index(LEG_LIFTED),
        "calls": index(CALLS),
    }


def _span(draft: Draft, owners: list[int], found: Found) -> tuple[int, int]:
    words = draft.parsed.words
    return words[owners[found.at[0]]].start, words[owners[found.at[-1]]].end


def _add(draft: Draft, owners: list[int], found: Found, heard: Heard) -> None:
    draft.heard.append((_span(draft, owners, found), heard))


def _contactor(draft: Draft, owners: list[int], rows: list[Found]) -> None:
    """A contactor or its coil has to be spoken of; a dead motor counts beside a coil's volts alone."""
    coil = any(e.name == "coil" for p in draft.phrases for e in p.ends)
    device = next((p.meaning for p in draft.phrases if p.kind == "device" and p.meaning in COIL_DEVICES), None)
    if (not coil and device is None) or any(fact.value == "no_control_power" for _, fact in draft.facts):
        return
    for what in ("stays_out", "no_click", "motor_dead"):
        found = next((row for row in rows if row.meaning == what), None)
        if found is not None:
            _add(draft, owners, found, Heard(what, device or "contactor", ""))
            return


def _breaker(draft: Draft, owners: list[int], rows: list[Found]) -> None:
    """The bare volts that come with it are the line's."""
    said = {word for phrase in draft.phrases for word in phrase.text.split()}
    if not rows or said & TRIPS or any(fact.value == "trips_breaker" for _, fact in draft.facts):
        return
    free = [f for f in draft.figures if f.kind == "amount" and not f.done and f.unit in {None, "V"}]
    placed = any(p.kind in {"ends", "device"} for p in draft.phrases)
    values: tuple[Read, ...] = ()
    if len(free) == 1 and not placed and LEAST_LINE_V <= free[0].value <= MOST_LINE_V:
        free[0].done = True
        draft.readings.append(Reading(measure="line_volts", value=free[0].value, assumed=True))
        values = (free[0].value,)
    _add(draft, owners, rows[0], Heard("breaker_off", "breaker", "", values, "V" if values else ""))


def _lifted(draft: Draft, owners: list[int], rows: list[Found]) -> None:
    """With the value of R to C, or with a value that has no place."""
    legs = list(dict.fromkeys(row.meaning for row in rows))
    if len(legs) != 1:
        return
    named = [at for at, p in enumerate(draft.phrases) if p.kind == "ends"]
    if not named:
        free = [f for f in draft.figures if not f.done and f.kind in {"amount", "open"} and f.unit in {None, "V", "ohm"}]
        if len(free) == 1:
            value, unit = _value(free[0])
            at = next((i for i, p in enumerate(draft.phrases) if p.start >= _span(draft, owners, rows[0])[0]), free[0].at)
            take(draft, (at, free[0].at), Heard("leg_lifted", legs[0], "", (value,), unit), free)
    elif (figure := _at_r_and_c(draft)) is not None:
        value, unit = _value(figure)
        _add(draft, owners, rows[0], Heard("leg_lifted", legs[0], "", (value,), unit))


def _called(draft: Draft, owners: list[int], rows: list[Found]) -> None:
    """R to C reads short with one call made."""
    legs = list(dict.fromkeys(row.meaning for row in rows))
    figure = _at_r_and_c(draft) or _goes_on(draft)
    if len(legs) != 1 or figure is None or figure.kind != "amount" or figure.unit not in {None, "ohm"}:
        return
    if 0 < figure.value < MOST_SHORT_OHM or (figure.value == 0 and figure.unit == "ohm"):
        _add(draft, owners, rows[0], Heard("call", legs[0], "", (figure.value,), "ohm"))


def _goes_on(draft: Draft) -> Figure | None:
    """In "with w called 0.4" behind the ohms of R to C."""
    last = draft.context.readings[-1].measure if draft.context.readings else ""
    figures = [f for f in draft.figures if not f.done and f.kind == "amount" and f.unit in {None, "ohm"}]
    if (
        last != "load_ohms"
        or len(figures) != 1
        or figures[0].value >= MOST_SHORT_OHM
        or any(p.kind in {"ends", "device"} for p in draft.phrases)
    ):
        return None
    draft.cue_spans.append((figures[0].start, figures[0].end))
    draft.unread.append((figures[0].start, figures[0].end))
    figures[0].done = True
    return figures[0]


def _at_r_and_c(draft: Draft) -> Figure | None:
    """The one value of R to C in a message that reads nothing else."""
    pairs = [at for at, p in enumerate(draft.phrases) if p.kind == "ends"]
    if len(pairs) != 1 or {e.name for e in draft.phrases[pairs[0]].ends} not in ({"r", "c"}, {"control"}, {"load"}):
        return None
    figures = [f for f in draft.figures if not f.done and f.kind in {"amount", "open"} and f.unit in {None, "V", "ohm"}]
    return figures[0] if len(figures) == 1 else None


def _value(figure: Figure) -> tuple[Read, str]:
    if figure.kind == "open":
        return OPEN, "ohm"
    return figure.value, figure.unit or ("ohm" if figure.value < MOST_COIL_OHM else "V")
