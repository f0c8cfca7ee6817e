"""Gives each figure the place that it belongs to."""

from grammar.binding.draft import Draft, Figure, Site
from grammar.binding.places import MEASURE_AT
from grammar.binding.plausible import fits_live
from grammar.words.devices import BOARDS

BARE_GROUPS = frozenset({"pressure", "temperature", "contact", "time", "part", "person"})
"""Groups of words of others that have no volts, amps or ohms."""


LEFT_ONLY = frozenset({"time", "contact", "part"})
"""Groups whose numbers stand behind them."""


SMALL = frozenset(
    {
        "filler",
        "is",
        "reads",
        "at",
        "alone",
        "heading",
        "colon",
        "winding",
        "between",
        "leadword",
        "condition",
        "now",
        "transformer",
        "star",
        "with",
        "withdraw",
        "to",
        "each",
        "idword",
        "was",
        "expected",
        "novalue",
        "replace",
        "not",
        "no",
        "and",
        "both",
        "all",
    }
)
"""Kinds that may stand between a place and its figure."""


def _boards(draft: Draft) -> None:
    """In "21 at the board R C": the board only says where R and C are."""
    control = {draft.clause[s.at] for s in draft.sites.values() if s.name == "control"}
    for at, site in list(draft.sites.items()):
        board = site.kind == "device" and site.name in BOARDS and draft.clause[at] in control
        if board or (site.kind == "notours" and site.name == "motor" and _only_where(draft, at)):
            del draft.sites[at]


def _only_where(draft: Draft, at: int) -> bool:
    """In "R C at the condenser 22.8": where the place is found."""
    step = at - 1
    if draft.kind(step) != "at":
        return False
    before = draft.sites.get(step - 1)
    return before is not None and before.kind == "place"


def _fits(site: Site, figure: Figure) -> bool:
    """A figure can belong there at all."""
    if figure.kind == "good" and site.kind in {"device", "notours"}:
        return False
    if site.kind == "notours":
        if figure.kind != "amount":
            return site.name in {"motor", "capacitor"} and figure.kind in {"open", "short"}
        if site.name in BARE_GROUPS:
            return figure.unit in {None, "other", "degC", "m?"}
        return figure.unit != "VA"
    return True


def bind(draft: Draft) -> None:
    """Gives each figure that is still open its place."""
    _boards(draft)
    open_figures = [f for f in draft.figures if not f.done]
    for figure in open_figures:
        if figure.site is None:
            figure.site = _nearest_value(draft, figure) if figure.kind == "good" else _nearest(draft, figure)
            if figure.site is not None and not figure.withdrawn and figure.kind != "good":
                figure.site.used += 1
    _share_behind(draft, open_figures)
    _carry(draft, open_figures)


def _nearest(draft: Draft, figure: Figure) -> Site | None:
    site = _nearest_of_all(draft, figure)
    if site is not None and site.name in {"primary", "secondary"} and site.at < figure.at:
        for at in range(site.at - 1, max(-1, site.at - 3), -1):  # "blue & yellow (secondary) 25.6v"
            pair = draft.sites.get(at)
            if pair is not None and pair.kind == "pair" and not pair.used and draft.sentence[at] == draft.sentence[figure.at]:
                return pair
    return site


def _nearest_of_all(draft: Draft, figure: Figure) -> Site | None:
    left, left_near = _left(draft, figure)
    right, right_linked = _right(draft, figure)
    led = right is not None and any(draft.kind(i) in {"at", "between"} for i in range(figure.at + 1, right.at))
    same_clause = left is not None and draft.clause[left.at] == draft.clause[figure.at]
    if left is not None and left.used and left.kind != "notours":
        left = None
    if left is not None and left_near and same_clause:
        # "sec 24 on R-C" keeps the first; "contactor has 24 on the coil" means the second, nearer one
        if left.name in LEFT_ONLY and right is not None and right.at == figure.at + 1 and right.kind != "notours":
            return right  # "today 243 L1-L2"
        if right is not None and led and right_linked and left.kind in {"device", "notours"} and right.kind != "notours":
            return right
        return left
    if right is not None and (right_linked or left is None or (not same_clause and not left_near) or left.kind == "notours"):
        return right
    return left or right


TESTED = frozenset(
    {
        "it",
        "its",
        "all",
        "still",
        "very",
        "ya",
        "todo",
        "tambien",
        "si",
        "me",
        "was",
        "just",
        "both",
        "muy",
        "y",
        "tests",
        "checked",
        "tested",
        "checks",
        "test",
        "ohms",
        "winding",
        "too",
        "looks",
        "salio",
    }
)


def _nearest_value(draft: Draft, figure: Figure) -> Site | None:
    """The place that a word without a value speaks of: it must touch it."""
    for at in range(figure.at - 1, -1, -1):
        if at in draft.sites:
            return draft.sites[at] if draft.sites[at].kind in {"place", "pair", "unclear"} else None
        if (
            draft.kind(at) not in {"is", "reads", "comma", "winding", "transformer", "alone", "novalue", "heading"}
            and draft.phrases[at].text not in TESTED
        ):
            break
    linked = False
    for at in range(figure.at + 1, len(draft.phrases)):
        if at in draft.sites:
            return draft.sites[at] if linked and draft.sites[at].kind in {"place", "pair"} else None
        if draft.kind(at) in {"at", "between"} or draft.phrases[at].text in {"across", "through", "entre"}:
            linked = True
        elif draft.phrases[at].text not in {"the", "my", "el", "la", "both", "this"}:
            break
    return None


def _left(draft: Draft, figure: Figure) -> tuple[Site | None, bool]:
    """The nearest place before the figure, and whether only small words stand between."""
    near = True
    for at in range(figure.at - 1, max(-1, figure.at - 14), -1):
        kind = draft.kind(at)
        if kind in {"stop", "line"} and not (kind == "stop" and draft.phrases[at].text.startswith("?")):
            return None, False
        if kind in {"amounts", "value"}:
            if not _skippable(draft, at):
                return None, False
            continue
        site = draft.sites.get(at)
        if site is not None and _fits(site, figure):
            if site.used and site.kind != "notours":
                return None, False
            return site, near
        if kind not in SMALL:
            near = near and kind in {"ends", "novalue", "comma"}
    return None, False


def _skippable(draft: Draft, at: int) -> bool:
    figure = draft.figure_at(at)
    return figure is None or figure.withdrawn or figure.done


def _right(draft: Draft, figure: Figure) -> tuple[Site | None, bool]:
    """The nearest place behind the figure in its clause, and whether a small word leads to it."""
    linked = True
    for at in range(figure.at + 1, min(len(draft.phrases), figure.at + 12)):
        kind = draft.kind(at)
        if draft.clause[at] != draft.clause[figure.at]:
            return None, False
        if kind in {"amounts", "value"}:
            if (passed := draft.figure_at(at)) is None or not passed.done:
                return None, False
            continue  # "25.2v across the 3 amp fuse"
        site = draft.sites.get(at)
        if site is not None and _fits(site, figure) and not (site.kind == "notours" and site.name in LEFT_ONLY):
            if _has_its_own(draft, at, figure):
                return None, False
            return site, linked
        if draft.phrases[at].text in WHEN:
            return None, False
        if kind not in SMALL or kind == "with":
            linked = False
        if kind == "and":
            return None, False
    return None, False


WHEN = frozenset(
    {
        "when",
        "cuando",
        "while",
        "if",
        "si",
        "once",
        "soon",
        "after",
        "until",
        "whenever",
        "every time",
        "as",
        "al",
        "despues",
        "mientras",
        "till",
        "cause",
        "because",
        "porque",
    }
)
"""Words behind which a place tells when, and not where."""


def _has_its_own(draft: Draft, at: int, figure: Figure) -> bool:
    """True where the place at `at` stands before a figure of its own: "118 pri sec 0" no, "24 is low sec 20" yes."""
    following = at + 1
    while draft.kind(following) in {"is", "reads", "colon", "alone", "winding"}:
        following += 1
    if draft.kind(following) not in {"amounts", "value"} or draft.clause[following] != draft.clause[at]:
        return False
    before = at - 1
    return not (
        before == figure.at
        or draft.kind(before) in {"at", "between"}
        or draft.phrases[before].text in {"at", "on", "across", "the", "in"}
    )


def _share_behind(draft: Draft, figures: list[Figure]) -> None:
    """In "26.4v unloaded and 19.8v loaded, at the secondary": a place behind several figures is that of all of them."""
    known = {id(f) for f in figures}
    for at, site in draft.sites.items():
        if site.kind not in {"place", "pair"} or site.used > 1 or (site.used and not _only_before(draft, site)):
            continue
        if not _led_behind(draft, at):
            continue
        waiting: list[Figure] = []
        before = [f for f in draft.around(at) if f.at < at and id(f) in known]
        stated = bool(before) and before[-1].site is site and before[-1].state is None
        for figure in reversed(before):
            if stated and figure.state is not None and site.name not in {"secondary"}:
                break  # "27.1 unloaded, 25.2 loaded, 24.8 R-C"
            if figure.site is site and site.used and not waiting:
                continue
            if site.used and figure.state is None and not _only_before(draft, site, stated=True):
                break
            if figure.site is not None or draft.sentence[figure.at] != draft.sentence[at] or figure.kind == "good":
                break
            waiting.append(figure)
        for figure in waiting:
            figure.site = site
            site.used += 1


def _led_behind(draft: Draft, at: int) -> bool:
    """Only small words stand between the place and the figure or the pause before it."""
    step = at - 1
    while draft.kind(step) in LEADS_BACK or (draft.kind(step) in {"filler", "to"} and draft.phrases[step].text in THE):
        step -= 1
    return draft.kind(step) in {"amounts", "value", "condition", "comma", "sign"}


LEADS_BACK = frozenset({"at", "between", "all", "both", "is", "tapword", "lands"})
THE = frozenset({"the", "my", "that", "this", "el", "la", "all", "those", "al", "eso", "todo", "measured", "taken"})
"""Words between figures and the place that stands behind them."""


def _only_before(draft: Draft, site: Site, *, stated: bool = False) -> bool:
    """The place serves one figure, which stands before it and has a state: "27 sin carga y 23 con carga en el secundario"."""
    mine = [f for f in draft.around(site.at) if f.site is site]
    return len(mine) == 1 and mine[0].at < site.at and (mine[0].state is not None or not stated)


def _carry(draft: Draft, figures: list[Figure]) -> None:
    """A figure with a condition or a correction and no place of its own is taken where the one before it was."""
    last: Figure | None = None
    for figure in figures:
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
        return figure.unit in {None, "V"} and last.site.name not in {"line", "primary"}  # those are not read unloaded
    followed = draft.kind(figure.at + 1) in {"", "stop", "line", "comma"}
    return figure.kind == "open" and draft.phrases[figure.at].text in {"ol", "o.l."} and followed and not between
