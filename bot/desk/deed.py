"""What the desk does for an ask that touches the store."""

from dataclasses import dataclass, field
from datetime import datetime, tzinfo
from typing import Literal

from sqlalchemy.orm import Session

from bot.desk.incoming import Incoming
from bot.reply import Reply
from bot.store.tables import Job, Technician
from bot.wording.verdict import in_a_line
from core.said import Said, say


@dataclass(frozen=True, slots=True, kw_only=True)
class At:
    """Where the desk stands with one message."""

    session: Session
    technician: Technician
    job: Job
    blank: bool
    """True where nothing was told in the job yet."""
    reopens: bool
    """True where the message takes back the word that closed the job."""
    sent: Incoming
    reply: Reply
    """What the conversation answers, before the desk does anything."""

    @property
    def now(self) -> datetime:
        """The moment of the message."""
        return self.sent.sent_at

    @property
    def name(self) -> str | None:
        """The name given with the ask, or None. Beside readings it stands among the fragments that are none of them."""
        message = self.reply.message
        return message.name or next(iter(message.chatter), None)


@dataclass(frozen=True, slots=True, kw_only=True)
class Deed:
    """What was done, and what to say about it."""

    lines: tuple[Said, ...] = ()
    job: Job | None = None
    """The job that the message belongs to from now on; None where that does not change."""
    buttons: tuple[Said, ...] = field(default=())
    document: str | None = None
    alone: Literal["never", "unless told", "unless read"] = "unless told"
    """When these lines are the whole answer: where the message brought neither readings nor facts, or no readings, or never."""
    forgotten: Literal["all", "job"] | None = None
    """What is gone from the store: the technician with all of it, or the job that the message belonged to or named."""


def title(job: Job, zone: tzinfo | None) -> Said:
    """What a job is called when it is spoken of."""
    if job.name:
        return say("{name}", name=job.name)
    return say("job of {day}", day=job.opened_at.astimezone(zone).strftime("%Y-%m-%d %H:%M"))


def verdict_of(job: Job) -> Said | None:
    """What was found on a job, in a line; None where nothing was."""
    return in_a_line(job.finding, job.transformer, job.confidence) if job.finding else None


def day(moment: datetime, zone: tzinfo | None) -> str:
    """The day as it stands in a sentence."""
    return moment.astimezone(zone).strftime("%Y-%m-%d")
