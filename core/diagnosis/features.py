"""
Readings and facts as the numbers that the fitted belief takes: each reading by itself, and the ratios between them that the trade looks at.

A ratio needs both of its sides; where one is missing, it is absent and all its numbers are 0. Every present ratio is given three times, wide,
narrow and narrower about 1, because a loss of 4 % of the volts must be seen beside one of 100 %.
"""

from dataclasses import dataclass
from typing import Final

import numpy as np
import numpy.typing as npt

from core.circuit.plant import Flags, Floats
from core.diagnosis.meter import OHMS, SEEN, M
from core.diagnosis.worlds import SUPPLIES
from core.readings import SYMPTOMS

Inputs = npt.NDArray[np.float32]
FACTS: Final = ("supply_volts", "tap_volts", "rated_va", "rated_secondary_volts", "load_va", "fuse_amps")
T: Final = {name: number for number, name in enumerate(FACTS)}


@dataclass(frozen=True, slots=True, kw_only=True)
class Evidence:
    """All that was told, one row a job."""

    value: Floats
    """A column a measure of `SEEN`: `inf` for an open, `nan` where it was not read."""
    confirmed: Flags
    """Read twice alike."""
    connected: Flags
    low_impedance: Flags
    unfused: Floats
    """One column: 1 where the low-voltage fuse could not be measured, mostly because there is none."""
    facts: Floats
    """A column a fact of `FACTS`, `nan` where it was not told."""
    symptoms: Floats
    """A column a symptom of `SYMPTOMS`: 1 where it was told."""


def encode(e: Evidence) -> Inputs:
    """
    The inputs of the fitted belief.

    Args:
        e: What was told.

    Returns:
        One row a job, all finite, absent things 0.
    """
    with np.errstate(all="ignore"):
        nominal = _nominal(e)
        columns = [*_each(e), *_ratios(e, nominal), *_facts(e, nominal), e.symptoms, e.unfused]
    return np.nan_to_num(np.concatenate(columns, axis=1), copy=False, nan=0.0, posinf=0.0, neginf=0.0).astype(np.float32)


def _each(e: Evidence) -> list[Floats]:
    """Every reading by itself: there, open, near nothing, its size, and what is known of how it was taken."""
    there = ~np.isnan(e.value)
    opened = np.isinf(e.value)
    small = np.where(OHMS, np.exp(-e.value / 0.7), np.exp(-e.value / 1.5))
    size = np.where(OHMS, np.log10(e.value + 0.05) / 3.0, np.log10(e.value + 0.03))
    size = np.where(opened, 0.0, size)
    ghostly = np.where(there & ~OHMS & e.low_impedance, 1.0, 0.0)[:, [M["line_volts"], M["primary_volts"], M["control_volts"]]]
    joined = np.where(e.connected, 1.0, 0.0)[:, OHMS]
    ohms = e.value[:, OHMS]
    meg = np.where(np.isfinite(ohms), np.tanh(np.log10(ohms / 2e6) * 2.0), 0.0)
    return [
        there * 1.0,
        (opened * 1.0)[:, OHMS],
        np.where(there, small, 0.0),
        size,
        ghostly,
        joined,
        meg,
        e.confirmed * there * 1.0,
    ]


def _nominal(e: Evidence) -> tuple[Floats, Floats]:
    """The voltage of the trade that belongs here: told, else of the tap, else the nearest to what was read."""
    told = e.facts[:, T["supply_volts"]]
    read = np.fmax(e.value[:, M["line_volts"]], e.value[:, M["primary_volts"]])
    others = np.array(SUPPLIES)
    near = others[np.argmin(np.abs(np.log(np.maximum(np.nan_to_num(read, nan=120.0), 1.0)[:, None] / others)), axis=1)]
    near = np.where(np.isnan(read), np.nan, near)
    tap = e.facts[:, T["tap_volts"]]
    supply = np.where(np.isnan(told), np.where(np.isnan(near), tap, near), told)
    return supply, np.where(np.isnan(tap), supply, tap)


def _ratios(e: Evidence, nominal: tuple[Floats, Floats]) -> list[Floats]:
    """What the trade divides by what."""
    v = {name: e.value[:, number] for name, number in M.items()}
    f = {name: e.facts[:, number] for name, number in T.items()}
    supply, tap = nominal
    va = np.where(np.isnan(f["rated_va"]), 40.0, f["rated_va"])
    v2 = np.where(np.isnan(f["rated_secondary_volts"]), 24.0, f["rated_secondary_volts"])
    line, primary, secondary, lifted = v["line_volts"], v["primary_volts"], v["secondary_volts"], v["secondary_volts_lifted"]
    out_v = np.where(np.isnan(lifted), secondary, lifted)
    in_v = np.where(np.isnan(primary), line, primary)
    control, load = v["control_volts"], v["load_ohms"]
    base2 = v2**2 / va
    step = (v2 / tap) ** 2
    opened = 1.0 + v["secondary_ohms"] / base2 + v["primary_ohms"] * va / tap**2
    pairs = (
        line / f["supply_volts"], line / supply, line / f["tap_volts"], primary / line, primary / supply, primary / f["tap_volts"],
        secondary / v2, lifted / v2, control / v2, control / secondary, control / lifted, secondary / lifted,
        v["fuse_volts"] / out_v, v["coil_volts"] / control, v["coil_volts"] / secondary,
        out_v / in_v * tap / v2, secondary / in_v * tap / v2, out_v / in_v * f["tap_volts"] / v2,
        *(out_v / in_v * volts / 24.0 for volts in SUPPLIES),
        v["primary_amps"] * in_v / va, v["primary_amps"] * in_v / f["rated_va"], v["secondary_amps"] * secondary / va,
        v["secondary_amps"] * v2 / va, v["secondary_amps"] * v2 / f["rated_va"], secondary / v["secondary_amps"] / base2,
        v["primary_amps"] * in_v / (v["secondary_amps"] * out_v + 0.05 * va), v["primary_amps"] * tap / va,
        v["primary_ohms"] / (0.054 * tap**2 / va), v["primary_ohms"] / (0.054 * f["tap_volts"] ** 2 / f["rated_va"]),
        v["secondary_ohms"] / (0.072 * base2), v["secondary_ohms"] / (0.072 * v2**2 / f["rated_va"]),
        v["primary_ohms"] * step / v["secondary_ohms"], v["primary_ohms"] / v["secondary_ohms"] / 19.0,
        load / base2, load / v["secondary_ohms"], load * v["secondary_amps"] / secondary, f["tap_volts"] / f["supply_volts"],
        f["load_va"] / f["rated_va"], f["load_va"] / (secondary * v["secondary_amps"]), f["load_va"] / va,
        v["secondary_amps"] / f["fuse_amps"], v["coil_ohms"] / (0.5 * base2),
        *_balance(v, in_v, v["primary_ohms"] * step, va, f["rated_va"]), out_v / in_v * tap / v2 / opened, lifted / in_v * tap / v2 / opened,
    )  # fmt: skip
    r = np.stack(pairs, axis=1)
    r = np.where(np.isfinite(r), r, np.nan)
    wide = np.clip(np.log(r + 1e-3), -5.0, 5.0) / 2.0
    return [~np.isnan(r) * 1.0, wide, np.tanh((r - 1.0) / 0.15), np.tanh((r - 1.0) / 0.04)]


def _balance(v: dict[str, Floats], in_v: Floats, primary_seen: Floats, va: Floats, rated_va: Floats) -> tuple[Floats, ...]:
    """What goes in and does not come out, and the drops in the copper: these need neither load nor nameplate."""
    secondary, amps = v["secondary_volts"], v["secondary_amps"]
    kept = v["primary_amps"] * in_v - amps * secondary
    sag = (v["secondary_volts_lifted"] - secondary) / amps
    return (
        kept / (0.4 * va), kept / (0.4 * rated_va), kept / (0.4 * amps * secondary + 0.02 * va),
        v["primary_amps"] * v["primary_ohms"] / in_v / 0.054, amps * v["secondary_ohms"] / secondary / 0.072,
        sag / (v["secondary_ohms"] + primary_seen), sag / v["secondary_ohms"] / 1.8,
    )  # fmt: skip


def _facts(e: Evidence, nominal: tuple[Floats, Floats]) -> list[Floats]:
    """What was told and not measured, and which nominal volts were meant."""
    supply, tap = nominal
    known = np.array(SUPPLIES)
    told = ~np.isnan(e.facts)
    at = [np.exp(-(((volts[:, None] - known) / (0.04 * known)) ** 2)) for volts in (supply, tap)]
    sizes = np.log10(e.facts + 0.1)
    line = e.value[:, [M["line_volts"], M["primary_volts"]]]
    inside = (line[:, :, None] / known).reshape(len(line), -1)
    return [told * 1.0, np.where(told, sizes, 0.0), *at, np.tanh((inside - 0.9) / 0.03), np.tanh((inside - 1.1) / 0.03)]


PAIRS: Final = 55
WIDTH: Final = len(SEEN) * 4 + int(OHMS.sum()) * 3 + 3 + PAIRS * 4 + len(FACTS) * 2 + 10 + 20 + len(SYMPTOMS) + 1
"""Length of a row of `encode`."""
