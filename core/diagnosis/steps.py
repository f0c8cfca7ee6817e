"""
What can be found out next: a measure for the first time, a measure once more, a fact. And what each costs.

Prices are in units of looking for the wrong thing once. Common practice, no source.
"""

from dataclasses import dataclass
from typing import Final

import numpy as np

from core.circuit.plant import Flags, Floats
from core.diagnosis.meter import SEEN
from core.diagnosis.worlds import Counts
from core.measures import MEASURES

ASKED_FACTS: Final = ("tap_volts", "supply_volts", "rated_va")
MINUTE: Final = 0.008
RISK: Final = 0.08
MESSAGE: Final = 0.015
"""What every reading costs besides: it is read, typed and answered."""
CHANGE: Final = 0.01
"""What it costs to go from live to dead work or back."""
QUESTION: Final = 0.04
"""What it costs to be asked for a fact: a look at a nameplate, and one more message."""
REPEAT: Final = 0.03
"""What it costs to be asked for the same reading again."""
PATIENCE: Final = 0.8
IMPATIENCE: Final = 0.03
"""How each test makes the next one dearer: a customer waits."""
MANY: Final = 7
TOO_MANY: Final = 0.25
"""How much dearer still each is after so many."""
SAME_SETUP_SAVES: Final = 1.5
"""Minutes that are not spent again where the leads are off already."""


@dataclass(frozen=True, slots=True)
class Step:
    """One thing to find out."""

    measure: str | None = None
    fact: str | None = None
    again: bool = False


STEPS: Final = (
    *(Step(measure=name) for name in SEEN),
    *(Step(measure=name, again=True) for name in SEEN),
    *(Step(fact=name) for name in ASKED_FACTS),
)
"""All of them, in the order of the columns of the fitted worth."""


def _price(last: str | None, step: Step) -> float:
    if step.measure is None:
        return QUESTION
    row, before = MEASURES[step.measure], MEASURES[last] if last is not None else None
    change = CHANGE if before is not None and before.live != row.live else 0.0
    is_ready = before is not None and before.setup == row.setup and row.setup in {"isolated", "dead"}
    minutes = max(row.minutes - SAME_SETUP_SAVES, 0.5) if is_ready else row.minutes
    return MESSAGE + minutes * MINUTE + row.risk * RISK + change


_PRICES: Final = np.array([[_price(last, step) for step in STEPS] for last in (*SEEN, None)])
_TWICE: Final = np.array([REPEAT if step.again else 0.0 for step in STEPS])


def price(last: Counts, taken: Counts) -> Floats:
    """
    What each step costs.

    Args:
        last: The column of `SEEN` that was read last, one a job; -1 where nothing was read.
        taken: How many readings there are already.

    Returns:
        A row a job, a column a step of `STEPS`.
    """
    patience = (PATIENCE + IMPATIENCE * taken + TOO_MANY * np.maximum(taken - MANY, 0))[:, None]
    return np.asarray(patience * _PRICES[last] + _TWICE, dtype=np.float64)


_LIVE: Final = np.array([*(MEASURES[name].live for name in SEEN), False])


def situation(can: Flags, last: Counts, taken: Counts, dear: Floats) -> Floats:
    """
    What bears on the next step besides what is known: what can be had at all, where the hands are, how long it has taken.

    Args:
        can: A row a job, a column a step of `STEPS`: whether it can be asked for.
        last: The column of `SEEN` that was read last; -1 where nothing was read.
        taken: How many readings there are already.
        dear: How dear steps are held, to `price`.

    Returns:
        A row a job, `SITUATION` columns.
    """
    rest = np.stack([_LIVE[last] * 1.0, (last < 0) * 1.0, np.minimum(taken, 12) / 8.0, np.log(dear)], axis=1)
    return np.concatenate([can * 1.0, rest], axis=1)


SITUATION: Final = len(STEPS) + 4
"""Columns of `situation`."""
