"""
What a message costs in `serve`, beside a bare echo bot on the same library that commits one row a message. One run, 50 chats.

    python -m tests.benchmarks.serve_throughput

CPU is the process's own time, so that others on the machine don't matter much. Latency is from the arrival at the messenger to the reply's
call there, first with each chat sending its next message when the last was answered, then at a steady rate that the messenger allows.
"""

import argparse
import os
import random
import statistics
import subprocess
import sys
import tempfile
import time
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from dataclasses import dataclass
from pathlib import Path

from sqlalchemy import URL
from sqlalchemy.orm import Session

from bot import members
from bot.delivery.rounds import utc_now
from bot.store.schema import open_store
from tests.bot.telegram.bot_api import TOKEN, BotApi
from tests.bot.telegram.phone import Phone
from tests.bot.telegram.served import OWNER

ROOT = Path(__file__).parents[2]
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


@dataclass(frozen=True, slots=True, kw_only=True)
class Measured:
    """One bot at one kind of message."""

    name: str
    cpu_ms: float
    """Of the process, a message, in the closed loop."""
    a_second: float
    closed_p95_ms: float
    steady_p50_ms: float
    steady_p95_ms: float


@contextmanager
def running(command: list[str], api: BotApi, database: str) -> Iterator[subprocess.Popen[bytes]]:
    """A bot's process."""
    environment = {
        **os.environ,
        "OHMREPLY_TOKEN": TOKEN,
        "OHMREPLY_OWNER": str(OWNER),
        "OHMREPLY_DATABASE": database,
        "OHMREPLY_MESSAGES_A_SECOND": "0",
        "OHMREPLY_MESSAGES_A_MINUTE": "10000000",
        "API_URL": api.url,
        "PYTHONPATH": str(ROOT),
    }
    process = subprocess.Popen(
        [sys.executable, *command], env=environment, stdout=subprocess.DEVNULL, stderr=subprocess.DEVNULL
    )
    try:
        yield process
    finally:
        process.terminate()
        process.wait(20)


def cpu_s(process: subprocess.Popen[bytes]) -> float:
    """Seconds of processor time that a process has used so far."""
    fields = Path(f"/proc/{process.pid}/stat").read_text().rsplit(") ", 1)[1].split()
    return (int(fields[11]) + int(fields[12])) / os.sysconf("SC_CLK_TCK")


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


def measure(name: str, command: list[str], words: Words, messages: int, a_second: float) -> Measured:
    """One bot, one kind of message."""
    with tempfile.TemporaryDirectory() as folder, BotApi() as api:
        url = URL.create("sqlite", database=str(Path(folder) / "jobs.sqlite"))
        numbers = range(6000, 6000 + CHATS)
        engine = open_store(url)
        with Session(engine) as session, session.begin():
            for number in numbers:
                members.join(session, number, "First", members.invite(session, OWNER, utc_now()), utc_now())
        engine.dispose()
        phones = [Phone(api, number) for number in numbers]
        with running([*command], api, url.render_as_string()) as process:
            loop = Loop(api, phones, words)
            loop.closed(2 * CHATS)  # warm
            loop.waits_s.clear()
            before, began = cpu_s(process), time.monotonic()
            loop.closed(messages)
            used, took = cpu_s(process) - before, time.monotonic() - began
            closed, done = list(loop.waits_s), len(loop.waits_s)
            loop.waits_s.clear()
            loop.steady(messages // 3, a_second)
            steady = list(loop.waits_s)
    return Measured(
        name=name,
        cpu_ms=used / done * 1e3,
        a_second=done / took,
        closed_p95_ms=statistics.quantiles(closed, n=20)[-1] * 1e3,
        steady_p50_ms=statistics.median(steady) * 1e3,
        steady_p95_ms=statistics.quantiles(steady, n=20)[-1] * 1e3,
    )


SERVE = [
    "-c",
    "import os; from bot.command_line import main; import sys; sys.argv = ['ohmreply', 'serve', '--api-url', os.environ['API_URL']]; main()",
]


def main() -> None:
    """Print the table."""
    parser = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    parser.add_argument("--messages", type=int, default=2_000)
    parser.add_argument("--rate", type=float, default=25.0, help="messages a second of the steady load")
    arguments = parser.parse_args()
    rows = [
        ("echo bot", ["-m", "tests.benchmarks.bots", "echo"], lambda _, turn: f"pri {turn}V"),
        ("serve, no thinking", ["-m", "tests.benchmarks.bots", "constant"], lambda _, turn: f"pri {turn}V"),
        ("serve, help", SERVE, lambda *_: "help"),
        ("serve, readings", SERVE, readings),
    ]
    echo = None
    print(f"{'':20}{'CPU ms':>8}{'ratio':>7}{'msg/s':>8}{'closed p95':>12}{'ratio':>7}{'steady p50':>12}{'p95':>8}{'ratio':>7}")
    for name, command, words in rows:
        got = measure(name, command, words, arguments.messages, arguments.rate)
        echo = echo or got
        print(
            f"{name:20}{got.cpu_ms:8.2f}{got.cpu_ms / echo.cpu_ms:7.2f}{got.a_second:8.0f}"
            f"{got.closed_p95_ms:12.1f}{got.closed_p95_ms / echo.closed_p95_ms:7.2f}"
            f"{got.steady_p50_ms:12.1f}{got.steady_p95_ms:8.1f}{got.steady_p95_ms / echo.steady_p95_ms:7.2f}",
            flush=True,
        )


if __name__ == "__main__":
    main()
