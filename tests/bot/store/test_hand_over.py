"""A code gives a job, or a copy of it, once."""

from datetime import timedelta

import pytest
from sqlalchemy import select
from sqlalchemy.orm import Session
from store_people import LATER, NOW, a_job, someone, wrote

from bot.store import jobs, log
from bot.store.attachments import File, attach, attachments
from bot.store.hand_over import CODE, accept, offer, offered
from bot.store.tables import Job

PHOTO = File(kind="photo", media_type="image/jpeg", body=b"\xff\xd8 invented", caption="nameplate", message_id="m2")


@pytest.fixture
def given(session: Session):
    """A giver with a job of two messages and a photo, and a taker."""
    giver, taker = someone(session, "t1"), someone(session, "t2")
    job = a_job(session, giver, "rtu 3")
    wrote(session, giver, job, "pri 118V", "m1")
    wrote(session, giver, job, "sec 0V", "m2")
    attach(session, giver, job, PHOTO, NOW)
    return giver, taker, job


def test_a_code_is_not_guessed_and_reads_over_the_phone(session: Session, given) -> None:
    """Two groups of four, no sign that could be another; each new."""
    giver, _, job = given

    codes = {offer(session, giver, job, "job", NOW).code for _ in range(50)}

    assert len(codes) == 50
    assert all(CODE.fullmatch(code) and not set("01ILO") & set(code) for code in codes)


def test_the_job_itself_is_seen_by_both(session: Session, given) -> None:
    """Both have it open, and what one writes the other reads."""
    giver, taker, job = given

    taken = accept(session, taker, offer(session, giver, job, "job", NOW), LATER)
    wrote(session, taker, job, "pri-ohm open", "m1")

    assert taken is job
    assert jobs.current_job(session, taker) is job
    assert list(jobs.open_jobs(session, giver)) == list(jobs.open_jobs(session, taker)) == [job]
    assert [(m.written_by, m.text) for m, _ in log.read(session, job)][-1] == ("t2", "pri-ohm open")


def test_a_copy_goes_its_own_way(session: Session, given) -> None:
    """It has the whole log, replies and photos, and says who wrote; later messages stay apart."""
    giver, taker, job = given

    copied = accept(session, taker, offer(session, giver, job, "copy", NOW), LATER)
    wrote(session, taker, copied, "pri-ohm open", "m1")

    assert copied.copied_from_id == job.id
    assert (copied.owner_id, copied.name, copied.turns, job.turns) == (taker.id, "rtu 3", 3, 2)
    kept = [(m.number, m.text, m.written_by, r.record["reply"]) for m, r in log.read(session, copied) if r]
    assert kept[:2] == [(1, "pri 118V", "t1", "read: pri 118V"), (2, "sec 0V", "t1", "read: sec 0V")]
    assert [file.body for file in attachments(session, copied)] == [PHOTO.body]
    assert list(jobs.open_jobs(session, giver)) == [job]
    assert list(jobs.open_jobs(session, taker)) == [copied]


def test_a_code_works_once(session: Session, given) -> None:
    """Who comes second gets nothing."""
    giver, taker, job = given
    made = offer(session, giver, job, "job", NOW)
    accept(session, taker, made, LATER)

    assert offered(session, made.code, LATER) is None


def test_a_code_ends_after_two_days(session: Session, given) -> None:
    """A code found in an old message gives nothing."""
    giver, _, job = given
    made = offer(session, giver, job, "job", NOW)

    assert offered(session, made.code, NOW + timedelta(days=2)) is made
    assert offered(session, made.code, NOW + timedelta(days=2, seconds=1)) is None


def test_a_job_handed_in_a_ring_is_not_doubled(session: Session, given) -> None:
    """Giving a job back to its owner changes nothing."""
    giver, taker, job = given
    accept(session, taker, offer(session, giver, job, "job", NOW), LATER)

    accept(session, giver, offer(session, taker, job, "job", NOW), LATER)

    assert list(jobs.open_jobs(session, giver)) == [job]
    assert session.scalars(select(Job)).all() == [job]
