"""
What a hand meter in a hurried hand shows of a world: one reading of every measure, `inf` for an open, `nan` where there is nothing to read.

Meters here are worse than their data sheets on purpose. Slips (a digit, a decimal point, k for M, the wrong place), parts that were not
isolated and ghost volts on floating conductors are part of the reading, not of the world.
"""

from dataclasses import dataclass
from typing import Final

import numpy as np

from core.circuit.plant import OPEN_OHM, Flags, Floats, Live
from core.diagnosis.worlds import F, Worlds
from core.measures import MEASURES

SEEN: Final = tuple(name for name, row in MEASURES.items() if not row.pair)
"""The measures that mean something without lead names."""
M: Final = {name: number for number, name in enumerate(SEEN)}
OHMS: Final = np.array([MEASURES[name].unit == "ohm" for name in SEEN])
ISOLATED: Final = np.array([MEASURES[name].setup in ("isolated", "load") or name == "fuse_ohms" for name in SEEN])
"""Measures that read a parallel path where the part was not isolated."""
INSULATION: Final = np.array(
    [name in {"primary_secondary_ohms", "primary_ground_ohms", "secondary_ground_ohms"} for name in SEEN]
)

_MIXED_UP: Final = {
    "line_volts": "primary_volts", "primary_volts": "line_volts", "secondary_volts": "control_volts",
    "secondary_volts_lifted": "secondary_volts", "control_volts": "secondary_volts", "coil_volts": "control_volts",
    "primary_ohms": "secondary_ohms", "secondary_ohms": "primary_ohms", "primary_ground_ohms": "secondary_ground_ohms",
    "secondary_ground_ohms": "primary_ground_ohms", "primary_amps": "secondary_amps", "secondary_amps": "primary_amps",
}  # fmt: skip


@dataclass(frozen=True, slots=True, kw_only=True)
class Shown:
    """Readings, one row a world and one column a measure of `SEEN`."""

    value: Floats
    told_connected: Flags
    """The technician says that the part was still connected."""
    low_impedance: Flags


@dataclass(frozen=True, slots=True, kw_only=True)
class Hand:
    """How good the technician and the meter are, one entry a world."""

    slip: Floats
    forgets: Floats
    """Chance that a part is not isolated."""
    accuracy: Floats
    lead_ohm: Floats
    range_ohm: Floats
    amps: Floats
    """Clamp's own error. [A]"""
    ghosts: Floats
    """Chance that a floating conductor shows one."""


def hands(rng: np.random.Generator, n: int) -> Hand:
    """Technicians and meters, from careful to careless."""
    return Hand(
        slip=rng.choice([0.0, 0.01, 0.02, 0.05], n),
        forgets=rng.choice([0.0, 0.05, 0.12, 0.25], n),
        accuracy=rng.uniform(0.003, 0.015, n),
        lead_ohm=rng.uniform(0.0, 0.5, n) * (rng.random(n) < 0.8),
        range_ohm=rng.choice([2e6, 6e6, 10e6, 20e6, 40e6, 60e6], n, p=[0.05, 0.15, 0.15, 0.25, 0.3, 0.1]),
        amps=np.exp(rng.uniform(np.log(0.003), np.log(0.04), n)),
        ghosts=rng.choice([0.0, 0.2, 0.5], n),
    )


def true_values(rng: np.random.Generator, w: Worlds, live: Live) -> Floats:
    """What a perfect meter shows, parts isolated, nothing ghostly."""
    n = len(w.finding)
    c = w.circuit
    out = np.full((n, len(SEEN)), np.nan)
    cool = rng.uniform(0.92, 1.25, n)
    rows = {
        "line_volts": c.line_v,
        "primary_volts": live.primary_v,
        "secondary_volts": live.secondary_v,
        "secondary_volts_lifted": live.lifted_v,
        "control_volts": live.control_v,
        "coil_volts": np.where(w.coil_reached, live.control_v * rng.uniform(0.9, 1.0, n), 0.0),
        "fuse_volts": np.where(w.fused, live.protection_v, np.nan),
        "primary_amps": live.primary_a,
        "secondary_amps": live.secondary_a,
        "primary_ohms": c.primary_ohm * (1.0 - c.primary_shorted) * cool + c.primary_fault_ohm,
        "secondary_ohms": c.secondary_ohm * (1.0 - c.secondary_shorted) * cool + c.secondary_fault_ohm,
        "primary_secondary_ohms": w.between_ohm,
        "primary_ground_ohms": w.primary_ground_ohm,
        "secondary_ground_ohms": w.secondary_ground_ohm,
        "load_ohms": w.load_dc_ohm,
        "fuse_ohms": np.where(w.fused, c.protection_ohm, np.nan),
        "coil_ohms": np.where(w.short & (w.finding == F["load_short"]) & (rng.random(n) < 0.3), w.load_dc_ohm, w.coil_ohm),
    }
    for name, values in rows.items():
        out[:, M[name]] = values
    return out


def connected_values(rng: np.random.Generator, w: Worlds, true: Floats) -> Floats:
    """What an ohmmeter shows where the part was not isolated: the parallel path."""
    n = len(w.finding)
    out = true.copy()
    path2 = w.load_dc_ohm + w.circuit.protection_ohm
    # The tip is on the neutral's lead, or on the other one and sees the whole primary.
    through = np.where(rng.random(n) < 0.65, 0.0, rng.uniform(0.8, 1.0, n) * true[:, M["primary_ohms"]].clip(0.0, 500.0))
    tie1 = np.where(w.grounded_neutral, through + rng.uniform(0.05, 1.0, n), OPEN_OHM)
    tie2 = np.where(w.bonded, rng.uniform(0.05, 3.0, n), OPEN_OHM)

    def beside(name: str, path: Floats) -> None:
        out[:, M[name]] = 1.0 / (1.0 / np.maximum(true[:, M[name]], 1e-6) + 1.0 / np.maximum(path, 1e-6))

    beside("primary_ohms", w.beside_ohm)
    beside("secondary_ohms", path2)
    beside("primary_ground_ohms", tie1)
    beside("secondary_ground_ohms", tie2)
    beside("primary_secondary_ohms", tie1 + tie2)
    beside("load_ohms", true[:, M["secondary_ohms"]] + w.circuit.protection_ohm)
    beside("fuse_ohms", true[:, M["secondary_ohms"]] + w.load_dc_ohm)
    return out


def show(rng: np.random.Generator, w: Worlds, hand: Hand, true: Floats, connected: Floats) -> Shown:
    """
    One reading of every measure.

    Args:
        rng: Where the draws come from.
        w: The worlds.
        hand: Who measures with what.
        true: From `true_values`.
        connected: From `connected_values`.

    Returns:
        What is reported.
    """
    shape = true.shape
    forgot = ISOLATED & (rng.random(shape) < hand.forgets[:, None])
    low_z = ~OHMS & (rng.random(shape) < 0.08)
    value = np.where(forgot, connected, true)
    value = np.where(low_z, value, _ghosts(rng, w, hand, value))
    # Fingers on the tips: a hand is a third of a megohm to some.
    fingers = INSULATION & (rng.random(shape) < 0.3 * hand.slip[:, None])
    value = np.where(fingers, 1.0 / (1.0 / np.maximum(value, 1e-6) + 10.0 ** -rng.uniform(5.5, 6.5, shape)), value)
    value = _slipped(rng, hand, value)
    error = np.maximum(hand.accuracy, 0.005)[:, None] * rng.standard_normal(shape)
    value = value * (1.0 + error)
    ohms = value + hand.lead_ohm[:, None] * rng.uniform(0.5, 1.2, shape) + 0.1 * rng.random(shape)
    volts = np.abs(value + rng.normal(0.0, 0.07, shape))
    amps = np.abs(value + hand.amps[:, None] * rng.standard_normal(shape))
    unit_a = np.array([MEASURES[name].unit == "A" for name in SEEN])
    value = np.where(OHMS, ohms, np.where(unit_a, amps, volts))
    value = np.where(OHMS & (value > hand.range_ohm[:, None]), np.inf, value)
    return Shown(value=value, told_connected=forgot & (rng.random(shape) < 0.3), low_impedance=low_z)


def _ghosts(rng: np.random.Generator, w: Worlds, hand: Hand, value: Floats) -> Floats:
    """Volts that a high-impedance meter sees on conductors that nothing holds down."""
    out = value.copy()
    n = len(value)
    control = np.isin(w.finding, (F["protection_open"], F["control_open"]))
    loose = w.circuit.line_ohm > OPEN_OHM / 10.0
    level = rng.uniform(0.01, 0.85, n) ** 1.5
    for name, floating, volts in (
        ("line_volts", w.circuit.line_v == 0.0, level * w.supply_v),
        ("primary_volts", (w.circuit.line_v == 0.0) | loose, level * rng.uniform(0.8, 1.0, n) * w.supply_v),
        # No ghost stands on coils that are connected.
        ("secondary_volts", (w.circuit.secondary_fault_ohm > 0.0) & ~w.called & ~w.short, level * 8.0),
        ("secondary_volts_lifted", w.circuit.secondary_fault_ohm > 0.0, level * 10.0),
        ("control_volts", control, level * 18.0),
        ("coil_volts", control, level * 12.0),
    ):
        hit = floating & (rng.random(n) < hand.ghosts)
        out[:, M[name]] = np.where(hit, np.maximum(out[:, M[name]], volts), out[:, M[name]])
    return out


def _slipped(rng: np.random.Generator, hand: Hand, value: Floats) -> Floats:
    """A slip in a few readings: decimal point, k for M or nothing for k, or the wrong place."""
    shape = value.shape
    kind = rng.random(shape)
    factor = np.where(rng.random(shape) < 0.5, 10.0, 0.1)
    factor = np.where(OHMS & (kind < 0.45), np.where(rng.random(shape) < 0.5, 1e3, 1e-3), factor)
    swapped = value.copy()
    for name, other in _MIXED_UP.items():
        swapped[:, M[name]] = value[:, M[other]]
    finite = np.where(value < OPEN_OHM / 10.0, value * factor, value)
    return np.where(rng.random(shape) < hand.slip[:, None], np.where(kind < 0.75, finite, swapped), value)
