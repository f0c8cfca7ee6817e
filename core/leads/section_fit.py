"""
Sections of a winding from ohms between its leads, many arrangements at once.

Ohms between two leads are the sum of the sections between them plus what the test leads add. Each arrangement brings a lognormal prior of
its sections; what is wanted is how well it explains the readings (its evidence) and what its sections then are. The integral is Laplace's:
a few Gauss-Newton steps in the logarithms of the sections, then the determinant.
"""

from dataclasses import dataclass, replace
from typing import Final

import numpy as np
from numpy.typing import NDArray

from core.leads.meter import TEST_LEADS_OHM

Floats = NDArray[np.float64]
Indices = NDArray[np.intp]
STEPS: Final = 6
LONGEST_STEP: Final = 1.2
SHORT_STEP: Final = 1e-3
_SIEVE_AFTER: Final = 1
"""The step after which what can't catch up any more is left behind."""
_SIEVE_FROM: Final = 24
_BEHIND: Final = 40.0
"""Natural logarithm of the odds from which on it can't."""


@dataclass(frozen=True, slots=True)
class Prior:
    """What sections may be before any reading: one row per kind of winding, the ohms of the test leads last."""

    mean: Floats
    precision: Floats
    log_volume: Floats
    """Natural logarithm of the determinant of the precision."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Fit:
    """One row per arrangement and kind that could catch up."""

    line: Indices
    """Which arrangement."""
    kind: Indices
    """Which prior."""
    evidence: Floats
    """Natural logarithm of the probability density of the readings that were kept."""
    sections_ohm: Floats
    test_leads_ohm: Floats
    precision: Floats
    """Inverse of the covariance of the logarithms of the sections and of the ohms of the test leads, in this order."""


@dataclass(frozen=True, slots=True)
class _Rows:
    """
    Arrangements, each under each prior, on their way to the best sections.

    What an arrangement misses is held as a quadratic form in sections and test leads, so a step does not grow with the readings.
    """

    line: Indices
    kind: Indices
    form: Floats
    right: Floats
    rest: Floats
    centre: Floats
    precision: Floats
    state: Floats

    def take(self, near: Indices) -> "_Rows":
        """Only those."""
        return _Rows(*(getattr(self, name)[near] for name in _Rows.__slots__))

    def look(self) -> tuple[Floats, Floats, Floats]:
        """Twice the misfit, its downward slope and its curvature at the state."""
        value = self.state.copy()
        value[:, :-1] = np.exp(value[:, :-1])
        scale = value.copy()
        scale[:, -1] = 1.0
        pushed = np.matmul(self.form, value[:, :, None])[..., 0]
        off = self.centre - self.state
        pull = np.matmul(self.precision, off[:, :, None])[..., 0]
        missed = self.rest + ((pushed - 2.0 * self.right) * value).sum(axis=1) + (pull * off).sum(axis=1)
        curved = self.form * scale[:, :, None] * scale[:, None, :] + self.precision
        return missed, scale * (self.right - pushed) + pull, curved


def prior_of(mean: Floats, cov: Floats) -> Prior:
    """
    A prior of sections, with what is known of test leads.

    Args:
        mean: kinds x sections: mean of the natural logarithm of the ohms.
        cov: kinds x sections x sections: its covariance.
    """
    kinds, sections = mean.shape
    precision = np.zeros((kinds, sections + 1, sections + 1))
    precision[:, :sections, :sections] = np.linalg.inv(cov)
    precision[:, sections, sections] = TEST_LEADS_OHM[1] ** -2
    centre = np.concatenate([mean, np.full((kinds, 1), TEST_LEADS_OHM[0])], axis=1)
    return Prior(centre, precision, np.linalg.slogdet(precision)[1])


def fit(spans: Floats, ohm: Floats, sigma: Floats, kept: Floats, prior: Prior) -> Fit:
    """
    Fit the sections of each arrangement under each prior.

    Args:
        spans: arrangements x pairs x sections: 1 where a section lies between the pair.
        ohm: pairs: as read. [ohm]
        sigma: pairs: spread of each. [ohm]
        kept: arrangements x pairs: 0 for a reading taken as a slip.
        prior: Of the sections.

    Returns:
        Evidence and sections.
    """
    rows = _begin(spans, ohm, kept / sigma**2, prior)
    for number in range(STEPS):
        missed, slope, curved = rows.look()
        step = np.linalg.solve(curved, slope[:, :, None])[..., 0]
        if number == _SIEVE_AFTER and len(missed) > _SIEVE_FROM:
            hope = 0.5 * ((slope * step).sum(axis=1) - missed)
            near = np.flatnonzero(hope > hope.max() - _BEHIND)
            rows, step, missed, curved = rows.take(near), step[near], missed[near], curved[near]
        if np.abs(step).max(initial=0.0) < SHORT_STEP:
            break
        rows = replace(rows, state=rows.state + np.clip(step, -LONGEST_STEP, LONGEST_STEP))
    volume = prior.log_volume[rows.kind] - np.linalg.slogdet(curved)[1]
    density = -(kept * np.log(sigma * np.sqrt(2.0 * np.pi))).sum(axis=1)
    return Fit(
        line=rows.line,
        kind=rows.kind,
        evidence=0.5 * (volume - missed) + density[rows.line],
        sections_ohm=np.exp(rows.state[:, :-1]),
        test_leads_ohm=rows.state[:, -1],
        precision=curved,
    )


def fit_lone(ohm: float, sigma: float, prior: Prior, *, slip: bool) -> Fit:
    """
    Fit the one section of a winding with two leads and one reading, as `fit` does.

    Args:
        ohm: As read. [ohm]
        sigma: Its spread. [ohm]
        prior: Of the section.
        slip: Also, as line 1, with the reading taken as a slip.
    """
    mean, var = prior.mean[:, 0], 1.0 / prior.precision[:, 0, 0]
    lead, lead_var = TEST_LEADS_OHM[0], TEST_LEADS_OHM[1] ** 2
    noise = sigma**2 + lead_var
    state = np.full(len(mean), np.log(max(ohm - lead, 0.02)))
    for _ in range(2 * STEPS):
        part = np.exp(state)
        missed = ohm - lead - part
        curved = part**2 / noise + 1.0 / var
        step = (part * missed / noise + (mean - state) / var) / curved
        if np.abs(step).max() < SHORT_STEP:
            break
        state = state + np.clip(step, -LONGEST_STEP, LONGEST_STEP)
    evidence = -0.5 * (missed**2 / noise + (mean - state) ** 2 / var + np.log(2.0 * np.pi * noise * var * curved))
    slope = np.stack([part, np.ones_like(part)], axis=1) / sigma
    kept = Fit(
        line=np.zeros(len(mean), dtype=np.intp),
        kind=np.arange(len(mean)),
        evidence=evidence,
        sections_ohm=part[:, None],
        test_leads_ohm=lead + lead_var / noise * missed,
        precision=prior.precision + slope[:, :, None] * slope[:, None, :],
    )
    return _with_prior(kept, prior) if slip else kept


def _with_prior(kept: Fit, prior: Prior) -> Fit:
    """And a second line on which nothing was read: the prior itself."""
    return Fit(
        line=np.concatenate([kept.line, np.ones_like(kept.line)]),
        kind=np.concatenate([kept.kind, kept.kind]),
        evidence=np.concatenate([kept.evidence, np.zeros(len(kept.kind))]),
        sections_ohm=np.concatenate([kept.sections_ohm, np.exp(prior.mean[:, :-1])]),
        test_leads_ohm=np.concatenate([kept.test_leads_ohm, prior.mean[:, -1]]),
        precision=np.concatenate([kept.precision, prior.precision]),
    )


def _begin(spans: Floats, ohm: Floats, weight: Floats, prior: Prior) -> _Rows:
    """Every arrangement under every prior, from sections by least squares where these are positive, else from the prior's."""
    lines, pairs, sections = spans.shape
    reach = np.concatenate([spans, np.ones((lines, pairs, 1))], axis=2)
    weighted = reach * weight[:, :, None]
    form = np.matmul(weighted.transpose(0, 2, 1), reach)
    right = np.matmul(weighted.transpose(0, 2, 1), ohm[:, None])[..., 0]
    rest = (weight * ohm**2).sum(axis=1)
    normal = form[:, :sections, :sections] + 1e-6 * np.eye(sections)
    free = right[:, :sections] - TEST_LEADS_OHM[0] * form[:, :sections, sections]
    linear = np.linalg.solve(normal, free[:, :, None])[..., 0]
    least = 0.005 * max(float(ohm.max(initial=1.0)), 0.1)
    line, kind = np.divmod(np.arange(lines * len(prior.mean)), len(prior.mean))
    known, seen, centre = (linear > least)[line], np.log(np.maximum(linear, least))[line], prior.mean[kind]
    shift = np.where(known, seen - centre[:, :-1], 0.0).sum(axis=1) / np.maximum(known.sum(axis=1), 1)
    start = np.where(known, seen, centre[:, :-1] + shift[:, None])
    state = np.concatenate([start, centre[:, -1:]], axis=1)
    return _Rows(line, kind, form[line], right[line], rest[line], centre, prior.precision[kind], state)


def line_evidence(spans: Floats, ohm: Floats, sigma: Floats, kept: Floats) -> Floats:
    """
    How well arrangements put the leads on a line, whatever the windings: a cheap sieve before `fit`.

    Args:
        spans: arrangements x pairs x sections.
        ohm: pairs: as read. [ohm]
        sigma: pairs: spread of each. [ohm]
        kept: arrangements x pairs: 0 for a reading taken as a slip.

    Returns:
        Natural logarithm of the evidence under a broad prior of sections, negative ones punished.
    """
    sections = spans.shape[2]
    broad = max(float(ohm.max(initial=1.0)), 0.5) / max(sections, 1)
    noise = sigma**2 + TEST_LEADS_OHM[1] ** 2
    weight = kept / noise
    weighted = spans * weight[:, :, None]
    hessian = np.matmul(weighted.transpose(0, 2, 1), spans) + np.eye(sections) / broad**2
    right = np.matmul(weighted.transpose(0, 2, 1), (ohm - TEST_LEADS_OHM[0])[None, :, None])[..., 0] + 1.0 / broad
    part = np.linalg.solve(hessian, right[:, :, None])[..., 0]
    residual = ohm - TEST_LEADS_OHM[0] - np.matmul(spans, part[:, :, None])[..., 0]
    missed = (weight * residual**2).sum(axis=1) + ((part - broad) ** 2).sum(axis=1) / broad**2
    negative = (np.minimum(part, 0.0) ** 2).sum(axis=1) / (0.15 + 0.01 * broad) ** 2
    volume = np.linalg.slogdet(hessian)[1] + 2.0 * sections * np.log(broad)
    density: Floats = -0.5 * (kept * np.log(noise * 2.0 * np.pi)).sum(axis=1)
    evidence: Floats = density - 0.5 * (missed + negative + volume)
    return evidence
