"""Supply limits against a published law."""

import pytest

from core.standards.supply_limits import OUT_OF_LIMITS, is_out

COMAR = {120: (114, 126), 208: (197, 219), 240: (216, 252), 277: (249, 291), 480: (432, 504)}
"""COMAR 20.50.07.02, Maryland."""


@pytest.mark.parametrize("nominal", COMAR)
def test_nothing_that_the_law_allows_is_called_out_of_limits(nominal: int) -> None:
    """Ours are wider than the law's, except where the law itself goes to 90 %."""
    low, high = COMAR[nominal]

    assert not is_out(max(low, OUT_OF_LIMITS[0] * nominal), nominal)
    assert not is_out(high, nominal)
    assert is_out(0.88 * nominal, nominal)
