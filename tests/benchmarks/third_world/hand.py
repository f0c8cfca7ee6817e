"""The third world's meter and technician."""

import math
from typing import Final

import numpy as np

from core.readings import OPEN, Fact, Reading
from tests.benchmarks.third_world import nodal
from tests.benchmarks.third_world.nodal import EARTH, F1, F2, P1, P2, S1, S2, C, K, L, N, R, Y
from tests.benchmarks.third_world.unit import Unit

VOLTS: Final = {
    "line_volts": (L, N), "primary_volts": (P1, P2), "secondary_volts": (S1, S2), "secondary_volts_lifted": (S1, S2), "control_volts": (R, C),
    "coil_volts": (Y, C), "fuse_volts": (F1, F2),
}  # fmt: skip
OHMS: Final = {
    "primary_ohms": (P1, P2), "secondary_ohms": (S1, S2), "primary_secondary_ohms": (P1, S1), "primary_ground_ohms": (P1, K),
    "secondary_ground_ohms": (S1, K), "load_ohms": (R, C), "fuse_ohms": (F1, F2), "coil_ohms": (Y, C),
}  # fmt: skip
CONFUSED: Final = {
    "line_volts": "primary_volts", "primary_volts": "line_volts", "secondary_volts": "control_volts", "control_volts": "coil_volts",
    "coil_volts": "control_volts", "fuse_volts": "control_volts", "secondary_volts_lifted": "control_volts", "primary_ohms": "secondary_ohms",
    "secondary_ohms": "coil_ohms", "primary_secondary_ohms": "primary_ohms", "primary_ground_ohms": "primary_secondary_ohms",
    "secondary_ground_ohms": "secondary_ohms", "load_ohms": "coil_ohms", "fuse_ohms": "load_ohms", "coil_ohms": "load_ohms",
    "primary_amps": "secondary_amps", "secondary_amps": "primary_amps",
}  # fmt: skip
"""What is measured instead, on the rare wrong place."""
NO_ACCESS: Final = {
    "line_volts": 0.01, "primary_volts": 0.04, "secondary_volts": 0.01, "secondary_volts_lifted": 0.04, "control_volts": 0.04, "coil_volts": 0.08,
    "fuse_volts": 0.04, "primary_amps": 0.12, "secondary_amps": 0.18, "primary_ohms": 0.02, "secondary_ohms": 0.02, "primary_secondary_ohms": 0.03,
    "primary_ground_ohms": 0.03, "secondary_ground_ohms": 0.03, "load_ohms": 0.04, "fuse_ohms": 0.04, "coil_ohms": 0.08,
}  # fmt: skip
"""How often it can't be done at a unit."""
OPENING: Final = {
    "control_volts": 5, "secondary_volts": 6, "line_volts": 4, "primary_volts": 4, "coil_volts": 2, "primary_ohms": 2.2, "secondary_ohms": 1.6,
    "fuse_ohms": 1.2, "fuse_volts": 0.5, "load_ohms": 0.6, "secondary_amps": 0.5, "primary_amps": 0.4,
}  # fmt: skip
SYMPTOMS: Final[dict[str, dict[str, float]]] = {
    "healthy": {"no_control_power": 5, "intermittent": 3, "chatter": 1, "hum": 0.5},
    "no_supply": {"no_control_power": 9, "trips_breaker": 1},
    "low_supply": {"chatter": 4, "intermittent": 3, "hum": 1.5, "hot": 1, "no_control_power": 1},
    "loose_line": {"intermittent": 4, "no_control_power": 5, "chatter": 2},
    "wrong_tap": {"chatter": 3, "hum": 2, "hot": 3, "burnt": 1, "intermittent": 2, "no_control_power": 1, "smoke": 0.4},
    "primary_open": {"no_control_power": 8, "burnt": 2, "smoke": 0.7, "intermittent": 0.3, "blows_fuse": 0.3},
    "primary_shorted_turns": {"hot": 5, "hum": 3, "burnt": 2, "smoke": 1.5, "trips_breaker": 1, "intermittent": 0.5},
    "secondary_open": {"no_control_power": 8, "burnt": 1.5, "smoke": 0.5},
    "secondary_shorted_turns": {"hot": 4, "hum": 2, "burnt": 2, "chatter": 2, "smoke": 1, "no_control_power": 1},
    "windings_bridged": {
        "shock": 4,
        "trips_breaker": 2,
        "burnt": 2,
        "blows_fuse": 0.5,
        "intermittent": 1,
        "smoke": 0.5,
        "no_control_power": 1,
    },
    "winding_grounded": {
        "shock": 3,
        "trips_breaker": 3,
        "burnt": 1.5,
        "hum": 1,
        "intermittent": 1,
        "hot": 1,
        "no_control_power": 1,
    },
    "protection_open": {"no_control_power": 5, "blown_fuse": 5, "blows_fuse": 3},
    "load_short": {"hot": 3, "hum": 3, "no_control_power": 3, "smoke": 1, "burnt": 0.7, "blows_fuse": 1, "chatter": 0.7},
    "overload": {"hot": 4, "chatter": 3, "intermittent": 2, "hum": 2},
    "control_open": {"no_control_power": 6, "intermittent": 3, "chatter": 1},
}
ANY_SIGN: Final = ("no_control_power", "intermittent", "hot", "hum", "burnt", "blows_fuse", "chatter", "smoke")


class Meter:
    """Three classes."""

    def __init__(self, rng: np.random.Generator) -> None:
        self.rng = rng
        kind = int(rng.choice(3, p=[0.4, 0.4, 0.2]))
        self.counts = (6000, 4000, 2000)[kind]
        volt_error, self.ohm_error = (0.008, 0.010, 0.014)[kind], (0.006, 0.010, 0.012)[kind]
        self.digits, self.top_ohm = (3, 4, 5)[kind], (6e7, 4e7, 2e7)[kind]
        self.input_ohm = (1e7, 1e7, 1e7 if rng.random() < 0.5 else 1e6)[kind]
        self.has_low_impedance = bool(rng.random() < (0.95, 0.8, 0.6)[kind])
        self.gain_v, self.gain_ohm = 1 + rng.normal(0, volt_error / 2.2), 1 + rng.normal(0, self.ohm_error / 2.2)
        self.leads_ohm, self.is_nulled = rng.uniform(0.1, 0.5), bool(rng.random() < 0.4)
        self.gain_a, self.step_a = 1 + rng.normal(0, 0.012), 0.1 if rng.random() < 0.08 else 0.01

    def volts(self, value: float) -> float:
        """As shown."""
        rng, value = self.rng, value * self.gain_v
        full = self.counts / 1000.0
        while full < value and full < 1000:
            full *= 10
        step = max(full / self.counts, 0.01)
        value = value + rng.normal(0, self.digits * step / 2.5) + (abs(rng.normal(0, 0.02)) if value < 0.2 else 0)
        return round(max(0.0, round(value / step) * step), 3)

    def ohms(self, value: float) -> float:
        """As shown, k and M mixed up now and then; `inf` over the range."""
        rng = self.rng
        lead = self.leads_ohm * rng.uniform(0.9, 1.15) - (self.leads_ohm if self.is_nulled else 0.0)
        value = max(0.0, value * self.gain_ohm + lead)
        if value > self.top_ohm:
            return math.inf
        full = self.counts / 10.0
        while full < value:
            full *= 10
        step = full / self.counts
        value = value * (1 + rng.normal(0, self.ohm_error * 0.25 * (3.0 if value > 5e6 else 1.0))) + rng.normal(0, step)
        value = max(0.0, round(value / step) * step)
        if value >= 1000 and rng.random() < 0.012:
            value = value / 1000.0 if rng.random() < 0.75 else value * 1000.0
            value = value / 1e6 if value > self.top_ohm else value
        return round(value, 3)

    def amps(self, value: float) -> float:
        """By a clamp."""
        value = value * self.gain_a + abs(self.rng.normal(0, 0.006)) + self.rng.normal(0, 0.008)
        return round(max(0.0, round(value / self.step_a) * self.step_a), 3)


class Technician:
    """Stands at one unit, answers what is asked."""

    def __init__(self, rng: np.random.Generator, unit: Unit) -> None:
        self.rng, self.u, self.meter = rng, unit, Meter(rng)
        self.shut = {m: bool(rng.random() < share) for m, share in NO_ACCESS.items()}
        if not unit.fused:
            self.shut["fuse_volts"] = self.shut["fuse_ohms"] = True
        self.known = {name: bool(rng.random() < 0.92) for name in ("supply_volts", "tap_volts", "rated_va")}
        # Without the nominal volts nobody could call the supply low.
        self.known["supply_volts"] |= unit.finding == "low_supply"
        self.supply = unit.supply
        if unit.finding == "wrong_tap" and rng.random() < 0.02:
            self.supply = unit.tap  # believes what the last person believed

    def opening(self) -> tuple[list[Reading], list[Fact]]:
        """The first readings, a symptom, some facts."""
        rng, weight = self.rng, np.array(list(OPENING.values()), float)
        count = int(rng.choice(4, p=[0.22, 0.36, 0.27, 0.15]))
        names = rng.choice(list(OPENING), size=count, replace=False, p=weight / weight.sum())
        readings = [r for name in names if (r := self.read(str(name))) is not None]
        facts = [Fact(fact="symptom", value=self._sign())] if rng.random() < 0.80 else []
        return readings, facts + (self._told() if rng.random() < 0.5 else [])

    def _sign(self) -> str:
        rng, u = self.rng, self.u
        table = dict(SYMPTOMS[u.finding])
        if u.p["tripped"]:
            table["trips_breaker"] = table.get("trips_breaker", 0) + 8
        if u.short and not u.fused:
            table["hot"] = table.get("hot", 0) + 0.5
        if rng.random() < 0.05:
            return str(rng.choice(ANY_SIGN))
        shares = np.array(list(table.values()), float)
        name = str(rng.choice(list(table), p=shares / shares.sum()))
        return "no_control_power" if name == "blown_fuse" and not u.fused else name

    def _told(self) -> list[Fact]:
        rng, u, facts = self.rng, self.u, []
        for name, share in (("supply_volts", 0.7), ("tap_volts", 0.4), ("rated_va", 0.55)):
            if rng.random() < share and (fact := self.fact(name)) is not None:
                facts.append(fact)
        if rng.random() < 0.2:
            facts.append(Fact(fact="rated_secondary_volts", value=24.0, unit="V"))
        if u.fused and rng.random() < 0.25:
            facts.append(Fact(fact="fuse_amps", value=u.p["fuse_amps"], unit="A"))
        if rng.random() < 0.12:
            va = u.p["frac"] * u.va * float(np.clip(rng.normal(1, 0.07), 0.85, 1.15))
            facts.append(Fact(fact="load", value=float(max(1, round(va))), unit="VA", device="load", count=1))
        return facts

    def fact(self, name: str) -> Fact | None:
        """Asked which supply, tap or rating; one in twelve can't tell."""
        if not self.known.get(name, False):
            return None
        value = {"supply_volts": self.supply, "tap_volts": self.u.tap, "rated_va": self.u.va}[name]
        return Fact(fact=name, value=float(value), unit="VA" if name == "rated_va" else "V")

    def read(self, measure: str, *, low_impedance: bool = False) -> Reading | None:
        """One reading, None where it can't be done."""
        rng, is_low = self.rng, low_impedance and measure in VOLTS
        if self.shut.get(measure, True) or (is_low and not self.meter.has_low_impedance):
            return None
        place = measure
        if rng.random() < 0.006 and (self.u.fused or not CONFUSED[measure].startswith("fuse")):
            place = CONFUSED[measure]
        if measure in OHMS:
            forgot = rng.random() < (0.20 if measure in {"fuse_ohms", "coil_ohms"} else 0.08)
            value = self.meter.ohms(self._true(place, is_isolated=not forgot))
            admits = bool(forgot and rng.random() < 0.35)
            return Reading(measure=measure, value=OPEN if math.isinf(value) else value, not_isolated=admits)
        if measure not in VOLTS:
            return Reading(measure=measure, value=self.meter.amps(self._true(place)))
        meter_ohm = 3000.0 if is_low else self.meter.input_ohm
        return Reading(measure=measure, value=self.meter.volts(self._true(place, meter_ohm)), low_impedance=is_low)

    def _true(self, measure: str, meter_ohm: float = 1e7, *, is_isolated: bool = True) -> float:
        u, p = self.u, self.u.p
        if measure in VOLTS:
            return u.state(lifted=measure == "secondary_volts_lifted").volts(*VOLTS[measure], meter_ohm)
        if measure.endswith("_amps"):
            x = u.state().x
            i, j, joint = (L, P1, p["line_joint"][0]) if measure == "primary_amps" else (S1, F1, p["joint_r"][0])
            return 0.0 if joint is None else float(abs(x[i] - x[j]) / joint)
        return self._dc_ohm(measure, is_isolated=is_isolated)

    def _dc_ohm(self, measure: str, *, is_isolated: bool) -> float:
        p = self.u.p
        i, j = OHMS[measure]
        if not is_isolated:
            return nodal.dc_ohm(nodal.of_all(p), i, EARTH if measure.endswith("ground_ohms") else j)
        if measure == "load_ohms":
            return nodal.dc_ohm(nodal.of_control(p), i, j)
        if measure == "fuse_ohms":
            return 0.01 if p["fuse"] is None else float(p["fuse"])
        if measure == "coil_ohms":
            return math.inf if p["coil_open"] else float(p["coil"])
        return nodal.dc_ohm(nodal.of_transformer(p), i, j)
