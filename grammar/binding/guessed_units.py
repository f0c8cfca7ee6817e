"""The unit of a bare number, where no word says it."""

from core.readings import Reading
from core.said import say
from grammar.binding.draft import Draft, Figure, Site
from grammar.binding.places import MEASURE_AT
from grammar.binding.plausible import fits_live, slip
from grammar.binding.questions import ask_slip, piece_of
from grammar.message import Unclear


def _plain_live(figure: Figure) -> bool:
    return (
        figure.site is not None
        and figure.kind == "amount"
        and (figure.unit == "V" or (figure.unit is None and fits_live(figure.site.name, figure.value)))
        and figure.value > 0
    )


def heard(figure: Figure) -> None:
    """A sound-alike in the number is plain where the number without it makes no sense there."""
    if figure.doubt == "sound" and figure.site is not None and figure.amount is not None and figure.amount.other is not None:
        name = figure.site.name
        if figure.unit in {None, "V"} and fits_live(name, figure.value) and not fits_live(name, figure.amount.other):
            figure.doubt = None


def guess_unit(draft: Draft, figure: Figure) -> None:
    """The unit of a bare number: its neighbour's, or volts where it fits a live reading; else doubted."""
    site = figure.site
    assert site is not None
    neighbour = _neighbour_unit(draft, figure, site)
    asked = _asked_unit(draft, figure, site)
    if asked is not None and (asked == "V" or not fits_live(site.name, figure.value)):
        figure.unit, figure.unit_from = asked, "neighbour"
    elif site.kind == "pair" or site.name == "leads":
        _guess_on_pair(draft, figure, neighbour)
    elif (neighbour is None and (_was_live(draft, figure, site) or _low_impedance(draft))) or _in_a_state(figure, site):
        figure.unit, figure.unit_from = "V", "neighbour"
    elif figure.value == 0:
        _guess_zero(draft, figure, neighbour)
    elif neighbour is not None and neighbour in MEASURE_AT[site.name]:
        _take_neighbours(draft, figure, site, neighbour)
    elif fits_live(site.name, figure.value):
        figure.unit, figure.unit_from = "V", "live"
    else:
        _guess_outside(draft, figure)


def _asked_unit(draft: Draft, figure: Figure, site: Site) -> str | None:
    """The unit of the test just asked, where the figure stands at its place: after "read volts R to C" comes "r to c 0"."""
    if draft.context.asked is None or figure.unit is not None:
        return None
    measure, leads = draft.context.asked
    if leads is not None and (site.leads is None or set(leads) != set(site.leads)):
        return None
    units = (unit for unit, name in MEASURE_AT.get(site.name, {}).items() if measure in {name, f"{name}_lifted"})
    return next(units, None)


def _take_neighbours(draft: Draft, figure: Figure, site: Site, unit: str) -> None:
    """The neighbour's unit, asked about where the number speaks for another one."""
    figure.unit, figure.unit_from = unit, "neighbour"
    live = fits_live(site.name, figure.value)
    if unit == "A" and live:
        figure.unit, figure.unit_from = "V", "live"  # more amps than such a winding carries
    elif unit == "ohm" and live and _has_a_live_partner(draft, figure):
        figure.unit, figure.unit_from = "V", "live"
    elif (
        unit == "ohm"
        and live
        and (site.name in {"secondary", "control", "line"} or not _ohms_of_windings_beside(draft, figure))
    ):
        either(draft, figure, ("V", "ohm"))
    if unit == "V" and not live and site.name in {"primary", "secondary", "line"} and not slip(site.name, "V", figure.value):
        either(draft, figure, ("ohm", "V"))


def _has_a_live_partner(draft: Draft, figure: Figure) -> bool:
    """In "pri 241 sec 26.3, primary OL now": the value beside it in its sentence is live as well, and no ohms stand between."""
    at = draft.figures.index(figure)
    beside = [draft.figures[i] for i in (at - 1, at + 1) if 0 <= i < len(draft.figures)]
    return any(_is_live(other) for other in beside if draft.sentence[other.at] == draft.sentence[figure.at])


def _is_live(figure: Figure) -> bool:
    """No volts at a winding, or a bare number that fits live."""
    if figure.site is None or figure.site.name not in {"primary", "secondary", "line", "control"} or figure.withdrawn:
        return False
    if figure.kind == "nothing" or (figure.kind == "amount" and figure.value == 0 and figure.unit is None):
        return True
    bare = figure.unit is None or figure.unit_from in {"neighbour", "live"}
    return figure.kind == "amount" and bare and fits_live(figure.site.name, figure.value)


def _ohms_of_windings_beside(draft: Draft, figure: Figure) -> bool:
    """The unit is that of the other winding in the same sentence: "primary 112 sec 2.4 ohms"."""
    at = draft.figures.index(figure)
    beside = [draft.figures[i] for i in (at - 1, at + 1) if 0 <= i < len(draft.figures)]
    return any(
        other.unit == "ohm" and other.site is not None and other.site.name in {"primary", "secondary"}
        for other in beside
        if draft.sentence[other.at] == draft.sentence[figure.at]
    )


def _was_live(draft: Draft, figure: Figure, site: Site) -> bool:
    """What the figure takes the place of was a live reading: "was 118, now 0"."""
    gone = [
        f.value for f in draft.around(figure.at) if f.withdrawn and (f.site is None or f.site is site) and f.unit in {None, "V"}
    ]
    before = next((value for value in reversed(gone) if value > 0), figure.was)
    return before is not None and fits_live(site.name, before)


def _low_impedance(draft: Draft) -> bool:
    """Low impedance is a mode for volts; two meters that are compared are another matter."""
    return len(draft.figures) == 1 and any(p.kind == "condition" and p.meaning == "low_impedance" for p in draft.phrases)


def _in_a_state(figure: Figure, site: Site) -> bool:
    """Loaded and unloaded are said of volts."""
    return figure.state in {"lifted", "loaded"} and site.name == "secondary" and 10 <= figure.value <= 60


def _other_circuit(figure: Figure, site: Site) -> bool:
    """Ohms of a fuse or a coil say nothing of how a winding was read."""
    assert figure.site is not None
    return (
        figure.unit == "ohm"
        and figure.site.name in {"fuse", "coil", "load", "control"}
        and site.name in {"primary", "secondary", "line"}
    )


def _neighbour_unit(draft: Draft, figure: Figure, site: Site) -> str | None:
    """The unit that the nearest measured figure with one has, the one before first."""
    said = [f for f in draft.around(figure.at) if _says_unit(f) and not _other_circuit(f, site)]
    row = next((f for f in reversed(said) if f.at < figure.at), None) or next((f for f in said if f.at > figure.at), None)
    return row.unit if row is not None else None


def _says_unit(figure: Figure) -> bool:
    placed = figure.site is not None and not figure.withdrawn and figure.kind == "amount"
    return placed and figure.unit_from in {"own", "word"} and figure.unit in {"V", "A", "ohm"}


def _all_volts(draft: Draft) -> bool:
    """All readings of the job so far are volts."""
    readings = draft.context.readings
    return bool(readings) and all(reading.measure.endswith(("_volts", "_volts_lifted")) for reading in readings)


def _guess_zero(draft: Draft, figure: Figure, neighbour: str | None) -> None:
    others = [f for f in draft.around(figure.at) if f is not figure and not f.withdrawn and f.site is not None]
    if neighbour == "V" or any(_plain_live(f) or f.kind == "nothing" for f in others):
        figure.unit, figure.unit_from = "V", "neighbour"
    elif neighbour == "ohm":
        figure.unit, figure.unit_from = "ohm", "neighbour"
    elif _all_volts(draft):
        figure.unit, figure.doubt = "V", "unit"
    elif figure.site is not None and "ohm" not in MEASURE_AT[figure.site.name]:
        figure.unit, figure.unit_from = "V", "live"  # a disconnect is read in volts and nothing else
    else:
        either(draft, figure, ("V", "ohm"))


def _guess_on_pair(draft: Draft, figure: Figure, neighbour: str | None) -> None:
    leads = set(figure.site.leads or ()) if figure.site is not None else set()
    if leads & {"l1", "l2", "l3"} and leads & {"ground", "n"} and neighbour != "ohm":
        figure.unit, figure.unit_from = "V", "live"  # a leg of the supply to ground
    elif neighbour in {"V", "ohm"}:
        figure.unit, figure.unit_from = neighbour, "neighbour"
    elif draft.live or draft_shows_live(draft) or _of_two(figure) or _called_hot(draft, figure):
        figure.unit, figure.unit_from = "V", "heading"
    elif (figure.value == 0 or 21 <= figure.value <= 32 or figure.value >= 90) and not (
        _in_a_list_of_ohms(draft, figure) or _beside_an_open(draft, figure)
    ):
        either(draft, figure, ("V", "ohm"))
    else:
        figure.unit, figure.unit_from = "ohm", "live"
        figure.doubt = figure.doubt or "unit"


def _in_a_list_of_ohms(draft: Draft, figure: Figure) -> bool:
    """In "wht blk 12.1 / wht red 20.3 / wht org 23.8": a lead of this pair has ohms in another, so all of them are."""
    if figure.site is None or not 0 < figure.value <= 60:
        return False
    leads = set(figure.site.leads or ())
    others = [f for f in draft.around(figure.at) if f is not figure and f.kind == "amount" and f.site is not None]
    return any(0 < f.value < 21 and f.unit in {None, "ohm"} and leads & set(f.site.leads or ()) for f in others if f.site)


def _beside_an_open(draft: Draft, figure: Figure) -> bool:
    """In "brn gry 221, blu yel 1, rest OL": over range is read in ohms, and nothing in the message is volts."""
    is_open = any(f.kind == "open" and not f.withdrawn for f in draft.figures)
    return figure.value > 0 and is_open and not any(f.unit == "V" for f in draft.figures if f is not figure)


HOT = frozenset({"hot", "live", "energized", "viva", "vivo", "energizado"})


def _called_hot(draft: Draft, figure: Figure) -> bool:
    """In "brown to ground is hot, 118": live, so volts."""
    return figure.site is not None and any(p.text in HOT for p in draft.phrases[figure.site.at + 1 : figure.at + 2])


def _of_two(figure: Figure) -> bool:
    """R to R of two transformers is read live."""
    leads = figure.site.leads if figure.site is not None else None
    return leads is not None and leads[0] == leads[1]


def draft_shows_live(draft: Draft) -> bool:
    """The circuit is live by what the message tells besides: a shock, a smoke."""
    return any(f.fact == "symptom" and f.value == "shock" for _, f in draft.facts)


LEAST_LINE_V = 60.0
"""Least that a bare number at the line is taken for volts, in doubt. [V]"""


def _guess_outside(draft: Draft, figure: Figure) -> None:
    """A bare number that fits no live reading."""
    assert figure.site is not None
    name = figure.site.name
    if (found := slip(name, "V", figure.value)) is not None and figure.value > 60 and name not in {"primary", "line"}:
        ask_slip(draft, figure, "V", found.value, found.question)
    elif "ohm" not in MEASURE_AT[name]:
        if figure.value < LEAST_LINE_V:  # "the line is 8 deep"
            draft.unread.append(
                (min(draft.phrases[figure.site.at].start, figure.start), max(draft.phrases[figure.site.at].end, figure.end))
            )
            figure.done = True
            return
        figure.unit, figure.doubt = "V", "unit"
    elif _all_volts(draft) and 10 <= figure.value <= 60 and name in {"secondary", "control", "coil", "load"}:
        figure.unit, figure.doubt = "V", "unit"
    elif name in {"secondary", "control", "coil", "fuse", "load"} and 12 <= figure.value <= 60:
        either(draft, figure, ("V", "ohm"))
    else:
        figure.unit, figure.unit_from, figure.doubt = "ohm", "live", figure.doubt or "unit"


def either(draft: Draft, figure: Figure, units: tuple[str, str]) -> None:
    """Two units are possible: asked, the likelier first."""
    assert figure.site is not None
    rows = [(MEASURE_AT[figure.site.name][unit], unit) for unit in units if unit in MEASURE_AT[figure.site.name]]
    readings = tuple(Reading(measure=measure, value=figure.value, leads=figure.site.leads) for measure, _ in rows)
    question = (
        say("{value:g}: {first} or {second}?", value=figure.value, first=_unit_word(rows[0][1]), second=_unit_word(rows[-1][1]))
        if len(rows) > 1
        else say("{value:g} {unit}?", value=figure.value, unit=_unit_word(rows[0][1]))
    )
    draft.unclear.append(
        Unclear(fragment=piece_of(draft, figure), choices=tuple(m for m, _ in rows), readings=readings, question=question)
    )
    figure.done = True


def _unit_word(unit: str) -> str:
    return {"V": "volts", "ohm": "ohms", "A": "amps"}[unit]
