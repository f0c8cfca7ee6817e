"""Which dangers a job shows: by the words of its newest message, and by its readings."""

from collections.abc import Callable
from typing import Final

from core.cautions import is_over_300, supply_v
from core.dangers.table import DANGERS
from core.readings import Job
from core.standards.electrical_safety import DE_ENERGISE_FROM_V
from core.standards.source import Source

CLASS_2_FUSE: Final = Source("NEC", "chapter 9, table 11(A)", "numbers from memory")
LARGEST_CLASS_2_FUSE_A: Final = 5.0
"""No Class 2 source may have a bigger one. [A] Source: `CLASS_2_FUSE`."""
SMALLEST_BRANCH_A: Final = 15.0
"""From here a fuse that is spoken of is the branch circuit's. [A] Source: NEC 240.6(A)."""
TAP_FAR_BELOW: Final = 1.4
"""Supply over tap from where a tap is refused: 208 on 120 is 1.73, 277 on 208 is 1.33. Common practice, no source."""
GHOST_FROM_V: Final = 5.0
"""Ghosts were seen from a few volts up. [V] Source: NEMA bulletin 88, from memory."""
GHOST_TO_SHARE: Final = 0.85
"""Ghosts were seen up to 80 to 85 % of the voltage beside them. Source: Electrical Contractors' Association, ghost voltages."""
DEAD_UNDER_V: Final = 5.0
"""What a dead place may read and still be called dead by the reading. [V] Common practice, no source."""


def from_words(job: Job) -> tuple[str, ...]:
    """
    The dangers that the words of the newest message show.

    Args:
        job: What is known.

    Returns:
        Names, the worst first.
    """
    ratio = tap_ratio(job)
    is_denied = ratio is not None and ratio < TAP_FAR_BELOW  # what is known of tap and supply outweighs the words
    return tuple(name for name in DANGERS if name in job.dangers and not (name == "tap_too_low" and is_denied))


def from_readings(job: Job) -> tuple[str, ...]:
    """
    The dangers that readings and facts show, where the newest message brought one of those that show it.

    Args:
        job: What is known.

    Returns:
        Names, the worst first.
    """
    return tuple(name for name in DANGERS if name in _SIGNS and job.fresh & _SIGNS[name][0] and _SIGNS[name][1](job))


def tap_ratio(job: Job) -> float | None:
    """
    Supply over the tap in use.

    Args:
        job: What is known.

    Returns:
        A ratio, or None where tap or supply are not known.
    """
    tap = job.number("tap_volts")
    supply = job.number("supply_volts") or job.figure("primary_volts") or job.figure("line_volts")
    return None if not tap or supply is None else supply / tap


def _is_line_live_and_controls_dead(job: Job) -> bool:
    line = max((v for m in ("line_volts", "primary_volts") if (v := job.figure(m)) is not None), default=0.0)
    out = [v for m in ("secondary_volts", "secondary_volts_lifted", "control_volts") if (v := job.figure(m)) is not None]
    return line >= DE_ENERGISE_FROM_V and bool(out) and min(out) < DEAD_UNDER_V


def _is_fed_from_elsewhere(job: Job) -> bool:
    line, primary, secondary = (job.figure(m) for m in ("line_volts", "primary_volts", "secondary_volts"))
    dead_line = line is not None and line < DEAD_UNDER_V and primary is not None and primary >= DE_ENERGISE_FROM_V
    dead_primary = primary is not None and primary < DEAD_UNDER_V and secondary is not None and secondary > 18.0
    return dead_line or dead_primary


def _is_ghost(job: Job) -> bool:
    nominal = job.number("supply_volts") or 120.0
    return any(
        (reading := job.last(measure)) is not None
        and reading.value != "open"
        and not reading.low_impedance
        and GHOST_FROM_V <= reading.value < GHOST_TO_SHARE * nominal
        for measure in ("line_volts", "primary_volts")
    )


def _is_fuse_too_big(job: Job) -> bool:
    sizes = [float(f.value) for f in job.every("fuse_amps") if isinstance(f.value, int | float)]
    small = [size for size in sizes if size < SMALLEST_BRANCH_A]
    return bool(small) and small[-1] > LARGEST_CLASS_2_FUSE_A


def _is_not_isolated(job: Job) -> bool:
    return any(r.not_isolated and r.measure.endswith("_ohms") for r in job.readings if r.measure in job.fresh)


def _is_ground_meant(job: Job) -> bool:
    ohms = job.figure("secondary_ground_ohms")
    return ohms is not None and ohms < 5.0 and is_over_300(job)


def _is_over_300(job: Job) -> bool:
    return supply_v(job) is not None and is_over_300(job)


_LINE: Final = frozenset({"line_volts", "primary_volts"})
_OUT: Final = frozenset({"secondary_volts", "secondary_volts_lifted", "control_volts"})
_OHMS: Final = frozenset({"primary_ohms", "secondary_ohms", "primary_secondary_ohms", "primary_ground_ohms", "coil_ohms"})

_SIGNS: Final[dict[str, tuple[frozenset[str], Callable[[Job], bool]]]] = {
    "tap_too_low": (_LINE | {"tap_volts", "supply_volts", "tap_lead"}, lambda job: (tap_ratio(job) or 0.0) >= TAP_FAR_BELOW),
    "backfeed": (_LINE | _OUT, _is_fed_from_elsewhere),
    "bigger_fuse": (frozenset({"fuse_amps"}), _is_fuse_too_big),
    "over_300": (_LINE | {"supply_volts", "tap_volts"}, _is_over_300),
    "line_live_controls_dead": (_LINE | _OUT, _is_line_live_and_controls_dead),
    "ghost_voltage": (_LINE | {"supply_volts"}, _is_ghost),
    "not_isolated": (_OHMS | {"secondary_ground_ohms", "load_ohms"}, _is_not_isolated),
    "ground_meant": (frozenset({"secondary_ground_ohms", "supply_volts"}), _is_ground_meant),
}
"""For each danger: the measures and facts that show it, and the test on the whole job."""
