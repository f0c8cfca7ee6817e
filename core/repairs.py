"""
What a repair beside the transformer makes history: readings of the part, and of all that hangs on it, tell of a circuit that is no more. After
a new transformer all of them do.

The ohms of what was not touched still stand, and so does what is upstream of it. Follows from the circuit: a new fuse changes no winding.
"""

from collections.abc import Iterable
from typing import Final

from core.measures import MEASURES
from core.readings import Reading

_CONTROL: Final = frozenset({"control_volts", "coil_volts", "fuse_volts", "primary_amps", "secondary_amps"})
"""What is live and hangs on the control circuit."""
_LIVE: Final = frozenset(name for name, row in MEASURES.items() if row.live and not row.pair)
REPAIRS: Final[dict[str, frozenset[str]]] = {
    "fuse": _CONTROL | {"fuse_ohms"},
    "short": _CONTROL | {"load_ohms", "coil_ohms", "secondary_volts"},
    "wiring": _CONTROL | {"load_ohms", "coil_ohms"},
    "supply": _LIVE,
    "tap": _LIVE - {"line_volts"} | {"primary_ohms"},
}
"""By what was renewed: the measures whose earlier readings no longer stand."""

ALIVE_V: Final = 19.0
"""From here on the 24 V side is fed and no ghost: ghosts of a control circuit stay under it. [V] Common practice, no source."""
ALIVE_LINE: Final = 90.0
"""The same on the line side. [V]"""
FED_BY: Final = (
    ("control_volts", ALIVE_V, ("fuse_ohms", "fuse_volts", "secondary_ohms", "primary_ohms", "secondary_volts", "secondary_volts_lifted", "primary_volts", "line_volts")),
    ("secondary_volts", ALIVE_V, ("secondary_ohms", "primary_ohms", "secondary_volts_lifted", "primary_volts", "line_volts")),
    ("secondary_volts_lifted", ALIVE_V, ("secondary_ohms", "primary_ohms", "primary_volts", "line_volts")),
    ("primary_volts", ALIVE_LINE, ("line_volts",)),
)  # fmt: skip
"""A live reading, from which volts on, and what must be closed or fed for it."""
_DEAD_V: Final = 5.0


def still_true(readings: Iterable[Reading]) -> tuple[Reading, ...]:
    """
    The readings of a job without those that a later one proves to be history: volts behind an open mean that it is open no more.

    Args:
        readings: In the order in which they were taken.

    Returns:
        Those that can be true together with the live ones after them.

    >>> opened = Reading(measure="fuse_ohms", value="open")
    >>> [r.measure for r in still_true((opened, Reading(measure="control_volts", value=26.2)))]
    ['control_volts']
    >>> [r.measure for r in still_true((Reading(measure="control_volts", value=26.2), opened))]
    ['control_volts', 'fuse_ohms']
    """
    kept: list[Reading] = []
    for reading in readings:
        for measure, volts, upstream in FED_BY:
            if reading.measure == measure and reading.value != "open" and reading.value >= volts:
                kept = [r for r in kept if not (r.measure in upstream and _bars(r))]
        kept.append(reading)
    return tuple(kept)


def _bars(reading: Reading) -> bool:
    """Whether nothing could be fed through what this was read of."""
    if reading.measure == "fuse_volts":
        return reading.value == "open" or reading.value >= ALIVE_V
    if MEASURES[reading.measure].unit == "V":
        return reading.value != "open" and reading.value < _DEAD_V
    return reading.value == "open"


def made_history(renewed: Iterable[str]) -> frozenset[str]:
    """
    The measures whose earlier readings no longer stand.

    Args:
        renewed: Names of `REPAIRS`.

    >>> "primary_ohms" in made_history(["fuse"])
    False
    """
    return frozenset[str]().union(*(REPAIRS[name] for name in renewed))
