"""All maps of the leads that the evidence allows, each with its probability."""

import math
from collections.abc import Callable, Iterable, Iterator, Sequence
from dataclasses import dataclass, field
from functools import lru_cache
from itertools import combinations, product
from typing import Final

import numpy as np

from core.leads.clues import log_clues, log_swing
from core.leads.common_end import Size, size_after, size_before
from core.leads.evidence import Evidence, Pair, pair
from core.leads.meter import slip_density, spread
from core.leads.order_along_winding import Line, lay, readings_along
from core.leads.separate_windings import Group, Grouping, groupings
from core.leads.tap_sets import BUILDS, Build
from core.leads.wound import Wound, as_half, as_primary, as_secondary, as_twin

_WORSE_BY: Final = 9.0
"""Natural logarithm of the odds, beyond what clues can still turn, from which on a map is given up."""
_MOST: Final = 400
_NONE_FITS: Final = math.log(1e-4)
"""Weight of readings none of which can be trusted."""
_ROOT: Final = math.sqrt(2.0 * math.pi)
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
    rows = _rows(_Asked(_what_counts(evidence), evidence))
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
_Made = Callable[[Group, Line, Evidence, Size], tuple[Wound, ...]]


@dataclass(frozen=True, slots=True)
class _Asked:
    """What was weighed, told apart by what counts for it."""

    key: tuple[object, ...]
    evidence: Evidence = field(compare=False)


def _what_counts(evidence: Evidence) -> tuple[object, ...]:
    """All of the evidence but the clues that are weighed afterwards."""
    e = evidence
    mappings = (e.ohms, e.leaks, e.labels, e.sides)
    others = (e.leads, e.opens, e.contradicted, e.taps, e.rated_va, e.secondary_v, e.secondary_ohm)
    return (*(tuple(m.items()) for m in mappings), *others, log_swing(e))


@lru_cache(maxsize=16)
def _rows(asked: _Asked) -> "tuple[_Row, ...]":
    """A tap asked for after a map finds the windings fitted."""
    return tuple(_Weighing(asked.evidence).rows())


class _Weighing:
    """One pass over all groupings, which fits each winding once and gives up early on what can't catch up."""

    def __init__(self, evidence: Evidence) -> None:
        self.evidence = evidence
        self.best = -math.inf
        self.lines: dict[tuple[Group, bool], Line] = {}
        self.fitted: dict[tuple[object, ...], tuple[Wound, ...]] = {}
        self.before = size_before(evidence.rated_va)
        self.worse_by = _WORSE_BY + log_swing(evidence)

    def rows(self) -> list[_Row]:
        """Windings, grouping and weight of each map, heaviest first."""
        rows: list[_Row] = []
        for grouping in groupings(self.evidence):
            for build in BUILDS:
                if build.primaries + build.secondaries == len(grouping.groups):
                    for primaries, secondaries in self._sides(grouping.groups, build):
                        rows += self._wound(primaries, secondaries, math.log(build.share) + grouping.log_weight, grouping)
        rows.sort(key=lambda row: -row[2])
        return [row for row in rows[:_MOST] if row[2] > self.best - self.worse_by]

    def _sides(self, groups: Sequence[Group], build: Build) -> list[tuple[tuple[Group, ...], tuple[Group, ...]]]:
        """Each way to call so many of the groups primary and the rest secondary; those of most ohms as primary first."""
        ways = [(chosen, tuple(g for g in groups if g not in chosen)) for chosen in combinations(groups, build.primaries)]
        return sorted(ways, key=lambda way: -self._most_ohm(way[0]))

    def _most_ohm(self, groups: Iterable[Group]) -> float:
        return max((ohm for p, ohm in self.evidence.ohms.items() if any({*p} <= {*g.leads} for g in groups)), default=0.0)

    def _wound(
        self, primaries: Sequence[Group], secondaries: Sequence[Group], base: float, grouping: Grouping
    ) -> Iterator[_Row]:
        ceiling = self._ceiling(primaries)
        low = [self._once(as_secondary, g, self.before) for g in secondaries]
        if not all(low):
            return
        for below in product(*low):
            slips = sum(w.slip is not None for w in below) + (grouping.slip is not None)
            sure = base + sum(w.log_weight for w in below)
            if slips > 1 or sure + ceiling < self.best - self.worse_by:
                continue
            for above in self._high(primaries, self._size(below), sound=slips > 0):
                if slips + sum(w.slip is not None for w in above) <= 1:
                    weight = sure + sum(w.log_weight for w in above)
                    self.best = max(self.best, weight)
                    yield (*sorted(above, key=self._place), *below), grouping, weight

    def _place(self, wound: Wound) -> int:
        """Two equal primaries stand in the order in which their leads were named."""
        return min(self.evidence.leads.index(lead) for lead, _ in wound.leads)

    def _ceiling(self, groups: Iterable[Group]) -> float:
        """Most that the readings of these groups can add to a weight: each met to the last digit."""
        members = [frozenset(g.leads) for g in groups]
        return sum(
            -math.log(spread(ohm) * _ROOT) for p, ohm in self.evidence.ohms.items() if any(m.issuperset(p) for m in members)
        )

    def _high(self, groups: Sequence[Group], size: Size, *, sound: bool) -> Iterator[tuple[Wound, ...]]:
        """Primaries of these groups; sound ones only, where the slip was made elsewhere."""
        if not groups:
            yield ()
        elif len(groups) == 1:
            yield from ((w,) for w in self._once(as_primary, groups[0], size, sound=sound))
        elif all(len(g.leads) == 2 for g in groups):
            first, second = groups
            yield from self._twins(first, second, size, sound=sound)
            if not sound:
                yield from ((a, b) for b, a in self._twins(second, first, size, sound=sound) if a.slip is not None)

    def _twins(self, first: Group, second: Group, size: Size, *, sound: bool) -> Iterator[tuple[Wound, Wound]]:
        """Two equal primaries, the first one's reading taken for what it says."""
        for a in self._once(as_half, first, size, sound=True):
            yield from ((a, b) for b in as_twin(second, self._line(second, sound=sound), a))

    def _once(self, made: _Made, group: Group, size: Size, *, sound: bool = False) -> tuple[Wound, ...]:
        key = (made.__name__, group, size, sound)
        if key not in self.fitted:
            self.fitted[key] = made(group, self._line(group, sound=sound), self.evidence, size)
        return self.fitted[key]

    def _line(self, group: Group, *, sound: bool) -> Line:
        key = (group, sound)
        if key not in self.lines:
            line = (
                self._line(group, sound=False)
                if sound
                else lay(readings_along(group.leads, self.evidence.ohms), group.fragments)
            )
            self.lines[key] = line.unslipped() if sound else line
        return self.lines[key]

    def _size(self, secondaries: Sequence[Wound]) -> Size:
        volts, unnamed = self.evidence.secondary_v, self.evidence.secondary_ohm
        if not secondaries:
            return self.before if unnamed is None else size_after(self.before, unnamed, volts, _UNNAMED_VAR)
        first = secondaries[0]
        if first.open_at or first.slip is not None:
            return self.before
        return size_after(self.before, sum(first.sections_ohm), volts, first.spread[0][0] / len(first.sections_ohm))


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
