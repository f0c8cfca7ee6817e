"""
What a message costs in `serve`, beside a bare echo bot on the same library that commits one row a message. One run, 50 chats.

    python -m tests.benchmarks.serve_throughput

CPU is the process's own time. The bots are measured in turn, some rounds of each, and the median of a bot's rounds counts: so what else
the machine does meets all of them alike. Latency is from the arrival at the messenger to the reply's call there: first with each chat
sending its next message when the last was answered; then at a steady rate, half of what the slower of the two can bear, the same for both.
"""

import argparse
import os
import statistics
import subprocess
import sys
import tempfile
import time
from collections.abc import Iterator
from contextlib import contextmanager
from dataclasses import dataclass
from pathlib import Path

from sqlalchemy import URL
from sqlalchemy.orm import Session

from bot import members
from bot.delivery.rounds import utc_now
from bot.store.schema import open_store
from tests.benchmarks.load import CHATS, Loop, Words, readings
from tests.bot.telegram.bot_api import TOKEN, BotApi
from tests.bot.telegram.phone import Phone
from tests.bot.telegram.served import OWNER

ROOT = Path(__file__).parents[2]
SERVE = [
    "-c",
    "import os; from bot.command_line import main; import sys; sys.argv = ['ohmreply', 'serve', '--api-url', os.environ['API_URL']]; main()",
]
HALF = 0.5
"""Of what the slower bot can bear: the rate at which the latencies are compared."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Bot:
    """One bot at one kind of message."""

    name: str
    command: tuple[str, ...]
    words: Words


ECHO = Bot(name="echo bot", command=("-m", "tests.benchmarks.bots", "echo"), words=lambda _, turn: f"pri {turn}V")
LEAN = Bot(name="echo bot, our client", command=("-m", "tests.benchmarks.bots", "lean"), words=ECHO.words)
"""For knowledge: the echo bot as nobody writes it, with the HTTP client that `serve` has."""
SERVED = (
    Bot(name="serve, no thinking", command=("-m", "tests.benchmarks.bots", "constant"), words=ECHO.words),
    Bot(name="serve, help", command=tuple(SERVE), words=lambda *_: "help"),
    Bot(name="serve, readings", command=tuple(SERVE), words=readings),
)


@dataclass(frozen=True, slots=True, kw_only=True)
class Burst:
    """A closed loop: each chat sends when it was answered."""

    cpu_ms: float
    """Of the process, a message."""
    a_second: float
    waits_ms: tuple[float, ...]


@contextmanager
def running(bot: Bot, api: BotApi, database: str) -> Iterator[subprocess.Popen[bytes]]:
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
        [sys.executable, *bot.command], env=environment, stdout=subprocess.DEVNULL, stderr=subprocess.DEVNULL
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


@contextmanager
def warm(bot: Bot) -> Iterator[tuple[subprocess.Popen[bytes], Loop]]:
    """A bot on a store of its own, with all chats let in, that has answered each of them."""
    with tempfile.TemporaryDirectory() as folder, BotApi() as api:
        url = URL.create("sqlite", database=str(Path(folder) / "jobs.sqlite"))
        numbers = range(6000, 6000 + CHATS)
        engine = open_store(url)
        with Session(engine) as session, session.begin():
            for number in numbers:
                members.join(session, number, "First", members.invite(session, OWNER, utc_now()), utc_now())
        engine.dispose()
        with running(bot, api, url.render_as_string()) as process:
            loop = Loop(api, [Phone(api, number) for number in numbers], bot.words)
            loop.closed(2 * CHATS)
            loop.waits_s.clear()
            yield process, loop


def burst(bot: Bot, messages: int) -> Burst:
    """So many messages as fast as they are answered."""
    with warm(bot) as (process, loop):
        before, began = cpu_s(process), time.monotonic()
        loop.closed(messages)
        used, took, done = cpu_s(process) - before, time.monotonic() - began, len(loop.waits_s)
    return Burst(cpu_ms=used / done * 1e3, a_second=done / took, waits_ms=tuple(wait * 1e3 for wait in loop.waits_s))


def steady(bot: Bot, messages: int, a_second: float) -> list[float]:
    """How many milliseconds each of so many messages waited at a steady rate."""
    with warm(bot) as (_, loop):
        loop.steady(messages, a_second)
    return [wait * 1e3 for wait in loop.waits_s]


def p95(waits_ms: list[float]) -> float:
    """The wait that one in twenty is longer than."""
    return statistics.quantiles(waits_ms, n=20)[-1]


def main() -> None:
    """Print the tables."""
    parser = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    parser.add_argument("--messages", type=int, default=600, help="of each bot in a round")
    parser.add_argument("--rounds", type=int, default=5)
    arguments = parser.parse_args()
    bots = (ECHO, LEAN, *SERVED)
    bursts: dict[str, list[Burst]] = {bot.name: [] for bot in bots}
    for _ in range(arguments.rounds):
        for bot in bots:
            bursts[bot.name].append(burst(bot, arguments.messages))
    cpu = {name: statistics.median(one.cpu_ms for one in those) for name, those in bursts.items()}
    pace = {name: statistics.median(one.a_second for one in those) for name, those in bursts.items()}
    waits = {name: p95([wait for one in those for wait in one.waits_ms]) for name, those in bursts.items()}
    print(f"closed loop, {CHATS} chats, {arguments.rounds} rounds of {arguments.messages} messages; ratios to the echo bot")
    print(f"{'':22}{'CPU ms':>8}{'ratio':>7}{'msg/s':>8}{'p95 ms':>9}{'ratio':>7}")
    for name, cpu_ms in cpu.items():
        ratios = cpu_ms / cpu[ECHO.name], waits[name] / waits[ECHO.name]
        print(f"{name:22}{cpu_ms:8.2f}{ratios[0]:7.2f}{pace[name]:8.0f}{waits[name]:9.1f}{ratios[1]:7.2f}")
    print("\nsteady load, the same for both")
    print(f"{'':22}{'msg/s':>8}{'p50 ms':>9}{'echo':>8}{'p95 ms':>9}{'echo':>8}{'ratio':>7}", flush=True)
    for bot in SERVED:
        rate = HALF * min(pace[bot.name], pace[ECHO.name])
        ours: list[float] = []
        theirs: list[float] = []
        for _ in range(arguments.rounds):
            theirs += steady(ECHO, arguments.messages // 2, rate)
            ours += steady(bot, arguments.messages // 2, rate)
        print(
            f"{bot.name:22}{rate:8.0f}{statistics.median(ours):9.1f}{statistics.median(theirs):8.1f}"
            f"{p95(ours):9.1f}{p95(theirs):8.1f}{p95(ours) / p95(theirs):7.2f}",
            flush=True,
        )


if __name__ == "__main__":
    main()
