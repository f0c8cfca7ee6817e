"""Amps of a fuse."""

from core.readings import Fact
from grammar.binding.draft import Draft, Figure
from grammar.binding.told import neighbour, open_amounts


def fuses(draft: Draft) -> None:
    """Amps of a fuse: beside it, "fusible de 5", "a 3 amp breaker", "will a 3 fuse do"."""
    for figure in open_amounts(draft):
        if figure.unit == "A" and figure.value > 10 and _of_the_panel(draft, figure):
            figure.done = True
            draft.chatter.append((figure.start, draft.phrases[figure.at + 1].end))
            continue
        if len(figure.amounts) == 1 and (
            _beside_a_fuse(draft, figure)
            or _of_a_fuse(draft, figure)
            or _of_a_breaker(draft, figure)
            or _put_in(draft, figure)
            or _asked_fuse(draft, figure)
        ):
            draft.fact(figure, Fact(fact="fuse_amps", value=figure.value, unit="A"))
    _meant(draft)


def _meant(draft: Draft) -> None:
    """In "el fusible trae 10 amps y debe ser de 3": the fuse that should be there."""
    if draft.told("fuse_amps") is None:
        return
    for at, phrase in enumerate(draft.phrases):
        if phrase.kind != "expected" and phrase.text not in SHOULD_BE:
            continue
        figure = next(
            (f for f in draft.figures if at < f.at <= at + 3 and f.kind == "amount" and f.unit in {None, "A"} and not f.done),
            None,
        )
        if figure is not None and figure.value <= 30:
            figure.withdrawn = False
            draft.fact(figure, Fact(fact="fuse_amps", value=figure.value, unit="A"))


SHOULD_BE = frozenset(
    {"should be", "deberia ser", "debe ser", "needs", "wants", "calls", "lleva", "ocupa", "necesita", "takes"}
)


def _is_fuse(draft: Draft, at: int) -> bool:
    return at in draft.sites and draft.sites[at].name == "fuse"


def _beside_a_fuse(draft: Draft, figure: Figure) -> bool:
    reach = range(max(0, figure.at - 6), min(len(draft.phrases), figure.at + 7))
    fuse = next((i for i in reach if _is_fuse(draft, i) and draft.sentence[i] == draft.sentence[figure.at]), None)
    return figure.unit == "A" and fuse is not None and _fuse_between(draft, fuse, figure.at)


def _of_a_fuse(draft: Draft, figure: Figure) -> bool:
    of = figure.unit is None and draft.phrases[max(0, figure.at - 1)].text in {"de", "of"} and 1 <= figure.value <= 30
    return of and _is_fuse(draft, figure.at - 2)


def _of_a_breaker(draft: Draft, figure: Figure) -> bool:
    behind = draft.phrases[min(figure.at + 1, len(draft.phrases) - 1)]
    clause = range(max(0, figure.at - 5), figure.at)
    before = [draft.phrases[i].text for i in clause if draft.clause[i] == draft.clause[figure.at]]
    led = draft.kind(figure.at - 1) == "is" and "breaker" in before
    return figure.unit == "A" and figure.value <= 10 and (led or behind.text in {"breaker", "cb"})


def _of_the_panel(draft: Draft, figure: Figure) -> bool:
    """In "a 40 amp breaker", "60 amp disconnect": the power side of the unit."""
    behind = draft.phrases[min(figure.at + 1, len(draft.phrases) - 1)]
    return behind.text in {"breaker", "cb", "disconnect", "disco", "panel", "service", "circuit", "main", "pastilla"}


PUTS = frozenset({
    "put", "putting", "install", "installing", "use", "using", "stick", "stuck", "throw", "threw", "go", "going", "want", "swap", "drop", "had", "has", "found", "with", "to", "run", "pon", "poner", "ponerle", "ponle", "pongo", "puso", "uso", "usar", "meter", "meto", "metio", "traia",
    "le", "or",
})  # fmt: skip
"""Words before a fuse that is put in, where the fuse was named before."""


def _put_in(draft: Draft, figure: Figure) -> bool:
    """In "fuse blew, put in a 5 amp": amps of nothing else, in a message that speaks of a fuse."""
    if figure.unit != "A" or figure.value > 30 or not _speaks_of_fuse(draft):
        return False
    near = range(max(0, figure.at - 4), min(len(draft.phrases), figure.at + 3))
    other = any(draft.kind(i) in {"device", "notours", "reads"} or (i in draft.sites and not _is_fuse(draft, i)) for i in near)
    return not other and any(draft.phrases[i].text in PUTS for i in range(max(0, figure.at - 4), figure.at))


def _speaks_of_fuse(draft: Draft) -> bool:
    told = any(fact.fact == "symptom" and fact.value in {"blown_fuse", "blows_fuse"} for _, fact in draft.facts)
    return told or "fuse" in draft.asks or any(site.name == "fuse" for site in draft.sites.values())


def _asked_fuse(draft: Draft, figure: Figure) -> bool:
    whole = figure.unit is None and 1 <= figure.value <= 30 and figure.value == int(figure.value)
    free = "fuse" in draft.asks and draft.told("fuse_amps") is None and neighbour(draft, figure.at, -1, {"supply"}, 1) is None
    return whole and free and _is_fuse(draft, figure.at + 1)


def _fuse_between(draft: Draft, one: int, other: int) -> bool:
    """No other place or device stands between fuse and amps."""
    span = range(min(one, other) + 1, max(one, other))
    return not any(i in draft.sites or (draft.kind(i) == "amounts" and not _is_plate(draft, i)) for i in span)


def _is_plate(draft: Draft, at: int) -> bool:
    """In "fuse keeps popping on 40va, can i go to 5 amp": the size of the transformer says nothing of the fuse."""
    figure = draft.figure_at(at)
    return figure is not None and figure.unit == "VA"
