"""One group of leads as one winding: every arrangement, end and tap set that its ohms allow, with weights."""

import math
from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from itertools import combinations
from typing import Final, Literal

import numpy as np

from core.leads.common_end import OPEN_RISE, Size, half_prior, secondary_prior, winding_prior
from core.leads.evidence import Evidence, Pair
from core.leads.order_along_winding import Line
from core.leads.section_fit import Fit, Floats, Prior, fit, fit_lone, prior_of
from core.leads.separate_windings import Group
from core.leads.slip import log_density
from core.leads.tap_sets import BROAD_WIRE, HALVES, HALVES_SPREAD, SLIP, TAP_SETS, WIRES, TapSet

_WORSE_BY: Final = 13.0
_KEPT: Final = 32
_NOWHERE: Final[frozenset[int]] = frozenset()
TWIN_RISE: Final = 0.03
"""Natural logarithm by which the second of two equal windings reads more: its turns are longer. Common practice, no source."""
FALL: Final = 0.02
"""Natural logarithm by which ohms per volt may fall outward, as a standard deviation: a tap sits on a whole turn, a layer packs tighter."""
MOST_FALL: Final = 3.0
"""Most that it costs in natural logarithms: somebody may have wound it again. Common practice, no source."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Wound:
    """One winding as it may be."""

    role: Literal["primary", "secondary"]
    leads: tuple[tuple[str, str], ...]
    """(lead, role) along the winding; a tapped primary from its common end."""
    volts: tuple[float, ...]
    """Rated volts of each lead, counted from the first."""
    sections_ohm: tuple[float, ...]
    spread: tuple[tuple[float, ...], ...]
    """Covariance of the logarithms of the sections and of the ohms of the test leads."""
    test_leads_ohm: float
    open_at: frozenset[int]
    """Sections that are open."""
    slip: Pair | None
    log_weight: float


@dataclass(frozen=True, slots=True)
class _Kind:
    """One set of priors for a number of sections."""

    roles: tuple[str, ...]
    volts: tuple[float, ...]
    mean: Floats
    cov: Floats
    log_share: float
    mirrored: bool
    """True where the two ends are not the same."""


def as_primary(group: Group, line: Line, evidence: Evidence, size: Size) -> tuple[Wound, ...]:
    """The group, laid on a line, as a primary with or without taps, for a unit of that size."""
    sets = _tap_sets(len(group.leads) - 1, evidence.taps)
    # With a section gone or not read the ohms say too little of the wire to tell one way of winding from another.
    wires = WIRES if len(group.leads) > 2 and line.is_whole() else (BROAD_WIRE,)
    kinds = []
    for tap_set in sets:
        for wire in wires:
            mean, cov = winding_prior(size, tap_set.volts, wire)
            names = tuple(f"{v:g}" for v in tap_set.volts)
            roles = ("common", *names) if len(names) > 1 else names * 2
            share = math.log(tap_set.share * wire.share)
            kinds.append(_Kind(roles, (0.0, *tap_set.volts), mean, cov, share, mirrored=len(names) > 1))
    return _wound("primary", line, group.fragments, kinds)


def as_half(group: Group, line: Line, evidence: Evidence, size: Size) -> tuple[Wound, ...]:  # noqa: ARG001  # asked as all are
    """The group as the first of two equal primaries."""
    kinds = []
    for half in HALVES:
        mean, cov = half_prior(size, half.volts[0])
        kinds.append(_half(half, mean, cov, math.log(half.share)))
    return _wound("primary", line, group.fragments, kinds) if len(group.leads) == 2 else ()


def as_twin(group: Group, line: Line, first: Wound) -> tuple[Wound, ...]:
    """The group as the second of two equal primaries, the first being known."""
    mean = np.array([math.log(first.sections_ohm[0]) + TWIN_RISE])
    half = TapSet(volts=(first.volts[1],), share=1.0)
    kind = _half(half, mean, np.array([[HALVES_SPREAD**2 + first.spread[0][0]]]), 0.0)
    return _wound("primary", line, group.fragments, [kind]) if len(group.leads) == 2 else ()


def _half(half: TapSet, mean: Floats, cov: Floats, log_share: float) -> _Kind:
    name = f"{half.volts[0]:g}"
    return _Kind((name, name), (0.0, half.volts[0]), mean, cov, log_share, mirrored=False)


def as_secondary(group: Group, line: Line, evidence: Evidence, size: Size) -> tuple[Wound, ...]:
    """The group as a secondary, with a centre tap where it has three leads."""
    sections = len(group.leads) - 1
    if sections not in {1, 2}:
        return ()
    volts = evidence.secondary_v
    mean, cov = secondary_prior(size, volts, sections)
    name, half = f"{volts:g}", f"{volts / 2.0:g}"
    roles = (name, name) if sections == 1 else (half, "ct", half)
    places = tuple(OPEN_RISE * volts * i / sections for i in range(sections + 1))
    share = 0.0 if sections == 1 else math.log(0.15)
    return _wound("secondary", line, group.fragments, [_Kind(roles, places, mean, cov, share, mirrored=False)])


def _tap_sets(taps: int, nameplate: Sequence[float]) -> tuple[TapSet, ...]:
    """Sets with so many taps; those that a nameplate names weigh nearly all."""
    sets = [s for s in TAP_SETS if len(s.volts) == taps]
    if not nameplate or taps < 1:
        return tuple(sets)
    named = list(combinations(nameplate, taps)) if len(nameplate) >= taps else []
    if not named:
        return tuple(sets)
    others = [TapSet(volts=s.volts, share=0.03 * s.share) for s in sets if s.volts not in named]
    return (*(TapSet(volts=v, share=0.97 / len(named)) for v in named), *others)


def _wound(
    role: Literal["primary", "secondary"], line: Line, fragments: Sequence[frozenset[str]], kinds: Sequence[_Kind]
) -> tuple[Wound, ...]:
    """Arrangements x ends x kinds, all fitted at once."""
    if not kinds or not len(line.orders):
        return ()
    mirrored = kinds[0].mirrored
    line = line.both_ways() if mirrored else line
    fitted = _fitted(line, prior_of(np.array([kind.mean for kind in kinds]), np.array([kind.cov for kind in kinds])))
    count = len(line.ohms.leads)
    alike = math.log(math.factorial(count) / 2.0) * (count > 2) + math.log(2.0) * mirrored
    weight = fitted.evidence - alike + np.array([kind.log_share for kind in kinds])[fitted.kind]
    weight += _slips(line, fitted)
    if mirrored:
        weight -= _falls(fitted, np.array([np.diff(kind.volts) for kind in kinds]))
    best = np.argsort(-weight, kind="stable")[:_KEPT]
    best = best[weight[best] > weight[best[0]] - _WORSE_BY]
    spread = np.linalg.inv(fitted.precision[best]).tolist()
    found = []
    for i, cov in zip(best.tolist(), spread, strict=True):
        at, kind = int(fitted.line[i]), kinds[fitted.kind[i]]
        order = line.names(at)
        found.append(
            Wound(
                role=role,
                leads=tuple(zip(order, kind.roles, strict=True)),
                volts=kind.volts,
                sections_ohm=tuple(fitted.sections_ohm[i].tolist()),
                spread=tuple(map(tuple, cov)),
                test_leads_ohm=float(fitted.test_leads_ohm[i]),
                open_at=_open_sections(order, fragments) if fragments else _NOWHERE,
                slip=line.slip(at),
                log_weight=float(weight[i]),
            )
        )
    return tuple(found)


def _fitted(line: Line, prior: Prior) -> Fit:
    ohms = line.ohms
    if len(ohms.leads) == 2 and ohms.pairs:
        return fit_lone(float(ohms.ohm[0]), float(ohms.sigma[0]), prior, slip=len(line.slips) > 1)
    return fit(line.spans, ohms.ohm, ohms.sigma, line.kept, prior)


def _falls(fitted: Fit, section_v: Floats) -> Floats:
    """What it costs each row that ohms per volt fall outward somewhere: outer turns are longer, and nobody winds them of thicker wire."""
    if section_v.shape[1] < 2:
        return np.zeros(len(fitted.line))
    per_volt = np.log(fitted.sections_ohm / section_v[fitted.kind])
    fall = np.maximum(per_volt[:, :-1] - per_volt[:, 1:], 0.0).max(axis=1)
    cost: Floats = np.minimum(0.5 * (fall / FALL) ** 2, MOST_FALL)
    return cost


def _slips(line: Line, fitted: Fit) -> Floats:
    """Natural logarithm of the weight of what each row takes for a wrong reading."""
    weight, pair_of = np.zeros(len(fitted.line)), line.slips[fitted.line]
    rows = np.flatnonzero(pair_of >= 0)
    if len(rows):
        which = pair_of[rows]
        slope = line.spans[fitted.line[rows], which] * fitted.sections_ohm[rows]
        due = slope.sum(axis=1) + fitted.test_leads_ohm[rows]
        slope = np.concatenate([slope, np.ones((len(rows), 1))], axis=1)[:, :, None]
        var = (slope * np.linalg.solve(fitted.precision[rows], slope)).sum(axis=(1, 2)) + line.ohms.sigma[which] ** 2
        weight[rows] = math.log(SLIP) + log_density(line.ohms.ohm.tolist(), which, due, np.sqrt(var) / np.maximum(due, 0.05))
    return weight


def _open_sections(order: Sequence[str], fragments: Iterable[frozenset[str]]) -> frozenset[int]:
    """Sections between two parts that read open to each other."""
    part = {lead: i for i, fragment in enumerate(fragments) for lead in fragment}
    return frozenset(i for i in range(len(order) - 1) if part.get(order[i]) != part.get(order[i + 1]))
