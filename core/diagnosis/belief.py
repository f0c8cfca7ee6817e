"""What a job's readings and facts make one believe."""

from collections import Counter
from dataclasses import dataclass
from typing import Final

import numpy as np

from core.circuit.plant import Floats
from core.diagnosis.features import FACTS, Evidence, Inputs, T, encode
from core.diagnosis.from_leads import of_windings
from core.diagnosis.meter import SEEN, M
from core.diagnosis.network import believe
from core.diagnosis.worlds import BAD, NAMES, Pins
from core.readings import OPEN, SYMPTOMS, Job, Reading, Value
from core.repairs import still_true

MOST: Final = 1e10
"""No reading counts for more: it is a slip."""
LOAD_STEP_VA: Final = 5.0
"""Worlds are drawn for loads so far apart: nobody knows his load closer."""
FUSE: Final = ("fuse_volts", "fuse_ohms")


@dataclass(frozen=True, slots=True)
class Belief:
    """Probabilities after all readings."""

    findings: Floats
    """One a finding of `NAMES`."""
    short: float
    """Of a short in the control circuit, be it the finding or behind it."""

    @property
    def best(self) -> str:
        """The likeliest finding."""
        return NAMES[int(self.findings.argmax())]

    @property
    def confidence(self) -> float:
        """Its probability."""
        return float(self.findings.max())

    @property
    def bad(self) -> float:
        """Probability that the transformer is bad."""
        return float(self.findings[BAD].sum())

    def of(self, finding: str) -> float:
        """Probability of one finding."""
        return float(self.findings[NAMES.index(finding)])


@dataclass(frozen=True, slots=True, eq=False)
class Known:
    """A job as the engine takes it, worked out once a reply."""

    job: Job
    readings: tuple[Reading, ...]
    """The readings that a belief can use."""
    times: Counter[str]
    """How often each measure was read."""
    evidence: Evidence
    inputs: Inputs
    """What both networks are given."""

    @property
    def latest(self) -> dict[str, Reading]:
        """The last reading of each measure."""
        return {r.measure: r for r in self.readings}


def known(job: Job) -> Known:
    """
    What is known of a job.

    Args:
        job: The job so far.
    """
    readings = usable(job)
    e = evidence(job, readings)
    return Known(job, readings, times_read(readings), e, encode(e))


def usable(job: Job) -> tuple[Reading, ...]:
    """
    The readings that a belief can use: those that can still be true, of leads those whose winding is known.

    Ohms of a part that is told to be still connected are those of what hangs on it; only an open tells.
    """
    told = (*of_windings(job), *job.readings)
    return tuple(r for r in still_true(told) if r.measure in M and not (r.not_isolated and r.value != OPEN))


def evidence(job: Job, readings: tuple[Reading, ...]) -> Evidence:
    """
    What was told, as arrays of one row. Of a measure taken twice the last counts, and whether both agree.

    Args:
        job: The job so far.
        readings: Those of it that can be used.

    Returns:
        One row.
    """
    value = np.full((1, len(SEEN)), np.nan)
    flags = np.zeros((3, 1, len(SEEN)), dtype=np.bool_)
    for reading in readings:
        at = M[reading.measure]
        now = _bounded(reading.value)
        before = value[0, at] if reading.before is None else _bounded(reading.before)
        flags[0, 0, at] = alike(before, now)
        value[0, at] = now
        flags[1, 0, at] = reading.not_isolated
        flags[2, 0, at] = reading.low_impedance
    symptoms = np.array([[1.0 if s in job.symptoms() else 0.0 for s in SYMPTOMS]])
    unfused = np.array([[1.0 if any((name, None) in job.declined for name in FUSE) else 0.0]])
    return Evidence(
        value=value,
        confirmed=flags[0],
        connected=flags[1],
        low_impedance=flags[2],
        unfused=unfused,
        facts=_facts(job),
        symptoms=symptoms,
    )


def _bounded(value: Value) -> float:
    return float(np.inf) if value == "open" else min(max(float(value), 0.0), MOST)


def times_read(readings: tuple[Reading, ...]) -> Counter[str]:
    """How often each measure was read."""
    return Counter(name for r in readings for name in (r.measure, *((r.measure,) if r.before is not None else ())))


def alike(before: float, now: float) -> bool:
    """Whether two readings of one place agree within what a meter wanders."""
    if np.isnan(before):
        return False
    return bool(before == now or (np.isfinite(before) and np.isfinite(now) and abs(np.log((now + 0.5) / (before + 0.5))) < 0.1))


def load_va(job: Job) -> float | None:
    """All told loads together, amps taken at 24 V; None where none was told [VA]."""
    total = 0.0
    for fact in job.every("load"):
        if isinstance(fact.value, int | float):
            total += fact.value * (fact.count or 1) * (24.0 if fact.unit == "A" else 1.0)
    return total or None


def _facts(job: Job) -> Floats:
    facts = np.full((1, len(FACTS)), np.nan)
    for name, at in T.items():
        number = load_va(job) if name == "load_va" else job.number(name)
        if number is not None and number > 0.0:
            facts[0, at] = number
    return facts


def pins(job: Job) -> Pins:
    """What narrows the worlds that are drawn for this job."""
    load = load_va(job)
    return Pins(
        supply_v=_positive(job.number("supply_volts")),
        tap_v=_positive(job.number("tap_volts")),
        rated_va=_positive(job.number("rated_va")),
        rated_secondary_v=_positive(job.number("rated_secondary_volts")),
        load_va=None if load is None else max(LOAD_STEP_VA, LOAD_STEP_VA * round(load / LOAD_STEP_VA)),
    )


def _positive(number: float | None) -> float | None:
    return number if number is not None and 1.0 <= number <= 10_000.0 else None


def believed(k: Known) -> Belief:
    """
    The belief of a job.

    Args:
        k: What is known of it.

    Returns:
        Probabilities.
    """
    findings, short = believe(k.inputs)
    return Belief(findings[0].astype(np.float64), float(short[0]))
