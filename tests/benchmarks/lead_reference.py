"""
What a Bayesian who knows the bench makes of the same readings: the share of units that nobody could be sure of.

Its priors are the bench's own, as `lead_bench.draw_unit`, `measure` and `slip` draw: which tap sets and how often, ways of winding, sizes,
losses, growth of the turns, test leads, last digits, names and labels, and how a wrong reading comes about. Nothing is taken from
`core.leads`. What it assumes:

- every pair that reads open is one between two windings, since the bench never mistakes one for the other;
- pairs that are missing are missing by chance and tell nothing;
- at most one reading of a job is wrong, each as likely, with the chance that the caller gives: none for an honest meter that is known to be
  one, `READ_WRONG` for each reading where nobody knows;
- a wrong reading of a pair that others bear out is compared with what these foretell; of a pair that stands alone, with all that the
  bench could have put there: every slipped point and digit by itself, and values out of nowhere.

Ohms to the first tap are integrated in closed form around what was read, everything else is summed.
"""

import math
from collections import Counter, defaultdict
from itertools import permutations

import numpy as np

from tests.benchmarks.lead_reference_ohms import high_ways, likely_orders, low_ways, summed

HABIT = {120: "black", 208: "red", 240: "orange", 277: "brown", 480: "gray"}
COLOURS = 12
SAME_COLOURS = 0.20 / 0.85
READ_WRONG = 0.01
"""Chance that a reading is wrong, where nobody knows."""


def weights(unit, seen, sets, read_wrong=READ_WRONG):
    """(every reading right, one of them wrong) of each map, as `Unit.key`."""
    groups = _groups(unit.leads, seen)
    va = next((f.value for f in unit.facts if f.fact == "rated_va"), None)
    labels = {f.lead: f.role for f in unit.facts if f.fact == "lead_is"}
    ohms = {frozenset(p): float(v) for p, v in seen.items() if v != "open"}
    one_wrong = 1.0 - (1.0 - read_wrong) ** len(ohms)
    each = one_wrong / (1.0 - one_wrong) / max(1, len(ohms))
    total = sum(share for _, share in sets)
    weight = defaultdict(lambda: np.zeros(2))
    for taps, share in sets:
        for primaries, secondary in _sides(groups, taps):
            for key, names, value in _maps(taps, primaries, secondary, ohms, va, each):
                weight[key] += share / total * value * _names(taps, names) * _labels(names, labels)
    return dict(weight)


def _groups(leads, seen):
    left, groups = list(leads), []
    while left:
        group = [left.pop(0)]
        group += [b for b in left if seen.get((group[0], b), seen.get((b, group[0]))) != "open"]
        left = [b for b in left if b not in group]
        groups.append(tuple(group))
    return groups


def _sides(groups, taps):
    wanted = 2 if isinstance(taps, str) else 1
    count = 2 if isinstance(taps, str) else len(taps) + 1
    for i, secondary in enumerate(groups):
        primaries = [g for j, g in enumerate(groups) if j != i]
        if len(primaries) == wanted and all(len(g) == count for g in primaries) and len(secondary) in {2, 3}:
            yield primaries, secondary


def _maps(taps, primaries, secondary, ohms, va, each):
    """(map, primary and secondary names in order, likelihood)."""
    low_orders = [secondary] if len(secondary) == 2 else list(permutations(secondary))
    lows = [low_ways(order, ohms, each) for order in low_orders]
    for high, named, share in _highs(taps, primaries, ohms):
        ways = high_ways(taps, high, ohms, each)
        for order, low in zip(low_orders, lows, strict=True):
            value = summed(ways, low, _first(taps), va)
            names = tuple(n for winding in named for n in winding)
            yield _key(named, order), (names, order), share * value / len(low_orders)


def _first(taps):
    return int(taps.split()[1]) if isinstance(taps, str) else taps[0]


def _highs(taps, primaries, ohms):
    """(leads in order, named windings, share of this order) of the primary side."""
    if isinstance(taps, str):
        half = str(_first(taps))
        yield primaries, [tuple((lead, half) for lead in g) for g in primaries], 1.0
    elif len(taps) == 1:
        yield primaries[0], [tuple((lead, str(taps[0])) for lead in primaries[0])], 1.0
    else:
        roles = ("common", *map(str, taps))
        for order in likely_orders(primaries[0], ohms):
            yield order, [tuple(zip(order, roles, strict=True))], 1.0 / math.factorial(len(order))


def _key(high, low):
    roles = ("24", "24") if len(low) == 2 else ("12", "ct", "12")
    return frozenset([*(("primary", frozenset(g)) for g in high), ("secondary", frozenset(zip(low, roles, strict=True)))])


def _names(taps, names):
    """How much likelier these names are under the habits of the bench than under none."""
    high, low = names
    if all(len(lead) == 1 for lead, _ in high) or isinstance(taps, str):
        return 1.0
    lines = (
        [[lead for lead, _ in high]] if len(taps) > 1 else [[lead for lead, _ in high], [lead for lead, _ in reversed(high)]]
    )
    lows = [list(low)] if len(low) == 3 else [list(low), list(reversed(low))]
    odds = [
        _habit(taps, line, end, common) * share
        for line in lines
        for end in lows
        for common, share in (("white", 0.55), ("black", 0.45))
    ]
    return SAME_COLOURS + (1.0 - SAME_COLOURS) * sum(odds) / (len(lines) * len(lows))


def _habit(taps, line, low, common):
    wanted = [common, "black" if common == "white" else "white", *(HABIT[v] for v in taps[1:])]
    wanted += ["blue", "brown" if "brown" not in wanted else "green", "yellow"] if len(low) == 3 else ["blue", "yellow"]
    count = len(wanted)
    return math.prod(
        (0.88 if name == want else 0.12 / (COLOURS - count)) * (COLOURS - i)
        for i, (name, want) in enumerate(zip([*line, *low], wanted, strict=True))
    )


def _labels(names, labels):
    """Labels are right, or shuffled among the leads."""
    if not labels:
        return 1.0
    roles = dict(names[0])
    if sorted(labels.values()) != sorted(roles.values()):
        return 0.0
    alike = math.prod(math.factorial(n) for n in Counter(roles.values()).values())
    return 0.94 * (labels == roles) + 0.06 * alike / math.factorial(len(roles))
