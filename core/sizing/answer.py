"""The one door of sizing: what to buy and how to put it in, as far as the job tells."""

from typing import Final

from core.advice import Answer, Sizing
from core.readings import Job
from core.said import say
from core.sizing.current_lines import amps_part, fuse_part
from core.sizing.limits import refusal
from core.sizing.load_lines import load_part
from core.sizing.proof import prove
from core.sizing.site_lines import ground_part, parallel_part, supply_part
from core.sizing.told import Part, Told, record, rule_line, told
from core.sizing.wire_lines import wire_part

ASKS: Final = frozenset({"size", "fuse", "wire_run", "parallel", "prove"})
MOST_LINES_OF_ASKED: Final = 6
"""Lines of the subject that was asked about; each part puts what matters most first."""
MOST_LINES: Final = 2
"""Lines of each other subject: a reply is read at arm's length."""
FACTS: Final = frozenset({"load", "run_feet", "wire_awg", "fuse_amps"})
"""Facts that ask for sizing by being told."""
OTHER_SUBJECTS: Final = frozenset({"which_lead", "tap", "expect", "va_estimate", "why", "next", "report", "history", "forget"})


def size(job: Job) -> Answer | None:
    """
    The answer of sizing to this message.

    Args:
        job: What is known.

    Returns:
        Sentences, cautions, record and picture; None where the message has nothing for sizing.

    >>> from core.readings import Fact
    >>> told = (Fact(fact="load", device="contactor", count=2, value=9.0), Fact(fact="load", device="gas valve", value=0.5, unit="A"))
    >>> answer = size(Job(facts=told, asks=("size",)))
    >>> answer.sizing.load_va, answer.sizing.pick_va
    (30.0, 40.0)
    """
    if not _meant(job):
        return None
    if (reason := refusal(job)) is not None:
        return Answer(lines=(reason,), sizing=Sizing(refused=reason))
    if "prove" in job.asks:
        return prove(job)
    parts = _parts(told(job))
    if not parts:
        return _nothing_known(job)
    sizing = record(parts)
    lines = tuple(
        line for place, part in enumerate(parts) for line in part.lines[: MOST_LINES_OF_ASKED if place == 0 else MOST_LINES]
    )
    rule = rule_line(sizing.rules)
    return Answer(
        lines=lines + ((rule,) if rule is not None else ()),
        # The line of rules says already that local code decides.
        cautions=tuple(dict.fromkeys(name for part in parts for name in part.cautions if rule is None or name != "local_code")),
        sizing=sizing,
        picture=next((part.picture for part in parts if part.picture is not None), None),
    )


def _meant(job: Job) -> bool:
    """True where the message asks for sizing, or tells something that only sizing can use."""
    if ASKS & set(job.asks):
        return True
    if OTHER_SUBJECTS & set(job.asks):
        return False
    measured = bool(job.fresh - FACTS_OF_JOB - {"coil_ohms"})
    if "load" in job.fresh:
        return True
    if measured:
        return False
    return bool(FACTS & job.fresh) or {"supply_volts", "tap_volts"} <= job.fresh or "supply_hertz" in job.fresh


FACTS_OF_JOB: Final = FACTS | {
    "supply_volts", "tap_volts", "tap_lead", "rated_va", "rated_secondary_volts", "lead_is", "nameplate_taps", "copper_celsius",
    "stranded", "core_inches", "supply_hertz", "symptom",
}  # fmt: skip


def _parts(facts: Told) -> tuple[Part, ...]:
    """What each subject adds, what was asked first."""
    asks = set(facts.job.asks)
    subjects = {
        "parallel": parallel_part(facts),
        "size": load_part(facts),
        "wire_run": wire_part(facts),
        "fuse": fuse_part(facts),
        "amps": amps_part(facts) if "parallel" not in asks else None,
        "supply": supply_part(facts),
        "ground": ground_part(facts),
    }
    first = [name for name in ("parallel", "fuse", "wire_run", "size") if name in asks]
    order = (*first, *(name for name in subjects if name not in first))
    wanted = [name for name in order if not (name == "fuse" and not _fuse_wanted(facts))]
    return tuple(part for name in wanted if (part := subjects[name]) is not None)


def _fuse_wanted(facts: Told) -> bool:
    """A run alone and two units together ask for no fuse."""
    asks = set(facts.job.asks)
    if "fuse" in asks or "fuse_amps" in facts.job.fresh:
        return True
    return "parallel" not in asks and "wire_run" not in asks and facts.load_va is not None


def _nothing_known(job: Job) -> Answer | None:
    if "size" in job.asks:
        return Answer(
            lines=(say("Send each device with its sealed VA off the label, how many, and the supply volts"),), sizing=Sizing()
        )
    return Answer(sizing=Sizing()) if job.asks else None
