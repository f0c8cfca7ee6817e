"""Draws a unit of the fourth world. Priors are common practice, no source."""

from typing import Any, Final

import numpy as np

from tests.benchmarks.fourth_world.faults import FAULTS, Drawn
from tests.benchmarks.fourth_world.unit import Unit
from tests.benchmarks.fourth_world.winder import INF, devices, even_in_log, pick, wind

SHARE: Final = {
    "healthy": 8.5, "no_supply": 5, "low_supply": 6, "loose_line": 5, "wrong_tap": 6.5, "primary_open": 8, "primary_shorted_turns": 7.5,
    "secondary_open": 7, "secondary_shorted_turns": 7.5, "windings_bridged": 6, "winding_grounded": 6.5, "protection_open": 7, "load_short": 7.5,
    "overload": 6.5, "control_open": 5.5,
}  # fmt: skip
STEPS: Final = (120.0, 208.0, 240.0, 277.0, 480.0)
SIZES: Final = ((20.0, 30.0, 40.0, 50.0, 75.0, 100.0), (6, 9, 40, 17, 20, 8))
FAMILIES: Final = (
    ((120.0,), (208.0, 240.0), (120.0, 208.0, 240.0), (277.0,), (480.0,), (208.0, 240.0, 480.0), (120.0, 240.0)),
    (28, 22, 22, 7, 7, 7, 7),
)
OF_MORE_TAPS: Final = (((208.0, 240.0), (120.0, 208.0, 240.0), (208.0, 240.0, 480.0), (120.0, 240.0)), (4, 5, 2, 1))


def draw(rng: np.random.Generator) -> Unit:
    """One unit with one finding."""
    finding = pick(rng, list(SHARE), list(SHARE.values()))
    va, taps = pick(rng, *SIZES), pick(rng, *FAMILIES)
    u = Drawn(rng, finding, va)
    if finding == "wrong_tap":
        taps = _wrong_tap(u, taps)
    else:
        u.supply = u.tap = taps[int(rng.integers(len(taps)))]
        ranges = (rng.uniform(0.96, 1.045), rng.uniform(0.906, 0.96), rng.uniform(1.045, 1.09))
        u.d["ratio"] = pick(rng, ranges, (82, 10, 8))
    if finding == "low_supply":
        _low_supply(u)
    _transformer(u, taps)
    _control(u)
    if finding in FAULTS:
        FAULTS[finding](u)
    if u.short and u.fused and finding in {"primary_open", "secondary_open"} and rng.random() < 0.7:
        u.unfuse()
    if u.d["tripped"]:
        u.d["line_on"] = False
    return Unit(finding, u.severity, u.short, u.supply, u.tap, va, u.fused, u.d)


def _wrong_tap(u: Drawn, taps: tuple[float, ...]) -> tuple[float, ...]:
    rng = u.rng
    while True:
        is_inside = rng.random() < 0.78
        if is_inside and len(taps) == 1:
            taps = pick(rng, *OF_MORE_TAPS)
        u.tap = taps[int(rng.integers(len(taps)))]
        u.supply = taps[int(rng.integers(len(taps)))] if is_inside else STEPS[int(rng.integers(len(STEPS)))]
        steps, ratio = abs(STEPS.index(u.tap) - STEPS.index(u.supply)), u.supply / u.tap
        if steps in (1, 2) and 0.45 < ratio < 2.05 and not (ratio > 1.6 and rng.random() > 0.3):
            break
    u.severity = f"{steps} step {'over' if ratio > 1 else 'under'}"
    u.d["ratio"] = rng.uniform(0.97, 1.035)
    return taps


def _low_supply(u: Drawn) -> None:
    rng = u.rng

    def drawn(least: float) -> tuple[str, float]:
        kinds = (("edge", rng.uniform(0.87, 0.896)), ("low", rng.uniform(least, 0.87)), ("high", rng.uniform(1.105, 1.19)))
        return pick(rng, kinds, (27, 43, 30))

    u.severity, u.d["ratio"] = drawn(0.66)
    # A 240 V service that reads 208 V, or the reverse, is mostly a mistaken nominal: few of those are kept.
    while any(abs(u.supply * u.d["ratio"] / s - 1) < 0.04 for s in STEPS) and rng.random() < 0.75:
        u.severity, u.d["ratio"] = drawn(0.60)


def _transformer(u: Drawn, taps: tuple[float, ...]) -> None:
    rng, d = u.rng, u.d
    t = wind(rng, u.va, taps if u.tap in taps else (*taps, u.tap))
    heat = 1 + 0.00393 * pick(rng, (rng.uniform(-15, 20), rng.uniform(20, 75)), (4, 6))
    d |= {
        "t": t, "r1": t.primary_ohm[u.tap] * heat, "r2": t.secondary_ohm * heat, "n1": u.tap, "n2": t.turns,
        "x1": t.primary_x * (u.tap / t.home) ** 2, "x2": t.secondary_x, "line_on": True, "tripped": False, "joint": rng.uniform(0.02, 0.4),
        "loop": None, "opened1": 0.0, "opened2": 0.0, "spot1": 0.5, "spot2": 0.5, "stray": None, "neutral": u.supply in (120.0, 277.0),
        "c_tied": rng.random() < (0.6 if u.supply >= 277 else 0.3), "core_tied": rng.random() < 0.93, "tie": rng.uniform(0.05, 0.9),
        "beside": even_in_log(rng, 6, 250) if rng.random() < 0.45 else INF,
    }  # fmt: skip
    for name in ("ps", "pg", "sg"):
        d[name] = even_in_log(rng, 9e6, 9e7) if rng.random() < 0.02 else even_in_log(rng, 2e8, 1e10)


def _control(u: Drawn) -> None:
    rng, d = u.rng, u.d
    is_calling, share = rng.random() < 0.93, rng.triangular(0.12, 0.5, 0.93)
    down = pick(rng, ("none", "open_stat", "dead_coil"), (5, 3, 2)) if u.finding == "healthy" else "none"
    if u.finding == "overload":
        share = pick(rng, (rng.uniform(1.06, 1.3), rng.uniform(1.3, 2.5)), (35, 65))
        u.severity = "slight" if share < 1.3 else "plain"
    is_calling = (is_calling or u.finding == "overload" or down == "dead_coil") and down != "open_stat"
    hung = devices(rng, u.va, share)
    wire = rng.uniform(8, 130) * 0.0136 * pick(rng, (1.0, 1.6), (3, 1))
    called_va = sum(v.va for v in hung if not v.is_always_on)
    u.fused = bool(rng.random() < 0.5) or u.finding == "protection_open"
    d |= {
        "before": rng.uniform(0.02, 0.10), "after": rng.uniform(0.02, 0.10), "c_leg": rng.uniform(0.02, 0.10),
        "fuse_r": rng.uniform(0.015, 0.07) if u.fused else 0.0, "wire": min(wire, 0.05 * 576 / max(called_va, 1.0)), "devices": hung,
        "calling": is_calling, "down": down, "short_r": None, "short_far": False, "share": share, "fuse_amps": _fuse(u, share),
    }  # fmt: skip


def _fuse(u: Drawn, share: float) -> Any:
    amps = pick(u.rng, (3.0, 5.0, 4.0), (5, 4, 1))
    if share * u.va / 24 > 1.2 * amps:
        amps = pick(u.rng, (7.5, 10.0), (1, 1))
    return amps if u.fused else None
