"""A backup is put back while the program goes on."""

from datetime import timedelta
from pathlib import Path
from threading import Event, Thread

from desk_people import MORNING, Office
from sqlalchemy import URL, select
from sqlalchemy.exc import SQLAlchemyError
from sqlalchemy.orm import Session

from bot.desk.verify import verify
from bot.store.backup import put_back, write_backup
from bot.store.schema import open_store
from bot.store.tables import Job, LoggedMessage


def silent(done: int, whole: int) -> None:
    """Nobody looks."""


def test_a_program_that_runs_goes_on_from_what_was_put_back(store_url: URL, office: Office, tmp_path: Path) -> None:
    """What it remembers of a job is not what it was: the reading taken after the backup is gone."""
    office.says("new job rtu 3", "pri 118V")
    write_backup(office.engine, tmp_path / "copy.sqlite", MORNING, silent)
    office.says("sec 0V", "pri ohms open")
    other = open_store(store_url)
    put_back(other, tmp_path / "copy.sqlite", silent)
    other.dispose()

    shown = office.says("history")
    taken = office.hear("sec 26.4V")

    assert "118" in shown
    assert "open" not in shown
    assert taken.record["verdict"]["finding"] != "primary_open"
    assert [str(said) for checked in verify(office.engine) for said in checked.wrong] == []


def test_a_backup_is_put_back_under_load(store_url: URL, office: Office, tmp_path: Path) -> None:
    """Two programs write all the time: each message is answered or fails whole, and what is left is sound."""
    office.says("new job rtu 3", "pri 118V")
    write_backup(office.engine, tmp_path / "copy.sqlite", MORNING, silent)
    stop, answered, failed = Event(), {"t1": 0, "t2": 0}, list[Exception]()

    def write(who: str) -> None:
        program = Office(open_store(store_url), now=MORNING + timedelta(hours=1))
        number = 0
        while not stop.is_set():
            number += 1
            try:
                program.hear(f"pri {100 + number % 30}V", who, message_id=f"{number}")
                answered[who] += 1
            except SQLAlchemyError as error:  # told to the technician, who sends it again
                failed.append(error)
        program.engine.dispose()

    threads = [Thread(target=write, args=(who,)) for who in answered]
    for thread in threads:
        thread.start()
    while min(answered.values()) < 3 and not len(failed) > 20:
        stop.wait(0.01)
    before = dict(answered)
    other = open_store(store_url)
    for _ in range(3):
        put_back(other, tmp_path / "copy.sqlite", silent)
    while any(answered[who] < before[who] + 3 for who in answered) and not len(failed) > 20:
        stop.wait(0.01)
    stop.set()
    for thread in threads:
        thread.join()
    found = [str(said) for checked in verify(other) for said in checked.wrong]
    with Session(other) as session:
        first = session.scalars(select(Job.name).order_by(Job.id)).first()
        texts = list(session.scalars(select(LoggedMessage.text).order_by(LoggedMessage.id)))
    other.dispose()

    assert found == []
    assert first == "rtu 3"
    assert texts[:2] == ["new job rtu 3", "pri 118V"]
    assert all(answered[who] > before[who] for who in answered)
