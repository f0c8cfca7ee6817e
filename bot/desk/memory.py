"""What a running program remembers of folded jobs, so that a reply does not fold a long job again."""

from collections import OrderedDict
from dataclasses import dataclass
from datetime import datetime
from functools import reduce

from sqlalchemy import event
from sqlalchemy.orm import Session, SessionTransaction

from bot.conversation import State, Turn, fold, step
from bot.desk.turns import turns
from bot.store.tables import Job

JOBS = 64
"""As many jobs as are remembered; the one least lately spoken of goes first."""


@dataclass(frozen=True, slots=True)
class Remembered:
    """A job's state after so many turns, the last of them at that moment: a store put back in between is noticed."""

    turns: int
    last_at: datetime
    state: State


class Memory:
    """A few folded jobs. The store is the truth: a state is used only where the job's log is no longer than it."""

    def __init__(self, jobs: int = JOBS) -> None:
        self._jobs = jobs
        self._kept: OrderedDict[int, Remembered] = OrderedDict()

    def state(self, session: Session, job: Job, language: str | None = None) -> State:
        """The state that a job's log comes to; a new job starts in the technician's language."""
        if job.turns == 0:
            return State(language=language) if language else State()
        kept = self._kept.get(job.id)
        if kept is None or kept.turns > job.turns or (kept.turns == job.turns and kept.last_at != job.last_at):
            state = fold(turns(session, job, records=False))
        else:
            state = reduce(
                step, turns(session, job, after=kept.turns, records=False) if kept.turns < job.turns else (), kept.state
            )
        self.keep(job.id, Remembered(job.turns, job.last_at, state))
        return state

    def follow(self, session: Session, job: Job, before: State, turn: Turn) -> State:
        """The state after a turn that was just logged; remembered once the transaction is on the disk, and not before."""
        after = step(before, turn)
        waiting: dict[int, tuple[Memory, Remembered]] = session.info.setdefault("folded", {})
        waiting[job.id] = self, Remembered(turn.number, job.last_at, after)
        return after

    def clear(self) -> None:
        """Forget everything."""
        self._kept.clear()

    def keep(self, job_id: int, remembered: Remembered) -> None:
        """Remember a state that is on the disk."""
        self._kept[job_id] = remembered
        self._kept.move_to_end(job_id)
        while len(self._kept) > self._jobs:
            self._kept.popitem(last=False)


@event.listens_for(Session, "after_commit")
def _committed(session: Session) -> None:
    for job_id, (memory, remembered) in session.info.pop("folded", {}).items():
        memory.keep(job_id, remembered)


@event.listens_for(Session, "after_soft_rollback")
def _taken_back(session: Session, _: SessionTransaction) -> None:
    session.info.pop("folded", None)
