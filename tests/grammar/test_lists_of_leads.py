"""Lists of pairs of leads: what stands beside an open is ohms, and the rest is open only where nothing was said."""

import pytest

from grammar import read


@pytest.mark.parametrize(
    ("text", "leads", "ohm"),
    [
        ("brn-blk 20.1, brn-red 52.3, brn-gry 221, blu-yel 1.0, rest OL", ("brown", "gray"), 221.0),
        ("white blk 30.1, yel blu .8, yel grn .8, blu grn 1.4, rest OL", ("white", "black"), 30.1),
        ("negro-rojo 221, azul-amarillo 1.1, lo demás OL", ("black", "red"), 221.0),
    ],
)
def test_a_number_beside_an_open_is_ohms(text: str, leads: tuple[str, str], ohm: float) -> None:
    """Whatever volts it could be: over range is read in ohms, and nothing else is said."""
    readings = {frozenset(r.leads): r for r in read(text).readings if r.leads is not None}

    assert readings[frozenset(leads)].measure == "lead_ohms"
    assert readings[frozenset(leads)].value == ohm


def test_the_rest_is_not_a_pair_that_is_still_asked_about() -> None:
    """A pair whose reading is in doubt is not open meanwhile."""
    told = {frozenset(r.leads): r.value for r in read("wht blk 0, blu yel 221, rest OL").readings if r.leads is not None}

    assert frozenset(("white", "black")) not in told
    assert told[frozenset(("white", "blue"))] == "open"
