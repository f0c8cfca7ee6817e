"""Whether the store holds what it should: the file itself, and each job's log against what was folded from it."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from sqlalchemy import Engine, select, text
from sqlalchemy.orm import Session

from bot.as_read import message_from_json
from bot.conversation import Turn, fold
from bot.desk.note import facts_noted
from bot.desk.turns import turns
from bot.reply import reading_record
from bot.store.tables import Job
from core.said import Said, say
from grammar import Message


@dataclass(frozen=True, slots=True)
class Checked:
    """One step of the check: how many of how many jobs are done, and what was found wrong in it."""

    done: int
    whole: int
    wrong: tuple[Said, ...] = ()


def verify(engine: Engine) -> Iterator[Checked]:
    """Check the store step by step; nothing is changed."""
    with Session(engine.execution_options(reading=True)) as session:
        numbers = session.scalars(select(Job.id).order_by(Job.id)).all()
        yield Checked(0, len(numbers), tuple(_of_the_file(session)))
        for done, number in enumerate(numbers, 1):
            yield Checked(done, len(numbers), tuple(_of_job(session, session.get_one(Job, number))))
            session.expunge_all()


def _of_the_file(session: Session) -> Iterator[Said]:
    if session.get_bind().dialect.name != "sqlite":
        return  # a server checks its own files and keys
    for (found,) in session.execute(text("PRAGMA integrity_check")):
        if found != "ok":
            yield say("The file is damaged: {found}", found=found)
    for table, row, parent, _ in session.execute(text("PRAGMA foreign_key_check")):
        yield say("{table} row {row} points to nothing in {parent}", table=table, row=row, parent=parent)


def _of_job(session: Session, job: Job) -> Iterator[Said]:
    log = turns(session, job)
    if [turn.number for turn in log] != list(range(1, job.turns + 1)):
        yield say("Job {job}: the log has gaps or more messages than it should", job=job.id)
        return
    for turn in log:
        if not _agrees(turn):
            yield say("Job {job}, message {number}: reply and log disagree", job=job.id, number=turn.number)
    noted = (job.supply_volts, job.tap_volts, job.rated_va)
    if facts_noted(fold(_noted(log)).job(Message())) != noted:
        yield say("Job {job}: its row and its log disagree", job=job.id)


def _noted(log: Sequence[Turn]) -> Sequence[Turn]:
    """The turns up to the last one that changed the job's row: from a repair on it stays, until the job is taken up again."""
    repair = fold(log).repair
    if repair is None or repair.again is not None:
        return log
    number = next(turn.number for turn in log if turn.message_id == repair.by)
    return [turn for turn in log if turn.number < number]


def _agrees(turn: Turn) -> bool:
    """Whether what the fold takes from a turn is what its reply said was read."""
    if turn.reply is None or "read" not in turn.talk:
        return False
    read = message_from_json(turn.talk["read"])
    return [reading_record(reading) for reading in read.readings] == list(turn.reply["readings"])
