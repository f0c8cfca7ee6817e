"""What the library is told of each way in which a call can go wrong, and how a file's name arrives."""

import asyncio
import socket
from typing import Any

from telegram import Bot, InputFile
from telegram.error import InvalidToken, NetworkError, TimedOut

from bot.delivery.faults import fault_of
from bot.delivery.wire import NeverLeftError, Wire
from tests.bot.telegram.bot_api import TOKEN, BotApi
from tests.bot.telegram.calls import Fault


def told(api: BotApi, answer_s: float = 5.0, url: str | None = None, token: str = TOKEN) -> Any:
    """What comes of one message through the library: the message, or the error."""

    async def send() -> Any:
        bot = Bot(token, base_url=f"{url or api.url}/bot", request=Wire(1, answer_s), get_updates_request=Wire(1, 1.0))
        try:
            return await bot.send_message(5, "R < 1 ohm & \u03a9")
        finally:
            await bot.request.shutdown()

    try:
        return asyncio.run(send())
    except NetworkError as error:
        return error
    except InvalidToken as error:
        return error


def test_a_message_arrives_as_it_was_written(api: BotApi) -> None:
    """With every sign."""
    assert told(api).text == "R < 1 ohm & \u03a9"


def test_a_refused_connection_is_known_not_to_have_sent_anything(api: BotApi) -> None:
    """So the next try makes a sound."""
    with socket.socket() as taken:
        taken.bind(("127.0.0.1", 0))
        error = told(api, url=f"http://127.0.0.1:{taken.getsockname()[1]}")

    assert isinstance(error, NeverLeftError)
    assert not fault_of(error, attempts=0).maybe_sent


def test_an_answer_that_does_not_come_leaves_a_doubt(api: BotApi) -> None:
    """It may have arrived."""
    api.faults.append(Fault("sendMessage", wait_s=1.0))
    error = told(api, answer_s=0.1)

    assert isinstance(error, TimedOut)
    assert fault_of(error, attempts=0).maybe_sent


def test_a_connection_that_closes_before_the_answer_leaves_a_doubt(api: BotApi) -> None:
    """It did arrive here, and nobody said so; the call is not made again behind our back."""
    api.faults.append(Fault("sendMessage", lose_answer=True))
    error = told(api)

    assert isinstance(error, NetworkError)
    assert fault_of(error, attempts=0).maybe_sent
    assert len(api.calls) == 1


def test_no_error_of_the_wire_tells_the_token(api: BotApi) -> None:
    """The address of a call has it in it."""
    api.faults.append(Fault("sendMessage", lose_answer=True))
    error: BaseException | None = told(api)
    texts = []
    while error is not None:
        texts.append(str(error))
        error = error.__cause__

    assert texts
    assert not any(TOKEN in text for text in texts)


def test_a_file_keeps_its_name(api: BotApi) -> None:
    """Also one with accents and spaces."""

    async def send() -> None:
        bot = Bot(TOKEN, base_url=f"{api.url}/bot", request=Wire(1, 5.0), get_updates_request=Wire(1, 1.0))
        await bot.send_document(5, InputFile(b"%PDF", filename="azotea \u00e1rea 3.pdf", attach=False))
        await bot.request.shutdown()

    asyncio.run(send())

    assert api.sent("sendDocument")[0].files == {"document": b"%PDF"}
    assert api.sent("sendDocument")[0].names == {"document": "azotea \u00e1rea 3.pdf"}


def test_calls_share_one_connection(api: BotApi) -> None:
    """Opening one takes three ways to the messenger and back."""

    async def send() -> None:
        bot = Bot(TOKEN, base_url=f"{api.url}/bot", request=Wire(4, 5.0), get_updates_request=Wire(1, 1.0))
        for _ in range(5):
            await bot.send_message(5, "pri 118V")
        await bot.request.shutdown()

    asyncio.run(send())

    assert len({call.peer for call in api.calls}) == 1


def test_a_wire_that_was_closed_can_be_used_again(api: BotApi) -> None:
    """The library asks for that."""

    async def twice() -> list[int]:
        wire, codes = Wire(1, 5.0), []
        for _ in range(2):
            code, _ = await wire.do_request(f"{api.url}/bot{TOKEN}/getMe", "GET")
            codes.append(code)
            await wire.shutdown()
        return codes

    assert asyncio.run(twice()) == [200, 200]
