"""
Worlds that could be at the end of the technician's leads: broad priors, drawn from a seed, one array entry a world.

The priors are wider than the trade is, on purpose: what is fitted on them must hold in worlds that were drawn by somebody else.
Common practice, no source, where a line does not say its reason.
"""

from collections.abc import Callable
from dataclasses import dataclass
from typing import Any, Final

import numpy as np
import numpy.typing as npt

from core.circuit.plant import OPEN_OHM, Circuit, Flags, Floats
from core.circuit.windings import LEAKAGE_SHARE, PRIMARY_SHARE, RATINGS_VA, SECONDARY_SHARE, SHARE, SIZE_POWER, TAPS
from core.findings import FINDINGS

NAMES: Final = tuple(FINDINGS)
F: Final = {name: number for number, name in enumerate(NAMES)}
"""Number of each finding."""
BAD: Final = np.array([row.transformer == "bad" for row in FINDINGS.values()])
SUPPLIES: Final = tuple(TAPS)
LOST_OHM: Final = 0.5e6
"""Insulation under this is lost; over `SOUND_OHM` it is sound. Common practice, no source."""
SOUND_OHM: Final = 8e6

Counts = npt.NDArray[np.intp]


@dataclass(frozen=True, slots=True, kw_only=True)
class Pins:
    """What the nameplate and the building say; None where nothing is known."""

    supply_v: float | None = None
    tap_v: float | None = None
    rated_va: float | None = None
    rated_secondary_v: float | None = None
    load_va: float | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class Worlds:
    """Circuits, and what the live circuit does not need but the meter meets."""

    finding: Counts
    circuit: Circuit
    supply_v: Floats
    """Nominal."""
    short: Flags
    """A short in the control circuit, the finding or behind it."""
    fused: Flags
    """There is a low-voltage fuse or breaker to measure."""
    called: Flags
    load_share: Floats
    """VA connected when everything is called, to the rating."""
    load_dc_ohm: Floats
    """What an ohmmeter sees into the control circuit. [ohm]"""
    coil_ohm: Floats
    coil_reached: Flags
    """The coil that is read is called, and nothing is open on the way to it."""
    between_ohm: Floats
    """Primary to secondary. [ohm]"""
    primary_ground_ohm: Floats
    secondary_ground_ohm: Floats
    grounded_neutral: Flags
    """One primary lead is tied to earth while it is connected."""
    bonded: Flags
    """One secondary lead is tied to the core while it is connected."""
    beside_ohm: Floats
    """What stands across the primary leads while they are connected. [ohm]"""


def draw(rng: np.random.Generator, finding: Counts, pins: Pins | None = None) -> Worlds:
    """
    One world for each finding number given.

    Args:
        rng: Where the draws come from.
        finding: Numbers of `F`.
        pins: What is known.

    Returns:
        The worlds.
    """
    pins = pins or Pins()
    n = len(finding)
    is_ = {name: finding == number for name, number in F.items()}
    supply, tap = _nominals(rng, is_["wrong_tap"], n, pins)
    va, v2 = _ratings(rng, n, pins)
    unit = _unit(rng, tap, va, v2)
    load, called, share = _load(rng, is_, va, v2, pins)
    fault = _fault(rng, is_, unit, load, va, v2)
    short, short_ohm = _short(rng, is_, va, v2)
    fused, protection = _protection(rng, is_)
    between, ground1, ground2 = _insulation(rng, is_, n)
    neutral = np.isin(supply, (120.0, 277.0)) & (rng.random(n) < 0.9)
    bonded = rng.random(n) < 0.45
    fault["primary_shorted"], hard = _shorted_to_core(rng, fault["primary_shorted"], unit["primary_ohm"], ground1, neutral)
    # A hard touch between windings that are both tied to earth loads the primary likewise, and what comes out is anything.
    fault["primary_shorted"], bridged = _shorted_to_core(
        rng, fault["primary_shorted"], unit["primary_ohm"], between, neutral & bonded
    )
    unit["open_ratio"] = np.where(bridged, unit["open_ratio"] * _log(rng, 0.4, 2.0, n), unit["open_ratio"])
    hard |= bridged | (fault["primary_shorted"] > 0.5)
    fault["secondary_shorted"], _ = _shorted_to_core(rng, fault["secondary_shorted"], unit["secondary_ohm"], ground2, bonded)
    circuit = Circuit(
        line_v=_line(rng, is_, supply, hard),
        tap_v=tap,
        rated_va=va,
        rated_secondary_v=v2,
        protection_ohm=protection,
        wire_ohm=_log(rng, 0.02, 1.2, n),
        load_ohm=load,
        power_factor=rng.uniform(0.4, 1.0, n),
        short_ohm=short_ohm,
        **unit,
        **fault,
    )
    return Worlds(
        finding=finding,
        circuit=circuit,
        supply_v=supply,
        short=short,
        fused=fused,
        called=called,
        load_share=share,
        load_dc_ohm=_load_dc(rng, circuit, called),
        # A burnt coil is a fault downstream: nothing up to R and C is wrong.
        coil_ohm=np.where(is_["healthy"] & (rng.random(n) < 0.15), OPEN_OHM, _log(rng, 4.0, 90.0, n)),
        coil_reached=called & ~(is_["healthy"] & (rng.random(n) < 0.4)),
        between_ohm=between,
        primary_ground_ohm=ground1,
        secondary_ground_ohm=ground2,
        grounded_neutral=neutral,
        bonded=bonded,
        beside_ohm=np.where(rng.random(n) < 0.4, OPEN_OHM, _log(rng, 0.3, 3000.0, n)),
    )


def _ratings(rng: np.random.Generator, n: int, pins: Pins) -> tuple[Floats, Floats]:
    """VA and secondary volts of the nameplate."""
    va = _given(pins.rated_va, lambda: rng.choice(RATINGS_VA, n, p=_flat(list(SHARE.values()))), n)
    other = rng.choice([12.0, 16.0, 18.0, 28.0], n)
    return va, _given(pins.rated_secondary_v, lambda: np.where(rng.random(n) < 0.985, 24.0, other), n)


def _short(rng: np.random.Generator, is_: dict[str, Flags], va: Floats, v2: Floats) -> tuple[Flags, Floats]:
    """A short in the control circuit, the finding itself or what opened a winding or a fuse."""
    n = len(va)
    behind = 0.5 * is_["protection_open"] + 0.33 * (is_["primary_open"] | is_["secondary_open"])
    behind = behind + 0.05 * (is_["primary_shorted_turns"] | is_["secondary_shorted_turns"])
    short = is_["load_short"] | (rng.random(n) < behind)
    # The least that counts as a short is about four times the rating; most are nearly dead shorts.
    limit = v2**2 / (4.0 * va)
    return short, np.where(short, np.minimum(_log(rng, 0.02, 4.0, n), 0.9 * limit * _log(rng, 0.3, 1.0, n)), OPEN_OHM)


def _protection(rng: np.random.Generator, is_: dict[str, Flags]) -> tuple[Flags, Floats]:
    """Whether there is a low-voltage fuse or breaker, and its ohms; some burnt ones leave a track."""
    opened = is_["protection_open"]
    n = len(opened)
    fused = (rng.random(n) < 0.65) | opened
    burnt = np.where(rng.random(n) < 0.93, OPEN_OHM, _log(rng, 1e5, OPEN_OHM, n))
    return fused, np.where(opened, burnt, np.where(fused, _log(rng, 0.01, 0.3, n), 0.0))


def _load_dc(rng: np.random.Generator, c: Circuit, called: Flags) -> Floats:
    """Into the control circuit by an ohmmeter: coils read far under their impedance; with no call most of it is open."""
    n = len(called)
    idle = np.where(rng.random(n) < 0.5, OPEN_OHM, _log(rng, 30.0, OPEN_OHM, n))
    seen = np.where(called | (rng.random(n) < 0.25), c.load_ohm * _log(rng, 0.12, 0.95, n), idle)
    return 1.0 / (1.0 / seen + 1.0 / c.short_ohm) + np.where(rng.random(n) < 0.55, c.break_ohm, 0.0)


def _log(rng: np.random.Generator, low: float, high: float, n: int) -> Floats:
    return np.exp(rng.uniform(np.log(low), np.log(high), n))


def _flat(weights: list[float]) -> Floats:
    """Custom, halfway to evenness."""
    root = np.sqrt(np.array(weights))
    return np.asarray(root / root.sum(), dtype=np.float64)


def _given(value: float | None, otherwise: Callable[[], npt.NDArray[Any]], n: int) -> Floats:
    return np.full(n, float(value)) if value is not None else np.asarray(otherwise(), dtype=np.float64)


def _nominals(rng: np.random.Generator, wrong: Flags, n: int, pins: Pins) -> tuple[Floats, Floats]:
    """Supply and tap: equal, or for a wrong tap one or more steps apart, one step more often."""
    odds = _flat(list(TAPS.values()))
    supply = _given(pins.supply_v, lambda: rng.choice(SUPPLIES, n, p=odds), n)
    if pins.tap_v is not None:
        tap = np.full(n, float(pins.tap_v))
        if pins.supply_v is None:
            supply = np.where(wrong, _stepped(rng, tap, n), tap)
        return supply, tap
    return supply, np.where(wrong, _stepped(rng, supply, n), np.where(np.abs(supply - 230.0) < 8.0, 240.0, supply))


def _stepped(rng: np.random.Generator, volts: Floats, n: int) -> Floats:
    """Another voltage of the trade, near ones more often than far ones."""
    others = np.array(SUPPLIES)
    far = np.abs(np.log(others[None, :] / volts[:, None]))
    weight = np.where(far < 0.05, 0.0, np.exp(-2.0 * far) + 0.05)
    edge = np.cumsum(weight / weight.sum(axis=1, keepdims=True), axis=1)
    return np.asarray(others[np.minimum((rng.random((n, 1)) > edge).sum(axis=1), len(others) - 1)], dtype=np.float64)


def _line(rng: np.random.Generator, is_: dict[str, Flags], supply: Floats, hard: Flags) -> Floats:
    """
    Volts at the line terminals. A supply is out of its limits under 90 or over 110 % of nominal.

    A fault of a winding may have tripped the breaker, a hard one to earth often has.
    """
    n = len(supply)
    usual = np.where(rng.random(n) < 0.7, rng.normal(1.0, 0.022, n), rng.uniform(0.91, 1.09, n))
    out = np.where(rng.random(n) < 0.75, rng.uniform(0.55, 0.898, n), rng.uniform(1.102, 1.25, n))
    out = np.where(
        rng.random(n) < 0.35, np.where(rng.random(n) < 0.75, rng.uniform(0.84, 0.898, n), rng.uniform(1.102, 1.13, n)), out
    )
    ratio = np.where(is_["low_supply"], out, np.clip(usual, 0.902, 1.098))
    tripping = is_["primary_shorted_turns"] | is_["winding_grounded"] | is_["windings_bridged"] | is_["primary_open"]
    dead = is_["no_supply"] | (tripping & (rng.random(n) < np.where(hard, 0.5, 0.12)))
    return np.where(dead, 0.0, ratio * supply)


def _unit(rng: np.random.Generator, tap: Floats, va: Floats, v2: Floats) -> dict[str, Floats]:
    """A transformer of some make: ohms and open-circuit volts follow its size loosely."""
    n = len(tap)
    size = (va / 40.0) ** SIZE_POWER * np.exp(rng.normal(0.0, 0.22, n))
    share1 = PRIMARY_SHARE * size * np.exp(rng.normal(0.0, 0.22, n))
    share2 = SECONDARY_SHARE * size * np.exp(rng.normal(0.0, 0.22, n))
    return {
        "primary_ohm": share1 * tap**2 / va,
        "secondary_ohm": share2 * v2**2 / va,
        "open_ratio": _open_ratio(rng, share1 + share2),
        "warm": rng.uniform(0.95, 1.35, n),
        "leakage": LEAKAGE_SHARE * _log(rng, 0.3, 2.5, n),
        "magnetising": _log(rng, 0.08, 0.6, n),
        "core_loss": _log(rng, 0.02, 0.12, n),
        "knee": rng.uniform(0.05, 0.6, n),
    }


def _open_ratio(rng: np.random.Generator, lost: Floats) -> Floats:
    """Rated volts at rated load, as most are wound. A few makes rate the open-circuit volts, and some go by neither."""
    n = len(lost)
    kind = rng.random(n)
    wound = (1.0 + lost) * rng.normal(1.0, 0.028, n)
    return np.where(kind < 0.1, rng.uniform(0.97, 1.06, n), np.where(kind < 0.2, rng.uniform(1.03, 1.22, n), wound))


def _load(rng: np.random.Generator, is_: dict[str, Flags], va: Floats, v2: Floats, pins: Pins) -> tuple[Floats, Flags, Floats]:
    """Impedance of what is on now, whether anything is called, and the share of the rating with everything called."""
    n = len(va)
    share = _log(rng, 0.06, 0.97, n)
    if pins.load_va is not None:
        share = pins.load_va / va * rng.normal(1.0, 0.08, n)
    over = np.where(rng.random(n) < 0.5, rng.uniform(1.05, 2.5, n), rng.uniform(1.05, 1.6, n))
    share = np.where(is_["overload"], over, np.minimum(share, 1.0))
    called = rng.random(n) < np.where(is_["overload"], 0.93, 0.7)
    # With no call a board and a thermostat draw a few VA.
    now = np.where(called, share, np.minimum(share, _log(rng, 0.003, 0.12, n)))
    return v2**2 / (va * now), called, share


def _fault(
    rng: np.random.Generator, is_: dict[str, Flags], unit: dict[str, Floats], load: Floats, va: Floats, v2: Floats
) -> dict[str, Floats]:
    """What each finding changes in the circuit; the healthy value elsewhere."""
    n = len(va)
    # An open is an open, or a carbon track.
    open_ = np.where(rng.random(n) < 0.92, OPEN_OHM, _log(rng, 3e4, OPEN_OHM, n))
    # Most are few; a winding that burnt on is most or nearly all of it.
    gross = np.where(rng.random(n) < 0.5, rng.uniform(0.4, 0.95, n), 1.0 - _log(rng, 0.003, 0.1, n))
    turns = np.where(rng.random(n) < 0.72, _log(rng, 0.02, 0.4, n), gross)
    ratio2 = unit["primary_ohm"] / PRIMARY_SHARE * SECONDARY_SHARE / unit["secondary_ohm"]
    # A loose joint takes 8 % and more of the line at the load that is on now, or it is open.
    seen = 1.0 / (1.0 / (ratio2 * load) + unit["magnetising"] * va / v2**2 / np.maximum(ratio2, 1e-9))
    sag = rng.uniform(0.06, 0.9, n)
    loose = np.where(rng.random(n) < 0.5, OPEN_OHM, seen * sag / (1.0 - sag))
    drop = rng.uniform(0.08, 0.95, n)
    joint = np.where(rng.random(n) < 0.6, np.where(rng.random(n) < 0.93, OPEN_OHM, open_), load * drop / (1.0 - drop))
    return {
        "line_ohm": np.where(is_["loose_line"], loose, _log(rng, 0.05, 1.0, n)),
        "primary_fault_ohm": np.where(is_["primary_open"], open_, 0.0),
        "secondary_fault_ohm": np.where(is_["secondary_open"], open_, 0.0),
        "primary_shorted": np.where(is_["primary_shorted_turns"], turns, 0.0),
        "secondary_shorted": np.where(is_["secondary_shorted_turns"], turns, 0.0),
        "contact": np.where(rng.random(n) < 0.6, 0.0, _log(rng, 0.03, 1.5, n)),
        "break_ohm": np.where(is_["control_open"], joint, 0.0),
    }


def _shorted_to_core(
    rng: np.random.Generator, shorted: Floats, winding_ohm: Floats, ground_ohm: Floats, is_tied: Flags
) -> tuple[Floats, Flags]:
    """A winding with one end tied to earth and a touch to the core farther on has the turns between them shorted."""
    share = rng.uniform(0.02, 0.95, len(shorted))
    touches = is_tied & (ground_ohm < 0.3 * share * winding_ohm)
    return np.where(touches, share, shorted), touches


def _insulation(rng: np.random.Generator, is_: dict[str, Flags], n: int) -> tuple[Floats, Floats, Floats]:
    """Primary to secondary, primary to core, secondary to core. Lost from a dead touch to half a megohm."""

    def lost() -> Floats:
        return np.where(rng.random(n) < 0.35, _log(rng, 0.1, 50.0, n), _log(rng, 50.0, 1e6, n))

    def sound() -> Floats:
        return np.where(rng.random(n) < 0.85, OPEN_OHM, _log(rng, SOUND_OHM, OPEN_OHM, n))

    primary = rng.random(n) < 0.55
    return (
        np.where(is_["windings_bridged"], lost(), sound()),
        np.where(is_["winding_grounded"] & primary, lost(), sound()),
        np.where(is_["winding_grounded"] & ~primary, lost(), sound()),
    )
