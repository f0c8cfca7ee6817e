"""`ohmreply serve`: everything put together, started and stopped."""

import asyncio
import contextlib
import logging
import signal
import time
from collections.abc import Awaitable, Callable, Coroutine
from datetime import datetime, tzinfo
from typing import Any, TypeVar

from sqlalchemy import Engine
from telegram import Bot, BotCommand, BotCommandScopeChat
from telegram.error import InvalidToken, TelegramError
from tornado.httpserver import HTTPServer

from bot import members
from bot.channels.telegram.arrival import Me
from bot.channels.telegram.menu import COMMANDS
from bot.channels.telegram.turn import Here, channel
from bot.delivery import inbox, logs
from bot.delivery.chat_locks import ChatLocks, SecondWriterError, locks_for
from bot.delivery.faults import back_off_s
from bot.delivery.health import health
from bot.delivery.pace import Pace
from bot.delivery.polling import POLL_S, SLACK_S, Poller
from bot.delivery.rounds import AT_ONCE, Rounds, utc_now
from bot.delivery.transactions import Transactions
from bot.delivery.webhook import PATH, secret_of, webhook
from bot.delivery.wire import Wire
from bot.desk import Memory
from bot.settings import SettingError, Settings
from bot.store.schema import open_store
from bot.wording.catalog import LANGUAGES, catalog
from core.said import say

log = logging.getLogger(__name__)
T = TypeVar("T")

TELEGRAM = "https://api.telegram.org"
ANSWER_S = 20.0
"""As long as one call may take. [s]"""
STOP_S = 15.0
"""As long as the work in hand may take once we are told to stop. [s]"""


def serve(settings: Settings) -> None:
    """
    Serve until told to stop.

    Raises:
        SettingError: Another process serves from the same file, or the token is refused.
    """
    logs.set_up()
    engine = open_store(settings.database)
    try:
        locks = locks_for(engine)
    except SecondWriterError as error:
        raise SettingError(
            say("Another serve has {file}. One process a file; for more take PostgreSQL", file=str(error))
        ) from error
    try:
        asyncio.run(_until_told(settings, engine, locks))
    except InvalidToken:
        raise SettingError(say("Telegram refuses the token")) from None
    finally:
        locks.close()
        engine.dispose()


async def _until_told(settings: Settings, engine: Engine, locks: ChatLocks) -> None:
    await serving(settings, engine, locks, _stop_signal())


async def serving(
    settings: Settings, engine: Engine, locks: ChatLocks, stop: asyncio.Event, now: Callable[[], datetime] = utc_now
) -> None:
    """Serve until `stop` is set; what is in hand by then is finished."""
    transactions = Transactions(engine)
    if settings.owner is not None:
        await transactions.turn(members.name_owner, settings.owner, now())
    bot = _bot(settings)
    try:
        if await _before(stop, _patiently(bot.initialize)):
            rounds = Rounds(bot, transactions, locks, channel(_here(settings, bot)), Pace(settings.messages_a_second), now)
            await _run(settings, bot, transactions, rounds, stop)
    finally:
        await bot.request.shutdown()
    transactions.close()
    log.info("stopped")


async def _before(stop: asyncio.Event, start: Coroutine[Any, Any, object]) -> bool:
    """Whether something was done before we are told to stop; else it is broken off."""
    starting, stopped = asyncio.create_task(start), asyncio.create_task(stop.wait())
    await asyncio.wait([starting, stopped], return_when=asyncio.FIRST_COMPLETED)
    is_done = starting.done()
    starting.cancel()
    stopped.cancel()
    await asyncio.gather(starting, stopped, return_exceptions=True)
    if is_done:
        starting.result()
    return is_done


def _bot(settings: Settings) -> Bot:
    base = settings.api_url or TELEGRAM
    return Bot(
        settings.token or "",
        base_url=f"{base}/bot",
        base_file_url=f"{base}/file/bot",
        request=Wire(AT_ONCE, ANSWER_S),
        get_updates_request=Wire(1, POLL_S + SLACK_S),
    )


def _here(settings: Settings, bot: Bot) -> Here:
    me = Me(user_id=bot.id, username=bot.username)
    return Here(bot=bot, me=me, memory=Memory(), zone=local_zone(), a_minute=settings.messages_a_minute)


async def _run(settings: Settings, bot: Bot, transactions: Transactions, rounds: Rounds, stop: asyncio.Event) -> None:
    way = await (_webhook if settings.webhook else _polling)(settings, bot, rounds)
    servers = [way.server] if way.server else []
    if settings.health:
        servers.append(listening(health(transactions, way.last_answer), settings.health))
    sweeper = asyncio.create_task(rounds.sweep())
    menu = asyncio.create_task(_patiently(lambda: set_menu(bot, settings.owner)))
    log.info("serving", extra={"mode": "webhook" if settings.webhook else "polling"})
    stopped = asyncio.create_task(stop.wait())
    working = [task for task in (way.poller, sweeper, stopped) if task is not None]
    finished, _ = await asyncio.wait(working, return_when=asyncio.FIRST_COMPLETED)
    log.info("stopping")
    for server in servers:
        server.stop()
    for task in (*working, menu):
        task.cancel()
    await rounds.stop(within_s=STOP_S)
    for server in servers:
        await server.close_all_connections()
    ended = await asyncio.gather(*working, menu, return_exceptions=True)
    failure = next((one for one in ended if isinstance(one, Exception)), None)
    if failure is not None and stopped not in finished:
        raise failure


def local_zone() -> tzinfo:
    """The clock of this machine."""
    zone = datetime.now().astimezone().tzinfo
    assert zone is not None
    return zone


class Way:
    """The way updates come in."""

    def __init__(
        self, last_answer: Callable[[], float], poller: asyncio.Task[None] | None = None, server: HTTPServer | None = None
    ) -> None:
        self.last_answer, self.poller, self.server = last_answer, poller, server


async def _polling(settings: Settings, bot: Bot, rounds: Rounds) -> Way:  # noqa: ARG001
    await _patiently(lambda: bot.delete_webhook(drop_pending_updates=False))
    request = Wire(1, POLL_S + SLACK_S)
    poller = Poller(request, bot.base_url, rounds)

    async def poll() -> None:
        try:
            await poller.run()
        finally:
            await request.shutdown()

    return Way(lambda: poller.last_answer, poller=asyncio.create_task(poll()))


async def _webhook(settings: Settings, bot: Bot, rounds: Rounds) -> Way:
    secret = secret_of(settings.token or "")
    server = listening(webhook(secret, rounds), settings.listen)
    url = f"{(settings.webhook or '').rstrip('/')}{PATH}"
    await _patiently(
        lambda: bot.set_webhook(url, secret_token=secret, allowed_updates=list(inbox.OWN_CHAT), drop_pending_updates=False)
    )
    return Way(time.monotonic, server=server)


def listening(server: HTTPServer, address: str) -> HTTPServer:
    """
    The server, listening.

    Raises:
        SettingError: The address is none, or is taken.
    """
    host, _, port = address.rpartition(":")
    try:
        server.listen(int(port), host or "127.0.0.1")
    except (ValueError, OSError) as error:
        raise SettingError(say("Can't listen at {address}", address=address)) from error
    return server


async def set_menu(bot: Bot, owner: int | None) -> None:
    """The menu of commands, in each language; the owner sees more."""
    for language in LANGUAGES:
        tell = catalog(language).tell
        shown = [BotCommand(one.name, tell(one.says)) for one in COMMANDS.values() if not one.owner]
        code = None if language == "en" else language
        await bot.set_my_commands(shown, language_code=code)
        if owner is not None:
            whole = [BotCommand(one.name, tell(one.says)) for one in COMMANDS.values()]
            with contextlib.suppress(TelegramError):  # before the owner's first message there is no such chat
                await bot.set_my_commands(whole, scope=BotCommandScopeChat(owner), language_code=code)


async def _patiently(call: Callable[[], Awaitable[T]]) -> T:
    """A call that has to succeed before anything else can: again and again, slower and slower."""
    failures = 0
    while True:
        try:
            return await call()
        except InvalidToken:
            raise
        except TelegramError as error:
            log.warning("telegram away", extra={"why": type(error).__name__})
            await asyncio.sleep(back_off_s(failures))
            failures += 1


def _stop_signal() -> asyncio.Event:
    """Set when a supervisor or the keyboard says stop."""
    stop = asyncio.Event()
    loop = asyncio.get_running_loop()

    def told(number: Any = None, _: Any = None) -> None:
        log.info("told to stop", extra={"signal": number})
        loop.call_soon_threadsafe(stop.set)

    for one in (signal.SIGTERM, signal.SIGINT):
        try:
            loop.add_signal_handler(one, told, one.name)
        except (NotImplementedError, RuntimeError):  # Windows
            signal.signal(one, told)
    return stop
