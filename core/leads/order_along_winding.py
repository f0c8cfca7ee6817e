"""Which orders of leads along one winding the ohms between them allow, and which single reading may be a slip."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace
from functools import cache
from itertools import combinations, permutations
from typing import Final

import numpy as np

from core.leads.evidence import Pair, blocks, pair
from core.leads.meter import TEST_LEADS_OHM, slip_density, spread
from core.leads.section_fit import Floats, Indices, line_evidence
from core.leads.tap_sets import SLIP

MOST_LEADS: Final = 6
"""Leads of the largest winding of the trade: common and five taps."""
_CAP: Final = 25.0
_ORDERS_KEPT: Final = 40
_ARRANGEMENTS_KEPT: Final = 48
_WORSE_BY: Final = 16.0
"""Natural logarithm of the odds from which on an arrangement is given up."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Ohms:
    """Readings along one winding."""

    leads: tuple[str, ...]
    pairs: tuple[Pair, ...]
    ohm: Floats
    sigma: Floats
    slips: Floats
    """Natural logarithm of the weight of each reading as a slip."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Line:
    """Leads from one end to the other in each way that the readings allow; which of the two ends is common is not yet said."""

    ohms: Ohms
    orders: Indices
    """arrangements x leads: index of the lead at each place, best arrangement first."""
    slips: Indices
    """Index of the pair that each takes as a slip, -1 for none."""
    spans: Floats
    """arrangements x pairs x sections: 1 where a section lies between the pair."""
    kept: Floats
    """arrangements x pairs: 0 for the slip."""

    def names(self, number: int) -> tuple[str, ...]:
        """Leads of one arrangement."""
        return tuple(self.ohms.leads[i] for i in self.orders[number].tolist())

    def slip(self, number: int) -> Pair | None:
        """The pair that one arrangement takes as a slip."""
        at = self.slips[number]
        return None if at < 0 else self.ohms.pairs[at]

    def both_ways(self) -> "Line":
        """Each arrangement, and then each from its other end."""
        return replace(
            self,
            orders=np.concatenate([self.orders, self.orders[:, ::-1]]),
            slips=np.concatenate([self.slips, self.slips]),
            spans=np.concatenate([self.spans, self.spans[:, :, ::-1]]),
            kept=np.concatenate([self.kept, self.kept]),
        )

    def is_whole(self) -> bool:
        """True where the readings tie all leads together."""
        return len(blocks(self.ohms.leads, self.ohms.pairs)) == 1

    def unslipped(self) -> "Line":
        """Only what takes every reading for what it says."""
        sound = self.slips < 0
        return replace(self, orders=self.orders[sound], slips=self.slips[sound], spans=self.spans[sound], kept=self.kept[sound])


def readings_along(leads: Sequence[str], ohms: Mapping[Pair, float]) -> Ohms:
    """The finite readings between these leads."""
    pairs = tuple(p for p in (pair(a, b) for a, b in combinations(leads, 2)) if p in ohms)
    values = [ohms[p] for p in pairs]
    return Ohms(
        leads=tuple(leads),
        pairs=pairs,
        ohm=np.array(values, dtype=np.float64),
        sigma=np.array([spread(v) for v in values], dtype=np.float64),
        slips=np.log(np.array([SLIP * slip_density(v) for v in values], dtype=np.float64)),
    )


def lay(ohms: Ohms, fragments: Sequence[frozenset[str]] = ()) -> Line:
    """
    Put leads on a line in every order that the readings allow, each with the reading that it takes as a slip, if any.

    Args:
        ohms: Readings along the winding.
        fragments: Where the winding is open inside: its parts, each of which stays together.

    Returns:
        Best first; mirrored orders stand once.
    """
    orders = _possible(ohms, fragments)
    spans = spans_of(orders, pair_indices(ohms.leads, ohms.pairs))
    count = len(ohms.pairs)
    kept = np.ones((1 + count, count))
    kept[1:] -= np.eye(count)
    rows, which = np.divmod(np.arange(len(orders) * (1 + count)), 1 + count)
    if len(orders) > 1:
        score = line_evidence(spans[rows], ohms.ohm, ohms.sigma, kept[which]) if count else np.zeros(len(orders))
        score += np.concatenate([[0.0], ohms.slips])[which]
        best = np.argsort(-score, kind="stable")[:_ARRANGEMENTS_KEPT]
        best = best[score[best] > score[best[0]] - _WORSE_BY]
        rows, which = rows[best], which[best]
    return Line(ohms=ohms, orders=orders[rows], slips=which - 1, spans=spans[rows], kept=kept[which])


def spans_of(orders: Indices, pairs: Indices) -> Floats:
    """
    Which sections lie between each pair.

    Args:
        orders: orders x leads: index of the lead at each place.
        pairs: pairs x 2: indices of the leads.

    Returns:
        orders x pairs x sections.
    """
    place = np.argsort(orders, axis=1)
    ends = np.sort(place[:, pairs], axis=2)
    section = np.arange(orders.shape[1] - 1)
    inside = (section >= ends[:, :, :1]) & (section < ends[:, :, 1:])
    return np.asarray(inside, dtype=np.float64)


def pair_indices(leads: Sequence[str], pairs: Sequence[Pair]) -> Indices:
    """Pairs as indices into `leads`."""
    at = {lead: i for i, lead in enumerate(leads)}
    return np.array([(at[a], at[b]) for a, b in pairs], dtype=np.intp).reshape(-1, 2)


def _possible(ohms: Ohms, fragments: Sequence[frozenset[str]]) -> Indices:
    orders = _permutations(len(ohms.leads))
    place = np.argsort(orders, axis=1)
    for fragment in fragments:
        members = place[:, [i for i, lead in enumerate(ohms.leads) if lead in fragment]]
        together = members.max(axis=1) - members.min(axis=1) == len(fragment) - 1
        orders, place = orders[together], place[together]
    misfit = _misfit(ohms, orders)
    best = np.argsort(misfit, kind="stable")[:_ORDERS_KEPT]
    # One slip spoils at most as many sums as there are other leads.
    near = misfit[best] <= misfit[best[0]] + _CAP * max(1, len(ohms.leads) - 2)
    kept: Indices = orders[best[near]]
    return kept


@cache
def _permutations(count: int) -> Indices:
    """All orders of so many leads, mirrored ones once."""
    orders = [p for p in permutations(range(count)) if count == 1 or p[0] < p[-1]]
    return np.array(orders, dtype=np.intp)


def _misfit(ohms: Ohms, orders: Indices) -> Floats:
    """Over all three leads of an order: how far the two short spans are from adding up to the long one, each capped."""
    count = len(ohms.leads)
    value = {p: (v, s) for p, v, s in zip(ohms.pairs, ohms.ohm, ohms.sigma, strict=True)}
    sums = np.zeros((count, count, count))
    for a, b, c in permutations(range(count), 3):
        three = [value.get(pair(ohms.leads[i], ohms.leads[j])) for i, j in ((a, b), (b, c), (a, c))]
        if a < c and None not in three:
            (ab, s1), (bc, s2), (ac, s3) = (t for t in three if t is not None)
            var = s1**2 + s2**2 + s3**2 + TEST_LEADS_OHM[1] ** 2
            sums[a, b, c] = sums[c, b, a] = min(_CAP, (ab + bc - ac - TEST_LEADS_OHM[0]) ** 2 / var)
    total = np.zeros(len(orders))
    for i, j, k in combinations(range(count), 3):
        total += sums[orders[:, i], orders[:, j], orders[:, k]]
    return total
