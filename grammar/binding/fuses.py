"""Amps of a fuse."""

from itertools import pairwise

from core.readings import Fact, Reading
from core.standards.device_loads import CONTROLS_V
from grammar.binding.draft import Draft, Figure
from grammar.binding.told import neighbour, open_amounts


def fuses(draft: Draft) -> None:
    """Amps of a fuse: beside it, "fusible de 5", "a 3 amp breaker", "will a 3 fuse do"."""
    for figure in open_amounts(draft):
        if figure.unit == "A" and _of_something_unknown(draft, figure):
            figure.done = True
            draft.unread.append((figure.start, draft.phrases[figure.at + 1].end))
            continue
        if figure.unit == "A" and figure.value > 10 and _of_the_panel(draft, figure) and not _on_the_low_side(draft):
            figure.done = True
            draft.chatter.append((figure.start, draft.phrases[figure.at + 1].end))
            continue
        if _either(draft, figure):
            continue
        if len(figure.amounts) == 1 and (
            _beside_a_fuse(draft, figure)
            or _of_a_fuse(draft, figure)
            or _of_a_breaker(draft, figure)
            or _put_in(draft, figure)
            or _blown(draft, figure)
            or _called_by_number(draft, figure)
            or _asked_fuse(draft, figure)
            or _asked_by_amps(draft, figure)
        ):
            draft.fact(figure, Fact(fact="fuse_amps", value=figure.value, unit="A"))
    _meant(draft)
    _nominal_side(draft)
    _open_volts(draft)
    _asked(draft)


def _of_something_unknown(draft: Draft, figure: Figure) -> bool:
    """In "popping the 5 amp fgse": the amps of a part whose name nobody knows."""
    told = draft.phrases[figure.at - 1].text.split(" ")[-1] if figure.at else ""
    return told in {"the", "a", "an", "el", "un", "la", "una"} and draft.kind(figure.at + 1) == "unknown"


SIZES_A = frozenset({1.0, 2.0, 3.0, 4.0, 5.0, 7.0, 7.5, 10.0, 15.0})
"""Blade and glass fuses of the trade. Common practice, no source. [A]"""


def _called_by_number(draft: Draft, figure: Figure) -> bool:
    """In "make that fuse a 3", "the fuse is a 5"."""
    bare = figure.unit is None and figure.value in SIZES_A and len(figure.amounts) == 1 and figure.at > 1
    led = bare and draft.phrases[figure.at - 1].text in {"a", "un", "una", "is a", "de a"}
    return led and any(_is_fuse(draft, i) for i in range(max(0, figure.at - 4), figure.at))


def _blown(draft: Draft, figure: Figure) -> bool:
    """In "blown 3 amp on the board": what is said of a fuse alone."""
    told = draft.phrases[figure.at - 1].text if figure.at else ""
    return figure.unit == "A" and figure.value <= 10 and told in {"blown", "popped", "blew", "burnt"}


def _either(draft: Draft, figure: Figure) -> bool:
    """In "40va, 3 or 5 amp fuse?": both, where there is a rating to judge them by."""
    if len(figure.amounts) != 2 or figure.unit != "A" or figure.joins[0] not in {"or", "o"}:
        return False
    if not any(f.unit == "VA" for f in draft.figures) and draft.told("rated_va") is None:
        return False
    if not _beside_a_fuse(draft, figure):
        return False
    for amount in figure.amounts:
        draft.fact(figure, Fact(fact="fuse_amps", value=amount.value, unit="A"))
    return True


def _nominal_side(draft: Draft) -> None:
    """In "20 amp fuse on the 24v ok?": the side that the fuse is in, and no reading across it."""
    if draft.told("fuse_amps") is None and "fuse" not in draft.asks:
        return
    for figure in open_amounts(draft):
        led = figure.at > 0 and draft.phrases[figure.at - 1].text in SIDE_OF
        if led and figure.unit == "V" and figure.value == CONTROLS_V and len(figure.amounts) == 1:
            figure.done = True
            draft.cue_spans.append((figure.start, figure.end))


SIDE_OF = frozenset({"the", "on the", "in the", "for the", "at the", "el", "en el", "en", "on"})


def _open_volts(draft: Draft) -> None:
    """In "fuse for 75va, open circuit 28.6": what the limit of the fuse is reckoned from, and no volts across the fuse."""
    if "fuse" not in draft.asks:
        return
    for figure in open_amounts(draft):
        near = range(max(0, figure.at - 3), min(len(draft.phrases), figure.at + 3))
        lifted = any(draft.kind(i) == "condition" and draft.phrases[i].meaning == "lifted" for i in near)
        if lifted and figure.unit in {None, "V"} and len(figure.amounts) == 1 and 6.0 < figure.value < 60.0:
            figure.done = True
            draft.readings.append(Reading(measure="secondary_volts_lifted", value=figure.value))


def _asked(draft: Draft) -> None:
    """In "keep 3a fuse or go 5a" and "fuse keeps blowing can i go to 5a": a question about the fuse."""
    if draft.asks or draft.warned.names or draft.told("fuse_amps") is None:
        return
    several = sum(fact.fact == "fuse_amps" for _, fact in draft.facts) > 1 and any(p.kind == "or" for p in draft.phrases)
    words = [phrase.text for phrase in draft.phrases]
    asks = any(pair in MAY for pair in pairwise(words)) or bool(MAY_ALONE & set(words))
    if several or asks:
        draft.asks.append("fuse")


MAY = frozenset({
    ("can", "i"), ("could", "i"), ("should", "i"), ("may", "i"), ("can", "we"), ("ok", "to"), ("is", "it"), ("se", "puede"), ("le", "puedo"),
})  # fmt: skip
MAY_ALONE = frozenset({"puedo", "can i", "could i", "should i", "conviene"})


def _asked_by_amps(draft: Draft, figure: Figure) -> bool:
    """In "is 3 amp ok on a 75va": whole amps that are asked about beside a rating, and no load or reading of their own."""
    if figure.unit != "A" or figure.value not in COMMON_FUSES_A or figure.amount is None or "." in figure.amount.text:
        return False
    behind = {draft.kind(figure.at + 1), draft.kind(figure.at + 2)}
    led = draft.kind(figure.at - 1) == "is" or draft.phrases[figure.at - 1].text in {"a", "would", "will", "un", "uno", "de"}
    side = draft.sites.get(figure.at + 2)
    if (
        "fuse" in draft.asks
        and draft.kind(figure.at + 1) == "at"
        and side is not None
        and side.name in {"primary", "line", "secondary"}
    ):
        return draft.kind(figure.at + 3) == "novalue"  # "what fuse for a 40va, 3 amp on the primary ok?"
    rated = any(f.unit == "VA" for f in draft.figures) or draft.told("rated_va") is not None
    other = any(draft.kind(i) in {"device", "notours", "reads", "inrush"} for i in range(len(draft.phrases)))
    placed = any(site.kind in {"place", "pair"} and site.name != "fuse" for site in draft.sites.values())
    return rated and led and not other and not placed and "novalue" in behind


COMMON_FUSES_A = frozenset({1.0, 2.0, 3.0, 4.0, 5.0, 6.0, 7.0, 10.0, 15.0, 20.0})


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
    small = figure.value <= 10 or _on_the_low_side(draft)
    return figure.unit == "A" and small and (led or behind.text in {"breaker", "cb"})


def _on_the_low_side(draft: Draft) -> bool:
    """In "15 amp breaker on 24v"."""
    low = [f for f in draft.figures if f.unit == "V" and f.value == CONTROLS_V and f.at]
    return any(draft.phrases[f.at - 1].text in SIDE_OF for f in low)


def _of_the_panel(draft: Draft, figure: Figure) -> bool:
    """In "a 40 amp breaker", "60 amp disconnect": the power side of the unit."""
    behind = draft.phrases[min(figure.at + 1, len(draft.phrases) - 1)]
    return behind.text in {"breaker", "cb", "disconnect", "disco", "panel", "service", "circuit", "main", "pastilla"}


PUTS = frozenset({
    "put", "putting", "install", "installing", "use", "using", "stick", "stuck", "throw", "threw", "go", "going", "want", "swap", "drop", "had", "has", "found", "with", "to", "run", "pon", "puse", "pusieron", "cambie", "poner", "ponerle", "ponle", "pongo", "puso", "uso", "usar", "meter", "meto", "metio", "traia",
    "le", "or",
})  # fmt: skip
"""Words before a fuse that is put in, where the fuse was named before."""


def _put_in(draft: Draft, figure: Figure) -> bool:
    """In "fuse blew, put in a 5 amp": amps of nothing else, in a message that speaks of a fuse."""
    called = (
        figure.unit is None and figure.value <= 10 and draft.phrases[max(0, figure.at - 1)].text in {"de", "uno de", "otro de"}
    )
    one = called and any(draft.phrases[i].text in {"uno", "otro", "un"} for i in range(max(0, figure.at - 3), figure.at))
    if not (figure.unit == "A" or one) or figure.value > 30 or not _speaks_of_fuse(draft):
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
    return not any(
        (i in draft.sites and draft.sites[i].name != "person") or (draft.kind(i) == "amounts" and not _is_plate(draft, i))
        for i in span
    )


def _is_plate(draft: Draft, at: int) -> bool:
    """In "fuse keeps popping on 40va, can i go to 5 amp": the size of the transformer says nothing of the fuse."""
    figure = draft.figure_at(at)
    return figure is not None and figure.unit == "VA"
