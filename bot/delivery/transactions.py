"""Where work on the store runs: at once beside a file, in threads beside a server."""

import asyncio
from collections.abc import Callable
from concurrent.futures import ThreadPoolExecutor
from typing import Any, TypeVar

from sqlalchemy import Engine
from sqlalchemy.exc import InterfaceError, OperationalError
from sqlalchemy.orm import Session

T = TypeVar("T")


class StoreAwayError(Exception):
    """The store could not be reached: nothing was done, and it is not the message's fault."""


class Transactions:
    """
    Runs each piece of work in a transaction of its own.

    A SQLite store has one writer, and a hop to a thread costs more than its statements. A server can keep a statement waiting for
    another process, so there the program's loop must go on. All turns share one thread: folded jobs are remembered in the program.
    """

    def __init__(self, engine: Engine) -> None:
        self.engine = engine
        self.shared = engine.dialect.name != "sqlite"
        self._turns = ThreadPoolExecutor(1, "turn") if self.shared else None
        self._others = ThreadPoolExecutor(4, "store") if self.shared else None

    async def run(self, work: Callable[..., T], *args: Any) -> T:
        """`work(connection, *args)` in a transaction."""
        return await self._in(self._others, self._run, work, args)

    async def turn(self, work: Callable[..., T], *args: Any) -> T:
        """`work(session, *args)` in a transaction; one at a time."""
        return await self._in(self._turns, self._turn, work, args)

    async def _in(self, pool: ThreadPoolExecutor | None, run: Callable[..., T], work: Callable[..., T], args: Any) -> T:
        try:
            if pool is None:
                return run(work, args)
            return await asyncio.get_running_loop().run_in_executor(pool, run, work, args)
        except (OperationalError, InterfaceError) as error:
            raise StoreAwayError(type(error).__name__) from error

    def _run(self, work: Callable[..., T], args: tuple[Any, ...]) -> T:
        with self.engine.begin() as connection:
            return work(connection, *args)

    def _turn(self, work: Callable[..., T], args: tuple[Any, ...]) -> T:
        with Session(self.engine) as session, session.begin():
            return work(session, *args)

    def close(self) -> None:
        """Let the threads end."""
        for pool in (self._turns, self._others):
            if pool is not None:
                pool.shutdown(wait=True)
