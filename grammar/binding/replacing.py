"""What the steps that take values back share."""

from grammar.binding.draft import Draft, Figure, settle


def amounts(draft: Draft, at: int | None = None) -> list[Figure]:
    """Figures that can be withdrawn, all or those within reach of a phrase."""
    return [
        f for f in (draft.figures if at is None else draft.around(at)) if f.kind in {"amount", "open", "nothing"} and not f.done
    ]


def alike(one: Figure, other: Figure) -> bool:
    """Both can be values of one thing."""
    return one.kind != "amount" or one.unit == other.unit or None in {one.unit, other.unit}


def only_last(figure: Figure) -> None:
    """In "from 14.1 to 41.1": the last value stands."""
    unit = next((a.unit for a in reversed(figure.amounts) if a.unit), None)
    last = figure.amounts[-1]
    figure.was = figure.amounts[0].value
    last.unit = last.unit or unit
    figure.amounts, figure.joins = (last,), ()
    figure.low = figure.high = None
    settle(figure)


def inherit(figure: Figure | None, earlier: Figure) -> None:
    """A value put in place of another takes its unit."""
    if figure is None or figure.kind != "amount":
        return
    figure.heir_of = earlier
    if figure.unit is not None:
        return
    if earlier.unit_from == "own":
        figure.unit, figure.unit_from = earlier.unit, "neighbour"
