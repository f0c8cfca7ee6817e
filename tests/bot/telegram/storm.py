"""Messages under way while the process is killed again and again; then the count of what became of them."""

import random
import time
from bisect import bisect
from collections import Counter
from collections.abc import Callable
from dataclasses import dataclass, field
from itertools import pairwise

from tests.bot.telegram.bot_api import BotApi
from tests.bot.telegram.phone import Phone
from tests.bot.telegram.process import Process

SERVING = 0.8
"""So many of the kills meet a process that serves; the rest meet it wherever it is, starting or not."""
START_S = 20.0
"""No start is waited for longer. [s]"""


@dataclass
class Tally:
    """What became of the messages."""

    kills: int = 0
    messages: int = 0
    lost: list[int] = field(default_factory=list)
    """Messages that nobody answered."""
    repeats: int = 0
    """Replies beyond the first to a message."""
    most_repeats: int = 0
    """Most repeats that one kill caused."""
    loud_repeats: int = 0
    """Repeats that made a sound: there should be none."""
    out_of_order: int = 0

    def __str__(self) -> str:
        return (
            f"{self.kills} kills, {self.messages} messages: {len(self.lost)} lost, {self.repeats} repeated "
            f"({self.repeats / max(self.kills, 1):.2f} a kill, at most {self.most_repeats} by one), {self.loud_repeats} with a sound, "
            f"{self.out_of_order} out of order"
        )


def storm(
    api: BotApi,
    start: Callable[[], Process],
    phones: list[Phone],
    *,
    kills: int,
    a_second: float,
    seed: int,
    others: int = 0,
) -> Tally:
    """
    Kill at random moments while messages come in.

    Args:
        api: The stand-in.
        start: Starts one process.
        phones: Who writes, in turn.
        kills: How often.
        a_second: Messages a second.
        seed: Of the moments.
        others: Processes that run beside the one that is killed next.
    """
    rng, tally = random.Random(seed), Tally()
    crew = [start() for _ in range(others + 1)]
    sent: list[tuple[Phone, int]] = []
    struck: list[float] = []
    try:
        phones[0].wait(phones[0].send("pri 118V"), 60)
        known = 0
        for _ in range(kills):
            if rng.random() < SERVING:
                _until_serving(api, known)
            end = time.monotonic() + rng.uniform(0.05, 1.2)
            while time.monotonic() < end:
                phone = rng.choice(phones)
                sent.append((phone, phone.send(f"pri {rng.randint(100, 130)}V sec {rng.randint(0, 28)}V")))
                time.sleep(rng.expovariate(a_second))
            victim = rng.randrange(len(crew))
            crew[victim].kill()
            struck.append(time.monotonic())
            tally.kills += 1
            known = _served(api)
            crew[victim] = start()
        for phone, message in sent:
            try:
                phone.wait(message, 90)
            except TimeoutError:
                tally.lost.append(message)
        time.sleep(1.0)
    finally:
        for process in crew:
            process.kill()
    tally.messages = len(sent)
    _count(api, phones, sent, tally, struck)
    return tally


def _served(api: BotApi) -> int:
    """How many processes got as far as serving."""
    return len(api.sent("deleteWebhook", "setWebhook"))


def _until_serving(api: BotApi, known: int) -> None:
    """Wait for one more than were known: how long a start takes depends on what else the machine does."""
    end = time.monotonic() + START_S
    while _served(api) <= known and time.monotonic() < end:
        time.sleep(0.02)


def _count(api: BotApi, phones: list[Phone], sent: list[tuple[Phone, int]], tally: Tally, struck: list[float]) -> None:
    by_kill: Counter[int] = Counter()
    for phone, message in sent:
        answers = phone.answers(message)
        tally.repeats += max(len(answers) - 1, 0)
        by_kill.update(bisect(struck, one["at"]) for one in answers[:-1])  # the first kill after a reply is why it comes again
        tally.loud_repeats += sum(not one["silent"] for one in answers[1:])
    tally.most_repeats = max(by_kill.values(), default=0)
    for phone in phones:
        firsts: dict[int, int] = {}
        for (chat, number), shown in sorted(api.messages.items()):
            if chat == phone.chat_id and shown["quotes"] is not None:
                firsts.setdefault(shown["quotes"], number)
        order = [firsts[message] for one, message in sent if one is phone and message in firsts]
        tally.out_of_order += sum(a > b for a, b in pairwise(order))
