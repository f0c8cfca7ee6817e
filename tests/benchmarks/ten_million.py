"""
What a message costs beside a store that is full: with no message in it, and with millions.

    python -m tests.benchmarks.ten_million                     a million
    python -m tests.benchmarks.ten_million --rows 10000000     ten of them: some gigabytes on the disk, some minutes

Each message goes the whole way but the network: written to the inbox, worked on at the desk, laid into the outbox, marked as sent. The rows
are in the log of jobs and in the delivery's own tables alike, which in use are cleared after three days. Median of messages of many technicians.
"""

import argparse
import statistics
import tempfile
import time
from datetime import UTC, timedelta
from pathlib import Path
from typing import Any

from sqlalchemy import URL, Engine, text
from sqlalchemy.orm import Session

from bot import members
from bot.channels.telegram.arrival import Me
from bot.channels.telegram.turn import Here, answer
from bot.delivery import inbox, outbox
from bot.delivery.outbox import Mark
from bot.delivery.rounds import utc_now
from bot.desk import Memory
from bot.store.schema import open_store
from tests.benchmarks.servers import postgres

A_JOB = 10
A_TECHNICIAN = 2_000
NOW = "2026-01-05 08:00:00.000000"


def fill(engine: Engine, rows: int) -> None:
    """So many messages with their replies, jobs and technicians, and as many rows of the delivery, by statements of the database's own."""
    numbers = {
        "sqlite": "WITH RECURSIVE n(i) AS (SELECT 1 UNION ALL SELECT i + 1 FROM n WHERE i < {to}) ",
        "postgresql": "WITH n(i) AS (SELECT generate_series(1, {to})) ",
    }[engine.dialect.name]
    people, jobs = rows // A_TECHNICIAN + 1, rows // A_JOB + 1
    at = f"'{NOW}'" if engine.dialect.name == "sqlite" else f"timestamptz '{NOW}+00'"
    record = '{"reply": "The primary is open", "buttons": [], "verdict": null}'
    yes = "1" if engine.dialect.name == "sqlite" else "true"
    statements = [
        (people, "INSERT INTO technician (id, channel, address, name, joined_at) {n} SELECT i, 'telegram', CAST(i + 100000 AS VARCHAR), 'First', {at} FROM n"),
        (people, "INSERT INTO member (user_id, name, role, joined_at, minute, sent) {n} SELECT i + 100000, 'First', 'member', {at}, 0, 0 FROM n"),
        (jobs, "INSERT INTO job (id, owner_id, name, opened_at, closed_at, last_at, turns) {n} SELECT i, i % {people} + 1, 'unit ' || i, {at}, {at}, {at}, 10 FROM n"),
        (rows, "INSERT INTO logged_message (id, job_id, technician_id, written_by, number, message_id, revision, text, sent_at) {n} SELECT i, i / 10 + 1, (i / 10 + 1) % {people} + 1, 'First', i % 10 + 1, CAST(i AS VARCHAR), 0, 'pri 118V sec 0V', {at} FROM n"),
        (rows, "INSERT INTO logged_reply (logged_message_id, record, language) {n} SELECT i, '{record}', 'en' FROM n"),
        (rows, "INSERT INTO inbox (update_id, chat_id, received_at, done_at, failures) {n} SELECT i, i % {people} + 100001, {at}, {at}, 0 FROM n"),
        (rows, "INSERT INTO outbox (update_id, number, chat_id, answers, kind, tried, attempts, message_id, done_at) {n} SELECT i, 0, i % {people} + 100001, i, 'text', {yes}, 0, i, {at} FROM n"),
    ]  # fmt: skip
    with engine.begin() as connection:
        for to, statement in statements:
            began = time.monotonic()
            head, select = statement.split("{n} ")
            values = {"at": at, "people": people, "yes": yes}
            select = select.replace("{record}", record.replace(":", "\\:"))
            for name, value in values.items():
                select = select.replace("{" + name + "}", str(value))
            if engine.dialect.name == "sqlite":
                connection.execute(text(f"{head} {numbers.format(to=to)} {select}"))
            else:
                connection.execute(text(f"{numbers.format(to=to)} {head} {select}"))
            print(f"  {statement.split()[2]:15} {to:>11,} rows {time.monotonic() - began:6.1f} s", flush=True)
    if engine.dialect.name == "sqlite":  # one huge transaction leaves a log that years of small ones would not
        with engine.connect().execution_options(reading=True) as connection:
            connection.rollback()
            driver: Any = connection.connection.driver_connection
            driver.execute("PRAGMA wal_checkpoint(TRUNCATE)")
    if engine.dialect.name == "postgresql":
        with engine.connect().execution_options(isolation_level="AUTOCOMMIT") as connection:
            for table in ("technician", "job", "logged_message"):
                connection.execute(
                    text(f"SELECT setval(pg_get_serial_sequence('{table}', 'id'), (SELECT max(id) FROM {table}))")
                )
            connection.execute(text("ANALYZE"))


class Post:
    """The whole way of a message, without the network."""

    def __init__(self, engine: Engine, first_update: int) -> None:
        self.engine, self.update = engine, first_update
        bot: Any = None
        self.here = Here(bot=bot, me=Me(user_id=1, username="bot"), memory=Memory(), zone=UTC, a_minute=10**9)

    def message(self, user: int, words: str) -> None:
        """One message, answered."""
        self.update += 1
        now = utc_now()
        raw = {
            "update_id": self.update,
            "message": {
                "message_id": self.update,
                "date": int(now.timestamp()),
                "chat": {"id": user, "type": "private"},
                "from": {"id": user, "is_bot": False, "first_name": "First"},
                "text": words,
            },
        }
        with self.engine.begin() as connection:
            inbox.receive(connection, [raw], now)
        with Session(self.engine) as session, session.begin():
            waiting = inbox.oldest(session.connection(), user)
            assert waiting is not None
            letters = answer(self.here, session, waiting, None)
            session.flush()
            outbox.put(session.connection(), waiting.update_id, user, letters)
            assert inbox.done(session.connection(), waiting.update_id, now)
        with self.engine.begin() as connection:
            outbox.mark(connection, [Mark(key=(self.update, 0), message_id=self.update)], now + timedelta(0))


def cost_ms(engine: Engine, messages: int, first_update: int) -> tuple[float, float]:
    """Median processor time and wall time of a message. [ms]."""
    post = Post(engine, first_update)
    users = [100_001 + number for number in range(40)]
    for user in users:
        post.message(user, "new job")
    cpu, wall = [], []
    for turn in range(messages):
        began, began_cpu = time.perf_counter(), time.process_time()
        post.message(users[turn * 7 % len(users)], "help")
        cpu.append(time.process_time() - began_cpu)
        wall.append(time.perf_counter() - began)
    return statistics.median(cpu) * 1e3, statistics.median(wall) * 1e3


def compare(empty: URL, full: URL, rows: int, messages: int) -> None:
    """Print both, and the ratio."""
    few, many = open_store(empty), open_store(full)
    with Session(few) as session, session.begin():
        for number in range(40):
            code = members.invite(session, 1, utc_now())
            members.join(session, 100_001 + number, "First", code, utc_now())
    print(f"{full.get_backend_name()}: filling")
    fill(many, rows)
    rounds = [
        (cost_ms(few, messages, 10**9 + turn * 10**6), cost_ms(many, messages, 10**9 + turn * 10**6)) for turn in range(3)
    ]
    for name, pick in (("processor", 0), ("wall", 1)):
        none, there = (statistics.median(one[side][pick] for one in rounds) for side in (0, 1))
        print(f"{name:10} none {none:7.2f} ms   {rows:,} {there:7.2f} ms   ratio {there / none:5.3f}")
    few.dispose()
    many.dispose()


def main() -> None:
    """Run it."""
    parser = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    parser.add_argument("--rows", type=int, default=1_000_000)
    parser.add_argument("--messages", type=int, default=400)
    parser.add_argument("--store", choices=("sqlite", "postgresql"), default="sqlite")
    arguments = parser.parse_args()
    if arguments.store == "postgresql":
        with postgres() as one, postgres() as two:
            compare(one, two, arguments.rows, arguments.messages)
        return
    with tempfile.TemporaryDirectory() as folder:
        one, two = (URL.create("sqlite", database=str(Path(folder) / f"{name}.sqlite")) for name in ("none", "full"))
        compare(one, two, arguments.rows, arguments.messages)


if __name__ == "__main__":
    main()
