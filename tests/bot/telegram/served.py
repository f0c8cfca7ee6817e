"""The bot, served in a thread against the stand-in: the real library, the real store, real HTTP."""

import asyncio
import threading
import time
from collections.abc import Callable
from dataclasses import replace
from datetime import datetime
from typing import Self

from sqlalchemy import URL, Engine, text
from sqlalchemy.orm import Session

from bot import members
from bot.channels.telegram.service import serving
from bot.delivery.chat_locks import locks_for
from bot.delivery.rounds import utc_now
from bot.settings import Settings
from bot.store.schema import open_store
from tests.bot.telegram.bot_api import TOKEN, BotApi

OWNER = 501


class Served:
    """Serves from the entry of a `with` to its end."""

    def __init__(self, api: BotApi, url: URL | str, *, now: Callable[[], datetime] = utc_now, **settings: object) -> None:
        self._now, self._api = now, api
        database = url if isinstance(url, str) else url.render_as_string(hide_password=False)
        self.settings = replace(
            Settings(database=database, token=TOKEN, owner=OWNER, api_url=api.url, messages_a_second=0.0), **settings
        )
        self.engine: Engine
        self._failure: BaseException | None = None

    def __enter__(self) -> Self:
        self.engine = open_store(self.settings.database)
        self._locks = locks_for(self.engine)
        self._ready = threading.Event()
        self._thread = threading.Thread(target=self._work, name="served", daemon=True)
        self._thread.start()
        assert self._ready.wait(10)
        return self

    def _work(self) -> None:
        try:
            asyncio.run(self._serve())
        except BaseException as error:  # noqa: BLE001
            self._failure = error

    async def _serve(self) -> None:
        self._loop, self._stop = asyncio.get_running_loop(), asyncio.Event()
        self._ready.set()
        await serving(self.settings, self.engine, self._locks, self._stop, self._now)

    def let_in(self, user_id: int, name: str = "First") -> None:
        """Make somebody a member."""
        with Session(self.engine) as session, session.begin():
            code = members.invite(session, OWNER, utc_now())
            assert members.join(session, user_id, name, code, utc_now())

    def ask_store(self, statement: str) -> list[tuple[object, ...]]:
        """Rows of the store."""
        with self.engine.connect() as connection:
            return [tuple(row) for row in connection.execute(text(statement))]

    def settle(self, within_s: float = 20.0) -> None:
        """Wait until all that came in was worked on and all that goes out is out: what did not come by then never will."""
        end = time.monotonic() + within_s
        left = "SELECT (SELECT count(*) FROM inbox WHERE done_at IS NULL) + (SELECT count(*) FROM outbox WHERE done_at IS NULL)"
        last = f"SELECT count(*) FROM inbox WHERE update_id = {self._api.last_update}"
        while self.ask_store(last) != [(1,)] or self.ask_store(left) != [(0,)]:
            assert time.monotonic() < end, self.ask_store(left)
            time.sleep(0.02)

    def stop(self) -> None:
        """Tell it to stop, and wait until it has."""
        if self._thread.is_alive():
            self._loop.call_soon_threadsafe(self._stop.set)
        self._thread.join(30)
        assert not self._thread.is_alive()

    def __exit__(self, *_: object) -> None:
        self.stop()
        self._locks.close()
        self.engine.dispose()
        if self._failure is not None:
            raise self._failure
