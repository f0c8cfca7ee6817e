"""Two terminals of the control circuit, or one and ground: a leg, and no leads of a transformer."""

from core.heard.record import Heard, Read
from core.readings import OPEN
from grammar.binding.draft import Draft, Figure
from grammar.binding.heard.taking import take
from grammar.phrase import End, Phrase

TERMINALS = frozenset({"r", "c", "y", "w", "g", "o", "b", "y1", "y2", "w1", "w2", "rc", "rh"})
"""Terminals by their letters."""
PLAIN = frozenset({"r", "y", "g", "c", "y1", "y2", "w1", "w2"})
"""Those that a pair without C is known by: white, black and orange are leads of a primary as well."""
TO_GROUND = frozenset({"r", "y", "g", "c", "y1", "y2", "w1", "w2"})
CONTROL_WORDS = frozenset({
    "stat", "tstat", "thermostat", "termostato", "call", "called", "cooling", "board", "tarjeta", "cable", "wiggled", "wiggle", "contactor", "condenser", "field",
})  # fmt: skip
"""Words that tell that letters are terminals."""
MOST_COIL_OHM = 15.0
"""Below this a bare value is ohms: no call reads so few volts and is worth telling. [ohm]"""
VOLTS = (23.0, 29.0)
"""A bare value between these is the control voltage. [V]"""
MOST_BARE_V = 32.0


def legs(draft: Draft) -> None:
    """Every reading of a leg."""
    if _speaks_of_leads(draft):
        return
    for at, phrase in enumerate(draft.phrases):
        if phrase.kind != "ends" or not _is_leg(draft, phrase):
            continue
        figure = _figure(draft, at)
        if figure is None:
            continue
        names = sorted((e.name for e in phrase.ends), key=lambda name: (name == "ground", name == "c", name == "r"))
        figures = [figure, *_further(draft, at, figure)]
        read = [_read(draft, f, names) for f in figures]
        ats = (at, *(f.at for f in figures))
        units = [unit for _, unit in read if unit] or [""]
        heard = Heard("leg", " ".join(names), "", tuple(value for value, _ in read), units[0])
        take(draft, ats, heard, figures)


def _speaks_of_leads(draft: Draft) -> bool:
    """Colours, marks or the transformer itself: then letters are colours or marks too."""
    ends = [end for phrase in draft.phrases for end in phrase.ends]
    if any(end.kind == "colour" or (end.kind == "mark" and end.name not in TERMINALS and end.name[0] != "l") for end in ends):
        return True
    if any(
        end.kind == "letter" and end.name not in TERMINALS
        for phrase in draft.phrases
        if len(phrase.ends) > 1
        for end in phrase.ends
    ):
        return True
    if any(phrase.kind == "transformer" or phrase.text in {"leads", "compressor", "comp"} for phrase in draft.phrases):
        return True
    primary_letters = {frozenset(e.name for e in p.ends) for p in draft.phrases if len(p.ends) == 2}
    return bool(primary_letters & {frozenset(pair) for pair in ("wb", "wo", "bo", "rw", "rb", "ro", "wy", "by", "oy")})


def _is_leg(draft: Draft, phrase: Phrase) -> bool:
    if len(phrase.ends) != 2 or not all(_is_end(end) for end in phrase.ends):
        return False
    names = {end.name for end in phrase.ends}
    if len(names) < 2 or names in ({"r", "c"}, {"ground"}):
        return False
    if "c" in names:
        return True
    if _of_leads(draft):
        return False
    if "ground" in names:
        return bool(names & TO_GROUND) or bool(CONTROL_WORDS & {word for p in draft.phrases for word in p.text.split()})
    return names <= PLAIN


def _is_end(end: End) -> bool:
    return (end.kind in {"letter", "mark"} and end.name in TERMINALS) or (end.kind == "place" and end.name == "ground")


def _of_leads(draft: Draft) -> bool:
    """What was asked or read before lies between leads of a transformer."""
    asked = draft.context.asked
    return (asked is not None and asked[0].startswith("lead_")) or draft.context.is_of_leads


def _figure(draft: Draft, at: int) -> Figure | None:
    """The value of a pair: behind it in its clause, before it, or behind it in the next."""
    behind = _first(draft, range(at + 1, min(len(draft.phrases), at + 8)))
    before = draft.figure_at(at - 1) or (draft.figure_at(at - 2) if draft.kind(at - 1) in {"at", "between", "filler"} else None)
    if behind is not None and draft.clause[behind.at] == draft.clause[at]:
        return behind
    if before is not None and _is_value(before) and draft.clause[before.at] == draft.clause[at]:
        return before
    return behind


def _further(draft: Draft, at: int, figure: Figure) -> list[Figure]:
    """In "Y to C at the air handler is 24.6, at the condenser 0": one more value of the same pair."""
    if figure.at < at:
        return []
    for step in range(figure.at + 1, min(len(draft.phrases), figure.at + 8)):
        if draft.kind(step) in {"stop", "line", "ends", "condition", "heard"}:
            return []
        if (other := draft.figure_at(step)) is not None:
            led = draft.kind(step - 1) in {"notours", "device", "now", "reads"} or draft.kind(step + 1) == "at"
            return [other] if led and _is_value(other) and other.unit in {None, figure.unit} else []
    return []


def _first(draft: Draft, order: range) -> Figure | None:
    for at in order:
        if draft.kind(at) in {"stop", "line", "ends", "expected", "heard"} or draft.phrases[at].text in {"supposed", "should"}:
            return None
        if (figure := draft.figure_at(at)) is not None:
            return figure if _is_value(figure) else None
    return None


def _is_value(figure: Figure) -> bool:
    return not figure.done and figure.kind != "good" and figure.unit in {None, "V", "ohm"}


def _read(draft: Draft, figure: Figure, names: list[str]) -> tuple[Read, str]:
    """Value and unit; of a range the lower end, for a short that comes and goes is a short."""
    if figure.kind == "open" or (figure.kind == "nothing" and names[-1] == "ground"):
        return OPEN, "ohm"
    if figure.kind == "short":
        return 0.0, "ohm"
    if figure.kind == "nothing":
        return 0.0, "V"
    value = figure.value if figure.low is None else figure.low
    return value, _unit(draft, figure, value)


def _unit(draft: Draft, figure: Figure, value: float) -> str:
    if figure.unit is not None:
        return figure.unit
    said = {p.meaning for p in draft.phrases if p.kind in {"alone", "heading"}}
    if said & {"ohm", "dead"}:
        return "ohm"
    if said & {"volt", "live"}:
        return "V"
    if 0 < value < MOST_COIL_OHM or value > MOST_BARE_V:
        return "ohm"
    return "V" if VOLTS[0] <= value <= VOLTS[1] or (value == 0 and _is_live(draft)) else ""


def _is_live(draft: Draft) -> bool:
    """Whether the job reads volts of the control circuit and no ohms."""
    read = draft.context.readings
    fed = any(
        r.measure in {"control_volts", "secondary_volts"} and r.value != OPEN and float(r.value) >= VOLTS[0] for r in read
    )
    return fed and not any(r.measure.endswith("ohms") for r in read)
