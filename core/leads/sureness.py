"""How sure a map is, however often people read wrong."""

import math
from collections.abc import Callable, Iterable, Mapping
from operator import attrgetter
from typing import Final

from core.leads.belief import Belief, Hypothesis, MapKey, fits, unread_pairs
from core.leads.clues import label_weight
from core.leads.evidence import Evidence, Pair, blocks
from core.leads.tap_sets import SLIP

SURE: Final = 0.9
"""Under it a test is asked for."""
UNCHECKED: Final = 0.89
"""Most where labels alone carry a map and pairs are left to read."""
_MISFIT_LEAVES: Final = 0.6
"""Of the confidence, where a reading fits not even the best map."""
_BY_SIZE_ALONE: Final = 0.95
"""Least for volts that rest on ohms alone, once these are read twice: makes differ. Common practice, no source."""
_AS_BAD: Final = 0.9
"""Share of what the most doubtful reading can lead astray from which on a lone one is worth reading again: else it would decide nothing."""
WRONG_AGAIN: Final = 0.12
"""Chance that who read one pair wrong read another wrong as well. Common practice, no source."""
ONE_WRONG: Final = 0.88
"""
Share of jobs with one wrong reading in which a map must still be nine to one right to be called sure.

Nobody knows how often a wrong reading comes, and a lone one of two leads is contradicted by nothing: what is left is how likely a wrong
value falls where another map expects it. At this share about one unit in a thousand, each with one reading wrong, is called by a wrong map
and sure: `tests.benchmarks.lead_bench` counts it.
"""


def confidence_of(belief: Belief, evidence: Evidence, what: Callable[[Hypothesis], object] = attrgetter("key")) -> float:
    """
    Probability that what the likeliest map says is right.

    Args:
        belief: What the evidence leaves.
        evidence: What is known.
        what: What is to be right of a hypothesis, its whole map if not told otherwise.

    Returns:
        From 0.9 on the least over all that is held possible of how often people read wrong, so a reading that nothing else bears out counts
        for what it is. Less where a reading fits no map, and under 0.9 where labels alone carry it: they may be another unit's.
    """
    best = belief.maps[0][0]
    same = {h.key: what(h) == what(best) for h, _ in belief.maps}
    probability = sum(p for h, p in belief.maps if same[h.key])
    if probability >= SURE:
        probability = _least(belief, evidence, same)
    if not fits(best, evidence):
        probability *= _MISFIT_LEAVES
    if best.slip is not None and not _borne_out(best, best.slip, evidence):
        probability *= 1.0 - WRONG_AGAIN
    if SURE <= probability < _BY_SIZE_ALONE and _is_by_size_alone(best, evidence):
        return UNCHECKED
    if probability >= SURE and evidence.ohms and _labels_carry(belief, evidence.labels, same) and _unread_along(best, evidence):
        return UNCHECKED
    return probability


def _is_by_size_alone(best: Hypothesis, evidence: Evidence) -> bool:
    """True where nothing tells the volts of a primary without taps but ohms that were read twice."""
    told = evidence.taps or evidence.labels or evidence.volts or evidence.supply_v or evidence.in_use
    lone = any(w.role == "primary" and len(w.leads) == 2 for w in best.windings)
    return lone and not told and bool(evidence.repeated)


def _least(belief: Belief, evidence: Evidence, same: Mapping[MapKey, bool]) -> float:
    """
    The least that the maps which say the same as the best can have of the whole.

    A reading may be wrong as seldom as usual or in most jobs, all pairs alike or one pair more than the others. A pair that was read twice
    is wrong no oftener than usual.
    """
    kept: dict[Pair | None, float] = {}
    others: dict[Pair | None, float] = {None: belief.nothing_fits}
    for h in belief.hypotheses:
        slip = None if h.slip in evidence.repeated else h.slip
        side = kept if same[h.key] else others
        side[slip] = side.get(slip, 0.0) + h.weight
    more = max(0.0, ONE_WRONG / (1.0 - ONE_WRONG) / (SLIP * max(1, len(evidence.ohms))) - 1.0)
    slips = (kept.keys() | others.keys()) - {None}
    shares = []
    for oftener in (set[Pair | None](), slips, *({p} for p in slips)):
        right, wrong = (sum(side.values()) + more * sum(side.get(p, 0.0) for p in oftener) for side in (kept, others))
        shares.append(right / (right + wrong))
    return min(shares)


def _borne_out(best: Hypothesis, slip: Pair, evidence: Evidence) -> bool:
    """True where the other readings of the winding with the wrong one still check each other: none of them alone ties it together."""
    leads = next((tuple(lead for lead, _ in w.leads) for w in best.windings if slip[0] in dict(w.leads)), slip)
    rest = [p for p in evidence.ohms if p != slip and {*p} <= {*leads}]
    return len(leads) == 2 or all(len(blocks(leads, (q for q in rest if q != p))) == 1 for p in rest)


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
    if _least(belief, evidence, same) >= SURE:
        return _unread_along(best, evidence) if evidence.ohms and _labels_carry(belief, evidence.labels, same) else ()
    found = [
        (sum(h.weight for h in belief.hypotheses if h.slip == p and not same[h.key]), p)
        for p in evidence.ohms.keys() - evidence.repeated - {best.slip}
    ]
    worst = max((others for others, _ in found), default=0.0)
    carried = sorted((row for row in found if row[0] > _AS_BAD * worst and not _stands_beside(row[1], evidence)), reverse=True)
    return tuple(_better(p, best, evidence) for _, p in carried)


def _stands_beside(leads: Pair, evidence: Evidence) -> bool:
    """True where other readings tie the two leads together as well: what these say of them agrees, or one would be taken for wrong."""
    return bool(_path(leads, [p for p in evidence.ohms if p != leads]))


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
