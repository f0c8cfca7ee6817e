"""Worlds by several hands, mixed: what holds in all of them holds in the next."""

from dataclasses import replace
from pathlib import Path
from typing import Final

import numpy as np

from core.readings import SYMPTOMS
from tests.benchmarks.fitting.bank import Bank, joined, load
from tests.benchmarks.fitting.own import own
from tests.benchmarks.fitting.talk import OFTEN_SAID

OWN: Final = 0.3
"""Share of units of the engine's own worlds; the rest is shared evenly by the other worlds."""
SAID_OF_ANY: Final = np.array([0.12 if name in OFTEN_SAID else 0.03 for name in SYMPTOMS])
"""How often each symptom is told of a unit that gives no reason for it."""
UNSAID: Final = 0.25
"""How often nothing is told of what is seen or smelt."""


class Mixture:
    """All the worlds that calls are drawn from."""

    def __init__(self, rng: np.random.Generator, folder: Path | None) -> None:
        self.rng = rng
        self.banks: dict[str, list[Bank]] = {}
        for path in sorted(folder.glob("*.npz")) if folder is not None else []:
            self.banks.setdefault(path.stem.split("_")[0], []).append(load(path))

    def drawn(self, count: int) -> Bank:
        """Some units of all worlds."""
        rng = self.rng
        own_count = round(OWN * count) if self.banks else count
        parts = [own(rng, own_count)]
        for banks in self.banks.values():
            share = (count - own_count) // len(self.banks)
            sizes = np.array([len(bank) for bank in banks])
            parts += [
                bank.drawn(rng.integers(0, len(bank), size))
                for bank, size in zip(banks, rng.multinomial(share, sizes / sizes.sum()), strict=True)
            ]
        whole = joined(parts)
        said = np.maximum(whole.symptoms, rng.random(whole.symptoms.shape) < SAID_OF_ANY)
        silent = rng.random(len(whole)) < UNSAID
        return replace(whole, symptoms=np.where(silent[:, None], 0.0, said).astype(np.float32).reshape(-1, len(SYMPTOMS)))
