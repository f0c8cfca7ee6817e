"""
The network of the third world, solved at once: nodes, winding amps and the volts per turn of the core.

Backfeed, ghost volts, grounded windings and bridges come out of the network and are not written down one by one. A live reading is the source
between two nodes with the meter's input across it; a dead one is the same network with direct current and without its source. Turns are counted
in volts of tap: a part with n turns has n volts at one volt per turn.
"""

import cmath
import math
from collections.abc import Iterable
from dataclasses import dataclass
from typing import Any

import numpy as np

W = 2 * math.pi * 60.0
L, N, P1, P2, PM, S1, S2, SM, F1, F2, R, Y, C, K = range(14)
"""Line, primary, its middle, secondary, its middle, before and behind the fuse, R, Y, C, core."""
IPA, IPB, ISA, ISB, IX, E = range(14, 20)
"""Amps of the parts of the windings, and the volts per turn."""
SIZE = 20
EARTH = -1
OTHER = 5.0 + 3.5j
"""What hangs on the same line is inductive."""


@dataclass
class State:
    """A solved network."""

    x: np.ndarray
    inverse: np.ndarray
    line_a: complex
    neutral_a: complex

    def volts(self, i: int, j: int, meter_ohm: float) -> float:
        """What a meter of that input shows between two nodes."""
        inside = self.inverse[i, i] + self.inverse[j, j] - self.inverse[i, j] - self.inverse[j, i]
        return float(abs((self.x[i] - self.x[j]) * meter_ohm / (meter_ohm + inside)))


def phases(supply: float) -> tuple[complex, complex]:
    """Volts to earth of both lines: a neutral, a split phase, or two legs of three."""
    if supply in (120.0, 277.0):
        return complex(supply), 0j
    if supply == 240.0:
        return 120 + 0j, -120 + 0j
    leg = supply / math.sqrt(3)
    return complex(leg), leg * cmath.exp(-2j * math.pi / 3)


class Matrix:
    """Being stamped."""

    def __init__(self) -> None:
        self.a = np.zeros((SIZE, SIZE), complex)
        self.b = np.zeros(SIZE, complex)

    def branch(self, i: int, j: int, siemens: complex | None) -> None:
        """Between two nodes; nothing where there is none."""
        if siemens is None:
            return
        self.a[i, i] += siemens
        if j != EARTH:
            self.a[j, j] += siemens
            self.a[i, j] -= siemens
            self.a[j, i] -= siemens

    def winding(self, at: int, i: int, j: int, turns: float, ohm: complex) -> None:
        """v_i - v_j = turns * e + amps * ohm, scaled so that an opened winding does not upset the solution."""
        self.a[i, at] += 1
        self.a[j, at] -= 1
        scale = 1 / max(1.0, abs(ohm))
        self.a[at, i] += scale
        self.a[at, j] -= scale
        self.a[at, at] -= ohm * scale
        self.a[at, E] -= turns * scale
        self.a[E, at] = turns


def _over(ohm: complex | None) -> complex | None:
    return None if ohm is None else 1 / ohm


def _line(m: Matrix, p: dict[str, Any], supply: float) -> None:
    for node, volts, closed in zip((L, N), phases(supply), p["breaker"], strict=True):
        siemens = 1 / (p["source_r"] / 2 + 0.02j) if closed else 1j * W * p["c_line"]
        m.a[node, node] += siemens + 1e-9
        m.b[node] += siemens * volts * p["ratio"] * (1.0 if closed else 0.6)
    m.branch(L, N, None if p["other"] is None else 1 / (p["other"] * OTHER))
    for i, j, joint in ((L, P1, p["line_joint"][0]), (N, P2, p["line_joint"][1])):
        m.branch(i, j, 1j * W * p["c_open"] if joint is None else 1 / joint)


def _transformer(m: Matrix, p: dict[str, Any]) -> complex:
    """Returns the admittance of the core that is stamped."""
    fp, fs = p["xfrac_p"], p["xfrac_s"]
    zp, zs = complex(p["rp"], p["xp"]), complex(p["rs"], p["xs"])
    m.winding(IPA, P1, PM, fp * p["np"], fp * zp + (p["p_break"] or 0.0))
    m.winding(IPB, PM, P2, (1 - fp) * p["np"], (1 - fp) * zp)
    m.winding(ISA, S1, SM, fs * p["ns"], fs * zs + (p["s_break"] or 0.0))
    m.winding(ISB, SM, S2, (1 - fs) * p["ns"], (1 - fs) * zs)
    if p["unused"] is None:
        m.a[IX, IX] = 1.0
    else:
        turns, ohm = p["unused"]
        m.a[IX, IX], m.a[IX, E], m.a[E, IX] = -complex(ohm, 0.15 * ohm), -turns, turns
    core = p["yg"] - 1j * p["yb"] * (1 + p["knee"])
    m.a[E, E] = -core
    for key, i, j in (
        ("p_short", P1, PM),
        ("s_short", S1, SM),
        ("bridge", PM, SM),
        ("p_ground", PM, K),
        ("s_ground", SM, K),
    ):
        m.branch(i, j, _over(p[key]))
    stray = 1j * W
    for i, j, farad in ((P1, S1, p["c_ps"]), (P2, S2, p["c_ps"]), (S1, K, p["c_core"]), (S2, K, p["c_core"])):
        m.branch(i, j, stray * farad / 2)
    m.branch(PM, K, 1 / p["ins"][0] + stray * 5e-11)
    m.branch(SM, K, 1 / p["ins"][1] + stray * 5e-11)
    m.branch(PM, SM, 1 / p["ins"][2])
    m.branch(K, EARTH, 1 / p["k_bond"] + stray * 2e-11)
    return complex(core)


def _control(m: Matrix, p: dict[str, Any], *, lifted: bool) -> None:
    stray = 1j * W
    m.branch(S1, F1, (0.0 if lifted else 1 / p["joint_r"][0]) + stray * 2e-12)
    m.branch(F1, F2, (200.0 if p["fuse"] is None else 1 / p["fuse"]) + stray * 3e-12)
    m.branch(F2, R, 1 / p["joint_r"][1] + stray * p["c_cable"])
    m.branch(S2, C, 1 / p["joint_c"] + stray * p["c_cable"])
    m.branch(R, Y, 20.0 if p["call"] else stray * 5e-11)
    m.branch(R, C, _over(p["z0"]))
    m.branch(Y, C, _over(p["z1"]))
    m.branch(R if p["short_at"] == "R" else Y, C, _over(p["short_r"]))
    m.branch(C, EARTH, 1e-9 + stray * 4e-10 if p["c_bond"] is None else 1 / p["c_bond"])
    m.branch(R, EARTH, stray * 3e-10)
    m.branch(R, L, stray * p["c_wire"])
    m.branch(C, L, stray * p["c_wire2"])
    m.branch(Y, R, stray * 6e-11)


def solve(p: dict[str, Any], supply: float, *, lifted: bool) -> State:
    """The energised network; a saturated core changes one entry of it only."""
    m = Matrix()
    _line(m, p, supply)
    core = _transformer(m, p)
    _control(m, p, lifted=lifted)
    inverse = np.linalg.inv(m.a)
    free, gain = (inverse @ m.b)[E], inverse[E, E]

    def takes(e: float) -> complex:
        return complex(p["yg"] - 1j * p["yb"] * (1 + p["knee"] * min(e, 3.0) ** p["power"]))

    low, high = 0.0, abs(free) * 1.6 + 1e-9
    for _ in range(26):
        middle = 0.5 * (low + high)
        low, high = (middle, high) if abs(free / (1 - (takes(middle) - core) * gain)) > middle else (low, middle)
    change = core - takes(0.5 * (low + high))
    inverse = inverse - np.outer(inverse[:, E], inverse[E, :]) * (change / (1 + change * gain))
    x = inverse @ m.b
    source = p["source_r"] / 2 + 0.02j
    amps = [
        (volts * p["ratio"] - x[node]) / source if closed else 0j
        for volts, node, closed in zip(phases(supply), (L, N), p["breaker"], strict=True)
    ]
    other = 0j if p["other"] is None else (x[L] - x[N]) / (p["other"] * OTHER)
    return State(x, inverse, amps[0] - other, amps[1] + other)


Branch = tuple[int, int, float]


def dc_ohm(branches: Iterable[Branch], i: int, j: int) -> float:
    """What an ohmmeter shows between two nodes of resistors."""
    nodes: dict[int, int] = {}
    kept = list(branches)
    for u, v, _ in kept:
        nodes.setdefault(u, len(nodes))
        nodes.setdefault(v, len(nodes))
    if i not in nodes or j not in nodes:
        return math.inf
    g = np.eye(len(nodes)) * 1e-11
    for u, v, ohm in kept:
        a, b, siemens = nodes[u], nodes[v], 1 / max(ohm, 1e-3)
        g[a, a] += siemens
        g[b, b] += siemens
        g[a, b] -= siemens
        g[b, a] -= siemens
    rest = [q for q in range(len(nodes)) if q != nodes[j]]
    right = np.zeros(len(rest))
    right[rest.index(nodes[i])] = 1.0
    return float(np.linalg.solve(g[np.ix_(rest, rest)], right)[rest.index(nodes[i])])


def of_transformer(p: dict[str, Any]) -> list[Branch]:
    """Its direct-current branches."""
    fp, fs = p["xfrac_p"], p["xfrac_s"]
    out = [
        (P1, PM, fp * p["rp"] + (p["p_break"] or 0)), (PM, P2, (1 - fp) * p["rp"]), (S1, SM, fs * p["rs"] + (p["s_break"] or 0)),
        (SM, S2, (1 - fs) * p["rs"]), (PM, K, p["ins"][0]), (SM, K, p["ins"][1]), (PM, SM, p["ins"][2]),
    ]  # fmt: skip
    faults = (("p_short", P1, PM), ("s_short", S1, SM), ("bridge", PM, SM), ("p_ground", PM, K), ("s_ground", SM, K))
    return out + [(i, j, p[key]) for key, i, j in faults if p[key] is not None]


def of_control(p: dict[str, Any]) -> list[Branch]:
    """Those of the control circuit."""
    out = [
        (F1, F2, 0.005 if p["fuse"] is None else p["fuse"]),
        (F2, R, p["joint_r"][1]),
        (R, Y, 0.05 if p["call"] else 1e11),
        (R, C, 2e8),
    ]
    short = (R if p["short_at"] == "R" else Y, C, p["short_r"])
    return out + [branch for branch in ((R, C, p["r0"]), (Y, C, p["r1"]), short) if branch[2] is not None]


def of_all(p: dict[str, Any]) -> list[Branch]:
    """All of them, as they are read where nothing was isolated."""
    joints = [1e11 if joint is None else joint for joint in p["line_joint"]]
    out = [
        (S1, F1, p["joint_r"][0]), (S2, C, p["joint_c"]), (K, EARTH, p["k_bond"]), (C, EARTH, 3e8 if p["c_bond"] is None else p["c_bond"]),
        (L, P1, joints[0]), (N, P2, joints[1]), (N, EARTH, 0.4 if p["neutral"] else 1e9),
    ]  # fmt: skip
    other = [] if p["other"] is None else [(L, N, p["other"])]
    return of_transformer(p) + of_control(p) + out + other
