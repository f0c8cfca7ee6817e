"""What else the leads may be, what a ratio test would read then, and why the readings can't tell."""

from collections.abc import Iterable, Sequence
from typing import Final

from core.leads.belief import Hypothesis
from core.leads.evidence import Evidence
from core.leads.lead_test import LeadTest, ratio_expected
from core.leads.lead_words import map_line, order_line
from core.leads.wound import Wound
from core.said import Said, say

_SPOKEN_FROM: Final = 0.04
_MOST: Final = 3
_BOTH_HABITS: Final = frozenset({"white", "black"})

Maps = Sequence[tuple[Hypothesis, float]]


def doubt_lines(maps: Maps, evidence: Evidence, wanted: LeadTest | None) -> Iterable[Said]:
    """
    What to say of a map that is not sure.

    Args:
        maps: All maps with their probabilities, likeliest first.
        evidence: What is known.
        wanted: The test that is asked for.
    """
    best = maps[0][0]
    mirrored = len(maps) > 1 and maps[1][1] >= _SPOKEN_FROM and _is_mirror(best, maps[1][0])
    if wanted is not None and wanted.kind == "ratio" and wanted.leads != wanted.ends:
        yield from _predictions(maps, wanted)
    else:
        yield from (
            say("Or, {percent:.0f} %: {map}", percent=100.0 * p, map=map_line(_different(h, best)))
            for h, p in maps[1:_MOST]
            if p >= _SPOKEN_FROM
        )
        halves = _equal_halves(best)
        if mirrored and halves is not None:
            yield say("Two equal halves: for {volts:g} V land both ends, whichever is common", volts=halves.volts[2])
            yield say("For {volts:g} V only clearly lower ohms show the inner half", volts=halves.volts[1])
        elif mirrored:
            yield say("Ohms alone don't tell the two ends apart here")
    if mirrored and evidence.ohms and _BOTH_HABITS & {lead for w in best.windings for lead, _ in w.leads}:
        yield say("Colour is no proof: white and black are both in use for common")


def _predictions(maps: Maps, wanted: LeadTest) -> Iterable[Said]:
    """What the ratio test would read under each map, and which maps would read the same."""
    told: list[float] = []
    for h, p in maps[:_MOST]:
        due = ratio_expected(h, wanted.ends, wanted.leads) if wanted.ends and wanted.leads else None
        if due is None or p < _SPOKEN_FROM:
            continue
        is_same = any(abs(due[0] - volts) < 2.0 * due[1] for volts in told)
        said = _also if is_same else _means
        yield said(due[0], 100.0 * p, _in_short(h))
        told.append(due[0])


def _means(volts: float, percent: float, found: Said | str) -> Said:
    return say("{volts:.1f} V there: {map} ({percent:.0f} %)", volts=volts, map=found, percent=percent)


def _also(volts: float, percent: float, found: Said | str) -> Said:
    return say("{volts:.1f} V there too: {map} ({percent:.0f} %)", volts=volts, map=found, percent=percent)


def _different(hypothesis: Hypothesis, best: Hypothesis) -> Sequence[Wound]:
    """The windings that another map sees otherwise."""
    same = {(w.role, frozenset(w.leads)) for w in best.windings}
    return [w for w in hypothesis.windings if (w.role, frozenset(w.leads)) not in same] or hypothesis.windings


def _in_short(hypothesis: Hypothesis) -> Said | str:
    primaries = [w for w in hypothesis.windings if w.role == "primary"]
    return order_line(primaries[0]) if len(primaries) == 1 else map_line(primaries or hypothesis.windings)


def _is_mirror(best: Hypothesis, other: Hypothesis) -> bool:
    def ends(h: Hypothesis) -> set[tuple[str, ...]]:
        return {tuple(lead for lead, _ in w.leads) for w in h.windings if w.role == "primary" and len(w.leads) > 2}

    mine = ends(best)
    return bool(mine) and {order[::-1] for order in mine} == ends(other)


def _equal_halves(best: Hypothesis) -> Wound | None:
    """A primary whose tap lies in the middle: no ratio test tells its ends apart."""
    middle = (w for w in best.windings if len(w.leads) == 3 and w.role == "primary" and w.volts[2] == 2.0 * w.volts[1])
    return next(middle, None)
