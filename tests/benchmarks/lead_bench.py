"""
How often the map of the leads is right, on transformers wound by other rules than the engine's priors.

    python -m tests.benchmarks.lead_bench [units]       what is said, how fast, how well calibrated; -v tells each unit that is wrong and sure
    python -m tests.benchmarks.lead_compare [units]     the same beside a Bayesian reference

Wire gauges are whole, turns have lengths, colours follow a habit or none, labels may be another unit's, the meter has gain error, counts
and test leads, pairs are left out and one reading is mistyped. Nothing here is taken from `core.leads`.
"""

import math
import sys
import time
from collections import Counter
from dataclasses import dataclass, replace
from itertools import combinations

import numpy as np

from core.leads import map_leads
from core.readings import Fact, Job, Reading
from tests.benchmarks.lead_slip import slip

SETS = (
    ((120,), 3), ((240,), 3), ((208,), 1), ((480,), 1), ((277,), 1), ((208, 240), 5), ((120, 240), 4), ((120, 208, 240), 7), ((208, 240, 480), 4),
    ((120, 208, 240, 480), 3), ((120, 208, 240, 277, 480), 2), ("dual 120", 2), ("dual 240", 1),
)  # fmt: skip
COLOURS = ["white", "black", "red", "orange", "yellow", "blue", "brown", "green", "gray", "violet", "pink", "tan"]
HABIT = {120: "black", 208: "red", 240: "orange", 277: "brown", 480: "gray"}
RATINGS = (20, 30, 40, 50, 60, 75, 100)


@dataclass(frozen=True)
class Unit:
    """One transformer and what is really in it."""

    windings: tuple
    """(role, ((lead, role), ...), section ohms) along each winding."""
    facts: tuple
    equal_halves: bool

    @property
    def leads(self):
        """All names."""
        return [lead for _, names, _ in self.windings for lead, _ in names]

    @property
    def key(self):
        """What a map must say to be right."""
        return frozenset((role, frozenset(names)) for role, names, _ in self.windings)

    def ohms(self, a, b):
        """True ohms between two leads, None where open."""
        for _, names, parts in self.windings:
            at = {lead: i for i, (lead, _) in enumerate(names)}
            if a in at and b in at:
                low, high = sorted((at[a], at[b]))
                return sum(parts[low:high])
        return None


def draw_unit(rng):
    """A transformer of one of the tap sets."""
    sets, odds = zip(*SETS, strict=True)
    taps = sets[rng.choice(len(sets), p=np.array(odds) / sum(odds))]
    va = float(rng.choice(RATINGS, p=[0.1, 0.05, 0.4, 0.15, 0.05, 0.17, 0.08]))
    lost = rng.uniform(0.75, 1.3) * 0.125 * (va / 40.0) ** -0.45
    split = rng.uniform(0.36, 0.52)
    low = lost * (1 - split) * 24**2 / va
    volts = (int(taps.split()[1]),) if isinstance(taps, str) else taps
    parts = _sections(rng, volts, lost * split * volts[0] ** 2 / va)
    centre = rng.random() < 0.12
    names = _names(rng, taps, volts, centre)
    if isinstance(taps, str):
        half = str(volts[0])
        high = tuple(
            ("primary", ((a, half), (b, half)), (2 * parts[0] * rng.uniform(0.99, 1.08),)) for a, b in (names[0:2], names[2:4])
        )
        low_names = names[4:]
    else:
        roles = ("common", *map(str, taps)) if len(taps) > 1 else (str(taps[0]),) * 2
        high = (("primary", tuple(zip(names, roles, strict=False)), parts),)
        low_names = names[len(taps) + 1 :]
    if centre:
        secondary = (
            "secondary",
            tuple(zip(low_names, ("12", "ct", "12"), strict=True)),
            (low / 2, low / 2 * rng.uniform(1.0, 1.1)),
        )
    else:
        secondary = ("secondary", tuple((n, "24") for n in low_names), (low,))
    equal = len(parts) == 2 and abs(math.log(parts[0] / parts[1])) < 0.05
    return Unit((*high, secondary), _facts(rng, high, va), equal)


def _sections(rng, volts, first):
    """Ohms of each section: one wire, wire in whole gauges for each tap's current, or each section a bit thinner than the last."""
    way = rng.choice(["one", "gauges", "thinner"], p=[0.4, 0.35, 0.25])
    growth = rng.uniform(0.05, 0.25)
    parts, before, per_volt = [], 0.0, first / volts[0]
    factor = 1.0
    for v in volts:
        if parts and way == "gauges":
            factor = 1.2599 ** round(3 * math.log2(v / volts[0]) * 1.0)
        elif parts and way == "thinner":
            factor *= rng.uniform(1.0, 1.5)
        middle = (v + before) / 2 / volts[-1]
        parts.append((v - before) * per_volt * factor * (1 + growth * middle))
        before = v
    return tuple(parts)


def _names(rng, taps, volts, centre):
    count = 4 if isinstance(taps, str) else len(taps) + 1
    others = 3 if centre else 2
    way = rng.random()
    if way < 0.15:
        letters = "abcdefghij" if rng.random() < 0.5 else "123456789"
        return list(rng.permutation(list(letters[: count + others])))
    free = list(rng.permutation(COLOURS))
    if way < 0.35 or isinstance(taps, str):
        return free[: count + others]
    common = "white" if rng.random() < 0.55 else "black"
    first = "black" if common == "white" else "white"
    wanted = [common] + [first if i == 0 else HABIT[v] for i, v in enumerate(volts)]
    wanted += ["blue", "brown" if "brown" not in wanted else "green", "yellow"] if centre else ["blue", "yellow"]
    for i in range(len(wanted)):
        if rng.random() < 0.12:
            wanted[i] = next(c for c in free if c not in wanted)
    return wanted


def _facts(rng, high, va):
    facts = [Fact(fact="rated_va", value=va)] if rng.random() < 0.3 else []
    if rng.random() < 0.25:
        named = [(lead, role) for _, names, _ in high for lead, role in names]
        if rng.random() < 0.06:
            roles = list(rng.permutation([role for _, role in named]))
            named = [(lead, str(role)) for (lead, _), role in zip(named, roles, strict=True)]
        facts += [Fact(fact="lead_is", lead=str(lead), role=role) for lead, role in named]
    return tuple(facts)


def measure(rng, unit):
    """Every pair as one meter shows it."""
    gain, leads = rng.normal(1.0, 0.003), rng.uniform(0.0, 0.5)
    seen = {}
    for a, b in combinations(unit.leads, 2):
        true = unit.ohms(a, b)
        if true is None:
            seen[a, b] = "open"
        else:
            shown = true * gain * (1 + rng.uniform(-0.005, 0.005)) + leads + rng.uniform(-0.1, 0.1)
            seen[a, b] = max(0.1, round(shown, 1) if shown < 600 else round(shown))
    return seen


def readings(rng, unit, *, missing=0, wrong=False):
    """What is told of a unit, with so many pairs left out or one of them wrong, and which one that is."""
    seen, typo = measure(rng, unit), None
    if wrong:
        seen, typo = slip(rng, seen)
    finite = [p for p, v in seen.items() if v != "open" and p != typo]
    left_out = [finite[i] for i in rng.permutation(len(finite))[: min(missing, max(0, len(finite) - 2))]] if missing else []
    return {p: v for p, v in seen.items() if p not in left_out}, typo


def job_of(unit, seen):
    """What the technician tells."""
    return Job(
        readings=tuple(Reading(measure="lead_ohms", value=v, leads=p) for p, v in seen.items()),
        facts=unit.facts,
        fresh=frozenset({"lead_ohms"}),
    )


def answer_test(rng, unit, test, seen, job):
    """The reading that the test asks for, honestly taken; None for a question that nobody can answer."""
    if test.measure == "lead_ohms" and test.leads:
        p = next(q for q in combinations(unit.leads, 2) if set(q) == set(test.leads))
        honest = measure(rng, unit)[p]
        return replace(job, readings=(*job.readings, Reading(measure="lead_ohms", value=honest, leads=p)))
    return None


def play(rng, units, *, missing=0, wrong=False):
    """Scores of one way to go wrong."""
    score, bands, cpu = Counter(), [], []
    for _ in range(units):
        unit = draw_unit(rng)
        seen, typo = readings(rng, unit, missing=missing, wrong=wrong)
        job = job_of(unit, seen)
        begin = time.process_time()
        found = map_leads(job)
        cpu.append(time.process_time() - begin)
        tell(score, bands, unit, found, typo)
        steps = 0
        while found.next_test is not None and steps < 6:
            told = answer_test(rng, unit, found.next_test, seen, job)
            if told is None:
                break
            job, steps = told, steps + 1
            found = map_leads(job)
        score["tests"] += steps
        right = key_of(found.leads.windings) == unit.key
        score["sure in the end"] += found.leads.confidence >= 0.9
        score["right in the end"] += right
        score["wrong and sure in the end"] += found.leads.confidence >= 0.9 and not right
    return score, bands, cpu


def key_of(windings):
    """A map as `Unit.key`."""
    return frozenset((w.role, frozenset(w.leads)) for w in windings)


def order_of(names):
    """Leads along a winding, whichever end first."""
    order = tuple(lead for lead, _ in names)
    return min(order, order[::-1])


def order_right(unit, windings):
    """True where the leads of each winding lie as they do."""
    drawn = {order_of(names) for _, names, _ in unit.windings}
    return all(order_of(w.leads) in drawn for w in windings)


def sides_right(unit, windings):
    """True where each winding has its leads and its side."""
    return {(w.role, frozenset(n for n, _ in w.leads)) for w in windings} == {
        (r, frozenset(n for n, _ in names)) for r, names, _ in unit.windings
    }


def tell(score, bands, unit, found, typo):
    """Counts of one answer."""
    windings, confidence = found.leads.windings, found.leads.confidence
    right = key_of(windings) == unit.key
    bands.append((confidence, right))
    score["right"] += right
    score["sure"] += confidence >= 0.9
    score["sure and right"] += confidence >= 0.9 and right
    score["wrong and sure"] += confidence >= 0.9 and not right
    if confidence >= 0.9 and not right and "-v" in sys.argv:
        print(
            "WRONG",
            round(confidence, 3),
            [(n, [round(x, 1) for x in p]) for _, n, p in unit.windings],
            unit.facts and [(f.fact, f.value, f.lead, f.role) for f in unit.facts],
            "->",
            [w.leads for w in windings],
            typo,
        )
    score["order"] += order_right(unit, windings)
    score["sides"] += sides_right(unit, windings)
    score["asked"] += found.next_test is not None
    score["equal halves"] += unit.equal_halves
    if typo is not None:
        checked = any(len(names) > 2 and {typo[0], typo[1]} <= {lead for lead, _ in names} for _, names, _ in unit.windings)
        score["typo among others"] += checked
        score["wrong and sure, typo among others"] += checked and confidence >= 0.9 and not right
        score["typo named"] += (
            found.next_test is not None and found.next_test.leads is not None and set(found.next_test.leads) == set(typo)
        )


def main():
    """Print the scores."""
    units = int(next((a for a in sys.argv[1:] if a.isdigit()), "300"))
    every = []
    for title, how in {
        "all pairs": {},
        "two missing": {"missing": 2},
        "one wrong": {"wrong": True},
        "one wrong, one missing": {"wrong": True, "missing": 1},
    }.items():
        score, bands, cpu = play(np.random.default_rng(11), units, **how)
        every += bands
        print(f"\n{title}: {units} units, cpu ms median {1e3 * np.median(cpu):.1f}, 99 % {1e3 * np.quantile(cpu, 0.99):.1f}")
        print(
            "  "
            + ", ".join(
                f"{name} {count / units:.1%}" if name != "tests" else f"tests {count / units:.2f}"
                for name, count in score.items()
            )
        )
    print("\ncalibration (confidence, units, right):")
    for low, high in ((0, 0.5), (0.5, 0.7), (0.7, 0.8), (0.8, 0.9), (0.9, 0.95), (0.95, 0.98), (0.98, 1.01)):
        rows = [(c, r) for c, r in every if low <= c < high]
        if rows:
            print(
                f"  {low:.2f} to {min(high, 1):.2f}: said {np.mean([c for c, _ in rows]):.3f}, right {np.mean([r for _, r in rows]):.3f}, {len(rows)} units"
            )


if __name__ == "__main__":
    main()
