"""
What the bench's own priors leave of a set of readings, all pairs honestly read: the share of units that nobody could be sure of.

Every way in which a unit of the bench may have come about is summed up: which group is what, every tap set, both ends, every way of
winding, size, losses and growth of the turns, test leads and the meter's last digits. Nothing here is taken from `core.leads`.
"""

import math
from collections import Counter
from itertools import permutations

import numpy as np

HABIT = {120: "black", 208: "red", 240: "orange", 277: "brown", 480: "gray"}
VA = ((20.0, 0.1), (30.0, 0.05), (40.0, 0.4), (50.0, 0.15), (60.0, 0.05), (75.0, 0.17), (100.0, 0.08))
GROWTH = np.linspace(0.05, 0.25, 9)
LEADS_OHM = np.linspace(0.0, 0.5, 11)
LOST = (0.75, 1.3)
SPLIT = (0.36, 0.52)
CENTRED = 0.12
COLOURS = 12
DRAWS = 16
NEIGHBOURS_OHM = 1.2
"""Leads closer than that may be in either order."""
SAME_COLOURS = 0.20 / 0.85


def posterior(unit, seen, sets):
    """Probability of each map, as `Unit.key`."""
    groups = _groups(unit.leads, seen)
    facts = {"va": next((f.value for f in unit.facts if f.fact == "rated_va"), None)}
    labels = {f.lead: f.role for f in unit.facts if f.fact == "lead_is"}
    total = sum(share for _, share in sets)
    weight = Counter()
    for taps, share in sets:
        for primaries, secondary in _sides(groups, taps):
            for key, names, value in _maps(taps, primaries, secondary, seen, facts["va"]):
                told = _names(taps, names) * _labels(names, labels)
                weight[key] += share / total * value * told
    whole = sum(weight.values())
    return {key: value / whole for key, value in weight.items()} if whole > 0 else {}


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


def _maps(taps, primaries, secondary, seen, va):
    """(map, primary and secondary names in order, likelihood)."""
    low = _low_orders(secondary)
    if isinstance(taps, str):
        half = int(taps.split()[1])
        high = [(None, tuple((lead, str(half)) for lead in g)) for g in primaries]
        for order in low:
            value = _likelihood_dual(half, primaries, order, seen, va) / len(low)
            names = tuple(n for _, g in high for n in g)
            yield _key([g for _, g in high], order), (names, order), value
        return
    roles = ("common", *map(str, taps)) if len(taps) > 1 else (str(taps[0]),) * 2
    orders = [primaries[0]] if len(taps) == 1 else _plausible(primaries[0], seen)
    for high in orders:
        for order in low:
            value = _likelihood(taps, high, order, seen, va) / len(low) / (1 if len(taps) == 1 else math.factorial(len(high)))
            named = tuple(zip(high, roles, strict=True))
            yield _key([named], order), (named, order), value


def _low_orders(secondary):
    if len(secondary) == 2:
        return [secondary]
    return list(permutations(secondary))


def _key(high, low):
    roles = ("24", "24") if len(low) == 2 else ("12", "ct", "12")
    return frozenset([*(("primary", frozenset(g)) for g in high), ("secondary", frozenset(zip(low, roles, strict=True)))])


def _ohm(seen, a, b):
    return seen[(a, b) if (a, b) in seen else (b, a)]


def _plausible(group, seen):
    """Both directions of each order along which neighbours add up: others have no likelihood to speak of."""
    ends = max(((a, b) for a in group for b in group if a != b), key=lambda p: _ohm(seen, *p))
    order = sorted(group, key=lambda lead: 0.0 if lead == ends[0] else _ohm(seen, ends[0], lead))
    near = [i for i in range(len(order) - 1) if _ohm(seen, order[i], order[i + 1]) < NEIGHBOURS_OHM]
    rows = [tuple(order), *((*order[:i], order[i + 1], order[i], *order[i + 2 :]) for i in near)]
    return [*rows, *(row[::-1] for row in rows)]


def _shapes(taps):
    """(weight, sections for one ohm to the first tap) of every way of winding but free thinning, which is left to its own sum."""
    for way, share in (("one", 0.4), ("gauges", 0.35)):
        for growth in GROWTH:
            yield share / len(GROWTH), _sections(taps, way, growth, ())


def _sections(taps, way, growth, thinner):
    parts, before, factor = [], 0.0, 1.0
    for i, v in enumerate(taps):
        if parts and way == "gauges":
            factor = 1.2599 ** round(3 * math.log2(v / taps[0]))
        elif parts and way == "thinner":
            factor *= thinner[i - 1]
        parts.append((v - before) / taps[0] * factor * (1 + growth * (v + before) / 2 / taps[-1]))
        before = v
    return np.array(parts)


def _along(order, seen):
    """Readings along a winding: values, spans and spread."""
    pairs = [(i, j) for i in range(len(order)) for j in range(i + 1, len(order))]
    ohm = np.array([_ohm(seen, order[i], order[j]) for i, j in pairs])
    spans = np.array([[1.0 if i <= s < j else 0.0 for s in range(len(order) - 1)] for i, j in pairs])
    step = np.where(ohm < 600, 0.1, 1.0)
    sigma = np.sqrt((0.0029 * ohm) ** 2 + 0.1**2 / 3.0 + step**2 / 12.0)
    return ohm, spans, sigma


def _fits(order, seen, shape):
    """For each test lead ohms: log of the likelihood's integral over ln(scale), and the scale where it lies."""
    ohm, spans, sigma = _along(order, seen)
    return _fitted(ohm, spans @ shape, sigma)


def _fitted(ohm, line, sigma):
    weight = 1.0 / sigma**2
    rest = ohm[None, :] - LEADS_OHM[:, None]
    curved = (line**2 * weight).sum()
    scale = np.maximum((rest * line * weight).sum(axis=1) / curved, 1e-6)
    missed = (((rest - scale[:, None] * line) ** 2) * weight).sum(axis=1)
    log = -0.5 * missed - np.log(sigma * 2.507).sum() + 0.5 * np.log(2.0 * np.pi / curved) - np.log(scale)
    return log, scale


def _low_fits(order, seen):
    """The same for a secondary; the outer half of a tapped one has up to a tenth more ohms."""
    if len(order) == 2:
        yield 1.0 - CENTRED, *_fits(order, seen, np.array([1.0]))
    else:
        for more in (1.02, 1.05, 1.08):
            yield CENTRED / 3.0, *_fits(order, seen, np.array([0.5, 0.5 * more]))


def _size(high_scale, low_scale, first_v, va):
    """Density of ln(ohms to the first tap) and ln(secondary ohms), over every rating."""
    density = 0.0
    for rating, share in VA if va is None else ((va, 1.0),):
        base = 0.125 * (rating / 40.0) ** -0.45 / rating
        a, b = high_scale / (base * first_v**2), low_scale / (base * 24.0**2)
        lost, split = a + b, a / (a + b)
        inside = (lost > LOST[0]) & (lost < LOST[1]) & (split > SPLIT[0]) & (split < SPLIT[1])
        # lost and split are even: the Jacobian from (ln a, ln b) is a b / lost.
        density = density + share * inside * (a * b / lost) / ((LOST[1] - LOST[0]) * (SPLIT[1] - SPLIT[0]))
    return density


def _likelihood(taps, high, low, seen, va):
    ways = [(share, *_fits(high, seen, shape)) for share, shape in _all_shapes(taps, high, seen)]
    return _summed(ways, list(_low_fits(low, seen)), taps[0], va)


def _likelihood_dual(half, primaries, low, seen, va):
    """Two halves, each up to 8 % above or 1 % below what half the winding should have."""
    ohm = np.array([_ohm(seen, *g) for g in primaries])
    sigma = np.sqrt((0.0029 * ohm) ** 2 + 0.1**2 / 3.0 + 0.1**2 / 12.0)
    ways = []
    for one in np.linspace(0.99, 1.08, 7):
        for other in np.linspace(0.99, 1.08, 7):
            line = 2.0 * 1.075 * np.array([one, other])
            ways.append((1.0 / 49.0, *_fitted(ohm, line, sigma)))
    return _summed(ways, list(_low_fits(low, seen)), half, va)


def _summed(ways, lows, first_v, va):
    share = np.array([w[0] for w in ways])[:, None]
    log, scale = np.array([w[1] for w in ways]), np.array([w[2] for w in ways])
    return sum(
        low_share * float((share * np.exp(log + low_log) * _size(scale, low_scale, first_v, va)).mean(axis=1).sum())
        for low_share, low_log, low_scale in lows
    )


def _all_shapes(taps, high, seen):
    yield from _shapes(taps)
    if len(taps) == 1:
        yield 0.25, _sections(taps, "one", 0.15, ())
        return
    ohm, spans, sigma = _along(high, seen)
    # Readings go astray each by itself and, by the test leads, all together.
    precise = np.linalg.inv(np.diag(sigma**2) + 0.5**2 / 12.0)
    inverse = np.linalg.inv(spans.T @ precise @ spans)
    parts = inverse @ (spans.T @ (precise @ (ohm - 0.25)))
    if parts.min() <= 0.0:
        return
    turn = np.diff(np.eye(len(taps)), axis=0)
    spread = 2.0 * turn @ (inverse / np.outer(parts, parts)) @ turn.T
    rng = np.random.default_rng(1)
    for growth in GROWTH[::2]:
        middle = turn @ np.log(parts / _sections(taps, "one", growth, ()))
        for log_steps in rng.multivariate_normal(middle, spread, DRAWS):
            yield from _thinned(taps, growth, log_steps, middle, spread)


def _thinned(taps, growth, log_steps, middle, spread):
    """One draw of the steps of thinning, even from 1 to 1.5, near what was read: its prior over how often it is drawn."""
    if log_steps.min() < 0.0 or log_steps.max() > math.log(1.5):
        return
    off = log_steps - middle
    drawn = math.exp(-0.5 * float(off @ np.linalg.solve(spread, off))) / math.sqrt(np.linalg.det(2.0 * np.pi * spread))
    prior = float(np.exp(log_steps).prod()) * 2.0 ** len(log_steps)
    yield 0.25 * prior / drawn / (DRAWS * len(GROWTH[::2])), _sections(taps, "thinner", growth, np.exp(log_steps))


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
