"""What was fitted, as it is shipped and read back."""

from itertools import pairwise

import numpy as np
import pytest

from core.diagnosis.features import WIDTH
from core.diagnosis.network import SIZES, Name, believe, fitted, forward, pack, unpack
from core.diagnosis.steps import SITUATION, STEPS
from core.diagnosis.worlds import NAMES


@pytest.mark.parametrize("name", SIZES)
def test_a_network_survives_its_file(name: Name) -> None:
    """Half precision is all that is lost."""
    sizes = SIZES[name]
    rng = np.random.default_rng(3)
    row = rng.normal(size=sum((i + 1) * o for i, o in pairwise(sizes))).astype(np.float16)

    assert np.array_equal(pack(unpack(row, sizes)), row)


@pytest.mark.parametrize("name", SIZES)
def test_what_is_shipped_fits_the_inputs_and_is_finite(name: Name) -> None:
    """Every number of it."""
    parts = fitted(name)

    assert parts[0].shape[0] == SIZES[name][0]
    assert all(np.isfinite(part).all() for part in parts)


def test_nothing_known_is_a_belief_of_every_finding_and_a_worth_of_every_step() -> None:
    """No finding is ruled out before a reading."""
    nothing = np.zeros((1, WIDTH), dtype=np.float32)
    findings, short = believe(nothing)

    assert findings.shape == (1, len(NAMES))
    assert findings.min() > 0.0
    assert 0.0 < short[0] < 1.0
    around = np.zeros((1, SITUATION), dtype=np.float32)
    assert forward(np.concatenate([nothing, around], axis=1), fitted("worth")).shape == (1, len(STEPS))
