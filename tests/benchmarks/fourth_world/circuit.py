"""
The fourth world's equivalent circuit: all that is coupled to the iron is an admittance on the volts per turn, solved by one division and one search
for the saturation. A winding rated V volts has V turns, and 1 is rated flux.
"""

import math
from dataclasses import dataclass
from typing import Any

from tests.benchmarks.fourth_world.winder import INF


@dataclass
class Live:
    """What stands where, rms; `inf` ohms for an open."""

    line: float = 0.0
    primary: float = 0.0
    secondary: float = 0.0
    control: float = 0.0
    coil: float = 0.0
    fuse: float = 0.0
    primary_a: float = 0.0
    secondary_a: float = 0.0
    flux: float = 0.0
    inside: complex | float = 0.0
    """Impedance of the secondary."""
    load: complex | float = INF
    """R to C."""


def _together(parts: list[complex]) -> complex | float:
    siemens = sum(1 / z for z in parts)
    return 1 / siemens if siemens else INF


def control_z(d: dict[str, Any]) -> tuple[complex | float, complex | float]:
    """R to C, and what is called alone, at the far end of its cable."""
    called = [v for v in d["devices"] if not v.is_always_on and not (d["down"] == "dead_coil" and v.name == "contactor")]
    far = [v.z for v in called]
    near = [v.z for v in d["devices"] if v.is_always_on]
    if d["short_r"] is not None:
        (far if d["short_far"] else near).append(complex(d["short_r"]))
    at_the_end = _together(far)
    if d["calling"] and at_the_end != INF:
        near.append(at_the_end + d["wire"])
    return _together(near), at_the_end


def _secondary(d: dict[str, Any]) -> tuple[complex | float, float, complex]:
    """Its impedance, its turns, and what is coupled to the iron besides the load."""
    turns, coupled = d["n2"], 0j
    z2 = INF if d["opened2"] == INF else complex(d["r2"] + d["opened2"], d["x2"])
    if d["loop"] is not None:
        loop, z = d["loop"]
        coupled += loop * loop / z
    if d["stray"] is not None and d["stray"][2] == "s":
        share = max(d["spot2"], 0.01)
        around = d["stray"][1] + share * d["r2"]
        coupled += (share * turns) ** 2 / around
        turns = turns - share * turns / around * share * d["r2"]
        z2 = complex(d["r2"] * (1 - share) + 1 / (1 / (share * d["r2"]) + 1 / d["stray"][1]), d["x2"])
    return z2, turns, coupled


def _flux(d: dict[str, Any], volts: float, coupled: complex) -> tuple[complex, complex]:
    """Volts per turn, and the admittance on it."""
    z1, n1, t = complex(d["r1"] + d["joint"] + d["opened1"], d["x1"]), d["n1"], d["t"]

    def at(e: float) -> tuple[complex, complex]:
        bent = t.vars * math.sinh(t.bend * min(e, 2.4)) / math.sinh(t.bend) / max(e, 1e-6)
        y = coupled + complex(t.watts, -bent)
        return volts / (n1 + z1 * y / n1), y

    low, high = 0.0, 1.05 * volts / n1
    for _ in range(22):
        middle = 0.5 * (low + high)
        low, high = (middle, high) if abs(at(middle)[0]) > middle else (low, middle)
    return at(0.5 * (low + high))


def solve(d: dict[str, Any], supply: float, *, lifted: bool) -> Live:
    """The energised unit."""
    load, far = control_z(d)
    out = Live(load=load)
    if not d["line_on"]:
        return out
    out.line = volts = supply * d["ratio"]
    if d["joint"] == INF:
        return out
    earth_a = 0j
    if d["stray"] is not None and d["stray"][2] == "p":
        share = d["spot1"]
        earth_a = (1 - share) * d["stray"][0] / (d["stray"][1] + share * (1 - share) * d["r1"])
    if d["opened1"] == INF:
        out.primary = volts
        if earth_a:
            out.primary_a = abs(d["stray"][0] / d["stray"][1])
        return out
    series = d["before"] + d["fuse_r"] + d["after"] + d["c_leg"]
    outside = INF if lifted or INF in (load, series) else load + series
    z2, turns, coupled = _secondary(d)
    is_loaded = INF not in (z2, outside)
    if is_loaded:
        coupled += turns * turns / (z2 + outside)
    e, y = _flux(d, volts, coupled)
    amps = e * y / d["n1"]
    out.flux, out.inside = abs(e), z2
    out.primary, out.primary_a = abs(volts - amps * d["joint"]), abs(amps + earth_a)
    if not is_loaded:
        out.secondary = 0.0 if z2 == INF else abs(turns * e)
        return out
    amps = turns * e / (z2 + outside)
    out.secondary_a, out.secondary, out.control = abs(amps), abs(amps * outside), abs(amps * load)
    out.fuse = abs(amps) * d["fuse_r"]
    if d["calling"]:
        # With a dead contactor coil its terminals still have the volts of the far end.
        out.coil = out.control if far == INF else out.control * abs(far / (far + d["wire"]))
    return out
