"""Makes readings of the figures: the unit where none was said, what is assumed, what has to be asked."""

from dataclasses import replace

from core.readings import OPEN, Reading
from core.said import Said, say
from grammar.binding.draft import Draft, Figure, Site
from grammar.binding.places import MEASURE_AT
from grammar.binding.plausible import OPEN_FROM_OHM, SECONDARY_TENS_OHM, fits_live, slip
from grammar.binding.sites import DEVICE_PLACES
from grammar.binding.states import flags
from grammar.message import Unclear

OHM_PLACES = frozenset({"primary", "secondary", "load", "control", "fuse", "coil", "primary_secondary", "primary_ground", "secondary_ground", "leads"})


def measured(draft: Draft) -> None:
    """Readings, unclear and unread pieces of all figures that have a place."""
    figures = [f for f in draft.figures if not f.done and not f.withdrawn and f.site is not None]
    for figure in figures:
        _place(draft, figure)
    placed = [f for f in figures if not f.done]
    _swapped(draft, placed)
    _disagreeing(draft, placed)
    for figure in placed:
        _heard(figure)
    for figure in placed:
        if not figure.done and figure.kind == "amount" and figure.unit is None:
            _guess_unit(draft, figure)
    _swapped_ohms(placed)
    for figure in placed:
        if not figure.done:
            _reading(draft, figure)


def _place(draft: Draft, figure: Figure) -> None:
    """Puts devices on the measure that they have, and takes out what belongs to other trades."""
    site = figure.site
    assert site is not None
    if site.kind == "notours" or (_motor_letters(draft, site) and _at_a_motor(draft, site)):
        _chatter(draft, figure)
    elif site.kind == "device":
        _at_device(draft, figure, site)
    elif site.name == "fuse" and figure.kind == "amount" and figure.unit in {None, "V"} and _on_one_side(draft, site):
        _unread(draft, figure)
    elif site.name == "terminals" or (site.kind == "place" and site.name not in MEASURE_AT):
        _unread(draft, figure)
    elif figure.kind == "good":
        _no_value(draft, figure)


SIDES = frozenset({"after", "before", "past", "ahead", "downstream", "upstream", "beyond", "behind", "despues", "antes", "pasando"})


def _on_one_side(draft: Draft, site: Site) -> bool:
    """ "26 after the fuse" is not across it."""
    return any(draft.phrases[i].text in SIDES for i in range(max(0, site.at - 3), site.at))


def _motor_letters(draft: Draft, site: Site) -> bool:
    """Ends that a compressor calls its own: C, R and S."""
    ends = draft.phrases[site.at].ends
    return len(ends) == 2 and all(end.kind == "letter" and end.name in {"c", "r", "s"} for end in ends)


def _at_a_motor(draft: Draft, site: Site) -> bool:
    """R and C of a compressor: its name stands in the sentence, or an S stands beside them."""
    if any(end.name == "s" for end in draft.phrases[site.at].ends):
        return True
    return any(s.kind == "notours" and s.name == "motor" and draft.sentence[s.at] == draft.sentence[site.at] for s in draft.sites.values())


def _at_device(draft: Draft, figure: Figure, site: Site) -> None:
    place = DEVICE_PLACES.get(site.name)
    known = place is not None and place != "switch"
    if known and figure.kind == "amount" and (figure.unit == "V" or (figure.unit == "ohm" and place == "coil")):
        figure.site = Site(site.at, "place", str(place))
    elif known and figure.kind == "nothing" and site.name != "thermostat" and "power" not in draft.phrases[figure.at].text:
        figure.site = Site(site.at, "place", str(place))
    elif figure.kind in {"open", "good", "short", "nothing"}:
        figure.done = True
        if figure.kind != "good":
            _say_unread(draft, figure, site)
    elif figure.unit is None:
        figure.done = True
        if known and 16 <= figure.value <= 32 and any(f.unit == "V" for f in draft.around(figure.at)):
            figure.done, figure.unit, figure.unit_from = False, "V", "neighbour"
            figure.site = Site(site.at, "place", str(place))
        elif known and 16 <= figure.value <= 32 and figure.value != int(figure.value):
            reading = Reading(measure=MEASURE_AT[str(place)]["V"], value=figure.value, assumed=True)
            draft.readings.append(reading)
        else:
            _say_unread(draft, figure, site)
    else:
        figure.done = True
        _say_unread(draft, figure, site)


def _chatter(draft: Draft, figure: Figure) -> None:
    assert figure.site is not None
    figure.done = True
    phrase = draft.phrases[figure.site.at]
    draft.chatter.append((min(phrase.start, figure.start), max(phrase.end, figure.end)))


def _unread(draft: Draft, figure: Figure) -> None:
    assert figure.site is not None
    figure.done = True
    _say_unread(draft, figure, figure.site)


def _say_unread(draft: Draft, figure: Figure, site: Site) -> None:
    phrase = draft.phrases[site.at]
    draft.unread.append((min(phrase.start, figure.start), max(phrase.end, figure.end)))


def _no_value(draft: Draft, figure: Figure) -> None:
    """ "primary good": there is no number in it, unless another figure of the same place has one."""
    figure.done = True
    assert figure.site is not None
    same = [f for f in draft.around(figure.at) if f is not figure and f.site is not None and f.site.at == figure.site.at and f.kind != "good"]
    if same or draft.asks or _named_symptom(draft, figure):
        return
    if figure.site.name == "fuse" and draft.phrases[figure.at].text in {"bad", "shot", "toast", "fried", "malo", "quemado"}:
        return
    _say_unread(draft, figure, figure.site)


def _named_symptom(draft: Draft, figure: Figure) -> bool:
    return any(start <= figure.start < end for start, end in draft.cue_spans)


# ---- units -----------------------------------------------------------------------------------------------------------------------------


def _plain_live(figure: Figure) -> bool:
    return figure.site is not None and figure.kind == "amount" and (figure.unit == "V" or (figure.unit is None and fits_live(figure.site.name, figure.value))) and figure.value > 0


def _heard(figure: Figure) -> None:
    """A sound-alike in the number is plain where the number without it makes no sense there."""
    if figure.doubt == "sound" and figure.site is not None and figure.amount is not None and figure.amount.other is not None:
        name = figure.site.name
        if figure.unit in {None, "V"} and fits_live(name, figure.value) and not fits_live(name, figure.amount.other):
            figure.doubt = None


def _guess_unit(draft: Draft, figure: Figure) -> None:
    """The unit of a bare number: its neighbour's, or volts where it fits a live reading; else doubted."""
    site = figure.site
    assert site is not None
    said = [f for f in draft.around(figure.at) if f.unit_from in {"own", "word"} and f.site is not None and not f.withdrawn and f.kind == "amount" and f.unit in {"V", "A", "ohm"} and not _other_circuit(f, site)]
    neighbour = _neighbour_unit(figure, said)
    if site.kind == "pair" or site.name == "leads":
        _guess_on_pair(draft, figure, neighbour)
        return
    live = fits_live(site.name, figure.value)
    before = [f for f in draft.around(figure.at) if f.withdrawn and (f.site is None or f.site is site) and f.kind == "amount" and f.value > 0 and f.unit in {None, "V"}]
    gone = before[-1].value if before else figure.was
    if (gone is not None and fits_live(site.name, gone) and neighbour is None) or (figure.state in {"lifted", "loaded"} and site.name == "secondary" and 10 <= figure.value <= 60):
        figure.unit, figure.unit_from = "V", "neighbour"
    elif figure.value == 0:
        _guess_zero(draft, figure, neighbour)
    elif neighbour == "V":
        figure.unit, figure.unit_from = "V", "neighbour"
        if not live and site.name in {"primary", "secondary", "line"} and not (slip(site.name, "V", figure.value)):
            _either(draft, figure, ("ohm", "V"))
    elif neighbour == "A" and "A" in MEASURE_AT[site.name]:
        figure.unit, figure.unit_from = "A", "neighbour"
    elif neighbour == "ohm":
        figure.unit, figure.unit_from = "ohm", "neighbour"
        if live and site.name in {"secondary", "control", "line"}:
            _either(draft, figure, ("V", "ohm"))
    elif live:
        figure.unit, figure.unit_from = "V", "live"
    else:
        _guess_outside(draft, figure)


def _other_circuit(figure: Figure, site: Site) -> bool:
    """Ohms of a fuse or a coil say nothing of how a winding was read."""
    assert figure.site is not None
    return figure.unit == "ohm" and figure.site.name in {"fuse", "coil", "load", "control"} and site.name in {"primary", "secondary", "line"}


def _neighbour_unit(figure: Figure, said: list[Figure]) -> str | None:
    """The unit that the nearest figure with one has, the one before first."""
    row = next((f for f in reversed(said) if f.at < figure.at), None) or next((f for f in said if f.at > figure.at), None)
    return row.unit if row is not None else None


def _guess_zero(draft: Draft, figure: Figure, neighbour: str | None) -> None:
    others = [f for f in draft.around(figure.at) if f is not figure and not f.withdrawn and f.site is not None]
    if neighbour == "V" or any(_plain_live(f) or f.kind == "nothing" for f in others):
        figure.unit, figure.unit_from = "V", "neighbour"
    elif neighbour == "ohm":
        figure.unit, figure.unit_from = "ohm", "neighbour"
    else:
        _either(draft, figure, ("V", "ohm"))


def _guess_on_pair(draft: Draft, figure: Figure, neighbour: str | None) -> None:
    if neighbour in {"V", "ohm"}:
        figure.unit, figure.unit_from = neighbour, "neighbour"
    elif draft.live or draft_shows_live(draft):
        figure.unit, figure.unit_from = "V", "heading"
    elif figure.value == 0 or 21 <= figure.value <= 32 or figure.value >= 90:
        _either(draft, figure, ("V", "ohm"))
    else:
        figure.unit, figure.unit_from = "ohm", "live"
        figure.doubt = figure.doubt or "unit"


def draft_shows_live(draft: Draft) -> bool:
    """The circuit is live by what the message tells besides: a shock, a smoke."""
    return any(f.fact == "symptom" and f.value == "shock" for _, f in draft.facts)


def _guess_outside(draft: Draft, figure: Figure) -> None:
    """A bare number that fits no live reading."""
    assert figure.site is not None
    name = figure.site.name
    if (found := slip(name, "V", figure.value)) is not None and figure.value > 60 and name not in {"primary", "line"}:
        _ask_slip(draft, figure, "V", found.value, found.question)
    elif "ohm" not in MEASURE_AT[name]:
        figure.unit, figure.doubt = "V", "unit"
    elif name in {"secondary", "control", "coil", "fuse", "load"} and 12 <= figure.value <= 60:
        _either(draft, figure, ("V", "ohm"))
    else:
        figure.unit, figure.unit_from, figure.doubt = "ohm", "live", figure.doubt or "unit"


def _either(draft: Draft, figure: Figure, units: tuple[str, str]) -> None:
    """Two units are possible: asked, the likelier first."""
    assert figure.site is not None
    rows = [(MEASURE_AT[figure.site.name][unit], unit) for unit in units if unit in MEASURE_AT[figure.site.name]]
    readings = tuple(Reading(measure=measure, value=figure.value, leads=figure.site.leads) for measure, _ in rows)
    question = say("{value:g}: {first} or {second}?", value=figure.value, first=_unit_word(rows[0][1]), second=_unit_word(rows[-1][1])) if len(rows) > 1 else say("{value:g} {unit}?", value=figure.value, unit=_unit_word(rows[0][1]))
    draft.unclear.append(Unclear(fragment=_piece(draft, figure), choices=tuple(m for m, _ in rows), readings=readings, question=question))
    figure.done = True


def _unit_word(unit: str) -> str:
    return {"V": "volts", "ohm": "ohms", "A": "amps"}[unit]


def _piece(draft: Draft, figure: Figure) -> str:
    """The words of a figure with its place."""
    assert figure.site is not None
    phrase = draft.phrases[figure.site.at]
    return draft.fragment(min(phrase.start, figure.start), max(phrase.end, figure.end))


# ---- doubts ----------------------------------------------------------------------------------------------------------------------------


def _swapped(draft: Draft, figures: list[Figure]) -> None:
    """A primary of 24 V beside a secondary of 120: the windings were likely swapped."""
    primary = next((f for f in figures if f.site is not None and f.site.name == "primary" and f.kind == "amount" and f.unit in {None, "V"}), None)
    secondary = next((f for f in figures if f.site is not None and f.site.name == "secondary" and f.kind == "amount" and f.unit in {None, "V"}), None)
    if primary is None or secondary is None or primary.done or secondary.done:
        return
    if fits_live("secondary", primary.value) and fits_live("primary", secondary.value):
        question = say("Primary {low:g} and secondary {high:g}: swapped? Primary {high:g} V, secondary {low:g} V?", low=primary.value, high=secondary.value)
        for figure, name, value in ((primary, "primary", secondary.value), (secondary, "secondary", primary.value)):
            reading = Reading(measure=f"{name}_volts", value=value)
            draft.unclear.append(Unclear(fragment=_piece(draft, figure), choices=(reading.measure,), readings=(reading,), question=question))
            figure.done = True


def _swapped_ohms(figures: list[Figure]) -> None:
    """The primary of a step-down always reads more ohms than the secondary."""
    def ohms(name: str) -> Figure | None:
        return next((f for f in figures if f.site is not None and f.site.name == name and f.kind == "amount" and f.unit == "ohm" and not f.done), None)

    primary, secondary = ohms("primary"), ohms("secondary")
    if primary is not None and secondary is not None and 0 < primary.value < secondary.value and secondary.value > 3:
        primary.doubt = secondary.doubt = "swapped"


def _disagreeing(draft: Draft, figures: list[Figure]) -> None:
    """Two values for one place in one state, and neither taken back: two meters, or one of them is a slip."""
    for figure in figures:
        if figure.site is None or figure.site.used < 2:
            continue
        same = [f for f in draft.around(figure.at) if f is not figure and not f.withdrawn and f.site is figure.site and f.kind == "amount" and f.state == figure.state]
        if figure.kind == "amount" and same and not figure.done and _unlike(same[0], figure):
            figure.doubt = "disagree"


def _unlike(one: Figure, other: Figure) -> bool:
    return one.unit == other.unit and one.kind == "amount" and abs(one.value - other.value) > 0.02 * abs(other.value)


def _ask_slip(draft: Draft, figure: Figure, unit: str, likely: float, question: Said) -> None:
    assert figure.site is not None
    measure = _measure(draft, figure, unit)
    readings = (Reading(measure=measure, value=likely, leads=figure.site.leads),)
    if likely == figure.value:
        readings = ()
    draft.unclear.append(Unclear(fragment=_piece(draft, figure), choices=(measure,), readings=readings, question=question))
    figure.done = True


def _measure(draft: Draft, figure: Figure, unit: str) -> str:
    assert figure.site is not None
    site = figure.site
    if site.name in {"primary_ground", "secondary_ground", "primary_secondary"} and unit == "V" and site.leads:
        return "lead_volts"
    measure = MEASURE_AT.get(site.name, {}).get(unit, "")
    if measure == "secondary_volts" and figure.state in {"lifted", "isolated"}:
        return "secondary_volts_lifted"
    return measure


# ---- readings --------------------------------------------------------------------------------------------------------------------------


def _reading(draft: Draft, figure: Figure) -> None:
    """One reading, or the question why it is none."""
    site = figure.site
    assert site is not None
    if figure.kind == "nothing" and site.kind == "pair" and _says_no_unit(draft, figure):
        zero, ohms = Reading(measure="lead_volts", value=0.0, leads=site.leads), Reading(measure="lead_ohms", value=OPEN, leads=site.leads)
        question = say("Nothing there: 0 volts, or open in ohms?")
        draft.unclear.append(Unclear(fragment=_piece(draft, figure), choices=("lead_volts", "lead_ohms"), readings=(zero, ohms), question=question))
        figure.done = True
        return
    unit = _unit(draft, figure)
    measure = _measure(draft, figure, unit)
    if not measure:
        _unread(draft, figure)
        return
    if figure.kind == "amount" and (found := slip(site.name, unit, figure.value)) is not None:
        _ask_slip(draft, figure, unit, found.value, found.question)
        return
    if site.kind == "unclear" or site.choices:
        _ask_leads(draft, figure, measure, unit)
        return
    low_impedance, not_isolated = flags(draft)
    reading = Reading(
        measure=measure,
        value=_value(figure, unit),  # type: ignore[arg-type]
        leads=site.leads,
        assumed=_assumed(figure, unit),
        low_impedance=low_impedance and unit == "V",
        not_isolated=not_isolated and unit == "ohm",
    )
    draft.readings.append(reading)
    for other in site.also:
        if (further := MEASURE_AT.get(other.name, {}).get(unit)) is not None:
            draft.readings.append(replace(reading, measure=further, leads=other.leads, assumed=figure.kind == "amount"))
    figure.done = True


def _says_no_unit(draft: Draft, figure: Figure) -> bool:
    """ "nothing" between two leads, and neither volts nor ohms said anywhere."""
    assert figure.site is not None
    said = {"volt", "power", "juice", "corriente", "ac", "potential"}
    ground = "ground" in (figure.site.leads or ())
    return not ground and not draft.live and not any(w in draft.phrases[figure.at].text for w in said) and not any(f.unit in {"V", "ohm"} for f in draft.around(figure.at))


def _unit(draft: Draft, figure: Figure) -> str:
    """The unit of a figure; an open is ohms, nothing is volts but to ground or among ohms."""
    assert figure.site is not None
    if figure.kind == "nothing":
        ohms = "V" not in MEASURE_AT.get(figure.site.name, {}) or (figure.site.name == "leads" and "ground" in (figure.site.leads or ()))
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
    names = tuple(dict.fromkeys(name for leads in site.choices for name in leads if not all(name in other for other in site.choices)))
    question = say("Which is it: {first} or {second}?", first=names[0], second=names[1]) if len(names) > 1 else say("Which two leads?")
    draft.unclear.append(Unclear(fragment=_piece(draft, figure), choices=names or (measure,), readings=readings, question=question))
    figure.done = True
