"""The nominal supply of the building, and the word "supply" where it names the line."""

from core.readings import Fact
from grammar.binding.draft import Draft, Site
from grammar.binding.told import NOMINAL_V, measured_between, neighbour, open_amounts, volts

PLACES_OF_WORK = frozenset(
    {"building", "bldg", "bldng", "bulding", "site", "edificio", "service", "house is", "store is", "shop is"}
)
"""Supply words behind which a nominal figure is nominal, whatever verb stands there."""


def supply(draft: Draft) -> None:
    """Nominal volts beside a word for the supply; that word beside a measured value is a place."""
    for figure in open_amounts(draft):
        if not volts(figure) or figure.value not in NOMINAL_V:
            continue
        before = neighbour(draft, figure.at, -1, {"supply"}, 2)
        behind = neighbour(draft, figure.at, 1, {"supply"}, 2)
        near = before if before is not None else behind
        if near is not None and (not measured_between(draft, near, figure.at) or draft.phrases[near].text in PLACES_OF_WORK):
            draft.fact(figure, Fact(fact="supply_volts", value=figure.value, unit="V"))
            draft.taken.add(near)
        elif (
            behind is None
            and draft.kind(figure.at + 1) == "idword"
            and draft.phrases[figure.at + 1].text in {"unit", "system", "rtu", "circuit", "unidad", "equipo"}
        ):
            draft.fact(figure, Fact(fact="supply_volts", value=figure.value, unit="V"))
            draft.taken.add(figure.at + 1)
    for figure in open_amounts(draft):  # "240 tap on 208"
        kinds = [draft.kind(i) for i in (figure.at - 3, figure.at - 2, figure.at - 1)]
        if (
            kinds == ["amounts", "tapword", "at"]
            and volts(figure)
            and figure.value in NOMINAL_V
            and draft.told("supply_volts") is None
        ):
            draft.fact(figure, Fact(fact="supply_volts", value=figure.value, unit="V"))
    _supply_of_a_question(draft)
    _supply_by_itself(draft)
    air = any(s.kind == "notours" and s.name == "temperature" for s in draft.sites.values())
    for at, phrase in enumerate(draft.phrases):  # "supply reads 203" is measured, so at the line
        if phrase.kind == "supply" and not air and at not in draft.taken and not phrase.text.endswith((" is", " es de", " de")):
            draft.sites[at] = Site(at, "place", "line")


def _supply_of_a_question(draft: Draft) -> None:
    """In "what line fuse for a 75 va on 240": a nominal voltage behind "on" or "for", and no place behind it."""
    grounds = "secondary_ground" in draft.warned.names
    if not (grounds or {"tap", "fuse", "expect", "size", "why"} & set(draft.asks)) or draft.told("supply_volts") is not None:
        return
    for figure in open_amounts(draft):
        before, behind = draft.phrases[figure.at - 1] if figure.at else None, draft.kind(figure.at + 1)
        led = before is not None and (
            before.text in {"on", "for", "with", "off", "a", "para", "con", "de"} or before.kind == "at"
        )
        if volts(figure) and figure.value in NOMINAL_V and led and behind in {"", "stop", "comma", "line", "filler", "unit"}:
            draft.fact(figure, Fact(fact="supply_volts", value=figure.value, unit="V"))
            return
        if grounds and len(figure.amounts) == 2 and figure.amounts[0].value in NOMINAL_V:  # "one side of a 277 to 24"
            draft.fact(figure, Fact(fact="supply_volts", value=figure.amounts[0].value, unit="V"))
            return


def _supply_by_itself(draft: Draft) -> None:
    """In "it's 480, can I check it live": a nominal voltage that is all of its clause."""
    if draft.context.asked is not None or draft.told("supply_volts") is not None or draft.told("tap_volts") is not None:
        return
    if any(p.kind in {"withdraw", "no", "not", "replace"} for p in draft.phrases):
        return
    for figure in open_amounts(draft):
        clause = [
            i
            for i in range(max(0, figure.at - 4), min(len(draft.phrases), figure.at + 4))
            if draft.clause[i] == draft.clause[figure.at]
        ]
        kinds = {draft.kind(i) for i in clause} - {"comma", "stop", "line"}
        first = next((draft.kind(i) for i in clause if draft.kind(i) not in {"comma", "stop", "line", "filler"}), "")
        if (
            first == "is"
            and kinds <= {"is", "amounts", "filler"}
            and volts(figure)
            and figure.value in NOMINAL_V
            and figure.value >= 200
        ):
            draft.fact(figure, Fact(fact="supply_volts", value=figure.value, unit="V"))
            return


def nominal_in_question(draft: Draft) -> None:
    """In "which tap for 208": a nominal voltage without a place, where something about it is asked."""
    if not {"tap", "expect", "fuse"} & set(draft.asks) or draft.told("supply_volts") is not None:
        return
    free = [f for f in open_amounts(draft) if volts(f) and f.site is None and f.value in NOMINAL_V]
    if len(free) == 1:
        draft.fact(free[0], Fact(fact="supply_volts", value=free[0].value, unit="V"))
