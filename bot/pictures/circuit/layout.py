"""Where everything of the ladder stands, in px on a picture 1350 wide."""

from dataclasses import dataclass
from typing import Final

WIDTH: Final = 1350
LEFT: Final = 370.0
"""The hot rail: L1 above, R below."""
RIGHT: Final = 1010.0
"""The other rail: L2 or N above, C below."""
MIDDLE: Final = (LEFT + RIGHT) / 2.0
MARGIN: Final = 24.0
LABEL: Final = 39.0
"""Size of names: 26 px on a picture 900 wide."""
VALUE: Final = 44.0
"""Size of readings."""
TITLE: Final = 50.0
LINE_HEIGHT: Final = 1.22
ROOM_LEFT: Final = LEFT - 2 * MARGIN - 36.0
ROOM_RIGHT: Final = WIDTH - RIGHT - 40.0 - MARGIN
ROOM_ACROSS: Final = RIGHT - LEFT - 60.0

HEAD: Final = 220.0
"""Kept for the verdict."""

SUPPLY: Final = HEAD + 30.0
DISCONNECT: Final = HEAD + 130.0
LINE: Final = HEAD + 255.0
LINE_WIRE: Final = HEAD + 345.0
PRIMARY_METER: Final = HEAD + 430.0
PRIMARY: Final = HEAD + 515.0
CORE: Final = HEAD + 640.0
SECONDARY: Final = HEAD + 765.0
SECONDARY_METER: Final = HEAD + 880.0
FUSE: Final = HEAD + 1036.0
SAFETY: Final = HEAD + 1186.0
TERMINALS: Final = HEAD + 1304.0
WIRE: Final = HEAD + 1404.0
COIL: Final = HEAD + 1514.0
BOTTOM: Final = HEAD + 1588.0

COIL_START: Final = LEFT + 110.0
COIL_END: Final = RIGHT - 110.0
TURNS: Final = 7


@dataclass(frozen=True, slots=True, kw_only=True)
class Place:
    """Where the tag of a reading stands, and what it is tied to."""

    x: float
    """Middle of a tag across the rails, or the edge that looks at the rail."""
    y: float
    ties: tuple[tuple[float, float], ...]
    """Points of the circuit that the meter touches."""
    side: str
    """`across`, `left`, `right`, or `beside` the hot rail."""


def _across(y: float) -> Place:
    return Place(x=MIDDLE, y=y, ties=((LEFT, y), (RIGHT, y)), side="across")


_EDGE: Final = RIGHT + 40.0

PLACES: Final[dict[str, Place]] = {
    "line": _across(LINE),
    "primary": _across(PRIMARY_METER),
    "secondary": _across(SECONDARY_METER),
    "terminals": _across(TERMINALS),
    "coil": _across(COIL),
    "fuse": Place(x=LEFT + 70.0, y=FUSE, ties=((LEFT, FUSE - 62.0), (LEFT, FUSE + 62.0)), side="beside"),
    "primary_amps": Place(x=_EDGE, y=LINE_WIRE, ties=((RIGHT, LINE_WIRE),), side="right"),
    "secondary_amps": Place(x=_EDGE, y=FUSE, ties=((RIGHT, FUSE),), side="right"),
    "primary_core": Place(x=_EDGE, y=(PRIMARY + CORE) / 2, ties=((RIGHT, PRIMARY), (COIL_END + 60.0, CORE)), side="right"),
    "secondary_core": Place(
        x=_EDGE, y=(SECONDARY + CORE) / 2, ties=((RIGHT, SECONDARY), (COIL_END + 60.0, CORE)), side="right"
    ),
    "primary_secondary": Place(x=LEFT - 36.0, y=CORE, ties=((LEFT, PRIMARY), (LEFT, SECONDARY)), side="left"),
}
"""Every place of a meter by name."""

MEASURED_AT: Final[dict[str, str]] = {
    "line_volts": "line",
    "primary_volts": "primary",
    "primary_ohms": "primary",
    "secondary_volts": "secondary",
    "secondary_volts_lifted": "secondary",
    "secondary_ohms": "secondary",
    "fuse_volts": "fuse",
    "fuse_ohms": "fuse",
    "control_volts": "terminals",
    "load_ohms": "terminals",
    "coil_volts": "coil",
    "coil_ohms": "coil",
    "primary_amps": "primary_amps",
    "secondary_amps": "secondary_amps",
    "primary_ground_ohms": "primary_core",
    "secondary_ground_ohms": "secondary_core",
    "primary_secondary_ohms": "primary_secondary",
}
"""The place of each measure. Readings between named leads belong to the map of leads."""
