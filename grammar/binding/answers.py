"""Answers to what the bot asked, and corrections whose place an earlier message gave."""

from dataclasses import replace

from core.measures import MEASURES
from core.readings import OPEN, Fact, Reading
from core.said import say
from grammar.binding.draft import Draft, Figure
from grammar.binding.plausible import fits_live, slip
from grammar.binding.questions import lost_point
from grammar.message import Unclear

PLACE_OF = {
    "line_volts": "line",
    "primary_volts": "primary",
    "secondary_volts": "secondary",
    "secondary_volts_lifted": "secondary",
    "control_volts": "control",
    "coil_volts": "coil",
    "fuse_volts": "fuse",
}


def answers(draft: Draft, *, replaced: bool) -> None:
    """Settles what a bare value, a unit or a yes answers."""
    free = [f for f in draft.figures if f.site is None and f.kind != "good" and not (f.done or f.withdrawn or f.garbled)]
    _no_number(draft)
    _asked_of_facts(draft)
    _has_none(draft)
    if "va_estimate" in draft.asks and draft.told("load") is not None:  # "what do I need VA wise" beside a list of loads
        draft.asks = list(dict.fromkeys("size" if ask == "va_estimate" else ask for ask in draft.asks))
    _restated(draft)
    if replaced:
        if free and not draft.readings and not draft.unclear:
            _earlier(draft, free)
        _correct(draft)
        return
    if "undo" in draft.asks and draft.readings:  # "take back that fuse reading, its 0.4 ohms"
        _correct(draft)
    if draft.context.unclear and not draft.readings and not draft.unclear and _settles(draft, free):
        return
    if draft.context.unclear and (draft.readings or any(f.value in FED for _, f in draft.facts)):
        _by_company(draft)
    if len(free) == 1 and not draft.readings:
        _answer(draft, free[0])


NONE = frozenset({"no", "without", "sin", "isnt a", "not"})


UNITS = {"volt": "V", "ohm": "ohm", "amp": "A"}
STATES = {"lifted": ("secondary_volts", "secondary_volts_lifted"), "loaded": ("secondary_volts_lifted", "secondary_volts")}


def _restated(draft: Draft) -> None:
    """In "meant ohms not volts", "that was with the load off": the last reading in another unit, or in another state."""
    last = draft.context.readings[-1] if draft.context.readings else None
    if last is None or draft.figures or draft.sites or draft.readings:
        return
    other = None
    if any(p.kind == "replace" for p in draft.phrases):
        unit = next((UNITS[p.meaning] for p in draft.phrases if p.kind == "alone" and p.meaning in UNITS), None)
        other = _sibling(last.measure, unit)
    elif any(p.kind in {"was", "withdraw"} or p.text in {"was", "that"} for p in draft.phrases):
        state = next((p.meaning for p in draft.phrases if p.kind == "condition" and p.meaning in STATES), "")
        before, after = STATES.get(state, ("", ""))
        other = after if last.measure == before else None
    if other is not None and other != last.measure:
        draft.readings.append(replace(last, measure=other))
        draft.withdrawn.append(last.measure)
        _correct(draft)


def _has_none(draft: Draft) -> None:
    """In "no fuse", after a test of the fuse was asked for: that test cannot be made."""
    asked = draft.context.asked
    places = [at for at, site in draft.sites.items() if site.name == "fuse"]
    is_asked = asked is not None and asked[0].startswith("fuse")
    if not places or draft.readings or not (is_asked or draft.context.readings):
        return
    before = {draft.phrases[i].text for i in range(max(0, places[0] - 3), places[0])}
    if before & NONE:
        draft.lacks = ["fuse_volts", "fuse_ohms"]
        draft.sites[places[0]].used += 1
        if is_asked:
            draft.asks = list(dict.fromkeys((*draft.asks, "cannot")))
        draft.facts = [row for row in draft.facts if row[1].value != "no_control_power"]


def _ends_in_a_question(draft: Draft) -> bool:
    """In "180 ft of 20 gauge to an actuator, will it work": the last clause begins as a question does."""
    last = [
        p.text.split(" ")[0] for i, p in enumerate(draft.phrases) if draft.clause[i] == draft.clause[-1] and p.kind != "comma"
    ]
    return len(last) > 1 and last[0] in ASKING and last[1] in {"it", "that", "this", "they", "i"}


ASKING = frozenset({"is", "are", "will", "would", "can", "could", "does", "should"})
"""First words of a question, whose mark thumbs leave out."""
OF_FACTS = {"fuse_amps": "fuse", "wire_awg": "wire_run", "run_feet": "wire_run", "load": "size"}


def _asked_of_facts(draft: Draft) -> None:
    """In "fusible de 5 amps en un 40va, esta bien?": a question without a word of asking is about what it tells."""
    begins = draft.phrases[0].text.split(" ")[0] if draft.phrases else ""
    asked = "?" in draft.text or begins in ASKING or _ends_in_a_question(draft)
    if draft.asks or draft.readings or draft.unclear or draft.warned.names or not asked:
        return
    if draft.name is not None or any(f.fact == "symptom" for _, f in draft.facts):
        return
    draft.asks += [ask for fact, ask in OF_FACTS.items() if draft.told(fact) is not None][:1]


OPENS_TALK = frozenset({"ok", "okay", "good", "bien", "bueno", "fine", "alright"})
"""Words that are no value where they only open what is said."""


def _no_number(draft: Draft) -> None:
    """In "beeps", where a number was asked for: told, so that the number comes."""
    for figure in draft.figures:
        figure.done = figure.done or (figure.at == 0 and len(draft.phrases) > 1 and draft.phrases[0].text in OPENS_TALK)
    good = [f for f in draft.figures if f.kind == "good" and not f.done]
    if draft.context.asked is not None and good and len(good) == len(draft.figures) and not draft.readings and not draft.asks:
        draft.unread += [(f.start, f.end) for f in good]


def _correct(draft: Draft) -> None:
    if "correct" not in draft.asks:
        draft.asks.append("correct")
    draft.asks = [a for a in draft.asks if a not in {"undo", "no", "yes"}]


def _settles(draft: Draft, free: list[Figure]) -> bool:
    """In "yes", "ohms", "blue": the answer to what was unclear."""
    if "no" in draft.asks:
        return True
    chosen = _by_yes(draft) if "yes" in draft.asks else _by_unit(draft, free) or _by_name(draft, free) or _by_value(draft, free)
    draft.readings += [replace(reading, assumed=False) for reading in chosen]
    return bool(chosen)


def _by_yes(draft: Draft) -> list[Reading]:
    """A yes takes the first reading of all that one question asked about."""
    question = draft.context.unclear[0].question
    return [row.readings[0] for row in draft.context.unclear if row.readings and row.question == question]


FED = frozenset({"chatter", "hum"})
"""Symptoms that only a fed circuit has."""
OF_COMPANY = frozenset({"primary_volts", "primary_ohms", "secondary_volts", "secondary_ohms"})


def _by_company(draft: Draft) -> None:
    """In "pri 198" behind "19: volts or ohms?": the meter still reads the same; a guess all the same."""
    units = {MEASURES[r.measure].unit for r in draft.readings} or {"V"}
    places = {r.measure.partition("_")[0] for r in draft.readings}
    if len(units) != 1 or draft.asks:
        return
    for row in draft.context.unclear:
        fits = [r for r in row.readings if MEASURES[r.measure].unit in units]
        both = len({MEASURES[r.measure].unit for r in row.readings}) > 1
        if both and len(fits) == 1 and fits[0].measure in OF_COMPANY and fits[0].measure.partition("_")[0] not in places:
            draft.readings.append(replace(fits[0], assumed=True))


UNIT_ANSWERS = {
    "V": frozenset({"volts", "v", "volt", "voltios", "vac"}),
    "ohm": frozenset({"ohms", "ohm", "ohmios", "ω"}),
    "A": frozenset({"amps", "amp", "amperes", "amperios"}),
}


def _by_unit(draft: Draft, free: list[Figure]) -> list[Reading]:
    """A bare unit gives the earlier number its unit."""
    words = {p.text for p in draft.phrases}
    unit = next((unit for unit, spellings in UNIT_ANSWERS.items() if words & spellings), None)
    if unit is None or free:
        return []
    return [r for row in draft.context.unclear for r in row.readings[:4] if MEASURES[r.measure].unit == unit]


def _by_name(draft: Draft, free: list[Figure]) -> list[Reading]:
    """A colour or a place takes the one reading that it can mean."""
    named = [e.name for p in draft.phrases if p.kind == "ends" for e in p.ends]
    for row in draft.context.unclear:
        fits = [r for r in row.readings if r.leads and any(n in r.leads for n in named)]
        fits += [r for r in row.readings if not r.leads and not free and any(r.measure.startswith(n) for n in named)]
        if len({r.leads for r in fits}) == 1:
            return fits[:1]
    return []


def _by_value(draft: Draft, free: list[Figure]) -> list[Reading]:
    """The likely value, sent again, is a yes."""
    if len(free) != 1 or free[0].kind != "amount":
        return []
    same = [
        r
        for r in draft.context.unclear[0].readings
        if isinstance(r.value, float)
        and abs(r.value - free[0].value) < 1e-9
        and free[0].unit in {None, MEASURES[r.measure].unit}
    ]
    free[0].done = bool(same)
    return same[:1]


def _answer(draft: Draft, figure: Figure) -> None:
    """A bare value answers the test just asked."""
    context = draft.context
    told = _is_the_answer(draft, figure)
    if context.asked_fact is not None and figure.kind == "amount" and told and _fact(draft, figure, context.asked_fact):
        return
    if context.asked is None:
        _ask_where(draft, figure)
        return
    if not told:
        return  # "is 40 enough", "will be there in 20": a number of something else
    measure, leads = context.asked
    if measure == "lead_volts" and figure.unit in {None, "V"} and figure.value > MOST_LOW_V:
        return  # the test between leads is made with 24 V: line volts are those of a place
    reading = _as(draft, figure, measure, leads)
    if reading is not None:
        figure.done = True
        draft.readings.append(reading)


MOST_LOW_V = 60.0
BESIDE = frozenset({
    "is", "reads", "now", "comma", "stop", "line", "sign", "star", "alone", "heading", "condition", "winding", "transformer", "both", "change", "novalue", "value", "amounts", "leadword", "yes", "all", "withdraw",
})  # fmt: skip
"""Kinds that may stand beside a bare number that answers."""
SMALL = frozenset({
    "it", "i", "get", "got", "shows", "meter", "says", "me", "the", "ok", "okay", "so", "yeah", "yep", "yes", "there", "here", "still", "just", "only", "about", "like", "looks", "that", "and", "my", "this", "we", "read", "uh", "um", "well", "oh", "im", "around", "same", "again", "on", "one", "right",
    "ya", "si", "pues", "sale", "el", "la", "lo", "tengo", "aqui", "ahi", "bueno", "como", "sigue", "igual", "nomas", "apenas", "esta", "casi", "un", "poco",
})  # fmt: skip
"""Words that may."""


def _is_the_answer(draft: Draft, figure: Figure) -> bool:
    """The figure is nearly the whole message, or has a unit: a number in a question or in talk answers no test."""
    if "?" in draft.text or set(draft.asks) - {"correct", "cannot"}:
        return figure.kind != "amount"
    if figure.unit is not None or figure.kind != "amount":
        return True
    others = [p for at, p in enumerate(draft.phrases) if at != figure.at]
    if draft.phrases[0].text in {"is", "are"} and len(others) > 1:
        return False  # "is 27 ok"
    strange = [p for p in others if p.kind not in BESIDE and p.text not in SMALL]
    reads = any(p.kind == "reads" for p in others)
    return len(strange) <= (1 if reads else 0)


BOUNDS = {
    "supply_volts": (90.0, 700.0),
    "tap_volts": (90.0, 700.0),
    "rated_va": (1.0, 2000.0),
    "rated_secondary_volts": (5.0, 60.0),
    "wire_awg": (0.0, 40.0),
    "fuse_amps": (0.0, 100.0),
}
"""Values that an answer to a question can have."""


def _fact(draft: Draft, figure: Figure, fact: str) -> bool:
    units = {
        "supply_volts": "V",
        "tap_volts": "V",
        "rated_va": "VA",
        "rated_secondary_volts": "V",
        "run_feet": "ft",
        "wire_awg": "AWG",
        "fuse_amps": "A",
        "supply_hertz": "Hz",
        "copper_celsius": "degC",
    }
    low, high = BOUNDS.get(fact, (0.0, 1e6))
    if fact not in units or figure.unit not in {None, units[fact]} or not low < figure.value <= high:
        return False
    draft.fact(figure, Fact(fact=fact, value=figure.value, unit=units[fact]))
    return True


def _as(draft: Draft, figure: Figure, measure: str, leads: tuple[str, str] | None) -> Reading | None:
    """The figure as a value of a measure, where it can be one."""
    unit = MEASURES[measure].unit
    if figure.kind == "open":
        return Reading(measure=measure, value=OPEN, leads=leads) if unit == "ohm" else None
    if figure.kind in {"nothing", "short"}:
        value = OPEN if unit == "ohm" and figure.kind == "nothing" else 0.0
        return Reading(measure=measure, value=value, leads=leads)  # type: ignore[arg-type]
    if figure.unit not in {None, unit}:
        other = _sibling(measure, figure.unit)
        return Reading(measure=other, value=figure.value, leads=leads, assumed=True) if other is not None else None
    found = slip(PLACE_OF.get(measure, ""), unit, figure.value) or lost_point(figure, PLACE_OF.get(measure, ""))
    if found is not None:
        likely = (Reading(measure=measure, value=found.value, leads=leads),) if found.value != figure.value else ()
        draft.unclear.append(
            Unclear(
                fragment=draft.fragment(figure.start, figure.end), choices=(measure,), readings=likely, question=found.question
            )
        )
        figure.done = True
        return None
    bound = figure.amount.bound if figure.amount else None
    if unit == "ohm" and bound == "over" and figure.value >= 1e7:
        return Reading(measure=measure, value=OPEN, leads=leads)
    return Reading(measure=measure, value=figure.value, leads=leads, assumed=figure.low is not None or figure.doubt is not None)


def _sibling(measure: str, unit: str | None) -> str | None:
    """The measure of the same place in another unit."""
    place, _, _ = measure.partition("_")
    names = {"V": f"{place}_volts", "ohm": f"{place}_ohms", "A": f"{place}_amps"}
    return names.get(unit or "", "") if names.get(unit or "", "") in MEASURES else None


WHERE = {
    "V": ("secondary_volts", "control_volts", "primary_volts"),
    "ohm": ("secondary_ohms", "primary_ohms", "load_ohms"),
    "A": ("secondary_amps", "primary_amps"),
}


MOST_AMPS = 10.0
"""More than this no winding of ours carries: amps of something else. [A]"""


def _ask_where(draft: Draft, figure: Figure) -> None:
    """A value with a unit and no place: asked where it was taken."""
    if figure.kind != "amount" or figure.unit not in WHERE or figure.value < 0 or figure.low is not None:
        return
    if draft.asks or any(f.fact != "symptom" for _, f in draft.facts) or (figure.unit == "A" and figure.value > MOST_AMPS):
        return
    if draft.kind(figure.at + 1) in {"notours", "unknown"}:
        draft.chatter.append((figure.start, draft.phrases[figure.at + 1].end))  # "120k miles"
        figure.done = True
        return
    others = {"motor", "capacitor", "signal"}
    if any(
        s.kind == "notours" and s.name in others and draft.sentence[s.at] == draft.sentence[figure.at]
        for s in draft.sites.values()
    ):
        draft.chatter.append((figure.start, figure.end))  # "blower motor windings 4.2 and 6.1 ohms"
        figure.done = True
        return
    if figure.value == 24 and draft.facts:
        draft.cue_spans.append((figure.start, figure.end))  # "intermittent 24v" speaks of the control circuit
        return
    names = WHERE[figure.unit]
    if figure.unit == "V":
        names = ("primary_volts", "line_volts") if fits_live("primary", figure.value) else ("secondary_volts", "control_volts")
    readings = tuple(Reading(measure=m, value=figure.value) for m in names)
    question = say("{value:g} {unit}: where did you read it?", value=figure.value, unit=figure.unit)
    draft.unclear.append(
        Unclear(fragment=draft.fragment(figure.start, figure.end), choices=names, readings=readings, question=question)
    )
    figure.done = True


def _earlier(draft: Draft, free: list[Figure]) -> None:
    """In "no 24.6", "meant 208": the last reading that it can mean gets the new value."""
    figure = free[0]
    gone = [f.value for f in draft.figures if f.withdrawn and f.kind == "amount"]
    gone += [f.was for f in free if f.was is not None]
    rows = list(reversed(draft.context.readings))
    chosen = next((r for r in rows if r.value in gone), None) or next((r for r in rows if _could_be(r, figure)), None)
    if chosen is not None and (reading := _as(draft, figure, chosen.measure, chosen.leads)) is not None:
        figure.done = True
        draft.readings.append(reading)
        return
    fact = next(
        (
            f
            for f in reversed(draft.context.facts)
            if isinstance(f.value, int | float) and (f.value in gone or not gone) and figure.unit in {None, f.unit}
        ),
        None,
    )
    if fact is not None and figure.kind == "amount" and chosen is None:
        draft.fact(figure, replace(fact, value=figure.value))


def _could_be(reading: Reading, figure: Figure) -> bool:
    unit = MEASURES[reading.measure].unit
    if figure.kind == "open":
        return unit == "ohm"
    if figure.unit is not None:
        return figure.unit == unit
    place = PLACE_OF.get(reading.measure)
    if place is not None:
        return fits_live(place, figure.value) or (figure.value == 0 and unit == "V")
    if isinstance(reading.value, float) and reading.value > 0 and figure.value > 0:
        return 0.05 < figure.value / reading.value < 20
    return unit == "ohm"
