"""Draws a unit of the third world. Priors are common practice, no source."""

import math
from typing import Any, Final

import numpy as np

from tests.benchmarks.third_world.faults import FAULTS, Drawn, even_in_log
from tests.benchmarks.third_world.unit import Unit

PRIOR: Final = {
    "healthy": 14, "no_supply": 7, "low_supply": 5, "loose_line": 6, "wrong_tap": 7, "primary_open": 11, "primary_shorted_turns": 5,
    "secondary_open": 5, "secondary_shorted_turns": 6, "windings_bridged": 4.5, "winding_grounded": 5, "protection_open": 9, "load_short": 6,
    "overload": 5, "control_open": 4.5,
}  # fmt: skip
SIZES: Final = (20.0, 30.0, 40.0, 50.0, 75.0, 100.0)
SIZE_SHARES: Final = (0.08, 0.05, 0.50, 0.15, 0.16, 0.06)
FAMILIES: Final = ((120.0,), (208.0, 240.0), (120.0, 208.0, 240.0), (277.0,), (480.0,), (120.0, 208.0, 240.0, 480.0))
FAMILY_SHARES: Final = (0.32, 0.18, 0.28, 0.07, 0.08, 0.07)
LADDER: Final = (120.0, 208.0, 240.0, 277.0, 480.0)
TRIPPING: Final = {"windings_bridged", "winding_grounded", "primary_shorted_turns"}


def draw(rng: np.random.Generator) -> Unit:
    """One unit with one finding."""
    shares = np.array(list(PRIOR.values()), float)
    finding = str(rng.choice(list(PRIOR), p=shares / shares.sum()))
    va = float(rng.choice(SIZES, p=SIZE_SHARES))
    family = FAMILIES[int(rng.choice(len(FAMILIES), p=FAMILY_SHARES))]
    u = Drawn(rng, finding, va, family)
    _taps(u)
    _line(u)
    _transformer(u)
    _site(u)
    _control(u)
    if finding in FAULTS:
        FAULTS[finding](u)
    u.p["fuse_amps"] = u.fuse_amps if u.fused else None
    unit = Unit(finding, u.severity, u.short, u.supply, u.tap, va, u.fused, u.p)
    if finding in TRIPPING:
        _trip(rng, unit)
    return unit


def _taps(u: Drawn) -> None:
    rng = u.rng
    if u.finding != "wrong_tap":
        weight = np.array([{240.0: 1.6, 480.0: 0.6}.get(t, 1.0) for t in u.family])
        u.supply = u.tap = float(rng.choice(u.family, p=weight / weight.sum()))
        return
    pairs, weights = [], []
    for i, supply in enumerate(LADDER):
        for j, tap in enumerate(LADDER):
            step = abs(i - j)
            if step in (1, 2) and 0.45 < supply / tap < 2.05:
                # Nearly twice the volts do not live long enough to be called out often; 208 on 240 is the everyday one.
                weight = {1: 3.0, 2: 1.0}[step] * (0.35 if supply / tap > 1.6 else 1.0)
                pairs.append((supply, tap, step))
                weights.append(weight * (3.0 if {supply, tap} == {208.0, 240.0} else 1.0))
    u.supply, u.tap, step = pairs[int(rng.choice(len(pairs), p=np.array(weights) / sum(weights)))]
    fitting = [f for f in FAMILIES if u.tap in f and u.supply in f] or [f for f in FAMILIES if u.tap in f]
    u.family = fitting[int(rng.integers(len(fitting)))]
    u.severity = f"{step} step {'high' if u.supply > u.tap else 'low'}"


def _line(u: Drawn) -> None:
    rng = u.rng
    ratio = float(np.clip(rng.normal(1.003, 0.02), 0.945, 1.06))
    if rng.random() < 0.06:
        ratio = float(rng.uniform(0.908, 0.94))  # sags, within limits
    while u.finding == "low_supply":
        kind = rng.random()
        if kind < 0.30:
            ratio, u.severity = float(rng.uniform(0.868, 0.895)), "just low"
        elif kind < 0.72:
            ratio, u.severity = float(rng.uniform(0.55, 0.868)), "low"
        else:
            ratio, u.severity = min(float(1.112 + rng.exponential(0.03)), 1.22), "high"
        # A 240 V service that reads 208 V is mostly a mistaken nominal, and then a wrong tap: few of those are kept.
        if not any(abs(u.supply * ratio / s - 1) < 0.04 for s in LADDER) or rng.random() < 0.2:
            break
    if u.finding == "wrong_tap":
        ratio = float(np.clip(rng.normal(1.005, 0.018), 0.955, 1.045))
    u.p["supply"], u.p["ratio"] = u.supply, ratio


def _transformer(u: Drawn) -> None:
    """Referred to the tap that it was designed around; turns so that the rated load gets the rated volts."""
    rng, va, tap = u.rng, u.va, u.tap
    loss = float(np.clip(0.190 - 0.0010 * (va - 20) + rng.normal(0, 0.016), 0.095, 0.195))
    warm = 1.0 + 0.00393 * (rng.uniform(15, 60) if rng.random() < 0.55 else rng.uniform(-10, 15))
    share = rng.uniform(0.42, 0.58)
    home, grows = float(rng.choice(u.family)), rng.uniform(1.1, 1.95)
    primary, secondary = share * loss * home * home / va / (1 + loss) ** 2, (1 - share) * loss * u.base_ohm
    leakage = rng.uniform(0.12, 0.45) * loss
    core, magnetising = rng.uniform(0.045, 0.10) * (40 / va) ** 0.25, rng.uniform(0.10, 0.30) * (40 / va) ** 0.2
    knee, power = rng.uniform(0.08, 0.35), rng.uniform(6, 9)
    inside = secondary / u.base_ohm + 1j * leakage / 2
    turns = 1.0
    for _ in range(3):
        y = core - 1j * magnetising * (1 + knee) + turns * turns / (1 + inside)
        turns /= abs(turns / (1 + inside) / (1 + (primary * va / home**2 + 1j * leakage / 2) * y))
    u.ohm_of_tap = lambda t: primary * (t / home) ** grows
    u.p |= {
        "ns": 24.0 * turns * (1 + rng.normal(0, 0.006)), "np": tap * (1 + (rng.normal(0, 0.006) if tap != home else 0.0)),
        "rp": u.ohm_of_tap(tap) * warm, "rs": secondary * warm, "warm": warm, "xp": leakage / 2 * home**2 / va * (tap / home) ** 2,
        "xs": leakage / 2 * u.base_ohm, "yg": core * va, "yb": magnetising * va, "knee": knee, "power": power,
    }  # fmt: skip


def _site(u: Drawn) -> None:
    rng, p = u.rng, u.p
    p |= {
        "source_r": rng.uniform(0.03, 0.20), "breaker": (True, True), "tripped": False, "line_joint": [rng.uniform(0.02, 0.2), rng.uniform(0.02, 0.2)],
        "xfrac_p": 0.5, "xfrac_s": 0.5, "p_short": None, "s_short": None, "unused": None, "p_break": None, "s_break": None, "bridge": None,
        "p_ground": None, "s_ground": None, "other": even_in_log(rng, 4, 400) if rng.random() < 0.55 else None, "neutral": u.supply in (120.0, 277.0),
    }  # fmt: skip
    bonds = 0.75 if u.supply > 250 else 0.22 if u.supply == 120.0 else 0.25
    p["c_bond"] = rng.uniform(0.05, 0.6) if rng.random() < bonds else None
    p["k_bond"] = rng.uniform(0.02, 0.5) if rng.random() < 0.88 else even_in_log(rng, 1e5, 1e8)
    p["ins"] = [even_in_log(rng, 3e8, 2e10) for _ in range(3)]
    if rng.random() < 0.05:
        p["ins"][int(rng.integers(3))] = even_in_log(rng, 1e7, 1e8)  # damp, still sound
    p["c_ps"] = even_in_log(rng, 2e-11, 3e-10)
    p["c_core"] = p["c_ps"] * even_in_log(rng, 0.3, 4)
    p["c_wire"], p["c_wire2"] = even_in_log(rng, 2e-11, 1.5e-9), even_in_log(rng, 2e-11, 1.5e-9)
    p["c_cable"], p["c_open"] = even_in_log(rng, 2e-11, 2e-9), even_in_log(rng, 5e-12, 1e-10)
    # A lamp or a snubber stands across some switches.
    p["c_line"] = even_in_log(rng, 5e-11, 2e-9) if rng.random() < 0.75 else even_in_log(rng, 1e-8, 1e-7)


def _control(u: Drawn) -> None:
    rng, p = u.rng, u.p
    u.fused = bool(rng.random() < 0.62) or u.finding == "protection_open"
    share = rng.beta(2.6, 2.2) * 0.83 + 0.10
    call, down = bool(rng.random() < 0.84), "ok"
    if u.finding == "healthy":
        down = str(rng.choice(["ok", "stat", "coil_open", "standby"], p=[0.38, 0.25, 0.22, 0.15]))
        call = {"coil_open": True, "stat": False}.get(down, call)
    if u.finding == "overload":
        call, share = True, 1.05 + 1.45 * rng.beta(1.0, 1.5)
        u.severity = "slight" if share < 1.25 else "plain" if share < 1.8 else "gross"
    p |= {"call": call, "frac": share, "short_r": None, "short_at": None} | _loads(rng, u.base_ohm, share)
    p |= {
        "coil_open": down == "coil_open", "fuse": rng.uniform(0.02, 0.09) if u.fused else None,
        "joint_r": [rng.uniform(0.02, 0.12), rng.uniform(0.02, 0.12)], "joint_c": rng.uniform(0.02, 0.12),
    }  # fmt: skip
    if down == "coil_open":
        part = p["part"]
        p["r1"], p["z1"] = (None, None) if part > 0.75 else (p["r1"] / (1 - part), p["z1"] / (1 - part))
    u.fuse_amps = float(rng.choice([3.0, 5.0], p=[0.55, 0.45])) if u.va <= 60 else float(rng.choice([3.0, 4.0, 5.0]))
    amps = share * u.va / 24
    if amps > 1.25 * u.fuse_amps:
        u.fuse_amps = 5.0 if amps < 6 else 10.0


def _loads(rng: np.random.Generator, base_ohm: float, share: float) -> dict[str, Any]:
    """What is always on, and what is called; the contactor's coil is one of the devices at Y."""
    standby = rng.uniform(0.03, 0.30) if rng.random() < 0.68 else 0.0
    standby = min(standby * share, share * 0.6)
    factor0, factor1 = rng.uniform(0.75, 1.0), rng.uniform(0.35, 0.85)
    z0 = (base_ohm / standby) * complex(factor0, math.sqrt(1 - factor0 * factor0)) if standby > 0 else None
    z1 = (base_ohm / (share - standby)) * complex(factor1, math.sqrt(1 - factor1 * factor1))
    r0 = None
    if z0 is not None:
        r0 = even_in_log(rng, 300, 3e4) if rng.random() < 0.55 else abs(z0) * rng.uniform(0.12, 0.45)
    r1, part = abs(z1) * rng.uniform(0.10, 0.36), rng.uniform(0.3, 1.0)
    return {"z0": z0, "z1": z1, "r0": r0, "r1": r1, "coil": r1 / part, "part": part}


def _trip(rng: np.random.Generator, unit: Unit) -> None:
    """A fault that takes the breaker or a line fuse with it."""
    state = unit.state()
    trips_at = rng.uniform(15, 28) if rng.random() < 0.65 else rng.uniform(0.8, 4)
    if max(abs(state.line_a), abs(state.neutral_a)) > trips_at:
        unit.p["breaker"], unit.p["tripped"] = (False, unit.p["neutral"]), True
        unit.severity += ", tripped"
        unit.live.clear()
