"""One lead against several: "white to: black 6, red 11", "wht to blk 6.1, red 10.9", "desde el blanco: negro 6, rojo 11"."""

from grammar.binding.draft import Draft, Figure, Site
from grammar.binding.places import lead_name, site_of
from grammar.binding.told import NOMINAL_V
from grammar.phrase import End, Phrase

LEADS_TO = frozenset({"filler", "colon", "is", "leadword", "reads", "sign"})
"""Kinds that may stand between a lead and its value."""
FROM = frozenset({"from", "desde", "de", "between", "entre"})


def lead_lists(draft: Draft) -> None:
    """Makes pairs of the leads of such a list."""
    anchor: End | None = None
    sentence = -1
    for at, phrase in enumerate(draft.phrases):
        if (phrase.kind == "colon" and phrase.text != ";") or phrase.kind != "ends":
            continue
        if draft.sentence[at] - sentence > 1:  # a colon ends what the draft takes for a sentence, a line goes on
            anchor = None
        lead = _single(draft, at)
        if lead is None:
            anchor = phrase.ends[0] if _is_pair(draft, at) else None
            sentence = draft.sentence[at]
        elif _heads(draft, at):
            anchor, sentence = phrase.ends[0], draft.sentence[at]
        elif anchor is not None and lead != lead_name(anchor, draft) and _valued(draft, at) is not None:
            site = site_of(
                draft, at, Phrase("ends", "", phrase.start, phrase.end, ends=(anchor, phrase.ends[0]), joins=("to",))
            )
            if site is not None:
                draft.sites[at] = site
            sentence = draft.sentence[at]


def labelled_pairs(draft: Draft) -> None:
    """In "com-120 20 ohms, com-208 53 ohms": leads by what their label says of them."""
    for at, phrase in enumerate(draft.phrases):
        if phrase.kind != "common":
            continue
        step = at + 1
        while draft.kind(step) in {"to", "sign"}:
            step += 1
        label = draft.figure_at(step)
        if label is None or label.kind != "amount" or label.unit is not None or abs(label.value) not in NOMINAL_V:
            continue
        behind = step + 1
        while draft.kind(behind) in LEADS_TO | {"tapword"}:
            behind += 1
        value = draft.figure_at(behind)
        if value is None or not (value.kind == "open" or (value.unit in {None, "ohm"} and value.value not in NOMINAL_V)):
            continue
        label.done = True
        draft.sites[at] = Site(at, "pair", "leads", ("com", f"{abs(label.value):g}"))


def tap_lists(draft: Draft) -> None:
    """In "120 tap 9.9 ohms, 208 tap 17.4", "between taps 208 and 240 2.7 ohms": ohms of taps, each to common or to each other."""
    found: list[tuple[Figure, int]] = []
    for at, phrase in enumerate(draft.phrases):
        label, value = draft.figure_at(at - 1), draft.figure_at(at + 1)
        if phrase.kind != "tapword" or label is None or label.unit not in {None, "V"} or label.value not in NOMINAL_V:
            continue
        if value is not None and (value.kind == "open" or (value.unit in {None, "ohm"} and 0 < value.value < LEAST_NOMINAL_V)):
            found.append((label, at))
    if len(found) > 1:
        for label, at in found:
            label.done = True
            draft.sites[at] = Site(at, "pair", "leads", ("com", f"{label.value:g}"))
    for at, phrase in enumerate(draft.phrases):
        if phrase.kind == "tapword" and draft.kind(at - 1) == "between":
            _between_taps(draft, at)


LEAST_NOMINAL_V = 100.0
"""Ohms behind a tap stay under this, and volts do not."""


def _between_taps(draft: Draft, at: int) -> None:
    both, value = draft.figure_at(at + 1), draft.figure_at(at + 2)
    if both is None or value is None or len(both.amounts) != 2 or value.unit not in {None, "ohm"}:
        return
    one, two = (amount.value for amount in both.amounts)
    if one in NOMINAL_V and two in NOMINAL_V:
        both.done = True
        draft.sites[at] = Site(at, "pair", "leads", (f"{one:g}", f"{two:g}"))
        value.site = draft.sites[at]
        value.site.used += 1


def _single(draft: Draft, at: int) -> str | None:
    """The lead of a phrase that names one."""
    ends = draft.phrases[at].ends
    return lead_name(ends[0], draft) if len(ends) == 1 and ends[0].kind in {"colour", "mark"} else None


def _is_pair(draft: Draft, at: int) -> bool:
    """The phrase is a pair that is clear, so that its first lead can be what the next is read against."""
    site = draft.sites.get(at)
    return site is not None and site.kind == "pair" and not site.choices


def _heads(draft: Draft, at: int) -> bool:
    """In "white to:" and "from white:" and "white to black": the lead before "to", or behind "from", with no value of its own."""
    behind = at + 1
    while draft.kind(behind) in {"leadword", "filler"}:
        behind += 1
    if draft.kind(behind) == "to" or draft.phrases[min(behind, len(draft.phrases) - 1)].text in {"a", "con"}:
        return True
    led = any(draft.phrases[i].text in FROM for i in range(max(0, at - 2), at))
    return led and draft.kind(behind) == "colon"


def _valued(draft: Draft, at: int) -> Figure | None:
    """The value right behind a lead, where it is one of a list and no volts of a label."""
    step = at + 1
    while draft.kind(step) in LEADS_TO:
        step += 1
    figure = draft.figure_at(step)
    if figure is None or figure.done or figure.kind not in {"amount", "open"} or len(figure.amounts) > 1:
        return None
    bare_nominal = figure.kind == "amount" and figure.unit in {None, "V"} and figure.value in NOMINAL_V
    return None if bare_nominal or figure.unit not in {None, "ohm", "V"} else figure
