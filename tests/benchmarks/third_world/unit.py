"""A unit of the third world: what is there, and its live states."""

from dataclasses import dataclass, field
from typing import Any, Final

from tests.benchmarks.third_world.nodal import State, solve

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
    """Nominal. [V]"""
    tap: float
    """In use. [V]"""
    va: float
    fused: bool
    p: dict[str, Any] = field(repr=False, default_factory=dict)
    """Everything electrical."""
    live: dict[bool, State] = field(repr=False, default_factory=dict)

    @property
    def is_bad(self) -> bool:
        """Truth of the replace decision."""
        return self.finding in BAD

    def state(self, *, lifted: bool = False) -> State:
        """Energised, once worked out."""
        if lifted not in self.live:
            self.live[lifted] = solve(self.p, self.supply, lifted=lifted)
        return self.live[lifted]
