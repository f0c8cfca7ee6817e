"""What a technician does with a phone."""

import time
from typing import Any

from tests.bot.telegram.bot_api import BOT, OURS, BotApi


class Phone:
    """One person in one chat; a negative chat is a group."""

    def __init__(
        self, api: BotApi, user_id: int, *, name: str = "First", chat_id: int | None = None, language: str = "en"
    ) -> None:
        self.api, self.user_id, self.chat_id = api, user_id, chat_id or user_id
        self.now = time.time
        """The clock of the phone."""
        self.user = {"id": user_id, "is_bot": False, "first_name": name, "language_code": language}

    def message(self, **parts: Any) -> dict[str, Any]:
        """A message of this person, not yet sent."""
        kind = "private" if self.chat_id > 0 else "supergroup"
        chat = {"id": self.chat_id, "type": kind} | ({"title": "crew"} if self.chat_id < 0 else {"first_name": "First"})
        return {
            "message_id": self.api.next_message(),
            "date": int(self.now()),
            "chat": chat,
            "from": self.user,
            **parts,
        }

    def send(self, text: str, *, times: int = 1, **parts: Any) -> int:
        """Send a text; its id."""
        message = self.message(text=text, **_marks(text), **parts)
        self.api.push({"message": message}, times=times)
        return message["message_id"]

    def send_parts(self, **parts: Any) -> int:
        """Send something else than text; its id."""
        message = self.message(**parts)
        self.api.push({"message": message})
        return message["message_id"]

    def photo(self, body: bytes, caption: str | None = None, file_id: str = "photo1", **size: Any) -> int:
        """Send a photo; its id."""
        self.api.files[file_id] = body
        sizes = [
            {"file_id": "small", "file_unique_id": "small", "width": 90, "height": 60, "file_size": 900},
            {"file_id": file_id, "file_unique_id": file_id, "width": 900, "height": 600, "file_size": len(body), **size},
        ]
        return self.send_parts(photo=sizes, **({"caption": caption} if caption else {}))

    def edit(self, message_id: int, text: str) -> None:
        """Change a message that was sent."""
        message = self.message(text=text, edit_date=int(self.now()), **_marks(text)) | {"message_id": message_id}
        self.api.push({"edited_message": message})

    def tap(self, shown: dict[str, Any], label: str, *, data: str | None = None) -> str:
        """Tap a button under a message; the id of the query."""
        data = data or next(
            button["callback_data"]
            for row in shown["reply_markup"]["inline_keyboard"]
            for button in row
            if button["text"] == label
        )
        query_id = f"q{self.api.next_message()}"
        inner = {name: part for name, part in shown.items() if name not in OURS}
        self.api.push(
            {
                "callback_query": {
                    "id": query_id,
                    "from": self.user,
                    "chat_instance": "1",
                    "message": {**inner, "from": BOT},
                    "data": data,
                }
            }
        )
        return query_id

    def answers(self, message_id: int) -> list[dict[str, Any]]:
        """The bot's messages that quote one of ours, oldest first."""
        return [
            message
            for (chat, _), message in sorted(self.api.messages.items())
            if chat == self.chat_id and message["quotes"] == message_id
        ]

    def ask(self, text: str, **parts: Any) -> dict[str, Any]:
        """Send a text and wait for what answers it."""
        return self.wait(self.send(text, **parts))

    def wait(self, message_id: int, within_s: float = 10.0) -> dict[str, Any]:
        """The first of the bot's messages that quotes this one of ours."""
        return self.api.wait(lambda: self.answers(message_id), within_s)[0]


def _marks(text: str) -> dict[str, Any]:
    """Entities as a phone sets them: a command at the start, names with an @."""
    marks, at = [], 0
    for word in text.split(" "):
        if word.startswith("/") and at == 0:
            marks.append({"type": "bot_command", "offset": 0, "length": len(word)})
        if word.startswith("@"):
            marks.append({"type": "mention", "offset": len(text[:at].encode("utf-16-le")) // 2, "length": len(word)})
        at += len(word) + 1
    return {"entities": marks} if marks else {}
