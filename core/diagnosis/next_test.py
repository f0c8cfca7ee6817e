"""
The next test by its worth: how much of the loss of the decision it and all that follows is expected to take away, against its minutes, its risk and
the way to it. The worth was fitted on whole calls, so nothing need be imagined ahead in a reply: that was most of what a reply cost.
"""

from dataclasses import dataclass
from typing import Final

import numpy as np

from core.cautions import may_ask
from core.circuit.plant import Flags, Floats
from core.diagnosis.belief import FUSE, Belief, Known
from core.diagnosis.custom import leaning
from core.diagnosis.meter import SEEN, M
from core.diagnosis.network import fitted, forward
from core.diagnosis.steps import STEPS, Step, price, situation
from core.diagnosis.worlds import BAD, NAMES, SUPPLIES
from core.measures import MEASURES
from core.readings import Job

CONDEMN: Final = 2.4
"""What condemning a good transformer costs, in units of looking for the wrong thing once: a part, a trip, and the fault is still there."""
ACQUIT: Final = 2.2
"""What passing a bad one costs: a second trip, and what it may burn till then."""
DOUBT: Final = 0.7
"""What leaving it open costs."""
BEHIND: Final = 0.7
"""What a short that was not looked for costs: the new part."""
BEHIND_OF: Final = np.array(
    [
        name in {"primary_open", "secondary_open", "protection_open", "primary_shorted_turns", "secondary_shorted_turns"}
        for name in NAMES
    ]
)
"""Findings that a short may have caused."""


NATS: Final = 0.06
"""Worth of one nat of doubt less, where no single reading decides yet."""
DEAR: Final = 1.1
"""How dear steps are held: the worth was fitted for any price."""
NEAR_ENOUGH: Final = 0.05


@dataclass(frozen=True, slots=True)
class Worth:
    """One possible step."""

    measure: str
    value: float
    """Loss that it is expected to take away, less its cost."""
    fact: str | None = None


def loss(findings: Floats, short: Floats) -> Floats:
    """
    What is still at stake.

    Args:
        findings: Rows of probabilities.
        short: Probability of a short in the control circuit.

    Returns:
        Expected loss of the best decision on the finding, on the transformer and on what may stand behind it.
    """
    bad = findings[:, BAD].sum(axis=1)
    best = findings.argmax(axis=1)
    part = np.minimum(np.minimum(CONDEMN * (1.0 - bad), ACQUIT * bad), DOUBT)
    behind = np.where(BEHIND_OF[best], np.minimum(short, 1.0 - short) * BEHIND, 0.0)
    doubt = -(findings * np.log(findings + 1e-9)).sum(axis=1)
    return np.asarray(1.0 - findings.max(axis=1) + part + behind + NATS * doubt, dtype=np.float64)


def ranked(k: Known, belief: Belief) -> list[Worth]:
    """
    The steps that can be taken, the one to take first.

    Args:
        k: What is known of the job.
        belief: What is believed of it.

    Returns:
        Measures, and facts that can be asked for; `value` is without what custom leans to.
    """
    can = possible(k)
    last = np.array([M[k.readings[-1].measure] if k.readings else -1])
    count = np.array([k.times.total()])
    prices = DEAR * price(last, count)[0]
    around = situation(can[None, :], last, count, np.array([DEAR]))
    worth = forward(np.concatenate([k.inputs, around], axis=1, dtype=np.float32), fitted("worth"))[0] - prices
    order = [int(i) for i in np.argsort(-(worth + leaning(k, belief))) if can[i]]
    return [Worth(STEPS[i].measure or "", float(worth[i]), STEPS[i].fact) for i in order]


def reads_as_a_supply(job: Job) -> bool:
    """True where a line reading is so near to one voltage of the trade that nobody need be asked which it is."""
    read = [v for name in ("line_volts", "primary_volts") if (v := job.figure(name)) is not None]
    return any(min(abs(value / volts - 1.0) for volts in SUPPLIES) < NEAR_ENOUGH for value in read)


def possible(k: Known) -> Flags:
    """
    Which steps can be asked for.

    Args:
        k: What is known of the job.

    Returns:
        One flag a step of `STEPS`.
    """
    job, declined = k.job, {name for name, leads in k.job.declined if leads is None}
    barred = {name for name in SEEN if name in declined or (MEASURES[name].live and not may_ask(name, job))}
    has_no_fuse = k.evidence.unfused[0, 0] > 0.0

    def can(step: Step) -> bool:
        if step.measure is None:
            is_read = step.fact == "supply_volts" and reads_as_a_supply(job)
            return job.told(str(step.fact)) is None and step.fact not in declined and not is_read
        if step.measure in barred:
            return False
        if step.again:
            return k.times[step.measure] == 1 and not k.evidence.confirmed[0, M[step.measure]]
        return k.times[step.measure] == 0 and not (step.measure in FUSE and has_no_fuse)

    return np.array([can(step) for step in STEPS])
