"""What was sent is written down at once, together with whatever else was sent in the same moment."""

import asyncio
from collections.abc import Callable
from datetime import datetime

from bot.delivery import outbox
from bot.delivery.outbox import Mark
from bot.delivery.transactions import Transactions


class Marks:
    """Joins the marks of chats whose sends ended in the same pass of the loop into one commit."""

    def __init__(self, transactions: Transactions, now: Callable[[], datetime]) -> None:
        self._transactions = transactions
        self._now = now
        self._waiting: list[Mark] = []
        self._commit: asyncio.Task[None] | None = None

    async def write(self, mark: Mark) -> None:
        """Return when the mark is committed."""
        self._waiting.append(mark)
        if self._commit is None:
            self._commit = asyncio.create_task(self._write())
        await asyncio.shield(self._commit)

    async def _write(self) -> None:
        marks, self._waiting, self._commit = self._waiting, [], None
        await self._transactions.run_lazily(outbox.mark, marks, self._now())
