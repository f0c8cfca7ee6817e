"""Units of the engine's own worlds, as many as are wanted: wider and harder than the trade."""

from dataclasses import replace
from typing import Final

import numpy as np

from core.circuit.plant import solve
from core.diagnosis.features import FACTS, T
from core.diagnosis.meter import OHMS, SEEN, M, connected_values, hands, show, true_values
from core.diagnosis.worlds import NAMES, draw
from core.findings import FINDINGS
from tests.benchmarks.fitting.bank import Bank
from tests.benchmarks.fitting.talk import told

PRIOR: Final = np.sqrt(np.array([row.prior for row in FINDINGS.values()]))
OPENING: Final = {
    "secondary_volts": 0.6, "primary_volts": 0.5, "control_volts": 0.3, "line_volts": 0.2, "coil_volts": 0.1, "primary_ohms": 0.1,
    "secondary_ohms": 0.1, "load_ohms": 0.07, "fuse_volts": 0.07,
}  # fmt: skip
"""How often the first message brings each."""
TALKS: Final = (0.0, 0.6, 1.0, 1.6)
CANNOT: Final = 0.04
"""How often a test can't be done."""
KNOWS: Final = 0.85
LOOKS_AGAIN: Final = 0.25
"""How often what was not isolated is not isolated the second time."""
FUSES: Final = [M["fuse_volts"], M["fuse_ohms"]]


def own(rng: np.random.Generator, count: int) -> Bank:
    """Some units, no two alike."""
    w = draw(rng, rng.choice(len(NAMES), count, p=PRIOR / PRIOR.sum()))
    true = true_values(rng, w, solve(w.circuit))
    joined = connected_values(rng, w, true)
    hand = hands(rng, count)
    # Volts are read again in the low-impedance mode, ohms with an eye on the leads.
    plain = replace(hand, ghosts=np.zeros(count), forgets=LOOKS_AGAIN * hand.forgets)
    first, second = show(rng, w, hand, true, joined), show(rng, w, plain, true, joined)
    # Ohms of what is told to be still connected count for nothing: they are read once more.
    void = first.told_connected & np.isfinite(first.value)
    once = np.where(void, second.value, first.value)
    twice = second.value.copy()
    for values in (once, twice):
        values[rng.random(values.shape) < CANNOT] = np.nan
    unfused = ~w.fused | (rng.random(count) < 0.03)
    for values in (once, twice):
        values[np.ix_(unfused, FUSES)] = np.nan
    odds = np.zeros((count, len(SEEN)))
    odds[:, [M[name] for name in OPENING]] = np.array(list(OPENING.values())) * rng.choice(TALKS, count)[:, None]
    answers, symptoms = told(rng, w)
    known = np.full((count, len(FACTS)), np.nan)
    for name, truth in (("supply_volts", w.supply_v), ("tap_volts", w.circuit.tap_v), ("rated_va", w.circuit.rated_va)):
        known[:, T[name]] = np.where(rng.random(count) < KNOWS, truth, np.nan)
    return Bank(
        finding=w.finding,
        short=w.short,
        first=once.astype(np.float32),
        second=twice.astype(np.float32),
        connected=np.stack([first.told_connected & ~void, np.zeros_like(void)], axis=1),
        low=np.stack([first.low_impedance, second.low_impedance | ~OHMS], axis=1),
        opening=rng.random(odds.shape) < odds,
        told=answers.astype(np.float32),
        symptoms=symptoms.astype(np.float32),
        known=known.astype(np.float32),
    )
