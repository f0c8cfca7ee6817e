"""Values that doubt each other: swapped windings, two meters that disagree."""

from core.readings import Reading
from core.said import say
from grammar.binding.draft import Draft, Figure
from grammar.binding.plausible import fits_live
from grammar.binding.questions import piece_of
from grammar.message import Unclear


def swapped(draft: Draft, figures: list[Figure]) -> None:
    """A primary of 24 V beside a secondary of 120: the windings were likely swapped."""
    primary = next(
        (
            f
            for f in figures
            if f.site is not None and f.site.name == "primary" and f.kind == "amount" and f.unit in {None, "V"}
        ),
        None,
    )
    secondary = next(
        (
            f
            for f in figures
            if f.site is not None and f.site.name == "secondary" and f.kind == "amount" and f.unit in {None, "V"}
        ),
        None,
    )
    if primary is None or secondary is None or primary.done or secondary.done:
        return
    if fits_live("secondary", primary.value) and fits_live("primary", secondary.value):
        question = say(
            "Primary {low:g} and secondary {high:g}: swapped? Primary {high:g} V, secondary {low:g} V?",
            low=primary.value,
            high=secondary.value,
        )
        for figure, name, value in ((primary, "primary", secondary.value), (secondary, "secondary", primary.value)):
            reading = Reading(measure=f"{name}_volts", value=value)
            draft.unclear.append(
                Unclear(fragment=piece_of(draft, figure), choices=(reading.measure,), readings=(reading,), question=question)
            )
            figure.done = True


def swapped_ohms(figures: list[Figure]) -> None:
    """The primary of a step-down always reads more ohms than the secondary."""

    def ohms(name: str) -> Figure | None:
        return next(
            (
                f
                for f in figures
                if f.site is not None and f.site.name == name and f.kind == "amount" and f.unit == "ohm" and not f.done
            ),
            None,
        )

    primary, secondary = ohms("primary"), ohms("secondary")
    if primary is not None and secondary is not None and 0 < primary.value < secondary.value and secondary.value > 3:
        primary.doubt = secondary.doubt = "swapped"


def disagreeing(draft: Draft, figures: list[Figure]) -> None:
    """Two values for one place in one state, and neither taken back: two meters, or one of them is a slip."""
    for figure in figures:
        if figure.site is None or figure.site.used < 2:
            continue
        same = [
            f
            for f in draft.around(figure.at)
            if f is not figure and not f.withdrawn and f.site is figure.site and f.kind == "amount" and f.state == figure.state
        ]
        if figure.kind == "amount" and same and not figure.done and _unlike(same[0], figure):
            figure.doubt = "disagree"


def _unlike(one: Figure, other: Figure) -> bool:
    return one.unit == other.unit and one.kind == "amount" and abs(one.value - other.value) > 0.02 * abs(other.value)
