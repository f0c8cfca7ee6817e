"""Fifty chats that send, and know when each was answered."""

import random
import time
from collections.abc import Callable

from tests.bot.telegram.bot_api import BotApi
from tests.bot.telegram.phone import Phone

CHATS = 50
Words = Callable[[int, int], str]
"""What a chat sends: of its number, and of how many it sent before."""
READINGS = ("new job", "pri {volts:.1f}V sec {low:.2f}V", "pri-ohm open", "R-C ohms {ohms:.1f}", "what next?")
"""A short job, over and over."""


def readings(chat: int, turn: int) -> str:
    """No two jobs read the same numbers, as in use: what was thought out for one is of no help to another."""
    job, step = divmod(turn, len(READINGS))
    rng = random.Random(chat * 100_000 + job)
    volts, low, ohms = rng.uniform(110.0, 128.0), rng.uniform(0.0, 0.9), rng.uniform(15.0, 45.0)
    return READINGS[step].format(volts=volts, low=low, ohms=ohms)


class Loop:
    """Fifty chats that send, and know when each was answered."""

    def __init__(self, api: BotApi, phones: list[Phone], words: Words) -> None:
        self.api, self.phones, self.words = api, phones, words
        self.turns = dict.fromkeys((phone.chat_id for phone in phones), 0)
        self.sent_at: dict[int, float] = {}
        self.seen = 0
        self.waits_s: list[float] = []

    def send(self, phone: Phone) -> None:
        """The next message of one chat."""
        self.sent_at[phone.chat_id] = time.monotonic()
        phone.send(self.words(phone.chat_id, self.turns[phone.chat_id]))
        self.turns[phone.chat_id] += 1

    def answered(self) -> list[int]:
        """The chats answered since the last look."""
        calls = self.api.calls[self.seen :]
        self.seen += len(calls)
        chats = []
        for call in calls:
            if call.method == "sendMessage":
                chat = int(call.args["chat_id"])
                self.waits_s.append(call.at - self.sent_at[chat])
                chats.append(chat)
        return chats

    def closed(self, messages: int) -> None:
        """Each chat sends when it was answered."""
        by_chat = {phone.chat_id: phone for phone in self.phones}
        for phone in self.phones:
            self.send(phone)
        left, open_ = messages - len(self.phones), len(self.phones)
        end = time.monotonic() + 300
        while open_ and time.monotonic() < end:
            for chat in self.answered():
                open_ -= 1
                if left > 0:
                    self.send(by_chat[chat])
                    left, open_ = left - 1, open_ + 1
            time.sleep(0.001)

    def steady(self, messages: int, a_second: float) -> None:
        """So many a second, each from a chat that was answered."""
        rng = random.Random(5)
        free = {phone.chat_id: phone for phone in self.phones}
        by_chat = dict(free)
        for _ in range(messages):
            end = time.monotonic() + rng.expovariate(a_second)
            while time.monotonic() < end:
                free.update((chat, by_chat[chat]) for chat in self.answered())
                time.sleep(0.001)
            if free:
                self.send(free.pop(rng.choice(list(free))))
        end = time.monotonic() + 30
        while len(free) < len(self.phones) and time.monotonic() < end:
            free.update((chat, by_chat[chat]) for chat in self.answered())
            time.sleep(0.002)
