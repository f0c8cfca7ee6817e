"""The verdict: the finding with its probability, what it means for the transformer, and what stands besides."""

from dataclasses import replace
from typing import Final

import numpy as np

from core.advice import Ranked, Reason, Transformer, Verdict
from core.cautions import may_ask
from core.diagnosis.belief import Belief, Known
from core.diagnosis.features import encode
from core.diagnosis.ghost import may_be_ghost
from core.diagnosis.meter import M
from core.diagnosis.network import believe
from core.diagnosis.next_test import BEHIND_OF
from core.diagnosis.reasons import to_repeat
from core.diagnosis.worlds import BAD, LOST_OHM, NAMES, SOUND_OHM
from core.findings import FINDINGS
from core.readings import SYMPTOMS

CONDEMNED: Final = 0.6
"""
From this probability of a bad transformer on it is called bad once no test is worth its cost: a wrong one costs a good part and a second trip, but
leaving it open costs too. Chosen on the worlds that the engine is fitted on, where it condemns fewer than 4 good ones in 1,000 calls; so is `PASSED`.
"""
CONDEMNED_EARLY: Final = 0.9
"""The same while a test is still worth its cost: till then leaving it open costs nothing."""
PASSED: Final = 0.25
"""Up to this one it is called good, once no test is worth its cost any more. Stricter than the loss asks."""
PASSED_EARLY: Final = 0.12
"""The same while a test is still worth its cost."""
PASSED_DEAD: Final = 0.05
"""The same where the line is dead: a winding fault may have tripped the breaker, and few readings could show it."""
NAMED: Final = 0.15
"""From this probability on a short behind a finding is named: looking for none costs minutes, missing one costs the new part."""
NAMED_UNREAD: Final = 0.6
"""The same while the control circuit can still be read: custom alone is no reason to name it."""
SOFT: Final = frozenset({"hot", "hum", "burnt", "smoke", "chatter", "intermittent"})
IS_HARD: Final = np.array([0.0 if name in SOFT else 1.0 for name in SYMPTOMS])
BY_READINGS: Final = 0.5
"""What the readings alone must say of a bad transformer: a smell or a sound may add to them and not take their place."""
INSULATION: Final = ("primary_secondary_ohms", "primary_ground_ohms", "secondary_ground_ohms")
OF_INSULATION: Final = frozenset({"windings_bridged", "winding_grounded"})


def verdict(k: Known, belief: Belief, why: tuple[Reason, ...], *, settled: bool) -> Verdict:
    """
    What the whole job says.

    Args:
        k: What is known of the job.
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
        transformer=transformer(k, belief, settled=settled),
        also=also(k, belief),
        ranked=tuple(Ranked(finding=NAMES[i], probability=float(belief.findings[i])) for i in order),
        reasons=why,
        repeat=to_repeat(k, belief),
    )


def transformer(k: Known, belief: Belief, *, settled: bool) -> Transformer:
    """Good, bad, or not proved either way."""
    if not k.readings or to_recheck(k, belief) is not None:
        return "unproven"  # nobody is condemned or acquitted by a smell or a sound, nor by one reading of its insulation
    if belief.best in OF_INSULATION and is_doubtful_insulation(k):
        return "unproven"
    if belief.bad >= (CONDEMNED if settled else CONDEMNED_EARLY):
        return "bad" if is_condemned_by_readings(k) else "unproven"
    if all(may_be_ghost(reading, k.job) for reading in k.readings):
        return "unproven"
    limit = PASSED_DEAD if belief.best == "no_supply" else PASSED if settled else PASSED_EARLY
    if belief.bad > limit or FINDINGS[belief.best].transformer == "bad" or is_doubtful_insulation(k):
        return "unproven"
    return "good"


def is_condemned_by_readings(k: Known) -> bool:
    """True where the readings condemn a transformer without what was smelt, felt or heard of it."""
    if not k.job.symptoms() & SOFT:
        return True
    mute = replace(k.evidence, symptoms=k.evidence.symptoms * IS_HARD)
    return float(believe(encode(mute))[0][0, BAD].sum()) >= BY_READINGS


def to_recheck(k: Known, belief: Belief) -> str | None:
    """
    The insulation reading that a verdict on insulation would rest on, while it was read once: a lead left on or damp hands read the same.

    Args:
        k: What is known of the job.
        belief: What is believed of it.

    Returns:
        The measure to read once more with the leads off and dry, or None.
    """
    if belief.best not in OF_INSULATION:
        return None
    value, times = k.evidence.value[0], k.times
    return next(
        (
            m
            for m in INSULATION
            if value[M[m]] < LOST_OHM and times[m] == 1 and (m, None) not in k.job.declined and may_ask(m, k.job)
        ),
        None,
    )


def is_doubtful_insulation(k: Known) -> bool:
    """True where an insulation reading lies between lost and sound: only a megohm test tells."""
    value = k.evidence.value[0]
    read = [value[M[name]] for name in INSULATION]
    return any(LOST_OHM <= ohms <= SOUND_OHM for ohms in read) and not any(ohms < LOST_OHM for ohms in read)


def also(k: Known, belief: Belief) -> tuple[str, ...]:
    """A short that the finding came from: where the control circuit was read and may be shorted, or where a short is likely and can't be read."""
    behind = bool(BEHIND_OF[NAMES.index(belief.best)])
    is_over = k.job.last("load_ohms") is not None or ("load_ohms", None) in k.job.declined
    limit = NAMED if is_over else NAMED_UNREAD
    return ("load_short",) if behind and belief.short >= limit else ()
