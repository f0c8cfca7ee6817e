"""Gives a figure without a place that of the figure before it, where words say that it is the same."""

from grammar.binding.draft import Draft, Figure
from grammar.binding.places import MEASURE_AT
from grammar.binding.plausible import fits_live


def carry(draft: Draft, figures: list[Figure]) -> None:
    """A figure with a condition or a correction and no place of its own is taken where the one before it was."""
    last: Figure | None = None
    for figure in figures:
        if figure.site is None and figure.heir_of is not None and figure.heir_of.withdrawn:
            figure.site = figure.heir_of.site  # "it was 208 not 240 on the primary"
        if last is not None and _says_it_exactly(draft, last, figure):
            figure.site, last.withdrawn = last.site, True
            if figure.unit is None:
                figure.unit, figure.unit_from = "V", "neighbour"
        if last is not None and _is_the_new_one(draft, last, figure):
            figure.site, last.withdrawn = last.site, True
        if last is not None and _speaks_of_it(draft, last, figure):
            figure.site = last.site
        if last is not None and _other_meter(draft, last, figure):
            figure.site, figure.doubt, last.doubt = last.site, "disagree", "disagree"
        if figure.site is None and last is not None and last.site is not None and _continues(draft, last, figure):
            figure.site = last.site
            figure.site.used += 1
            if figure.state is None and last.state is None and any(p.kind == "now" for p in draft.phrases[last.at : figure.at]):
                last.withdrawn = True  # "it had 26v, now it's 0"
            if figure.unit is None and figure.kind == "amount" and last.unit_from == "own":
                figure.unit, figure.unit_from = last.unit, "neighbour"
        if figure.site is not None and figure.site.kind in {"place", "pair", "unclear"}:
            last = figure
        elif figure.site is not None:
            last = None


def _says_it_exactly(draft: Draft, last: Figure, figure: Figure) -> bool:
    """In "dead short R to C, .2 ohms", "nada on the sec, zero v": the number for what a word said."""
    if figure.site is not None or figure.kind != "amount" or draft.sentence[last.at] != draft.sentence[figure.at]:
        return False
    if last.site is None or last.site.kind not in {"place", "pair"}:
        return False
    if last.kind == "short":
        return figure.unit == "ohm" and figure.value < MOST_OF_A_SHORT_OHM
    return last.kind == "nothing" and figure.value < 1 and figure.unit in {None, "V"}


RENEWED = frozenset({"fuse", "coil"})
"""Places of parts that are put in new."""
NEW = frozenset({"new", "nuevo", "nueva", "replacement"})


def _is_the_new_one(draft: Draft, last: Figure, figure: Figure) -> bool:
    """In "fuse was OL, new one reads 0.2 ohms": what is told of the new part takes the place of the old one's value."""
    if figure.kind != "amount" or last.site is None or last.site.name not in RENEWED or figure.unit not in {None, "ohm"}:
        return False
    if figure.site is not None and (figure.site is last.site or figure.site.name != last.site.name):
        return False
    return any(p.text in NEW for p in draft.phrases[last.at : figure.at])


def _speaks_of_it(draft: Draft, last: Figure, figure: Figure) -> bool:
    """In "secondary pulling 4.4 amps, voltage on it sags to 17.2": another measure of the place named before."""
    if figure.site is not None or figure.kind != "amount" or last.site is None or last.site.kind != "place":
        return False
    near = range(max(last.at, figure.at - 6), min(figure.at + 4, len(draft.phrases)))
    named = any(draft.phrases[i].text == "it" and draft.kind(i - 1) in {"at", "between"} for i in near)
    if figure.unit is None and any(draft.phrases[i].text in {"voltage", "volts", "voltaje"} for i in near):
        figure.unit, figure.unit_from = "V", "word"
    fits = figure.unit in MEASURE_AT.get(last.site.name, {}) if figure.unit else fits_live(last.site.name, figure.value)
    return named and fits and figure.unit != last.unit and draft.sentence[last.at] == draft.sentence[figure.at]


OTHER = frozenset({"other", "another", "second", "otro", "otra"})


def _other_meter(draft: Draft, last: Figure, figure: Figure) -> bool:
    """In "sec 25.5 one meter, 21.0 on the other": the same place once more."""
    free = figure.site is None and figure.kind == last.kind == "amount" and figure.unit in {None, last.unit}
    if (
        not free
        or last.site is None
        or last.site.kind not in {"place", "pair"}
        or draft.sentence[last.at] != draft.sentence[figure.at]
    ):
        return False
    return any(p.text in OTHER for p in draft.phrases[max(last.at, figure.at - 4) : figure.at + 5])


MOST_OF_A_SHORT_OHM = 2.0
"""Most that is still called a short. Common practice, no source. [ohm]"""


LEAST_STATED_V = 10.0
"""A bare number in a state is volts of the secondary from here on: "calling you in 10" tells the minutes. [V]"""


def _continues(draft: Draft, last: Figure, figure: Figure) -> bool:
    if figure.kind in {"good", "nothing", "short"} or last.site is None or last.site.kind not in {"place", "pair"}:
        return False
    between = draft.phrases[last.at + 1 : figure.at]
    if figure.unit not in {None, "V", "A", "ohm"}:
        return False
    if any(p.kind in {"withdraw", "now", "replace"} for p in between) or last.withdrawn:
        return True
    if (
        figure.kind == "amount"
        and last.unit is not None
        and figure.unit in {None, last.unit}
        and any(p.kind == "reads" for p in between)
        and draft.sentence[last.at] == draft.sentence[figure.at]
    ):
        return True
    if figure.state is not None or last.state is not None:
        near = draft.sentence[figure.at] - draft.sentence[last.at] <= 1 and (
            figure.unit == "V" or figure.value > LEAST_STATED_V
        )
        return near and figure.unit in {None, "V"} and last.site.name not in {"line", "primary"}  # those are not read unloaded
    followed = draft.kind(figure.at + 1) in {"", "stop", "line", "comma"}
    return figure.kind == "open" and draft.phrases[figure.at].text in {"ol", "o.l."} and followed and not between
