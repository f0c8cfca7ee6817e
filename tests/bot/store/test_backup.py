"""A backup taken while others write is whole, and goes back."""

import sqlite3
import subprocess
import sys
import threading
from pathlib import Path

import pytest
from sqlalchemy import Engine, select
from sqlalchemy.orm import Session
from store_people import LATER, NOW, a_job, someone, wrote

from bot.store.attachments import File, attach
from bot.store.backup import BackupError, holds_jobs, put_back, write_backup
from bot.store.log import read
from bot.store.schema import open_store
from bot.store.tables import BackupMade, Job, LoggedMessage


def silent(done: int, whole: int) -> None:
    """Nobody looks."""


def texts(engine: Engine) -> list[str]:
    """All texts of a store, in order."""
    with Session(engine) as session:
        return list(session.scalars(select(LoggedMessage.text).order_by(LoggedMessage.id)))


@pytest.fixture
def filled(store: Engine) -> Engine:
    """A store with a job, two messages and a photo."""
    with Session(store) as session:
        who = someone(session)
        job = a_job(session, who, "rtu 3")
        wrote(session, who, job, "pri 118V", "m1")
        wrote(session, who, job, "sec 0V Ω", "m2")
        attach(session, who, job, File(kind="photo", media_type="image/png", body=b"\x00\xff"), NOW)
        session.commit()
    return store


def test_a_backup_goes_back_whole(filled: Engine, tmp_path: Path) -> None:
    """What came after the backup is gone, all of before is there, and the store takes new messages."""
    file = tmp_path / "copy.sqlite"
    write_backup(filled, file, NOW, silent)
    with Session(filled) as session:
        who = someone(session)
        wrote(session, who, session.scalars(select(Job)).one(), "later", "m3")
        session.commit()

    put_back(filled, file, silent)

    assert texts(filled) == ["pri 118V", "sec 0V Ω"]
    with Session(filled) as session:
        job = session.scalars(select(Job)).one()
        wrote(session, someone(session), job, "after", "m4")
        a_job(session, someone(session, "t9"))
        session.commit()
        assert [message.text for message, _ in read(session, job)] == ["pri 118V", "sec 0V Ω", "after"]


def test_a_backup_goes_to_another_kind_of_database(filled: Engine, tmp_path: Path) -> None:
    """From a server to a file of one's own: the crew can change over."""
    file = tmp_path / "copy.sqlite"
    write_backup(filled, file, NOW, silent)
    other = open_store(f"sqlite:///{tmp_path / 'other.sqlite'}")

    put_back(other, file, silent)

    assert texts(other) == texts(filled)
    other.dispose()


def test_the_store_remembers_its_backups(filled: Engine, tmp_path: Path) -> None:
    """Whoever asks to be forgotten can be told where copies lie."""
    write_backup(filled, tmp_path / "copy.sqlite", NOW, silent)

    with Session(filled) as session:
        assert [(b.file, b.made_at) for b in session.scalars(select(BackupMade))] == [(str(tmp_path / "copy.sqlite"), NOW)]


def test_a_backup_that_fails_leaves_nothing(filled: Engine, tmp_path: Path) -> None:
    """No half file that somebody could trust, and no note of it."""
    with pytest.raises((OSError, sqlite3.Error, Exception), match=r"unable to open|No such file"):
        write_backup(filled, tmp_path / "nowhere" / "copy.sqlite", NOW, silent)

    with Session(filled) as session:
        assert session.scalars(select(BackupMade)).all() == []
    assert [p.name for p in tmp_path.iterdir() if "copy" in p.name] == []


def test_something_else_is_not_put_back(filled: Engine, tmp_path: Path) -> None:
    """A text, an empty file and a cut backup are refused, and the store stays."""
    whole = tmp_path / "copy.sqlite"
    write_backup(filled, whole, NOW, silent)
    cut, notes, empty = tmp_path / "cut.sqlite", tmp_path / "notes.txt", tmp_path / "empty"
    data = bytearray(whole.read_bytes())
    data[len(data) // 2 :] = b"\x55" * (len(data) - len(data) // 2)
    cut.write_bytes(data)
    notes.write_text("rtu 3 needs a filter\n" * 200)
    empty.touch()

    for file in (cut, notes, empty):
        with pytest.raises(BackupError):
            put_back(filled, file, silent)

    assert texts(filled) == ["pri 118V", "sec 0V Ω"]


def test_an_empty_store_holds_no_jobs(store: Engine) -> None:
    """A restore needs no leave where there is nothing to lose."""
    assert not holds_jobs(store)


WRITER = """
import sys
from datetime import UTC, datetime
from sqlalchemy.orm import Session
from bot.store import jobs, log
from bot.store.schema import open_store
from bot.store.technicians import welcome

engine = open_store(sys.argv[1])
now = datetime(2026, 3, 2, 8, 14, tzinfo=UTC)
for number in range(100000):
    with Session(engine) as session:
        who = welcome(session, "local", sys.argv[2], sys.argv[2], now)
        job = jobs.current_job(session, who) or jobs.open_job(session, who, now)
        sent = log.Sent(message_id=str(number), revision=0, text=f"{sys.argv[2]} {number} " + "x" * 2000, sent_at=now)
        log.append(session, who, job, sent, log.Answered(record={"reply": "noted"}))
        session.commit()
    print(number, flush=True)  # only what is on the disk is told
"""


def test_a_backup_under_load_has_every_committed_message(store_url, store: Engine, tmp_path: Path) -> None:
    """Two programs write all the time; whatever was committed before the backup began is in it, without gaps."""
    shown = store_url.render_as_string(hide_password=False)
    writers = [
        subprocess.Popen([sys.executable, "-c", WRITER, shown, name], stdout=subprocess.PIPE, text=True) for name in ("a", "b")
    ]
    told = {"a": -1, "b": -1}

    def listen(name: str, writer: subprocess.Popen) -> None:
        for line in writer.stdout:
            told[name] = int(line)

    ears = [threading.Thread(target=listen, args=pair) for pair in zip(told, writers, strict=True)]
    for ear in ears:
        ear.start()
    while min(told.values()) < 40:
        threading.Event().wait(0.01)
    before = dict(told)
    write_backup(store, tmp_path / "copy.sqlite", LATER, silent)
    after = dict(told)
    for writer in writers:
        writer.kill()
    for writer, ear in zip(writers, ears, strict=True):
        writer.wait()
        ear.join()
        writer.stdout.close()
    copy = open_store(f"sqlite:///{tmp_path / 'fresh.sqlite'}")
    put_back(copy, tmp_path / "copy.sqlite", silent)
    kept = {name: sorted(int(t.split()[1]) for t in texts(copy) if t.startswith(f"{name} ")) for name in told}
    copy.dispose()

    for name, numbers in kept.items():
        assert numbers == list(range(len(numbers)))
        assert before[name] < len(numbers) <= after[name] + 2
