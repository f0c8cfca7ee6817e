"""Volts along a run of control wire: what the far coil is left with, how far a gauge reaches, how thin a run may be."""

from dataclasses import dataclass
from typing import Final

from core.circuit.windings import output_volts
from core.standards.coil_range import PULL_IN_SHARE
from core.standards.device_loads import CONTROLS_V
from core.standards.transformer_ratings import PULL_IN_POWER_FACTOR
from core.standards.wire_gauges import CONTROL_GAUGES, WIRE_CELSIUS, ohms_per_1000_ft


@dataclass(frozen=True, slots=True, kw_only=True)
class Draw:
    """What sits at the far end. Two loads share one common, so they count together."""

    va: float = 0.0
    """Told in VA: a constant impedance at the rated volts. [VA]"""
    amps: float = 0.0
    """Told in amps: a constant current. [A]"""
    rated_v: float = CONTROLS_V

    @property
    def siemens(self) -> float:
        """Conductance of the part told in VA. [S]."""
        return self.va / self.rated_v**2


@dataclass(frozen=True, slots=True, kw_only=True)
class Copper:
    """The kind of wire that a job speaks of."""

    celsius: float = WIRE_CELSIUS
    stranded: bool = False

    def loop_ohm(self, awg: float, feet: float) -> float:
        """Ohms of a run of it, there and back [AWG, ft]."""
        return loop_ohm(awg, feet, self.celsius, stranded=self.stranded)


def loop_ohm(awg: float, feet: float, celsius: float = WIRE_CELSIUS, *, stranded: bool = False) -> float:
    """
    Ohms of a run, there and back.

    Args:
        awg: Gauge. [AWG]
        feet: One-way length. [ft]
        celsius: Temperature of the copper. [degC]
        stranded: Seven strands in place of a solid wire.

    Returns:
        Ohms of both conductors. [ohm]

    >>> round(loop_ohm(18, 100), 3)
    1.553
    """
    return 2.0 * feet / 1000.0 * ohms_per_1000_ft(awg, celsius, stranded=stranded)


SOLID: Final = Copper()
"""Solid wire at the temperature of the published table."""


def volts_left(draw: Draw, ohm: float) -> float:
    """
    Volts at the far end of a run.

    Args:
        draw: What sits there, taken as resistive: the largest drop that it can make.
        ohm: Of the run there and back. [ohm]

    Returns:
        Volts; zero or less where the run can't carry the amps. [V]

    >>> round(volts_left(Draw(amps=40 / 24), 1.554), 2)
    21.41
    """
    return (draw.rated_v - ohm * draw.amps) / (1.0 + ohm * draw.siemens)


def told_drop(drop_v: float) -> float:
    """
    A drop as it is recorded: to the hundredth of a volt, and finer where that would be more than half a per cent off.

    Args:
        drop_v: As it was reckoned. [V]

    Returns:
        Volts. [V]

    >>> told_drop(0.6123), told_drop(0.1023), told_drop(0.01234)
    (0.61, 0.102, 0.0123)
    """
    finest = 6
    return next(
        (told for digits in range(2, finest) if abs((told := round(drop_v, digits)) - drop_v) <= 0.005 * abs(drop_v)),
        round(drop_v, finest),
    )


def longest_feet(draw: Draw, ohm_per_foot: float, share: float = PULL_IN_SHARE) -> float:
    """
    The longest run that leaves a share of the rated volts.

    Args:
        draw: What sits at the far end; not nothing.
        ohm_per_foot: Of the loop, for a foot one way. [ohm/ft]
        share: Of the rated volts; what a coil needs to pull in unless told.

    Returns:
        One-way length. [ft]

    >>> round(longest_feet(Draw(amps=1.0), loop_ohm(18, 1.0, 20.0), 0.97), 1)
    56.4
    """
    least_v = share * draw.rated_v
    return (draw.rated_v - least_v) / (draw.amps + least_v * draw.siemens) / ohm_per_foot


def thinnest_awg(draw: Draw, feet: float, share: float = PULL_IN_SHARE, copper: Copper = SOLID) -> int | None:
    """
    The thinnest gauge that leaves a share of the rated volts on a run.

    Args:
        draw: What sits at the far end.
        feet: One-way length. [ft]
        share: Of the rated volts.
        copper: The kind of wire.

    Returns:
        Gauge, or None where even 10 AWG is too thin. [AWG]

    >>> thinnest_awg(Draw(va=30.0), 120.0)
    20
    """
    return next((awg for awg in CONTROL_GAUGES if volts_left(draw, copper.loop_ohm(awg, feet)) >= share * draw.rated_v), None)


def pull_in_volts(
    unit_va: float, inrush_va: float, ohm: float = 0.0, rated_v: float = CONTROLS_V, beside_va: float = 0.0
) -> tuple[float, float]:
    """
    What the coils see while the largest of them pulls in, through the unit's own windings and the run.

    Args:
        unit_va: Rating of the transformer. [VA]
        inrush_va: Largest device pulling in, the rest of its run sealed. [VA]
        ohm: Of the run there and back. [ohm]
        rated_v: Rated secondary volts. [V]
        beside_va: Sealed, on other runs. [VA]

    Returns:
        Volts of a weak and of a middling unit at the rated supply. [V]
    """
    load_ohm = rated_v**2 / inrush_va
    seen_va = rated_v**2 / (load_ohm + ohm) + beside_va
    low, mid, _ = output_volts(unit_va, 120.0, 120.0, seen_va, PULL_IN_POWER_FACTOR, rated_v)
    kept = load_ohm / (load_ohm + ohm)
    return low * kept, mid * kept
