"""A job put into the parts of a report."""

from collections.abc import Callable
from datetime import datetime, tzinfo
from typing import Final

from bot.report import known, leads_and_sizing, places, standards, verdict
from bot.report.job_log import JobLog
from bot.report.paper import Part, Report, Tell
from core.said import Said, say


def compose(log: JobLog, tell: Tell, language: str = "en") -> Report:
    """
    The report of a job, in the reader's words.

    Args:
        log: The job.
        tell: Puts a sentence in the reader's language.
        language: That language, for the papers that name it.

    Returns:
        What every paper is laid out from.
    """
    parts = (part for make in _PARTS if not (part := make(log, tell)).empty)
    return Report(
        title=tell(say("Service report: control circuit")),
        heads=_heads(log, tell),
        parts=tuple(parts),
        marks=(("sent", tell(say("as sent"))), ("computed", tell(say("computed"))), ("said", tell(say("said by the bot")))),
        footer=_footer(log, tell),
        more=lambda count: tell(say("and {count:d} more: in the text, CSV and JSON of this report", count=count)),
        captions=(
            ("circuit", tell(say("Readings where they were taken"))),
            ("leads", tell(say("Leads as found"))),
            ("photo", tell(say("Technician's photo"))),
            ("broken", tell(say("This file could not be opened as a picture"))),
        ),
        log=log,
        tell=tell,
        language=language,
    )


def _heads(log: JobLog, tell: Tell) -> tuple[tuple[str, str], ...]:
    rows = (
        (say("Unit"), log.unit or log.name),
        (say("Job"), log.name if log.unit not in {None, log.name} else ""),
        (say("Technician"), ", ".join(log.technicians)),
        (say("Opened"), moment(log.opened, log.zone)),
        (say("Closed"), moment(log.closed, log.zone) if log.closed else tell(say("still open"))),
    )
    return tuple((tell(label), value) for label, value in rows if value)


def moment(at: datetime, zone: tzinfo) -> str:
    """
    A day and time with the clock's name.

    Args:
        at: The moment.
        zone: The reader's clock.
    """
    return at.astimezone(zone).strftime("%Y-%m-%d %H:%M %Z").strip()


def _known(log: JobLog, tell: Tell) -> Part:
    lines = tuple(f"{label}: {value}" for label, value in known.rows(log.facts(), tell))
    return Part(name="known", title=tell(say("The unit")), mark="sent", lines=lines, run_in=True)


def _readings(log: JobLog, tell: Tell) -> Part:
    taken = tuple(t for t in log.taken if not t.proof)
    return Part(
        name="readings",
        title=tell(say("Readings")),
        mark="sent",
        table=places.table(taken, log.zone, tell) if taken else None,
        short=places.short_table(taken, log.zone, tell),
    )


def _done(log: JobLog, tell: Tell) -> Part:
    lines = (log.outcome,) if log.outcome else ()
    if rows := known.rows(log.facts_after(), tell):
        lines = (*lines, " · ".join(f"{label}: {value}" for label, value in rows))
    return Part(name="done", title=tell(say("What was done")), mark="sent", lines=lines)


def _proof(log: JobLog, tell: Tell) -> Part:
    taken = tuple(t for t in log.taken if t.proof)
    return Part(
        name="proof",
        title=tell(say("Proof after the repair")),
        mark="sent",
        table=places.table(taken, log.zone, tell) if taken else None,
        short=places.short_table(taken, log.zone, tell),
    )


def _proved(log: JobLog, tell: Tell) -> Part:
    lines = tuple(places.capital(tell(line)) for line in log.proved)
    return Part(name="proved", title=tell(say("What the proof says")), mark="computed", lines=lines, with_last=True)


def _cautions(log: JobLog, tell: Tell) -> Part:
    days = len({g.at.astimezone(log.zone).date() for g in log.given}) > 1
    first = {g.name: g for g in reversed(log.given)}
    lines = tuple(f"{places.clock(g.at, log.zone, days=days)}  {tell(g.says)}" for g in log.given if first[g.name] is g)
    return Part(name="cautions", title=tell(say("Cautions given")), mark="said", lines=lines)


def _photos(log: JobLog, tell: Tell) -> Part:
    days = len({p.at.astimezone(log.zone).date() for p in log.photos}) > 1
    words = tell(say("Technician's photo"))
    lines = tuple(f"{places.clock(p.at, log.zone, days=days)}  {p.caption or words}" for p in log.photos)
    return Part(name="photos", title=tell(say("Photos")), mark="sent", lines=lines)


def _standards(log: JobLog, tell: Tell) -> Part:
    rules = log.sizing.rules if log.sizing else ()
    lines = (*(places.capital(tell(rule)) for rule in rules), *(str(source) for source in standards.named(log)))
    return Part(name="standards", title=tell(say("Standards and rules named")), mark="said", lines=lines, run_in=True)


_PARTS: Final[tuple[Callable[[JobLog, Tell], Part], ...]] = (
    verdict.verdict,
    verdict.why,
    verdict.to_do,
    _known,
    _readings,
    leads_and_sizing.leads,
    leads_and_sizing.sizing,
    _done,
    _proof,
    _proved,
    _cautions,
    _photos,
    _standards,
)
"""Every part in the order in which a report is read."""


def _footer(log: JobLog, tell: Tell) -> tuple[str, ...]:
    lines: tuple[Said, ...] = (
        say(
            "From {count:d} messages. As sent: the technician's own words and readings. Computed: worked out from them",
            count=len(log.sent),
        ),
        say("Local code and the inspector decide"),
    )
    return tuple(tell(line) for line in lines)
