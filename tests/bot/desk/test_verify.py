"""Each kind of corruption is made, and found; a sound store is found sound."""

from datetime import timedelta

import pytest
from desk_people import Office
from sqlalchemy import text
from sqlalchemy.orm import Session

from bot.desk.verify import verify
from bot.store.attachments import File, attach
from bot.store.engine import engine_for
from bot.store.hand_over import code_in
from bot.store.schema import open_store
from bot.store.tables import Job, Technician


@pytest.fixture
def busy(office: Office) -> Office:
    """A store in which everything happened: jobs closed, proved, reopened, shared, copied, edited, undone, with a photo."""
    office.hear("new job rtu 3, 120 building, on the 120 tap", message_id="a")
    office.hear("pri 11V sec 0V", message_id="b")
    office.hear("pri 118V sec 0V", message_id="b", edit=True)
    office.says("pri ohms open", "R-C ohms 21", "sec 3 V", "undo", "done, replaced, 50 va, 208 tap", "sec 26.4 V unloaded")
    office.now += timedelta(days=3)
    office.says("back to rtu 3", "pri 118 sec 26.4 R-C 0", "fuse open", "new job rtu 4 pri 240 sec 24")
    shared = code_in(office.says("hand this over"))
    copy = code_in(office.says("hand over a copy"))
    office.says(f"{shared}", "R-C 24", f"take {copy}", "undo", who="t2")
    office.says("new job rtu 5, pri 118 sec 0", "clear the readings", "yes", "forget rtu 5", "yes", "export my data")
    with Session(office.engine) as session:
        who, job = session.get_one(Technician, 1), session.get_one(Job, 1)
        attach(session, who, job, File(kind="photo", media_type="image/png", body=b"\x89PNG and more"), office.now)
        session.commit()
    return office


def wrong(office: Office) -> list[str]:
    """What is found."""
    return [str(said) for checked in verify(office.engine) for said in checked.wrong]


def test_a_store_in_which_all_went_well_is_sound(busy: Office) -> None:
    """Nothing is found in what the desk did itself."""
    assert wrong(busy) == []


CORRUPTIONS = {
    "a message is missing": ("DELETE FROM logged_message WHERE job_id = 1 AND number = 2", "the log has gaps"),
    "the last message is missing": (
        "DELETE FROM logged_message WHERE job_id = 1 AND number = (SELECT turns FROM job WHERE id = 1)",
        "more messages",
    ),
    "a row counts wrong": ("UPDATE job SET turns = turns + 1 WHERE id = 1", "the log has gaps"),
    "a reply is missing": (
        "DELETE FROM logged_reply WHERE logged_message_id IN (SELECT id FROM logged_message WHERE job_id = 1 AND number = 2)",
        "message 2: reply and log disagree",
    ),
    "a reading was changed": (
        "UPDATE logged_reply SET record = CAST(replace(CAST(record AS TEXT), '26.4', '27.4') AS {json})",
        "reply and log disagree",
    ),
    "a row has another supply": ("UPDATE job SET supply_volts = 480 WHERE id = 1", "its row and its log disagree"),
    "a row has another tap": ("UPDATE job SET tap_volts = 277 WHERE id = 1", "its row and its log disagree"),
    "a row has another rating": ("UPDATE job SET rated_va = 75 WHERE id = 1", "its row and its log disagree"),
    "a row has another finding": ("UPDATE job SET finding = 'overload' WHERE id = 1", "its row and its log disagree"),
    "a row condemns what is good": ("UPDATE job SET transformer = 'bad' WHERE id = 1", "its row and its log disagree"),
    "a row is older than its log": (
        "UPDATE job SET last_at = '2020-01-01 00:00:00+00:00' WHERE id = 1",
        "its row and its log disagree",
    ),
    "a photo was changed": ("UPDATE attachment SET media_type = 'x', body = {bytes}", "a photo is not as it came"),
    "a stranger works on a job": ("UPDATE working_on SET job_id = 1 WHERE technician_id = 2", "somebody is on it"),
    "a stranger's words are in a job": (
        "UPDATE logged_message SET technician_id = 2 WHERE job_id = 1 AND number = 3",
        "somebody is on it",
    ),
    "a unit is another's": ("UPDATE unit SET owner_id = 2 WHERE id = (SELECT unit_id FROM job WHERE id = 1)", "another's"),
}


@pytest.mark.parametrize("kind", CORRUPTIONS)
def test_each_kind_of_corruption_is_found(busy: Office, kind: str) -> None:
    """In one line that names the job."""
    statement, said = CORRUPTIONS[kind]
    is_sqlite = busy.engine.dialect.name == "sqlite"
    with busy.engine.begin() as connection:
        words = {"json": "TEXT" if is_sqlite else "JSON", "bytes": "x'00'" if is_sqlite else r"'\x00'"}
        changed = connection.execute(text(statement.format(**words)))

    assert changed.rowcount >= 1
    assert any(said in line for line in wrong(busy)), wrong(busy)


def test_a_row_that_points_to_nothing_is_found(sqlite_url) -> None:
    """A server minds its keys itself; a file can be changed behind them."""
    office = Office(open_store(sqlite_url))
    office.says("new job rtu 3", "pri 118V")
    with office.engine.connect() as connection:
        connection.exec_driver_sql("COMMIT")
        connection.exec_driver_sql("PRAGMA foreign_keys=OFF")
        connection.exec_driver_sql("DELETE FROM technician")

    found = wrong(office)
    office.engine.dispose()

    assert any("points to nothing in technician" in line for line in found)


def test_a_damaged_page_is_found(sqlite_url) -> None:
    """Bytes that a disk lost."""
    office = Office(open_store(sqlite_url))
    for number in range(30):
        office.hear("help", message_id=str(number))
    office.engine.dispose()
    path = sqlite_url.database
    engine = engine_for(sqlite_url)
    with engine.connect() as connection:
        page = connection.exec_driver_sql(
            "SELECT rootpage FROM sqlite_master WHERE name = 'ix_logged_message_author_id'"
        ).scalar_one()
        size = connection.exec_driver_sql("PRAGMA page_size").scalar_one()
        connection.exec_driver_sql("COMMIT")
        connection.exec_driver_sql("PRAGMA wal_checkpoint(TRUNCATE)")
    engine.dispose()
    with open(path, "r+b") as file:  # noqa: PTH123  (bytes in the middle)
        file.seek((page - 1) * size)
        file.write(b"\x55" * size)
    office.engine = engine_for(sqlite_url)

    found = wrong(office)
    office.engine.dispose()

    assert any("The file is damaged" in line for line in found)
