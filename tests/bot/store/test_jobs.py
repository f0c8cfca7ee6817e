"""Jobs open, are found by name, and close."""

from datetime import timedelta

import pytest
from sqlalchemy.orm import Session
from store_people import LATER, NOW, a_job, someone, wrote

from bot.store import jobs
from bot.store.history import jobs_on


def test_a_new_job_is_the_current_one(session: Session) -> None:
    """The next message belongs to the job opened last."""
    who = someone(session)
    a_job(session, who, "rtu 3")

    second = a_job(session, who, "rtu 4")

    assert jobs.current_job(session, who) is second


def test_a_job_of_a_program_does_not_move_the_person(session: Session) -> None:
    """A job named by a channel is found by that word, and the current job stays."""
    who = someone(session)
    own = a_job(session, who)
    named = jobs.open_job(session, who, NOW, channel_job="j1")

    assert jobs.current_job(session, who) is own
    assert jobs.job_with(session, who, "j1") is named


@pytest.mark.parametrize("asked", ["rtu 3", "RTU-3", "rtu 3 library", "Library RTU 3"])
def test_a_job_is_found_by_words_of_its_name(session: Session, asked: str) -> None:
    """Case, dashes and order don't matter, and a part of the name will do."""
    who = someone(session)
    wanted = a_job(session, who, "RTU 3 library")
    a_job(session, who, "RTU 33 school")

    assert list(jobs.open_jobs_meant(session, who, asked)) == [wanted]


def test_the_exact_name_wins(session: Session) -> None:
    """Where a name is one job's whole name, others that contain it are not meant."""
    who = someone(session)
    exact = a_job(session, who, "rtu 3")
    a_job(session, who, "rtu 3 library")

    assert list(jobs.open_jobs_meant(session, who, "RTU 3")) == [exact]


def test_open_jobs_come_latest_first_and_closed_ones_not(session: Session) -> None:
    """The list begins with what was last spoken of."""
    who = someone(session)
    first, second, third = a_job(session, who, "a"), a_job(session, who, "b"), a_job(session, who, "c")
    first.last_at = LATER
    jobs.close_job(session, second, "replaced, 50 va", LATER)

    assert list(jobs.open_jobs(session, who)) == [first, third]
    assert (second.closed_at, second.outcome) == (LATER, "replaced, 50 va")


def test_nobody_works_on_a_closed_job(session: Session) -> None:
    """After closing the next message opens a job of its own."""
    who = someone(session)
    job = a_job(session, who)

    jobs.close_job(session, job, None, LATER)

    assert jobs.current_job(session, who) is None


def test_a_closed_job_can_be_gone_on_with(session: Session) -> None:
    """Reopening makes it current; what was done stays noted."""
    who = someone(session)
    job = a_job(session, who, "rtu 3")
    jobs.close_job(session, job, "new fuse", LATER)

    jobs.reopen_job(session, who, job)

    assert jobs.current_job(session, who) is job
    assert (job.closed_at, job.outcome) == (None, "new fuse")


def test_two_jobs_of_one_name_are_on_one_unit(session: Session) -> None:
    """A unit keeps its history over visits, however its name is written."""
    who = someone(session)
    first, second = a_job(session, who, "RTU 3"), a_job(session, who, "rtu-3")
    for job in (first, second):
        wrote(session, who, job, "pri 118V", f"m{job.id}")
    second.opened_at = NOW + timedelta(days=30)

    unit = jobs.unit_called(session, who.id, "rtu 3")

    assert unit is not None
    assert list(jobs_on(session, [unit])) == [second, first]
    assert list(jobs_on(session, [unit], but=second)) == [first]


def test_another_s_unit_of_that_name_is_not_meant(session: Session) -> None:
    """Names are one technician's own."""
    first, second = someone(session, "t1"), someone(session, "t2")
    a_job(session, first, "rtu 3")

    assert list(jobs.units_meant(session, second, "rtu 3")) == []
    assert list(jobs.open_jobs_meant(session, second, "rtu 3")) == []


def test_a_very_long_name_is_cut(session: Session) -> None:
    """A name that somebody pasted fits the column."""
    job = a_job(session, someone(session), "x" * 5000)

    assert job.name == "x" * 80
