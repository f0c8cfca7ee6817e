"""Volts on the nameplate, and sizes that are only asked about."""

from core.readings import Fact
from core.standards.transformer_ratings import SIZES_VA
from grammar.binding.draft import Draft, Figure
from grammar.binding.told import NOMINAL_V, open_amounts, volts

LOW_SIDE = frozenset({12.0, 16.0, 18.0, 24.0})
"""Volts of a low side."""


def plate_volts(draft: Draft) -> None:
    """Volts beside a rating: the secondary at 24 or less, the supply from 100 up."""
    rated = [at for at, fact in draft.facts if fact.fact == "rated_va"]
    for figure in open_amounts(draft):
        if figure.unit not in {None, "V"}:
            continue
        if _both_sides(draft, figure, rated=bool(rated)):
            draft.fact(figure, Fact(fact="supply_volts", value=figure.amounts[0].value, unit="V"))
            draft.fact(figure, Fact(fact="rated_secondary_volts", value=24.0, unit="V"))
        elif volts(figure) and figure.value > 0 and _of_the_plate(draft, figure, rated):
            name = "rated_secondary_volts" if figure.value <= 24 else "supply_volts"
            draft.fact(figure, Fact(fact=name, value=figure.value, unit="V"))


def _both_sides(draft: Draft, figure: Figure, *, rated: bool) -> bool:
    """In "120/24 transformer": both windings in one figure."""
    values = [a.value for a in figure.amounts]
    if len(values) != 2 or figure.joins[0] not in {"/", "to", "-", "a"} or values[0] not in NOMINAL_V or values[1] != 24.0:
        return False
    transformer = "transformer" in {draft.kind(figure.at + 1), draft.kind(figure.at + 2)}
    return rated or transformer or any(p.kind == "nameplate" for p in draft.phrases)


def _of_the_plate(draft: Draft, figure: Figure, rated: list[int]) -> bool:
    """The one figure is a nominal one, and something beside it says that it is of the plate."""
    low, nominal = figure.value in LOW_SIDE, figure.value in NOMINAL_V
    if (rated and _described(draft, figure)) or ((low or nominal) and _under_plate(draft, figure)):
        return True
    if low and figure.unit == "V" and rated and draft.told("nameplate_taps") is not None:
        return True
    if low and figure.unit == "V" and _alone_beside_loads(draft, figure):
        return True
    near = any(abs(at - figure.at) <= 3 and draft.sentence[at] == draft.sentence[figure.at] for at in rated)
    if near and _beside_rating(draft, figure):
        return figure.value <= 24 or nominal
    return low and figure.unit == "V" and _names_a_transformer(draft, figure)


def _alone_beside_loads(draft: Draft, figure: Figure) -> bool:
    """In "transformer for 30va load, 24v, supply 277": all of its clause, in a message of loads and no readings."""
    if draft.context.asked is not None or draft.told("load") is None or any(p.kind == "reads" for p in draft.phrases):
        return False
    clause = [i for i in range(len(draft.phrases)) if draft.clause[i] == draft.clause[figure.at]]
    return (
        all(draft.kind(i) in {"amounts", "comma", "stop", "line", "filler", "and"} for i in clause)
        and sum(draft.kind(i) == "amounts" for i in clause) == 1
    )


def _names_a_transformer(draft: Draft, figure: Figure) -> bool:
    """In "24v transformer", "12v doorbell transformer"."""
    behind = draft.kind(figure.at + 1)
    return behind == "transformer" or (behind == "device" and draft.kind(figure.at + 2) == "transformer")


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
    right_behind = figure.at == at + 1 and figure.value in NOMINAL_V  # "40va 120"
    return figure.unit == "V" or figure.value in {24.0, 12.0, 16.0} or right_behind


def sizes_asked(draft: Draft) -> None:
    """In "a 40 or 75?": sizes in a question are no rating."""
    if "size" in draft.asks:
        for figure in open_amounts(draft):
            if figure.unit is None and len(figure.amounts) == 2 and figure.joins[0] in {"or", "o"}:
                figure.done = True
                draft.cue_spans.append((figure.start, figure.end))
    _size_by_its_number(draft)


ONE = frozenset({"a", "an", "the", "my", "this", "that", "uno de", "un", "el de", "el", "de", "another", "existing"})
"""Words before a size that is called by its number."""
ASKED = frozenset({"will", "would", "is", "does", "can", "could", "aguanta", "alcanza", "sirve"})
"""Words before a size that is asked about: "will 75 be enough"."""
BEHIND_SIZE = frozenset(
    {"", "run", "reads", "stop", "comma", "line", "filler", "with", "and", "is", "at", "transformer", "notours"}
)


def _size_by_its_number(draft: Draft) -> None:
    """In "contactor 9va, is a 40 enough", "aguanta uno de 40": a size of the trade, where loads are told and no other rating."""
    sized_by = any(f.fact == "load" for _, f in draft.facts) or "parallel" in draft.asks
    if not sized_by or draft.told("rated_va") is not None or draft.meant_va is not None:
        return
    free = [f for f in draft.figures if not f.withdrawn and f.kind == "amount" and f.unit is None and f.value in SIZES_VA]
    for figure in free:
        called = figure.at and draft.phrases[figure.at - 1].text.split(" ")[-1] in ONE | ASKED
        sized = ("size" in draft.asks or "?" in draft.text) and (
            called or draft.phrases[min(figure.at + 1, len(draft.phrases) - 1)].text in ENOUGH
        )
        on_one = called and (draft.kind(figure.at - 2) in {"at", "with"} or "parallel" in draft.asks)
        alone = len(figure.amounts) == 1 and draft.kind(figure.at + 1) in BEHIND_SIZE and figure.at not in draft.sites
        if alone and (sized or on_one):
            draft.fact(figure, Fact(fact="rated_va", value=figure.value, unit="VA"))
            return


ENOUGH = frozenset({"enough", "ok", "okay", "plenty", "do", "good", "alcanza", "basta", "suficiente", "sirve"})
