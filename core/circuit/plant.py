"""
The circuit itself: line, transformer, low-voltage protection, control wire, load. Arrays, one entry a circuit.

All branches meet at one quantity, `e`: the volts that the flux makes in the whole primary. A shorted share of turns is one more winding with a
resistor across it, an open is a resistor of `OPEN_OHM`, so that every fault is a number and no fault needs a circuit of its own:

    line = i1 * z1 + (1 - k1) * e                       the line drives what is left of the primary
    i1 * (1 - k1) = e * (y_core + y_short1 + y_short2 + ((1 - k2) / ratio)**2 / (z2 + z_load))      ampere-turns balance

A tight short of a share `k` of the primary thus leaves the secondary volts untouched: the turns lost and the drop made by the circulating current
cancel. A short in the secondary takes its turns and its drop from the output.
"""

from dataclasses import dataclass
from typing import Final

import numpy as np
import numpy.typing as npt

Floats = npt.NDArray[np.float64]
Flags = npt.NDArray[np.bool_]
Phasors = npt.NDArray[np.complex128]

OPEN_OHM: Final = 1e9
"""What an open branch is taken as: far over what any hand meter shows."""
METER_OHM: Final = 1e7
"""Input of a usual digital meter; it matters only behind an open. Lessons in Electric Circuits, vol. 1, ch. 8."""
SATURATION_POWER: Final = 9
"""How steeply the magnetising current rises over the knee; between 7 and 12 for the steels in use. Common practice, no source."""
SATURATION_STEPS: Final = 14
J: Final = np.complex128(1j)


@dataclass(frozen=True, slots=True, kw_only=True)
class Circuit:
    """What is there, one array entry a circuit. Healthy values stand behind each name."""

    line_v: Floats
    """At the line terminals, rms; 0 where the line is dead. [V]"""
    line_ohm: Floats
    """From the line terminals to the primary: 0.1 to 1, more at a loose joint. [ohm]"""
    tap_v: Floats
    """Rated volts of the tap in use. [V]"""
    rated_va: Floats
    rated_secondary_v: Floats
    open_ratio: Floats
    """Open-circuit volts to rated volts: 1.05 to 1.2. [-]"""
    primary_ohm: Floats
    """Of the tap in use, at 20 degC. [ohm]"""
    secondary_ohm: Floats
    warm: Floats
    """Resistance of the copper to that at 20 degC: 1 to 1.35. [-]"""
    leakage: Floats
    """Leakage reactance to winding resistance. [-]"""
    magnetising: Floats
    """Magnetising current at rated volts to rated current: 0.15 to 0.5. [-]"""
    core_loss: Floats
    """Core loss to rating: 0.03 to 0.1. [-]"""
    knee: Floats
    """How much of the magnetising current at rated volts is saturation already. [-]"""
    primary_fault_ohm: Floats
    """In series inside the primary: 0, or `OPEN_OHM`."""
    secondary_fault_ohm: Floats
    primary_shorted: Floats
    """Share of the turns that are shorted: 0. [-]"""
    secondary_shorted: Floats
    contact: Floats
    """Resistance of the shorted spot to that of the turns that it shorts: 0. [-]"""
    protection_ohm: Floats
    """Low-voltage fuse or breaker: 0.02 to 0.1; 0 where there is none. [ohm]"""
    wire_ohm: Floats
    """Both ways, from the secondary to R and C: 0.05 to 1. [ohm]"""
    break_ohm: Floats
    """A bad joint or a break between the secondary and R and C: 0. [ohm]"""
    load_ohm: Floats
    """Impedance of what is called, at R and C. [ohm]"""
    power_factor: Floats
    short_ohm: Floats
    """Across R and C: `OPEN_OHM`."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Live:
    """Volts and amps of the energised circuit, rms."""

    primary_v: Floats
    secondary_v: Floats
    lifted_v: Floats
    """Secondary volts with one secondary lead lifted. [V]"""
    control_v: Floats
    protection_v: Floats
    primary_a: Floats
    secondary_a: Floats


def solve(c: Circuit) -> Live:
    """
    Volts and amps of every circuit, loaded and with the secondary lifted.

    Args:
        c: The circuits.

    Returns:
        Rms values at the places where a meter goes. [V, A]
    """
    load = 1.0 / (1.0 / _load_ohm(c) + 1.0 / c.short_ohm)
    series = c.protection_ohm + c.wire_ohm + c.break_ohm
    e, primary_a = _excited(c, series + load)
    z2 = _secondary_ohm(c)
    inside = e * (1.0 - c.secondary_shorted) / turns_ratio(c)
    secondary_a = np.abs(inside / (z2 + series + load))
    lifted_e, _ = _excited(c, np.full(c.line_v.shape, 100.0 * OPEN_OHM, dtype=np.complex128))
    lifted = lifted_e * (1.0 - c.secondary_shorted) / turns_ratio(c)
    return Live(
        primary_v=np.abs(c.line_v - primary_a * c.line_ohm),
        secondary_v=secondary_a * np.abs(series + load),
        lifted_v=np.abs(lifted) * METER_OHM / (METER_OHM + c.secondary_fault_ohm),
        control_v=secondary_a * np.abs(load),
        protection_v=secondary_a * c.protection_ohm,
        primary_a=np.abs(primary_a),
        secondary_a=secondary_a,
    )


def turns_ratio(c: Circuit) -> Floats:
    """Primary turns of the tap in use to secondary turns [-]."""
    return c.tap_v / (c.rated_secondary_v * c.open_ratio)


def _load_ohm(c: Circuit) -> Phasors:
    return c.load_ohm * (c.power_factor + J * np.sqrt(1.0 - c.power_factor**2))


def _secondary_ohm(c: Circuit) -> Phasors:
    left = c.secondary_ohm * (1.0 - c.secondary_shorted)
    return left * (c.warm + J * c.leakage) + c.secondary_fault_ohm


def _excited(c: Circuit, z_load: Phasors) -> tuple[Phasors, Phasors]:
    """Volts of the flux in the whole primary, and primary amps; the saturated core by damped repetition."""
    k1, k2, ratio = c.primary_shorted, c.secondary_shorted, turns_ratio(c)
    y1 = 1.0 / (c.line_ohm + c.primary_ohm * (1.0 - k1) * (c.warm + J * c.leakage) + c.primary_fault_ohm)
    base = c.rated_va / c.tap_v**2
    rest = (
        c.core_loss * base
        + k1 / (c.primary_ohm * (c.warm + c.contact))
        + k2 / (c.secondary_ohm * (c.warm + c.contact)) / ratio**2
        + ((1.0 - k2) / ratio) ** 2 / (_secondary_ohm(c) + z_load)
    )
    over = np.ones_like(c.line_v)
    for _ in range(SATURATION_STEPS):
        y = rest - J * c.magnetising * base * over
        e = c.line_v * y1 / ((1.0 - k1) * y1 + y / (1.0 - k1))
        now = 1.0 - c.knee + c.knee * np.minimum(np.abs(e) / c.tap_v, 4.0) ** (SATURATION_POWER - 1)
        over = np.sqrt(over * now)
    return e, e * y / (1.0 - k1)
