"""How bad a simulated finding is, in the words of a table."""

import math
from collections.abc import Callable
from typing import Final

from tests.benchmarks.fourth_world import unit as fourth
from tests.benchmarks.second_world import unit as second
from tests.benchmarks.technician.unit import OPEN, Unit
from tests.benchmarks.third_world import unit as third


def _band(value: float, *bands: tuple[float, str]) -> str:
    return next((name for limit, name in bands if value < limit), bands[-1][1])


def _turns(key: str) -> Callable[[Unit], str]:
    return lambda u: _band(u.p[key], (0.05, "2 to 5 %"), (0.12, "5 to 12 %"), (1.0, "12 to 40 %"))


def _ohms(ohms: float) -> str:
    return _band(
        ohms, (100.0, "under 100 ohm"), (1e4, "to 10 k"), (1e5, "to 100 k"), (5e5, "to 500 k"), (math.inf, "500 k to 1 M")
    )


def _behind(u: Unit) -> str:
    return "with a short behind" if u.short else "alone"


def _supply(u: Unit) -> str:
    return _band(abs(u.line / u.supply - 1.0), (0.13, "within 3 % of the limit"), (1.0, "far out"))


SEVERITY: Final[dict[str, Callable[[Unit], str]]] = {
    "low_supply": _supply,
    "loose_line": lambda u: "open" if u.p["r_line"] >= OPEN else "sagging",
    "wrong_tap": lambda u: _band(abs(math.log(u.tap / u.supply)), (0.2, "within 20 %"), (9.0, "over 20 %")),
    "primary_open": _behind,
    "primary_shorted_turns": _turns("k1"),
    "secondary_open": _behind,
    "secondary_shorted_turns": _turns("k2"),
    "windings_bridged": lambda u: _ohms(u.p["between"]),
    "winding_grounded": lambda u: _ohms(min(u.p["ground1"], u.p["ground2"])),
    "protection_open": _behind,
    "load_short": lambda u: "through a fuse that holds" if u.fused else "no fuse",
    "overload": lambda u: _band(u.p["share"], (1.2, "105 to 120 %"), (1.6, "120 to 160 %"), (9.0, "160 to 250 %")),
    "control_open": lambda u: "open" if u.p["joint"] >= OPEN else "a bad joint",
}


def severity(unit: Unit | second.Unit | third.Unit | fourth.Unit) -> str:
    """One word or two; nothing where the finding has no degrees."""
    if not isinstance(unit, Unit):
        return unit.severity
    name = SEVERITY.get(unit.finding)
    return name(unit) if name is not None else ""
