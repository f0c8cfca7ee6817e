"""Which fuse on either side of a control transformer."""

from dataclasses import dataclass
from typing import Final

from core.circuit.windings import typical_unit
from core.readings import Job
from core.standards.class_2 import MOST_OPEN_V, MOST_VA, largest_fuse_a
from core.standards.device_loads import CONTROLS_V
from core.standards.fuse_sizes import COMMON_LOW_VOLTAGE_A, LOADED_TO, NEC_STANDARD_A, TIME_DELAY_A, at_least, at_most
from core.standards.transformer_protection import Ceiling, primary_ceiling_a
from core.standards.transformer_ratings import SPARE

LEAST_OF_USUAL: Final = 0.85
"""A smaller load counts for this share of what the unit is picked for: a fuse sized to one contactor is none that its pull-in spares. Common practice, no source."""


def open_volts(job: Job, unit_va: float, rated_v: float = CONTROLS_V) -> float:
    """
    Output with nothing connected: as it was read, else the most that a sound unit of this size gives.

    Args:
        job: What is known.
        unit_va: Rating. [VA]
        rated_v: Rated secondary volts. [V]

    Returns:
        Volts. [V]
    """
    read, rated = job.last("secondary_volts_lifted"), job.number("rated_va")
    is_of_it = rated is None or rated == unit_va  # what was read is of the unit that is there, not of one to buy
    if is_of_it and read is not None and isinstance(read.value, int | float) and 0.5 * rated_v < read.value < 2.0 * rated_v:
        return float(read.value)
    return min(rated_v * typical_unit(unit_va, 120.0, rated_v).open_ratio[2], MOST_OPEN_V if rated_v < MOST_OPEN_V else 1e9)


def is_class_2(unit_va: float, open_v: float) -> bool:
    """True where a unit can be a Class 2 source. [VA, V]."""
    return unit_va <= MOST_VA and open_v <= MOST_OPEN_V


def low_voltage_fuse_a(unit_va: float, open_v: float, load_a: float | None = None, rated_v: float = CONTROLS_V) -> float | None:
    """
    The fuse for the 24 V side.

    The smallest common size that the load fills to no more than three quarters, since a UL fuse is not meant to carry its whole
    rating for good, and never over the Class 2 ceiling. Where no load is known, the load is what the unit would be picked for: its
    rating less the spare; a load far under that makes no smaller fuse. An overload never makes the fuse grow: the rating is the most that counts.

    Args:
        unit_va: Rating of the transformer. [VA]
        open_v: Output with nothing connected. [V]
        load_a: Steady load, where known. [A]
        rated_v: Rated secondary volts. [V]

    Returns:
        Size, or None where the source is not Class 2. [A]

    Source:
        `core.standards.class_2.SOURCE`, `core.standards.fuse_sizes.BEHAVIOUR`

    >>> low_voltage_fuse_a(50.0, 28.0, load_a=34 / 24)
    2.0
    >>> low_voltage_fuse_a(40.0, 28.0)
    2.0
    """
    ceiling = largest_fuse_a(open_v)
    if ceiling is None or unit_va > MOST_VA:
        return None
    rated_a = unit_va / rated_v
    usual = rated_a / (1.0 + SPARE)
    carried = usual if load_a is None else min(max(load_a, LEAST_OF_USUAL * usual), rated_a)
    size = at_least(carried / LOADED_TO, COMMON_LOW_VOLTAGE_A)
    if size is None or size > ceiling:
        size = at_most(ceiling, COMMON_LOW_VOLTAGE_A)
    if size is None or size < carried:
        size = at_most(ceiling, TIME_DELAY_A)
    return size


@dataclass(frozen=True, slots=True, kw_only=True)
class LineFuse:
    """The line-side fuse of a unit."""

    rated_a: float
    row: Ceiling
    ceiling_a: float
    size_a: float | None


def line_fuse(unit_va: float, supply_v: float) -> LineFuse:
    """
    The largest line-side fuse where nothing on the 24 V side is counted on.

    Args:
        unit_va: Rating. [VA]
        supply_v: Nominal supply, or the tap in use. [V]

    Returns:
        The row of the rule and the size.

    Source:
        `core.standards.transformer_protection.SOURCE`

    >>> line_fuse(40.0, 277.0).size_a
    0.4
    """
    rated_a = unit_va / supply_v
    row = primary_ceiling_a(rated_a)
    ceiling = row.share * rated_a
    size = at_least(ceiling, NEC_STANDARD_A) if row.may_round_up else at_most(ceiling, TIME_DELAY_A)
    return LineFuse(rated_a=rated_a, row=row, ceiling_a=ceiling, size_a=size)
