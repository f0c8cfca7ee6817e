"""What is offered for a text that was not read."""

import pytest

from grammar import nearest


@pytest.mark.parametrize(
    ("fragment", "example"),
    [
        ("primry volt 118", "primary 118 V"),
        ("sec reads shorted", "secondary open"),
        ("blk wht 6", "wht-blk 6.1 ohms"),
        ("contactor coil", "contactor coil 11.6 ohms"),
        ("which for tap", "which tap for 208"),
    ],
)
def test_the_example_is_about_the_same_place(fragment: str, example: str) -> None:
    """A winding for a winding, a lead for a lead."""
    assert nearest(fragment) == example


@pytest.mark.parametrize(
    "fragment", ["float switch reads 24", "flibber", "pressure 118", "suction 70", "27 across the door switch", "eats", "nan V"]
)
def test_nothing_absurd_is_offered(fragment: str) -> None:
    """Where no example is about the same, none is shown."""
    assert nearest(fragment) is None
