"""
Two technicians write at the same time on one store, hand jobs to each other, and see nothing else of each other.

    python -m tests.benchmarks.two_technicians                      10,000 messages on SQLite, then on PostgreSQL
    python -m tests.benchmarks.two_technicians --messages 500

Each has a thread and a program's memory of their own, and what they write has a mark of theirs. No reply may hold the other's mark, no message
may come to a job that is not theirs or was not given to them, every message is logged once, and each job's row is what its log comes to.
"""

import argparse
import json
import tempfile
import time
from collections.abc import Callable, Iterator
from dataclasses import dataclass, field
from datetime import UTC, datetime, timedelta
from pathlib import Path
from queue import Empty, SimpleQueue
from random import Random
from threading import Thread

from sqlalchemy import URL, Engine, func, select
from sqlalchemy.exc import OperationalError
from sqlalchemy.orm import Session

from bot.desk import Incoming, Memory, Taken, take
from bot.desk.verify import verify
from bot.store.export import export
from bot.store.hand_over import code_in
from bot.store.jobs import own
from bot.store.schema import open_store
from bot.store.tables import Guest, HandOver, Job, LoggedMessage, Technician
from tests.benchmarks.servers import postgres

MORNING = datetime(2026, 3, 2, 8, 0, tzinfo=UTC)
MARKS = {"one": "alpha", "two": "bravo"}
SHARED = "shared"
"""The mark of what is given to the other."""
READINGS = (
    "pri {v:.1f} V sec {w:.1f} V", "sec {w:.1f} V", "sec {w:.1f} with R off", "R-C {w:.1f} V", "pri ohms open", "fuse ohms 0.3",
    "R-C ohms 21", "208 building, on the 240 tap", "coil {w:.1f} V", "pri ohms 19.8 sec ohms 1.1",
)  # fmt: skip


class SeenError(AssertionError):
    """Something of one was visible to the other, or is not where it should be."""


@dataclass
class Writer:
    """One technician with what they did so far."""

    name: str
    engine: Engine
    chance: Random
    offered: SimpleQueue[str]
    """Codes for them."""
    offers: SimpleQueue[str]
    """Codes for the other."""
    memory: Memory = field(default_factory=Memory)
    now: datetime = MORNING
    ids: list[str] = field(default_factory=list)
    sent: int = 0
    waited: int = 0
    """Times that the store was held by the other for too long."""
    place: str = ""
    """Name of the job that the last message came to."""

    @property
    def mark(self) -> str:
        """What may stand in the words of the present job."""
        return SHARED if self.place.startswith(SHARED) else MARKS[self.name]

    def send(self, text: str, *, edits: str | None = None) -> Taken:
        """One message, and a look at all that comes back."""
        self.sent += 1
        self.now += timedelta(minutes=self.chance.choice((1, 2, 5, 40)))
        message_id = edits or str(self.sent)
        sent = Incoming(
            channel="local", address=self.name, name=self.name, text=text, sent_at=self.now, message_id=message_id, edit=edits is not None
        )  # fmt: skip
        taken = self.taken(sent)
        if edits is None:
            self.ids.append(message_id)
        self.look(json.dumps(dict(taken.record)), text)
        return taken

    def taken(self, sent: Incoming) -> Taken:
        """The message on the disk; where the other holds the store for too long it is sent again, as the bot says."""
        while True:
            try:
                return self.once(sent)
            except OperationalError as error:
                if "locked" not in str(error.orig):
                    raise
                self.waited += 1

    def once(self, sent: Incoming) -> Taken:
        """One try."""
        with Session(self.engine) as session:
            taken = take(session, sent, self.memory)
            who = session.get_one(Technician, taken.technician_id)
            if taken.job_id not in set(session.scalars(own(who))):
                raise SeenError(f"{self.name}: a job that is not theirs: {sent.text}")
            if not sent.edit:  # an edit goes to the job of its message, and the next message does not
                self.place = session.get_one(Job, taken.job_id).name or ""
            session.commit()
        return taken

    def look(self, seen: str, after: str) -> None:
        """Nothing of the other's own may stand in it."""
        others = [mark for name, mark in MARKS.items() if name != self.name and mark in seen]
        if others:
            at = seen.index(others[0])
            raise SeenError(f"{self.name} saw {others[0]} after {after}: …{seen[max(0, at - 300) : at + 100]}…")

    def step(self) -> None:
        """Whatever a technician does next: a code that waits is taken first."""
        try:
            self.send(f"take {self.offered.get_nowait()}")
        except Empty:
            roll = self.chance.random()
            next(act for least, act in ACTS if roll >= least)(self, self.chance.randrange(5))

    def reading(self) -> str:
        """A reading or two."""
        return self.chance.choice(READINGS).format(v=self.chance.uniform(110, 125), w=self.chance.uniform(0, 28))

    def edit(self) -> None:
        """A number put right in one of the last messages; never the same text again, which would be no edit."""
        if self.ids:
            self.send(f"pri {self.sent / 100 + 90:.2f} V", edits=self.chance.choice(self.ids[-20:]))

    def hand_over(self, number: int) -> None:
        """A job that both may see from then on, or a copy of it."""
        self.send(f"new job {SHARED} unit {number} of {self.sent}")
        self.send(self.reading())
        code = code_in(self.send(self.chance.choice(("hand this over", "hand over a copy"))).text)
        if code is None:
            raise SeenError(f"{self.name}: no code")
        self.offers.put(code)

    def all_that_is_kept(self) -> None:
        """The whole of their data."""
        with Session(self.engine.execution_options(reading=True)) as session:
            who = session.scalars(select(Technician).where(Technician.address == self.name)).first()
            if who is not None:
                self.look(json.dumps(export(session, who)), "export")


ACTS: tuple[tuple[float, Callable[[Writer, int], object]], ...] = (
    (0.30, lambda writer, _: writer.send(writer.reading())),
    (0.25, lambda writer, _: writer.edit()),
    (0.13, lambda writer, number: writer.send(writer.chance.choice(ASKED).format(number=number))),
    (0.125, lambda writer, _: writer.all_that_is_kept()),
    (0.105, lambda writer, number: writer.hand_over(number)),
    (0.10, lambda writer, _: writer.send(f"done, replaced, {writer.mark} 50 va")),
    (0.08, lambda writer, number: writer.send(f"back to unit {number}")),
    (0.04, lambda writer, number: writer.send(f"back to {MARKS[writer.name]} unit {number}")),
    (0.00, lambda writer, number: writer.send(f"new job {MARKS[writer.name]} unit {number}")),
)
"""What is done from a share of the time on."""
ASKED = ("history", "my jobs", "next", "why", "undo", "anything on unit {number} before?")


def storm(url: URL, messages: int, seed: int = 20260302) -> dict[str, int]:
    """
    Let two write so many messages at the same time, and check what is left.

    Args:
        url: An empty store.
        messages: In all.
        seed: Of what they write; what comes between what is the machine's.

    Returns:
        What happened, counted.

    Raises:
        SeenError: One saw something of the other, or something is not as it should be.
    """
    queues: dict[str, SimpleQueue[str]] = {name: SimpleQueue() for name in MARKS}
    writers = []
    for i, (name, other) in enumerate(zip(MARKS, reversed(MARKS), strict=True)):
        writers.append(Writer(name, open_store(url), Random(seed + i), queues[name], queues[other]))
    errors: list[Exception] = []

    def write(writer: Writer) -> None:
        try:
            while writer.sent < messages // 2 and not errors:
                writer.step()
        except Exception as error:  # noqa: BLE001  (told by the one who waits)
            errors.append(error)

    threads = [Thread(target=write, args=(writer,)) for writer in writers]
    for thread in threads:
        thread.start()
    for thread in threads:
        thread.join()
    if errors:
        raise errors[0]
    for wrong in left_wrong(writers[0].engine, writers):
        raise SeenError(wrong)
    return counted(writers)


def counted(writers: list[Writer]) -> dict[str, int]:
    """What happened."""
    with Session(writers[0].engine) as session:
        found = {
            "messages": sum(writer.sent for writer in writers),
            "sent again, the store being held": sum(writer.waited for writer in writers),
            "jobs": session.scalar(select(func.count()).select_from(Job)) or 0,
            "codes taken": session.scalar(select(func.count()).where(HandOver.taken_at.is_not(None))) or 0,
            "jobs of two": session.scalar(select(func.count()).select_from(Guest)) or 0,
        }
    for writer in writers:
        writer.engine.dispose()
    return found


def left_wrong(engine: Engine, writers: list[Writer]) -> Iterator[str]:
    """What is not as it should be in the store that they leave."""
    with Session(engine.execution_options(reading=True)) as session:
        for writer in writers:
            writer.all_that_is_kept()
            who = session.scalars(select(Technician).where(Technician.address == writer.name)).one()
            of_theirs = (LoggedMessage.technician_id == who.id, LoggedMessage.author_id.is_(None))
            logged = session.scalar(select(func.count()).where(*of_theirs)) or 0
            if logged != writer.sent:
                yield f"{writer.name} sent {writer.sent}, logged are {logged}"
            given = select(Guest.job_id).where(Guest.technician_id == who.id)
            strange = select(LoggedMessage.id).join(Job).where(LoggedMessage.technician_id == who.id, Job.owner_id != who.id)
            if session.scalar(strange.where(Job.id.not_in(given)).limit(1)) is not None:
                yield f"{writer.name} wrote in a job that was not given to them"
    for checked in verify(engine):
        yield from (str(said) for said in checked.wrong)


def main() -> None:
    """Print what happened on each database."""
    parser = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    parser.add_argument("--messages", type=int, default=10_000)
    messages = parser.parse_args().messages
    with tempfile.TemporaryDirectory() as folder, postgres() as server:
        for url in (URL.create("sqlite", database=str(Path(folder) / "jobs.sqlite")), server):
            start = time.perf_counter()
            found = storm(url, messages)
            told = ", ".join(f"{count} {what}" for what, count in found.items())
            print(f"{url.get_backend_name()}: {told}; nothing of one seen by the other ({time.perf_counter() - start:.0f} s)")


if __name__ == "__main__":
    main()
