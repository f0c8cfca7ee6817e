"""The rounds: each chat with something to do is served, one message at a time, until nothing is left."""

import asyncio
import logging
import random
import time
from collections import deque
from collections.abc import Awaitable, Callable, Iterable, Mapping, Sequence
from contextlib import suppress
from dataclasses import dataclass
from datetime import UTC, datetime
from typing import Any

from sqlalchemy import Connection
from sqlalchemy.orm import Session
from telegram import Bot

from bot.delivery import inbox, outbox
from bot.delivery.chat_locks import ChatLocks
from bot.delivery.clearing import clear
from bot.delivery.courier import Courier
from bot.delivery.inbox import Waiting
from bot.delivery.letters import Letter, Unsent
from bot.delivery.pace import Pace
from bot.delivery.transactions import StoreAwayError, Transactions, is_away
from bot.store.retention import clear_out, is_set

log = logging.getLogger(__name__)

AT_ONCE = 16
"""Chats that are served at a time, each with a connection of its own."""
FULL_S = 0.5
"""As long as all places are taken, it is no use to ask for more; but no longer than this: whoever has them may be stuck. [s]"""
FAILURES = 3
"""A message that fails so often is answered with a plain sentence."""
SWEEP_S = 2.0
"""How often what was left behind is looked for: by a killed process, by a store that was away. [s]"""
CLEAR_S = 600.0
"""How often it is looked for what is too old to be kept. [s]"""
CLEAR_AT_ONCE = 50
"""Jobs that are deleted in one go: messages wait meanwhile."""


class UnreadableError(Exception):
    """The library can't read the update: trying again would not help."""


class NeedsError(Exception):
    """The turn can't be worked out without something that must be fetched first."""

    def __init__(self, fetch: Callable[[], Awaitable[Any]]) -> None:
        self.fetch = fetch


class TurnFailedError(Exception):
    """A turn raised; its cause says what."""

    def __init__(self, waiting: Waiting) -> None:
        self.waiting = waiting


@dataclass(frozen=True, slots=True, kw_only=True)
class Channel:
    """What the rounds need of a channel."""

    work: Callable[[Session, Waiting, Any], list[Letter]]
    """What goes out in answer to one update, worked out in the session's transaction."""
    apology: Callable[[Waiting], list[Letter]]
    """What goes out where that failed for good."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Turned:
    """What one turn brought."""

    made: list[Unsent]
    more: bool
    """Another update waited behind it."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Rest:
    """A row that is to be sent later."""

    key: tuple[int, int]
    attempts: int
    due: float
    """By the monotonic clock. [s]"""


def utc_now() -> datetime:
    """The clock of the program."""
    return datetime.now(UTC)


class Rounds:
    """Serves chats. `ring` says that one has something to do."""

    def __init__(
        self,
        bot: Bot,
        transactions: Transactions,
        locks: ChatLocks,
        channel: Channel,
        pace: Pace,
        now: Callable[[], datetime] = utc_now,
    ) -> None:
        self._transactions, self._locks, self._channel, self.now = transactions, locks, channel, now
        self._slots = asyncio.Semaphore(AT_ONCE)
        self._courier = Courier(bot, transactions, pace, self._slots, self._ring_anew, now)
        self._busy: dict[int, asyncio.Task[None]] = {}
        self._rung: set[int] = set()
        self._clean: set[int] = set()
        """Chats that got everything there was, where nobody else writes."""
        self._timers: dict[int, asyncio.TimerHandle] = {}
        self._rests: dict[int, Rest] = {}
        """Of each chat that rests. The store's times are the wall clock's, and that may be set while we wait."""
        self._room = asyncio.Event()
        self._stopping = False

    async def room(self) -> None:
        """Wait for a free place: meanwhile what comes in can be fetched, and committed, in one go."""
        if len(self._busy) < AT_ONCE:
            return
        self._room.clear()
        with suppress(TimeoutError):
            await asyncio.wait_for(self._room.wait(), FULL_S)

    async def receive(self, updates: Sequence[Mapping[str, Any]]) -> None:
        """Return when updates are written down; from then on they will be answered."""
        if len(updates) != 1 or not await self._answered_at_once(updates[0]):
            self.ring(await self._transactions.run(inbox.receive, updates, self.now()))

    async def _answered_at_once(self, update: Mapping[str, Any]) -> bool:
        """
        Whether an update was written down and worked on in one commit.

        That is done for one that comes alone to a chat in which nothing waits, where nobody else writes. If anything is in the way, it is
        written down first, and worked on as all others are.
        """
        chat_id = inbox.chat_of(update)
        if self._stopping or chat_id is None or chat_id not in self._clean or chat_id in self._busy:
            return False
        try:
            made = await self._transactions.turn(self._take, chat_id, update)
        except StoreAwayError:
            raise
        except Exception:  # noqa: BLE001  (whatever it is, it is met again on the way of all others, and holds up no poll)
            return False
        if made is None:
            return False
        self._clean.discard(chat_id)
        self._start(chat_id, deque(made))
        return True

    def ring(self, chats: Iterable[int]) -> None:
        """These chats have something to do."""
        for chat_id in chats:
            if self._stopping:
                return
            if chat_id in self._busy:
                self._rung.add(chat_id)
            else:
                self._start(chat_id)

    def _start(self, chat_id: int, made: deque[Unsent] | None = None) -> None:
        self._busy[chat_id] = asyncio.create_task(self._serve(chat_id, made), name=f"chat {chat_id}")

    def _ring_anew(self, chats: Iterable[int]) -> None:
        """These chats have something to be sent that this process did not lay there itself."""
        chats = list(chats)
        self._clean.difference_update(chats)
        self.ring(chats)

    async def sweep(self) -> None:
        """Look for what was left, now and every few seconds, until cancelled."""
        due = time.monotonic()
        while True:
            try:
                waiting = await self._transactions.run(_chats_waiting)
                self._ring_anew([chat for chat in waiting if chat not in self._timers and chat not in self._busy])
                if time.monotonic() >= due:
                    is_more = await self._transactions.turn(_clear, self.now())
                    due = time.monotonic() + (0.0 if is_more else CLEAR_S)
            except StoreAwayError:
                log.warning("store away")
            except Exception:
                log.exception("sweep failed")
            await asyncio.sleep(SWEEP_S * random.uniform(0.9, 1.1))

    async def stop(self, within_s: float) -> None:
        """Finish what is in hand; what is not done by then stays in the store."""
        self._stopping = True
        for timer in self._timers.values():
            timer.cancel()
        if self._busy:
            _, late = await asyncio.wait(self._busy.values(), timeout=within_s)
            for task in late:
                task.cancel()
            await asyncio.gather(*late, return_exceptions=True)

    async def _serve(self, chat_id: int, made: deque[Unsent] | None) -> None:
        """Serve a chat until nothing is left; `made` is what was just laid into its outbox, where nothing else waits."""
        try:
            while True:
                if not await self._locks.take(chat_id):
                    return
                try:
                    rest_s = await self._empty(chat_id, made)
                    made = None
                finally:
                    await self._locks.free(chat_id)
                if rest_s is not None:
                    self._ring_later(chat_id, rest_s)
                if self._stopping or not (chat_id in self._rung or await self._came_meanwhile(chat_id)):
                    return
        except StoreAwayError:
            log.warning("store away", extra={"chat": chat_id})
            self._ring_later(chat_id, SWEEP_S)
        except Exception:
            log.exception("chat failed", extra={"chat": chat_id})
            self._ring_later(chat_id, SWEEP_S)
        finally:
            del self._busy[chat_id]
            if len(self._busy) < AT_ONCE:
                self._room.set()
            if chat_id in self._rung:
                self._rung.discard(chat_id)
                self.ring([chat_id])

    async def _came_meanwhile(self, chat_id: int) -> bool:
        """Whether another process wrote something down and went away because the chat was still ours."""
        return self._locks.shared and await self._transactions.run(inbox.oldest, chat_id) is not None

    def _ring_later(self, chat_id: int, rest_s: float) -> None:
        if self._stopping:
            return
        if (old := self._timers.pop(chat_id, None)) is not None:
            old.cancel()

        def ring() -> None:
            self._timers.pop(chat_id, None)
            self.ring([chat_id])

        self._timers[chat_id] = asyncio.get_running_loop().call_later(rest_s, ring)

    async def _empty(self, chat_id: int, made: deque[Unsent] | None) -> float | None:
        """Send what is unsent and work on what is waiting; how long to rest where something must be sent later."""
        queue = deque[Unsent]() if made is None else made
        if chat_id in self._clean:
            self._clean.discard(chat_id)  # until it has got everything again
        elif made is None:
            queue.extend(await self._transactions.run(outbox.unsent, chat_id, self.now()))
        due = self._due(chat_id, queue[0]) if queue else 0.0
        more = made is None
        while True:
            if queue and time.monotonic() >= due:
                rest_s = await self._courier.deliver(queue)
                due = time.monotonic() + rest_s
                continue
            if self._stopping or not (more or chat_id in self._rung):
                return self._left(chat_id, queue, due)
            self._rung.discard(chat_id)
            turn = await self._turn(chat_id)
            queue.extend(turn.made)
            more = turn.more

    def _due(self, chat_id: int, first: Unsent) -> float:
        """When the first row may be sent: by our own count where we put it off ourselves, else by the store's."""
        rest = self._rests.pop(chat_id, None)
        if rest is not None and (rest.key, rest.attempts) == (first.key, first.attempts):
            return rest.due
        return time.monotonic() + first.wait_s

    def _left(self, chat_id: int, queue: deque[Unsent], due: float) -> float | None:
        """How long the rest of the queue has to wait; a chat that got everything needs no look next time, if only we write."""
        if queue:
            self._rests[chat_id] = Rest(key=queue[0].key, attempts=queue[0].attempts, due=due)
            return max(due - time.monotonic(), 0.0)
        if not self._locks.shared:
            self._clean.add(chat_id)
        return None

    async def _turn(self, chat_id: int) -> Turned:
        """What the oldest waiting update of the chat brings out."""
        fetched: Any = None
        while True:
            try:
                async with self._slots:
                    await asyncio.sleep(0)  # a turn beside a file runs in the loop: let others have theirs in between
                    return await self._transactions.turn(self._work, chat_id, fetched)
            except NeedsError as needs:
                fetched = await needs.fetch()
            except TurnFailedError as failed:
                return await self._count(chat_id, failed)

    def _work(self, session: Session, chat_id: int, fetched: Any) -> Turned:
        connection = session.connection()
        waiting = inbox.oldest(connection, chat_id)
        if waiting is None:
            return Turned(made=[], more=False)
        made = self._answer(session, chat_id, waiting, fetched)
        if not inbox.done(connection, waiting.update_id, self.now()):
            session.rollback()
            return Turned(made=[], more=True)
        return Turned(made=made, more=waiting.more)

    def _take(self, session: Session, chat_id: int, update: Mapping[str, Any]) -> list[Unsent] | None:
        """An update that is written down nowhere yet; None where that is not so."""
        now = self.now()
        if not inbox.take(session.connection(), update, now):
            return None
        waiting = Waiting(update_id=update["update_id"], body=update, failures=0, received_at=now)
        return self._answer(session, chat_id, waiting, None)

    def _answer(self, session: Session, chat_id: int, waiting: Waiting, fetched: Any) -> list[Unsent]:
        """What goes out in answer to an update, laid into the outbox."""
        try:
            letters = self._channel.work(session, waiting, fetched)
            session.flush()
        except NeedsError:
            raise
        except Exception as error:
            if is_away(error):
                raise
            raise TurnFailedError(waiting) from error
        log.info("answered", extra={"chat": chat_id, "update": waiting.update_id, "letters": len(letters)})
        return outbox.put(session.connection(), waiting.update_id, chat_id, letters)

    async def _count(self, chat_id: int, failed: TurnFailedError) -> Turned:
        """One failure more; after a few of them the technician is told."""
        cause, waiting = failed.__cause__, failed.waiting
        given_up = isinstance(cause, UnreadableError) or waiting.failures + 1 >= FAILURES
        log.error("turn failed", extra={"chat": chat_id, "update": waiting.update_id, "given_up": given_up}, exc_info=cause)
        made = await self._transactions.run(self._write_failure, chat_id, waiting, cause, given_up)
        if not given_up:
            await asyncio.sleep(0.2 * 2**waiting.failures)
        return Turned(made=made, more=True)

    def _write_failure(
        self,
        connection: Connection,
        chat_id: int,
        waiting: Waiting,
        cause: BaseException | None,
        given_up: bool,  # noqa: FBT001
    ) -> list[Unsent]:
        inbox.failed(connection, waiting.update_id, type(cause).__name__, self.now() if given_up else None)
        return outbox.put(connection, waiting.update_id, chat_id, self._channel.apology(waiting)) if given_up else []


def _chats_waiting(connection: Connection) -> list[int]:
    return list(dict.fromkeys((*outbox.chats_waiting(connection), *inbox.chats_waiting(connection))))


def _clear(session: Session, now: datetime) -> bool:
    """Delete what is too old: rows of the delivery, and jobs where an end is set. True where there is more."""
    rows = clear(session.connection(), now)
    jobs = clear_out(session, now, CLEAR_AT_ONCE) if is_set(session) else 0
    if jobs:
        log.info("old jobs deleted", extra={"count": jobs})
    return bool(rows or jobs)
