"""Two nominal voltages in one message: what the unit is made for, and what feeds it."""

from dataclasses import replace

from core.readings import Fact
from grammar.binding.draft import Draft, Figure
from grammar.binding.told import NOMINAL_V, open_amounts, volts

FEEDS = frozenset({"on", "off", "with", "for", "from", "to", "en", "con", "de", "fed", "has", "is"})
"""Words right before the volts that feed a unit."""
MADE = frozenset({"unit", "units", "unidad", "equipo"})
HAS = frozenset({"with", "has", "a", "w", "con", "de", "tiene", "rated"})
BUILDINGS = frozenset({"building", "bldg", "site", "edificio", "house", "store", "shop"})
OF_IT = frozenset({"is", "is a", "a", "de", "es de", "es", "rated", "for", "para"})
"""Words between a transformer and the volts it is made for."""
SAME = 0.02
"""Two nominal voltages nearer than this are one."""


def unit_and_supply(draft: Draft) -> None:
    """In "120 to 24 40va, supply is 240" and "277v transformer on 240": the first is what the primary in use is made for."""
    _rated_on(draft)
    _primary_of_a_unit(draft)
    _building_has(draft)
    _unit_on_a_supply(draft)
    _both_told(draft)


def _rated_on(draft: Draft) -> None:
    """In "installed 75va on 208: line 207": the supply, right behind the rating."""
    for figure in open_amounts(draft):
        rating = draft.figure_at(figure.at - 2)
        on = draft.kind(figure.at - 1) == "at" and draft.phrases[figure.at - 1].text in {"on", "en"}
        if on and _is_nominal(figure) and rating is not None and rating.unit == "VA" and draft.told("supply_volts") is None:
            draft.fact(figure, Fact(fact="supply_volts", value=figure.value, unit="V"))


def _primary_of_a_unit(draft: Draft) -> None:
    """In "40va with 120 primary": what it is made for, and no reading."""
    if draft.told("rated_va") is None or any(p.kind == "reads" for p in draft.phrases):
        return
    for figure in open_amounts(draft):
        behind = draft.sites.get(figure.at + 1)
        before = draft.phrases[figure.at - 1].text if figure.at else ""
        if volts(figure) and figure.value in NOMINAL_V and behind is not None and behind.name == "primary" and before in HAS:
            behind.used += 1
            draft.fact(figure, Fact(fact="supply_volts", value=figure.value, unit="V"))


def _building_has(draft: Draft) -> None:
    """In "building has 208": the supply, whatever the verb."""
    for figure in open_amounts(draft):
        if _is_nominal(figure) and draft.kind(figure.at - 1) == "reads" and draft.phrases[figure.at - 2].text in BUILDINGS:
            draft.fact(figure, Fact(fact="supply_volts", value=figure.value, unit="V"))
            draft.taken.add(figure.at - 2)
            draft.sites.pop(figure.at - 2, None)


def _unit_on_a_supply(draft: Draft) -> None:
    """In "277v transformer on 240 ok?": both, where nothing else was made of them."""
    ends = [i for i, phrase in enumerate(draft.phrases) if phrase.kind in {"stop", "line"}]
    for figure in draft.figures:
        is_told = any(at == figure.at and fact.fact == "supply_volts" for at, fact in draft.facts)
        nominal = is_told or (not figure.done and not figure.withdrawn and _is_nominal(figure))
        if not nominal or not _is_made_for(draft, figure.at):
            continue
        end = next((i for i in ends if i > figure.at), len(draft.phrases))
        feeds = next(
            (f for f in open_amounts(draft) if figure.at < f.at < end and _is_nominal(f) and _is_fed(draft, f.at)), None
        )
        others = [f for at, f in draft.facts if f.fact == "supply_volts" and at != figure.at]
        if feeds is not None and not others:
            draft.fact(feeds, Fact(fact="supply_volts", value=feeds.value, unit="V"))
        if (feeds is not None or others) and not is_told:
            draft.fact(figure, Fact(fact="tap_volts", value=figure.value, unit="V"))
        elif not is_told and draft.kind(figure.at + 1) == "transformer" and draft.told("supply_hertz") is not None:
            figure.done = True  # "60hz 120v transformer in mexico 50 hz": the frequency is asked about
            draft.cue_spans.append((figure.start, figure.end))


def _is_nominal(figure: Figure) -> bool:
    return volts(figure) and figure.value in NOMINAL_V


def _is_made_for(draft: Draft, at: int) -> bool:
    """Volts of a unit: "120 to 24", "277v transformer", "a 240 unit on 208", "transformer is a 240"."""
    figure = draft.figure_at(at)
    if figure is not None and len(figure.amounts) == 2 and figure.amounts[1].value == 24.0:
        return True
    before = at - 1
    while before > 0 and draft.phrases[before].text in OF_IT:
        before -= 1
    behind = draft.phrases[at + 1].text if at + 1 < len(draft.phrases) else ""
    after = at + 1
    while (beside := draft.figure_at(after)) is not None and beside.unit == "Hz":  # "220v 50hz transformer"
        after += 1
    return "transformer" in {draft.kind(after), draft.kind(before)} or behind in MADE


def _is_fed(draft: Draft, at: int) -> bool:
    beside = {draft.kind(at - 1), draft.kind(at + 1)}
    return "supply" in beside or draft.phrases[at - 1].text in FEEDS


def _both_told(draft: Draft) -> None:
    """Of two supplies that differ, that of the unit is the tap in use; what an earlier message told of the building stands."""
    if draft.told("tap_volts") is not None:
        return
    told = [
        (i, at, f) for i, (at, f) in enumerate(draft.facts) if f.fact == "supply_volts" and isinstance(f.value, float | int)
    ]
    made_for = [row for row in told if _is_made_for(draft, row[1]) or _is_primary(draft, row[1])]
    if len(told) == 1 and made_for:
        before = next((f.value for f in reversed(draft.context.facts) if f.fact == "supply_volts"), None)
    elif len(told) == 2:
        if len(made_for) != 1:
            made_for = [row for row in told if not _is_fed(draft, row[1])][:1]
        before = next((f.value for _, _, f in told if made_for and f is not made_for[0][2]), None)
    else:
        return
    if not made_for or not isinstance(before, float | int):
        return
    index, at, fact = made_for[0]
    if abs(float(str(fact.value)) / float(before) - 1.0) > SAME:
        draft.facts[index] = (at, replace(fact, fact="tap_volts"))


def _is_primary(draft: Draft, at: int) -> bool:
    site = draft.sites.get(at + 1)
    return site is not None and site.name == "primary"
