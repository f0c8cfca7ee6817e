"""What a report is made of: a job as it was logged and folded, as plain data."""

from dataclasses import dataclass
from datetime import UTC, datetime, tzinfo

from core.advice import LeadMap, NextTest, Sizing, Verdict
from core.readings import Fact, Reading
from core.said import Said
from core.standards.source import Source


@dataclass(frozen=True, slots=True, kw_only=True)
class Sent:
    """One message."""

    number: int
    """Place in the job's log, from 1."""
    at: datetime
    by: str
    text: str
    edits: str | None = None
    """The id of the message that it replaces."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Taken:
    """One reading with the message that brought it."""

    number: int
    at: datetime
    reading: Reading
    stands: bool = True
    """False where a later message took it back or put another value in its place."""
    proof: bool = False
    """True where it was read after the repair."""
    old: bool = False
    """True where it was read before a repair after which the unit was diagnosed anew."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Told:
    """One fact with the message that brought it."""

    number: int
    at: datetime
    fact: Fact
    stands: bool = True
    after: bool = False
    """True where it was told of the repaired unit."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Given:
    """One caution with the message that it answered."""

    number: int
    at: datetime
    name: str
    says: Said
    source: Source


@dataclass(frozen=True, slots=True, kw_only=True)
class Photo:
    """One picture that the technician sent."""

    at: datetime
    body: bytes
    caption: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class JobLog:
    """One job, whole."""

    name: str
    unit: str | None = None
    technicians: tuple[str, ...] = ()
    opened: datetime
    closed: datetime | None = None
    outcome: str | None = None
    """What was done, in the technician's words."""
    sent: tuple[Sent, ...] = ()
    taken: tuple[Taken, ...] = ()
    told: tuple[Told, ...] = ()
    given: tuple[Given, ...] = ()
    verdict: Verdict | None = None
    next_test: NextTest | None = None
    leads: LeadMap | None = None
    sizing: Sizing | None = None
    proved: tuple[Said, ...] = ()
    """What was said of the readings after the repair: passed or not, and why."""
    photos: tuple[Photo, ...] = ()
    zone: tzinfo = UTC
    """The clock that the report is written in."""

    def standing(self) -> tuple[Taken, ...]:
        """The readings that still count, in order."""
        return tuple(t for t in self.taken if t.stands)

    def before_repair(self) -> tuple[Taken, ...]:
        """The standing readings that the verdict rests on."""
        return tuple(t for t in self.standing() if not t.proof and not t.old)

    def facts(self) -> tuple[Fact, ...]:
        """The standing facts of the unit as it was found, in order."""
        return tuple(t.fact for t in self.told if t.stands and not t.after)

    def facts_after(self) -> tuple[Fact, ...]:
        """The standing facts of the repaired unit, in order."""
        return tuple(t.fact for t in self.told if t.stands and t.after)


def latest_per_place(taken: tuple[Taken, ...]) -> tuple[Taken, ...]:
    """
    Of several readings at one place the last, in the order in which they were sent.

    Args:
        taken: Readings in order.
    """
    last = {(t.reading.measure, frozenset(t.reading.leads or ())): t for t in taken}
    return tuple(t for t in taken if last[t.reading.measure, frozenset(t.reading.leads or ())] is t)
