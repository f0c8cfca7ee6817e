"""Why: which readings speak for a finding and which against, by what its worlds would have shown; and which reading to take again."""

from dataclasses import replace
from typing import Final, Literal

import numpy as np

from core.advice import Reason
from core.circuit.plant import Flags, Floats
from core.diagnosis.belief import Belief, Known, pins
from core.diagnosis.features import encode
from core.diagnosis.imagined import imagine, likeness, quantiles
from core.diagnosis.meter import OHMS, M
from core.diagnosis.network import believe
from core.diagnosis.next_test import BEHIND_OF
from core.diagnosis.worlds import NAMES, Counts, Pins
from core.readings import Job, Reading

SPAN: Final = (0.05, 0.95)
"""Nine worlds in ten read within this band."""
SLACK: Final = 0.03
"""A reading this far outside the band still counts as inside: the band comes from few worlds."""
CLEAR: Final = 0.9
"""Without the reading to be repeated the rest must agree at least this well."""
UPSTREAM: Final = (M["line_volts"], M["primary_volts"])
"""What a sound unit's other readings follow from; the rest of the job may be the fault itself."""
TORN: Final = 0.75
"""Over this the readings do not contradict each other enough to repeat one."""


def reasons(k: Known, finding: str) -> tuple[Reason, ...]:
    """
    How each reading bears on a finding.

    Args:
        k: What is known of the job.
        finding: The finding that is explained.

    Returns:
        One row a measure, what convinces most first.
    """
    value = k.evidence.value[0]
    latest = k.latest
    columns = np.array([M[name] for name in latest], dtype=np.intp)
    told = pins(k.job)
    imagined = imagine(told)
    mine = np.asarray(imagined.finding == NAMES.index(finding))
    each = likeness(imagined, value, columns)
    like = each.prod(axis=1, keepdims=True) / each
    sound = _sound(told, value, columns, finding)
    rows = []
    for number, (measure, reading) in enumerate(latest.items()):
        shown, others = imagined.shown[:, columns[number]], like[:, number]
        band = quantiles(shown[mine], others[mine], SPAN)
        near = _near(shown, value[M[measure]], measure)
        fit, rest = (float(others[some & near].sum() / others[some].sum()) for some in (mine, ~mine))
        low, high = sound[number]
        if measure == "secondary_amps":
            high = _plate_amps(k.job) or high
        reason = replace(_reason(reading, band, fit, rest), good_low=low, good_high=high)
        if measure == "load_ohms" and reason.speaks == "neither" and BEHIND_OF[NAMES.index(finding)]:
            reason = replace(reason, speaks="for")  # it says whether a short stands behind the opened part
        rows.append((abs(np.log((fit + 0.05) / (rest + 0.05))), reason))
    return tuple(reason for _, reason in sorted(rows, key=lambda row: -row[0]))


def _sound(told: Pins, value: Floats, columns: Counts, finding: str) -> list[tuple[float | None, float | None]]:
    """What a sound unit would read at each measure on the volts that were read before it."""
    # A sound unit is one on the tap of its supply.
    imagined = imagine(replace(told, tap_v=None) if finding == "wrong_tap" else told)
    sound = np.asarray(imagined.finding == NAMES.index("healthy"))
    upstream = [column for column in columns if column in UPSTREAM]
    each = likeness(imagined, value, np.array(upstream, dtype=np.intp))[sound]
    bands = []
    for column in columns:
        before = [number for number, other in enumerate(upstream) if other != column]
        low, high = quantiles(imagined.shown[sound, column], each[:, before].prod(axis=1), SPAN)
        bands.append((_finite(low), _finite(high)))
    return bands


def _plate_amps(job: Job) -> float | None:
    """What the nameplate allows in the secondary, as rated VA over rated volts [A]; None where no rating was told."""
    va = job.number("rated_va")
    return None if va is None else va / (job.number("rated_secondary_volts") or 24.0)


def _near(shown: Floats, value: float, measure: str) -> Flags:
    """Which worlds show about this."""
    if np.isinf(value):
        return np.isinf(shown)
    is_ohms = OHMS[M[measure]]
    with np.errstate(invalid="ignore"):
        return np.abs(shown - value) <= (0.35 if is_ohms else 0.06) * abs(value) + (0.4 if is_ohms else 1.0)


def _reason(reading: Reading, band: tuple[float, ...], fit: float, rest: float) -> Reason:
    low, high = band
    value = np.inf if reading.value == "open" else float(reading.value)
    is_inside = low * (1.0 - SLACK) <= value <= high * (1.0 + SLACK)
    against: Literal["against", "neither"] = "against" if rest > 2.0 * fit and fit < 0.1 and not is_inside else "neither"
    speaks: Literal["for", "against", "neither"] = "for" if fit > 1.25 * rest else against
    return Reason(reading=reading, low=_finite(low), high=_finite(high), speaks=speaks)


def _finite(value: float) -> float | None:
    return float(value) if np.isfinite(value) else None


def to_repeat(k: Known, belief: Belief) -> Reading | None:
    """
    The reading that stands against all others, where the readings contradict each other.

    Args:
        k: What is known of the job.
        belief: What is believed of it.

    Returns:
        The reading whose absence makes the rest agree, or None.
    """
    latest = k.latest
    if belief.confidence > TORN or len(latest) < 3:
        return None
    e = k.evidence
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
