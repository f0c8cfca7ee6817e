"""
Fits the belief of `core.diagnosis` on worlds of its own plant and writes `core/diagnosis/fitted.npy`.

    python -m tests.benchmarks.engine_fit --steps 12000

Every step draws new worlds, new meters and new sets of readings, so nothing is seen twice and nothing can be learned by heart. What comes out is a
probability because the loss is its logarithm. Reproducible by its seed.
"""

import argparse
import time
from itertools import pairwise
from pathlib import Path

import numpy as np

from core.circuit.plant import solve
from core.diagnosis.features import FACTS, WIDTH, Evidence, T, encode
from core.diagnosis.meter import ISOLATED, SEEN, connected_values, hands, show, true_values
from core.diagnosis.network import LAYERS, Network, pack, unpack
from core.diagnosis.worlds import NAMES, Worlds, draw
from core.findings import FINDINGS
from core.readings import SYMPTOMS

OUT = Path(__file__).parents[2] / "core" / "diagnosis" / "fitted.npy"
PRIOR = np.sqrt(np.array([row.prior for row in FINDINGS.values()]))
PRIOR /= PRIOR.sum()

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
LIKELY = np.array([[0.3 if name in SIGNS[s].split() else 0.05 for s in SYMPTOMS] for name in NAMES])


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


# How often the engine itself had each measure at the end of a call, by what the first volts showed: dead primary, dead secondary, live
# secondary, not read. Read off its own runs; a mask may depend on what was read and on nothing else.
OFTEN = {
    "dead primary": "line .9 secondary_volts .86 primary_ohms .81 primary_secondary .43 primary_ground .43 load .24 secondary_ohms .19 secondary_amps .14 control .14 secondary_ground .2 primary_amps .1 lifted .1 coil_volts .05",
    "dead secondary": "load .85 primary_ohms .79 primary_volts .7 secondary_ohms .69 control .2 line .2 secondary_amps .2 lifted .2 primary_amps .2 fuse_volts .1 primary_secondary .1 primary_ground .1 secondary_ground .1 fuse_ohms .05 coil_ohms .05",
    "live secondary": "control .7 primary_volts .6 primary_amps .45 lifted .45 line .35 secondary_amps .35 primary_secondary .35 primary_ground .35 load .3 coil_volts .25 secondary_ground .3 secondary_ohms .15 fuse_volts .3 primary_ohms .15 fuse_ohms .15 coil_ohms .1",
    "not read": "control .7 primary_volts .57 load .4 secondary_ohms .35 primary_ohms .35 primary_secondary .3 primary_amps .25 primary_ground .25 line .2 coil_volts .2 lifted .2 secondary_amps .15 secondary_ground .2 fuse_volts .1 fuse_ohms .05 coil_ohms .1",
}  # fmt: skip
SHORT = {
    "line": "line_volts",
    "lifted": "secondary_volts_lifted",
    "control": "control_volts",
    "load": "load_ohms",
    "primary_secondary": "primary_secondary_ohms",
    "primary_ground": "primary_ground_ohms",
    "secondary_ground": "secondary_ground_ohms",
}


def chances(row: str) -> np.ndarray:
    """One chance a measure."""
    words = row.split()
    pairs = {SHORT.get(name, name): float(chance) for name, chance in zip(words[::2], words[1::2], strict=True)}
    return np.array([pairs.get(name, 0.03) for name in SEEN])


CHANCES = np.stack([chances(row) for row in OFTEN.values()])


def kept(rng: np.random.Generator, value: np.ndarray) -> np.ndarray:
    """Which measures were read: at random, or as the engine would have asked for them, broken off anywhere."""
    n = len(value)
    share = rng.beta(1.0, 2.0, n)
    lean = np.exp(rng.normal(0, 0.9, (n, len(SEEN))))
    at_random = rng.random((n, len(SEEN))) < share[:, None] * lean
    first = rng.random((n, 2)) < (0.7, 0.85)
    primary, secondary = value[:, SEEN.index("primary_volts")], value[:, SEEN.index("secondary_volts")]
    kind = np.where(first[:, 1], np.where(secondary < 5, 1, 2), 3)
    kind = np.where(first[:, 0] & (primary < 60), 0, kind)
    asked = rng.random((n, len(SEEN))) < CHANCES[kind] * rng.choice([0.3, 0.7, 1.0, 1.3, 1.8], n)[:, None]
    asked[:, SEEN.index("primary_volts")] = np.where(
        kind == 0, kind == 0, first[:, 0] & (kind != 3) | asked[:, SEEN.index("primary_volts")] & (kind == 3)
    )
    asked[:, SEEN.index("secondary_volts")] = np.where(
        kind == 0, asked[:, SEEN.index("secondary_volts")], first[:, 1] & (kind != 3)
    )
    return np.where((rng.random(n) < 0.65)[:, None], asked, at_random)


class Stream:
    """Evidence with its truth, without end."""

    def __init__(self, seed: int, worlds: int = 8192) -> None:
        self.rng = np.random.default_rng(seed)
        self.worlds = worlds

    def batch(self) -> tuple[np.ndarray, np.ndarray, np.ndarray]:
        """Inputs, finding, and whether a short stands in the control circuit."""
        rng = self.rng
        w = draw(rng, rng.choice(len(NAMES), self.worlds, p=PRIOR))
        live = solve(w.circuit)
        hand = hands(rng, self.worlds)
        true = true_values(rng, w, live)
        joined = connected_values(rng, w, true)
        facts, symptoms = told(rng, w)
        first = show(rng, w, hand, true, joined)
        mask = kept(rng, first.value)
        value = np.where(mask, first.value, np.nan)
        fuse = mask[:, [SEEN.index("fuse_volts"), SEEN.index("fuse_ohms")]].any(axis=1)
        unfused = (fuse & (~w.fused | (rng.random(self.worlds) < 0.04)))[:, None] * 1.0
        for name in ("fuse_volts", "fuse_ohms"):
            value[:, SEEN.index(name)] = np.where(unfused[:, 0] > 0, np.nan, value[:, SEEN.index(name)])
        again = show(rng, w, hand, true, joined).value
        twice = rng.random(value.shape) < np.where(ISOLATED, 0.3, 0.1)
        with np.errstate(all="ignore"):
            alike = (np.abs(np.log((again + 0.5) / (value + 0.5))) < 0.1) | (np.isinf(again) & np.isinf(value))
        value = np.where(twice & ~np.isnan(value), again, value)
        evidence = Evidence(
            value=value, confirmed=twice & alike, connected=first.told_connected, low_impedance=first.low_impedance, unfused=unfused,
            facts=facts, symptoms=symptoms,
        )  # fmt: skip
        return encode(evidence), w.finding, w.short


def fit(steps: int, seed: int, start: Network | None = None) -> Network:
    """Adam on the logarithmic loss, the rate falling to nothing; the answer is the average of the last tenth."""
    rng = np.random.default_rng(seed)
    stream = Stream(seed)
    sizes = (WIDTH, *LAYERS, len(NAMES) + 1)
    p = [
        a
        for i, o in pairwise(sizes)
        for a in (rng.normal(0, np.sqrt(2 / i), (i, o)).astype(np.float32), np.zeros(o, np.float32))
    ]
    if start is not None:
        p = [a.copy() for a in start]
    m, v = [np.zeros_like(a) for a in p], [np.zeros_like(a) for a in p]
    mean, seen = [np.zeros_like(a, dtype=np.float64) for a in p], 0
    began, loss_mean = time.time(), 0.0
    pending: list = []
    for step in range(steps):
        if not pending:
            x, y, s = stream.batch()
            pending = [(x[i::4], y[i::4], s[i::4]) for i in range(4)]
        x, y, s = pending.pop()
        loss, g = gradient(p, x, y, s)
        loss_mean = 0.98 * loss_mean + 0.02 * loss if step else loss
        rate = (2e-3 if start is None else 1e-3) * 0.5 * (1 + np.cos(np.pi * step / steps)) * min(1.0, (step + 1) / 200)
        for i in range(len(p)):
            m[i] = 0.9 * m[i] + 0.1 * g[i]
            v[i] = 0.999 * v[i] + 0.001 * g[i] ** 2
            p[i] -= rate * (m[i] / (1 - 0.9 ** (step + 1))) / (np.sqrt(v[i] / (1 - 0.999 ** (step + 1))) + 1e-8)
        if step >= 0.9 * steps:
            seen += 1
            for i in range(len(p)):
                mean[i] += (p[i] - mean[i]) / seen
        if step % 500 == 0:
            print(f"{step:6d} loss {loss_mean:.4f} {time.time() - began:.0f} s", flush=True)
    return tuple(a.astype(np.float32) for a in mean)


def gradient(p: list, x: np.ndarray, y: np.ndarray, s: np.ndarray) -> tuple[float, list]:
    """Loss and its slope, by the chain rule written out."""
    hidden, h = [x], x
    for i in range(0, len(p) - 2, 2):
        h = np.maximum(h @ p[i] + p[i + 1], 0)
        hidden.append(h)
    out = h @ p[-2] + p[-1]
    z = out[:, :-1] - out[:, :-1].max(1, keepdims=True)
    prob = np.exp(z) / np.exp(z).sum(1, keepdims=True)
    q = 1 / (1 + np.exp(-np.clip(out[:, -1], -30, 30)))
    n = len(y)
    loss = -np.log(prob[np.arange(n), y] + 1e-9).mean() - np.log(np.where(s, q, 1 - q) + 1e-9).mean()
    d = np.concatenate([prob, q[:, None]], 1)
    d[np.arange(n), y] -= 1
    d[:, -1] -= s
    d = (d / n).astype(np.float32)
    g: list = []
    for i in range(len(p) - 2, -1, -2):
        h = hidden[i // 2]
        g = [h.T @ d, d.sum(0), *g]
        if i:
            d = (d @ p[i].T) * (h > 0)
    return float(loss), g


def main() -> None:
    """Fit and write."""
    ask = argparse.ArgumentParser(description=__doc__)
    ask.add_argument("--steps", type=int, default=12000)
    ask.add_argument("--seed", type=int, default=1)
    ask.add_argument("--out", type=Path, default=OUT)
    ask.add_argument("--go-on", action="store_true", help="start from what is shipped")
    told_ = ask.parse_args()
    start = unpack(np.load(OUT)) if told_.go_on else None
    np.save(told_.out, pack(fit(told_.steps, told_.seed, start)))


if __name__ == "__main__":
    main()
