"""How big an unmarked unit is, from its windings, its open volts and its core: a range with its confidence."""

import math
from collections.abc import Mapping, Sequence
from typing import Final

from core.advice import Answer, NextTest
from core.circuit.windings import RATINGS_VA, estimate_rating
from core.leads.belief import Hypothesis, believe
from core.leads.evidence import Evidence, gather
from core.leads.supply import supply_of
from core.measures import MEASURES
from core.readings import OPEN, Job
from core.said import Said, say
from core.standards.source import COMMON_PRACTICE, Source

CORE_SOURCE: Final[Source] = COMMON_PRACTICE
CORE_FACTOR: Final = 5.58
"""VA is about the square of 5.58 times the core area in square inches, at 60 Hz. Common practice, no source. [1/in2]"""
CORE_SPREAD: Final = 0.35
"""Standard deviation of the natural logarithm of that. Common practice, no source."""
TONGUE_SHARE: Final = 1.0 / 3.0
"""Of the width of the usual scrapless stampings: their middle leg."""
_ENOUGH: Final = 0.8
_LIVE_V: Final = 90.0


def estimate_va(job: Job) -> Answer:
    """
    How big an unmarked unit is.

    Args:
        job: What is known of the job.

    Returns:
        A range of ratings with its probability, and the reading that would narrow it most.
    """
    evidence = gather(job)
    primary, tap_v, secondary = _windings(job, evidence)
    open_v = _open_volts(job, tap_v)
    core = _core_area(job)
    if primary is None and secondary is None and open_v is None and core is None:
        return Answer(
            lines=(say("Size it by its windings: send primary and secondary ohms, leads free"),),
            next_test=_ask("secondary_ohms"),
        )
    odds = estimate_rating(primary, secondary, open_v, tap_v, evidence.secondary_v)
    if core is not None:
        odds = _with_core(odds, core)
    low, high, confidence = likely_range(odds)
    return Answer(lines=tuple(_lines(low, high, confidence, tap_v)), next_test=_next(primary, secondary, open_v, tap_v))


def likely_range(odds: Mapping[float, float]) -> tuple[float, float, float]:
    """
    The shortest run of sizes that holds four fifths of the odds.

    Args:
        odds: Probability of each size.

    Returns:
        Lowest and highest size and the probability that it is one of the run. [VA]

    >>> likely_range({20.0: 0.05, 40.0: 0.7, 50.0: 0.2, 75.0: 0.05})
    (40.0, 50.0, 0.9)
    """
    sizes = sorted(odds)
    runs = [(j - i, -sum(odds[s] for s in sizes[i : j + 1]), i, j) for i in range(len(sizes)) for j in range(i, len(sizes))]
    _, total, i, j = min(run for run in runs if -run[1] >= min(_ENOUGH, 1.0 - 1e-9))
    return sizes[i], sizes[j], round(-total, 6)


def _lines(low: float, high: float, confidence: float, tap_v: float | None) -> Sequence[Said]:
    percent = min(95.0, 100.0 * confidence)
    head = (
        say("Probably {low:.0f} VA, {percent:.0f} % sure", low=low, percent=percent)
        if low == high
        else say("Probably {low:.0f} to {high:.0f} VA, {percent:.0f} % sure", low=low, high=high, percent=percent)
    )
    lines = [head, say("Don't load it above {low:.0f} VA until a label proves it", low=low)]
    if tap_v is None:
        lines.append(say("Say which primary volts the ohms belong to: that narrows it"))
    return lines


def _windings(job: Job, evidence: Evidence) -> tuple[float | None, float | None, float | None]:
    """Primary ohms with the tap that they belong to, and secondary ohms."""
    best = _best(evidence)
    tap_v = job.number("tap_volts") or (evidence.taps[0] if len(evidence.taps) == 1 else None)
    read = job.last("primary_ohms")
    primary = float(read.value) if read is not None and read.value != OPEN else None
    if primary is not None and tap_v is None:
        supply = supply_of(job)
        tap_v = None if supply is None else supply.volts
    low = evidence.secondary_ohm
    if best is not None:
        for w in best.windings:
            if w.role == "primary" and not w.open_at and (read is None or read.leads is not None):
                # The innermost tap carries the whole rating through its own wire.
                primary, tap_v = w.sections_ohm[0] * sum(o.role == "primary" for o in best.windings) ** -1, w.volts[1]
            elif w.role == "secondary" and not w.open_at:
                low = sum(w.sections_ohm)
    return primary, tap_v, low


def _best(evidence: Evidence) -> Hypothesis | None:
    maps = believe(evidence).maps if evidence.leads else ()
    return maps[0][0] if maps else None


def _open_volts(job: Job, tap_v: float | None) -> float | None:
    """Secondary volts with nothing connected, brought to the rated primary volts where the supply was read."""
    read = job.last("secondary_volts_lifted")
    if read is None or read.value == OPEN or float(read.value) < 5.0:
        return None
    supply = supply_of(job)
    if supply is None or not supply.measured or tap_v is None or supply.volts < _LIVE_V:
        return float(read.value)
    return float(read.value) * tap_v / supply.volts


def _core_area(job: Job) -> float | None:
    """Area of the middle leg from the inches told: tongue and stack, or width, height and stack of the whole [in2]."""
    told = job.told("core_inches")
    if told is None or told.value is None or isinstance(told.value, str):
        return None
    inches = sorted(told.value, reverse=True) if isinstance(told.value, tuple | list) else [float(told.value)]
    if len(inches) >= 3:
        return TONGUE_SHARE * inches[0] * inches[-1]
    return inches[0] * inches[1] if len(inches) == 2 else (TONGUE_SHARE * inches[0]) ** 2


def _with_core(odds: Mapping[float, float], area_in2: float) -> dict[float, float]:
    va = (CORE_FACTOR * area_in2) ** 2
    weight = {size: p * math.exp(-0.5 * (math.log(size / va) / CORE_SPREAD) ** 2) + 1e-12 for size, p in odds.items()}
    total = sum(weight.values())
    return {size: weight[size] / total for size in RATINGS_VA}


def _next(primary: float | None, secondary: float | None, open_v: float | None, tap_v: float | None) -> NextTest | None:
    if secondary is None:
        return _ask("secondary_ohms")
    if primary is None:
        return _ask("primary_ohms")
    if tap_v is None:
        return NextTest(
            measure="primary_ohms", instruction=say("Send the primary volts of the tap that you read"), fact="tap_volts"
        )
    return _ask("secondary_volts_lifted") if open_v is None else None


def _ask(measure: str) -> NextTest:
    return NextTest(measure=measure, instruction=MEASURES[measure].how)
