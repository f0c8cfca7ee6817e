"""The proof of a new unit, told in one go: "installed 75va on 208: line 207, unloaded 27.1, loaded 25.4, stat 25.0, 2.4 amps"."""

from grammar.binding.draft import Draft, Figure, Site
from grammar.binding.measures import MOST_SECONDARY_A
from grammar.binding.plausible import fits_live
from grammar.binding.record_words import says_it_is_in
from grammar.words.record import IS_IN, NEW, REPAIRED

STATES = frozenset({"lifted", "loaded"})


def proof_told(draft: Draft) -> None:
    """A unit that is new, read without load and with it: its readings are its proof."""
    if draft.asks or "?" in draft.text or _states(draft) != STATES:
        return
    words = draft.words
    rows = zip(words, words[1:], words[2:], words[3:], strict=False)
    by_size = any(one in NEW and size.isdecimal() and unit == "va" and last in IS_IN for one, size, unit, last in rows)
    if (words and words[0] in REPAIRED) or by_size or says_it_is_in(draft):
        draft.asks.append("prove")


def in_a_proof(draft: Draft) -> None:
    """In "sec 27, 24.9 loaded, 1.2 amps": the higher is the unloaded one, and the amps are the secondary's."""
    asked = draft.context.asked is not None and draft.context.asked[0] == "secondary_volts_lifted"
    if asked and _states(draft) == {"loaded"}:
        _higher_is_lifted(draft)  # "sec 27, 24.9 loaded" to the question for the unloaded one
    if "prove" not in draft.asks and _states(draft) != STATES:
        return
    _amps_of_the_secondary(draft)
    _volts_at_the_stat(draft)
    if "prove" in draft.asks:
        _higher_is_lifted(draft)


def _states(draft: Draft) -> frozenset[str]:
    return frozenset(p.meaning for p in draft.phrases if p.kind == "condition" and p.meaning in STATES)


def _amps_of_the_secondary(draft: Draft) -> None:
    free = [f for f in draft.figures if f.kind == "amount" and f.unit == "A" and not f.done and not f.withdrawn]
    if len(free) != 1 or free[0].site is not None or not 0.0 < free[0].value <= MOST_SECONDARY_A:
        return
    clause = draft.clause[free[0].at]
    if not any(site.kind in {"device", "notours"} and draft.clause[at] == clause for at, site in draft.sites.items()):
        free[0].site, free[0].unit_from = Site(free[0].at, "place", "secondary"), "word"


def _volts_at_the_stat(draft: Draft) -> None:
    """In "stat 25.0": beside the volts of the secondary no temperature of a room."""
    for figure in draft.figures:
        at_stat = figure.site is not None and figure.site.kind == "device" and figure.site.name == "thermostat"
        if at_stat and figure.kind == "amount" and figure.unit is None and fits_live("control", figure.value):
            figure.unit, figure.unit_from = "V", "neighbour"


def _higher_is_lifted(draft: Draft) -> None:
    volts = [f for f in draft.figures if _is_secondary(f)]
    loaded = [f for f in volts if f.state == "loaded"]
    open_ones = [f for f in volts if f.state is None]
    if len(loaded) == 1 and len(open_ones) == 1 and open_ones[0].value > loaded[0].value:
        open_ones[0].state = "lifted"


def _is_secondary(figure: Figure) -> bool:
    placed = figure.site is not None and figure.site.name == "secondary"
    return figure.kind == "amount" and figure.unit in {None, "V"} and placed and not figure.done
