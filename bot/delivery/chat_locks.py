"""One chat is served by one at a time, in this process and in all others."""

import asyncio
import sqlite3
from concurrent.futures import ThreadPoolExecutor
from pathlib import Path
from typing import Any, Protocol

from sqlalchemy import Connection, Engine, text
from sqlalchemy.exc import DBAPIError

from bot.delivery.transactions import StoreAwayError
from bot.store.engine import in_memory

OURS = 0x6F68_6D00_0000_0000
"""Set into the keys of our locks, so that no other use of the server's locks meets them by chance."""


class SecondWriterError(Exception):
    """Another process serves from the same file."""


class ChatLocks(Protocol):
    """Who serves which chat. `shared` says whether other processes can be in the way."""

    shared: bool

    async def take(self, chat_id: int) -> bool:
        """True where the chat is ours from now on."""

    async def free(self, chat_id: int) -> None:
        """Let others have it."""

    def close(self) -> None:
        """Free all."""


class FileLock:
    """
    A SQLite store is served by one process: whoever holds the lock file beside it.

    The lock is SQLite's own on an empty database of that name, so it works on every system and ends with the process, however it ends.
    """

    shared = False

    def __init__(self, engine: Engine) -> None:
        self._held: sqlite3.Connection | None = None
        if in_memory(engine.url):
            return
        beside = Path(f"{engine.url.database}-serving")
        self._held = sqlite3.connect(beside, timeout=0.0, isolation_level=None)
        try:
            self._held.execute("BEGIN EXCLUSIVE")
        except sqlite3.OperationalError as error:
            self._held.close()
            raise SecondWriterError(str(engine.url.database)) from error

    async def take(self, chat_id: int) -> bool:  # noqa: ARG002
        """Nobody else is there."""
        return True

    async def free(self, chat_id: int) -> None:
        """Nobody waits."""

    def close(self) -> None:
        """Let another process serve."""
        if self._held is not None:
            self._held.close()


class ServerLocks:
    """
    Advisory locks of PostgreSQL, all on one connection: they end with it, so a killed process blocks nobody and no clock is needed.

    Nobody waits for a lock. Who finds it taken goes away, and who frees it looks once more whether anything came meanwhile.
    """

    shared = True

    def __init__(self, engine: Engine) -> None:
        self._engine = engine
        self._thread = ThreadPoolExecutor(1, "locks")
        self._connection: Connection | None = None

    async def take(self, chat_id: int) -> bool:
        """True where no process has it."""
        return bool(await self._ask("SELECT pg_try_advisory_lock(:key)", chat_id))

    async def free(self, chat_id: int) -> None:
        """Let others have it."""
        await self._ask("SELECT pg_advisory_unlock(:key)", chat_id)

    async def _ask(self, statement: str, chat_id: int) -> Any:
        loop = asyncio.get_running_loop()
        return await loop.run_in_executor(self._thread, self._tell, statement, chat_id ^ OURS)

    def _tell(self, statement: str, key: int) -> Any:
        try:
            if self._connection is None:
                self._connection = self._engine.connect().execution_options(isolation_level="AUTOCOMMIT")
            return self._connection.scalar(text(statement), {"key": key})
        except DBAPIError as error:
            self._drop()
            raise StoreAwayError(type(error).__name__) from error

    def _drop(self) -> None:
        if self._connection is not None:
            self._connection.invalidate()
            self._connection.close()
            self._connection = None

    def close(self) -> None:
        """Free all. The connection is closed for good: one that went back to the pool would keep its locks."""
        self._thread.submit(self._drop).result()
        self._thread.shutdown(wait=True)


def locks_for(engine: Engine) -> ChatLocks:
    """
    The locks that a store allows.

    Raises:
        SecondWriterError: It is a SQLite file that another process serves from.
    """
    return FileLock(engine) if engine.dialect.name == "sqlite" else ServerLocks(engine)
