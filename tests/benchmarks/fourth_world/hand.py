"""The fourth world's technician: of some habit, with a complaint passed on, shut out of some places."""

import math
from typing import Final

import numpy as np

from core.readings import OPEN, Fact, Reading
from tests.benchmarks.fourth_world.meter import Meter
from tests.benchmarks.fourth_world.places import Places
from tests.benchmarks.fourth_world.unit import Unit
from tests.benchmarks.fourth_world.winder import pick

SWAPS: Final = {
    "line_volts": "primary_volts", "primary_volts": "secondary_volts", "secondary_volts": "control_volts", "control_volts": "secondary_volts",
    "coil_volts": "control_volts", "fuse_volts": "secondary_volts", "secondary_volts_lifted": "secondary_volts", "primary_amps": "secondary_amps",
    "secondary_amps": "primary_amps", "primary_ohms": "primary_secondary_ohms", "secondary_ohms": "primary_ohms",
    "primary_secondary_ohms": "secondary_ohms", "primary_ground_ohms": "secondary_ground_ohms", "secondary_ground_ohms": "primary_ground_ohms",
    "load_ohms": "secondary_ohms", "coil_ohms": "load_ohms", "fuse_ohms": "coil_ohms",
}  # fmt: skip
"""What is measured instead, on the rare wrong place."""
BLOCKED: Final = {
    "line_volts": 0.02, "primary_volts": 0.06, "secondary_volts": 0.02, "secondary_volts_lifted": 0.06, "control_volts": 0.03, "coil_volts": 0.12,
    "fuse_volts": 0.06, "primary_amps": 0.10, "secondary_amps": 0.14, "primary_ohms": 0.03, "secondary_ohms": 0.03, "primary_secondary_ohms": 0.04,
    "primary_ground_ohms": 0.04, "secondary_ground_ohms": 0.04, "load_ohms": 0.05, "fuse_ohms": 0.03, "coil_ohms": 0.10,
}  # fmt: skip
"""How often it can't be done at a unit."""
COMPLAINT: Final[dict[str, dict[str, float]]] = {
    "healthy": {"no_control_power": 6, "intermittent": 4, "hum": 1, "chatter": 2},
    "no_supply": {"no_control_power": 8, "trips_breaker": 2},
    "low_supply": {"chatter": 5, "hum": 2, "intermittent": 3, "hot": 2},
    "loose_line": {"intermittent": 5, "chatter": 3, "no_control_power": 4, "burnt": 1},
    "wrong_tap": {"hot": 4, "chatter": 4, "hum": 4, "burnt": 1, "no_control_power": 1, "smoke": 1},
    "primary_open": {"no_control_power": 9, "burnt": 2, "smoke": 1, "hot": 1},
    "primary_shorted_turns": {"hot": 6, "hum": 4, "smoke": 2, "burnt": 2, "trips_breaker": 1, "no_control_power": 1},
    "secondary_open": {"no_control_power": 9, "burnt": 2, "smoke": 1, "intermittent": 1},
    "secondary_shorted_turns": {"hot": 5, "hum": 3, "chatter": 3, "smoke": 2, "burnt": 1, "no_control_power": 1},
    "windings_bridged": {"shock": 5, "burnt": 3, "trips_breaker": 2, "smoke": 1, "hot": 1, "intermittent": 1},
    "winding_grounded": {"shock": 4, "trips_breaker": 3, "burnt": 2, "hum": 2, "intermittent": 1, "hot": 1},
    "protection_open": {"blown_fuse": 6, "no_control_power": 5, "blows_fuse": 4},
    "load_short": {"hot": 4, "hum": 3, "no_control_power": 4, "smoke": 2, "blows_fuse": 2, "chatter": 1},
    "overload": {"hot": 5, "chatter": 5, "hum": 2, "intermittent": 3, "blows_fuse": 1},
    "control_open": {"no_control_power": 7, "intermittent": 4, "chatter": 2},
}
HEARSAY: Final = {
    "no_control_power": 5, "intermittent": 2, "hot": 2, "hum": 2, "burnt": 1, "chatter": 2, "smoke": 1, "trips_breaker": 1, "blows_fuse": 1,
}  # fmt: skip
HABITS: Final = (
    ("line_volts", "primary_volts", "secondary_volts", "control_volts"), ("control_volts", "fuse_ohms", "secondary_volts", "coil_volts"),
    ("primary_volts", "secondary_volts", "secondary_volts_lifted"), ("primary_ohms", "secondary_ohms", "primary_ground_ohms", "secondary_ground_ohms"),
    ("secondary_volts", "secondary_amps", "primary_amps"), ("coil_volts", "control_volts", "secondary_volts"),
)  # fmt: skip
"""In which order each kind of technician begins."""


class Technician:
    """Stands at one unit, answers what is asked."""

    def __init__(self, rng: np.random.Generator, unit: Unit) -> None:
        self.rng, self.u, self.meter, self.places = rng, unit, Meter(rng), Places(rng, unit)
        self.can = {name: rng.random() >= share for name, share in BLOCKED.items()}
        if not unit.fused:
            self.can["fuse_volts"] = self.can["fuse_ohms"] = False
        self.known = {
            "supply_volts": unit.supply if rng.random() < 0.93 or unit.finding == "low_supply" else None,
            "tap_volts": unit.tap if rng.random() < 0.87 else None,
            "rated_va": unit.va if rng.random() < 0.9 else None,
        }

    def opening(self) -> tuple[list[Reading], list[Fact]]:
        """A complaint, some facts, the first readings in the order of habit."""
        rng = self.rng
        facts = [Fact(fact="symptom", value=self._sign())] if rng.random() < 0.85 else []
        facts += self._told() if rng.random() < 0.52 else []
        names, count = pick(rng, HABITS, (30, 24, 18, 10, 6, 12)), pick(rng, (0, 1, 2, 3), (26, 32, 26, 16))
        readings: list[Reading] = []
        for name in names:
            is_skipped = rng.random() < 0.2 and name != names[0]
            if len(readings) < count and not is_skipped and (reading := self.read(name)) is not None:
                readings.append(reading)
        return readings, facts

    def _sign(self) -> str:
        rng, u = self.rng, self.u
        if rng.random() < 0.10:
            name = pick(rng, tuple(HEARSAY), tuple(HEARSAY.values()))
        else:
            rows = dict(COMPLAINT[u.finding])
            rows["trips_breaker"] = rows.get("trips_breaker", 0) + 12.0 * u.d["tripped"]
            rows["burnt"] = rows.get("burnt", 0) + 1.5 * (u.short and u.is_bad)
            name = pick(rng, tuple(rows), tuple(rows.values()))
        if name == "blown_fuse" and not u.fused:
            name = "blows_fuse" if rng.random() < 0.3 else "no_control_power"
        return str(name)

    def _told(self) -> list[Fact]:
        rng, u, facts = self.rng, self.u, []
        for name, share in (("supply_volts", 0.6), ("tap_volts", 0.35), ("rated_va", 0.6)):
            if rng.random() < share and (fact := self.fact(name)) is not None:
                facts.append(fact)
        if u.d["fuse_amps"] is not None and rng.random() < 0.2:
            facts.append(Fact(fact="fuse_amps", value=float(u.d["fuse_amps"]), unit="A"))
        if rng.random() < 0.15:
            facts.append(Fact(fact="rated_secondary_volts", value=24.0, unit="V"))
        if rng.random() < 0.10:
            va = float(max(1, round(u.d["share"] * u.va * rng.uniform(0.9, 1.1))))
            facts.append(Fact(fact="load", value=va, unit="VA", device="load", count=1))
        return facts

    def fact(self, name: str) -> Fact | None:
        """Asked which supply, tap or rating; one in ten can't tell."""
        value = self.known.get(name)
        return None if value is None else Fact(fact=name, value=float(value), unit="VA" if name == "rated_va" else "V")

    def read(self, measure: str, *, low_impedance: bool = False) -> Reading | None:
        """One reading, None where it can't be done."""
        rng = self.rng
        if not self.can.get(measure, False):
            return None
        place = SWAPS[measure] if rng.random() < 0.008 else measure
        if place.startswith("fuse") and not self.u.fused:
            place = measure
        if measure.endswith("_ohms"):
            forgot = rng.random() < 0.08
            admits = bool(forgot and rng.random() < 0.25)
            value = self.meter.ohms(self.places.ohms(place, is_isolated=not forgot))
            return Reading(measure=measure, value=OPEN if math.isinf(value) else value, not_isolated=admits)
        if measure.endswith("_amps"):
            at = self.u.circuit()
            amps = self.meter.amps(at.primary_a if place == "primary_amps" else at.secondary_a)
            return Reading(measure=measure, value=amps)
        if low_impedance and not self.meter.has_low_impedance:
            return None
        volts = self.meter.volts(self.places.volts(place, is_low=low_impedance))
        return Reading(measure=measure, value=volts, low_impedance=low_impedance)
