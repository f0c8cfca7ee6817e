"""The unit of a winding's bare number, as the job tells it: ohms go on as ohms, a fed circuit reads volts, and so does what was just lifted."""

from core.readings import Reading
from grammar.binding.draft import Draft, Figure
from grammar.binding.plausible import fits_live
from grammar.parser import parse


def job_units(draft: Draft) -> None:
    """Before the ordinary binding guesses."""
    _in_ohms(draft)
    _in_volts(draft)
    _lifted(draft)


WINDINGS = frozenset({"primary", "secondary"})
MOST_BARE_OHM = 16.0


def _in_ohms(draft: Draft) -> None:
    """In "sec .2" behind "ohms: pri 3": the meter still stands on ohms, where the value fits no live secondary."""
    figures = [f for f in draft.figures if f.kind == "amount"]
    places = {end.name for p in draft.phrases if p.kind == "ends" and len(p.ends) == 1 for end in p.ends}
    if not draft.context.said_before or len(figures) != 1 or len(places) != 1 or not places <= WINDINGS:
        return
    figure = figures[0]
    stated = any(p.kind in {"alone", "heading", "condition"} for p in draft.phrases)
    if figure.unit is not None or figure.done or stated or not 0 < figure.value < MOST_BARE_OHM:
        return
    before = parse(draft.context.said_before[-1]).phrases
    ohms = any(p.kind in {"alone", "heading"} and p.meaning in {"ohm", "dead"} for p in before)
    ohms = ohms or any(amount.unit == "ohm" for p in before for amount in p.amounts)
    if ohms:
        figure.unit, figure.unit_from = "ohm", "heading"


def _lifted(draft: Draft) -> None:
    """In "sec lifted 9.1" behind 9 V there: the same volts, whatever was asked for."""
    figures = [f for f in draft.figures if f.kind == "amount"]
    lifted = {p.meaning for p in draft.phrases if p.kind == "condition"} & {"lifted", "loaded"}
    told = set(draft.words) & {"sec", "secondary", "secundario"}
    if len(figures) != 1 or len(lifted) != 1 or not told or figures[0].unit is not None or figures[0].done:
        return
    volts = next((r.value for r in reversed(draft.context.readings) if r.measure.startswith("secondary_volts")), None)
    if isinstance(volts, float) and NEAR_V[0] * volts <= figures[0].value <= NEAR_V[1] * volts:
        figures[0].done = True
        measure = "secondary_volts_lifted" if "lifted" in lifted else "secondary_volts"
        draft.readings.append(Reading(measure=measure, value=figures[0].value, loaded="loaded" in lifted))


NEAR_V = (0.8, 1.3)
"""What the volts of a secondary do once its load is off."""


def _is_live_primary(draft: Draft, figure: Figure) -> bool:
    """In "pri 120 sec 21": the primary is fed."""
    before = draft.phrases[figure.at - 1] if figure.at else None
    primary = before is not None and any(end.name == "primary" for end in before.ends)
    return primary and figure.unit in {None, "V"} and fits_live("primary", figure.value)


LIVE_SYMPTOMS = frozenset({"chatter", "hum", "hot"})
"""What only a fed circuit does."""
LOW_V = (5.0, 21.5)
"""What a secondary reads that is pulled down, and a bare number there is not taken for at once. [V]"""


def _in_volts(draft: Draft) -> None:
    """In "sec 19" behind "contactor chattering": volts, in a job that has no ohms yet; still a guess."""
    known = draft.context
    figures = [f for f in draft.figures if f.kind == "amount" and not _is_live_primary(draft, f)]
    beside = len(figures) < len([f for f in draft.figures if f.kind == "amount"])
    places = {end.name for p in draft.phrases if p.kind == "ends" and len(p.ends) == 1 for end in p.ends}
    places -= {"primary"} if beside else set()
    if len(figures) != 1 or places != {"secondary"} or figures[0].unit is not None or figures[0].done:
        return
    live = (
        beside
        or any(f.value in LIVE_SYMPTOMS for f in known.facts)
        or any(r.measure.endswith("volts") and r.value != 0.0 for r in known.readings)
    )
    ohms = any(r.measure.endswith("ohms") for r in known.readings) or (
        known.asked is not None and known.asked[0].endswith("ohms")
    )
    if live and not ohms and LOW_V[0] <= figures[0].value <= LOW_V[1] and len(figures[0].amounts) == 1:
        figures[0].unit, figures[0].unit_from, figures[0].doubt = "V", "live", "sound"
