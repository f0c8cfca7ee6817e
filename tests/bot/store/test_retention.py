"""Closed jobs go when their time is over, open ones never."""

from datetime import timedelta

import pytest
from sqlalchemy import select
from sqlalchemy.orm import Session
from store_people import NOW, a_job, someone, wrote

from bot.store.jobs import close_job
from bot.store.retention import clear_out, keep_for, kept_for
from bot.store.tables import Job, LoggedMessage


@pytest.fixture
def three(session: Session):
    """A technician with an old closed job, a young closed one and an old open one."""
    who = someone(session)
    old, young, still = (a_job(session, who, name) for name in ("old", "young", "open"))
    for job in (old, young, still):
        wrote(session, who, job, "pri 118V", str(job.id))
    close_job(session, old, None, NOW - timedelta(days=100))
    close_job(session, young, None, NOW - timedelta(days=10))
    return who


def names(session: Session) -> set[str]:
    """The jobs that are left."""
    return {str(job.name) for job in session.scalars(select(Job))}


def test_everything_is_kept_unless_set(session: Session, three) -> None:
    """Nothing is deleted by default."""
    assert clear_out(session, NOW) == 0
    assert names(session) == {"old", "young", "open"}


def test_what_is_older_goes_with_its_log(session: Session, three) -> None:
    """Only the closed job whose days are over."""
    keep_for(session, 30)

    assert clear_out(session, NOW) == 1
    assert names(session) == {"young", "open"}
    assert len(session.scalars(select(LoggedMessage)).all()) == 2


def test_one_s_own_days_come_first(session: Session, three) -> None:
    """A technician may keep longer, or shorter, than the crew."""
    keep_for(session, 30)
    three.keep_days = 365

    assert clear_out(session, NOW) == 0


def test_the_setting_is_kept(session: Session) -> None:
    """It can be set, changed and taken back."""
    found = []
    for days in (30, 60, None):
        keep_for(session, days)
        session.flush()
        found.append(kept_for(session))

    assert found == [30, 60, None]
