"""Why: which readings speak for a finding and which against, by what its worlds would have shown; and which reading to take again."""

from dataclasses import replace
from typing import Final, Literal

import numpy as np

from core.advice import Reason
from core.circuit.plant import Floats
from core.diagnosis.belief import Belief, evidence, pins, usable
from core.diagnosis.features import encode
from core.diagnosis.imagined import Imagined, column, imagine, likeness, quantiles
from core.diagnosis.meter import OHMS, M
from core.diagnosis.network import believe
from core.diagnosis.next_test import BEHIND_OF
from core.diagnosis.worlds import NAMES
from core.readings import Job, Reading

SPAN: Final = (0.05, 0.95)
"""Nine worlds in ten read within this band."""
SLACK: Final = 0.03
"""A reading this far outside the band still counts as inside: the band comes from few worlds."""
CLEAR: Final = 0.9
"""Without the reading to be repeated the rest must agree at least this well."""
UPSTREAM: Final = ("line_volts", "primary_volts")
"""What a sound unit's other readings follow from; the rest of the job may be the fault itself."""
TORN: Final = 0.75
"""Over this the readings do not contradict each other enough to repeat one."""


def reasons(job: Job, finding: str) -> tuple[Reason, ...]:
    """
    How each reading bears on a finding.

    Args:
        job: The job so far.
        finding: The finding that is explained.

    Returns:
        One row a measure, what convinces most first.
    """
    imagined = imagine(pins(job))
    # A sound unit is one on the tap of its supply.
    sound = imagine(replace(pins(job), tap_v=None)) if finding == "wrong_tap" else imagined
    value = evidence(job).value[0]
    latest = {r.measure: r for r in usable(job)}
    rows = []
    mine = np.asarray(imagined.worlds.finding == NAMES.index(finding))
    for measure, reading in latest.items():
        others = value.copy()
        others[M[measure]] = np.nan
        like = likeness(imagined, others)
        shown = column(imagined, measure)
        band = quantiles(shown, like * mine, SPAN)
        fit, rest = (
            _share(shown, like * mine, value[M[measure]], measure),
            _share(shown, like * ~mine, value[M[measure]], measure),
        )
        low, high = _good(sound, others, measure)
        if measure == "secondary_amps":
            high = _plate_amps(job) or high
        reason = replace(_reason(reading, band, fit, rest), good_low=low, good_high=high)
        if measure == "load_ohms" and reason.speaks == "neither" and BEHIND_OF[NAMES.index(finding)]:
            reason = replace(reason, speaks="for")  # it says whether a short stands behind the opened part
        rows.append((abs(np.log((fit + 0.05) / (rest + 0.05))), reason))
    return tuple(reason for _, reason in sorted(rows, key=lambda row: -row[0]))


def _good(imagined: Imagined, others: Floats, measure: str) -> tuple[float | None, float | None]:
    """What a sound unit would read there on the volts that were read before it."""
    fed = np.full_like(others, np.nan)
    for name in UPSTREAM:
        fed[M[name]] = others[M[name]]
    sound = np.asarray(imagined.worlds.finding == NAMES.index("healthy"))
    low, high = quantiles(column(imagined, measure), likeness(imagined, fed) * sound, SPAN)
    return _finite(low), _finite(high)


def _plate_amps(job: Job) -> float | None:
    """What the nameplate allows in the secondary, as rated VA over rated volts [A]; None where no rating was told."""
    va = job.number("rated_va")
    return None if va is None else va / (job.number("rated_secondary_volts") or 24.0)


def _share(shown: Floats, weight: Floats, value: float, measure: str) -> float:
    """Share of the worlds that show about this."""
    if weight.sum() <= 0.0:
        return 0.0
    if np.isinf(value):
        near = np.isinf(shown)
    else:
        reach = 0.35 if OHMS[M[measure]] else 0.06
        with np.errstate(invalid="ignore"):
            near = np.abs(shown - value) <= reach * abs(value) + (0.4 if OHMS[M[measure]] else 1.0)
    return float(weight[near].sum() / weight.sum())


def _reason(reading: Reading, band: tuple[float, ...], fit: float, rest: float) -> Reason:
    low, high = band
    value = np.inf if reading.value == "open" else float(reading.value)
    is_inside = low * (1.0 - SLACK) <= value <= high * (1.0 + SLACK)
    against: Literal["against", "neither"] = "against" if rest > 2.0 * fit and fit < 0.1 and not is_inside else "neither"
    speaks: Literal["for", "against", "neither"] = "for" if fit > 1.25 * rest else against
    return Reason(reading=reading, low=_finite(low), high=_finite(high), speaks=speaks)


def _finite(value: float) -> float | None:
    return float(value) if np.isfinite(value) else None


def to_repeat(job: Job, belief: Belief) -> Reading | None:
    """
    The reading that stands against all others, where the readings contradict each other.

    Args:
        job: The job so far.
        belief: What is believed of it.

    Returns:
        The reading whose absence makes the rest agree, or None.
    """
    latest = {r.measure: r for r in usable(job)}
    if belief.confidence > TORN or len(latest) < 3:
        return None
    e = evidence(job)
    n = len(latest)
    value = np.repeat(e.value, n, axis=0)
    for row, measure in enumerate(latest):
        value[row, M[measure]] = np.nan
    flat = {
        name: np.repeat(getattr(e, name), n, axis=0)
        for name in ("confirmed", "connected", "low_impedance", "unfused", "facts", "symptoms")
    }
    findings, _ = believe(encode(replace(e, value=value, **flat)))
    sure = findings.max(axis=1)
    row = int(sure.argmax())
    measure = list(latest)[row]
    if sure[row] < CLEAR or e.confirmed[0, M[measure]]:
        return None
    return latest[measure]
