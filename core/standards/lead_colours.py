"""
Colours that leads carry by habit: evidence with weights, never proof.

No standard fixes the colours of a control transformer's leads, and two opposite habits for common and 120 V are both in use.
"""

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Final

from core.standards.source import COMMON_PRACTICE, Source

SOURCE: Final = COMMON_PRACTICE
GROUND_COLOUR: Final = Source("NEC", "250.119")
"""Green, or green with a yellow stripe, is the equipment ground: the code's colours are for wiring, a maker's leads need not follow."""

COLOURS: Final = (
    "white", "black", "red", "orange", "yellow", "blue", "brown", "green", "gray", "violet", "pink", "tan",
)  # fmt: skip
"""Colour names of leads. A stripe follows after a slash."""

MOST_ODDS: Final = 6.0
"""However many colours agree, they never speak for one map over another by more than this: alone they make no 0.9."""
FOLLOWS: Final = 0.85
"""How often one lead of a unit that keeps a habit has the habit's colour. Common practice, no source."""
NO_HABIT: Final = 0.20
"""Share of units whose colours follow none of these. Common practice, no source."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Habit:
    """One way to colour the leads."""

    name: str
    share: float
    """Of the units in the field. Common practice, no source."""
    colours: Mapping[str, tuple[str, ...]]
    """Role of a lead (`common`, a tap's volts, `24`, `12`, `ct`) to the colours that it carries."""


_OUTER: Final = {
    "208": ("red",),
    "240": ("orange",),
    "277": ("brown", "violet"),
    "480": ("gray", "brown", "black/red", "violet"),
    "24": ("blue", "yellow", "brown", "red"),
    "12": ("blue", "yellow"),
    "ct": ("black", "black/yellow", "green", "blue/yellow"),
}
_TWO_LEADS: Final = {
    "120": ("black", "white"),
    "208": ("red", "black", "white"),
    "240": ("orange", "black", "white"),
    "277": ("brown", "black", "white"),
    "480": ("gray", "black", "white"),
}

HABITS: Final = (
    Habit(name="white common, black 120", share=0.40, colours={**_OUTER, "common": ("white",), "120": ("black",)}),
    Habit(name="black common, white 120", share=0.28, colours={**_OUTER, "common": ("black",), "120": ("white",)}),
    Habit(name="black common, red next", share=0.12, colours={**_OUTER, "common": ("black",), "120": ("red", "white")}),
)
"""The habits met most. Common practice, no source."""

TWO_LEAD_COLOURS: Final = _TWO_LEADS
"""Colours of a primary that has two leads only."""
