"""Deleting is whole, and touches nobody else."""

import pytest
from sqlalchemy import func, select
from sqlalchemy.orm import Session
from store_people import LATER, NOW, a_job, someone, wrote

from bot.store import jobs, log
from bot.store.attachments import File, attach
from bot.store.export import ROWS, export
from bot.store.forget import GONE, forget
from bot.store.hand_over import accept, offer
from bot.store.tables import Base, Job, Technician
from bot.store.technicians import technician, tell_later
from core.said import say

SECRET = "roof code 4411"


def everything(session: Session) -> str:
    """All text of all tables."""
    return "\n".join(repr(tuple(row)) for table in Base.metadata.sorted_tables for row in session.execute(select(table)).all())


def left(session: Session) -> dict[str, int]:
    """Rows by table, empty tables left out."""
    counts = {t.name: session.scalar(select(func.count()).select_from(t)) for t in Base.metadata.sorted_tables}
    return {name: count for name, count in counts.items() if count}


def test_nothing_of_a_technician_is_left(session: Session) -> None:
    """Jobs, units, messages, replies, files, codes and notices go."""
    who = someone(session)
    job = a_job(session, who, "rtu 3")
    wrote(session, who, job, SECRET, "m1")
    attach(session, who, job, File(kind="photo", media_type="image/png", body=SECRET.encode(), caption=SECRET), NOW)
    offer(session, who, job, "copy", NOW)
    tell_later(session, who.id, say("{text}", text=SECRET), NOW)
    session.commit()

    forget(session, who, LATER)
    session.commit()

    assert left(session) == {}


def test_others_keep_what_is_theirs(session: Session) -> None:
    """One leaves, the other's jobs stand as before."""
    first, second = someone(session, "t1"), someone(session, "t2")
    wrote(session, first, a_job(session, first, "rtu 3"), SECRET, "m1")
    job = a_job(session, second, "rtu 3")
    wrote(session, second, job, "sec 24V", "m1")

    forget(session, first, LATER)

    assert [m.text for m, _ in log.read(session, job)] == ["sec 24V"]
    assert SECRET not in everything(session)


@pytest.mark.parametrize("leaver", ["t1", "t2"])
def test_a_shared_job_stays_with_the_other_without_the_name(session: Session, leaver: str) -> None:
    """The log is still whole, and says nowhere who left."""
    giver, taker = someone(session, "t1"), someone(session, "t2")
    job = a_job(session, giver, "rtu 3")
    wrote(session, giver, job, "pri 118V", "m1")
    accept(session, taker, offer(session, giver, job, "job", NOW), LATER)
    wrote(session, taker, job, "sec 0V", "m1")
    stays = taker if leaver == "t1" else giver
    number = job.id

    forget(session, giver if leaver == "t1" else taker, LATER)
    session.commit()

    job = session.get_one(Job, number)
    assert list(jobs.open_jobs(session, stays)) == [job]
    assert [m.text for m, _ in log.read(session, job)] == ["pri 118V", "sec 0V"]
    assert technician(session, "local", leaver) is None
    assert leaver not in {m.written_by for m, _ in log.read(session, job)}
    assert {row.channel for row in session.scalars(select(Technician))} == {"local", GONE}


def test_a_copy_given_away_stays_with_whoever_took_it(session: Session) -> None:
    """It is the taker's own; only the author's name stands in it."""
    giver, taker = someone(session, "t1"), someone(session, "t2")
    job = a_job(session, giver, "rtu 3")
    wrote(session, giver, job, "pri 118V", "m1")
    copied = accept(session, taker, offer(session, giver, job, "copy", NOW), LATER)

    forget(session, giver, LATER)

    assert [m.text for m, _ in log.read(session, copied)] == ["pri 118V"]
    assert {m.written_by for m, _ in log.read(session, copied)} == {"-"}


def test_an_export_holds_everything_and_nobody_else(session: Session) -> None:
    """One's own texts, replies and files are in it, another's not."""
    first, second = someone(session, "t1"), someone(session, "t2")
    job = a_job(session, first, "rtu 3")
    wrote(session, first, job, "pri 118V", "m1")
    attach(session, first, job, File(kind="photo", media_type="image/png", body=b"abc"), NOW)
    wrote(session, second, a_job(session, second), SECRET, "m1")

    whole = export(session, first)

    assert whole["jobs"][0]["log"][0]["text"] == "pri 118V"
    assert whole["jobs"][0]["log"][0]["reply"]["reply"] == "read: pri 118V"
    assert whole["jobs"][0]["attachments"][0]["body"] == "YWJj"
    assert SECRET not in str(whole)


def test_no_table_that_points_to_a_technician_is_left_out_of_the_export() -> None:
    """A table added tomorrow stands in the file too, or this fails."""
    with_the_jobs = {"job", "logged_message", "attachment"}
    pointing = {
        table.name
        for table in Base.metadata.tables.values()
        for key in table.foreign_keys
        if key.column.table.name == "technician"
    }

    assert pointing == with_the_jobs | {table.__tablename__ for table in ROWS.values()}
