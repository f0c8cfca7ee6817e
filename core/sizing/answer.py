"""The one door of sizing: what to buy and how to put it in, as far as the job tells."""

from collections.abc import Sequence
from typing import Final

from core.advice import Answer, Sizing
from core.measures import MEASURES
from core.readings import Job
from core.said import Said, say
from core.sizing.capacity import capacity_part
from core.sizing.class_lines import class_part
from core.sizing.current_lines import amps_part, fuse_part
from core.sizing.limits import is_nonsense, refusal, sound
from core.sizing.load_lines import load_part, unknown_lines
from core.sizing.proof import prove, tap_misfits
from core.sizing.site_lines import ground_part, parallel_part, supply_part
from core.sizing.swap_lines import swap_part
from core.sizing.told import Part, Told, phase_volts, record, rule_line, told
from core.sizing.wire_lines import wire_part

ASKS: Final = frozenset({"size", "fuse", "wire_run", "parallel", "prove"})
MOST_LINES: Final = 5
"""Lines before that of the rules: a reply is read at arm's length. What must be said is said, whatever the number."""
OTHER_SUBJECTS: Final = frozenset({"which_lead", "tap", "expect", "va_estimate", "why", "next", "report", "history", "forget"})
FACTS: Final = frozenset({"load", "run_feet", "wire_awg", "fuse_amps", "supply_hertz"})
"""Facts that ask for sizing by being told."""
TOPICS: Final = frozenset(
    {"bigger_unit", "multi_tap", "unit_50_hertz", "unit_60_hertz", "both_hertz", "class_2", "amps", "apart", "capacity"}
)
"""Topics that sizing answers without any other ask."""


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
    if not is_meant(job):
        return None
    job = sound(job)
    if (reason := refusal(job)) is not None:
        return Answer(lines=(reason,), sizing=Sizing(refused=reason))
    if "prove" in job.asks:
        return prove(job)
    parts = _parts(told(job))
    if not parts:
        return _nothing_known(job)
    sizing = record(parts)
    rule = rule_line(sizing.rules)
    return Answer(
        lines=_lines(parts) + ((rule,) if rule is not None else ()),
        # The line of rules says already that local code decides.
        cautions=tuple(dict.fromkeys(name for part in parts for name in part.cautions if rule is None or name != "local_code")),
        sizing=sizing,
        picture=next((part.picture for part in parts if part.picture is not None), None),
    )


def _lines(parts: Sequence[Part]) -> tuple[Said, ...]:
    """What each part must say, in their order, then what else there is room for."""
    first = [line for part in parts for line in part.lines]
    more = [line for part in parts for line in part.more]
    return (*first, *more[: max(0, MOST_LINES - len(first))])


def is_meant(job: Job) -> bool:
    """
    True where the message asks for sizing, or tells something that only sizing can use.

    Args:
        job: What is known.
    """
    asks = set(job.asks)
    if ASKS & asks or TOPICS & set(job.topics) or "secondary_ground" in job.dangers or phase_volts(job) is not None:
        return True
    if (OTHER_SUBJECTS - {"next"}) & asks:
        return False
    if "load" in job.fresh or job.unknown_loads or is_nonsense(job):  # "load adds up to 95 va, what now"
        return True
    if "next" in asks or (job.fresh & MEASURES.keys()) - {"coil_ohms"}:
        return False
    only_coils = {reading.measure for reading in job.readings} <= {"coil_ohms"}
    about_loads = bool(job.every("load")) and only_coils and bool(job.fresh & {"rated_va", "supply_volts"})  # "on a 40va ok?"
    return about_loads or bool(FACTS & job.fresh) or {"supply_volts", "tap_volts"} <= job.fresh


def _parts(facts: Told) -> tuple[Part, ...]:
    """What each subject adds, what was asked first."""
    asks = set(facts.job.asks)
    subjects = {
        "capacity": capacity_part(facts),
        "parallel": parallel_part(facts),
        "swap": swap_part(facts),
        "class": class_part(facts),
        "size": load_part(facts),
        "fuse": fuse_part(facts) if _fuse_wanted(facts) else None,
        "wire_run": wire_part(facts) if _wire_wanted(facts.job) else None,
        "supply": supply_part(facts),
        "ground": ground_part(facts),
        "amps": amps_part(facts),
    }
    if asks == {"parallel"} or facts.phase_reading is not None:  # an earlier run or load is a means, no question
        subjects = {name: subjects[name] for name in ("parallel", "ground")}
    elif subjects["swap"] is not None and not asks & ASKS - {"size"}:
        old_tap = tap_misfits(facts.job) and "multi_tap" not in facts.job.topics  # a multi-tap has the lead for it
        tap = {"supply": subjects["supply"]} if old_tap else {}
        subjects = {**tap, "swap": subjects["swap"], "ground": subjects["ground"]}
    elif subjects["capacity"] is not None:
        subjects = {"capacity": subjects["capacity"]}
    elif "amps" in facts.job.topics and not asks & ASKS:
        subjects = {"amps": subjects["amps"]}
    elif not asks & ASKS and "secondary_ground" in facts.job.dangers and not FACTS & facts.job.fresh:
        subjects = {"ground": subjects["ground"]}
    first = [name for name in ("fuse", "wire_run", "size") if name in asks]
    order = (*(name for name in first if name in subjects), *(name for name in subjects if name not in first))
    return tuple(part for name in order if (part := subjects[name]) is not None)


def _wire_wanted(job: Job) -> bool:
    """A run of an earlier message is weighed again where the load changes, not where only a fuse is asked about."""
    return "wire_run" in job.asks or not job.fresh or bool({"load", "run_feet", "wire_awg"} & job.fresh) or "size" in job.asks


def _fuse_wanted(facts: Told) -> bool:
    """A run alone and two units together ask for no fuse."""
    asks = set(facts.job.asks)
    if "fuse" in asks or "fuse_amps" in facts.job.fresh:
        return True
    if facts.is_addition or facts.job.unread:  # no fuse for a load that is not known yet
        return False
    return "parallel" not in asks and "wire_run" not in asks and facts.load_va is not None


def _nothing_known(job: Job) -> Answer | None:
    if job.unknown_loads:
        return Answer(lines=unknown_lines(job.unknown_loads), sizing=Sizing())
    if "size" in job.asks:
        return Answer(
            lines=(say("Send each device by its usual name, its sealed VA off the label, how many, and the supply volts"),),
            sizing=Sizing(),
        )
    return Answer(sizing=Sizing()) if job.asks else None
