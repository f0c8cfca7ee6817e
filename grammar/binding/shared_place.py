"""A place behind several figures: "26.4v unloaded and 19.8v loaded, at the secondary"."""

from grammar.binding.draft import Draft, Figure, Site


def share_behind(draft: Draft, figures: list[Figure]) -> None:
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
    if draft.kind(step) == "comma" and step == at - 1 and draft.sites[at].name in PARTS:
        return False  # "27.3 unloaded, 24.1 loaded, fuse of 3 amps"
    return draft.kind(step) in {"amounts", "value", "condition", "comma", "sign"}


PARTS = frozenset({"fuse", "coil", "load", "ground"})
"""Places that are named by themselves as well."""
LEADS_BACK = frozenset({"at", "between", "all", "both", "is", "tapword", "lands"})
THE = frozenset({"the", "my", "that", "this", "el", "la", "all", "those", "al", "eso", "todo", "measured", "taken"})
"""Words between figures and the place that stands behind them."""


def _only_before(draft: Draft, site: Site, *, stated: bool = False) -> bool:
    """The place serves one figure, which stands before it and has a state: "27 sin carga y 23 con carga en el secundario"."""
    mine = [f for f in draft.around(site.at) if f.site is site]
    return len(mine) == 1 and mine[0].at < site.at and (mine[0].state is not None or not stated)
