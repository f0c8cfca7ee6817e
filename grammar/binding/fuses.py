"""Amps of a fuse."""

from core.readings import Fact
from grammar.binding.draft import Draft, Figure
from grammar.binding.told import neighbour, open_amounts


def fuses(draft: Draft) -> None:
    """Amps of a fuse: beside it, "fusible de 5", "a 3 amp breaker", "will a 3 fuse do"."""
    for figure in open_amounts(draft):
        if len(figure.amounts) == 1 and (
            _beside_a_fuse(draft, figure)
            or _of_a_fuse(draft, figure)
            or _of_a_breaker(draft, figure)
            or _asked_fuse(draft, figure)
        ):
            draft.fact(figure, Fact(fact="fuse_amps", value=figure.value, unit="A"))


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
    return figure.unit == "A" and figure.value <= 10 and behind.text in {"breaker", "cb"}


def _asked_fuse(draft: Draft, figure: Figure) -> bool:
    whole = figure.unit is None and 1 <= figure.value <= 30 and figure.value == int(figure.value)
    free = "fuse" in draft.asks and draft.told("fuse_amps") is None and neighbour(draft, figure.at, -1, {"supply"}, 1) is None
    return whole and free and _is_fuse(draft, figure.at + 1)


def _fuse_between(draft: Draft, one: int, other: int) -> bool:
    """No other place or device stands between fuse and amps."""
    span = range(min(one, other) + 1, max(one, other))
    return not any(i in draft.sites or draft.kind(i) == "amounts" for i in span)
