"""The second world's meter and technician: classes of meter, leads, over-range, ghosts, slips, forgotten isolation, the wrong place."""

from typing import Final

import numpy as np

from core.readings import Fact, Reading
from tests.benchmarks.second_world.draw import log_between
from tests.benchmarks.second_world.nodal import W
from tests.benchmarks.second_world.unit import OHMS, VOLTS, Unit

INSULATION: Final = {"primary_secondary_ohms", "primary_ground_ohms", "secondary_ground_ohms"}
ISOLATED: Final = INSULATION | {"primary_ohms", "secondary_ohms", "load_ohms"}
NEIGHBOUR: Final = {
    "line_volts": "primary_volts", "primary_volts": "line_volts", "secondary_volts": "control_volts", "secondary_volts_lifted": "secondary_volts",
    "control_volts": "secondary_volts", "coil_volts": "control_volts", "primary_ohms": "primary_ground_ohms", "secondary_ohms": "primary_ohms",
    "load_ohms": "coil_ohms", "primary_ground_ohms": "secondary_ground_ohms", "secondary_ground_ohms": "primary_ground_ohms",
    "primary_secondary_ohms": "primary_ground_ohms", "coil_ohms": "load_ohms",
}  # fmt: skip
"""What is measured instead, on the rare wrong place."""
FORGETS, WRONG_PLACE, SLIP, FINGERS, CANNOT = 0.08, 0.008, 0.012, 0.01, 0.05
OPENINGS: Final = (
    (("primary_volts", "secondary_volts"), 0.34), (("control_volts",), 0.16), (("secondary_volts",), 0.12), (("line_volts", "control_volts"), 0.08),
    (("primary_volts", "secondary_volts", "control_volts"), 0.12), (("line_volts", "secondary_volts"), 0.07), (("secondary_volts", "control_volts"), 0.07),
    (("primary_volts", "coil_volts"), 0.04),
)  # fmt: skip
"""What a person has when the first message is sent."""
LOW_Z_OHM: Final = 3000.0
HIGH_Z_OHM: Final = 1.0 / (1e-7 + 1j * W * 1e-10)


class Meter:
    """Three classes met in vans; each is off by a constant share of what its sheet allows."""

    def __init__(self, rng: np.random.Generator) -> None:
        self.rng = rng
        kind = int(rng.choice(3, p=[0.2, 0.5, 0.3]))
        self.counts = (2000, 4000, 6000)[kind]
        self.volt_error, self.volt_counts = ((0.012, 5), (0.008, 4), (0.006, 3))[kind]
        self.ohm_error, self.ohm_counts = ((0.015, 4), (0.010, 3), (0.007, 2))[kind]
        self.amp_error = (0.03, 0.025, 0.02)[kind]
        self.top_ohm = float(rng.choice((2e6, 2e7, 4e7, 6e7), p=(0.07, 0.33, 0.4, 0.2)))
        self.gain_v, self.gain_ohm, self.gain_a = rng.normal(0, 0.45, 3)
        self.leads_ohm = rng.uniform(0.08, 0.45) * (0.08 if rng.random() < 0.25 else 1.0)
        self.is_low_z = rng.random() < 0.15
        self.is_clamp = rng.random() < 0.6
        self.turns = 10 if rng.random() < 0.3 else 1

    def volts(self, value: float, ghost: float) -> float:
        """As shown."""
        rng, step = self.rng, 0.1 if self.counts == 2000 or value >= 40 else 0.01
        value = value + (0.0 if self.is_low_z else ghost)
        noise = step * self.volt_counts * 0.4 * rng.normal() * (value > 0.05)
        shown = abs(value * (1 + self.volt_error * (self.gain_v + 0.35 * rng.normal())) + noise) + abs(rng.normal(0, 0.01))
        return round(round(shown / step) * step, 3)

    def ohms(self, value: float) -> float:
        """As shown, `inf` over the range."""
        rng = self.rng
        value = value + self.leads_ohm * (1 + 0.08 * rng.normal())
        if value > self.top_ohm:
            return float("inf")
        far = 0.02 * rng.normal() if value > 1e6 else 0.0
        shown = max(value * (1 + self.ohm_error * (self.gain_ohm + 0.3 * rng.normal()) + far), 0.0)
        step = max(10.0 ** next(d for d in range(-1, 8) if shown < self.counts * 10.0**d), 0.1)
        return max((round(shown / step) + round(self.ohm_counts * 0.35 * rng.normal())) * step, 0.0)

    def amps(self, value: float) -> float:
        """By a clamp, some with ten turns through it, or in series."""
        rng = self.rng
        if not self.is_clamp:
            return round(max(value * (1 + 0.012 * (self.gain_a + 0.3 * rng.normal())) + 0.002 * rng.normal(), 0.0), 3)
        turns = self.turns if value < 4 else 1
        shown = value * turns * (1 + self.amp_error * (self.gain_a + 0.4 * rng.normal())) + 0.012 * rng.normal()
        return round(max(round(shown / 0.01) * 0.01, 0.0) / turns, 4)


class Technician:
    """Stands at one unit, answers what is asked."""

    def __init__(self, rng: np.random.Generator, unit: Unit) -> None:
        self.rng, self.u, self.meter = rng, unit, Meter(rng)

    def opening(self) -> tuple[list[Reading], list[Fact]]:
        """Symptom, facts and the first readings."""
        rng, u, facts = self.rng, self.u, []
        sign = self._sign(is_dead=u.volts("control_volts", 1e7) < 15)
        if sign is not None and rng.random() < 0.75:
            facts.append(Fact(fact="symptom", value=sign))
        for name, value, chance in (
            ("supply_volts", u.supply, 0.45),
            ("rated_va", u.va, 0.4),
            ("tap_volts", u.tap, 0.3 * (len(u.taps) > 1)),
        ):
            if rng.random() < chance:
                facts.append(Fact(fact=name, value=value))
        if rng.random() < 0.15:
            facts.append(Fact(fact="load", value=round(u.load_va, 1), unit="VA", device="load"))
        names = OPENINGS[int(rng.choice(len(OPENINGS), p=np.array([share for _, share in OPENINGS])))][0]
        return [r for name in names if (r := self._reading(name)) is not None], facts

    def _sign(self, *, is_dead: bool) -> str | None:
        u, rng = self.u, self.rng
        if u.tripped:
            return "trips_breaker"
        if is_dead and u.finding not in {"load_short", "primary_shorted_turns", "secondary_shorted_turns"}:
            return "blows_fuse" if u.finding == "protection_open" and u.short and rng.random() < 0.5 else "no_control_power"
        told = {
            "winding_grounded": ("shock", "trips_breaker", None), "windings_bridged": ("shock", "trips_breaker", None), "load_short": ("hot", "no_control_power", "hum", "burnt"),
            "primary_shorted_turns": ("hot", "hum", "burnt", "chatter", None), "secondary_shorted_turns": ("hot", "hum", "burnt", "chatter", None),
            "overload": ("chatter", "intermittent", "hot", None), "low_supply": ("chatter", "intermittent", None), "loose_line": ("chatter", "intermittent", None),
            "control_open": ("chatter", "intermittent", None), "wrong_tap": ("chatter", "hot", "hum", None),
        }.get(u.finding, (None,))  # fmt: skip
        return told[int(rng.integers(len(told)))]

    def fact(self, name: str) -> Fact | None:
        """Asked which supply, tap or rating; one in twenty can't tell."""
        if self.rng.random() < CANNOT:
            return None
        return Fact(fact=name, value={"supply_volts": self.u.supply, "tap_volts": self.u.tap, "rated_va": self.u.va}[name])

    def read(self, measure: str, *, low_impedance: bool = False) -> Reading | None:
        """One reading, None where it can't be done."""
        return None if self.rng.random() < CANNOT else self._reading(measure, low_impedance=low_impedance)

    def _reading(self, measure: str, *, low_impedance: bool = False) -> Reading | None:
        u, rng = self.u, self.rng
        if measure.startswith("fuse") and not u.fused:
            return None
        place = NEIGHBOUR.get(measure, measure) if rng.random() < WRONG_PLACE else measure
        if place in OHMS:
            value = self._ohms(place)
            return Reading(measure=measure, value="open" if np.isinf(value) else value)
        if place in VOLTS:
            return Reading(measure=measure, value=self._volts(place, low_impedance=low_impedance), low_impedance=low_impedance)
        return Reading(measure=measure, value=self.meter.amps(u.amps(place)))

    def _volts(self, measure: str, *, low_impedance: bool) -> float:
        is_low = low_impedance or self.meter.is_low_z
        value = self.u.volts(measure, LOW_Z_OHM if is_low else HIGH_Z_OHM)
        ghost = 0.0
        if value < 3 and not is_low and self.rng.random() < 0.5:
            net = self.u.net(lifted=measure == "secondary_volts_lifted")
            ghost = log_between(self.rng, 0.5, 35) if net.dc_ohm(*VOLTS[measure]) > 2e5 else 0.0
        return self.meter.volts(value, ghost)

    def _ohms(self, measure: str) -> float:
        rng = self.rng
        isolated = not (measure in ISOLATED and rng.random() < FORGETS)
        pulled = (
            "fuse"
            if measure == "fuse_ohms" and rng.random() < 0.8
            else "coil"
            if measure == "coil_ohms" and rng.random() < 0.8
            else ""
        )
        value = self.u.ohms(measure, isolated=isolated, pulled=pulled)
        if measure in INSULATION and rng.random() < FINGERS:
            value = 1 / (1 / value + 1 / log_between(rng, 3e5, 3e6))
        shown = self.meter.ohms(value)
        if np.isfinite(shown) and shown >= 1000 and rng.random() < SLIP:
            shown *= float(rng.choice([1e3, 1e-3]))
        return shown
