"""Units at the edge agree with pint's own registry, which is not ours."""

import pint
import pytest

from grammar.units import SPELLINGS, in_core, kind_of

THEIRS = {
    "volt_ampere": "volt_ampere",
    "amp": "ampere",
    "milliamp": "milliampere",
    "celsius": "degC",
    "kiloohm": "kiloohm",
    "megaohm": "megaohm",
    "milliohm": "milliohm",
}


@pytest.fixture(scope="module")
def registry() -> pint.UnitRegistry:
    """Pint with its own definitions."""
    return pint.UnitRegistry()


@pytest.mark.parametrize("meaning", SPELLINGS)
def test_a_unit_is_what_pint_says(meaning: str, registry: pint.UnitRegistry) -> None:
    """Outside truth: pint's default definitions."""
    kind = {
        "V": "volt",
        "A": "ampere",
        "ohm": "ohm",
        "VA": "volt_ampere",
        "W": "watt",
        "ft": "foot",
        "in": "inch",
        "Hz": "hertz",
        "degC": "degC",
    }[kind_of(meaning)]
    theirs = registry.Quantity(7.5, THEIRS.get(meaning, meaning)).m_as(kind)

    assert in_core(7.5, meaning) == pytest.approx(theirs, rel=1e-8)


def test_a_spelling_that_is_not_listed_is_an_error() -> None:
    """Nothing is guessed."""
    with pytest.raises(KeyError, match="furlong"):
        in_core(1.0, "furlong")
