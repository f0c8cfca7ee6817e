"""
What can be found out next: a measure for the first time, a measure once more, a fact. And what each costs.

Prices are in units of looking for the wrong thing once. Common practice, no source.
"""

from dataclasses import dataclass
from typing import Final

import numpy as np

from core.circuit.plant import Floats
from core.diagnosis.meter import SEEN
from core.diagnosis.worlds import Counts
from core.measures import MEASURES

ASKED_FACTS: Final = ("tap_volts", "supply_volts", "rated_va")
MINUTE: Final = 0.008
RISK: Final = 0.04
CHANGE: Final = 0.02
"""What it costs to go from live to dead work or back."""
QUESTION: Final = 0.016
"""What it costs to be asked for a fact: a look at a nameplate, and one more message."""
REPEAT: Final = 0.03
"""What it costs to be asked for the same reading again."""
PATIENCE: Final = 0.4
IMPATIENCE: Final = 0.12
"""How each test makes the next one dearer: a customer waits."""
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
    return minutes * MINUTE + row.risk * RISK + change


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
    patience = (PATIENCE + IMPATIENCE * taken)[:, None]
    return np.asarray(patience * _PRICES[last] + _TWICE, dtype=np.float64)
