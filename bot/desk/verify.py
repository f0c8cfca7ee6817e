"""Whether the store holds what it should: the file itself, and each job's log against what was folded from it."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from hashlib import sha256

from sqlalchemy import Engine, select, text
from sqlalchemy.exc import DatabaseError, OperationalError
from sqlalchemy.orm import Session

from bot.as_read import message_from_json
from bot.conversation import Turn, fold
from bot.desk.note import facts_noted
from bot.desk.turns import turns
from bot.reply import reading_record
from bot.store.attachments import attachments
from bot.store.forget import GONE
from bot.store.tables import Guest, Job, LoggedMessage, Technician, Unit, WorkingOn
from core.said import Said, say
from grammar import Message


@dataclass(frozen=True, slots=True)
class Checked:
    """One step of the check: how many of how many jobs are done, and what was found wrong in it."""

    done: int
    whole: int
    wrong: tuple[Said, ...] = ()


def verify(engine: Engine) -> Iterator[Checked]:
    """Check the store step by step; nothing is changed. A file that can't be read on is told as damaged, and that is the end."""
    done = whole = 0
    try:
        with Session(engine.execution_options(reading=True)) as session:
            numbers = session.scalars(select(Job.id).order_by(Job.id)).all()
            whole = len(numbers)
            yield Checked(0, whole, tuple(_of_the_file(session)))
            for done, number in enumerate(numbers, 1):
                yield Checked(done, whole, tuple(_of_job(session, session.get_one(Job, number))))
                session.expunge_all()
    except DatabaseError as error:
        if engine.dialect.name != "sqlite" or isinstance(error, OperationalError):
            raise
        yield Checked(done, whole, (say("The file is damaged: {found}", found=str(error.orig)),))


def _of_the_file(session: Session) -> Iterator[Said]:
    if session.get_bind().dialect.name != "sqlite":
        return  # a server checks its own files and keys
    for (found,) in session.execute(text("PRAGMA integrity_check")):
        if found != "ok":
            yield say("The file is damaged: {found}", found=found)
    for table, row, parent, _ in session.execute(text("PRAGMA foreign_key_check")):
        yield say("{table} row {row} points to nothing in {parent}", table=table, row=row, parent=parent)


def _of_job(session: Session, job: Job) -> Iterator[Said]:
    yield from _of_its_people(session, job)
    for file in attachments(session, job):
        if sha256(file.body).hexdigest() != file.sha256:
            yield say("Job {job}: a photo is not as it came", job=job.id)
    log = turns(session, job)
    if [turn.number for turn in log] != list(range(1, job.turns + 1)):
        yield say("Job {job}: the log has gaps or more messages than it should", job=job.id)
        return
    for turn in log:
        if not _agrees(turn):
            yield say("Job {job}, message {number}: reply and log disagree", job=job.id, number=turn.number)
            return
    if not _row_agrees(job, _noted(log)) or (log and job.last_at < max(turn.sent_at for turn in log)):
        yield say("Job {job}: its row and its log disagree", job=job.id)


def _of_its_people(session: Session, job: Job) -> Iterator[Said]:
    """Whether nobody works or wrote on a job that is not theirs, and its unit is its owner's."""
    theirs = select(Guest.technician_id).where(Guest.job_id == job.id)
    strange = select(WorkingOn.technician_id).where(
        WorkingOn.job_id == job.id, WorkingOn.technician_id != job.owner_id, WorkingOn.technician_id.not_in(theirs)
    )
    unit = None if job.unit_id is None else session.get(Unit, job.unit_id)
    wrote = (
        select(LoggedMessage.id)
        .join(Technician, Technician.id == LoggedMessage.technician_id)
        .where(LoggedMessage.job_id == job.id, LoggedMessage.technician_id != job.owner_id, Technician.channel != GONE)
        .where(LoggedMessage.technician_id.not_in(theirs))
    )
    if session.scalar(strange.limit(1)) is not None or session.scalar(wrote.limit(1)) is not None:
        yield say("Job {job}: somebody is on it whose it is not", job=job.id)
    if unit is not None and unit.owner_id != job.owner_id:
        yield say("Job {job}: its unit is another's", job=job.id)


def _row_agrees(job: Job, noted: Sequence[Turn]) -> bool:
    """Whether supply, tap and rating of the row are those that the log comes to, and its verdict is one that was given."""
    told = fold(noted).job(Message())
    if facts_noted(told) != (job.supply_volts, job.tap_volts, job.rated_va):
        return False
    given = [turn.reply["verdict"] for turn in noted if turn.reply is not None and turn.reply.get("verdict")]
    verdicts = {(verdict["finding"], verdict["transformer"]) for verdict in given} or {(None, None)}
    return (job.finding, job.transformer) in verdicts or (job.finding is None and not told.readings)


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
