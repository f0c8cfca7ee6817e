"""What the steps that read facts share: which amounts are still nothing, and what stands beside them."""

from grammar.binding.draft import Draft, Figure

NOMINAL_V = frozenset(
    {
        100.0,
        110.0,
        115.0,
        120.0,
        200.0,
        208.0,
        220.0,
        230.0,
        240.0,
        265.0,
        277.0,
        347.0,
        380.0,
        400.0,
        415.0,
        440.0,
        460.0,
        480.0,
        575.0,
        600.0,
    }
)
"""Volts that are a nominal supply. Common practice, no source."""


SMALL = frozenset(
    {
        "filler",
        "is",
        "at",
        "between",
        "colon",
        "to",
        "lands",
        "each",
        "winding",
        "with",
        "run",
        "cableword",
        "leadword",
        "no",
        "now",
        "was",
        "replace",
    }
)


MEASURING = frozenset({"reads", "heading"})


def volts(figure: Figure) -> bool:
    """A figure that can be volts: bare or with the unit."""
    return figure.kind == "amount" and figure.unit in {None, "V"} and len(figure.amounts) == 1


def open_amounts(draft: Draft) -> list[Figure]:
    """Amounts that are nothing yet."""
    return [f for f in draft.figures if f.kind == "amount" and not f.done and not f.withdrawn and not f.garbled]


def neighbour(draft: Draft, at: int, step: int, kinds: frozenset[str] | set[str], most: int = 3) -> int | None:
    """The nearest phrase of some kinds on one side, only small words between, in the same clause."""
    seen = 0
    here = at + step
    while 0 <= here < len(draft.phrases) and seen <= most and draft.clause[here] == draft.clause[at]:
        if draft.kind(here) in kinds:
            return here
        if draft.kind(here) not in SMALL:
            return None
        seen += 1
        here += step
    return None


def measured_between(draft: Draft, one: int, other: int) -> bool:
    """A word of measuring stands between two phrases."""
    return any(draft.kind(i) in MEASURING for i in range(min(one, other), max(one, other)))
