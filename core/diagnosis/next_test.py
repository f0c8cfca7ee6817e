"""
The next test by its worth: how much of the loss of the decision it is expected to take away, against its minutes, its risk and the way to it.

One look ahead. Of the worlds that agree with the job some stand for all; each shows what it would show at each measure, and the belief after it
says what would still be at stake.
"""

from dataclasses import dataclass, replace
from typing import Final

import numpy as np

from core.cautions import may_ask
from core.circuit.plant import Floats
from core.diagnosis.belief import FUSE, Belief, alike, evidence, pins
from core.diagnosis.features import Evidence, T, encode
from core.diagnosis.imagined import Imagined, again, imagine, picked, weights
from core.diagnosis.meter import SEEN, M
from core.diagnosis.network import believe
from core.diagnosis.worlds import BAD, NAMES, Counts
from core.measures import MEASURES
from core.readings import Job

LOOKS: Final = 24
"""Worlds that stand for all."""
CONDEMN: Final = 3.0
"""What condemning a good transformer costs, in units of looking for the wrong thing once: a part, a trip, and the fault is still there."""
ACQUIT: Final = 2.0
DOUBT: Final = 0.4
"""What leaving it open costs."""
BEHIND: Final = 0.7
"""What a short that was not looked for costs: the new part."""
NATS: Final = 0.08
"""Worth of one nat of doubt less, where no single reading decides yet."""
MINUTE: Final = 0.008
RISK: Final = 0.04
CHANGE: Final = 0.02
"""What it costs to go from live to dead work or back."""
IMPATIENCE: Final = 0.12
"""How each test makes the next one dearer: a customer waits."""
REPEAT: Final = 0.03
"""What it costs to be asked for the same reading again."""
ASKED_FACTS: Final = ("tap_volts", "supply_volts")
BEHIND_OF: Final = np.array(
    [
        name in {"primary_open", "secondary_open", "protection_open", "primary_shorted_turns", "secondary_shorted_turns"}
        for name in NAMES
    ]
)
"""Findings that a short may have caused."""


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
        Expected loss of the best decision, and a little for the doubt itself.
    """
    bad = findings[:, BAD].sum(axis=1)
    best = findings.argmax(axis=1)
    part = np.minimum(np.minimum(CONDEMN * (1.0 - bad), ACQUIT * bad), DOUBT)
    behind = np.where(BEHIND_OF[best], np.minimum(short, 1.0 - short) * BEHIND, 0.0)
    doubt = -(findings * np.log(findings + 1e-9)).sum(axis=1)
    return np.asarray(1.0 - findings.max(axis=1) + part + behind + NATS * doubt, dtype=np.float64)


def ranked(job: Job, belief: Belief) -> list[Worth]:
    """
    All steps that are still possible, the most worth first.

    Args:
        job: The job so far.
        belief: What is believed of it.

    Returns:
        Measures, and facts that can be asked for.
    """
    e = evidence(job)
    imagined = imagine(pins(job))
    chosen = picked(weights(imagined, belief, e.value[0]), LOOKS)
    measures = [m for m in SEEN if _possible(m, job, e)]
    repeats = [m for m in SEEN if _repeatable(m, job, e)]
    facts = [f for f in ASKED_FACTS if job.told(f) is None and (f, None) not in job.declined]
    steps = [*measures, *repeats, *facts]
    if not steps:
        return []
    rows, kept = _after(e, imagined, chosen, steps)
    now = loss(belief.findings[None, :], np.array([belief.short]))[0]
    findings, short = believe(encode(rows))
    left = loss(findings.astype(np.float64), short.astype(np.float64)).reshape(len(steps), LOOKS)
    gain = (np.where(kept, now - left, 0.0)).mean(axis=1)
    worth = [
        Worth(s, float(g) - _cost(s, job)) if s in M else Worth("", float(g) - 0.6 * MINUTE, s)
        for s, g in zip(steps, gain, strict=True)
    ]
    return sorted(worth, key=lambda w: -w.value)


def _possible(measure: str, job: Job, e: Evidence) -> bool:
    at = M[measure]
    if measure in FUSE and e.unfused[0, 0]:
        return False
    return bool(np.isnan(e.value[0, at])) and (measure, None) not in job.declined and may_ask(measure, job)


def _repeatable(measure: str, job: Job, e: Evidence) -> bool:
    """Once, where the first reading may have been taken with the part still connected, or cannot be true."""
    at = M[measure]
    read = [r for r in job.readings if r.measure == measure]
    return len(read) == 1 and (measure, None) not in job.declined and may_ask(measure, job) and not e.confirmed[0, at]


def _after(e: Evidence, imagined: Imagined, chosen: Counts, steps: list[str]) -> tuple[Evidence, Floats]:
    """Evidence after each step in each chosen world, and where the world has an answer."""
    n = len(steps) * LOOKS
    value, facts = np.repeat(e.value, n, axis=0), np.repeat(e.facts, n, axis=0)
    kept = np.ones((len(steps), LOOKS))
    confirmed = np.repeat(e.confirmed, n, axis=0)
    connected = np.repeat(e.connected, n, axis=0)
    for number, step in enumerate(steps):
        rows = slice(number * LOOKS, (number + 1) * LOOKS)
        if step in M:
            answer = imagined.shown[chosen, M[step]]
            if not np.isnan(e.value[0, M[step]]):
                answer = again(imagined, step, float(e.value[0, M[step]]), chosen)
                confirmed[rows, M[step]] = [alike(float(e.value[0, M[step]]), float(v)) for v in answer]
            value[rows, M[step]] = answer
            connected[rows, M[step]] = False
        else:
            answer = imagined.facts[chosen, T[step]]
            facts[rows, T[step]] = answer
        kept[number] = ~np.isnan(answer)
    unfused = np.repeat(e.unfused, n, axis=0)
    for number, step in enumerate(steps):
        if step in FUSE:
            rows = slice(number * LOOKS, (number + 1) * LOOKS)
            unfused[rows, 0] = np.maximum(unfused[rows, 0], 1.0 - kept[number])
            kept[number] = 1.0
    more = {name: np.repeat(getattr(e, name), n, axis=0) for name in ("low_impedance", "symptoms")} | {"unfused": unfused}
    return replace(e, value=value, facts=facts, confirmed=confirmed, connected=connected, **more), kept


def _cost(measure: str, job: Job) -> float:
    row = MEASURES[measure]
    last = next((MEASURES[r.measure] for r in reversed(job.readings)), None)
    change = CHANGE if last is not None and last.live != row.live else 0.0
    same = last is not None and last.setup == row.setup
    minutes = max(row.minutes - 1.5, 0.5) if same and row.setup in {"isolated", "dead"} else row.minutes
    twice = REPEAT if any(r.measure == measure for r in job.readings) else 0.0
    patience = 0.4 + IMPATIENCE * len(job.readings)
    return patience * (minutes * MINUTE + row.risk * RISK + change) + twice
