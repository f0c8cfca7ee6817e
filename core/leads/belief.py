"""All maps of the leads that the evidence allows, each with its probability."""

import math
from collections.abc import Callable, Iterable, Iterator, Sequence
from dataclasses import dataclass
from itertools import combinations, product
from typing import Final

import numpy as np

from core.leads.clues import log_clues
from core.leads.common_end import Size, size_after, size_before
from core.leads.evidence import Evidence, Pair, pair
from core.leads.meter import slip_density, spread
from core.leads.separate_windings import Group, Grouping, groupings
from core.leads.tap_sets import BUILDS, Build
from core.leads.wound import Wound, as_half, as_primary, as_secondary, as_twin

_WORSE_BY: Final = 17.0
_MOST: Final = 400
_NONE_FITS: Final = math.log(1e-4)
"""Weight of readings none of which can be trusted."""
_MOST_A_READING: Final = 1.3
"""Most that one reading can add to a weight: it was met within the last digits."""
_UNNAMED_VAR: Final = 0.04
_ODD: Final = 4.5
"""Standard deviations from which on a reading does not fit even the best map."""

MapKey = frozenset[tuple[str, frozenset[tuple[str, str]]]]


@dataclass(frozen=True, slots=True, kw_only=True)
class Hypothesis:
    """One way in which the unit may be wound and the readings may have come about."""

    windings: tuple[Wound, ...]
    strays: tuple[str, ...]
    slip: Pair | None
    weight: float
    """Probability."""

    key: MapKey
    """What makes two hypotheses the same map."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Belief:
    """What the evidence leaves."""

    hypotheses: tuple[Hypothesis, ...]
    """Likeliest first, their weights summing to one less `nothing_fits`."""
    nothing_fits: float
    """Probability that no map explains the readings."""

    maps: tuple[tuple[Hypothesis, float], ...] = ()
    """Each different map, its likeliest hypothesis and its probability, likeliest first."""

    def slip(self) -> tuple[Pair, float] | None:
        """The reading that is likeliest a slip, and how likely."""
        share: dict[Pair, float] = {}
        for h in self.hypotheses:
            if h.slip is not None:
                share[h.slip] = share.get(h.slip, 0.0) + h.weight
        return max(share.items(), key=lambda row: row[1], default=None)


def believe(evidence: Evidence) -> Belief:
    """
    Weigh every map.

    Args:
        evidence: What is known of the leads.

    Returns:
        Nothing to believe where no winding can be made of the leads.
    """
    rows = _Weighing(evidence).rows()
    if not rows:
        return Belief(hypotheses=(), nothing_fits=1.0)
    keys = [_key(windings) for windings, _, _ in rows]
    different = {key: windings for key, (windings, _, _) in zip(reversed(keys), reversed(rows), strict=True)}
    clues = dict(zip(different, log_clues(list(different.values()), evidence), strict=True))
    score = np.array([weight + clues[key] for (_, _, weight), key in zip(rows, keys, strict=True)])
    against = _nothing_fits(evidence)
    top = max(float(score.max()), against)
    share = np.exp(score - top)
    total = float(share.sum()) + math.exp(against - top)
    found = [
        Hypothesis(windings=windings, strays=grouping.strays, slip=_slip(windings, grouping), weight=float(p) / total, key=key)
        for (windings, grouping, _), key, p in zip(rows, keys, share, strict=True)
        if p > 1e-7
    ]
    found.sort(key=lambda h: -h.weight)
    return Belief(hypotheses=tuple(found), nothing_fits=math.exp(against - top) / total, maps=_by_map(found))


def _key(windings: Iterable[Wound]) -> MapKey:
    return frozenset((w.role, frozenset(w.leads)) for w in windings)


def _by_map(found: Sequence[Hypothesis]) -> tuple[tuple[Hypothesis, float], ...]:
    total: dict[MapKey, float] = {}
    first: dict[MapKey, Hypothesis] = {}
    for h in found:
        total[h.key] = total.get(h.key, 0.0) + h.weight
        first.setdefault(h.key, h)
    return tuple(sorted(((first[k], p) for k, p in total.items()), key=lambda row: -row[1]))


def _slip(windings: Iterable[Wound], grouping: Grouping) -> Pair | None:
    return grouping.slip or next((w.slip for w in windings if w.slip is not None), None)


def _nothing_fits(evidence: Evidence) -> float:
    if len(evidence.ohms) < 3:
        return -math.inf
    return _NONE_FITS + sum(math.log(slip_density(ohm)) for ohm in evidence.ohms.values())


_Row = tuple[tuple[Wound, ...], Grouping, float]


class _Weighing:
    """One pass over all groupings, which fits each winding once and gives up early on what can't catch up."""

    def __init__(self, evidence: Evidence) -> None:
        self.evidence = evidence
        self.best = -math.inf
        self.fitted: dict[tuple[object, ...], tuple[Wound, ...]] = {}
        self.before = size_before(evidence.rated_va)

    def rows(self) -> list[_Row]:
        """Windings, grouping and weight of each map, heaviest first."""
        rows: list[_Row] = []
        for grouping in groupings(self.evidence):
            for build in BUILDS:
                if build.primaries + build.secondaries == len(grouping.groups):
                    for primaries, secondaries in _sides(grouping.groups, build):
                        rows += self._wound(primaries, secondaries, math.log(build.share) + grouping.log_weight, grouping)
        rows.sort(key=lambda row: -row[2])
        return [row for row in rows[:_MOST] if row[2] > self.best - _WORSE_BY]

    def _wound(
        self, primaries: Sequence[Group], secondaries: Sequence[Group], base: float, grouping: Grouping
    ) -> Iterator[_Row]:
        low = [self._once(as_secondary, g, self.before) for g in secondaries]
        if not all(low):
            return
        most = base + sum(rows[0].log_weight for rows in low) + _MOST_A_READING * len(self.evidence.ohms)
        if most < self.best - _WORSE_BY:
            return
        size = self._size([rows[0] for rows in low])
        for combination in product(self._high(primaries, size), *([(w,) for w in rows] for rows in low)):
            windings = tuple(w for part in combination for w in part)
            if sum(w.slip is not None for w in windings) + (grouping.slip is not None) <= 1:
                weight = base + sum(w.log_weight for w in windings)
                self.best = max(self.best, weight)
                yield windings, grouping, weight

    def _high(self, groups: Sequence[Group], size: Size) -> list[tuple[Wound, ...]]:
        if not groups:
            return [()]
        if len(groups) == 1:
            return [(w,) for w in self._once(as_primary, groups[0], size)]
        first, second = groups
        return [(a, b) for a in self._once(as_half, first, size) for b in as_twin(second, self.evidence, a) if a.slip is None]

    def _once(self, made: Callable[[Group, Evidence, Size], tuple[Wound, ...]], group: Group, size: Size) -> tuple[Wound, ...]:
        key = (made.__name__, frozenset(group.leads), frozenset(group.fragments), size)
        if key not in self.fitted:
            self.fitted[key] = made(group, self.evidence, size)
        return self.fitted[key]

    def _size(self, secondaries: Sequence[Wound]) -> Size:
        volts, unnamed = self.evidence.secondary_v, self.evidence.secondary_ohm
        if not secondaries:
            return self.before if unnamed is None else size_after(self.before, unnamed, volts, _UNNAMED_VAR)
        first = secondaries[0]
        if first.open_at or first.slip is not None:
            return self.before
        return size_after(self.before, sum(first.sections_ohm), volts, first.spread[0][0] / len(first.sections_ohm))


def _sides(groups: Sequence[Group], build: Build) -> Iterator[tuple[tuple[Group, ...], tuple[Group, ...]]]:
    """Each way to call so many of the groups primary, the rest secondary."""
    for chosen in combinations(groups, build.primaries):
        yield chosen, tuple(g for g in groups if g not in chosen)


def expected(hypothesis: Hypothesis, a: str, b: str) -> float | None:
    """
    Ohms that a hypothesis expects between two leads.

    Args:
        hypothesis: One way in which the unit may be wound.
        a: One lead.
        b: The other.

    Returns:
        Ohms as the meter would show them, None for open. [ohm]
    """
    for w in hypothesis.windings:
        place = {lead: i for i, (lead, _) in enumerate(w.leads)}
        if a in place and b in place:
            low, high = sorted((place[a], place[b]))
            if any(low <= s < high for s in w.open_at):
                return None
            return sum(w.sections_ohm[low:high]) + w.test_leads_ohm
    return None


def worst_misfit(hypothesis: Hypothesis, evidence: Evidence) -> tuple[Pair, float] | None:
    """The finite reading farthest from what a hypothesis expects, with its distance in standard deviations, its slip left out."""
    rows = []
    for p, ohm in evidence.ohms.items():
        due = expected(hypothesis, *p)
        if p != hypothesis.slip and due is not None:
            rows.append((p, abs(ohm - due) / spread(ohm)))
    return max(rows, key=lambda row: row[1], default=None)


def fits(hypothesis: Hypothesis, evidence: Evidence) -> bool:
    """True where no reading but the slip is out of a hand meter's reach of what the hypothesis expects."""
    worst = worst_misfit(hypothesis, evidence)
    return worst is None or worst[1] < _ODD


def unread_pairs(evidence: Evidence) -> tuple[Pair, ...]:
    """Pairs of named leads that nobody has read yet."""
    leads = evidence.leads
    pairs = (pair(a, b) for i, a in enumerate(leads) for b in leads[i + 1 :])
    return tuple(
        p for p in pairs if p in evidence.contradicted or not (p in evidence.ohms or p in evidence.opens or p in evidence.leaks)
    )
