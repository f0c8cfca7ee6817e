"""The only place that knows pint: a closed list of spellings, each converted to core's unit. What a person typed never reaches pint."""

from functools import cache
from typing import Final, Literal

import pint

from grammar.uncollected import uncollected

DEFINITIONS: Final = (
    "kilo- = 1e3 = k-",
    "mega- = 1e6 = M-",
    "milli- = 1e-3 = m-",
    "volt = [voltage] = V",
    "ampere = [current] = A",
    "ohm = volt / ampere",
    "hertz = [frequency] = Hz",
    "foot = [length] = ft",
    "yard = 3 * foot",
    "inch = foot / 12",
    "meter = foot / 0.3048",
    "degC = [temperature]",
)
"""International foot: 0.3048 m exactly. Source: NIST Special Publication 811 (2008), appendix B.6."""

SPELLINGS: Final[dict[str, tuple[str, str, str]]] = {
    "volt": ("volt", "volt", "V"),
    "millivolt": ("millivolt", "volt", "V"),
    "kilovolt": ("kilovolt", "volt", "V"),
    "amp": ("ampere", "ampere", "A"),
    "milliamp": ("milliampere", "ampere", "A"),
    "ohm": ("ohm", "ohm", "ohm"),
    "kiloohm": ("kiloohm", "ohm", "ohm"),
    "megaohm": ("megaohm", "ohm", "ohm"),
    "milliohm": ("milliohm", "ohm", "ohm"),
    "volt_ampere": ("volt * ampere", "volt * ampere", "VA"),
    "kilovolt_ampere": ("kilovolt * ampere", "volt * ampere", "VA"),
    "watt": ("volt * ampere", "volt * ampere", "W"),
    "foot": ("foot", "foot", "ft"),
    "yard": ("yard", "foot", "ft"),
    "meter": ("meter", "foot", "ft"),
    "inch": ("inch", "inch", "in"),
    "hertz": ("hertz", "hertz", "Hz"),
    "celsius": ("degC", "degC", "degC"),
}
"""Meaning of a unit word: (pint's unit, the unit asked of pint, core's name for that)."""

Kind = Literal["V", "A", "ohm", "VA", "W", "ft", "in", "Hz", "degC"]


@cache
@uncollected()
def _registry() -> pint.UnitRegistry[float]:
    registry: pint.UnitRegistry[float] = pint.UnitRegistry(None, cache_folder=None)
    for line in DEFINITIONS:
        registry.define(line)
    return registry


@cache
def _factor(meaning: str) -> float:
    there, here, _ = SPELLINGS[meaning]
    return float(_registry().Quantity(1.0, there).m_as(here))


def kind_of(meaning: str) -> str:
    """
    Core's name for the unit of a unit word.

    Raises:
        KeyError: The word is not in the list.

    >>> kind_of("kiloohm"), kind_of("meter")
    ('ohm', 'ft')
    """
    return SPELLINGS[meaning][2]


def in_core(value: float, meaning: str) -> float:
    """
    A value in core's unit.

    Args:
        value: As written. [unit of `meaning`]
        meaning: A meaning of `words/units.py`.

    Returns:
        The value. [core's unit of its kind]

    Raises:
        KeyError: The unit is not in the list: nothing is guessed.

    Source:
        NIST Special Publication 811 (2008), appendix B.6, for the foot.

    >>> round(in_core(40, "meter"), 2), in_core(640, "milliamp"), in_core(1.8, "megaohm")
    (131.23, 0.64, 1800000.0)
    """
    return round(value * _factor(meaning), 9)
