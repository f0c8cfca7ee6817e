"""How fast we send. The messenger's own limits are not published; these are what it advises."""

import asyncio
import time

from aiolimiter import AsyncLimiter

A_SECOND = 30.0
"""Messages of the whole bot. Source: core.telegram.org/bots/faq, "hitting limits"."""
GROUP_A_MINUTE = 20.0
"""Messages in one group. Source: the same."""
TOGETHER_S = 1.0
"""Two chats refused within this time: the limit is the bot's, not theirs. [s]"""


class Pace:
    """
    Holds back what would be refused.

    A library's limiter stops every chat when one group was too fast. Here only that chat rests, and all of them only
    where two were refused at nearly the same time.
    """

    def __init__(self, a_second: float | None = A_SECOND) -> None:
        self._all = AsyncLimiter(a_second, 1.0) if a_second else None
        self._groups: dict[int, AsyncLimiter] = {}
        self._refused: tuple[int, float] = (0, float("-inf"))
        self._until = 0.0

    async def wait(self, chat_id: int) -> None:
        """Until this chat may send."""
        while (rest := self._until - time.monotonic()) > 0.0:  # noqa: ASYNC110  (a time, and it can move while we wait)
            await asyncio.sleep(rest)
        if chat_id < 0:
            await self._groups.setdefault(chat_id, AsyncLimiter(GROUP_A_MINUTE, 60.0)).acquire()
        if self._all is not None:
            await self._all.acquire()

    def refused(self, chat_id: int, wait_s: float) -> None:
        """The messenger said to wait."""
        now = time.monotonic()
        chat, at = self._refused
        if chat != chat_id and now - at < TOGETHER_S:
            self._until = max(self._until, now + wait_s)
        self._refused = (chat_id, now)
