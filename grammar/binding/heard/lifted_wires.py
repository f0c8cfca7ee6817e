"""A leg that is lifted by its colour while a short is looked for: "quité el amarillo y sube a 40", "pulled the yellow, 38"."""

from core.heard.record import Heard, Read
from core.readings import OPEN
from grammar.binding.draft import Draft
from grammar.binding.heard.taking import take
from grammar.words.heard import ES_LIFTS, LIFTS

LEGS = {"yellow": "y", "white": "w", "green": "g", "orange": "o", "blue": "c"}
"""The colours of thermostat cable by habit. Common practice, no source."""
SEARCHED = frozenset({"load_short", "protection_open"})
VERBS = frozenset({*LIFTS.split("|"), *ES_LIFTS.split("|")})
LEAST_COIL_V = 15.0


def lifted_wires(draft: Draft) -> None:
    """Where a short is looked for, a colour is a wire of the thermostat cable and none of the transformer."""
    if draft.context.finding not in SEARCHED or draft.context.is_of_leads:
        return
    told = {word for p in draft.phrases for word in p.text.split()}
    colours = [at for at, p in enumerate(draft.phrases) if p.kind == "ends" and len(p.ends) == 1 and p.ends[0].kind == "colour"]
    figures = [f for f in draft.figures if not f.done and f.kind in {"amount", "open"} and f.unit in {None, "V", "ohm"}]
    if len(colours) != 1 or len(figures) != 1 or not told & VERBS or "?" in draft.text:
        return
    leg = LEGS.get(draft.phrases[colours[0]].ends[0].name)
    if leg is None or leg == "c":
        return
    figure = figures[0]
    value: Read = OPEN if figure.kind == "open" else figure.value
    unit = "ohm" if figure.kind == "open" else figure.unit or ("ohm" if figure.value < LEAST_COIL_V else "V")
    take(draft, (colours[0], figure.at), Heard("leg_lifted", leg, "", (value,), unit), [figure])
