"""Where work on the store runs: at once beside a file, in threads beside a server."""

import asyncio
import sqlite3
from collections.abc import Callable, Iterator
from concurrent.futures import ThreadPoolExecutor
from contextlib import contextmanager
from typing import Any, TypeVar

from sqlalchemy import Connection, Engine
from sqlalchemy.exc import DBAPIError, InterfaceError
from sqlalchemy.orm import Session

T = TypeVar("T")


class StoreAwayError(Exception):
    """The store could not be reached: nothing was done, and it is not the message's fault."""


SQLITE_AWAY = ("SQLITE_BUSY", "SQLITE_LOCKED", "SQLITE_IOERR", "SQLITE_FULL", "SQLITE_READONLY", "SQLITE_CANTOPEN")
POSTGRESQL_AWAY = ("08", "40", "53", "55", "57")
"""Classes of SQLSTATE: connection, a conflict to be tried again, no room, not now, told to stop. Source: PostgreSQL manual, appendix A."""


def is_away(error: BaseException) -> bool:
    """Whether an error is the store's, which passes, and not that of what was asked of it."""
    if not isinstance(error, DBAPIError):
        return False
    state = getattr(error.orig, "sqlstate", None) or ""
    name = getattr(error.orig, "sqlite_errorname", None) or ""
    lost = error.connection_invalidated or isinstance(error, InterfaceError)
    return lost or name.startswith(SQLITE_AWAY) or (not name and (not state or state.startswith(POSTGRESQL_AWAY)))


class Transactions:
    """
    Runs each piece of work in a transaction of its own.

    A SQLite store has one writer, and a hop to a thread costs more than its statements. A server can keep a statement waiting for
    another process, so there the program's loop must go on. All turns share one thread: folded jobs are remembered in the program.
    """

    def __init__(self, engine: Engine) -> None:
        self.engine = engine
        self.shared = engine.dialect.name != "sqlite"
        self._unsynced = False
        """A lazy transaction is not on the disk yet."""
        self._turns = ThreadPoolExecutor(1, "turn") if self.shared else None
        self._others = ThreadPoolExecutor(4, "store") if self.shared else None

    async def run(self, work: Callable[..., T], *args: Any) -> T:
        """`work(connection, *args)` in a transaction."""
        return await self._in(self._others, self._run, work, args)

    async def run_lazily(self, work: Callable[..., T], *args: Any) -> T:
        """
        The same, for work of which a power cut may take back the last: it waits for the disk only every second time, or never where
        other transactions come in between. A kill takes back nothing. A server has no need of it: it joins what waits for its disk.
        """
        return await self._in(self._others, self._run if self.shared or self._unsynced else self._run_lazily, work, args)

    async def turn(self, work: Callable[..., T], *args: Any) -> T:
        """`work(session, *args)` in a transaction; one at a time."""
        return await self._in(self._turns, self._turn, work, args)

    async def _in(self, pool: ThreadPoolExecutor | None, run: Callable[..., T], work: Callable[..., T], args: Any) -> T:
        try:
            if pool is None:
                return run(work, args)
            return await asyncio.get_running_loop().run_in_executor(pool, run, work, args)
        except DBAPIError as error:
            if is_away(error):
                raise StoreAwayError(type(error).__name__) from error
            raise

    def _run(self, work: Callable[..., T], args: tuple[Any, ...]) -> T:
        with self.engine.begin() as connection, self._syncing(connection):
            return work(connection, *args)

    def _run_lazily(self, work: Callable[..., T], args: tuple[Any, ...]) -> T:
        with self.engine.connect().execution_options(lazy=True) as connection, connection.begin():
            done = work(connection, *args)
        self._unsynced = True
        return done

    def _turn(self, work: Callable[..., T], args: tuple[Any, ...]) -> T:
        with Session(self.engine) as session, session.begin(), self._syncing(session.connection()):
            return work(session, *args)

    @contextmanager
    def _syncing(self, connection: Connection) -> Iterator[None]:
        """A transaction that is about to be committed: where it wrote anything, that takes what was lazy to the disk too."""
        driver = connection.connection.driver_connection
        before = driver.total_changes if isinstance(driver, sqlite3.Connection) else 0
        yield
        if isinstance(driver, sqlite3.Connection) and driver.total_changes > before:
            self._unsynced = False

    def close(self) -> None:
        """Let the threads end."""
        for pool in (self._turns, self._others):
            if pool is not None:
                pool.shutdown(wait=True)
