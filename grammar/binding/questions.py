"""Asks about a value that its place cannot have."""

from core.readings import Reading
from core.said import Said, say
from grammar.binding.draft import Draft, Figure
from grammar.binding.places import MEASURE_AT
from grammar.binding.plausible import Slip, fits_live, is_usual_supply, swapped
from grammar.message import Unclear


def ask_slip(draft: Draft, figure: Figure, unit: str, likely: float, question: Said) -> None:
    """Asks about a value with the likely one as its reading; none where only the place is in doubt."""
    assert figure.site is not None
    measure = measure_of(figure, unit)
    likeliest = Reading(measure=measure, value=likely, leads=figure.site.leads)
    readings = () if likely == figure.value else (likeliest,)
    draft.unclear.append(Unclear(fragment=piece_of(draft, figure), choices=(measure,), readings=readings, question=question))
    figure.done = True


def lost_point(figure: Figure, place: str) -> Slip | None:
    """In "pri 1.18 volts", "sec .24 v": a point in a number that is a usual one without it, both told to the hundredth."""
    hundredfold = round(figure.value * 100, 6)
    told = figure.amount is not None and figure.unit == "V" and figure.amount.unit == "volt" and figure.low is None
    if not told or hundredfold != int(hundredfold) or hundredfold % 10 == 0:
        return None
    usual = (place in {"primary", "line"} and is_usual_supply(hundredfold)) or (
        place == "secondary" and fits_live(place, hundredfold)
    )
    if not usual:
        return None
    question = say("{value:g} V is odd there. Did you mean {likely:g} V?", value=figure.value, likely=hundredfold)
    return Slip(hundredfold, question)


def digits_changed(draft: Draft, figure: Figure, place: str) -> Slip | None:
    """In "120 supply, pri 181v": no such supply is, and 118 is what the thumb meant."""
    told = draft.told("supply_volts") or next((f for f in reversed(draft.context.facts) if f.fact == "supply_volts"), None)
    if place not in {"primary", "line"} or figure.unit != "V" or told is None or not isinstance(told.value, int | float):
        return None
    likely = swapped(figure.value, float(told.value))
    if likely is None:
        return None
    question = say(
        "{value:g} V on a {nominal:g} V supply? Did you mean {likely:g} V?",
        value=figure.value,
        nominal=told.value,
        likely=likely,
    )
    return Slip(likely, question)


def fell(draft: Draft, figure: Figure) -> bool:
    """In "28.1 with everything off, put R back and it goes to 3": a low value beside a sound one is what a short leaves."""
    if figure.state == "loaded":
        return True
    others = [f for f in draft.around(figure.at) if f is not figure and f.site is figure.site and f.kind == "amount"]
    words = {p.text for p in draft.phrases[max(0, figure.at - 4) : figure.at]}
    return bool(words & FALLS) and any(f.value > 2 * figure.value for f in others)


FALLS = frozenset({"goes", "to", "drops", "drops to", "down to", "dropped", "dropped to", "falls", "falls to", "sags to", "pulled", "down", "baja a", "cae a", "se cae a", "only"})  # fmt: skip


def said_twice(draft: Draft, measure: str, value: float) -> bool:
    """The value that was asked about is said once more: then it counts as said, and is not asked about for ever."""
    figures = f"{value:g}".replace("0.", ".") if 0 < value < 1 else f"{value:g}"  # written ".24" as well
    return value >= 0 and any(
        measure in row.choices and figures in row.fragment.replace(",", ".") for row in draft.context.unclear
    )


def measure_of(figure: Figure, unit: str) -> str:
    """The measure of a figure at its place in a unit, empty where there is none."""
    assert figure.site is not None
    site = figure.site
    if site.name in {"primary_ground", "secondary_ground", "primary_secondary"} and unit == "V" and site.leads:
        return "lead_volts"
    measure = MEASURE_AT.get(site.name, {}).get(unit, "")
    if measure == "secondary_volts" and figure.state in {"lifted", "isolated"}:
        return "secondary_volts_lifted"
    return measure


def piece_of(draft: Draft, figure: Figure) -> str:
    """The words of a figure with its place."""
    assert figure.site is not None
    phrase = draft.phrases[figure.site.at]
    return draft.fragment(min(phrase.start, figure.start), max(phrase.end, figure.end))
