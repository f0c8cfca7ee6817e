"""
One and two workers on PostgreSQL behind a webhook: how many messages a second, and what bounds them.

    python -m tests.benchmarks.two_workers

Beside the pace stands the processor time a message of each part: workers, database, the stand-in of the messenger (which in use is not on
this machine). Where these add up to all the machine's processors, more workers can't help; the last line says so.
"""

import argparse
import os
import time
from dataclasses import dataclass
from pathlib import Path

from sqlalchemy import URL
from sqlalchemy.orm import Session

from bot import members
from bot.delivery.rounds import utc_now
from bot.store.schema import open_store
from tests.benchmarks.load import CHATS, Loop, Words, readings
from tests.benchmarks.servers import postgres
from tests.bot.telegram.bot_api import BotApi
from tests.bot.telegram.phone import Phone
from tests.bot.telegram.process import Process, free_port
from tests.bot.telegram.served import OWNER

FREE = {"OHMREPLY_MESSAGES_A_SECOND": "0", "OHMREPLY_MESSAGES_A_MINUTE": "1000000"}
WORDS: dict[str, Words] = {"help": lambda *_: "help", "readings": readings}


@dataclass(frozen=True, slots=True, kw_only=True)
class Paced:
    """How it went with some workers."""

    a_second: float
    worker_ms: float
    """Processor time a message, all workers together."""
    database_ms: float
    stand_in_ms: float
    machine_busy: float
    """Processors of the machine that were at work, ours or not."""


def ticks(pid: int) -> float:
    """Seconds of processor time of a process, and of its children that ended."""
    fields = Path(f"/proc/{pid}/stat").read_text().rsplit(") ", 1)[1].split()
    return sum(int(field) for field in fields[11:15]) / os.sysconf("SC_CLK_TCK")


def database_s() -> float:
    """Seconds of processor time of all of PostgreSQL's processes."""
    total = 0.0
    for folder in Path("/proc").iterdir():
        try:
            if folder.name.isdigit() and (folder / "comm").read_text().startswith("postgres"):
                fields = (folder / "stat").read_text().rsplit(") ", 1)[1].split()
                total += (int(fields[11]) + int(fields[12])) / os.sysconf("SC_CLK_TCK")
        except OSError:
            continue
    return total


def machine_s() -> float:
    """Seconds of processor time of everything on the machine."""
    fields = [int(field) for field in Path("/proc/stat").read_text().split("\n", 1)[0].split()[1:]]
    return (sum(fields[:3]) + sum(fields[5:8])) / os.sysconf("SC_CLK_TCK")


def pace(url: URL, workers: int, words: Words, messages: int, latency_s: float) -> Paced:
    """Some workers on an empty store."""
    engine = open_store(url)
    numbers = range(6000, 6000 + CHATS)
    with Session(engine) as session, session.begin():
        for number in numbers:
            members.join(session, number, "First", members.invite(session, OWNER, utc_now()), utc_now())
    engine.dispose()
    with BotApi() as api:
        api.latency_s = latency_s
        ports = [free_port() for _ in range(workers)]
        crew = [
            Process(api, url, "--webhook", f"http://127.0.0.1:{port}", "--listen", f"127.0.0.1:{port}", **FREE)
            for port in ports
        ]
        try:
            api.wait(lambda: len(api.sent("setWebhook")) == workers, 60)
            api.spread = [f"http://127.0.0.1:{port}/telegram" for port in ports]
            loop = Loop(api, [Phone(api, number) for number in numbers], words)
            loop.closed(3 * CHATS)
            loop.waits_s.clear()
            before = [sum(ticks(one.run.pid) for one in crew), database_s(), time.process_time(), machine_s()]
            began = time.monotonic()
            loop.closed(messages)
            took, done = time.monotonic() - began, len(loop.waits_s)
            after = [sum(ticks(one.run.pid) for one in crew), database_s(), time.process_time(), machine_s()]
        finally:
            for one in crew:
                one.stop()
    used = [b - a for a, b in zip(before, after, strict=True)]
    return Paced(
        a_second=done / took,
        worker_ms=used[0] / done * 1e3,
        database_ms=used[1] / done * 1e3,
        stand_in_ms=used[2] / done * 1e3,
        machine_busy=used[3] / took,
    )


def main() -> None:
    """Print the table."""
    parser = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    parser.add_argument("--messages", type=int, default=1_000)
    parser.add_argument("--words", choices=sorted(WORDS), default="readings")
    parser.add_argument("--latency", type=float, default=0.0, help="seconds that the messenger takes for an answer")
    arguments = parser.parse_args()
    processors = len(os.sched_getaffinity(0))
    got = []
    for workers in (1, 2):
        with postgres() as url:
            got.append(pace(url, workers, WORDS[arguments.words], arguments.messages, arguments.latency))
        one = got[-1]
        ours = (one.worker_ms + one.database_ms + one.stand_in_ms) * one.a_second / 1e3
        print(
            f"{workers} worker{'s' * (workers > 1)}: {one.a_second:6.1f} messages/s; a message: workers {one.worker_ms:.2f} ms, "
            f"database {one.database_ms:.2f} ms, stand-in {one.stand_in_ms:.2f} ms; processors at work {ours:.2f} ours, "
            f"{one.machine_busy:.2f} in all, of {processors}",
            flush=True,
        )
    print(f"two do {got[1].a_second / got[0].a_second:.2f} times the messages of one")
    most = processors / ((got[1].worker_ms + got[1].database_ms + got[1].stand_in_ms) / 1e3)
    print(f"{processors} processors, all ours, could do {most:.0f} messages/s with the stand-in and the database on them")
    if got[1].machine_busy > 0.85 * processors:
        print("the machine's processors were all at work: they bound it, not locks")


if __name__ == "__main__":
    main()
