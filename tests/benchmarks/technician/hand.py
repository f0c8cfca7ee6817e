"""What the simulated technician reports when asked for a measure or a fact."""

import numpy as np

from core.readings import Fact, Reading
from tests.benchmarks.technician.unit import OPEN, Unit, live

SYMPTOMS = {
    "primary_open": ("no_control_power", "burnt"), "secondary_open": ("no_control_power", "burnt"), "load_short": ("blows_fuse", "hum"),
    "primary_shorted_turns": ("hot", "hum", "trips_breaker"), "secondary_shorted_turns": ("hot", "chatter"), "overload": ("chatter", "hot"),
    "protection_open": ("no_control_power", "blown_fuse"), "low_supply": ("chatter",), "wrong_tap": ("hum", "chatter"),
    "no_supply": ("no_control_power",), "loose_line": ("intermittent", "no_control_power"), "control_open": ("no_control_power", "intermittent"),
}  # fmt: skip


class Technician:
    """Stands at one unit, answers what is asked."""

    def __init__(self, rng: np.random.Generator, unit: Unit) -> None:
        self.rng, self.u = rng, unit
        self.loaded, self.lifted = live(unit), live(unit, lifted=True)
        self.lead = rng.uniform(0.05, 0.4)
        self.limit = float(rng.choice([2e7, 4e7, 6e7, 6e6]))
        self.is_ghostly = rng.random() < unit.setting.ghost
        self.ghost = rng.uniform(0.03, 0.7)

    def opening(self) -> tuple[list[Reading], list[Fact]]:
        """What the first message says."""
        s, rng, facts = self.u.setting, self.rng, []
        for name, value, chance in (
            ("supply_volts", self.u.supply, s.tells), ("tap_volts", self.u.tap, 0.6 * s.tells), ("rated_va", self.u.va, s.tells),
        ):  # fmt: skip
            if rng.random() < chance:
                facts.append(Fact(fact=name, value=value))
        signs = SYMPTOMS.get(self.u.finding, ("no_control_power",))
        sign = str(rng.choice(signs)) if rng.random() < 0.6 else "no_control_power"
        if self.u.line == 0.0 and self.u.finding != "no_supply" and rng.random() < 0.8:
            sign = "trips_breaker"
        if rng.random() < 0.8:
            facts.append(Fact(fact="symptom", value=sign))
        first = [m for m in ("secondary_volts", "primary_volts", "control_volts") if rng.random() < (0.5, 0.35, 0.2)[0]]
        return [r for m in first[: rng.integers(0, 3)] if (r := self.read(m)) is not None], facts

    def fact(self, name: str) -> Fact | None:
        """Asked which supply, tap or rating; one in five can't tell."""
        if self.rng.random() < 0.2:
            return None
        return Fact(fact=name, value={"supply_volts": self.u.supply, "tap_volts": self.u.tap, "rated_va": self.u.va}[name])

    def read(self, measure: str, *, low_impedance: bool = False) -> Reading | None:
        """One reading, None where it can't be done."""
        if measure.startswith("fuse") and not self.u.fused:
            return None
        rng, s = self.rng, self.u.setting
        if measure.endswith("_ohms"):
            value: float = self._ohms(measure, joined=measure != "coil_ohms" and rng.random() < s.forgets)
            value = value * (1 + rng.normal(0, s.accuracy)) + self.lead * rng.uniform(0.8, 1.1)
            value = round(value, 1) if value < 1000 else float(f"{value:.3g}")
            if rng.random() < s.slip and value < OPEN / 10:
                value *= float(rng.choice([10, 0.1, 1000, 0.001]))
            return Reading(measure=measure, value="open" if value > self.limit else value)
        value = self._live(measure, low_impedance=low_impedance)
        if measure.endswith("_amps"):
            value = max(0.0, round(value * (1 + rng.normal(0, 0.02)) + rng.normal(0, 0.01), 2))
        else:
            value = max(0.0, round(value * (1 + rng.normal(0, s.accuracy)) + rng.normal(0, 0.05), 1))
        if rng.random() < s.slip:
            value *= float(rng.choice([10, 0.1]))
        return Reading(measure=measure, value=value, low_impedance=low_impedance)

    def _live(self, measure: str, *, low_impedance: bool) -> float:
        u, v = self.u, self.loaded
        value = {
            "line_volts": u.line, "primary_volts": v["primary"], "secondary_volts": v["secondary"],
            "secondary_volts_lifted": self.lifted["secondary"], "control_volts": v["control"],
            "coil_volts": v["control"] * u.p["coil_called"] * 0.97, "fuse_volts": v["fuse"], "primary_amps": v["primary_a"],
            "secondary_amps": v["secondary_a"],
        }[measure]  # fmt: skip
        if self.is_ghostly and not low_impedance:
            if measure in {"line_volts", "primary_volts"} and u.line == 0.0:
                return self.ghost * u.supply
            if measure == "primary_volts" and u.p["r_line"] >= OPEN:
                return self.ghost * u.supply
            if measure == "control_volts" and (u.p["joint"] >= OPEN or u.p["fuse"] >= OPEN):
                return self.ghost * 15
        return value

    def _ohms(self, measure: str, *, joined: bool) -> float:
        u, p = self.u, self.u.p
        dc = 576 / (u.va * p["share"]) * p["dc"] if u.called else p["idle_dc"]
        load = 1 / (1 / dc + 1 / p["short"]) + (p["joint"] if p["beyond"] else 0.0)
        r1 = p["r1"] * (1 - p["k1"]) + p["r_open1"]
        r2 = p["r2"] * (1 - p["k2"]) + p["r_open2"]
        true, beside = {
            "primary_ohms": (r1, p["beside"]), "secondary_ohms": (r2, load + p["fuse"]),
            "primary_secondary_ohms": (p["between"], 3.0 if u.neutral and u.bonded else OPEN),
            "primary_ground_ohms": (p["ground1"], 0.3 if u.neutral else OPEN), "secondary_ground_ohms": (p["ground2"], 0.3 if u.bonded else OPEN),
            "load_ohms": (load, r2 + p["fuse"]), "fuse_ohms": (p["fuse"], r2 + load), "coil_ohms": (p["coil"], OPEN),
        }[measure]  # fmt: skip
        return 1 / (1 / max(true, 1e-3) + 1 / beside) if joined else true
