"""
Sections of a winding from ohms between its leads, many arrangements at once.

Ohms between two leads are the sum of the sections between them plus what the test leads add. Each arrangement brings a lognormal prior of
its sections; what is wanted is how well it explains the readings (its evidence) and what its sections then are. The integral is Laplace's:
a few Gauss-Newton steps in the logarithms of the sections, then the determinant.
"""

from dataclasses import dataclass
from typing import Final

import numpy as np
from numpy.typing import NDArray

from core.leads.meter import TEST_LEADS_OHM

Floats = NDArray[np.float64]
STEPS: Final = 6
LONGEST_STEP: Final = 1.2


@dataclass(frozen=True, slots=True, kw_only=True)
class Fit:
    """One row per arrangement."""

    evidence: Floats
    """Natural logarithm of the probability density of the readings that were kept."""
    sections_ohm: Floats
    test_leads_ohm: Floats
    spread: Floats
    """Covariance of the logarithms of the sections and of the ohms of the test leads, in this order."""


def fit(spans: Floats, ohm: Floats, sigma: Floats, kept: Floats, mean: Floats, cov: Floats) -> Fit:
    """
    Fit sections under their priors.

    Args:
        spans: arrangements x pairs x sections: 1 where a section lies between the pair.
        ohm: pairs: as read. [ohm]
        sigma: pairs: spread of each. [ohm]
        kept: arrangements x pairs: 0 for a reading taken as a slip.
        mean: arrangements x sections: prior mean of the natural logarithm of the ohms.
        cov: arrangements x sections x sections: its covariance.

    Returns:
        Evidence and sections of each arrangement.
    """
    rows, _, sections = spans.shape
    precision = np.zeros((rows, sections + 1, sections + 1))
    precision[:, :sections, :sections] = np.linalg.inv(cov)
    precision[:, sections, sections] = TEST_LEADS_OHM[1] ** -2
    centre = np.concatenate([mean, np.full((rows, 1), TEST_LEADS_OHM[0])], axis=1)
    weight = kept / sigma**2
    state = _start(spans, ohm, weight, centre)
    jacobian = np.ones((rows, spans.shape[1], sections + 1))
    for _ in range(STEPS):
        part = np.exp(state[:, :sections])
        jacobian[:, :, :sections] = spans * part[:, None, :]
        residual = ohm - jacobian[:, :, :sections].sum(axis=2) - state[:, sections, None]
        weighted = jacobian * weight[:, :, None]
        hessian = np.matmul(weighted.transpose(0, 2, 1), jacobian) + precision
        off = centre - state
        slope = (
            np.matmul(weighted.transpose(0, 2, 1), residual[:, :, None])[..., 0] + np.matmul(precision, off[:, :, None])[..., 0]
        )
        step = np.linalg.solve(hessian, slope[:, :, None])[..., 0]
        if np.abs(step).max(initial=0.0) < 1e-4:
            break
        state = state + np.clip(step, -LONGEST_STEP, LONGEST_STEP)
    missed = (weight * residual**2).sum(axis=1) + np.einsum("bi,bij,bj->b", off, precision, off)
    volume = np.linalg.slogdet(precision)[1] - np.linalg.slogdet(hessian)[1]
    density = -(kept * np.log(sigma * np.sqrt(2.0 * np.pi))).sum(axis=1)
    return Fit(
        evidence=0.5 * (volume - missed) + density,
        sections_ohm=np.exp(state[:, :sections]),
        test_leads_ohm=state[:, sections],
        spread=np.linalg.inv(hessian),
    )


def _start(spans: Floats, ohm: Floats, weight: Floats, centre: Floats) -> Floats:
    """Sections by least squares without a prior where that gives positive ones, else the prior's."""
    sections = spans.shape[2]
    weighted = spans * weight[:, :, None]
    normal = np.matmul(weighted.transpose(0, 2, 1), spans) + 1e-6 * np.eye(sections)
    right = np.matmul(weighted.transpose(0, 2, 1), np.maximum(ohm - TEST_LEADS_OHM[0], 0.02)[None, :, None])
    linear = np.linalg.solve(normal, right)[..., 0]
    least = 0.005 * max(float(ohm.max(initial=1.0)), 0.1)
    known = linear > least
    shift = np.where(known, np.log(np.maximum(linear, least)) - centre[:, :sections], 0.0).sum(axis=1) / np.maximum(
        known.sum(axis=1), 1
    )
    start = np.where(known, np.log(np.maximum(linear, least)), centre[:, :sections] + shift[:, None])
    return np.concatenate([start, centre[:, sections:]], axis=1)


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
