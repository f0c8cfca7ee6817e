"""A copy of the whole store in one SQLite file, and back, while the program runs."""

import sqlite3
from collections.abc import Callable
from datetime import datetime
from pathlib import Path

from sqlalchemy import URL, Connection, Engine, Table, func, insert, select, text
from sqlalchemy.orm import Session

from bot.store.engine import engine_for
from bot.store.schema import open_store, upgrade
from bot.store.tables import BackupMade, Base, Job

Progress = Callable[[int, int], None]
"""Told how much is done, and of how much."""

PAGES = 500
"""Copied between two words of progress. [pages of the file]"""
ROWS = 500
"""Copied at a time from a server. [rows]"""


class BackupError(Exception):
    """A file that can't be put back."""


def write_backup(engine: Engine, file: Path, now: datetime, progress: Progress) -> None:
    """
    Copy the store, as it is when the copy ends, into a file that did not exist or may be replaced.

    A copy that fails half way leaves nothing behind, and the store remembers only one that is whole.
    """
    part = file.with_name(f"{file.name}.part")
    part.unlink(missing_ok=True)
    try:
        if engine.dialect.name == "sqlite":
            with engine.connect().execution_options(reading=True) as connection:
                # One look holds the state for the whole copy: else each write by another would start it again.
                connection.execute(text("SELECT count(*) FROM sqlite_master"))
                _copy_pages(_driver(connection), part, progress)
        else:
            _copy_rows_to_file(engine, part, progress)
        part.replace(file)
    finally:
        part.unlink(missing_ok=True)
    with Session(engine) as session, session.begin():
        session.add(BackupMade(file=str(file.absolute()), made_at=now))


def _driver(connection: Connection) -> sqlite3.Connection:
    driver = connection.connection.driver_connection
    assert isinstance(driver, sqlite3.Connection)
    return driver


def _copy_pages(source: sqlite3.Connection, file: Path, progress: Progress) -> None:
    target = sqlite3.connect(file)
    try:
        source.backup(target, pages=PAGES, progress=lambda _, left, whole: progress(whole - left, whole), sleep=0)
    finally:
        target.close()


def _copy_rows_to_file(engine: Engine, file: Path, progress: Progress) -> None:
    target = open_store(URL.create("sqlite", database=str(file)))
    source = engine.connect().execution_options(isolation_level="REPEATABLE READ")
    try:
        with source, source.begin(), target.begin() as into:
            _copy_rows(source, into, progress)
    finally:
        target.dispose()


def _copy_rows(source: Connection, target: Connection, progress: Progress) -> None:
    """Every row of every table, those first that others point to."""
    tables = Base.metadata.sorted_tables
    whole = sum(source.execute(select(func.count()).select_from(table)).scalar_one() for table in tables)
    done = 0
    for table in tables:
        rows = source.execution_options(yield_per=ROWS).execute(select(table))
        for some in rows.mappings().partitions(ROWS):
            target.execute(insert(table), [dict(row) for row in some])
            done += len(some)
            progress(done, whole)


def read_backup(file: Path) -> None:
    """
    Look whether a file is a whole backup.

    Raises:
        BackupError: It is not.
    """
    try:
        source = sqlite3.connect(f"file:{file.absolute()}?mode=ro", uri=True)
    except sqlite3.Error as error:
        raise BackupError(str(error)) from None
    try:
        if source.execute("PRAGMA integrity_check").fetchone() != ("ok",):
            raise BackupError("damaged")
        source.execute("SELECT version_num FROM alembic_version").fetchone()
    except sqlite3.Error as error:
        raise BackupError(str(error)) from None
    finally:
        source.close()


def holds_jobs(engine: Engine) -> bool:
    """Whether there is anything that a restore would replace."""
    with Session(engine) as session:
        return session.scalar(select(Job.id).limit(1)) is not None


def put_back(engine: Engine, file: Path, progress: Progress) -> None:
    """
    Replace all that the store holds by what a backup holds, at once: others see the old or the new.

    Raises:
        BackupError: The file is no whole backup.
    """
    read_backup(file)
    if engine.dialect.name == "sqlite":
        source = sqlite3.connect(f"file:{file.absolute()}?mode=ro", uri=True)
        try:
            with engine.connect().execution_options(reading=True) as connection:
                source.backup(_driver(connection), progress=lambda _, left, whole: progress(whole - left, whole))
        finally:
            source.close()
        upgrade(engine)
        return
    _put_rows_back(engine, file, progress)


def _put_rows_back(engine: Engine, file: Path, progress: Progress) -> None:
    source_engine = engine_for(URL.create("sqlite", database=str(file)))
    try:
        with source_engine.connect().execution_options(reading=True) as source, engine.begin() as target:
            # A row that somebody writes while the old ones go would stand in the way of one that comes.
            target.execute(
                text(f"LOCK TABLE {', '.join(t.name for t in Base.metadata.sorted_tables)} IN ACCESS EXCLUSIVE MODE")
            )
            for table in reversed(Base.metadata.sorted_tables):
                target.execute(table.delete())
            _copy_rows(source, target, progress)
            for table in Base.metadata.sorted_tables:
                _count_on(target, table)
    finally:
        source_engine.dispose()


def _count_on(target: Connection, table: Table) -> None:
    """Let a server's counter go on after the numbers that were put back."""
    for column in table.primary_key:
        if target.execute(
            text("SELECT pg_get_serial_sequence(:table, :column)"), {"table": table.name, "column": column.name}
        ).scalar():
            top = target.execute(select(func.max(column))).scalar()
            target.execute(
                text("SELECT setval(pg_get_serial_sequence(:table, :column), :top, :used)"),
                {"table": table.name, "column": column.name, "top": top or 1, "used": top is not None},
            )
