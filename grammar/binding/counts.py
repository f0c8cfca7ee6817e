"""Numbers that count things: devices of a kind, fuses, stops."""

from dataclasses import replace

from grammar.binding.draft import Draft, Figure
from grammar.binding.told import open_amounts

MOST_OF_A_KIND = 60
"""More of one device than these are rather its number."""


def whole(figure: Figure, most: int = MOST_OF_A_KIND) -> bool:
    """True for a small whole number without a unit: it can count things, or be a mark."""
    return (
        figure.kind == "amount"
        and figure.unit is None
        and len(figure.amounts) == 1
        and 0 < figure.value <= most
        and figure.value == int(figure.value)
    )


def _counted(draft: Draft, figure: Figure) -> bool:
    """A small whole number before an ordinary noun: "3 times", "two guys"."""
    behind = draft.phrases[min(figure.at + 1, len(draft.phrases) - 1)]
    if behind.kind == "ends" and draft.text[behind.start : behind.end].lower().split(" ")[-1] in COUNTED_ENDS:
        return figure.value <= 12
    english = behind.kind == "filler" and behind.language != "es" and behind.text.isalpha() and len(behind.text) > 1
    return english and figure.value <= 12 and behind.text not in FOLLOWS


def _behind_a_place(draft: Draft, figure: Figure) -> bool:
    """In "secondary's 22 flat": a value, whatever word stands behind it, where that is no thing."""
    before = figure.at - 1
    while draft.kind(before) in {"is", "reads", "colon"}:
        before -= 1
    site = draft.sites.get(before)
    placed = site is not None and site.kind in {"place", "pair"} and not site.used
    return placed and draft.kind(figure.at + 1) == "unknown" and figure.value >= LEAST_VALUE


LEAST_VALUE = 10.0
"""From here on a bare whole number behind a place is rather its value."""


POINTS_AT = frozenset({"those", "these", "them", "the", "all", "esos", "esas", "estos", "los", "las"})
MOST_LEADS = 8.0


def _of_leads(draft: Draft, figure: Figure) -> bool:
    """In "ill land those two and cap the orange", "2 sec red blu": how many leads there are."""
    if figure.value > MOST_LEADS:
        return False
    told = draft.phrases[figure.at - 1].text if figure.at else ""
    if told in POINTS_AT and figure.amount is not None and figure.amount.spoken:
        return True
    behind = [draft.phrases[i] for i in range(figure.at + 1, min(figure.at + 3, len(draft.phrases)))]
    colours = [p for p in behind if p.kind == "ends" and any(e.kind == "colour" for e in p.ends)]
    last = max((draft.phrases.index(p) for p in colours), default=-1)
    return (
        bool(colours) and len(colours[-1].ends) > 1 and draft.kind(last + 1) not in {"amounts", "value", "is", "reads", "colon"}
    )


def _of_a_size(draft: Draft, figure: Figure) -> bool:
    """In "two 50 VA transformers": how many of that size."""
    behind = draft.figure_at(figure.at + 1)
    return behind is not None and behind.unit == "VA" and draft.kind(figure.at + 2) == "transformer"


COUNTED_KINDS = frozenset({"device", "transformer", "unknown", "leadword"})
COUNTED_ENDS = frozenset({
    "fuses", "fusibles", "coils", "bobinas", "loads", "cargas", "wires", "leads", "terminals", "windings", "taps", "cables", "puntas", "devanados", "terminales", "alambres", "primaries", "secondaries", "primarios", "secundarios",
})  # fmt: skip
"""Last words of places that are counted: "3 primary wires"."""
FOLLOWS = frozenset(
    {
        "on", "at", "across", "in", "and", "to", "from", "between", "with", "when", "now", "here", "there", "but", "still", "while", "after", "before", "both", "only", "again", "though", "so", "then", "is", "i", "it", "which", "that", "this", "too", "also", "just", "steady", "solid", "even", "right", "back", "or", "my", "me", "we", "you", "not", "no", "off", "over", "under", "by", "for", "because", "once", "ok", "if",
    }
)  # fmt: skip
"""Ordinary words that may stand behind a reading; behind a small whole number any other is what was counted."""


def of_them(draft: Draft) -> None:
    """In "zone valve 8va, got 2 of them": how many of the load told last."""
    for figure in open_amounts(draft):
        behind = " ".join(p.text for p in draft.phrases[figure.at + 1 : figure.at + 3])
        before = [i for i, (at, fact) in enumerate(draft.facts) if fact.fact == "load" and at < figure.at]
        if (
            before
            and whole(figure)
            and behind in {"of them", "of em", "of those", "of these", "de ellos", "de ellas", "de esos", "de esas"}
        ):
            at, load = draft.facts[before[-1]]
            if load.count == 1:
                draft.facts[before[-1]] = (at, replace(load, count=int(figure.value)))
                figure.done = True


def counts(draft: Draft) -> None:
    """A number of things: "26 stops", "2 contactors": kept in the log."""
    for figure in open_amounts(draft):
        if (
            figure.unit is None
            and len(figure.amounts) == 1
            and (
                draft.kind(figure.at + 1) in COUNTED_KINDS
                or _counted(draft, figure)
                or _of_a_size(draft, figure)
                or _of_leads(draft, figure)
            )
            and whole(figure)
            and not _behind_a_place(draft, figure)
        ):
            figure.done = True
            draft.cue_spans.append((figure.start, figure.end))
