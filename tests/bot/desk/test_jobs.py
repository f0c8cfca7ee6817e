"""Jobs by word of mouth: opened, named, listed, gone back to, closed."""

from datetime import timedelta

import pytest
from desk_people import Office
from sqlalchemy import select
from sqlalchemy.orm import Session

from bot.store.tables import Job


def jobs(office: Office) -> list[tuple[str | None, bool]]:
    """Name of each job, and whether it is open."""
    with Session(office.engine) as session:
        return [(job.name, job.closed_at is None) for job in session.scalars(select(Job).order_by(Job.id))]


def test_a_job_gets_the_name_given(office: Office) -> None:
    """The reply says it back."""
    assert office.says("new job rtu 3 library").splitlines()[0] == "New job: rtu 3 library"
    assert jobs(office) == [("rtu 3 library", True)]


def test_no_empty_job_is_left_behind(office: Office) -> None:
    """Greeting first and naming the job then makes one job, not two."""
    office.says("hello", "new job rtu 3")

    assert jobs(office) == [("rtu 3", True)]


def test_readings_sent_with_the_name_are_of_the_new_job(office: Office) -> None:
    """One message can open a job and begin it."""
    office.says("new job rtu 3", "pri 240V")
    taken = office.hear("new job rtu 4, pri 118V sec 0V")

    assert [r["value"] for r in taken.record["readings"]] == [118.0, 0.0]
    assert "240" not in office.says("history")


def test_a_job_is_gone_back_to_by_name(office: Office) -> None:
    """The readings of then count again."""
    office.says("new job rtu 3", "pri 118V", "sec 0V", "new job rtu 5", "pri 240V")

    back = office.hear("back to rtu 3")
    taken = office.hear("pri-ohm open")

    assert back.text.splitlines()[0] == "Back on rtu 3"
    assert taken.record["verdict"]["finding"] == "primary_open"


def test_a_name_that_no_job_has_is_said_so(office: Office) -> None:
    """And what there is is listed."""
    office.says("new job rtu 3", "pri 118V")

    said = office.says("back to rtu 9")

    assert said.splitlines()[0] == "No job is called rtu 9"
    assert "rtu 3" in said


def test_two_jobs_that_can_be_meant_are_asked_about(office: Office) -> None:
    """The buttons name them."""
    office.says("new job rtu 3 library", "pri 118V", "new job rtu 3 school", "pri 118V", "new job other", "pri 118V")

    taken = office.hear("back to rtu 3")

    assert taken.text.splitlines()[0] == "Which one?"
    assert set(taken.buttons) == {"resume rtu 3 library", "resume rtu 3 school"}
    assert office.says(taken.buttons[0]).splitlines()[0] == f"Back on {taken.buttons[0].removeprefix('resume ')}"


def test_with_several_open_each_reply_says_its_job(office: Office) -> None:
    """With one open it would only be noise."""
    alone = office.says("new job rtu 3", "pri 118V")
    among = office.says("new job rtu 5", "pri 240V")

    assert "Job:" not in alone
    assert among.splitlines()[0] == "Job: rtu 5"


def test_the_list_shows_where_each_job_stands(office: Office) -> None:
    """A line each, with the verdict so far."""
    office.says("new job rtu 3", "pri 118V sec 0V pri-ohm open", "new job rtu 5", "pri 240V")

    said = office.says("my jobs").splitlines()

    assert said[0] == "Open jobs:"
    assert [line.split(":")[0] for line in said[1:]] == ["- rtu 5", "- rtu 3"]
    assert said[2] == "- rtu 3: The primary is open"


def test_a_job_is_closed_with_what_was_done(office: Office) -> None:
    """The words are kept, and the next message opens a job of its own."""
    office.says("new job rtu 3", "pri 118V sec 0V pri-ohm open")
    said = office.says("done, replaced, 50 va, 208 tap, 2 a fuse")
    office.says("pri 240V")

    assert said.splitlines()[0] == "Closed: rtu 3"
    assert jobs(office) == [("rtu 3", False), (None, True)]
    with Session(office.engine) as session:
        closed = session.scalars(select(Job).where(Job.name == "rtu 3")).one()
    assert closed.outcome == "replaced, 50 va, 208 tap, 2 a fuse"
    assert (closed.finding, closed.tap_volts, closed.rated_va) == ("primary_open", None, None)


def test_a_new_job_on_a_known_unit_says_what_was_there(office: Office) -> None:
    """The last visit in one line, unasked."""
    office.says("new job rtu 3", "pri 118V sec 0V pri-ohm open", "done, replaced, 50 va")
    office.now += timedelta(days=30)

    said = office.says("new job RTU-3")

    assert said.splitlines()[1].startswith("2026-03-02: The primary is open. Done: ")


def test_the_history_of_a_unit_is_told(office: Office) -> None:
    """Earlier faults, supply and tap."""
    office.says(
        "new job rtu 3 library", "208 building, on the 240 tap, pri 206 sec 20.6", "done, moved to the 208 tap", "new job rtu 5"
    )

    said = office.says("anything on rtu 3 before?")

    assert said.splitlines()[0] == "Before on rtu 3 library:"
    assert "supply 208 V, tap 240 V" in said
    assert office.says("anything on rtu 9 before?").splitlines()[0] == "Nothing on rtu 9 before"


def test_an_unnamed_job_from_yesterday_is_not_gone_on_with(office: Office) -> None:
    """The next morning's readings are of another unit; the old one can be gone back to."""
    office.says("pri 240V sec 0V")
    office.now += timedelta(hours=20)

    said = office.says("pri 118V")
    shown = office.says("history")

    assert said.splitlines()[0].startswith("New job. To go on with the job of 2026-03-02")
    assert "240" not in shown
    assert office.says("resume").splitlines()[0].startswith("Back on job of 2026-03-02")
    assert "240" in office.says("history")


def test_a_named_job_goes_on_the_next_day(office: Office) -> None:
    """Its name says which unit it is."""
    office.says("new job rtu 3", "pri 118V sec 0V")
    office.now += timedelta(days=3)

    assert office.hear("pri-ohm open").record["verdict"]["finding"] == "primary_open"


@pytest.mark.parametrize("text", ["my jobs", "anything on rtu 3 before?"])
def test_asking_of_jobs_brings_no_verdict_of_its_own(office: Office, text: str) -> None:
    """The answer is about jobs, and stays short."""
    office.says("new job rtu 3", "pri 118V sec 0V pri-ohm open")

    taken = office.hear(text)

    assert taken.record["next_test"] is None
    assert taken.record["cautions"] == []
