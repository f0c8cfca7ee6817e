"""
Whether anything grows with history.

    python -m tests.benchmarks.history_growth

CPU milliseconds a reply in a new job while the technician has ten, a hundred, a thousand closed jobs; the same in a job that itself has
ten to five thousand messages; and folding that job anew, as after a restart.
"""

import statistics
import sys
import tempfile
import time
from datetime import UTC, datetime
from pathlib import Path

from sqlalchemy import Engine
from sqlalchemy.orm import Session

from bot import one_thread  # noqa: F401  (as the commands do, before numpy)
from bot.desk import Incoming, Memory, take
from bot.store import log
from bot.store.jobs import close_job, job_with, open_job
from bot.store.schema import open_store
from bot.store.technicians import welcome

NOW = datetime(2026, 3, 2, 8, 0, tzinfo=UTC)
HISTORIES = (10, 100, 1_000, 10_000)
LENGTHS = (20, 100, 1_000, 5_000)
ASKED = 15
"""Replies that each figure is the median of."""
GROWTH = 1.5
"""A reply behind the longest history may cost so many times that behind the shortest."""
FOLD_S = 1.0
"""Folding five thousand messages. [s]"""
TEXTS = ("pri {0}V", "sec {1}V", "pri ohm {2}", "undo", "R-C {1}V")


def reply_ms(engine: Engine, memory: Memory, text: str, job: str | None = None) -> float:
    """CPU of one message, committed."""
    sent = Incoming(channel="local", address="t1", name="t1", text=text, sent_at=NOW, job=job)
    before = time.process_time()
    with Session(engine) as session:
        take(session, sent, memory)
        session.commit()
    return (time.process_time() - before) * 1000


def text_of(number: int) -> str:
    """A reading, another each time."""
    return TEXTS[number % len(TEXTS)].format(110 + number % 15, 20 + number % 7, 15 + number % 9)


def behind_closed_jobs(engine: Engine) -> list[float]:
    """Median cost of a reply behind each history."""
    memory, closed, medians = Memory(), 0, []
    reply_ms(engine, memory, "new job warm")
    for history in HISTORIES:
        with Session(engine) as session:
            who = welcome(session, "local", "t1", "t1", NOW)
            for number in range(closed, history):
                job = open_job(session, who, NOW, name=f"unit {number}")
                job.turns = 1
                close_job(session, job, "done", NOW)
            session.commit()
        closed = history
        reply_ms(engine, memory, f"new job now {history}")
        medians.append(statistics.median(reply_ms(engine, memory, text_of(number)) for number in range(ASKED)))
    return medians


def lengthen(engine: Engine, memory: Memory, length: int) -> None:
    """
    Bring the job up to a length with messages as they would have been logged.

    Their replies are those of a short job: what a reply holds does not grow with the log, and thinking five thousand out takes minutes.
    """
    with Session(engine) as session:
        who = welcome(session, "local", "t1", "t1", NOW)
        pattern = log.read(session, job_with(session, who, "pattern"))
        job = job_with(session, who, "long") or open_job(session, who, NOW, channel_job="long")
        while job.turns < length:
            message, reply = pattern[job.turns % len(pattern)]
            sent = log.Sent(message_id=f"long {job.turns}", revision=0, text=message.text, sent_at=NOW)
            log.append(session, who, job, sent, log.Answered(record=reply.record, talk=reply.talk, language=reply.language))
        session.commit()


def in_long_jobs(engine: Engine) -> tuple[list[float], float]:
    """Median cost of a reply in a job of each length, and what a restart costs in the longest."""
    memory, medians = Memory(), []
    for number in range(len(TEXTS) * 3):
        reply_ms(engine, memory, text_of(number), job="pattern")
    for length in LENGTHS:
        lengthen(engine, memory, length - ASKED)
        reply_ms(engine, memory, text_of(0), job="long")
        medians.append(statistics.median(reply_ms(engine, memory, text_of(number), job="long") for number in range(1, ASKED)))
    return medians, (reply_ms(engine, Memory(), "next", job="long") - medians[-1]) / 1000


def main() -> int:
    """Measure, show, and leave with 1 where something grows too much."""
    with tempfile.TemporaryDirectory() as folder:
        engine = open_store(f"sqlite:///{Path(folder) / 'jobs.sqlite'}")
        closed = behind_closed_jobs(engine)
        long, fold_s = in_long_jobs(engine)
        engine.dispose()
    for history, cost in zip(HISTORIES, closed, strict=True):
        print(f"behind {history:>6} closed jobs: {cost:.1f} ms a reply")
    for length, cost in zip(LENGTHS, long, strict=True):
        print(f"in a job of {length:>5} messages: {cost:.1f} ms a reply")
    print(f"folding {LENGTHS[-1]} messages anew: {fold_s:.2f} s (limit {FOLD_S:.0f})")
    grown = max(closed[-1] / closed[0], long[-1] / long[0])
    print(f"the longest against the shortest: {grown:.2f} times (limit {GROWTH})")
    return 0 if grown <= GROWTH and fold_s <= FOLD_S else 1


if __name__ == "__main__":
    sys.exit(main())
