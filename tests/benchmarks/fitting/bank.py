"""
Units of worlds by several hands with all that a technician would report of them, worked out once: a fit draws its calls from them.

    python -m tests.benchmarks.fitting.bank second 60000 banks/second_1.npz --seed 1

Any world will do whose technician opens a call, knows facts and reads measures.
"""

import argparse
from collections.abc import Callable, Iterator
from dataclasses import dataclass, fields
from pathlib import Path
from typing import Any, Protocol

import numpy as np

from core.diagnosis.belief import load_va
from core.diagnosis.features import FACTS, T
from core.diagnosis.meter import OHMS, SEEN, M
from core.diagnosis.steps import ASKED_FACTS
from core.diagnosis.worlds import NAMES
from core.readings import OPEN, SYMPTOMS, Fact, Job, Reading
from tests.benchmarks.second_world import draw as second_draw
from tests.benchmarks.second_world import hand as second_hand
from tests.benchmarks.technician import hand as first_hand
from tests.benchmarks.technician import unit as first_unit
from tests.benchmarks.third_world import draw as third_draw
from tests.benchmarks.third_world import hand as third_hand

MOST = 4
"""Times that one place is read again."""


class AnyUnit(Protocol):
    """What every unit tells of itself."""

    finding: str
    short: bool


class AnyTechnician(Protocol):
    """What every technician can be asked."""

    def opening(self) -> tuple[list[Reading], list[Fact]]:
        """The first message."""

    def fact(self, name: str) -> Fact | None:
        """A fact, or that it can't be told."""

    def read(self, measure: str, *, low_impedance: bool = False) -> Reading | None:
        """A reading, or that it can't be done."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Bank:
    """One row a unit; of readings a column a measure of `SEEN`, of facts one of `FACTS`."""

    finding: np.ndarray
    short: np.ndarray
    first: np.ndarray
    """What is read the first time: `inf` for an open, `nan` where it can't be."""
    second: np.ndarray
    """And once more, volts in the low-impedance mode."""
    connected: np.ndarray
    low: np.ndarray
    opening: np.ndarray
    """Which of them the first message brings."""
    told: np.ndarray
    symptoms: np.ndarray
    known: np.ndarray
    """What is answered when a fact is asked for; `nan` where it can't be told."""

    def __len__(self) -> int:
        """Units."""
        return len(self.finding)

    def drawn(self, rows: np.ndarray) -> "Bank":
        """Some of them."""
        return Bank(**{f.name: getattr(self, f.name)[rows] for f in fields(self)})


def joined(banks: list[Bank]) -> Bank:
    """All in one."""
    return Bank(**{f.name: np.concatenate([getattr(b, f.name) for b in banks]) for f in fields(Bank)})


def load(path: Path) -> Bank:
    """From its file."""
    with np.load(path) as stored:
        return Bank(**{f.name: stored[f.name] for f in fields(Bank)})


def _first(rng: np.random.Generator) -> tuple[AnyUnit, AnyTechnician]:
    """Half in the countries of the bench, half in others between and beside them."""
    settings = first_unit.SETTINGS
    setting = settings[int(rng.integers(len(settings)))]
    if rng.random() < 0.5:
        least = rng.uniform(0.03, 0.5)
        setting = first_unit.Setting(
            "somewhere", copper=rng.uniform(0.65, 1.45), rated_open=rng.choice([0.0, 0.15]), load=(least, rng.uniform(0.55, 1.0)),
            power_factor=(rng.uniform(0.35, 0.6), rng.uniform(0.7, 0.98)), fuse=rng.uniform(0.3, 0.7), called=rng.uniform(0.5, 0.85),
            line_sigma=rng.uniform(0.01, 0.03), accuracy=rng.uniform(0.004, 0.014), slip=rng.choice([0.0, 0.01, 0.03]),
            forgets=rng.choice([0.0, 0.08, 0.2]), ghost=rng.uniform(0.1, 0.6), tells=rng.uniform(0.2, 0.9),
        )  # fmt: skip
    u = first_unit.make(rng, setting)
    return u, first_hand.Technician(rng, u)


def _second(rng: np.random.Generator) -> tuple[AnyUnit, AnyTechnician]:
    u = second_draw.draw(rng)
    return u, second_hand.Technician(rng, u)


def _third(rng: np.random.Generator) -> tuple[AnyUnit, AnyTechnician]:
    u = third_draw.draw(rng)
    return u, third_hand.Technician(rng, u)


WORLDS: dict[str, Callable[[np.random.Generator], tuple[AnyUnit, AnyTechnician]]] = {
    "first": _first,
    "second": _second,
    "third": _third,
}
"""Worlds that are fitted on. The fourth is for examination alone."""


def _row(u: AnyUnit, t: AnyTechnician) -> dict[str, Any]:
    """All that can be known of one unit."""
    readings, facts = t.opening()
    seen = len(SEEN)
    first, second = np.full(seen, np.nan), np.full(seen, np.nan)
    connected, low, opening = np.zeros((2, seen), dtype=bool), np.zeros((2, seen), dtype=bool), np.zeros(seen, dtype=bool)

    def note(at: int, time: int, reading: Reading | None) -> None:
        for _ in range(MOST):
            if reading is None or not reading.not_isolated or reading.value == OPEN:
                break
            reading = t.read(reading.measure)  # ohms of what is told to be still connected count for nothing
        if reading is not None:
            (first, second)[time][at] = np.inf if reading.value == OPEN else float(reading.value)
            connected[time, at], low[time, at] = reading.not_isolated, reading.low_impedance

    for reading in readings:
        note(M[reading.measure], 0, reading)
        opening[M[reading.measure]] = True
    for name, at in M.items():
        if not opening[at]:
            note(at, 0, t.read(name))
        note(at, 1, t.read(name, low_impedance=not OHMS[at]))
    known = np.full(len(FACTS), np.nan)
    for name in ASKED_FACTS:
        if (fact := t.fact(name)) is not None:
            known[T[name]] = float(str(fact.value))
    return {
        "finding": NAMES.index(u.finding), "short": u.short, "first": first, "second": second, "connected": connected, "low": low,
        "opening": opening, "told": _told(facts), "symptoms": [any(f.value == s for f in facts) for s in SYMPTOMS], "known": known,
    }  # fmt: skip


def _told(facts: list[Fact]) -> np.ndarray:
    job = Job(facts=tuple(facts))
    told = np.full(len(FACTS), np.nan)
    for name, at in T.items():
        number = load_va(job) if name == "load_va" else job.number(name)
        if number is not None and number > 0.0:
            told[at] = number
    return told


def rows(world: str, count: int, seed: int) -> Iterator[dict[str, Any]]:
    """Units of a world, each from a seed of its own."""
    for number in range(count):
        yield _row(*WORLDS[world](np.random.default_rng((seed, number))))


def build(world: str, count: int, seed: int) -> Bank:
    """
    A bank of a world.

    Args:
        world: A name of `WORLDS`.
        count: How many units.
        seed: Not that of a bench: what is fitted on is not examined on.
    """
    table = list(rows(world, count, seed))
    kinds = {"finding": np.intp, "short": bool, "connected": bool, "low": bool, "opening": bool}
    return Bank(**{f.name: np.array([row[f.name] for row in table], dtype=kinds.get(f.name, np.float32)) for f in fields(Bank)})


def main() -> None:
    """Build and write."""
    ask = argparse.ArgumentParser(description=__doc__)
    ask.add_argument("world", choices=WORLDS)
    ask.add_argument("units", type=int)
    ask.add_argument("out", type=Path)
    ask.add_argument("--seed", type=int, default=1)
    told = ask.parse_args()
    bank = build(told.world, told.units, told.seed)
    np.savez(told.out, **{f.name: getattr(bank, f.name) for f in fields(bank)})


if __name__ == "__main__":
    main()
