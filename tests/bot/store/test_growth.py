"""What a message asks of the store is answered from an index, so that nothing grows with history."""

import pytest
from sqlalchemy import Engine, event
from sqlalchemy.orm import Session
from store_people import NOW, a_job, someone, wrote

from bot.store import jobs, log
from bot.store.history import jobs_on
from bot.store.schema import open_store
from bot.store.technicians import take_notices, technician


@pytest.fixture
def sqlite_store(sqlite_url):
    """An empty SQLite store."""
    engine = open_store(sqlite_url)
    yield engine
    engine.dispose()


ASKED = {
    "the technician": lambda s, who, job: technician(s, "local", "t1"),
    "the current job": lambda s, who, job: jobs.current_job(s, who),
    "a job by a program's word": lambda s, who, job: jobs.job_with(s, who, "j1"),
    "the message of an id": lambda s, who, job: log.latest(s, who, "m1"),
    "the log from a number on": lambda s, who, job: log.read(s, job, after=1),
    "what was last read": lambda s, who, job: log.last_read(s, job),
    "the job closed last": lambda s, who, job: jobs.last_closed(s, who, NOW),
    "the open jobs": lambda s, who, job: jobs.open_jobs(s, who),
    "the unit of a name": lambda s, who, job: jobs.unit_called(s, who.id, "rtu 3"),
    "the jobs on a unit": lambda s, who, job: jobs_on(s, [jobs.unit_called(s, who.id, "rtu 3")]),
    "notices": lambda s, who, job: take_notices(s, who.id),
}


@pytest.mark.parametrize("what", ASKED)
def test_nothing_is_found_by_looking_through_a_table(sqlite_store: Engine, what: str) -> None:
    """The plan of each statement searches by an index; a scan of a whole table is not in it."""
    plans: list[str] = []

    def explain(connection, cursor, statement, parameters, context, many) -> None:
        if statement.startswith("SELECT") and not many:
            plans.extend(
                row[3] for row in connection.connection.driver_connection.execute("EXPLAIN QUERY PLAN " + statement, parameters)
            )

    with Session(sqlite_store) as session:
        who = someone(session)
        job = a_job(session, who, "rtu 3")
        wrote(session, who, job, "pri 118V", "m1")
        session.flush()
        event.listen(sqlite_store, "before_cursor_execute", explain)

        ASKED[what](session, who, job)

    assert plans
    tables = ("technician", "job", "logged_message", "logged_reply", "unit", "guest", "working_on", "notice")
    assert [plan for plan in plans if plan.startswith("SCAN") and plan.split()[1] in tables] == []
