"""What a wrong reading looks like: a slipped point, another digit, anything."""

import numpy as np
import pytest

from core.leads.slip import log_density

ALL = np.round(np.arange(0.1, 3000.0, 0.1), 1)


@pytest.mark.parametrize("due", [5.3, 20.4, 66.7])
def test_all_wrong_values_together_are_one(due: float) -> None:
    """A density: over all that a meter can show it sums to one, values of which a digit may be any other a little above."""
    parts = [ALL[i : i + 2000] for i in range(0, len(ALL), 2000)]
    total = sum(
        float(np.exp(log_density(p.tolist(), np.arange(len(p)), np.full(len(p), due), np.full(len(p), 0.05))).sum())
        for p in parts
    )

    assert 0.1 * total == pytest.approx(1.06, abs=0.10)


def test_a_slipped_point_is_likelier_than_a_value_out_of_nowhere() -> None:
    """2.0 where 20.4 was to be read, and 7.7."""
    slipped, digit, nowhere = log_density([2.0, 80.4, 7.7], np.arange(3), np.full(3, 20.4), np.full(3, 0.02))

    assert slipped > digit > nowhere
