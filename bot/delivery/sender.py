"""One letter to the messenger, through the library."""

import asyncio
import html
import re
from collections.abc import Awaitable, Callable, Mapping
from concurrent.futures import ThreadPoolExecutor
from typing import Any

from telegram import (
    Bot,
    InlineKeyboardButton,
    InlineKeyboardMarkup,
    InputFile,
    LinkPreviewOptions,
    Message,
    ReplyParameters,
)
from telegram.constants import ChatAction, ParseMode
from telegram.error import TelegramError

from bot.delivery.letters import Letter, Unsent

NO_PREVIEW = LinkPreviewOptions(is_disabled=True)
ACTION_TIMEOUT_S = 2.0
"""A sign that something is on its way may not hold up the thing itself. [s]"""
UPLOAD_TIMEOUT_S = 60.0
PEN = ThreadPoolExecutor(1, "pen")
"""One thread draws: the drawing library keeps its fonts by thread."""


async def send(bot: Bot, unsent: Unsent) -> int | None:
    """
    Send one row; the id that it got, where its kind gets one.

    A row that may have arrived before comes without a sound.

    Raises:
        telegram.error.TelegramError: It was refused, or nobody knows whether it arrived.
    """
    return await CALLS[unsent.letter.kind](bot, unsent)


async def _text(bot: Bot, unsent: Unsent) -> int | None:
    letter = unsent.letter
    body = letter.body
    sent = await bot.send_message(
        unsent.chat_id,
        body["text"],
        parse_mode=ParseMode.HTML if body.get("html", True) else None,
        reply_parameters=_quote(letter),
        message_thread_id=body.get("thread"),
        reply_markup=keyboard(body.get("buttons")),
        link_preview_options=NO_PREVIEW,
        disable_notification=unsent.again or None,
    )
    return sent.message_id


async def _edit(bot: Bot, unsent: Unsent) -> int | None:
    body = unsent.letter.body
    changed = await bot.edit_message_text(
        body["text"],
        chat_id=unsent.chat_id,
        message_id=body["message"],
        parse_mode=ParseMode.HTML if body.get("html", True) else None,
        reply_markup=keyboard(body.get("buttons")),
        link_preview_options=NO_PREVIEW,
    )
    return changed.message_id if isinstance(changed, Message) else int(body["message"])


async def _photo(bot: Bot, unsent: Unsent) -> int | None:
    return await _upload(bot, unsent, bot.send_photo, ChatAction.UPLOAD_PHOTO)


async def _drawn(file: bytes) -> bytes:
    """A picture that was kept as SVG text, drawn beside the loop: the sign stands meanwhile, and other chats go on."""
    if not file.startswith(b"<svg"):
        return file
    from bot.pictures.canvas import rendered  # noqa: PLC0415

    return await asyncio.get_running_loop().run_in_executor(PEN, rendered, file.decode())


async def _document(bot: Bot, unsent: Unsent) -> int | None:
    return await _upload(bot, unsent, bot.send_document, ChatAction.UPLOAD_DOCUMENT)


async def _upload(bot: Bot, unsent: Unsent, send_file: Callable[..., Awaitable[Message]], action: ChatAction) -> int | None:
    letter = unsent.letter
    await _on_its_way(bot, unsent, action)
    file = await _drawn(letter.file or b"")
    sent = await send_file(
        unsent.chat_id,
        InputFile(file, filename=letter.body["name"], attach=False),
        caption=letter.body.get("caption"),
        reply_parameters=_quote(letter),
        message_thread_id=letter.body.get("thread"),
        disable_notification=unsent.again or None,
        write_timeout=UPLOAD_TIMEOUT_S,
        read_timeout=UPLOAD_TIMEOUT_S,
    )
    return sent.message_id


async def _tapped(bot: Bot, unsent: Unsent) -> int | None:
    await bot.answer_callback_query(unsent.letter.body["query"], text=unsent.letter.body.get("text"))
    return None


async def _on_its_way(bot: Bot, unsent: Unsent, action: ChatAction) -> None:
    try:
        await bot.send_chat_action(
            unsent.chat_id, action, message_thread_id=unsent.letter.body.get("thread"), read_timeout=ACTION_TIMEOUT_S
        )
    except TelegramError:
        return  # the sign is a courtesy; the file itself says whether anything is wrong


def _quote(letter: Letter) -> ReplyParameters | None:
    if letter.answers is None:
        return None
    return ReplyParameters(letter.answers, allow_sending_without_reply=True)


def keyboard(rows: list[list[list[str]]] | None) -> InlineKeyboardMarkup | None:
    """The buttons of a body: rows of (text, what comes back with a tap)."""
    if not rows:
        return None
    return InlineKeyboardMarkup([[InlineKeyboardButton(text, callback_data=data) for text, data in row] for row in rows])


def without_marks(body: Mapping[str, Any]) -> dict[str, Any]:
    """
    The body as plain text, for a messenger that refused its marks.

    >>> without_marks({"text": "<b>bad</b> &lt; 1 ohm"})
    {'text': 'bad < 1 ohm', 'html': False}
    """
    return {**body, "text": html.unescape(re.sub(r"</?[a-z]+>", "", body["text"])), "html": False}


CALLS: Mapping[str, Callable[[Bot, Unsent], Awaitable[int | None]]] = {
    "text": _text,
    "edit": _edit,
    "photo": _photo,
    "document": _document,
    "tapped": _tapped,
}
