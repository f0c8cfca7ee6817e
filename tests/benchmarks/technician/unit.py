"""One simulated call: a unit with one fault (and perhaps the short that caused it), solved node by node."""

from collections.abc import Callable
from dataclasses import dataclass, field

import numpy as np

from tests.benchmarks.technician.network import Network

FINDINGS = (
    "healthy", "no_supply", "low_supply", "loose_line", "wrong_tap", "primary_open", "primary_shorted_turns", "secondary_open",
    "secondary_shorted_turns", "windings_bridged", "winding_grounded", "protection_open", "load_short", "overload", "control_open",
)  # fmt: skip
BAD = {
    "primary_open",
    "primary_shorted_turns",
    "secondary_open",
    "secondary_shorted_turns",
    "windings_bridged",
    "winding_grounded",
}
OPEN = 1e9
TAPS = {120: (120,), 208: (208, 240), 240: (240, 208), 277: (277, 240), 480: (480, 240)}


@dataclass(frozen=True)
class Setting:
    """What differs between one simulated country and another."""

    name: str
    weights: tuple[float, ...] = (2, 1, 1, 1, 1, 2, 1, 1.3, 1, 0.7, 0.8, 1.3, 1.2, 1, 1.2)
    copper: float = 1.0
    """Ohms to the usual."""
    rated_open: float = 0.0
    """Share of units whose rated volts are the open-circuit volts."""
    load: tuple[float, float] = (0.15, 0.95)
    power_factor: tuple[float, float] = (0.5, 0.95)
    fuse: float = 0.6
    called: float = 0.75
    line_sigma: float = 0.02
    accuracy: float = 0.008
    slip: float = 0.012
    forgets: float = 0.08
    ghost: float = 0.35
    tells: float = 0.6
    """Chance that a fact is told at the start."""
    least_turns: float = 0.02


SETTINGS = (
    Setting("usual"),
    Setting("soft copper, light loads", copper=1.35, load=(0.05, 0.6), called=0.6, tells=0.3),
    Setting("stiff copper, heavy loads", copper=0.7, load=(0.4, 1.0), power_factor=(0.35, 0.8), fuse=0.35, line_sigma=0.03),
    Setting("careless", slip=0.03, forgets=0.2, ghost=0.6, accuracy=0.014, tells=0.4),
    Setting("even faults", weights=(1,) * 15, rated_open=0.15, tells=0.8, forgets=0.05),
)


@dataclass
class Unit:
    """What is there."""

    finding: str
    setting: Setting
    supply: float = 120.0
    tap: float = 120.0
    va: float = 40.0
    line: float = 120.0
    short: bool = False
    fused: bool = True
    called: bool = True
    p: dict[str, float] = field(default_factory=dict)
    neutral: bool = False
    bonded: bool = False

    @property
    def is_bad(self) -> bool:
        """Truth of the replace decision."""
        return self.finding in BAD


Fault = Callable[[np.random.Generator, Unit], None]


def make(rng: np.random.Generator, setting: Setting) -> Unit:
    """One unit with one fault."""
    w = np.array(setting.weights) / sum(setting.weights)
    u = Unit(finding=str(rng.choice(FINDINGS, p=w)), setting=setting)
    u.supply = float(rng.choice([120, 208, 240, 277, 480], p=[0.45, 0.15, 0.25, 0.05, 0.10]))
    u.tap = u.supply
    u.va = float(rng.choice([20, 40, 50, 75, 100], p=[0.1, 0.45, 0.1, 0.25, 0.1]))
    u.fused = u.finding == "protection_open" or rng.random() < setting.fuse
    u.called = u.finding == "overload" or rng.random() < setting.called
    u.neutral = u.supply in {120.0, 277.0}
    u.bonded = rng.random() < 0.4
    _parts(rng, u)
    _fault(rng, u)
    return u


def _parts(rng: np.random.Generator, u: Unit) -> None:
    s = u.setting
    per = s.copper * (40 / u.va) ** 0.4
    r1 = rng.lognormal(np.log(0.055 * per), 0.2)
    r2 = rng.lognormal(np.log(0.068 * per), 0.2)
    share = rng.uniform(*s.load)
    if u.finding == "overload":
        share = rng.uniform(1.05, 2.5)
    opened = 1.0 + r1 + r2 + rng.normal(0, 0.02)
    if rng.random() < s.rated_open:
        opened = rng.uniform(0.98, 1.04)
    u.line = u.supply * float(np.clip(rng.normal(1.0, s.line_sigma), 0.915, 1.085))
    u.p = {
        "r1": r1 * u.tap**2 / u.va, "r2": r2 * 576 / u.va, "opened": opened, "hot": rng.uniform(1.0, 1.3), "leak": rng.uniform(0.1, 0.6),
        "im": rng.uniform(0.12, 0.5), "core": rng.uniform(0.03, 0.1), "share": share, "now": share if u.called else min(share, rng.uniform(0.01, 0.1)),
        "pf": rng.uniform(*s.power_factor), "dc": rng.uniform(0.2, 0.8), "r_line": rng.uniform(0.05, 0.8), "r_open1": 0.0, "r_open2": 0.0,
        "k1": 0.0, "k2": 0.0, "touch": 0.0 if rng.random() < 0.7 else rng.uniform(0.05, 1.0), "fuse": rng.uniform(0.02, 0.15) if u.fused else 0.0,
        "wire": rng.uniform(0.05, 0.8), "joint": 0.0, "short": OPEN, "between": 0.0, "ground1": 0.0, "ground2": 0.0, "beside": OPEN,
        "idle_dc": rng.choice([OPEN, 200.0, 3000.0, 60.0]), "beyond": 1.0 if rng.random() < 0.5 else 0.0, "coil": rng.uniform(6, 40),
        "coil_called": 1.0 if u.called and not (u.finding == "healthy" and rng.random() < 0.5) else 0.0,
    }  # fmt: skip
    for name in ("between", "ground1", "ground2"):
        u.p[name] = OPEN if rng.random() < 0.85 else 10 ** rng.uniform(7.0, 9.0)
    if rng.random() < 0.6:
        u.p["beside"] = 10 ** rng.uniform(0, 3)


def _fault(rng: np.random.Generator, u: Unit) -> None:
    if (change := FAULTS.get(u.finding)) is not None:
        change(rng, u)
    if u.short:
        u.p["short"] = min(10 ** rng.uniform(-1.5, 0.6), 0.95 * 576 / (4 * u.va))
    if u.finding in {"winding_grounded", "primary_shorted_turns"} and rng.random() < 0.12:
        u.line = 0.0


def _no_supply(_: np.random.Generator, u: Unit) -> None:
    u.line = 0.0


def _low_supply(rng: np.random.Generator, u: Unit) -> None:
    u.line = u.supply * (rng.uniform(0.6, 0.897) if rng.random() < 0.8 else rng.uniform(1.103, 1.2))


def _loose_line(rng: np.random.Generator, u: Unit) -> None:
    z = abs(1 / (u.p["now"] * u.va / u.tap**2 + u.p["im"] * u.va / u.tap**2 / 1j))
    drop = rng.uniform(0.08, 0.9)
    u.p["r_line"] = OPEN if rng.random() < 0.5 else z * drop / (1 - drop)


def _wrong_tap(rng: np.random.Generator, u: Unit) -> None:
    others = [t for t in (120, 208, 240, 277, 480) if t != u.supply and 0.4 < t / u.supply < 2.1]
    near = sorted(others, key=lambda t: abs(np.log(t / u.supply)))
    new = float(near[0] if rng.random() < 0.7 or len(near) == 1 else near[1])
    u.p["r1"] *= (new / u.tap) ** 2
    u.tap = new


def _opened(place: str, behind: float) -> Fault:
    def change(rng: np.random.Generator, u: Unit) -> None:
        u.p[place] = OPEN
        u.short = rng.random() < behind

    return change


def _turns(winding: str) -> Fault:
    def change(rng: np.random.Generator, u: Unit) -> None:
        u.p[winding] = np.exp(rng.uniform(np.log(u.setting.least_turns), np.log(0.4)))
        u.short = rng.random() < 0.03

    return change


def _bridged(rng: np.random.Generator, u: Unit) -> None:
    u.p["between"] = 10 ** rng.uniform(-0.5, 5.9)


def _grounded(rng: np.random.Generator, u: Unit) -> None:
    u.p["ground1" if rng.random() < 0.5 else "ground2"] = 10 ** rng.uniform(-0.5, 5.9)


def _load_short(_: np.random.Generator, u: Unit) -> None:
    u.short = True


def _control_open(rng: np.random.Generator, u: Unit) -> None:
    z = 576 / (u.va * u.p["now"])
    drop = rng.uniform(0.1, 0.9)
    u.p["joint"] = OPEN if rng.random() < 0.65 else z * drop / (1 - drop)


FAULTS: dict[str, Fault] = {
    "no_supply": _no_supply,
    "low_supply": _low_supply,
    "loose_line": _loose_line,
    "wrong_tap": _wrong_tap,
    "primary_open": _opened("r_open1", 0.35),
    "secondary_open": _opened("r_open2", 0.35),
    "protection_open": _opened("fuse", 0.5),
    "primary_shorted_turns": _turns("k1"),
    "secondary_shorted_turns": _turns("k2"),
    "windings_bridged": _bridged,
    "winding_grounded": _grounded,
    "load_short": _load_short,
    "control_open": _control_open,
}
"""What each finding changes; the overload is in the load already."""


def live(u: Unit, *, lifted: bool = False) -> dict[str, float]:
    """Volts and amps of the energised unit; the core is solved by a few repetitions."""
    p = u.p
    over = 1.0
    for _ in range(12 if u.line > 1.12 * u.tap else 3):
        net = Network()
        net.source("L", "0", u.line)
        net.impedance("L", "P", p["r_line"])
        r1 = p["r1"] * (1 - p["k1"])
        net.impedance("P", "A", r1 * (p["hot"] + 1j * p["leak"]) + p["r_open1"])
        ratio = u.tap / 24.0 / p["opened"]
        net.transformer("A", "0", "E", "0", 1 - p["k1"])
        base = u.va / u.tap**2
        net.impedance("E", "0", 1 / (base * (p["core"] - 1j * p["im"] * over)))
        net.transformer("E", "0", "S", "0", ratio / (1 - p["k2"]))
        if p["k1"]:
            net.transformer("E", "0", "K", "0", 1 / p["k1"])
            net.impedance("K", "0", p["k1"] * p["r1"] * (p["hot"] + p["touch"]))
        if p["k2"]:
            net.transformer("E", "0", "Q", "0", ratio / p["k2"])
            net.impedance("Q", "0", p["k2"] * p["r2"] * (p["hot"] + p["touch"]))
        net.impedance("S", "X", p["r2"] * (1 - p["k2"]) * (p["hot"] + 1j * p["leak"]) + p["r_open2"])
        z = 576 / (u.va * p["now"]) * (p["pf"] + 1j * np.sqrt(1 - p["pf"] ** 2))
        if lifted:
            net.impedance("X", "0", 1e11)
        else:
            net.impedance("X", "F", p["fuse"])
            net.impedance("F", "R", p["wire"] + p["joint"])
            net.impedance("R", "0", 1 / (1 / z + 1 / p["short"]))
        v = net.solve()
        over = 0.5 * over + 0.5 * (0.7 + 0.3 * min(abs(v["E"]) / u.tap, 4.0) ** 8)
    out = {"primary": abs(v["P"]), "secondary": abs(v["X"]), "primary_a": abs((v["L"] - v["P"]) / p["r_line"])}
    if not lifted:
        out |= {"control": abs(v["R"]), "fuse": abs(v["X"] - v["F"]), "secondary_a": abs(v["R"] * (1 / z + 1 / p["short"]))}
    return out
