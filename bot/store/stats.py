"""Counts over all jobs, for whoever runs the crew."""

from collections.abc import Sequence
from dataclasses import dataclass

from sqlalchemy import ColumnElement, case, func, select
from sqlalchemy.orm import InstrumentedAttribute, Session

from bot.store.tables import Job

Column = ColumnElement[str | None] | InstrumentedAttribute[float | None]


@dataclass(frozen=True, slots=True, kw_only=True)
class Count:
    """Jobs that share something."""

    of: str | float | None
    jobs: int
    condemned: int
    """Those of them whose transformer was found bad."""
    settled: int


def counts(session: Session, column: Column) -> Sequence[Count]:
    """Jobs with a verdict, counted by what stands in a column of theirs, most first."""
    condemned = func.sum(case((Job.transformer == "bad", 1), else_=0))
    settled = func.sum(case((Job.settled.is_(True), 1), else_=0))
    asked = select(column, func.count(), condemned, settled).where(Job.finding.is_not(None)).group_by(column)
    rows = session.execute(asked.order_by(func.count().desc(), column)).all()
    return [Count(of=of, jobs=jobs, condemned=bad, settled=done) for of, jobs, bad, done in rows]


def by_cause(session: Session, least: float) -> Sequence[Count]:
    """By finding, where it was at least so likely; the others are counted under none."""
    return counts(session, case((Job.confidence >= least, Job.finding)))


def by_supply(session: Session) -> Sequence[Count]:
    """By nominal supply, in volts."""
    return counts(session, Job.supply_volts)


def by_tap(session: Session) -> Sequence[Count]:
    """By the tap in use, in volts."""
    return counts(session, Job.tap_volts)
