"""The schema is brought up by code, and can't drift from the models."""

import sqlite3
import subprocess
import sys
from datetime import UTC, datetime

import pytest
from alembic import command
from alembic.config import Config
from alembic.script import ScriptDirectory
from sqlalchemy import URL, Engine, MetaData, select, text
from sqlalchemy.orm import Session

from bot.store import schema
from bot.store.engine import engine_for
from bot.store.tables import Base, Job, LoggedMessage, LoggedReply, Technician

NOW = datetime(2026, 3, 2, 8, 14, tzinfo=UTC)


def config() -> Config:
    """Alembic's view of our migrations."""
    made = Config()
    made.set_main_option("script_location", "bot.store:migrations")
    made.set_main_option("path_separator", "os")
    return made


def test_models_and_migrations_agree(store: Engine) -> None:
    """Migrations build just the tables that the models describe."""
    settings = config()
    with store.begin() as connection:
        settings.attributes["connection"] = connection

        command.check(settings)


def test_file_names_tell_the_states_of_the_schema() -> None:
    """The cheap look at file names and alembic's own reading of the migrations give the same line of states."""
    line = [script.revision for script in ScriptDirectory.from_config(config()).walk_revisions()]

    assert list(schema.known()) == line[::-1]


WRITTEN_AT_ANY_STATE = (
    (
        "INSERT INTO technician (id, channel, address, name, joined_at)"
        " VALUES (1, 'local', 't1', 'first', '2026-03-02 08:14:00+00:00')"
    ),
    (
        "INSERT INTO job (id, owner_id, name, opened_at, last_at, turns)"
        " VALUES (7, 1, 'rtu 3', '2026-03-02 08:14:00+00:00', '2026-03-02 08:14:00+00:00', 1)"
    ),
    (
        "INSERT INTO logged_message (id, job_id, technician_id, written_by, number, message_id, revision, text, sent_at)"
        " VALUES (9, 7, 1, 'first', 1, 'm1', 0, 'pri 118V', '2026-03-02 08:14:00+00:00')"
    ),
    "INSERT INTO logged_reply (logged_message_id, record, language) VALUES (9, '{\"reply\": \"noted\"}', 'en')",
)


def empty(engine: Engine) -> None:
    """Take every table away."""
    with engine.begin() as connection:
        if connection.dialect.name == "postgresql":
            connection.execute(text("DROP SCHEMA public CASCADE"))
            connection.execute(text("CREATE SCHEMA public"))
            return
        for table in reversed(Base.metadata.sorted_tables):
            connection.execute(text(f"DROP TABLE IF EXISTS {table.name}"))
        connection.execute(text("DROP TABLE IF EXISTS alembic_version"))


@pytest.mark.parametrize("state", schema.known())
def test_every_released_state_comes_up_with_its_data(store_url: URL, state: str) -> None:
    """A technician, a job, a message and its reply written at any state are there, whole, after the last migration."""
    engine = engine_for(store_url)
    empty(engine)
    schema.upgrade(engine, state)
    with engine.begin() as connection:
        for statement in WRITTEN_AT_ANY_STATE:
            connection.exec_driver_sql(statement)
    engine.dispose()

    engine = schema.open_store(store_url)
    with Session(engine) as session:
        rows = session.execute(
            select(Technician.name, Job.name, LoggedMessage.text, LoggedReply.record)
            .join(Job, Job.owner_id == Technician.id)
            .join(LoggedMessage, LoggedMessage.job_id == Job.id)
            .join(LoggedReply, LoggedReply.logged_message_id == LoggedMessage.id)
        ).all()
    engine.dispose()

    assert [tuple(row) for row in rows] == [("first", "rtu 3", "pri 118V", {"reply": "noted"})]


def test_copying_a_table_keeps_the_rows_that_point_to_it(sqlite_url: URL) -> None:
    """SQLite changes a table by copying it; dropping the old one must not take the jobs along."""
    engine = schema.open_store(sqlite_url)
    with Session(engine) as session:
        owner = Technician(channel="local", address="t1", name="first", joined_at=NOW)
        session.add(owner)
        session.flush()
        session.add(Job(owner_id=owner.id, opened_at=NOW, last_at=NOW))
        session.commit()
    with engine.connect() as connection, schema._keys_unchecked(connection), connection.begin():
        connection.execute(text("CREATE TABLE copy AS SELECT * FROM technician"))
        connection.execute(text("DROP TABLE technician"))
        connection.execute(text("ALTER TABLE copy RENAME TO technician"))

    with engine.connect() as connection:
        assert connection.execute(text("SELECT count(*) FROM job")).scalar_one() == 1
        assert connection.execute(text("PRAGMA foreign_keys")).scalar_one() == 1
    engine.dispose()


def test_a_store_of_a_later_release_is_refused(store: Engine, store_url: URL) -> None:
    """Nothing is written to a schema that this release does not know."""
    with store.begin() as connection:
        connection.execute(text("UPDATE alembic_version SET version_num = '9999'"))

    with pytest.raises(schema.NewerStoreError, match="9999"):
        schema.open_store(store_url)


def test_a_store_that_is_current_is_opened_without_alembic(sqlite_url: URL) -> None:
    """Once migrated, starting costs no import of the migration library."""
    schema.open_store(sqlite_url).dispose()
    code = (
        f"import sys; from bot.store.schema import open_store; open_store({str(sqlite_url)!r}); print('alembic' in sys.modules)"
    )

    shown = subprocess.run([sys.executable, "-c", code], capture_output=True, text=True, check=True)

    assert shown.stdout.strip() == "False"


def test_several_programs_may_start_on_an_empty_store(postgres_url: URL) -> None:
    """They take turns at the migrations."""
    engine = engine_for(postgres_url)
    with engine.begin() as connection:
        connection.execute(text("DROP SCHEMA public CASCADE"))
        connection.execute(text("CREATE SCHEMA public"))
    engine.dispose()
    shown = postgres_url.render_as_string(hide_password=False)
    code = f"from bot.store.schema import open_store; open_store({shown!r})"

    started = [subprocess.Popen([sys.executable, "-c", code], stderr=subprocess.PIPE, text=True) for _ in range(3)]

    assert [(program.communicate()[1], program.returncode) for program in started] == [("", 0)] * 3


def test_sqlite_is_set_for_safety(sqlite_url: URL) -> None:
    """Write-ahead log, keys checked, every commit on the disk."""
    engine = schema.open_store(sqlite_url)
    with engine.connect() as connection:
        found = [
            connection.execute(text(f"PRAGMA {name}")).scalar_one() for name in ("journal_mode", "foreign_keys", "synchronous")
        ]
    engine.dispose()

    assert found == ["wal", 1, 2]


def test_a_time_comes_back_in_utc(session: Session) -> None:
    """A moment keeps its zone on both databases."""
    session.add(Technician(channel="local", address="t1", name="first", joined_at=NOW))
    session.commit()
    session.expire_all()

    assert session.scalars(select(Technician.joined_at)).one() == NOW


def test_a_time_without_a_zone_is_refused(session: Session) -> None:
    """Nobody has to guess where a clock stood."""
    session.add(Technician(channel="local", address="t1", name="first", joined_at=NOW.replace(tzinfo=None)))

    with pytest.raises(Exception, match="without its zone"):
        session.flush()


def test_what_is_no_database_is_said_to_be_none(tmp_path) -> None:
    """A text file is not overwritten."""
    path = tmp_path / "notes.txt"
    path.write_text("call the office back about rtu 3\n" * 100)

    with pytest.raises(Exception, match="not a database"):
        schema.open_store(f"sqlite:///{path}")
    with pytest.raises(sqlite3.DatabaseError), sqlite3.connect(path) as connection:
        connection.execute("SELECT * FROM sqlite_master")


JSON = {"x": [1, "Ω"]}
VALUES = {int: 7, str: "x", float: 1.5, bool: True, bytes: b"\x00\xff", dict: JSON, object: JSON, datetime: NOW}
"""What a column of each kind holds in the next test."""


def written(connection, table) -> dict[str, object]:
    """A row in a table as it was at some state, every column filled; keys point to the rows before it."""
    row = {column.name: VALUES[getattr(column.type, "python_type", str)] for column in table.columns}
    connection.execute(table.insert().values(row))
    return row


@pytest.mark.parametrize("state", schema.known())
def test_every_table_of_every_released_state_keeps_its_rows(store_url: URL, state: str) -> None:
    """Whatever stood in a column that there still is stands in it after the last migration."""
    engine = engine_for(store_url)
    empty(engine)
    schema.upgrade(engine, state)
    then = MetaData()
    then.reflect(engine)
    with engine.begin() as connection:
        rows = {table.name: written(connection, table) for table in then.sorted_tables if table.name != "alembic_version"}
    engine.dispose()

    engine = schema.open_store(store_url)
    now = MetaData()
    now.reflect(engine)
    with engine.connect() as connection:
        kept = {name: dict(connection.execute(now.tables[name].select()).mappings().one()) for name in rows}
    engine.dispose()

    assert len(rows) >= 8
    for name, row in rows.items():
        still = {column: _zoned(value) for column, value in kept[name].items() if column in row}
        assert still == {column: value for column, value in row.items() if column in still}


def _zoned(value: object) -> object:
    """SQLite keeps no zones."""
    return value.replace(tzinfo=UTC) if isinstance(value, datetime) and value.tzinfo is None else value
