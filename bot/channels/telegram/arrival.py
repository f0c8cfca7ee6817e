"""An update as this channel sees it: who, where, and one of a few kinds of thing."""

import re
from collections.abc import Mapping
from dataclasses import dataclass
from datetime import datetime
from typing import Any, Literal

from telegram import Message, MessageEntity, Update, User

from bot.delivery.rounds import UnreadableError

Kind = Literal["text", "command", "photo", "tap", "voice", "video", "other", "paper"]

SORTS: tuple[tuple[str, Kind], ...] = (
    ("voice", "voice"),
    ("audio", "voice"),
    ("video_note", "video"),
    ("video", "video"),
    ("animation", "video"),
    ("document", "paper"),
    ("sticker", "other"),
    ("location", "other"),
    ("contact", "other"),
    ("poll", "other"),
    ("dice", "other"),
    ("game", "other"),
    ("story", "other"),
    ("paid_media", "other"),
)
"""What a message can carry instead of text -> how it is answered. An animation also counts as a document, so it comes first."""

PHOTO_TYPES = frozenset({"image/jpeg", "image/png", "image/webp"})


@dataclass(frozen=True, slots=True, kw_only=True)
class Me:
    """The bot's own account."""

    user_id: int
    username: str


@dataclass(frozen=True, slots=True, kw_only=True)
class Photo:
    """A photo that can be fetched."""

    file_id: str
    bytes_long: int | None


@dataclass(frozen=True, slots=True, kw_only=True)
class Tap:
    """A button that was tapped."""

    query_id: str
    data: str
    page: str | None
    """The text that the button stands under, with its marks; None where it is too old to be changed."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Arrival:
    """One thing that somebody sent to the bot."""

    kind: Kind
    update_id: int
    chat_id: int
    is_group: bool
    user_id: int
    name: str
    language: str
    """Of the person's program, where nothing better is known."""
    message_id: int
    """What an answer quotes: their message, or the one under which they tapped."""
    sent_at: datetime
    text: str = ""
    edited: bool = False
    thread: int | None = None
    photo: Photo | None = None
    tap: Tap | None = None

    @property
    def address(self) -> str:
        """Whom the desk answers. In a group somebody has jobs of its own: what was said in private is never shown there."""
        return f"{self.user_id}@{self.chat_id}" if self.is_group else str(self.user_id)


def read(raw: Mapping[str, Any], me: Me, received_at: datetime) -> Arrival | None:
    """
    What an update brings; None where it is not for us.

    Raises:
        UnreadableError: The library can't read it.
    """
    try:
        update = Update.de_json(dict(raw), None)
        if update.callback_query is not None:
            return _tap(update, received_at)
        message = update.message or update.edited_message
        assert message is not None, "no other kind is asked for"
        return _message(update, message, me)
    except Exception as error:
        raise UnreadableError(type(error).__name__) from error


def _person(user: User) -> dict[str, Any]:
    return {"user_id": user.id, "name": user.full_name, "language": (user.language_code or "en").split("-")[0]}


def _tap(update: Update, received_at: datetime) -> Arrival | None:
    query = update.callback_query
    assert query is not None
    if query.message is None or query.from_user.is_bot:
        return None
    message = query.message if isinstance(query.message, Message) else None
    return Arrival(
        kind="tap",
        update_id=update.update_id,
        chat_id=query.message.chat.id,
        is_group=query.message.chat.type != "private",
        message_id=query.message.message_id,
        sent_at=received_at,
        thread=_thread(message) if message else None,
        tap=Tap(query_id=query.id, data=query.data or "", page=message.text_html if message and message.text else None),
        **_person(query.from_user),
    )


def _message(update: Update, message: Message, me: Me) -> Arrival | None:
    user = message.from_user
    if user is None or user.is_bot or message.sender_chat is not None:
        return None
    is_group = message.chat.type != "private"
    if is_group and not _is_addressed(message, me):
        return None
    kind = _kind(message)
    if kind is None:
        return None
    photo = _photo(message)
    text = _words(message.text or message.caption or "", me)
    return Arrival(
        kind="photo" if photo else "command" if kind == "text" and re.match(r"/[A-Za-z]", text) else kind,
        update_id=update.update_id,
        chat_id=message.chat.id,
        is_group=is_group,
        message_id=message.message_id,
        sent_at=message.edit_date or message.date,
        text=text,
        edited=update.edited_message is not None,
        thread=_thread(message),
        photo=photo,
        **_person(user),
    )


def _thread(message: Message) -> int | None:
    return message.message_thread_id if message.is_topic_message else None


def _kind(message: Message) -> Kind | None:
    """None for what no person typed: a title changed, somebody joined."""
    if message.text is not None:
        return "text"
    if message.photo:
        return "photo"
    return next((kind for name, kind in SORTS if getattr(message, name)), None)


def _photo(message: Message) -> Photo | None:
    if message.photo:
        best = max(message.photo, key=lambda size: size.width * size.height)
        return Photo(file_id=best.file_id, bytes_long=best.file_size)
    if message.document and message.document.mime_type in PHOTO_TYPES and not message.animation:
        return Photo(file_id=message.document.file_id, bytes_long=message.document.file_size)
    return None


def _is_addressed(message: Message, me: Me) -> bool:
    """A command to us, a reply to us, or our name."""
    replied = message.reply_to_message
    if replied is not None and replied.from_user is not None and replied.from_user.id == me.user_id:
        return True
    ours = f"@{me.username}".lower()
    entities = message.parse_entities() or message.parse_caption_entities()
    for entity, said in entities.items():
        match entity.type:
            case MessageEntity.MENTION if said.lower() == ours:
                return True
            case MessageEntity.BOT_COMMAND if said.lower().endswith(ours):
                return True
            case MessageEntity.TEXT_MENTION if entity.user is not None and entity.user.id == me.user_id:
                return True
    return False


def _words(text: str, me: Me) -> str:
    """The text without our own name."""
    return re.sub(rf"\s?@{re.escape(me.username)}\b", "", text, flags=re.IGNORECASE).strip() if me.username else text.strip()
