"""One's own data: given out, deleted, handed over."""

import json
from datetime import UTC, datetime

from desk_people import Office
from sqlalchemy import func, select
from sqlalchemy.orm import Session

from bot.desk import document_for
from bot.store.backup import write_backup
from bot.store.hand_over import code_in
from bot.store.tables import Job, LoggedMessage, Technician, Unit


def count(office: Office, table: type) -> int:
    """Rows of a table."""
    with Session(office.engine) as session:
        return session.scalar(select(func.count()).select_from(table)) or 0


def test_forget_asks_once_and_then_does_it(office: Office) -> None:
    """Yes deletes all of it."""
    office.says("new job rtu 3", "pri 118V")
    asked = office.hear("forget everything")
    done = office.hear("yes")

    assert "for good" in asked.text
    assert asked.buttons == ("yes", "no")
    assert done.text.splitlines()[0] == "Deleted, with all that came of it. Messages: 3"
    assert [count(office, table) for table in (Technician, Job, LoggedMessage)] == [0, 0, 0]


def test_anything_but_yes_keeps(office: Office) -> None:
    """And a yes that comes later answers something else."""
    office.says("pri 118V", "forget everything", "no", "yes")

    assert count(office, Technician) == 1
    assert "118" in office.says("history")


def test_forgetting_names_the_backups(office: Office, tmp_path) -> None:
    """Nobody is told that all is gone while a copy lies on the disk."""
    office.says("pri 118V")
    file = tmp_path / "friday.sqlite"
    write_backup(office.engine, file, datetime(2026, 3, 3, tzinfo=UTC), lambda done, whole: None)

    said = office.says("forget everything", "yes")

    assert f"- {file}, 2026-03-03" in said.splitlines()


def test_after_forgetting_one_starts_anew(office: Office) -> None:
    """No reading of before counts."""
    office.says("pri 118V", "sec 0V", "forget everything", "yes")

    shown = office.says("history")

    assert "118" not in shown


def test_an_export_is_a_file_with_everything(office: Office) -> None:
    """JSON with each text and each reply."""
    office.says("new job rtu 3", "pri 118V")
    taken = office.hear("export my data")

    with Session(office.engine) as session:
        paper = document_for(session, taken, UTC)

    assert paper is not None
    log = json.loads(paper.body)["jobs"][0]["log"]
    assert [row["text"] for row in log] == ["new job rtu 3", "pri 118V", "export my data"]


def test_a_report_is_a_file(office: Office) -> None:
    """One page PDF of the job in hand."""
    office.says("new job rtu 3", "pri 118V sec 0V pri-ohm open")
    taken = office.hear("report")

    with Session(office.engine) as session:
        paper = document_for(session, taken, UTC)

    assert paper is not None
    assert paper.name == "rtu-3.pdf"
    assert paper.body.startswith(b"%PDF")


def test_a_job_handed_over_is_worked_on_by_both(office: Office) -> None:
    """The taker goes on with the readings there are, and the giver is told."""
    office.says("new job rtu 3", "pri 118V sec 0V")
    code = code_in(office.says("hand this over"))

    taken = office.says(f"{code}", who="t2")
    verdict = office.hear("pri-ohm open", who="t2").record["verdict"]
    told = office.says("next", who="t1")

    assert taken.splitlines()[0] == "You work on rtu 3 with t1"
    assert verdict["finding"] == "primary_open"
    assert told.splitlines()[0] == "t2 now works on rtu 3 too"
    assert "open" in office.says("history", who="t1").lower()


def test_a_copy_leaves_the_giver_s_job_alone(office: Office) -> None:
    """Each goes on by oneself."""
    office.says("new job rtu 3", "pri 118V sec 0V")
    code = code_in(office.says("hand over a copy"))

    taken = office.says(f"take {code}", who="t2")
    office.says("pri-ohm open", who="t2")

    assert taken.splitlines()[0] == "You have a copy of rtu 3, from t1"
    assert "ohm" not in office.says("history", who="t1").lower()
    assert "118" in office.says("history", who="t2")


def test_a_code_that_gives_nothing_is_said_so(office: Office) -> None:
    """Mistyped, taken or old."""
    assert office.says("ABCD-2345").startswith("That code gives nothing")


def test_two_technicians_may_have_the_same_message_ids_in_one_job(office: Office) -> None:
    """Both channels count from 1; an edit replaces its own author's message."""
    office.hear("new job rtu 3", message_id="1")
    code = code_in(office.hear("hand this over", message_id="2").text)
    office.hear("pri 11V", message_id="3")
    office.hear(f"{code}", who="t2", message_id="1")
    office.hear("sec 26V", who="t2", message_id="3")
    office.hear("pri 118V", message_id="3", edit=True)

    shown = office.says("history", who="t2")

    assert "118" in shown
    assert "26" in shown
    assert "11 V" not in shown


def test_one_job_is_forgotten_and_the_others_stay(office: Office) -> None:
    """Asked once, by its name; a no keeps it."""
    office.says("new job rtu 3, pri 118 sec 0", "new job rtu 4, pri 240 sec 24")
    asked = office.hear("forget this job")
    kept = office.says("no")
    office.says("forget this job")
    done = office.says("yes")

    assert asked.text.splitlines()[0] == "This deletes rtu 4 for good"
    assert asked.buttons == ("yes", "no")
    assert kept == "Kept. Nothing was deleted"
    assert done == "Deleted: rtu 4"
    with Session(office.engine) as session:
        assert list(session.scalars(select(Job.name))) == ["rtu 3"]
        assert list(session.scalars(select(Unit.name))) == ["rtu 3"]


def test_a_job_is_forgotten_by_its_name(office: Office) -> None:
    """The one in hand stays."""
    office.says("new job rtu 3, pri 118 sec 0", "new job rtu 4, pri 240 sec 24", "forget rtu 3", "yes")

    with Session(office.engine) as session:
        assert list(session.scalars(select(Job.name))) == ["rtu 4"]
    assert "240" in office.says("history")


def test_a_job_that_another_works_on_stays_with_them_when_it_is_forgotten(office: Office) -> None:
    """Without the name of who left it."""
    office.says("new job rtu 3", "pri 118V sec 0V")
    code = code_in(office.says("hand this over"))
    office.says(f"{code}", who="t2")
    office.says("forget this job", "yes")

    shown = office.says("history", who="t2")

    assert "118" in shown
    assert "Nothing" in office.says("history")
    with Session(office.engine) as session:
        assert "t1" not in set(session.scalars(select(LoggedMessage.written_by).where(LoggedMessage.text.contains("118"))))


def test_forgetting_a_job_names_the_backups_that_have_it(office: Office, tmp_path) -> None:
    """As forgetting everything does."""
    office.says("new job rtu 3", "pri 118V")
    write_backup(office.engine, tmp_path / "friday.sqlite", datetime(2026, 3, 3, tzinfo=UTC), lambda done, whole: None)

    said = office.says("forget this job", "yes")

    assert f"- {tmp_path / 'friday.sqlite'}, 2026-03-03" in said.splitlines()


def test_the_readings_are_started_over_and_brought_back(office: Office) -> None:
    """Asked once; a no keeps them; undo brings them back, also after a restart. What was told of the unit stays."""
    office.says("new job rtu 3", "120 building, pri 118V sec 0V")
    asked = office.hear("clear the readings")
    kept = office.says("no", "history")
    office.says("clear the readings", "yes")
    office.forgets_what_it_folded()
    cleared = office.says("history")
    office.says("undo")
    back = office.says("history")

    assert asked.text.splitlines()[0] == "This starts the readings of this job over: 2 no longer count"
    assert asked.buttons == ("yes", "no")
    assert asked.record["readings"] == []
    assert "118" in kept
    assert "118" not in cleared
    assert "supply 120 V" in cleared
    assert "118" in back
