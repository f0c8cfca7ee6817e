"""A unit of the fourth world and its live states."""

import cmath
import math
from dataclasses import dataclass, field
from typing import Any, Final

from tests.benchmarks.fourth_world.circuit import Live, solve

BAD: Final = {
    "primary_open", "primary_shorted_turns", "secondary_open", "secondary_shorted_turns", "windings_bridged", "winding_grounded",
}  # fmt: skip


@dataclass
class Unit:
    """One unit with one finding."""

    finding: str
    severity: str
    short: bool
    supply: float
    tap: float
    va: float
    fused: bool
    d: dict[str, Any] = field(repr=False, default_factory=dict)
    """Everything electrical."""
    live: dict[bool, Live] = field(repr=False, default_factory=dict)

    @property
    def is_bad(self) -> bool:
        """Truth of the replace decision."""
        return self.finding in BAD

    def circuit(self, *, lifted: bool = False) -> Live:
        """Energised, once worked out."""
        if lifted not in self.live:
            self.live[lifted] = solve(self.d, self.supply, lifted=lifted)
        return self.live[lifted]


def volts_to_earth(supply: float, share: float) -> complex:
    """Of a point of the primary, 0 at the hot or first lead."""
    if supply in (120.0, 277.0):
        return complex(supply * (1 - share))
    if supply == 240.0:
        return complex(120.0 * (1 - 2 * share))
    return supply / math.sqrt(3) * ((1 - share) + share * cmath.exp(-2j * math.pi / 3))
