"""Makes readings of the figures: what they measure, what is assumed, what has to be asked."""

from dataclasses import replace

from core.readings import OPEN, Reading
from core.said import say
from grammar.binding.at_device import at_device, say_unread
from grammar.binding.doubts import disagreeing, swapped, swapped_ohms
from grammar.binding.draft import Draft, Figure, Site
from grammar.binding.guessed_units import guess_unit, heard
from grammar.binding.places import MEASURE_AT
from grammar.binding.plausible import OPEN_FROM_OHM, SECONDARY_TENS_OHM, Slip, fits_live, slip
from grammar.binding.questions import ask_slip, digits_changed, fell, lost_point, measure_of, piece_of, said_twice
from grammar.binding.said_again import ask_which, idle_and_loaded, taken_back
from grammar.binding.states import flags
from grammar.binding.terminals import at_a_motor, control_letters, motor_letters
from grammar.message import Unclear
from grammar.words.numbers import number_words


def measured(draft: Draft) -> None:
    """Readings, unclear and unread pieces of all figures that have a place."""
    draft.modes = flags(draft)
    taken_back(draft)
    _rated_at(draft)
    _plans(draft)
    _by_state(draft)
    figures = [f for f in draft.figures if not f.done and not f.withdrawn and f.site is not None]
    for figure in figures:
        _place(draft, figure)
    placed = [f for f in figures if not f.done]
    swapped(draft, placed)
    disagreeing(draft, placed)
    for figure in placed:
        heard(figure)
        if figure.kind == "amount" and figure.doubt is None and _number_left_over(draft, figure):
            figure.doubt = "split"
    for figure in placed:
        if not figure.done and figure.kind == "amount" and figure.unit is None:
            guess_unit(draft, figure)
    ask_which(draft, placed)
    idle_and_loaded(placed)
    swapped_ohms(placed)
    for figure in placed:
        if not figure.done:
            _reading(draft, figure)


def _rated_at(draft: Draft) -> None:
    """In "130 VA at 24 volts": what the power is told at, and nothing that was read."""
    for figure in draft.figures:
        before = draft.figure_at(figure.at - 2)
        if figure.kind == "amount" and figure.unit == "V" and draft.kind(figure.at - 1) == "at" and before is not None:
            figure.done = figure.done or (before.unit == "VA" and figure.value in {12.0, 16.0, 18.0, 24.0})


PUTS = frozenset({
    "meto", "meterle", "meter", "pongo", "poner", "ponerle", "aplico", "aplicar", "echo", "echarle", "alimento", "alimentar", "inyecto", "mando", "feed", "feeding", "apply", "applying", "put", "putting", "hook", "hooking", "inject", "injecting", "backfeed", "backfeeding", "send", "sending", "throw", "touch",
})  # fmt: skip
TO_WHERE = frozenset({"to", "into", "on", "onto", "al", "a", "en el", "en la", "en", "at", "across"})


def _plans(draft: Draft) -> None:
    """In "si le meto 24 volts al secundario", "hooking my good 24v to yellow and blue": what is put there, and nothing that was read."""
    for figure in draft.figures:
        if figure.kind != "amount" or figure.unit not in {None, "V"} or figure.done:
            continue
        before = {draft.phrases[i].text for i in range(max(0, figure.at - 4), figure.at)}
        behind = draft.phrases[min(figure.at + 1, len(draft.phrases) - 1)]
        if before & PUTS and (behind.text in TO_WHERE or behind.kind == "to"):
            figure.done = True
            draft.chatter.append((figure.start, figure.end))


FEW = frozenset({"few", "couple", "several", "unos cuantos", "varios"})


def _number_left_over(draft: Draft, figure: Figure) -> bool:
    """A word for a number beside the figure that belongs to nothing: then the figure may be another."""
    if figure.at and draft.phrases[figure.at - 1].text in FEW:
        return True  # "few hundred k"
    beside = (draft.phrases[i] for i in (figure.at - 1, figure.at + 1) if 0 <= i < len(draft.phrases))
    return any(p.text in number_words() for p in beside if p.kind == "filler")


def _by_state(draft: Draft) -> None:
    """In "no load 27.4, loaded 25.1" and in a proof: volts in a state are the secondary's, amps without a place as well."""
    proof = "prove" in draft.asks
    free = [f for f in draft.figures if f.site is None and f.kind == "amount" and not f.done and not f.withdrawn]
    states = {f.state for f in free if f.state}
    for figure in free:
        fits = fits_live("secondary", figure.value) or (
            figure.state == "loaded" and 2.0 <= figure.value <= 60.0 and len(states) > 1
        )
        in_state = figure.state in {"lifted", "loaded"} and figure.unit in {None, "V"} and fits
        alone = len(draft.figures) == 1 and not any(s.kind != "notours" for s in draft.sites.values())
        if in_state and (proof or alone or states == {"lifted", "loaded"}):
            figure.site = Site(figure.at, "place", "secondary", assumed=alone and not proof)
        elif (
            proof and (figure.unit == "A" or draft.phrases[figure.at - 1].meaning == "amp") and figure.value <= MOST_SECONDARY_A
        ):
            figure.site, figure.unit, figure.unit_from = Site(figure.at, "place", "secondary"), "A", "word"


MOST_SECONDARY_A = 10.0


def _place(draft: Draft, figure: Figure) -> None:
    """Puts devices on the measure that they have, and takes out what belongs to other trades."""
    site = figure.site
    assert site is not None
    across = any(p.text in ACROSS for p in draft.phrases[max(0, figure.at - 4) : figure.at + 4])
    if figure.garbled or (site.name == "fuse" and figure.kind == "nothing" and not across):
        _unread(draft, figure)  # "el fusible no pasa corriente" is no voltage across it
    elif site.kind != "notours" and figure.kind == "amount" and len(figure.amounts) > 1 and figure.low is None:
        _unread(draft, figure)  # "sec 27/24"
    elif site.kind == "notours" or (motor_letters(draft, site) and at_a_motor(draft, site)):
        _chatter(draft, figure)
    elif site.kind == "device":
        at_device(draft, figure, site)
    elif (
        (site.name == "fuse" and figure.kind == "amount" and figure.unit in {None, "V"} and _on_one_side(draft, site))
        or site.name == "terminals"
        or (site.kind == "pair" and figure.unit == "V" and figure.value <= 60 and control_letters(draft, site))
        or (site.kind == "place" and site.name not in MEASURE_AT)
    ):
        _unread(draft, figure)
    elif figure.kind == "good":
        _no_value(draft, figure)


SIDES = frozenset(
    {"after", "before", "past", "ahead", "downstream", "upstream", "beyond", "behind", "despues", "antes", "pasando"}
)


def _on_one_side(draft: Draft, site: Site) -> bool:
    """In "26 after the fuse" is not across it."""
    return any(draft.phrases[i].text in SIDES for i in range(max(0, site.at - 3), site.at))


def _chatter(draft: Draft, figure: Figure) -> None:
    assert figure.site is not None
    figure.done = True
    phrase = draft.phrases[figure.site.at]
    draft.chatter.append((min(phrase.start, figure.start), max(phrase.end, figure.end)))


def _unread(draft: Draft, figure: Figure) -> None:
    assert figure.site is not None
    figure.done = True
    say_unread(draft, figure, figure.site)


def _no_value(draft: Draft, figure: Figure) -> None:
    """In "primary good": there is no number in it, unless another figure of the same place has one."""
    figure.done = True
    assert figure.site is not None
    same = [
        f
        for f in draft.around(figure.at)
        if f is not figure and f.site is not None and f.site.at == figure.site.at and f.kind != "good"
    ]
    if same or draft.asks or _named_symptom(draft, figure):
        return
    if figure.site.name == "fuse" and draft.phrases[figure.at].text in {"bad", "shot", "toast", "fried", "malo", "quemado"}:
        return
    say_unread(draft, figure, figure.site)


def _named_symptom(draft: Draft, figure: Figure) -> bool:
    return any(start <= figure.start < end for start, end in draft.cue_spans)


ACROSS = frozenset({"across", "drop", "dropped", "drops", "dropping", "entre", "a traves de", "a traves del", "cae", "caen"})
"""Words for the volts that a part takes itself, which may be few."""


def _slip(draft: Draft, figure: Figure, unit: str) -> Slip | None:
    """The likely slip in a value: of its place, of its point, of its digits."""
    assert figure.site is not None
    place = figure.site.name
    if place == "fuse" and any(p.text in ACROSS for p in draft.phrases[max(0, figure.at - 4) : figure.at + 4]):
        return None  # "2.4 volts dropped across the fuse"
    return slip(place, unit, figure.value) or lost_point(figure, place) or digits_changed(draft, figure, place)


def _reading(draft: Draft, figure: Figure) -> None:
    """One reading, or the question why it is none."""
    site = figure.site
    assert site is not None
    if figure.kind == "nothing" and site.kind == "pair" and _says_no_unit(draft, figure):
        _ask_nothing(draft, figure)
        return
    unit = _unit(draft, figure)
    measure = measure_of(figure, unit)
    if not measure:
        if figure.kind == "amount" or "secondary_ground" not in draft.warned.names:  # "need the secondary grounded?"
            _unread(draft, figure)
        return
    if (
        figure.kind == "amount"
        and (found := _slip(draft, figure, unit)) is not None
        and not (figure.unit_from == "own" and said_twice(draft, measure, figure.value))
        and not (0.0 <= figure.value < found.value and fell(draft, figure))
    ):
        ask_slip(draft, figure, unit, found.value, found.question)
        return
    if site.kind == "unclear" or site.choices:
        _ask_leads(draft, figure, measure, unit)
        return
    _record(draft, figure, measure, unit)


def _record(draft: Draft, figure: Figure, measure: str, unit: str) -> None:
    """The reading of a figure, and those of further places that it is of."""
    site = figure.site
    assert site is not None
    low_impedance, not_isolated = draft.modes
    reading = Reading(
        measure=measure,
        value=_value(figure, unit),  # type: ignore[arg-type]
        leads=site.leads,
        assumed=_assumed(figure, unit),
        low_impedance=low_impedance and unit == "V",
        not_isolated=not_isolated and unit == "ohm",
        loaded=figure.state == "loaded",
    )
    if site.also and figure.kind == "amount" and not site.each:
        reading = replace(reading, assumed=True)
    draft.readings.append(reading)
    for other in site.also:
        if (further := MEASURE_AT.get(other.name, {}).get(unit)) is not None:
            draft.readings.append(replace(reading, measure=further, leads=other.leads))
    figure.done = True


def _ask_nothing(draft: Draft, figure: Figure) -> None:
    """In "nothing" between two leads: 0 V, or open."""
    assert figure.site is not None
    leads = figure.site.leads
    zero, ohms = (
        Reading(measure="lead_volts", value=0.0, leads=leads),
        Reading(measure="lead_ohms", value=OPEN, leads=leads),
    )
    question = say("Nothing there: 0 volts, or open in ohms?")
    choices = ("lead_volts", "lead_ohms")
    draft.unclear.append(Unclear(fragment=piece_of(draft, figure), choices=choices, readings=(zero, ohms), question=question))
    figure.done = True


def _says_no_unit(draft: Draft, figure: Figure) -> bool:
    """In "nothing" between two leads, and neither volts nor ohms said anywhere."""
    assert figure.site is not None
    said = {"volt", "power", "juice", "corriente", "ac", "potential"}
    ground = "ground" in (figure.site.leads or ())
    return (
        not ground
        and not draft.live
        and not any(w in draft.phrases[figure.at].text for w in said)
        and not any(f.unit in {"V", "ohm"} for f in draft.around(figure.at))
    )


def _unit(draft: Draft, figure: Figure) -> str:
    """The unit of a figure; an open is ohms, nothing is volts but to ground or among ohms."""
    assert figure.site is not None
    if figure.kind == "nothing":
        ohms = "V" not in MEASURE_AT.get(figure.site.name, {}) or (
            figure.site.name == "leads"
            and "ground" in (figure.site.leads or ())
            and not {"l1", "l2", "l3"} & set(figure.site.leads or ())
        )
        heading = any(f.unit == "ohm" and f.unit_from == "heading" for f in draft.figures)
        return "ohm" if (ohms or heading) and "volt" not in draft.phrases[figure.at].text else "V"
    if figure.kind in {"open", "short"}:
        return "ohm"
    return figure.unit or "V"


def _value(figure: Figure, unit: str) -> float | str:
    if figure.kind == "open" or (figure.kind == "nothing" and unit == "ohm"):
        return OPEN
    if figure.kind in {"nothing", "short"}:
        return 0.0
    bound = figure.amount.bound if figure.amount is not None else None
    if unit == "ohm" and (figure.value >= OPEN_FROM_OHM * 5 or (bound == "over" and figure.value >= OPEN_FROM_OHM / 2)):
        return OPEN
    return figure.value


def _assumed(figure: Figure, unit: str) -> bool:
    assert figure.site is not None
    if figure.low is not None or figure.doubt is not None or figure.site.assumed:
        return True
    bound = figure.amount.bound if figure.amount is not None else None
    if bound in {"over", "under"} and _value(figure, unit) != OPEN:
        return True
    return unit == "ohm" and figure.site.name == "secondary" and figure.kind == "amount" and figure.value >= SECONDARY_TENS_OHM


def _ask_leads(draft: Draft, figure: Figure, measure: str, unit: str) -> None:
    """A pair that can be read as two: "bl to w"."""
    assert figure.site is not None
    site = figure.site
    value = _value(figure, unit)
    readings = tuple(Reading(measure=measure, value=value, leads=leads) for leads in site.choices)  # type: ignore[arg-type]
    names = tuple(
        dict.fromkeys(name for leads in site.choices for name in leads if not all(name in other for other in site.choices))
    )
    question = (
        say("Which is it: {first} or {second}?", first=names[0], second=names[1]) if len(names) > 1 else say("Which two leads?")
    )
    draft.unclear.append(
        Unclear(fragment=piece_of(draft, figure), choices=names or (measure,), readings=readings, question=question)
    )
    figure.done = True
