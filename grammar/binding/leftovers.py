"""What became nothing: told as unread where it may matter, kept as chatter where it is of another trade."""

from grammar.binding.draft import Draft
from grammar.binding.plausible import fits_live, is_usual_supply

NOMINAL_CONTROL_V = 24.0
"""What the control circuit is called by. [V]"""
TOUCHING = frozenset({"amounts", "value"})
"""An unknown word beside one of these may say how the value was taken, so it is told."""


def _nothing_read(draft: Draft) -> None:
    """A place and nothing about it: told, so that the number comes."""
    if (
        draft.readings
        or draft.facts
        or draft.asks
        or draft.lacks
        or draft.unclear
        or draft.unread
        or draft.heard
        or draft.warned.names
    ):
        return
    if any(p.kind in {"condition", "capped", "lands"} for p in draft.phrases) and not draft.figures:
        return  # "primary unhooked and capped" tells what was done
    places = [at for at, site in draft.sites.items() if site.kind in {"place", "pair", "unclear"}]
    figures = [f for f in draft.figures if f.kind in {"open", "short"} and not f.done]
    if not any(f.done or f.withdrawn for f in draft.figures):
        draft.unread += [(draft.phrases[at].start, draft.phrases[at].end) for at in places]
        draft.unread += [(f.start, f.end) for f in figures]


def _no_numbers(draft: Draft) -> None:
    """In "pri nan V", "sec ?? ohms": a place and a unit with no number between them."""
    for at, phrase in enumerate(draft.phrases):
        named = phrase.kind == "alone" and phrase.meaning in {"volt", "ohm", "amp", "milliamp", "kiloohm", "megaohm"}
        if not named and phrase.text != "v":
            continue
        unread = (
            draft.kind(at - 1) == "unknown"
            or draft.phrases[at - 1].text.startswith("?")
            or draft.phrases[at - 1].text in {"xx", "x", "_"}
        )
        if at > 1 and unread and draft.kind(at - 2) in {"ends", "is", "reads"}:
            draft.unread.append((draft.phrases[at - 2].start, phrase.end))


def _is_out_of_the_line(draft: Draft, at: int) -> bool:
    """In "disconnect 241 in 0 out": the side behind a switch of the line."""
    line = any(s.name == "line" and draft.sentence[s.at] == draft.sentence[at] for s in draft.sites.values())
    figure = draft.figure_at(at)
    live = figure is not None and (fits_live("primary", figure.value) or fits_live("secondary", figure.value))
    return (line or live) and draft.kind(at + 1) == "inout"


def _in_another_trade(draft: Draft, at: int) -> bool:
    """In "cap 44.1 on a 45": the clause names nothing of ours."""
    near = [s for i, s in draft.sites.items() if abs(i - at) <= NEAR and draft.clause[i] == draft.clause[at]]
    return bool(near) and all(s.kind == "notours" for s in near)


NEAR = 6
"""Phrases over which a word of another trade reaches."""


def leftovers(draft: Draft) -> None:
    """Spans for figures and words that found no meaning."""
    for figure in draft.figures:
        if (
            figure.done
            or figure.withdrawn
            or figure.kind in {"good", "nothing"}
            or (figure.kind in {"open", "short"} and figure.site is None)
        ):
            continue
        if any(start <= figure.start < end for start, end in draft.cue_spans):
            continue
        if figure.unit is None and figure.value == NOMINAL_CONTROL_V and any(f.fact == "symptom" for _, f in draft.facts):
            continue  # "va y viene el 24"
        if "which_lead" in draft.asks and figure.unit is None and is_usual_supply(figure.value):
            continue  # "which one is the 208?": the number names the lead that is asked about
        if (
            figure.unit is None
            and figure.kind == "amount"
            and draft.kind(figure.at + 1) in {"filler", "unknown", "notours", "idword", "inout"}
            and figure.site is None
            and not _is_out_of_the_line(draft, figure.at)
        ):
            draft.chatter.append((figure.start, draft.phrases[figure.at + 1].end))
        elif figure.unit is None and figure.kind == "amount" and _in_another_trade(draft, figure.at):
            draft.chatter.append((figure.start, figure.end))
        elif figure.amount is not None and figure.amount.spoken and figure.unit is None and figure.value <= 12:
            continue
        else:
            draft.unread.append((figure.start, figure.end))
    _no_numbers(draft)
    _nothing_read(draft)
    _words(draft)


def _words(draft: Draft) -> None:
    """Words that nobody knows: unread where they touch a figure or nothing else was read, else kept with the log."""
    clause_known = {draft.clause[at] for at in draft.sites} | {draft.clause[f.at] for f in draft.figures}
    chatter = {draft.clause[s.at] for s in draft.sites.values() if s.kind == "notours"}
    for at, phrase in enumerate(draft.phrases):
        if phrase.kind == "shape":
            draft.chatter.append((phrase.start, phrase.end))
        elif phrase.kind == "unknown" and len(phrase.text) > 1:
            read = bool(draft.readings or draft.facts or draft.asks or draft.unclear)
            aside = read and not (draft.kind(at - 1) in TOUCHING or draft.kind(at + 1) in TOUCHING)
            target = (
                draft.chatter
                if aside or (draft.clause[at] in chatter and draft.clause[at] not in clause_known - chatter)
                else draft.unread
            )
            target.append((phrase.start, phrase.end))
