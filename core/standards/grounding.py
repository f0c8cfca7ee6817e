"""When one side of a low-voltage secondary must be grounded."""

from dataclasses import dataclass
from typing import Final

from core.said import Said, say
from core.standards.rule import Rule
from core.standards.source import Source

SOURCE: Final = Source("29 CFR 1926.404", "(f)(1)(iii)")
TWIN: Final = Source("NEC", "250.20(A)", "edition not told by the text that was read; the federal law beside it is current")

LIMIT_TO_GROUND_V: Final = 150.0


@dataclass(frozen=True, slots=True, kw_only=True)
class SupplyToGround:
    """One usual supply of a transformer's primary."""

    supply_v: float
    to_ground_v: float
    """Highest volts of a primary conductor to ground, system grounded. [V]"""
    system: Said


SUPPLIES: Final = (
    SupplyToGround(supply_v=120.0, to_ground_v=120.0, system=say("120 V line to neutral")),
    SupplyToGround(supply_v=208.0, to_ground_v=120.0, system=say("two lines of 208Y/120")),
    SupplyToGround(supply_v=240.0, to_ground_v=120.0, system=say("two lines of 120/240")),
    SupplyToGround(supply_v=277.0, to_ground_v=277.0, system=say("277 V line to neutral")),
    SupplyToGround(supply_v=480.0, to_ground_v=277.0, system=say("two lines of 480Y/277")),
)
"""The usual systems. A 240 V delta with a high leg has 208 V to ground on that leg; an ungrounded delta has no volts to ground to speak of."""

GROUND_SECONDARY: Final = Rule(
    says=say("NEC 250.20(A)"),
    source=TWIN,
    limits="AC under 50 V: supply over 150 V to ground, ungrounded supply, or overhead wires outside buildings.",
)


def usual_supply(supply_v: float) -> SupplyToGround | None:
    """The usual system of a nominal supply, or None where it is none of them [V]."""
    return next((row for row in SUPPLIES if abs(row.supply_v - supply_v) <= 0.06 * row.supply_v), None)


def must_be_grounded(to_ground_v: float, *, grounded_supply: bool = True, overhead: bool = False) -> bool:
    """
    Whether a secondary under 50 V must have one side grounded.

    Args:
        to_ground_v: Highest volts to ground of the supply of the primary. [V]
        grounded_supply: False where the supply system is ungrounded.
        overhead: True where the low-voltage wires run overhead outside buildings.

    Returns:
        True where the rule demands it.

    Source:
        `SOURCE`, the same rule as `TWIN`

    >>> must_be_grounded(277.0)
    True
    """
    return to_ground_v > LIMIT_TO_GROUND_V or not grounded_supply or overhead
