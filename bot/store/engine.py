"""The engine behind a URL."""

import sqlite3
from typing import Any

from sqlalchemy import URL, Connection, Engine, create_engine, event, make_url
from sqlalchemy.exc import OperationalError
from sqlalchemy.pool import StaticPool

BUSY_MS = 5_000
"""How long a writer waits for another before it gives up. [ms]"""

BARE = ("postgresql", "postgres")
"""Names without a driver: psycopg 3 is the one that is installed with us."""

PRAGMAS = (
    "PRAGMA foreign_keys=ON",
    "PRAGMA synchronous=FULL",  # a reply that was seen is on the disk, also after a power cut; but for `lazy` transactions
)


def engine_for(url: str | URL) -> Engine:
    """
    The engine for a database URL; nothing is read or written yet.

    Raises:
        sqlalchemy.exc.ArgumentError: The text is no database URL.
    """
    parsed = make_url(url)
    if parsed.drivername in BARE:
        parsed = parsed.set(drivername="postgresql+psycopg")
    if parsed.get_backend_name() != "sqlite":
        return create_engine(parsed, pool_pre_ping=True)
    alone = in_memory(parsed)
    engine = create_engine(
        parsed,
        connect_args={"timeout": BUSY_MS / 1_000, "check_same_thread": False},
        **({"poolclass": StaticPool} if alone else {}),
    )
    event.listen(engine, "connect", _sqlite_settings)
    event.listen(engine, "begin", _sqlite_begin)
    return engine


def in_memory(url: URL) -> bool:
    """Whether the database lives only as long as the program."""
    return url.get_backend_name() == "sqlite" and url.database in {None, "", ":memory:"}


def _sqlite_settings(connection: sqlite3.Connection, _: Any) -> None:
    """The driver opens transactions late and by its own rules: we open them ourselves, in `_sqlite_begin`."""
    connection.isolation_level = None
    for pragma in PRAGMAS:
        connection.execute(pragma)


def _sqlite_begin(connection: Connection) -> None:
    """
    A transaction that may write takes the lock at once.

    One that reads first and writes later would be refused where another wrote in between, without waiting its turn. A lazy one is
    safe from a kill when it is committed, and from a power cut when the next one is that is not lazy.
    """
    options = connection.get_execution_options()
    driver, lazy = connection.connection.driver_connection, options.get("lazy", False)
    assert isinstance(driver, sqlite3.Connection)
    if connection.info.get("lazy", False) != lazy:
        driver.execute(f"PRAGMA synchronous={'NORMAL' if lazy else 'FULL'}")
        connection.info["lazy"] = lazy
    begin = "BEGIN" if options.get("reading", False) else "BEGIN IMMEDIATE"
    try:
        driver.execute(begin)
    except sqlite3.OperationalError as error:  # past the library, which would have named it so
        raise OperationalError(begin, None, error) from error
