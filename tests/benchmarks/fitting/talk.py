"""What a technician tells besides readings: facts, some of them wrong, and symptoms."""

import numpy as np

from core.diagnosis.features import FACTS, T
from core.diagnosis.worlds import NAMES, Worlds
from core.readings import SYMPTOMS

SIGNS = {
    "no_control_power": "no_supply loose_line primary_open secondary_open protection_open load_short control_open",
    "intermittent": "loose_line low_supply control_open overload",
    "hot": "primary_shorted_turns secondary_shorted_turns overload load_short wrong_tap windings_bridged",
    "hum": "primary_shorted_turns secondary_shorted_turns overload load_short wrong_tap",
    "burnt": "primary_open secondary_open primary_shorted_turns secondary_shorted_turns windings_bridged winding_grounded load_short",
    "blows_fuse": "protection_open load_short overload",
    "trips_breaker": "primary_shorted_turns winding_grounded windings_bridged no_supply load_short",
    "chatter": "low_supply loose_line overload wrong_tap control_open secondary_shorted_turns",
    "blown_fuse": "protection_open load_short",
    "shock": "winding_grounded windings_bridged",
    "smoke": "primary_shorted_turns secondary_shorted_turns primary_open load_short overload wrong_tap",
}
"""Which findings each symptom is likelier with. Common practice, no source."""
OFTEN_SAID = frozenset({"hot", "hum", "intermittent", "chatter", "burnt"})
"""A sound unit is warm and hums a little, and an old one smells: these are told of any."""
LIKELY = np.array(
    [[0.3 if name in SIGNS[s].split() else 0.13 if s in OFTEN_SAID else 0.05 for s in SYMPTOMS] for name in NAMES]
)


def told(rng: np.random.Generator, w: Worlds) -> tuple[np.ndarray, np.ndarray]:
    """Facts and symptoms that a technician would tell of each world."""
    n = len(w.finding)
    c = w.circuit
    facts = np.full((n, len(FACTS)), np.nan)
    rows = {
        "supply_volts": w.supply_v, "tap_volts": c.tap_v, "rated_va": c.rated_va, "rated_secondary_volts": c.rated_secondary_v,
        "load_va": w.load_share * c.rated_va * np.exp(rng.normal(0, 0.2, n)),
        "fuse_amps": np.where(w.fused, rng.choice([2.0, 3.0, 5.0], n), np.nan),
    }  # fmt: skip
    talk = rng.choice([0.0, 0.4, 0.9], n)
    for name, chance in (
        ("supply_volts", 1.0),
        ("tap_volts", 0.7),
        ("rated_va", 0.8),
        ("rated_secondary_volts", 0.6),
        ("load_va", 0.2),
        ("fuse_amps", 0.2),
    ):
        facts[:, T[name]] = np.where(rng.random(n) < chance * talk, rows[name], np.nan)
    wrong = rng.random(n) < 0.01
    facts[wrong, T["tap_volts"]] = rng.choice([120.0, 208.0, 240.0], wrong.sum())
    speaks = rng.choice([0.0, 0.5, 1.0, 1.6], n)
    symptoms = (rng.random((n, len(SYMPTOMS))) < LIKELY[w.finding] * speaks[:, None]).astype(float)
    # A winding fault that tripped the breaker is mostly told as such.
    tripped = (c.line_v == 0.0) & (w.finding != NAMES.index("no_supply")) & (rng.random(n) < 0.6)
    symptoms[:, SYMPTOMS.index("trips_breaker")] = np.where(tripped, 1.0, symptoms[:, SYMPTOMS.index("trips_breaker")])
    return facts, symptoms
