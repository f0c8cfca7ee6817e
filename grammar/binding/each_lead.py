"""Both leads of a pair against the iron, and both windings: "13v from either one to chassis", "a tierra nada en ninguno"."""

from grammar.binding.draft import Draft, Site

GOES = frozenset({"to", "between", "filler", "is", "reads"})
"""Kinds that may stand between "each" and the iron."""
NEITHER = frozenset({"neither", "ninguno", "ninguna", "neither one", "ninguno de los dos"})
"""Words for both of two in a message that denies."""


def each_lead(draft: Draft) -> None:
    """Makes the iron a place of both leads of the pair named last, or of both windings."""
    for at, phrase in enumerate(draft.phrases):
        if phrase.kind != "ends" or len(phrase.ends) != 1 or phrase.ends[0].name != "ground":
            continue
        if _each_before(draft, at) and (pair := _pair_before(draft, at)) is not None:
            one, two = pair
            draft.sites[at] = Site(
                at, "pair", "leads", (one, "ground"), also=(Site(at, "pair", "leads", (two, "ground")),), each=True
            )
        elif _nothing_in_either(draft, at):
            draft.sites[at] = Site(at, "place", "primary_ground", also=(Site(at, "place", "secondary_ground"),))


def _each_before(draft: Draft, at: int) -> bool:
    step = at - 1
    while draft.kind(step) in GOES:
        step -= 1
    return draft.kind(step) in {"both", "each"}


def _pair_before(draft: Draft, at: int) -> tuple[str, str] | None:
    """The two leads of the pair named last before a phrase, in its sentence."""
    for step in range(at - 1, max(-1, at - 16), -1):
        site = draft.sites.get(step)
        if site is not None and draft.sentence[step] == draft.sentence[at]:
            clear = site.kind == "pair" and site.leads is not None and not site.choices and "ground" not in site.leads
            return site.leads if clear else None
    return None


def _nothing_in_either(draft: Draft, at: int) -> bool:
    """The iron, no continuity, and behind it the word for neither of two."""
    figure = draft.figure_at(at + 1)
    led = draft.phrases[at - 1].text in {"a", "to", "al", "contra"} if at else False
    if figure is None or figure.kind not in {"nothing", "open"} or not led:
        return False
    behind = draft.phrases[at + 2 : at + 5]
    return any(p.kind == "both" or p.text in NEITHER for p in behind)
