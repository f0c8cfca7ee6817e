"""How likely the bench's own ways of winding make a set of ohms: each way a row, with the ohms to the first tap that it then means."""

import math
from dataclasses import dataclass
from itertools import combinations, permutations

import numpy as np

from tests.benchmarks.lead_slip import out_of_nowhere, sources

VA = ((20.0, 0.1), (30.0, 0.05), (40.0, 0.4), (50.0, 0.15), (60.0, 0.05), (75.0, 0.17), (100.0, 0.08))
GROWTH = np.linspace(0.05, 0.25, 9)
LEADS_OHM = np.linspace(0.0, 0.5, 11)
LOST = (0.75, 1.3)
SPLIT = (0.36, 0.52)
CENTRED = 0.12
HALVES = np.linspace(0.99, 1.08, 7)
MIDDLING = 0.15
THINNEST = math.log(1.5)
DRAWS = 16
LEAST_OHM = 1e-3
SCALE_STEP = 0.08
NODES = ((-2.0, 0.0540), (-1.0, 0.2420), (0.0, 0.4080), (1.0, 0.2420), (2.0, 0.0540))
"""Standard deviations from the likeliest ohms at which those of a secondary are looked at, and their shares: a tenth of an ohm counts there."""
TOO_FAR = 60.0
"""Twice the logarithm of the odds from which on an order of leads has no likelihood to speak of."""


@dataclass
class Ways:
    """One row for each way in which a side of the unit may have come about; a column for each ohms of the test leads."""

    share: np.ndarray
    log: np.ndarray
    scale: np.ndarray
    slipped: np.ndarray


def high_ways(taps, high, ohms, each):
    """The primary side: `high` in order from common, or both halves; `each` is the odds that one reading and no other is wrong."""
    if isinstance(taps, str):
        first = int(taps.split()[1])
        both = np.array([(a, b) for a in HALVES for b in HALVES])
        line = 2.0 * (1.0 + GROWTH[:, None, None] / 2.0) * both
        known = [(i, ohms[frozenset(g)]) for i, g in enumerate(high) if frozenset(g) in ohms]
        line = line.reshape(-1, 2)[:, [i for i, _ in known]]
        shapes = np.full(len(line), 1.0 / len(line)), line
        return _rows(np.array([v for _, v in known]), lambda _: shapes, each, _grid(first, SPLIT))
    ohm, spans = _along(high, ohms)
    share, fixed = _fixed(taps)

    def shapes_but(left_out):
        more, thinned = _thinned(taps, ohm, spans, left_out)
        return np.concatenate([share, more]), np.concatenate([fixed, thinned]) @ spans.T

    return _rows(ohm, shapes_but, each, _grid(taps[0], SPLIT))


def low_ways(order, ohms, each):
    """The secondary; the outer half of a tapped one has up to a tenth more ohms."""
    ohm, spans = _along(order, ohms)
    if len(order) == 2:
        share, parts = np.array([1.0 - CENTRED]), np.array([[1.0]])
    else:
        more = np.array([1.01, 1.03, 1.05, 1.07, 1.09])
        share, parts = np.full(5, CENTRED / 5.0), 0.5 * np.stack([np.ones(5), more], axis=1)
    return _rows(ohm, lambda _: (share, parts @ spans.T), each, _grid(24.0, (1.0 - SPLIT[1], 1.0 - SPLIT[0])), NODES)


def summed(high, low, first_v, va):
    """Likelihood of both sides together: with every reading right, and with one of them wrong."""
    honest, wrong = 0.0, 0.0
    high, low = _weighty(high), _weighty(low)
    for i in range(len(low.share)):
        kept = ~high.slipped if low.slipped[i] else np.ones(len(high.share), bool)
        value = np.exp(high.log[kept] + low.log[i]) * _size(high.scale[kept], low.scale[i], first_v, va)
        each = low.share[i] * high.share[kept] * value.mean(axis=1)
        slipped = high.slipped[kept] | low.slipped[i]
        honest, wrong = honest + float(each[~slipped].sum()), wrong + float(each[slipped].sum())
    return np.array([honest, wrong])


def _weighty(ways):
    """Those that add more than a ten-millionth, wrong readings and right ones each by themselves: the size may rule either out."""
    weight = np.log(ways.share + 1e-300) + ways.log.max(axis=1)
    most = [weight[ways.slipped == wrong].max(initial=-np.inf) for wrong in (False, True)]
    kept = weight > np.where(ways.slipped, most[1], most[0]) - 16.0
    return Ways(ways.share[kept], ways.log[kept], ways.scale[kept], ways.slipped[kept])


def likely_orders(group, ohms):
    """Orders of a tapped primary, each from both ends, along which the readings add up if one of them is left out."""
    orders = [p for p in permutations(group) if p[0] < p[-1]]
    missed = []
    for order in orders:
        ohm, spans = _along(order, ohms)
        missed.append(min(_misfit(ohm, spans, left_out) for left_out in (None, *range(len(ohm)))) if len(ohm) else 0.0)
    near = [order for order, far in zip(orders, missed, strict=True) if far < min(missed) + TOO_FAR]
    return [*near, *(order[::-1] for order in near)]


def _misfit(ohm, spans, left_out):
    kept = [i for i in range(len(ohm)) if i != left_out]
    a, b, sigma = spans[kept], ohm[kept] - 0.25, np.hypot(_sigma(ohm[kept]), 0.15)
    weighted = a / sigma[:, None]
    parts = np.linalg.solve(weighted.T @ weighted + 1e-6 * np.eye(spans.shape[1]), weighted.T @ (b / sigma))
    return float((((b - a @ np.maximum(parts, 0.02)) / sigma) ** 2).sum())


def _along(order, ohms):
    """Readings along a winding, and which sections each spans."""
    pairs = [(i, j) for i, j in combinations(range(len(order)), 2) if frozenset((order[i], order[j])) in ohms]
    ohm = np.array([ohms[frozenset((order[i], order[j]))] for i, j in pairs])
    spans = np.array([[1.0 if i <= s < j else 0.0 for s in range(len(order) - 1)] for i, j in pairs])
    return ohm, spans.reshape(len(pairs), len(order) - 1)


def _sigma(ohm):
    step = np.where(ohm < 600, 0.1, 1.0)
    return np.sqrt((0.0029 * ohm) ** 2 + 0.1**2 / 3.0 + step**2 / 12.0)


def _grid(volts, split):
    """Natural logarithm of all ohms that a winding of so many volts may have."""
    sizes = [_base(rating) for rating, _ in VA]
    low, high = LOST[0] * split[0] * min(sizes) * volts**2, LOST[1] * split[1] * max(sizes) * volts**2
    return np.arange(math.log(low), math.log(high), SCALE_STEP)


def _base(rating):
    return 0.125 * (rating / 40.0) ** -0.45 / rating


def _rows(ohm, shapes_but, each, grid, nodes=((0.0, 1.0),)):
    """Every reading taken for what it says, and each in turn for a wrong one."""
    count = len(ohm)
    share, line = shapes_but(None)
    if not count:
        return _any_size(share.sum(), grid, slipped=False)
    log, scale, curved = _fitted(ohm, line, _sigma(ohm))
    found = [*_around(Ways(share, log, scale, np.zeros(len(share), bool)), curved, nodes)]
    for p in range(count if each > 0.0 else 0):
        rest = [i for i in range(count) if i != p]
        if not rest:
            found += _alone(float(ohm[0]), share * each, line, grid)
            continue
        share, line = shapes_but(p)
        log, scale, curved = _fitted(ohm[rest], line[:, rest], _sigma(ohm[rest]))
        due = scale * line[:, p : p + 1] + LEADS_OHM
        log = log + np.log(_wrong(float(ohm[p]), due, line[:, p : p + 1] ** 2 / curved[:, None]))
        found += _around(Ways(share * each, log, scale, np.ones(len(share), bool)), curved, nodes)
    return Ways(*(np.concatenate([getattr(w, name) for w in found]) for name in ("share", "log", "scale", "slipped")))


def _around(ways, curved, nodes):
    """The same ways with more and less ohms than the likeliest."""
    for off, share in nodes:
        scale = np.maximum(ways.scale + off / np.sqrt(curved)[:, None], LEAST_OHM)
        yield Ways(ways.share * share, ways.log + np.log(ways.scale / scale), scale, ways.slipped)


def _any_size(share, grid, *, slipped):
    log = np.full((len(grid), len(LEADS_OHM)), math.log(SCALE_STEP))
    scale = np.repeat(np.exp(grid)[:, None], len(LEADS_OHM), axis=1)
    return Ways(np.full(len(grid), share), log, scale, np.full(len(grid), slipped))


def _alone(value, share, line, grid):
    """A wrong reading that no other bears out: what it was to be, or no reading at all."""
    for x, chance in sources(value):
        if not grid[0] - 1.0 < math.log(x) < grid[-1] + 1.0:
            continue
        log, scale, _ = _fitted(np.array([x]), line, _sigma(np.array([x])))
        yield Ways(share * chance, log, scale, np.ones(len(share), bool))
    yield _any_size(share.sum() * out_of_nowhere(value), grid, slipped=True)


def _wrong(value, due, due_var):
    """Density of a wrong value where others foretell what was to be read."""
    density = np.full(due.shape, out_of_nowhere(value) + 1e-30)
    for x, chance in sources(value):
        var = due_var + _sigma(np.array([x]))[0] ** 2
        density += chance * np.exp(-0.5 * (x - due) ** 2 / var) / np.sqrt(2.0 * np.pi * var)
    return density


def _fitted(ohm, line, sigma):
    """Log of the likelihood's integral over ln(scale), the scale where it lies, and its curvature: rows of `line` x test leads."""
    weight = 1.0 / sigma**2
    rest = ohm - LEADS_OHM[:, None]
    curved = (line**2 * weight).sum(axis=1)
    scale = np.maximum((line * weight) @ rest.T / curved[:, None], LEAST_OHM)
    missed = (((rest[None] - scale[:, :, None] * line[:, None, :]) ** 2) * weight).sum(axis=2)
    log = -0.5 * missed - np.log(sigma * 2.507).sum() + 0.5 * np.log(2.0 * np.pi / curved)[:, None] - np.log(scale)
    return np.where(scale > LEAST_OHM, log, -1e9), scale, curved


def _size(high_scale, low_scale, first_v, va):
    """Density of ln(ohms to the first tap) and ln(secondary ohms), over every rating."""
    density = np.zeros(high_scale.shape)
    for rating, share in VA if va is None else ((va, 1.0),):
        base = _base(rating)
        b = low_scale / (base * 24.0**2)
        if b.max() < LOST[0] * (1.0 - SPLIT[1]) or b.min() > LOST[1] * (1.0 - SPLIT[0]):
            continue
        a = high_scale / (base * first_v**2)
        lost, split = a + b, a / (a + b)
        inside = (lost > LOST[0]) & (lost < LOST[1]) & (split > SPLIT[0]) & (split < SPLIT[1])
        # lost and split are even: the Jacobian from (ln a, ln b) is a b / lost.
        density = density + share * inside * (a * b / lost) / ((LOST[1] - LOST[0]) * (SPLIT[1] - SPLIT[0]))
    return density


def _fixed(taps):
    """Shares and sections, for one ohm to the first tap, of every way of winding but free thinning."""
    ways = (("one", 0.4), ("gauges", 0.35)) if len(taps) > 1 else (("one", 1.0),)
    rows = [(share / len(GROWTH), _sections(taps, _factors(taps, way), growth)) for way, share in ways for growth in GROWTH]
    return np.array([share for share, _ in rows]), np.array([parts for _, parts in rows])


def _factors(taps, way):
    return np.array([1.2599 ** round(3 * math.log2(v / taps[0])) if way == "gauges" else 1.0 for v in taps])


def _sections(taps, factor, growth):
    top, volts = taps[-1], np.array(taps, float)
    before = np.concatenate([[0.0], volts[:-1]])
    return (volts - before) / taps[0] * factor * (1.0 + growth * (volts + before) / 2.0 / top)


def _thinned(taps, ohm, spans, left_out):
    """Free thinning, each step even from 1 to 1.5: drawn near what was read, weighed by the prior over how often it is drawn."""
    steps = len(taps) - 1
    if not steps:
        return np.empty(0), np.empty((0, 1))
    kept = [i for i in range(len(ohm)) if i != left_out]
    # What a wrong reading leaves is small beside what none leaves, and looked at more coarsely.
    growths, draws = (GROWTH[::2], DRAWS) if left_out is None else (GROWTH[1::3], DRAWS // 2)
    middle, spread = _near(taps, ohm[kept], spans[kept])
    off = np.random.default_rng(1).multivariate_normal(np.zeros(steps), spread, len(growths) * draws)
    log = -0.5 * (off * np.linalg.solve(spread, off.T).T).sum(axis=1) - 0.5 * np.linalg.slogdet(2.0 * np.pi * spread)[1]
    turns = np.array([_sections(taps, 1.0, g) for g in np.repeat(growths, draws)])
    # More growth of the turns leaves less to thinning.
    drawn = off + middle - np.diff(np.log(turns / _sections(taps, 1.0, MIDDLING)), axis=1)
    prior = np.exp(drawn.sum(axis=1)) * 2.0**steps * ((drawn > 0.0) & (drawn < THINNEST)).all(axis=1)
    share = 0.25 * prior / np.exp(log) / len(drawn)
    rows = turns * np.exp(np.concatenate([np.zeros((len(drawn), 1)), np.cumsum(drawn, axis=1)], axis=1))
    return share[share > 0.0], rows[share > 0.0]


def _near(taps, ohm, spans):
    """Middle and spread, with room to spare, of the steps of thinning that these readings leave where turns grow middlingly."""
    steps = len(taps) - 1
    state = np.concatenate([[math.log(max(ohm.max(initial=1.0), 0.3) / spans.shape[1])], np.full(steps, 0.2)])
    prior = np.diag([1e-6, *[1.0 / 0.16**2] * steps])
    # Readings go astray each by itself and, by the test leads, all together.
    precise = np.linalg.inv(np.diag(_sigma(ohm) ** 2) + 0.5**2 / 12.0)
    later = np.tri(steps + 1, k=0)
    turns = _sections(taps, 1.0, MIDDLING)
    for _ in range(8):
        parts = turns * np.exp(later @ state)
        slope = (spans * parts) @ later
        pull = np.concatenate([[0.0], (0.2 - state[1:]) / 0.16**2])
        curved = slope.T @ precise @ slope + prior
        step = np.linalg.solve(curved, slope.T @ precise @ (ohm - 0.25 - spans @ parts) + pull)
        state = state + np.clip(step, -1.0, 1.0)
        state[1:] = np.clip(state[1:], -0.1, THINNEST + 0.1)
        if np.abs(step).max() < 1e-3:
            break
    return state[1:], 2.0 * np.linalg.inv(curved)[1:, 1:]
