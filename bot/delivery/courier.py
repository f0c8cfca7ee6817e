"""The courier: takes the first letter of a chat out, and writes down what became of it."""

import asyncio
import logging
from collections import deque
from collections.abc import Callable, Iterable
from dataclasses import replace
from datetime import datetime, timedelta

from sqlalchemy import Connection
from telegram import Bot

from bot.delivery import outbox
from bot.delivery.faults import Fault, fault_of
from bot.delivery.lane import Lane
from bot.delivery.letters import Unsent
from bot.delivery.marks import Marks
from bot.delivery.outbox import Mark
from bot.delivery.pace import Pace
from bot.delivery.sender import send, without_marks
from bot.delivery.transactions import StoreAwayError, Transactions

log = logging.getLogger(__name__)


class Courier:
    """Sends the letters of a chat, which come as a queue: the first of it is the one that goes out."""

    def __init__(
        self,
        bot: Bot,
        transactions: Transactions,
        pace: Pace,
        slots: asyncio.Semaphore,
        ring: Callable[[Iterable[int]], None],
        now: Callable[[], datetime],
    ) -> None:
        self._bot, self._transactions, self._pace, self._slots, self._ring, self._now = (
            bot,
            transactions,
            pace,
            slots,
            ring,
            now,
        )
        self._marks = Marks(transactions, now)
        self._lane = Lane()

    async def deliver(self, queue: deque[Unsent]) -> float:
        """Send the first of the queue; the seconds to rest before it, or the next, may be sent."""
        await self._pace.wait(queue[0].chat_id)
        ours = await self._lane.enter()
        try:
            return await self._send(queue)
        finally:
            self._lane.leave(ours)

    async def _send(self, queue: deque[Unsent]) -> float:
        unsent = queue[0]
        if not unsent.armed:
            await self._transactions.run(outbox.mark_tried, unsent.key)
            queue[0] = unsent = replace(unsent, armed=True)
        try:
            unsent = await self._aimed(unsent)
            async with self._slots:
                message_id = await send(self._bot, unsent)
        except StoreAwayError:
            raise
        except Exception as error:  # noqa: BLE001  (whatever it is, the row must not be lost nor block the chat)
            return await self._fault(queue, fault_of(error, unsent.attempts))
        await self._finish(queue, Mark(key=unsent.key, message_id=message_id, gone=unsent.letter.is_last))
        return 0.0

    async def _aimed(self, unsent: Unsent) -> Unsent:
        """An edit of the reply to some message finds that reply's id now: it may have been sent a moment ago."""
        body = unsent.letter.body
        if "edits" not in body:
            return unsent
        ours = await self._transactions.run(outbox.replies_to, unsent.chat_id, body["edits"])
        part = body["part"]
        if part >= len(ours):
            return replace(unsent, letter=replace(unsent.letter, kind="text"))
        return replace(unsent, letter=replace(unsent.letter, body={**body, "message": ours[part]}))

    async def _finish(self, queue: deque[Unsent], mark: Mark) -> None:
        queue.popleft()
        if queue and not queue[0].armed:
            mark = replace(mark, next_tried=queue[0].key)
        await self._marks.write(mark)
        if mark.next_tried is not None:
            queue[0] = replace(queue[0], armed=True)

    async def _fault(self, queue: deque[Unsent], fault: Fault) -> float:
        unsent = queue[0]
        extra = {
            "chat": unsent.chat_id,
            "update": unsent.update_id,
            "kind": unsent.letter.kind,
            "why": fault.why,
            "then": fault.then,
        }
        log.warning("not sent", extra=extra)
        match fault.then:
            case "done" | "never":
                error = None if fault.then == "done" else fault.why
                await self._finish(queue, Mark(key=unsent.key, error=error, gone=unsent.letter.is_last))
                return 0.0
            case "plain":
                queue[0] = replace(
                    unsent, letter=replace(unsent.letter, body=without_marks(unsent.letter.body)), attempts=unsent.attempts + 1
                )
                return 0.0
            case "anew":
                body = {key: value for key, value in unsent.letter.body.items() if key not in {"edits", "message"}}
                queue[0] = replace(unsent, letter=replace(unsent.letter, kind="text", body=body), attempts=unsent.attempts + 1)
                return 0.0
            case "moved":
                assert fault.new_chat is not None
                await self._transactions.run(outbox.move, unsent.chat_id, fault.new_chat)
                queue.clear()
                self._ring([fault.new_chat])
                return 0.0
        return await self._put_off(queue, fault)

    async def _put_off(self, queue: deque[Unsent], fault: Fault) -> float:
        unsent = queue[0]
        if fault.why == "RetryAfter":
            self._pace.refused(unsent.chat_id, fault.wait_s)
        maybe = fault.maybe_sent or unsent.again
        queue[0] = replace(unsent, again=maybe, armed=maybe, attempts=unsent.attempts + 1)
        due = self._now() + timedelta(seconds=fault.wait_s)
        await self._transactions.run(_put_off, unsent.key, due, maybe, fault.why)
        return fault.wait_s


def _put_off(connection: Connection, key: tuple[int, int], due: datetime, maybe_sent: bool, why: str) -> None:  # noqa: FBT001
    outbox.put_off(connection, key, due, maybe_sent=maybe_sent, why=why)
