"""What ohms the sections of a winding should have, counted from its common end: this is what tells one end from the other."""

import math
from dataclasses import dataclass
from functools import cache
from typing import Final

import numpy as np

from core.circuit.windings import PRIMARY_SHARE, SECONDARY_SHARE, SIZE_POWER
from core.leads.section_fit import Floats
from core.leads.tap_sets import COMMON_SPREAD, HALVES_SPREAD, LONGER_TURNS, OWN_SPREAD, VA_MID, VA_SPREAD, Wire

FALL: Final = SIZE_POWER - 1.0
"""Power of the VA with which a winding's ohms fall."""
OPEN_RISE: Final = 1.10
"""Volts of a secondary with nothing connected, to its rated volts; a middling unit."""


@dataclass(frozen=True, slots=True)
class Size:
    """
    What is known of the size and the make: natural logarithm of the ohms of any winding to those of a middling 40 VA unit.

    Whoever saves copper saves it on both windings, since the loss is shared about evenly between them: one winding foretells the other.
    """

    mean: float
    var: float


def size_before(rated_va: float | None) -> Size:
    """The size before any reading, from the rating where it is told [VA]."""
    mean, var = (math.log(VA_MID), VA_SPREAD**2) if rated_va is None else (math.log(rated_va), 0.05**2)
    return Size(FALL * mean - SIZE_POWER * math.log(40.0), FALL**2 * var + COMMON_SPREAD**2)


def size_after(size: Size, secondary_ohm: float, secondary_v: float, log_var: float) -> Size:
    """
    The size after a secondary was read.

    Args:
        size: Before it.
        secondary_ohm: Of the whole secondary. [ohm]
        secondary_v: Its rated volts. [V]
        log_var: Variance of the natural logarithm of those ohms.

    Returns:
        The narrower size.
    """
    gain = size.var / (size.var + OWN_SPREAD**2 + log_var)
    expected = secondary_log_ohm(size, secondary_v)
    return Size(size.mean + gain * (math.log(secondary_ohm) - expected), size.var * (1.0 - gain))


def secondary_log_ohm(size: Size, secondary_v: float) -> float:
    """Natural logarithm of the ohms expected of a secondary of so many rated volts [V]."""
    return math.log(SECONDARY_SHARE * secondary_v**2) + size.mean


def first_log_ohm(size: Size, volts: float) -> float:
    """Natural logarithm of the ohms expected from common to a first tap of so many volts [V]."""
    return math.log(PRIMARY_SHARE * volts**2) + size.mean


def winding_prior(size: Size, volts: tuple[float, ...], wire: Wire) -> tuple[Floats, Floats]:
    """
    Prior of the sections of a tapped primary, from common outward.

    Args:
        size: Of the unit.
        volts: Of the taps, rising. [V]
        wire: How it is wound.

    Returns:
        Mean and covariance of the natural logarithm of the ohms of each section.
    """
    shape, own = _shape(volts, wire)
    base = size.var + OWN_SPREAD**2
    return first_log_ohm(size, volts[0]) + shape, own + base


@cache
def _shape(volts: tuple[float, ...], wire: Wire) -> tuple[Floats, Floats]:
    tap = np.array(volts)
    section = np.diff(tap, prepend=0.0)
    middle = (tap - section / 2.0) / tap[-1]
    farther = middle - middle[0]
    step = np.log(tap / tap[0])
    mean = np.log(section / section[0]) + wire.thinner[0] * step + LONGER_TURNS[0] * farther
    cov = wire.thinner[1] ** 2 * np.outer(step, step) + LONGER_TURNS[1] ** 2 * np.outer(farther, farther)
    # A tap sits on a whole turn and each layer packs differently.
    return mean, cov + np.eye(len(volts)) * wire.own**2


def secondary_prior(size: Size, secondary_v: float, sections: int) -> tuple[Floats, Floats]:
    """
    Prior of a secondary, with one section or with a centre tap between two.

    Args:
        size: Of the unit.
        secondary_v: Rated volts of the whole. [V]
        sections: 1 or 2.

    Returns:
        Mean and covariance of the natural logarithm of the ohms of each section.
    """
    base = size.var + OWN_SPREAD**2
    mean = np.full(sections, secondary_log_ohm(size, secondary_v) - math.log(sections))
    return mean, np.full((sections, sections), base) + np.eye(sections) * (HALVES_SPREAD**2 / 2.0 if sections > 1 else 1e-4)


def half_prior(size: Size, volts: float) -> tuple[Floats, Floats]:
    """
    Prior of the first of two equal primaries.

    Args:
        size: Of the unit.
        volts: Of one half. [V]

    Returns:
        Mean and covariance of the natural logarithm of its ohms: half the unit's rating runs through it.
    """
    base = size.var + OWN_SPREAD**2
    return np.array([first_log_ohm(size, volts) + math.log(2.0)]), np.array([[base]])
