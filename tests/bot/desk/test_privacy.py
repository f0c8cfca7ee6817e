"""Technicians see nothing of each other."""

from datetime import UTC
from random import Random

from desk_people import MORNING, Office
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st
from sqlalchemy import select
from sqlalchemy.orm import Session

from bot.desk.documents import report
from bot.store import jobs, log
from bot.store.export import export
from bot.store.hand_over import code_in
from bot.store.history import jobs_on
from bot.store.schema import open_store
from bot.store.tables import Job, Technician
from bot.store.technicians import welcome

WHO = ("t1", "t2", "t3")


def unit(number: int) -> str:
    """Names that all share."""
    return f"unit {number}"


def opens(session: Session, who: Technician, number: int) -> list[str]:
    """A job with a name."""
    jobs.open_job(session, who, MORNING, name=f"{unit(number)} of {who.address}")
    return []


def writes(session: Session, who: Technician, number: int) -> list[str]:
    """A message, or an edit of the one with this id."""
    known = log.latest(session, who, str(number))
    if known is None:
        job = jobs.current_job(session, who) or jobs.open_job(session, who, MORNING)
    else:
        job = session.get_one(Job, known.job_id)
    revision = 0 if known is None else known.revision + 1
    sent = log.Sent(message_id=str(number), revision=revision, text=f"written by {who.address}", sent_at=MORNING)
    log.append(session, who, job, sent, log.Answered(record={"reply": f"to {who.address}", "asks": []}))
    return [message.text for message, _ in log.read(session, job, after=job.turns - 5)]


def closes(session: Session, who: Technician, number: int) -> list[str]:
    """The present job."""
    job = jobs.current_job(session, who)
    if job is not None:
        jobs.close_job(session, job, f"done by {who.address}", MORNING)
    return []


def resumes(session: Session, who: Technician, number: int) -> list[str]:
    """A job by its name."""
    found = jobs.open_jobs_meant(session, who, unit(number))
    for job in found[:1]:
        jobs.reopen_job(session, who, job)
    return [str(job.name) for job in found]


def lists(session: Session, who: Technician, number: int) -> list[str]:
    """What is open."""
    return [str(job.name) for job in jobs.open_jobs(session, who) if job.name]


def looks_back(session: Session, who: Technician, number: int) -> list[str]:
    """What was on a unit before."""
    units = jobs.units_meant(session, who, unit(number))
    return [one.name for one in units] + [str(job.name) for job in jobs_on(session, units)]


def names_a_job(session: Session, who: Technician, number: int) -> list[str]:
    """As a program does."""
    job = jobs.job_with(session, who, unit(number)) or jobs.open_job(session, who, MORNING, channel_job=unit(number))
    job.outcome = job.outcome or f"by {who.address}"
    return [job.outcome]


def exports(session: Session, who: Technician, number: int) -> list[str]:
    """All that is kept."""
    return [str(export(session, who))]


STEPS = (opens, writes, closes, resumes, lists, looks_back, names_a_job, exports)
"""What a technician can ask of the store. Each gives every name and text that it lets be seen."""


def strangers_seen(session: Session, who: str, seen: list[str]) -> list[str]:
    """The other technicians whose texts or names are among what was seen."""
    return [other for other in WHO if other != who and other in " ".join(seen)]


@settings(max_examples=60, deadline=None, suppress_health_check=[HealthCheck.too_slow])
@given(st.lists(st.tuples(st.sampled_from(WHO), st.sampled_from(STEPS), st.integers(0, 4)), min_size=10, max_size=60))
def test_no_row_of_one_is_visible_to_another(steps) -> None:
    """Whatever is done in whatever order, nobody sees a name or a text of another."""
    engine = open_store("sqlite://")
    with Session(engine) as session:
        for address, step, number in steps:
            who = welcome(session, "local", address, address, MORNING)

            assert strangers_seen(session, address, step(session, who, number)) == []
    engine.dispose()


def test_ten_thousand_interleaved_messages_stay_apart() -> None:
    """Two technicians write by turns, in jobs of the same names and with the same ids: each has just one's own."""
    engine = open_store("sqlite://")
    chance = Random(20260302)
    written = dict.fromkeys(WHO[:2], 0)
    with Session(engine) as session:
        for number in range(10_000):
            address = chance.choice(WHO[:2])
            who = welcome(session, "local", address, address, MORNING)
            if chance.random() < 0.02:
                opens(session, who, chance.randrange(5))

            assert (
                strangers_seen(session, address, writes(session, who, number // 2 if chance.random() < 0.9 else number)) == []
            )

            written[address] += 1
        for address, count in written.items():
            whole = export(session, welcome(session, "local", address, address, MORNING))
            texts = [row["text"] for job in whole["jobs"] for row in job["log"]]

            assert texts == [f"written by {address}"] * count
    engine.dispose()


def test_what_one_says_of_other_jobs_in_a_shared_one_stays_with_them(office: Office) -> None:
    """Neither the list of their jobs nor a name that they mistyped is in the other's data, or in the report of the job."""
    office.says("new job secret bakery", "pri 118V", "new job shared boiler", "pri 118V sec 0V")
    code = code_in(office.says("hand this over"))
    office.says("my jobs", "back to secret bakry", "report secret bakery", "close secret bakery", "sec 3V", who="t1")
    office.says(f"{code}", "R-C 0V", who="t2")

    with Session(office.engine) as session:
        other = session.scalars(select(Technician).where(Technician.address == "t2")).one()
        job = session.scalars(select(Job).where(Job.name == "shared boiler")).one()
        own, shown = str(export(session, other)), report(session, job, "json", UTC, "en").body.decode()

    assert "shared boiler" in own
    assert "secret" not in own
    assert "secret" not in shown
