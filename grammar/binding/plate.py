"""Volts on the nameplate, and sizes that are only asked about."""

from core.readings import Fact
from grammar.binding.draft import Draft, Figure
from grammar.binding.told import NOMINAL_V, open_amounts, volts


def plate_volts(draft: Draft) -> None:
    """Volts beside a rating: the secondary at 24 or less, the supply from 100 up."""
    rated = [(at, f) for at, f in draft.facts if f.fact == "rated_va"]
    plate = bool(rated) or any(p.kind == "nameplate" for p in draft.phrases)
    for figure in open_amounts(draft):
        if figure.kind != "amount" or figure.unit not in {None, "V"}:
            continue
        if rated and _described(draft, figure):
            name = "rated_secondary_volts" if figure.value <= 24 else "supply_volts"
            draft.fact(figure, Fact(fact=name, value=figure.value, unit="V"))
            continue
        if (
            figure.unit == "V"
            and figure.value in {12.0, 16.0, 18.0, 24.0}
            and rated
            and draft.told("nameplate_taps") is not None
        ):
            draft.fact(figure, Fact(fact="rated_secondary_volts", value=figure.value, unit="V"))
            continue
        near = any(abs(at - figure.at) <= 3 and draft.sentence[at] == draft.sentence[figure.at] for at, _ in rated)
        transformer = any(draft.kind(i) == "transformer" for i in (figure.at + 1, figure.at + 2))
        values = [a.value for a in figure.amounts]
        if (
            volts(figure)
            and (figure.value in NOMINAL_V or figure.value in {12.0, 16.0, 18.0, 24.0})
            and _under_plate(draft, figure)
        ):
            name = "rated_secondary_volts" if figure.value <= 24 else "supply_volts"
            draft.fact(figure, Fact(fact=name, value=figure.value, unit="V"))
        elif (
            len(values) == 2
            and figure.joins[0] in {"/", "to", "-", "a"}
            and values[0] in NOMINAL_V
            and values[1] == 24.0
            and (plate or transformer)
        ):
            draft.fact(figure, Fact(fact="supply_volts", value=values[0], unit="V"))
            draft.fact(figure, Fact(fact="rated_secondary_volts", value=24.0, unit="V"))
        elif volts(figure) and (
            (near and _beside_rating(draft, figure))
            or (
                transformer
                and figure.unit == "V"
                and figure.value in {12.0, 16.0, 24.0}
                and figure.at + 1 < len(draft.phrases)
                and draft.kind(figure.at + 1) == "transformer"
            )
        ):
            if 0 < figure.value <= 24:
                draft.fact(figure, Fact(fact="rated_secondary_volts", value=figure.value, unit="V"))
            elif figure.value in NOMINAL_V and figure.unit == "V":
                draft.fact(figure, Fact(fact="supply_volts", value=figure.value, unit="V"))


def _described(draft: Draft, figure: Figure) -> bool:
    """In "a 40VA with 120 primary and 24 secondary": nominal volts right before their winding, both of them, and nothing measured."""
    if any(p.kind == "reads" for p in draft.phrases):
        return False
    pairs = [
        (f.value, draft.sites[f.at + 1].name)
        for f in draft.around(figure.at)
        if volts(f) and f.at + 1 in draft.sites and draft.sites[f.at + 1].kind == "place"
    ]
    mine = (figure.value, draft.sites[figure.at + 1].name) if figure.at + 1 in draft.sites else None
    nominal = all(
        (name == "primary" and value in NOMINAL_V) or (name == "secondary" and value == 24.0) for value, name in pairs
    )
    return (
        mine in pairs
        and nominal
        and (
            mine[1] == "secondary"
            or any(n == "secondary" for _, n in pairs)
            or any(f.fact == "rated_secondary_volts" for _, f in draft.facts)
        )
    )


def _under_plate(draft: Draft, figure: Figure) -> bool:
    """In "nameplate says 40 VA 24 volts 120 primary": in one sentence behind the word, and nothing measured between."""
    plate = next((i for i in range(figure.at - 1, max(-1, figure.at - 10), -1) if draft.kind(i) == "nameplate"), None)
    named = next((i for i in range(figure.at - 1, max(-1, figure.at - 4), -1) if draft.kind(i) not in {"is", "filler"}), None)
    if named is not None and draft.kind(named) == "ends" and any(e.kind != "place" for e in draft.phrases[named].ends):
        return False  # "red is 240" tells of a lead
    return (
        plate is not None
        and draft.sentence[plate] == draft.sentence[figure.at]
        and not any(draft.kind(i) == "reads" for i in range(plate, figure.at))
    )


def _beside_rating(draft: Draft, figure: Figure) -> bool:
    """No place and no measuring word between the volts and the rating."""
    at = next(at for at, f in draft.facts if f.fact == "rated_va")
    span = range(min(at, figure.at) + 1, max(at, figure.at))
    if any(i in draft.sites and draft.sites[i].kind != "notours" and draft.sites[i].name != "secondary" for i in span):
        return False
    return figure.unit == "V" or figure.value in {24.0, 12.0, 16.0}


def sizes_asked(draft: Draft) -> None:
    """In "a 40 or 75?": sizes in a question are no rating."""
    if "size" in draft.asks:
        for figure in open_amounts(draft):
            if figure.unit is None and len(figure.amounts) == 2 and figure.joins[0] in {"or", "o"}:
                figure.done = True
                draft.cue_spans.append((figure.start, figure.end))
