"""What tells leads apart besides ohms: labels, colours, marks, the tap in use, the supply, volts. Each gives a map a weight."""

import math
from collections.abc import Iterable, Mapping, Sequence
from functools import cache
from typing import Final

import numpy as np

from core.leads.evidence import Evidence, is_marked, pair
from core.leads.wound import Wound
from core.standards.lead_colours import COLOURS, FOLLOWS, HABITS, MOST_ODDS, NO_HABIT, TWO_LEAD_COLOURS

LABEL_HOLDS: Final = 0.94
"""Share of units whose labels are those of this unit and were read right. Common practice, no source."""
LABELS_SWAPPED: Final = 0.03
"""Share whose labels are its own and sit on the wrong leads; the rest are another unit's. Common practice, no source."""
_EACH_LABEL: Final = 0.985
_ANY_LABEL: Final = 1.0 / 6.0
_SIDE_HOLDS: Final = 0.985
_MARK_HOLDS: Final = 0.9995
"""How often H marks the higher and X the lower winding. ANSI/IEEE C57.12.70, terminal markings (from memory)."""
_LANDED_RIGHT: Final = 0.80
_SUPPLY_FITS: Final = 0.93
NOMINALS: Final = (
    (120.0, 108.0, 132.0),
    (208.0, 191.0, 219.0),
    (240.0, 219.5, 254.0),
    (277.0, 254.5, 300.0),
    (480.0, 430.0, 515.0),
)
"""A supply or a label's volts, and from where to where it is called so. [V]"""
_VOLT_SLIP: Final = 0.02
_SOURCES: Final = (
    (0.45, math.log(24.1), 0.02, True),
    (0.25, math.log(26.5), 0.06, True),
    (0.15, 0.0, 0.08, False),
    (0.15, -1.2, 1.5, False),
)
"""What may stand behind volts between leads: share, natural logarithm of the volts and its spread, whether they lie across the whole primary.
A 24 V source as named, one that reads its open volts, the line on its own tap, anything. Common practice, no source."""
_ALWAYS: Final = 4.0
"""Colours, the supply and the tap in use together can turn odds by so much, as a natural logarithm."""
_MOST_SWING: Final = 10.0
_NO_COLOUR: Final = 1.0 / len(COLOURS)


def nominal(volts: float) -> float:
    """
    The system volts that a reading or a label means.

    Args:
        volts: As read or written. [V]

    Returns:
        120, 208, 240, 277 or 480, or the volts themselves where they are none of these. [V]

    >>> nominal(230)
    240.0
    """
    return next((name for name, low, high in NOMINALS if low <= volts <= high), volts)


def log_clues(maps: Sequence[Sequence[Wound]], evidence: Evidence) -> list[float]:
    """
    Weights of maps from all clues but ohms.

    Args:
        maps: Windings of each map.
        evidence: What is known.

    Returns:
        Natural logarithm of each map's weight.
    """
    colours = _colours(maps)
    return [
        colour + label_weight(m, evidence.labels) + _sides(m, evidence.sides) + _in_use(m, evidence) + _supply(m, evidence)
        + _volts(m, evidence)
        for colour, m in zip(colours, maps, strict=True)
    ]  # fmt: skip


def log_swing(evidence: Evidence) -> float:
    """
    Most by which clues can turn the odds of two maps.

    Args:
        evidence: What is known.

    Returns:
        Natural logarithm of the odds.
    """
    labels = -math.log((1.0 - LABEL_HOLDS) * _ANY_LABEL**3) if evidence.labels else 0.0
    sides = len(evidence.sides) * math.log(_MARK_HOLDS / (1.0 - _MARK_HOLDS))
    return min(_MOST_SWING, _ALWAYS + labels + sides + 6.0 * len(evidence.volts))


def roles(windings: Iterable[Wound]) -> dict[str, tuple[str, str]]:
    """Lead to (side, role)."""
    return {lead: (w.role, role) for w in windings for lead, role in w.leads}


def label_fits(label: str, side: str, role: str, *, two_leads: bool) -> bool:
    """True where a label says what the map says of a lead."""
    if label in {"primary", "secondary"}:
        return label == side
    if label == "common":
        return role in {"common", "ct"} or two_leads
    if side == "secondary":
        return label in {role, "24", "r", "c", "hot"}
    try:
        return side == "primary" and role != "common" and nominal(float(label)) == nominal(float(role))
    except ValueError:
        return label == role


def label_weight(windings: Sequence[Wound], labels: Mapping[str, str]) -> float:
    """
    How well labels go with a map.

    Args:
        windings: Of the map.
        labels: Lead to what its label says.

    Returns:
        Natural logarithm of the weight.
    """
    if not labels:
        return 0.0
    sides, short = roles(windings), {lead for w in windings if len(w.leads) == 2 for lead, _ in w.leads}
    good = math.prod(
        _EACH_LABEL if lead in sides and label_fits(label, *sides[lead], two_leads=lead in short) else (1.0 - _EACH_LABEL) / 5.0
        for lead, label in labels.items()
    )
    swapped = sorted(labels.values()) == sorted(sides[lead][1] for lead in labels if lead in sides)
    return math.log(
        LABEL_HOLDS * good
        + LABELS_SWAPPED * swapped / math.factorial(len(labels))
        + (1.0 - LABEL_HOLDS - LABELS_SWAPPED) * _ANY_LABEL ** len(labels)
    )


def _colours(maps: Sequence[Sequence[Wound]]) -> list[float]:
    """By habit, the best at most so many times over any other."""
    likelihood = [math.log(_by_habit(m)) for m in maps]
    best = max(likelihood, default=0.0)
    return [max(value, best - math.log(MOST_ODDS)) for value in likelihood]


def _by_habit(windings: Sequence[Wound]) -> float:
    """Against a unit without habit, whose leads have any colour."""
    named = [
        (lead.split("/")[0], role, w.role == "primary" and len(w.leads) == 2)
        for w in windings
        for lead, role in w.leads
        if lead.split("/")[0] in COLOURS
    ]
    return NO_HABIT + sum(h.share * math.prod(_habit_odds(i, *row) for row in named) for i, h in enumerate(HABITS))


@cache
def _habit_odds(habit: int, colour: str, role: str, two_leads: bool) -> float:  # noqa: FBT001  # a row of the cache
    usual = TWO_LEAD_COLOURS.get(role, ()) if two_leads else HABITS[habit].colours.get(role, ())
    return (FOLLOWS / len(usual) if colour in usual else 0.0) / _NO_COLOUR + (1.0 - FOLLOWS) if usual else 1.0


def _sides(windings: Sequence[Wound], sides: Mapping[str, str]) -> float:
    total = 0.0
    for w in windings:
        wrong = [lead for lead, _ in w.leads if sides.get(lead, w.role) != w.role]
        holds = _MARK_HOLDS if any(is_marked(lead) for lead in wrong) else _SIDE_HOLDS
        total += math.log((1.0 - holds) / holds) if wrong else 0.0
    return total


def _in_use(windings: Sequence[Wound], evidence: Evidence) -> float:
    if evidence.in_use is None:
        return 0.0
    side, role = roles(windings).get(evidence.in_use, ("", ""))
    fits = side == "primary" and role != "common"
    if fits and evidence.in_use_v is not None:
        fits = nominal(float(role)) == nominal(evidence.in_use_v)
    return math.log(_LANDED_RIGHT if fits else 1.0 - _LANDED_RIGHT)


def _supply(windings: Sequence[Wound], evidence: Evidence) -> float:
    taps = [nominal(v) for w in windings if w.role == "primary" for v in w.volts[1:]]
    if evidence.supply_v is None or not taps:
        return 0.0
    halves = sum(w.role == "primary" for w in windings) > 1
    fits = nominal(evidence.supply_v) in (taps + [2.0 * v for v in taps] if halves else taps)
    return math.log(_SUPPLY_FITS if fits else 1.0 - _SUPPLY_FITS)


def _volts(windings: Sequence[Wound], evidence: Evidence) -> float:
    """Volts between leads are turns between leads: one number of volts for each rated volt must fit them all."""
    apart, read, loose = [], [], []
    for w in windings:
        for i, (a, _) in enumerate(w.leads):
            for j in range(i + 1, len(w.leads)):
                volts = evidence.volts.get(pair(a, w.leads[j][0]))
                if volts is not None and volts > 0.05:
                    apart.append(w.volts[j] - w.volts[i])
                    read.append(volts)
                    loose.append(0.05 if w.role == "secondary" else 0.012)
    if not read:
        return 0.0
    span = max((w.volts[-1] for w in windings if w.role == "primary"), default=240.0)
    turns, seen, rough = np.array(apart), np.array(read), np.array(loose)
    scale = seen / turns
    sigma = np.hypot(0.10, rough * seen)
    off = (seen - np.outer(scale, turns)) / sigma
    each = np.log((1.0 - _VOLT_SLIP) * np.exp(-0.5 * off**2) / (sigma * 2.507) + _VOLT_SLIP / (5.0 * (seen + 0.1)))
    log_scale = np.log(scale)
    prior = sum(
        share * _bell(log_scale, middle - (math.log(span) if whole else 0.0), width) for share, middle, width, whole in _SOURCES
    )
    total = each.sum(axis=1) + np.log(prior)
    return float(np.log(np.exp(total - total.max()).mean()) + total.max())


def _bell(x: np.ndarray, mean: float, spread: float) -> np.ndarray:
    return np.exp(-0.5 * ((x - mean) / spread) ** 2) / (spread * 2.507)
