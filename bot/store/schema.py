"""The schema: asked for its state, and brought up by code where it is behind."""

import sqlite3
from collections.abc import Iterator
from contextlib import contextmanager
from functools import cache
from pathlib import Path

from sqlalchemy import URL, Connection, Engine, make_url, text

from bot.store.engine import engine_for, in_memory

VERSIONS = Path(__file__).parent / "migrations" / "versions"
LOCK_KEY = 7_004_021
"""Any number of our own: processes that start together migrate one after the other."""


class NewerStoreError(Exception):
    """The database was written by a later release than this."""


@cache
def known() -> tuple[str, ...]:
    """Every state of the schema, oldest first, read off the names of the migrations."""
    return tuple(sorted(path.stem.split("_", 1)[0] for path in VERSIONS.glob("[0-9]*.py")))


def open_store(url: str | URL) -> Engine:
    """
    The engine for a database whose schema is that of this release.

    Alembic is imported only where the schema is behind: it costs more than a reply.

    Raises:
        NewerStoreError: The database comes from a later release.
        sqlalchemy.exc.DBAPIError: The database can't be reached, read or written.
    """
    engine = engine_for(url)
    if in_memory(make_url(url)):
        from bot.store.tables import Base  # noqa: PLC0415

        Base.metadata.create_all(engine)
        return engine
    try:
        _bring_up(engine)
    except BaseException:
        engine.dispose()
        raise
    return engine


def _bring_up(engine: Engine) -> None:
    with engine.connect().execution_options(reading=True) as connection:
        state = schema_state(connection)
    if state is not None and state not in known():
        raise NewerStoreError(state)
    if state != known()[-1]:
        upgrade(engine)


def schema_state(connection: Connection) -> str | None:
    """The state of the schema behind a connection; None where there is none yet."""
    if connection.dialect.name == "sqlite":
        asks = "SELECT 1 FROM sqlite_master WHERE name = 'alembic_version'"
    else:
        asks = "SELECT 1 WHERE to_regclass('alembic_version') IS NOT NULL"
    if connection.execute(text(asks)).first() is None:
        return None
    row = connection.execute(text("SELECT version_num FROM alembic_version")).first()
    return None if row is None else str(row[0])


def upgrade(engine: Engine, revision: str = "head") -> None:
    """Run every migration that the database still lacks, in one transaction: all or nothing."""
    from alembic import command  # noqa: PLC0415  (costs more than a reply, needed once)
    from alembic.config import Config  # noqa: PLC0415

    config = Config()
    config.set_main_option("script_location", "bot.store:migrations")
    config.set_main_option("path_separator", "os")
    with engine.connect() as connection, _keys_unchecked(connection), connection.begin():
        if connection.dialect.name == "postgresql":
            connection.execute(text("SELECT pg_advisory_xact_lock(:key)"), {"key": LOCK_KEY})
        config.attributes["connection"] = connection
        command.upgrade(config, revision)


@contextmanager
def _keys_unchecked(connection: Connection) -> Iterator[None]:
    """
    SQLite settings that can't be made inside a transaction.

    To change a table SQLite needs a copy of it, and to drop the old one would delete all rows that point to it.
    Readers don't wait for the writer of a write-ahead log; that setting stays in the file.
    """
    if connection.dialect.name != "sqlite":
        yield
        return
    driver = connection.connection.driver_connection
    assert isinstance(driver, sqlite3.Connection)
    driver.execute("PRAGMA journal_mode=WAL")
    driver.execute("PRAGMA foreign_keys=OFF")
    try:
        yield
    finally:
        driver.execute("PRAGMA foreign_keys=ON")
