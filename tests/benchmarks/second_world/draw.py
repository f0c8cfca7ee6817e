"""Draws a unit and puts one finding into it. Priors are common practice, no source, each with its reason."""

import math
from collections.abc import Callable
from typing import Final

import numpy as np

from tests.benchmarks.second_world.unit import BAD, OPEN, Unit

SHARE: Final = {
    "healthy": 0.11, "no_supply": 0.07, "low_supply": 0.05, "loose_line": 0.06, "wrong_tap": 0.07, "primary_open": 0.10,
    "primary_shorted_turns": 0.05, "secondary_open": 0.08, "secondary_shorted_turns": 0.05, "windings_bridged": 0.04, "winding_grounded": 0.05,
    "protection_open": 0.12, "load_short": 0.06, "overload": 0.06, "control_open": 0.07,
}  # fmt: skip
"""Blown low-voltage fuses lead, a transformer blamed and sound comes next, insulation is rare; none under 4 %, so that each is measured."""


def log_between(rng: np.random.Generator, low: float, high: float) -> float:
    """Even in the logarithm."""
    return float(math.exp(rng.uniform(math.log(low), math.log(high))))


def draw(rng: np.random.Generator) -> Unit:
    """One unit with one finding."""
    u = Unit(finding=str(rng.choice(list(SHARE), p=np.array(list(SHARE.values())) / sum(SHARE.values()))))
    kinds = [(120.0,), (208.0, 240.0), (120.0, 208.0, 240.0), (277.0,), (480.0,)]
    u.taps = kinds[int(rng.choice(5, p=[0.34, 0.27, 0.22, 0.09, 0.08]))]
    if u.finding == "wrong_tap" and len(u.taps) == 1:
        u.taps = kinds[int(rng.choice([1, 2]))]
    u.supply = float(rng.choice(u.taps, p={1: [1.0], 2: [0.45, 0.55], 3: [0.25, 0.4, 0.35]}[len(u.taps)]))
    u.tap = u.supply
    u.va = float(rng.choice([20, 30, 40, 50, 60, 75, 100], p=[0.08, 0.05, 0.42, 0.12, 0.04, 0.22, 0.07]))
    _transformer(rng, u)
    _site(rng, u)
    share = rng.uniform(0.25, 0.9)
    if u.finding == "overload":
        share = 1.05 * (2.5 / 1.05) ** rng.random()
    _loads(rng, u, share)
    if u.finding in FAULTS:
        FAULTS[u.finding](rng, u)
    if u.finding in BAD:
        u.trip()
    return u


def _transformer(rng: np.random.Generator, u: Unit) -> None:
    """Copper loss per VA falls with size; most are wound for 24 V at rated load, some sell fewer volts."""
    lost = 0.125 * (40 / u.va) ** 0.35 * math.exp(rng.normal(0, 0.18))
    share = rng.uniform(0.42, 0.58)
    u.secondary_ohm = lost * (1 - share) * 576 / u.va
    u.opened_v = 24 * (1 + lost * rng.uniform(0.6, 1.08)) * (1 + rng.normal(0, 0.009))
    most = max(u.taps)
    # Inner sections are of thicker wire.
    u.primary_ohm = lost * share * most**2 / u.va * (u.tap / most) ** rng.uniform(1.3, 1.8)
    u.primary_x, u.secondary_x = u.primary_ohm * rng.uniform(0.1, 0.35), u.secondary_ohm * rng.uniform(0.1, 0.35)
    u.core_w, u.core_var = u.va * rng.uniform(0.035, 0.085), u.va * rng.uniform(0.10, 0.36)
    u.bend, u.bend_power = log_between(rng, 0.05, 0.4), rng.uniform(7, 12)
    u.celsius = float(np.clip(rng.normal(42, 18), 0, 95))
    u.between_farad, u.primary_farad, u.secondary_farad = (
        log_between(rng, 1e-10, 9e-10),
        log_between(rng, 5e-11, 4e-10),
        log_between(rng, 5e-11, 4e-10),
    )
    u.insulation_ohm = log_between(rng, 5e7, 5e9)


def _site(rng: np.random.Generator, u: Unit) -> None:
    """A utility runs close to nominal or slightly high; other things hang on the same line."""
    u.line = u.supply * float(np.clip(rng.normal(1.006, 0.024), 0.925, 1.075))
    z = u.supply / rng.uniform(150, 900)
    u.neutral = u.supply in {120.0, 277.0}
    u.source_ohm = complex(z, z * rng.uniform(0.2, 1)) * (1 if u.neutral else 0.5)
    u.leg_angle = 180.0 if u.supply == 240.0 else 120.0
    u.opens_neutral = bool(rng.random() < 0.35)
    kind = rng.random()
    if kind < 0.3:
        u.beside_ac, u.beside_dc = rng.uniform(400, 3000), rng.uniform(300, 2500)
    elif kind < 0.45:
        u.beside_ac, u.beside_dc = rng.uniform(25, 200), rng.uniform(1.5, 25)
    u.chassis_ohm = float(rng.choice([0.1, 0.5, 1e9], p=[0.85, 0.1, 0.05]))
    u.bonded = bool(rng.random() < 0.4)
    u.fuse = str(rng.choice(["none", "fuse", "breaker"], p=[0.36, 0.46, 0.18]))
    u.fuse_ohm = log_between(rng, 0.015, 0.12)
    u.r_leg, u.c_leg = log_between(rng, 0.03, 0.35), log_between(rng, 0.03, 0.35)
    u.thermostat_wire = log_between(rng, 0.15, 2.5)
    u.ghost_farad, u.stub_farad = log_between(rng, 1e-11, 6e-10), log_between(rng, 1e-11, 3e-10)
    u.breaker_a = float(rng.choice([15, 20], p=[0.7, 0.3]))
    u.called, u.called_dead = bool(rng.random() < 0.7), bool(rng.random() < 0.35)


def _loads(rng: np.random.Generator, u: Unit, share: float) -> None:
    """A board that is always on, one coil, and the rest on a call."""
    u.load_va = float(share * u.va)
    always = min(rng.uniform(1, 5), 0.3 * u.load_va)
    coil = min(float(rng.choice([5, 6, 7, 8, 10, 12])), 0.7 * (u.load_va - always))
    rest = max(u.load_va - always - coil, 0.2)

    def z(va: float, factor: float) -> complex:
        return 576 / va * complex(factor, math.sqrt(1 - factor * factor))

    u.always_z, u.coil_z, u.called_z = (
        z(always, rng.uniform(0.7, 0.97)),
        z(coil, rng.uniform(0.3, 0.6)),
        z(rest, rng.uniform(0.35, 0.85)),
    )
    u.always_dc = log_between(rng, 800, 2e6)
    u.coil_dc = abs(u.coil_z) * rng.uniform(0.18, 0.33)
    u.called_dc = abs(u.called_z) * rng.uniform(0.2, 0.5)


def _no_supply(rng: np.random.Generator, u: Unit) -> None:
    both = u.neutral or rng.random() < 0.5
    u.line_ohm = (1e12, 1e12 if both and not u.neutral else 0.03)
    u.severity = "all legs" if both else "one leg"


def _low_supply(rng: np.random.Generator, u: Unit) -> None:
    ratio = rng.uniform(0.70, 0.895) if rng.random() < 0.8 else rng.uniform(1.105, 1.18)
    u.line = u.supply * ratio
    u.severity = "edge" if 0.86 < ratio < 1.13 else "low" if ratio < 1 else "high"


def _sagging(u: Unit, name: str, share: Callable[[], float], want: float) -> None:
    """Sets an ohm so that a share of the volts is left on a call."""
    u.called = True
    low, high = 0.01, 1e5
    for _ in range(40):
        setattr(u, name, math.sqrt(low * high))
        low, high = (getattr(u, name), high) if share() > want else (low, getattr(u, name))


def _loose_line(rng: np.random.Generator, u: Unit) -> None:
    u.loose_leg, u.loose_ohm, u.severity = int(rng.integers(1, 3)), OPEN, "open"
    if rng.random() < 0.4:
        u.severity = "sag"

        def left() -> float:
            at = u.net(called=True).solve(u.core)
            return abs(at.volts("P1", "P2")) / abs(at.volts("L1", "L2"))

        _sagging(u, "loose_ohm", left, rng.uniform(0.45, 0.88))


def _wrong_tap(rng: np.random.Generator, u: Unit) -> None:
    others = [t for t in u.taps if t != u.supply]
    tap = float(rng.choice(others))
    # Twice the volts kill it in minutes: rarely met alive.
    if tap == min(u.taps) == 120.0 and rng.random() < 0.7:
        tap = float(rng.choice([t for t in others if t != tap] or [tap]))
    u.severity = f"{abs(u.taps.index(tap) - u.taps.index(u.supply))} step {'high' if tap > u.supply else 'low'}"
    u.primary_ohm, u.primary_x, u.tap = u.primary_ohm * (tap / u.tap) ** 1.5, u.primary_x * (tap / u.tap) ** 1.5, tap


def _opened(link: str) -> Callable[[np.random.Generator, Unit], None]:
    def change(rng: np.random.Generator, u: Unit) -> None:
        # A burnt track sometimes leaves carbon.
        ohm = OPEN if rng.random() < 0.9 else log_between(rng, 2e5, 8e6)
        u.severity = "hard" if ohm == OPEN else "carbon"
        if rng.random() < 0.33:
            u.fuse, u.short = "none", True
            _short(rng, u)
            u.severity += ", short"
        setattr(u, link, ohm)

    return change


def _turns(name: str) -> Callable[[np.random.Generator, Unit], None]:
    def change(rng: np.random.Generator, u: Unit) -> None:
        share = 0.02 * 20 ** rng.random()
        setattr(u, name, share)
        u.shorted_ohm = u.primary_ohm * log_between(rng, 1e-4, 0.01) * (1.0 if name == "primary_shorted" else 0.05)
        u.celsius = min(u.celsius + 35, 120)
        u.severity = "2-5 %" if share < 0.05 else "5-12 %" if share < 0.12 else "12-40 %"

    return change


def _insulation_band(ohm: float) -> str:
    return "<100 ohm" if ohm < 100 else "0.1-10k" if ohm < 1e4 else "10-500k" if ohm < 5e5 else "0.5-1M"


def _bridged(rng: np.random.Generator, u: Unit) -> None:
    u.bridge_ohm, u.bridge_at = log_between(rng, 0.3, 4.2e5), (rng.random(), rng.random())
    u.severity = _insulation_band(u.bridge_ohm)


def _grounded(rng: np.random.Generator, u: Unit) -> None:
    u.ground_ohm = log_between(rng, 0.3, 4.2e5) if rng.random() < 0.92 else rng.uniform(5.2e5, 1e6)
    u.grounded, u.ground_at = str(rng.choice(["p", "s"])), rng.random()
    u.severity = f"{u.grounded} {_insulation_band(u.ground_ohm)}"


def _short(rng: np.random.Generator, u: Unit) -> None:
    """One that draws at least about four times the rating with the path closed."""
    for _ in range(40):
        u.short_ohm = log_between(rng, 0.03, 3.0)
        if u.amps("secondary_amps", called=False) >= 4.15 * u.va / 24:
            return
    u.short_ohm = 0.03


def _protection_open(rng: np.random.Generator, u: Unit) -> None:
    u.fuse = "fuse" if rng.random() < 0.75 else "breaker"
    u.severity = u.fuse
    if rng.random() < 0.45:
        u.short = True
        _short(rng, u)
        u.severity += ", short"
    u.fuse_ohm = OPEN if rng.random() < 0.95 else log_between(rng, 1e5, 5e6)


def _load_short(rng: np.random.Generator, u: Unit) -> None:
    u.short = True
    u.fuse = "none" if rng.random() < 0.75 else "fuse"
    u.severity = "no fuse" if u.fuse == "none" else "holding fuse"
    _short(rng, u)
    u.celsius = min(u.celsius + 30, 120)


def _overload(rng: np.random.Generator, u: Unit) -> None:
    u.called = bool(rng.random() < 0.85)
    share = u.load_va / u.va
    u.severity = "105-120 %" if share < 1.2 else "120-160 %" if share < 1.6 else "160-250 %"
    u.celsius = min(u.celsius + 20, 120)
    u.is_tellable = u.amps("secondary_amps", called=True) >= 1.03 * u.va / 24


def _control_open(rng: np.random.Generator, u: Unit) -> None:
    leg = "r_leg" if rng.random() < 0.6 else "c_leg"
    setattr(u, leg, OPEN)
    u.severity = f"open {leg[0]}"
    if rng.random() < 0.3:
        u.severity = f"corroded {leg[0]}"

        def left() -> float:
            at = u.net(called=True).solve(u.core)
            return abs(at.volts("R", "C")) / abs(at.volts("X1", "X2"))

        _sagging(u, leg, left, rng.uniform(0.25, 0.78))


FAULTS: Final[dict[str, Callable[[np.random.Generator, Unit], None]]] = {
    "no_supply": _no_supply, "low_supply": _low_supply, "loose_line": _loose_line, "wrong_tap": _wrong_tap, "primary_open": _opened("primary_link"),
    "secondary_open": _opened("secondary_link"), "primary_shorted_turns": _turns("primary_shorted"), "secondary_shorted_turns": _turns("secondary_shorted"),
    "windings_bridged": _bridged, "winding_grounded": _grounded, "protection_open": _protection_open, "load_short": _load_short, "overload": _overload,
    "control_open": _control_open,
}  # fmt: skip
