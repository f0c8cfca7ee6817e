"""What each finding changes in a unit of the third world."""

from collections.abc import Callable
from dataclasses import dataclass, field
from typing import Any, Final

import numpy as np


def even_in_log(rng: np.random.Generator, low: float, high: float) -> float:
    """Even in the logarithm."""
    return float(np.exp(rng.uniform(np.log(low), np.log(high))))


@dataclass
class Drawn:
    """A unit while it is drawn."""

    rng: np.random.Generator
    finding: str
    va: float
    family: tuple[float, ...]
    supply: float = 120.0
    tap: float = 120.0
    severity: str = "plain"
    short: bool = False
    fused: bool = False
    fuse_amps: float = 3.0
    ohm_of_tap: Callable[[float], float] = float
    p: dict[str, Any] = field(default_factory=dict)

    @property
    def base_ohm(self) -> float:
        """The rated load at the secondary [ohm]."""
        return 24.0 * 24.0 / self.va

    def put_short(self, low: float = 4.2, high: float = 60.0) -> None:
        """One in the control circuit that draws so many times the rating."""
        rng, p = self.rng, self.p
        p["short_r"] = self.base_ohm / even_in_log(rng, low, high)
        p["short_at"] = "R" if rng.random() < 0.6 else "Y"
        p["call"] = True
        if p["short_at"] == "Y" and rng.random() < 0.6:
            p["coil"] = p["short_r"]


def _no_supply(u: Drawn) -> None:
    kind = u.rng.random()
    u.p["breaker"] = (False, False) if kind < 0.55 else (kind >= 0.8, kind < 0.8)
    u.severity = "both legs" if kind < 0.55 else "one leg"
    if u.p["neutral"] and kind < 0.55:
        u.p["breaker"], u.severity = (False, True), "hot leg"


def _loose_line(u: Drawn) -> None:
    leg, u.severity = int(u.rng.integers(2)), "open"
    if u.rng.random() < 0.5:
        u.p["line_joint"][leg] = None
        return
    load = max(u.p["frac"] if u.p["call"] else 0.25, 0.2)
    u.p["line_joint"][leg] = u.supply**2 / u.va / load * even_in_log(u.rng, 0.14, 2.5)
    u.severity = "resistive"


def _opened(side: str, track: tuple[float, float, float], behind: float) -> Callable[[Drawn], None]:
    def change(u: Drawn) -> None:
        rng, p, key = u.rng, u.p, f"{side}_break"
        p[f"xfrac_{side}"] = rng.uniform(0.05, 0.95)
        p[key] = even_in_log(rng, track[0], track[1]) if rng.random() < track[2] else 1e11
        u.severity = "charred" if p[key] < 1e9 else "clean"
        if rng.random() < behind:
            u.short = True
            u.put_short()
            if u.fused and rng.random() < 0.65:
                u.fused, p["fuse"] = False, None

    return change


def _turns(side: str) -> Callable[[Drawn], None]:
    def change(u: Drawn) -> None:
        rng, p = u.rng, u.p
        share = even_in_log(rng, 0.02, 0.40)
        u.severity = "slight" if share < 0.06 else "plain" if share < 0.18 else "gross"
        contact = rng.uniform(0.15, 1.5) if rng.random() < 0.25 else rng.uniform(0.0, 0.02)
        top = u.family[-1]
        if side == "p" and len(u.family) > 1 and u.tap != top and rng.random() < 0.15:
            beyond = (u.ohm_of_tap(top) - u.ohm_of_tap(u.tap)) / (top - u.tap) * share * top
            p["unused"] = (share * top, beyond * p["warm"] * (1 + contact))
            u.severity += " unused tap"
            return
        p[f"xfrac_{side}"] = share
        p[f"{side}_short"] = max(1e-3 if side == "p" else 2e-4, contact * share * p[f"r{side}"])

    return change


def _insulation(u: Drawn) -> None:
    rng, p = u.rng, u.p
    kind = rng.random()
    ohm = rng.uniform(0, 5) if kind < 0.3 else even_in_log(rng, 5, 1e4) if kind < 0.6 else even_in_log(rng, 1e4, 1e6)
    ohm = max(ohm, 0.01)
    u.severity = "dead" if ohm < 5 else "ohms" if ohm < 1e4 else "leak"
    p["xfrac_p"], p["xfrac_s"] = (float(rng.choice([0.02, 0.98, rng.uniform(0.05, 0.95)])) for _ in range(2))
    if u.finding == "windings_bridged":
        p["bridge"] = ohm
        return
    side = "p" if rng.random() < 0.6 else "s"
    p[f"{side}_ground"] = ohm
    u.severity += " primary" if side == "p" else " secondary"


def _protection_open(u: Drawn) -> None:
    u.p["fuse"], u.severity = 1e11, "no short left"
    if u.rng.random() < 0.47:
        u.short = True
        u.put_short()
        u.severity = "short behind"


def _load_short(u: Drawn) -> None:
    u.short = True
    if u.fused and u.rng.random() < 0.55:
        u.fused, u.p["fuse"] = False, None
    if u.rng.random() < 0.3:
        u.put_short(4.4, 7.0)
        u.severity = "pulls down"
    else:
        u.put_short(7.0, 80.0)
        u.severity = "dead short"
    if u.fused:
        u.fuse_amps = float(u.rng.choice([7.5, 10.0, 15.0]))
        u.severity += ", fuse too big"


def _control_open(u: Drawn) -> None:
    rng, p = u.rng, u.p
    where = str(rng.choice(["before", "after", "c"], p=[0.3, 0.4, 0.3]))
    if rng.random() < 0.62:
        ohm, u.severity, p["call"] = 1e11, "open", bool(rng.random() < 0.7)
    else:
        p["call"], u.severity = True, "resistive"
        ohm = u.base_ohm / max(p["frac"], 0.25) * even_in_log(rng, 0.18, 4.0)
    if where == "c":
        p["joint_c"] = ohm
    else:
        p["joint_r"][0 if where == "before" else 1] = ohm


FAULTS: Final[dict[str, Callable[[Drawn], None]]] = {
    "no_supply": _no_supply, "loose_line": _loose_line, "primary_open": _opened("p", (5e3, 5e5, 0.05), 0.40),
    "secondary_open": _opened("s", (2e3, 3e5, 0.07), 0.38), "primary_shorted_turns": _turns("p"), "secondary_shorted_turns": _turns("s"),
    "windings_bridged": _insulation, "winding_grounded": _insulation, "protection_open": _protection_open, "load_short": _load_short,
    "control_open": _control_open,
}  # fmt: skip
