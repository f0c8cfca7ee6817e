"""Each message goes one way: found, answered, logged."""

from datetime import timedelta

import pytest
from desk_people import MORNING, Office
from sqlalchemy import Engine, func, select
from sqlalchemy.exc import OperationalError
from sqlalchemy.orm import Session

from bot.desk import Incoming, Memory, take
from bot.store.schema import open_store
from bot.store.tables import Job, LoggedMessage, Technician


def rows(office: Office, table: type) -> int:
    """How many rows a table has."""
    with Session(office.engine) as session:
        return session.scalar(select(func.count()).select_from(table)) or 0


def test_the_first_message_opens_a_job_by_itself(office: Office) -> None:
    """Nobody has to be registered or to open anything."""
    taken = office.hear("pri 118V sec 0V")

    assert {r["measure"]: r["value"] for r in taken.record["readings"]} == {"primary_volts": 118.0, "secondary_volts": 0.0}
    assert [rows(office, table) for table in (Technician, Job, LoggedMessage)] == [1, 1, 1]


def test_the_verdict_speaks_of_the_whole_job(office: Office) -> None:
    """Readings of several messages come together."""
    apart = [office.hear(text) for text in ("pri 118V", "sec 0V", "pri-ohm open")][-1]

    assert apart.record["verdict"]["finding"] == "primary_open"
    assert apart.record["verdict"]["transformer"] == "bad"


def test_a_restart_changes_nothing(office: Office) -> None:
    """What was folded in memory is folded again from the log."""
    office.says("new job rtu 3", "pri 118V", "sec 0V")
    office.forgets_what_it_folded()

    taken = office.hear("pri-ohm open")

    assert taken.record["verdict"]["finding"] == "primary_open"


def test_a_message_that_comes_twice_is_answered_the_same_and_logged_once(office: Office) -> None:
    """A repeated delivery does not count twice."""
    first = office.hear("pri 118V", message_id="m1")
    again = office.hear("pri 118V", message_id="m1")

    assert dict(again.record) == dict(first.record)
    assert again.reply is None
    assert rows(office, LoggedMessage) == 1


def test_an_edit_replaces_the_reading(office: Office) -> None:
    """The reply to an edit holds the new reading, and the old one no longer counts; also after a restart."""
    office.hear("pri 11V", message_id="m1")
    office.hear("sec 0V", message_id="m2")
    edited = office.hear("pri 118V", message_id="m1", edit=True)
    office.forgets_what_it_folded()
    later = office.hear("history")

    assert [r["value"] for r in edited.record["readings"]] == [118.0]
    assert "118" in later.text
    assert "11 V" not in later.text


def test_an_edit_of_an_edit_counts_last(office: Office) -> None:
    """Two corrections of one message: the last text stands."""
    office.hear("sec 2V", message_id="m1")
    office.hear("sec 20V", message_id="m1", edit=True)
    office.hear("sec 24.4V", message_id="m1", edit=True)

    shown = office.says("history")

    assert "24.4" in shown
    assert rows(office, LoggedMessage) == 4


def test_the_same_edit_again_changes_nothing(office: Office) -> None:
    """A repeated edit gets the answer it had."""
    office.hear("pri 11V", message_id="m1")
    edited = office.hear("pri 118V", message_id="m1", edit=True)

    again = office.hear("pri 118V", message_id="m1", edit=True)

    assert dict(again.record) == dict(edited.record)
    assert rows(office, LoggedMessage) == 2


def test_an_edit_of_a_message_never_seen_is_a_message(office: Office) -> None:
    """The first text was lost on the way: the new one counts."""
    taken = office.hear("pri 118V", message_id="m7", edit=True)

    assert [r["value"] for r in taken.record["readings"]] == [118.0]


def test_an_edit_goes_to_the_job_of_its_message(office: Office) -> None:
    """Correcting yesterday's typo does not move today's job."""
    first = office.hear("new job rtu 3", message_id="m0")
    office.hear("pri 11V", message_id="m1")
    second = office.hear("new job rtu 4")

    edited = office.hear("pri 118V", message_id="m1", edit=True)

    assert edited.job_id == first.job_id != second.job_id
    assert office.hear("sec 24V").job_id == second.job_id


def test_undo_takes_the_last_reading_back(office: Office) -> None:
    """Undo is a fold: also after a restart."""
    office.says("pri 118V", "sec 0V", "undo")
    office.forgets_what_it_folded()

    shown = office.says("history")

    assert "118" in shown
    assert "sec" not in shown.lower().replace("second", "")


def test_a_program_s_jobs_are_apart(office: Office) -> None:
    """The job named in a line is that line's, whatever came between."""
    office.hear("pri 118V", job="a")
    office.hear("pri 240V", job="b")
    taken = office.hear("sec 0V", job="a")
    shown = office.hear("history", job="a")

    assert taken.job_id == shown.job_id
    assert "118" in shown.text
    assert "240" not in shown.text


def test_a_reply_whose_transaction_failed_is_not_remembered(office: Office) -> None:
    """What was rolled back does not count in the next reply."""
    office.says("pri 118V")
    with Session(office.engine) as session:
        sent = Incoming(channel="local", address="t1", name="t1", text="sec 0V", sent_at=MORNING + timedelta(hours=1))
        take(session, sent, office.memory)
        session.rollback()

    shown = office.says("history")

    assert "118" in shown
    assert "0 V" not in shown


def test_two_programs_on_one_store_agree(office: Office) -> None:
    """Each folds what the other wrote, and each edit too."""
    other = Office(office.engine, now=MORNING + timedelta(minutes=30))
    office.hear("pri 11V", message_id="m1")
    other.hear("sec 0V", message_id="m2")
    other.hear("pri 118V", message_id="m1", edit=True)

    taken = office.hear("pri-ohm open")

    assert taken.record["verdict"]["finding"] == "primary_open"
    shown = office.hear("history")
    assert "118" in shown.text
    assert "11 V" not in shown.text


def test_the_language_stays_with_the_technician(office: Office) -> None:
    """A new job goes on in Spanish where the last one was."""
    office.hear("trabajo nuevo azotea 3")
    taken = office.hear("118V 0V")

    assert taken.language == "es"


@pytest.mark.parametrize(
    "text",
    [
        "",
        " \n\t ",
        "x" * 10_000,
        "1 " * 5_000,
        "\x00\x01\x1b[31m",
        "⚡🔥",
        "מתח ראשי 118",
        "первичка 118",
        "\ud800",
        "-5 ohm",
        "pri 1e9V",
    ],
)
def test_whatever_is_sent_is_answered_and_logged(office: Office, text: str) -> None:
    """No text is too odd for a short answer."""
    taken = office.hear(text)

    assert taken.text.strip()
    assert "\x1b" not in taken.text
    assert rows(office, LoggedMessage) == 1


def test_a_locked_store_is_an_error_and_nothing_is_remembered(sqlite_url, monkeypatch) -> None:
    """While another program holds the lock nothing is answered; afterwards the message is taken as if new."""
    monkeypatch.setattr("bot.store.engine.BUSY_MS", 20)
    engine, other = open_store(sqlite_url), open_store(sqlite_url)
    office = Office(engine)
    office.hear("pri 118V")
    with other.begin(), pytest.raises(OperationalError, match="locked"):
        office.hear("sec 0V", message_id="m2")

    taken = office.hear("sec 0V", message_id="m2")
    engine.dispose()
    other.dispose()

    assert taken.reply is not None
    assert rows(office, LoggedMessage) == 2


def test_a_memory_stays_small(store: Engine) -> None:
    """Only a few jobs are kept folded."""
    office = Office(store, memory=Memory(jobs=2))
    for number in range(5):
        office.hear("pri 118V", job=str(number))

    assert len(office.memory._kept) == 2
    assert "118" in office.hear("history", job="0").text
