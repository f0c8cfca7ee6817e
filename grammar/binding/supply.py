"""The nominal supply of the building, and the word "supply" where it names the line."""

from core.readings import Fact
from grammar.binding.draft import Draft, Figure, Site
from grammar.binding.told import NOMINAL_V, measured_between, neighbour, open_amounts, volts

PLACES_OF_WORK = frozenset(
    {"building", "bldg", "bldng", "bulding", "site", "edificio", "service", "house is", "store is", "shop is"}
)
"""Supply words behind which a nominal figure is nominal, whatever verb stands there."""


def supply(draft: Draft) -> None:
    """Nominal volts beside a word for the supply; that word beside a measured value is a place."""
    for figure in open_amounts(draft):
        _of_two(draft, figure)
        if not volts(figure) or (figure.value not in NOMINAL_V and not _is_no_supply(draft, figure)):
            continue
        before = neighbour(draft, figure.at, -1, {"supply"}, 2)
        behind = neighbour(draft, figure.at, 1, {"supply"}, 2)
        if before is None and behind is None and draft.kind(figure.at - 1) in {"is", "at", "between"}:
            before = _before_a_comma(draft, figure.at)
        if before is not None and _is_address(draft, figure, before):
            figure.done = True
            draft.taken.add(before)
            draft.chatter.append((draft.phrases[before].start, figure.end))
            continue
        near = before if before is not None else behind
        if near is not None and (not measured_between(draft, near, figure.at) or draft.phrases[near].text in PLACES_OF_WORK):
            draft.fact(figure, Fact(fact="supply_volts", value=figure.value, unit="V"))
            draft.taken.add(near)
        elif behind is None and draft.kind(figure.at + 1) in {"idword", "filler"} and draft.phrases[figure.at + 1].text in FED:
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
    _leading(draft)
    _supply_of_a_question(draft)
    _supply_by_itself(draft)
    air = any(s.kind == "notours" and s.name == "temperature" for s in draft.sites.values())
    for at, phrase in enumerate(draft.phrases):  # "supply reads 203" is measured, so at the line
        if phrase.kind == "supply" and not air and at not in draft.taken and not phrase.text.endswith(NO_PLACES):
            draft.sites[at] = Site(at, "place", "line")


def _is_no_supply(draft: Draft, figure: Figure) -> bool:
    """In "supply is 5 volts" and "supply 120000", in a message of loads: told to core, that refuses it."""
    if 20.0 <= figure.value <= 700.0 or not any(
        p.kind == "supply" for p in draft.phrases[max(0, figure.at - 6) : figure.at + 6]
    ):
        return False
    return draft.told("load") is not None or any(f.unit == "VA" for f in draft.figures) or "size" in draft.asks


NO_PLACES = (" is", " es de", " de", "phase", "ph", "fasico", "fasica", " on", " off", " of", " by", " con")
"""Ends of words for the supply that name no place."""


def _of_two(draft: Draft, figure: Figure) -> None:
    """In "480/277 building": line to line, and line to neutral."""
    values = [a.value for a in figure.amounts]
    if len(values) >= 3 and set(figure.joins) <= {"/", "-"} and values[-2] in {1.0, 3.0} and values[-1] in {50.0, 60.0}:
        if all(value in NOMINAL_V for value in values[:-2]):  # "208/1/60"
            draft.fact(figure, Fact(fact="supply_volts", value=values[0], unit="V"))
        return
    if len(figure.amounts) == 2 and all(a.value in NOMINAL_V for a in figure.amounts) and figure.joins[0] == "/":
        near = neighbour(draft, figure.at, -1, {"supply"}, 2), neighbour(draft, figure.at, 1, {"supply"}, 0)
        if near != (None, None):
            draft.fact(figure, Fact(fact="supply_volts", value=max(a.value for a in figure.amounts), unit="V"))
            draft.taken.update(at for at in near if at is not None)


def _is_address(draft: Draft, figure: Figure, at: int) -> bool:
    """In "going to bldg 208": the number of a building."""
    if figure.unit is not None or at != figure.at - 1:
        return False
    told = draft.phrases[at - 1].text.split(" ")[-1] if at else ""
    if told in {"to", "at", "in", "from", "a", "al", "en", "del", "behind", "near"}:
        return True
    doors = [i for i, p in enumerate(draft.phrases) if p.text in DOORS and draft.kind(i + 1) == "amounts"]
    return any(draft.sentence[i] == draft.sentence[at] for i in doors)  # "unit 26 bldg 120 suite 24"


DOORS = frozenset({"suite", "apt", "ste", "room", "floor", "lot", "apartamento", "depto", "cuarto", "local", "piso"})
"""Parts of an address: a building named beside one has a number, and no volts."""


FED = frozenset({
    "unit", "system", "rtu", "circuit", "unidad", "equipo", "house", "store", "shop", "home", "place", "job", "office", "restaurant", "church", "school", "feed", "casa", "tienda", "oficina", "circuito", "sistema",
})  # fmt: skip
"""What a nominal voltage right before it feeds."""


def _before_a_comma(draft: Draft, at: int) -> int | None:
    """In "corrige el suministro, es de 240": the word for the supply ends the clause before."""
    step = at - 1
    while draft.kind(step) in {"is", "at", "between", "filler"}:
        step -= 1
    return step - 1 if draft.kind(step) == "comma" and draft.kind(step - 1) == "supply" else None


def _leading(draft: Draft) -> None:
    """In "208v pri 207v sec 0v": the first value has no place of its own, for each place is followed by its value."""
    figure = draft.figure_at(0)
    if figure is None or not volts(figure) or figure.value not in NOMINAL_V or draft.told("supply_volts") is not None:
        return
    row = [p.kind for p in draft.phrases if p.kind not in {"comma", "and"}]
    places, values = row[1::2], row[2::2]
    alike = len(row) >= 5 and len(row) % 2 == 1 and set(places) == {"ends"} and set(values) <= {"amounts", "value"}
    if alike:
        draft.fact(figure, Fact(fact="supply_volts", value=figure.value, unit="V"))


def _supply_of_a_question(draft: Draft) -> None:
    """In "what line fuse for a 75 va on 240": a nominal voltage behind "on" or "for", and no place behind it."""
    grounds = "secondary_ground" in draft.warned.names
    asked = grounds or "amps" in draft.topics or bool({"tap", "fuse", "expect", "size", "why"} & set(draft.asks))
    if not asked or draft.told("supply_volts") is not None:
        return
    for figure in open_amounts(draft):
        before, behind = draft.phrases[figure.at - 1] if figure.at else None, draft.kind(figure.at + 1)
        led = before is not None and (
            before.text in {"on", "for", "with", "off", "a", "para", "con", "de"}
            or before.kind == "at"
            or (grounds and before.kind in {"stop", "comma", "line"})
            or ("tap" in draft.asks and before.text in {"hay", "tengo", "have", "got", "tenemos", "theres", "is"})
            or (
                before.kind == "reads"
                and draft.phrases[figure.at - 2].text in {"si", "if", "cuando", "i", "with", "when", "we"}
            )
        )
        if (
            volts(figure)
            and figure.value in NOMINAL_V
            and led
            and behind in {"", "stop", "comma", "line", "filler", "unit", "and"}
        ):
            draft.fact(figure, Fact(fact="supply_volts", value=figure.value, unit="V"))
            return
        if grounds and len(figure.amounts) == 2 and figure.amounts[0].value in NOMINAL_V:  # "one side of a 277 to 24"
            draft.fact(figure, Fact(fact="supply_volts", value=figure.amounts[0].value, unit="V"))
            return


LEAST_BY_ITSELF_V = 200.0
"""A bare 120 may be anything; from here on a nominal voltage that stands alone is a supply. [V]"""


def _supply_by_itself(draft: Draft) -> None:
    """In "it's 480, can I check it live": a nominal voltage that is all of its clause."""
    if draft.context.asked is not None or draft.told("supply_volts") is not None or draft.told("tap_volts") is not None:
        return
    if any(p.kind in {"withdraw", "no", "not", "replace"} for p in draft.phrases):
        return
    for figure in open_amounts(draft):
        if not (volts(figure) and figure.value in NOMINAL_V and figure.value >= LEAST_BY_ITSELF_V):
            continue
        clause = [
            i
            for i in range(max(0, figure.at - 4), min(len(draft.phrases), figure.at + 4))
            if draft.clause[i] == draft.clause[figure.at]
        ]
        clause = clause[
            : next((n for n, i in enumerate(clause) if i > figure.at and draft.kind(i) in {"and", "with", "so"}), len(clause))
        ]
        kinds = {draft.kind(i) for i in clause} - {"comma", "stop", "line"}
        first = next((draft.kind(i) for i in clause if draft.kind(i) not in {"comma", "stop", "line", "filler"}), "")
        if first == "is" and kinds <= {"is", "amounts", "filler"}:
            draft.fact(figure, Fact(fact="supply_volts", value=figure.value, unit="V"))
            return


LEAST_SPOKEN_OF_V = 200.0
"""Least nominal voltage that a danger is told of by its number alone: "without killing the 480". [V]"""


def nominal_in_question(draft: Draft) -> None:
    """In "which tap for 208": a nominal voltage without a place, where something about it is asked."""
    asked = bool({"tap", "expect", "fuse", "which_lead"} & set(draft.asks))
    if not (asked or draft.warned.names) or draft.told("supply_volts") is not None:
        return
    free = [f for f in open_amounts(draft) if volts(f) and f.site is None and f.value in NOMINAL_V]
    if len(free) == 1 and (asked or free[0].value >= LEAST_SPOKEN_OF_V):
        draft.fact(free[0], Fact(fact="supply_volts", value=free[0].value, unit="V"))
