"""Gives each figure the place that it belongs to."""

from grammar.binding.carried import carry
from grammar.binding.draft import Draft, Figure, Site
from grammar.binding.shared_place import share_behind
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
    share_behind(draft, open_figures)
    carry(draft, open_figures)


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
    led_on = (
        figure.kind in {"nothing", "open"}
        and (right is not None and right.kind == "place")
        and draft.kind(figure.at + 1) == "at"
        and right_linked
    )
    if led_on and left is not None and (left.at < figure.at - 1 or draft.kind(left.at - 1) == "at"):
        return right  # "pulled the fuses, nothing on the sec"; "118 on the pri nothing on the sec"
    if right is not None and right.name == "fuse" and figure.state in {"lifted", "loaded"} and right.at > figure.at:
        right = None  # "27.3 unloaded, 24.1 loaded, fuse of 3 amps"
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
        to_a_place = draft.phrases[at].text == "al" and at + 1 in draft.sites  # "119 al primario", and not "19 al prender"
        if (draft.phrases[at].text in WHEN and not to_a_place) or (kind == "with" and _new_behind(draft, at)):
            return None, False
        if kind not in SMALL or kind == "with":
            linked = False
        if kind == "and":
            return None, False
    return None, False


def _new_behind(draft: Draft, at: int) -> bool:
    """In "25.3 with a new fuse in": what was put in meanwhile."""
    return any(p.text in {"new", "nuevo", "nueva", "another", "otro", "otra"} for p in draft.phrases[at + 1 : at + 4])


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
