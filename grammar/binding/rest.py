"""In "Everything else OL": every pair of the named leads that was not given is open."""

from itertools import combinations

from core.readings import OPEN, Reading
from grammar.binding.draft import Draft
from grammar.binding.places import lead_name

MOST_LEADS = 12


def rest_open(draft: Draft) -> None:
    """Lists the pairs of the rest, where the message says that it is open."""
    at = next((i for i, p in enumerate(draft.phrases) if p.kind == "everything"), None)
    if at is None:
        return
    figure = next((f for f in draft.figures if f.kind == "open" and f.at > at and f.at - at <= 4), None) or next(
        (f for f in draft.figures if f.kind == "open" and f.at < at and at - f.at <= 4 and f.site is None), None
    )
    if figure is None:
        return
    named: list[str] = []
    given: set[frozenset[str]] = set()
    for phrase in draft.phrases:
        names = [lead_name(end, draft) for end in phrase.ends] if phrase.kind == "ends" else []
        named += [n for n in names if n is not None and n not in named]
    for site in draft.sites.values():
        if site.leads is not None and site.used:
            given.add(frozenset(site.leads))
    given |= {frozenset(reading.leads) for doubt in draft.unclear for reading in doubt.readings if reading.leads is not None}
    if not named:  # said behind the pairs of earlier messages
        before = [r.leads for r in draft.context.readings if r.leads is not None and r.measure.startswith("lead_")]
        given |= {frozenset(pair) for pair in before}
        named = list(dict.fromkeys(lead for pair in before for lead in pair))
    figure.done = True
    only = None
    for step in (at - 1, at - 2):
        if draft.kind(step) == "ends" and len(draft.phrases[step].ends) == 1 and draft.clause[step] == draft.clause[at]:
            only = lead_name(draft.phrases[step].ends[0], draft)
    pairs = [
        (a, b)
        for a, b in combinations(named[:MOST_LEADS], 2)
        if frozenset((a, b)) not in given and (only is None or only in (a, b))
    ]
    draft.readings += [Reading(measure="lead_ohms", value=OPEN, leads=pair) for pair in pairs]
