"""Technicians who talk to the desk in tests. All invented."""

from dataclasses import dataclass, field
from datetime import UTC, datetime, timedelta

from sqlalchemy import Engine
from sqlalchemy.orm import Session

from bot.desk import Incoming, Memory, Taken, take

MORNING = datetime(2026, 3, 2, 8, 0, tzinfo=UTC)


@dataclass
class Office:
    """A store with a desk and a clock that goes on a minute with each message."""

    engine: Engine
    memory: Memory = field(default_factory=Memory)
    now: datetime = MORNING

    def hear(self, text: str, who: str = "t1", **more: object) -> Taken:
        """Take one message and commit it."""
        self.now += timedelta(minutes=1)
        sent = Incoming(channel="local", address=who, name=who, text=text, sent_at=self.now, **more)
        with Session(self.engine) as session:
            taken = take(session, sent, self.memory)
            session.commit()
        return taken

    def says(self, *texts: str, who: str = "t1") -> str:
        """Take several; the text of the last reply."""
        return [self.hear(text, who).text for text in texts][-1]

    def forgets_what_it_folded(self) -> None:
        """As after a restart."""
        self.memory = Memory()
