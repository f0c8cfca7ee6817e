"""Of maps said to be sure, none is wrong, on units wound by other rules than the priors; the floor stands just below today's score."""

import numpy as np
import pytest

from tests.benchmarks.lead_bench import play

UNITS = 60


@pytest.mark.parametrize("missing", [0, 2])
def test_sure_maps_are_right(missing: int) -> None:
    """With all pairs and with two missing."""
    score, _, _ = play(np.random.default_rng(3), UNITS, missing=missing)

    assert score["wrong and sure"] == 0
    assert score["sides"] == UNITS
    assert score["sure"] >= (0.78 if missing == 0 else 0.55) * UNITS


def test_a_typo_is_named() -> None:
    """Wherever other readings can show it."""
    score, _, _ = play(np.random.default_rng(3), UNITS, wrong=True)

    assert score["typo named"] >= 0.7 * UNITS
