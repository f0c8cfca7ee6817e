"""What each finding changes in a unit of the fourth world."""

from collections.abc import Callable
from dataclasses import dataclass, field
from typing import Any, Final

import numpy as np

from tests.benchmarks.fourth_world.unit import volts_to_earth
from tests.benchmarks.fourth_world.winder import INF, even_in_log, pick


@dataclass
class Drawn:
    """A unit while it is drawn."""

    rng: np.random.Generator
    finding: str
    va: float
    supply: float = 120.0
    tap: float = 120.0
    severity: str = "plain"
    short: bool = False
    fused: bool = False
    d: dict[str, Any] = field(default_factory=dict)

    @property
    def base_ohm(self) -> float:
        """The rated load [ohm]."""
        return 576 / self.va

    def put_short(self) -> None:
        """One in the control circuit, at its near or its far end, that draws over four times the rating."""
        rng, d, limit = self.rng, self.d, self.base_ohm / 4.3
        self.short = d["calling"] = True
        d["short_far"] = rng.random() < 0.45
        ohm = rng.exponential(0.12) + 0.01 if rng.random() < 0.6 else self.base_ohm / rng.uniform(4.4, 12)
        d["short_r"] = min(ohm, limit)
        if d["short_far"]:
            d["wire"] = min(d["wire"], max(0.02, limit - d["short_r"]))

    def unfuse(self) -> None:
        """No low-voltage protection."""
        self.fused, self.d["fuse_r"], self.d["fuse_amps"] = False, 0.0, None

    def cut_off(self) -> None:
        """A stub of cable with nothing called on it."""
        self.d["devices"] = [v for v in self.d["devices"] if not v.is_always_on]
        self.d["calling"] = False


def _no_supply(u: Drawn) -> None:
    u.d["line_on"] = False
    u.severity = pick(u.rng, ("breaker", "disconnect", "line fuse", "door switch"), (4, 3, 2, 2))


def _loose_line(u: Drawn) -> None:
    rng = u.rng
    if rng.random() < 0.45:
        u.d["joint"], u.severity = INF, "open"
        return
    load = max(u.d["share"] if u.d["calling"] else 0.2, 0.2)
    u.d["joint"], u.severity = u.supply * u.supply / u.va / load * rng.uniform(0.15, 1.6), "sags"


def _primary_open(u: Drawn) -> None:
    rng, d = u.rng, u.d
    d["opened1"] = even_in_log(rng, 3e3, 2e6) if rng.random() < 0.04 else INF
    u.severity = "link or wire" if d["opened1"] == INF else "charred"
    if rng.random() < 0.35:
        u.put_short()
    elif rng.random() < 0.06:
        d["tripped"] = True


def _secondary_open(u: Drawn) -> None:
    rng, d = u.rng, u.d
    d["opened2"] = even_in_log(rng, 1e3, 1e6) if rng.random() < 0.05 else INF
    u.severity = "clean" if d["opened2"] == INF else "charred"
    if rng.random() < 0.45:
        u.put_short()


def _turns(side: str) -> Callable[[Drawn], None]:
    """A section with a contact across it: its loop on the iron, and what it still adds in series."""

    def change(u: Drawn) -> None:
        rng, d = u.rng, u.d
        share = rng.uniform(0.02, 0.08) if rng.random() < 0.35 else rng.uniform(0.08, 0.40)
        u.severity = "2-8 %" if share < 0.08 else "8-20 %" if share < 0.2 else "20-40 %"
        whole, x, turns = d[f"r{side}"], d[f"x{side}"], d[f"n{side}"]
        contact = share * whole * (rng.uniform(0.1, 2.0) if rng.random() < 0.3 else rng.uniform(0, 0.03))
        around = share * whole + contact
        kept = 1 - share + share * contact / around
        d["loop"] = (share * turns, complex(around, 0.25 * share * x))
        d[f"r{side}"] = whole * (1 - share) + share * whole * contact / around
        d[f"x{side}"], d[f"n{side}"] = x * kept, turns * kept
        if side == "1":
            d["tripped"] = share > 0.12 and rng.random() < 0.06 + 0.5 * (share - 0.12)
        else:
            d["tripped"] = share > 0.2 and rng.random() < 0.06
        u.severity += " tripped" if d["tripped"] else ""

    return change


def _insulation(u: Drawn) -> None:
    rng, d = u.rng, u.d
    ohm = pick(rng, (rng.uniform(0, 3), even_in_log(rng, 3, 2e3), even_in_log(rng, 2e3, 1e6)), (26, 24, 50))
    d["spot1"], d["spot2"] = (pick(rng, (0.0, 1.0, rng.random()), (1, 1, 2)) for _ in range(2))
    u.severity = "under 3 ohm" if ohm < 3 else "to 2 k" if ohm < 2e3 else "to 1 M"
    volts = volts_to_earth(u.supply, d["spot1"]) * d["ratio"]
    if u.finding == "windings_bridged":
        d["ps"] = ohm
        d["stray"] = (volts, ohm + d["tie"], "p") if d["c_tied"] else None
    elif rng.random() < 0.55:
        d["pg"] = ohm
        u.severity += " primary"
        d["stray"] = (volts, ohm + d["tie"], "p") if d["core_tied"] else None
    else:
        d["sg"] = ohm
        u.severity += " secondary"
        d["stray"] = (0j, ohm + d["tie"], "s") if d["core_tied"] and d["c_tied"] else None
    if d["stray"] and d["stray"][2] == "p":
        share = d["spot1"]
        amps = abs(volts) / (d["stray"][1] + share * (1 - share) * d["r1"])
        d["tripped"] = amps > 10 or (amps > 2.5 and rng.random() < 0.55)
        u.severity += " tripped" if d["tripped"] else ""


def _protection_open(u: Drawn) -> None:
    u.d["fuse_r"], u.severity = INF, "fuse only"
    if u.rng.random() < 0.15:
        u.cut_off()
    if u.rng.random() < 0.5:
        u.severity = "fuse and short"
        u.put_short()


def _load_short(u: Drawn) -> None:
    u.put_short()
    u.severity = "bolted" if u.d["short_r"] < u.base_ohm / 12 else "part"
    if u.fused and u.rng.random() < 0.7:
        u.unfuse()
    elif u.fused:
        u.d["fuse_amps"] = pick(u.rng, (10.0, 15.0, 20.0), (2, 2, 1))
        u.severity += ", held by a big fuse"


def _control_open(u: Drawn) -> None:
    rng, d = u.rng, u.d
    spot = pick(rng, ("before", "after", "c_leg"), (2, 4, 4))
    if rng.random() < 0.66:
        d[spot], u.severity = INF, "open"
        if rng.random() < 0.25:
            u.cut_off()
        return
    d["calling"] = True
    d[spot], u.severity = u.base_ohm / max(d["share"], 0.2) * rng.uniform(0.18, 2.5), "corroded"


FAULTS: Final[dict[str, Callable[[Drawn], None]]] = {
    "no_supply": _no_supply, "loose_line": _loose_line, "primary_open": _primary_open, "secondary_open": _secondary_open,
    "primary_shorted_turns": _turns("1"), "secondary_shorted_turns": _turns("2"), "windings_bridged": _insulation, "winding_grounded": _insulation,
    "protection_open": _protection_open, "load_short": _load_short, "control_open": _control_open,
}  # fmt: skip
