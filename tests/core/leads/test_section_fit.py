"""Sections from ohms between leads."""

import numpy as np
import pytest

from core.leads.order_along_winding import lay, pair_indices, readings_along, spans_of
from core.leads.section_fit import fit, prior_of


def test_sections_add_up_to_what_was_read() -> None:
    """Three leads, three pairs, test leads of 0.3 ohm."""
    spans = np.array([[[1.0, 0.0], [0.0, 1.0], [1.0, 1.0]]])
    ohm = np.array([20.3, 33.3, 53.3])
    found = fit(spans, ohm, np.full(3, 0.05), np.ones((1, 3)), prior_of(np.log([[25.0, 25.0]]), np.eye(2)[None]))

    assert found.sections_ohm[0] == pytest.approx([20.0, 33.0], abs=0.15)
    assert found.test_leads_ohm[0] == pytest.approx(0.3, abs=0.15)


def test_a_linear_case_agrees_with_the_exact_integral() -> None:
    """With a narrow prior the logarithm is a straight line, and the evidence is that of a normal distribution."""
    spans, sigma, prior = np.array([[[1.0]]]), 0.5, 0.01
    found = fit(
        spans, np.array([10.4]), np.array([sigma]), np.ones((1, 1)), prior_of(np.log([[10.0]]), np.array([[[prior**2]]]))
    )
    var = sigma**2 + (10.0 * prior) ** 2 + 0.2**2
    exact = -0.5 * (10.4 - 10.0 - 0.25) ** 2 / var - 0.5 * np.log(2.0 * np.pi * var)

    assert found.evidence[0] == pytest.approx(exact, abs=0.01)


def test_a_reading_taken_as_a_slip_does_not_count() -> None:
    """It may be anything."""
    spans = np.array([[[1.0, 0.0], [0.0, 1.0], [1.0, 1.0]]])
    kept = np.array([[1.0, 1.0, 0.0]])
    one, other = (
        fit(spans, np.array([20.0, 33.0, wild]), np.full(3, 0.1), kept, prior_of(np.log([[25.0, 25.0]]), np.eye(2)[None]))
        for wild in (53.0, 530.0)
    )

    assert one.sections_ohm == pytest.approx(other.sections_ohm, rel=1e-6)


def test_the_line_is_found_whatever_the_names() -> None:
    """d-b-a-c along the winding."""
    at = {"d": 0.0, "b": 10.0, "a": 25.0, "c": 31.0}
    ohms = {tuple(sorted((x, y))): abs(at[x] - at[y]) + 0.2 for x in at for y in at if x < y}
    best = lay(readings_along(("a", "b", "c", "d"), ohms))

    assert best.names(0) in (("d", "b", "a", "c"), ("c", "a", "b", "d"))
    assert best.slips[0] == -1


def test_a_span_covers_all_sections_between_its_ends() -> None:
    """First to last covers all."""
    spans = spans_of(np.array([[0, 1, 2]]), pair_indices(("a", "b", "c"), [("a", "c"), ("a", "b")]))

    assert spans.tolist() == [[[1.0, 1.0], [1.0, 0.0]]]
