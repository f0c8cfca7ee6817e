"""How sure a map is: no single reading that nothing else bears out may carry it over the line."""

import math
from collections.abc import Callable, Iterable, Mapping
from operator import attrgetter
from typing import Final

from core.leads.belief import Belief, Hypothesis, MapKey, fits, unread_pairs
from core.leads.clues import label_weight
from core.leads.evidence import Evidence, Pair
from core.leads.tap_sets import SLIP

SURE: Final = 0.9
"""Under it a test is asked for."""
UNCHECKED: Final = 0.89
"""Most where the map stands or falls with one reading."""
_MISFIT_LEAVES: Final = 0.6
"""Of the confidence, where a reading fits not even the best map."""
_BY_SIZE_ALONE: Final = 0.97
"""Least for volts that rest on ohms alone. Common practice, no source."""
_LED_ASTRAY: Final = 0.02
"""Chance of a wrong map, were one reading a slip, from which on it is to be borne out first. Common practice, no source."""


def confidence_of(belief: Belief, evidence: Evidence) -> float:
    """
    Probability that the likeliest map is right, all of it.

    Args:
        belief: What the evidence leaves.
        evidence: What is known.

    Returns:
        Less than the belief's own where a reading fits no map, and under 0.9 where one reading, the labels or the size alone carry it:
        people mistype, labels are another unit's, and makes differ.
    """
    best, probability = belief.maps[0]
    if not fits(best, evidence):
        probability *= _MISFIT_LEAVES
    if probability >= SURE and (
        unchecked(belief, evidence) or (probability < _BY_SIZE_ALONE and _by_size_alone(best, evidence))
    ):
        return UNCHECKED
    return probability


def _by_size_alone(best: Hypothesis, evidence: Evidence) -> bool:
    """True where nothing tells the volts of a primary without taps but how many ohms it has: makes differ in that."""
    told = evidence.taps or evidence.labels or evidence.volts or evidence.supply_v or evidence.in_use
    return not told and any(w.role == "primary" and len(w.leads) == 2 for w in best.windings)


def unchecked(belief: Belief, evidence: Evidence, what: Callable[[Hypothesis], object] = attrgetter("key")) -> tuple[Pair, ...]:
    """
    What is to be read before a map is sure: readings that alone carry it, or pairs not read yet where only labels do.

    Args:
        belief: What the evidence leaves.
        evidence: What is known.
        what: What is to be sure of a hypothesis, its whole map if not told otherwise.

    Returns:
        The pair that matters most first.
    """
    best = belief.maps[0][0]
    same = {h.key: what(h) == what(best) for h, _ in belief.maps}
    found = []
    for p in evidence.ohms.keys() - evidence.repeated - {best.slip}:
        others = sum(h.weight for h in belief.hypotheses if h.slip == p and not same[h.key])
        kept = SLIP * sum(h.weight for h in belief.hypotheses if h.slip != p and same[h.key])
        # So often would this reading be a slip that fits another map, to its being one at all.
        if others > _LED_ASTRAY * kept:
            found.append((others / kept, p))
    carried = [_better(p, best, evidence) for _, p in sorted(found, reverse=True)]
    return tuple(
        carried or (_unread_along(best, evidence) if evidence.ohms and _labels_carry(belief, evidence.labels, same) else ())
    )


def _better(leads: Pair, best: Hypothesis, evidence: Evidence) -> Pair:
    """A pair not read yet that bears out a reading and as many others as it can, else the reading itself once more."""
    closed = {p: path for p in _unread_along(best, evidence) if leads in (path := _path(p, evidence.ohms))}
    return max(closed, key=lambda p: len(closed[p]), default=leads)


def _path(leads: Pair, ohms: Iterable[Pair]) -> tuple[Pair, ...]:
    """The readings that lead from one lead to another, fewest first."""
    ways: dict[str, tuple[Pair, ...]] = {leads[0]: ()}
    reached = [leads[0]]
    for at in reached:
        for p in ohms:
            other = p[1] if p[0] == at else p[0]
            if at in p and other not in ways:
                ways[other] = (*ways[at], p)
                reached.append(other)
    return ways.get(leads[1], ())


def _labels_carry(belief: Belief, labels: Mapping[str, str], same: Mapping[MapKey, bool]) -> bool:
    if not labels:
        return False
    bare = [(p * math.exp(-label_weight(h.windings, labels)), same[h.key]) for h, p in belief.maps]
    return sum(p for p, is_same in bare if is_same) < SURE * sum(p for p, _ in bare)


def _unread_along(best: Hypothesis, evidence: Evidence) -> tuple[Pair, ...]:
    """Pairs of one winding that nobody has read."""
    of = {lead: i for i, w in enumerate(best.windings) for lead, _ in w.leads}
    return tuple(p for p in unread_pairs(evidence) if of.get(p[0], -1) == of.get(p[1], -2))
