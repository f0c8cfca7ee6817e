"""The verdict: the finding with its probability, what it means for the transformer, and what stands besides."""

from typing import Final

import numpy as np

from core.advice import Ranked, Reason, Transformer, Verdict
from core.cautions import may_ask
from core.diagnosis.belief import Belief, evidence, times_read, usable
from core.diagnosis.meter import M
from core.diagnosis.next_test import BEHIND_OF, CONDEMN, DOUBT
from core.diagnosis.reasons import to_repeat
from core.diagnosis.worlds import LOST_OHM, NAMES, SOUND_OHM
from core.findings import FINDINGS
from core.readings import Job

CONDEMNED: Final = 1.0 - DOUBT / CONDEMN
"""From this probability of a bad transformer on it is called bad: a wrong one costs a good part and a second trip, but leaving it open costs too."""
CONDEMNED_EARLY: Final = 0.75
"""The same while a test is still worth its cost: till then leaving it open costs nothing."""
PASSED: Final = 0.12
"""Up to this one it is called good. Stricter than the loss asks: a bad one passed as good is the worst answer."""
PASSED_DEAD: Final = 0.1
"""The same where the line is dead: a winding fault may have tripped the breaker, and few readings could show it."""
NAMED: Final = 0.3
"""From this probability on a short behind a finding is named: looking for none costs minutes, missing one costs the new part."""
NAMED_UNREAD: Final = 0.6
"""The same while the control circuit is not read: custom alone is no reason to name it."""
INSULATION: Final = ("primary_secondary_ohms", "primary_ground_ohms", "secondary_ground_ohms")
OF_INSULATION: Final = frozenset({"windings_bridged", "winding_grounded"})


def verdict(job: Job, belief: Belief, why: tuple[Reason, ...], *, settled: bool) -> Verdict:
    """
    What the whole job says.

    Args:
        job: The job so far.
        belief: What is believed of it.
        why: How each reading bears on the likeliest finding.
        settled: Whether any test could still change what is done.

    Returns:
        The verdict.
    """
    order = np.argsort(-belief.findings)
    return Verdict(
        finding=belief.best,
        confidence=belief.confidence,
        settled=settled,
        transformer=transformer(job, belief, settled=settled),
        also=also(job, belief),
        ranked=tuple(Ranked(finding=NAMES[i], probability=float(belief.findings[i])) for i in order),
        reasons=why,
        repeat=to_repeat(job, belief),
    )


def transformer(job: Job, belief: Belief, *, settled: bool) -> Transformer:
    """Good, bad, or not proved either way."""
    if not usable(job) or to_recheck(job, belief) is not None:
        return "unproven"  # nobody is condemned or acquitted by a smell or a sound, nor by one reading of its insulation
    if belief.best in OF_INSULATION and is_doubtful_insulation(job):
        return "unproven"
    if belief.bad >= (CONDEMNED if settled else CONDEMNED_EARLY):
        return "bad"
    limit = PASSED_DEAD if belief.best == "no_supply" else PASSED
    if belief.bad > limit or FINDINGS[belief.best].transformer == "bad" or is_doubtful_insulation(job):
        return "unproven"
    return "good"


def to_recheck(job: Job, belief: Belief) -> str | None:
    """
    The insulation reading that a verdict on insulation would rest on, while it was read once: a lead left on or damp hands read the same.

    Args:
        job: The job so far.
        belief: What is believed of it.

    Returns:
        The measure to read once more with the leads off and dry, or None.
    """
    if belief.best not in OF_INSULATION:
        return None
    value, times = evidence(job).value[0], times_read(job)
    return next(
        (
            m
            for m in INSULATION
            if value[M[m]] < LOST_OHM and times[m] == 1 and (m, None) not in job.declined and may_ask(m, job)
        ),
        None,
    )


def is_doubtful_insulation(job: Job) -> bool:
    """True where an insulation reading lies between lost and sound: only a megohm test tells."""
    value = evidence(job).value[0]
    read = [value[M[name]] for name in INSULATION]
    return any(LOST_OHM <= ohms <= SOUND_OHM for ohms in read) and not any(ohms < LOST_OHM for ohms in read)


def also(job: Job, belief: Belief) -> tuple[str, ...]:
    """A short that the finding came from: where the control circuit was read and may be shorted, or where a short is likely unread."""
    behind = bool(BEHIND_OF[NAMES.index(belief.best)])
    limit = NAMED if job.last("load_ohms") is not None else NAMED_UNREAD
    return ("load_short",) if behind and belief.short >= limit else ()
