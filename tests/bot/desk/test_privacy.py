"""Technicians see nothing of each other."""

from desk_people import MORNING
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st
from sqlalchemy.orm import Session

from bot.store import jobs, log
from bot.store.export import export
from bot.store.history import jobs_on
from bot.store.schema import open_store
from bot.store.technicians import welcome

WHO = ("t1", "t2", "t3")
STEPS = st.lists(
    st.tuples(
        st.sampled_from(WHO),
        st.sampled_from(("new", "write", "edit", "close", "resume", "list", "history", "program", "export")),
        st.integers(0, 4),
    ),
    min_size=10,
    max_size=60,
)


def rows_seen(session: Session, who, step: str, number: int) -> list[str]:
    """Do one thing that a technician can ask for; every name and text that it lets them see."""
    name = f"unit {number}"
    match step:
        case "new":
            jobs.open_job(session, who, MORNING, name=f"{name} of {who.address}")
        case "write" | "edit":
            job = jobs.current_job(session, who) or jobs.open_job(session, who, MORNING)
            known = log.latest(session, who, str(number))
            revision = 0 if known is None else known.revision + 1
            job = job if known is None else next(j for j in [session.get(type(job), known.job_id)] if j)
            sent = log.Sent(message_id=str(number), revision=revision, text=f"written by {who.address}", sent_at=MORNING)
            log.append(session, who, job, sent, log.Answered(record={"reply": f"to {who.address}", "asks": []}))
            return [message.text for message, _ in log.read(session, job)]
        case "close":
            job = jobs.current_job(session, who)
            if job is not None:
                jobs.close_job(session, job, f"done by {who.address}", MORNING)
        case "resume":
            found = jobs.open_jobs_meant(session, who, name)
            for job in found[:1]:
                jobs.reopen_job(session, who, job)
            return [str(job.name) for job in found]
        case "list":
            return [str(job.name) for job in jobs.open_jobs(session, who) if job.name]
        case "history":
            units = jobs.units_meant(session, who, name)
            return [unit.name for unit in units] + [str(job.name) for job in jobs_on(session, units)]
        case "program":
            job = jobs.job_with(session, who, name) or jobs.open_job(session, who, MORNING, channel_job=name)
            job.outcome = job.outcome or f"by {who.address}"
            return [str(job.outcome)]
        case "export":
            return [str(export(session, who))]
    return []


@settings(max_examples=60, deadline=None, suppress_health_check=[HealthCheck.too_slow])
@given(STEPS)
def test_no_row_of_one_is_visible_to_another(steps) -> None:
    """Whatever is done in whatever order, nobody sees a name or a text of another."""
    engine = open_store("sqlite://")
    with Session(engine) as session:
        for address, step, number in steps:
            who = welcome(session, "local", address, address, MORNING)

            seen = " ".join(rows_seen(session, who, step, number))

            assert not [other for other in WHO if other != address and other in seen]
    engine.dispose()
