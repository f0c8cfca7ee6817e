"""
The next test by its worth: how much of the loss of the decision it is expected to take away, against its minutes, its risk and the way to it.

A worth fitted on whole calls leaves a few steps. Of the worlds that agree with the job some stand for all; each shows what it would show at each of
those steps, alone or in a pair that tells only together (amps in and amps out), and the belief after it says what would still be at stake.
"""

from dataclasses import dataclass, replace
from typing import Final

import numpy as np

from core.cautions import may_ask
from core.circuit.plant import Flags, Floats
from core.diagnosis.belief import FUSE, Belief, alike, evidence, pins, times_read, usable
from core.diagnosis.features import Evidence, T, encode
from core.diagnosis.imagined import Imagined, again, imagine, picked, weights
from core.diagnosis.meter import M
from core.diagnosis.network import believe, fitted, forward
from core.diagnosis.steps import STEPS, Step, price
from core.diagnosis.worlds import BAD, NAMES, SUPPLIES, Counts
from core.measures import MEASURES
from core.readings import Job

CONDEMN: Final = 2.4
"""What condemning a good transformer costs, in units of looking for the wrong thing once: a part, a trip, and the fault is still there."""
ACQUIT: Final = 2.2
"""What passing a bad one costs: a second trip, and what it may burn till then."""
DOUBT: Final = 0.7
"""What leaving it open costs."""
BEHIND: Final = 0.7
"""What a short that was not looked for costs: the new part."""
BEHIND_OF: Final = np.array(
    [
        name in {"primary_open", "secondary_open", "protection_open", "primary_shorted_turns", "secondary_shorted_turns"}
        for name in NAMES
    ]
)
"""Findings that a short may have caused."""


LOOKS: Final = 24
"""Worlds that stand for all."""
CANDIDATES: Final = 10
"""Steps that the fitted worth leaves for a closer look."""
NATS: Final = 0.06
"""Worth of one nat of doubt less, where no single reading decides yet."""
_FIRST: Final = {step.measure: i for i, step in enumerate(STEPS) if step.measure is not None and not step.again}
TOGETHER: Final = tuple(
    (_FIRST[one], _FIRST[other])
    for one, other in (
        ("primary_amps", "secondary_amps"),
        ("secondary_amps", "primary_amps"),
        ("primary_volts", "secondary_volts_lifted"),
        ("secondary_volts_lifted", "primary_volts"),
        ("secondary_volts_lifted", "secondary_amps"),
        ("primary_ohms", "secondary_ohms"),
    )
)
"""Readings that tell more together than each by itself."""


NEAR_ENOUGH: Final = 0.05
BURNT: Final = frozenset({"burnt", "smoke", "trips_breaker"})
LIVE_ON_BURNT: Final = 0.06
"""What it costs besides to energise what smells burnt or trips, while its windings are not read."""
IS_LIVE: Final = np.array([step.measure is not None and MEASURES[step.measure].live for step in STEPS])


@dataclass(frozen=True, slots=True)
class Worth:
    """One possible step."""

    measure: str
    value: float
    """Loss that it is expected to take away, less its cost."""
    fact: str | None = None


def loss(findings: Floats, short: Floats) -> Floats:
    """
    What is still at stake.

    Args:
        findings: Rows of probabilities.
        short: Probability of a short in the control circuit.

    Returns:
        Expected loss of the best decision on the finding, on the transformer and on what may stand behind it.
    """
    bad = findings[:, BAD].sum(axis=1)
    best = findings.argmax(axis=1)
    part = np.minimum(np.minimum(CONDEMN * (1.0 - bad), ACQUIT * bad), DOUBT)
    behind = np.where(BEHIND_OF[best], np.minimum(short, 1.0 - short) * BEHIND, 0.0)
    doubt = -(findings * np.log(findings + 1e-9)).sum(axis=1)
    return np.asarray(1.0 - findings.max(axis=1) + part + behind + NATS * doubt, dtype=np.float64)


def ranked(job: Job, belief: Belief) -> list[Worth]:
    """
    The steps that are worth a look, the most worth first.

    Args:
        job: The job so far.
        belief: What is believed of it.

    Returns:
        Measures, and facts that can be asked for.
    """
    e = evidence(job)
    can = possible(job)
    taken = usable(job)
    prices = price(np.array([M[taken[-1].measure] if taken else -1]), np.array([times_read(job).total()]))[0]
    if job.symptoms() & BURNT and not {r.measure for r in taken} & {"primary_ohms", "secondary_ohms"}:
        prices = prices + LIVE_ON_BURNT * IS_LIVE
    rough = np.where(can, forward(encode(e), fitted("worth"))[0] - prices, -np.inf)
    singles = [int(i) for i in np.argsort(-rough)[:CANDIDATES] if can[i]]
    pairs = [pair for pair in TOGETHER if can[pair[0]] and can[pair[1]]]
    ways: list[tuple[int, ...]] = [*((i,) for i in singles), *pairs]
    if not ways:
        return []
    gain = _gains(job, belief, e, ways)
    # A pair is as dear as both; its first step is asked now.
    best: dict[int, float] = {}
    for way, taken_away in zip(ways, gain, strict=True):
        worth = float(taken_away) - float(prices[list(way)].sum())
        best[way[0]] = max(best.get(way[0], -np.inf), worth)
    return sorted((Worth(STEPS[i].measure or "", worth, STEPS[i].fact) for i, worth in best.items()), key=lambda w: -w.value)


def _gains(job: Job, belief: Belief, e: Evidence, ways: list[tuple[int, ...]]) -> Floats:
    """What each way is expected to take from the loss."""
    imagined = imagine(pins(job))
    chosen = picked(weights(imagined, belief, e.value[0]), LOOKS)
    rows, kept = _after(e, imagined, chosen, ways)
    findings, short = believe(encode(rows))
    now = loss(belief.findings[None, :], np.array([belief.short]))[0]
    left = loss(findings.astype(np.float64), short.astype(np.float64)).reshape(len(ways), LOOKS)
    return np.asarray(np.where(kept, now - left, 0.0).mean(axis=1), dtype=np.float64)


def _after(e: Evidence, imagined: Imagined, chosen: Counts, ways: list[tuple[int, ...]]) -> tuple[Evidence, Flags]:
    """Evidence after each way in each chosen world, and where the world has an answer."""
    n = len(ways) * LOOKS
    rows = replace(e, **{name: np.repeat(getattr(e, name), n, axis=0) for name in Evidence.__dataclass_fields__})
    kept = np.ones((len(ways), LOOKS), dtype=np.bool_)
    for number, way in enumerate(ways):
        at = slice(number * LOOKS, (number + 1) * LOOKS)
        for step in (STEPS[i] for i in way):
            if step.measure is None:
                answer = imagined.facts[chosen, T[str(step.fact)]]
                rows.facts[at, T[str(step.fact)]] = answer
            else:
                answer = _read(e, imagined, chosen, step, rows, at)
                rows.value[at, M[step.measure]] = answer
                rows.connected[at, M[step.measure]] = False
            if step.measure in FUSE:
                rows.unfused[at, 0] = np.maximum(rows.unfused[at, 0], np.isnan(answer))
            else:
                kept[number] &= ~np.isnan(answer)
    return rows, kept


def _read(e: Evidence, imagined: Imagined, chosen: Counts, step: Step, rows: Evidence, at: slice) -> Floats:
    column = M[str(step.measure)]
    if not step.again:
        return np.asarray(imagined.shown[chosen, column], dtype=np.float64)
    before = float(e.value[0, column])
    answer = again(imagined, str(step.measure), before, chosen)
    rows.confirmed[at, column] = [alike(before, float(v)) for v in answer]
    return answer


def reads_as_a_supply(job: Job) -> bool:
    """True where a line reading is so near to one voltage of the trade that nobody need be asked which it is."""
    read = [v for name in ("line_volts", "primary_volts") if (v := job.figure(name)) is not None]
    return any(min(abs(value / volts - 1.0) for volts in SUPPLIES) < NEAR_ENOUGH for value in read)


def possible(job: Job) -> Flags:
    """
    Which steps can be asked for.

    Args:
        job: The job so far.

    Returns:
        One flag a step of `STEPS`.
    """
    e = evidence(job)
    times = times_read(job)

    def can(step: Step) -> bool:
        if step.measure is None:
            is_read = step.fact == "supply_volts" and reads_as_a_supply(job)
            return job.told(str(step.fact)) is None and (step.fact, None) not in job.declined and not is_read
        if (step.measure, None) in job.declined or not may_ask(step.measure, job):
            return False
        if step.again:
            return times[step.measure] == 1 and not e.confirmed[0, M[step.measure]]
        return times[step.measure] == 0 and not (step.measure in FUSE and e.unfused[0, 0] > 0.0)

    return np.array([can(step) for step in STEPS])
