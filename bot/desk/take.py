"""One message in, one answer out, and both in the store: the path that every channel takes."""

from dataclasses import dataclass, replace
from datetime import timedelta
from uuid import uuid4

from sqlalchemy.orm import Session

from bot.conversation import State, Turn, reply_to
from bot.desk import hand_over, history, jobs, leave, report
from bot.desk.deed import At, Deed, title
from bot.desk.incoming import Incoming, Taken, storable
from bot.desk.just_closed import just_closed, speaks_of_what_is
from bot.desk.memory import Memory
from bot.desk.note import note
from bot.desk.other_unit import other_unit
from bot.desk.turns import turn_of
from bot.reply import Reply
from bot.store import jobs as store
from bot.store import log
from bot.store.hand_over import code_in
from bot.store.tables import Job, LoggedMessage, Technician
from bot.store.technicians import take_notices, welcome
from bot.wording.catalog import catalog
from core.advice import Answer
from core.dangers import is_firm
from core.said import Said, say
from grammar import Message, read

MOVES = {"new_job": jobs.new_job, "resume_job": jobs.resume_job}
"""Asks after which the message belongs to another job."""

DEEDS = {
    "list_jobs": jobs.list_jobs,
    "history": history.history,
    "hand_over": hand_over.hand_over,
    "export": leave.export,
    "settings": leave.settings,
    "close_job": jobs.close_job,
    "report": report.report,
    "forget": leave.ask_to_forget,
}
"""Asks that touch the store, in the order in which they are done."""

IDLE = timedelta(hours=16)
"""A job without a name that rested longer is not gone on with: the next morning's readings are of another unit."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Place:
    """Where a message goes."""

    technician: Technician
    job: Job
    revision: int
    message_id: str
    doubt: tuple[Said, ...] = ()
    """What to say of the job, where the technician could think of another."""


def take(session: Session, sent: Incoming, memory: Memory) -> Taken:
    """
    Answer a message and log both, in the transaction of `session`; to commit it is the caller's.

    Args:
        session: An open session on the store.
        sent: The message as it came in.
        memory: What this program remembers of folded jobs; the store stays the truth.

    Returns:
        The record of the reply and what goes with it. A message that came before gets its first answer again.
    """
    sent = replace(sent, text=storable(sent.text), message_id=sent.message_id or uuid4().hex)
    technician = welcome(session, sent.channel, sent.address, sent.name, sent.sent_at)
    earlier = log.latest(session, technician, str(sent.message_id))
    if earlier is not None and (not sent.edit or earlier.text == sent.text):
        return _again(session, earlier)
    given = None if earlier is not None else _given(session, technician, sent)
    place = (
        _place(session, technician, sent, earlier, memory)
        if given is None or given.job is None
        else _at(given.job, technician, sent)
    )
    return _answer(session, sent, place, memory, given)


def _given(session: Session, technician: Technician, sent: Incoming) -> Deed | None:
    """
    What a code in the message gives, taken before anything else.

    Nobody holds a job of their own while waiting for another's: two who hand over to each other would wait for ever.
    """
    code = code_in(sent.text)
    return None if code is None else hand_over.take_over(session, technician, code, sent.sent_at)


def _at(job: Job, technician: Technician, sent: Incoming) -> Place:
    """The place of a new message in a job."""
    return Place(technician=technician, job=job, revision=0, message_id=str(sent.message_id))


def _again(session: Session, message: LoggedMessage) -> Taken:
    kept = log.reply_to(session, message)
    assert kept is not None, "a message is logged with its reply"
    return Taken(
        record=kept.record,
        language=kept.language,
        technician_id=message.technician_id,
        job_id=message.job_id,
        document=kept.document,
    )


def _place(session: Session, technician: Technician, sent: Incoming, earlier: LoggedMessage | None, memory: Memory) -> Place:
    """The job that a message belongs to. One is opened where there is none."""
    message_id = str(sent.message_id)
    if earlier is not None:
        job = session.get_one(Job, earlier.job_id)
        doubt: tuple[Said, ...] = ()
    else:
        job, doubt = _job_for(session, technician, sent, memory)
    revision = 0 if earlier is None else earlier.revision + 1
    return Place(technician=technician, job=job, revision=revision, message_id=message_id, doubt=doubt)


def _job_for(session: Session, technician: Technician, sent: Incoming, memory: Memory) -> tuple[Job, tuple[Said, ...]]:
    if sent.job is not None:
        known = store.job_with(session, technician, sent.job)
        return known or store.open_job(session, technician, sent.sent_at, channel_job=sent.job), ()
    job = store.current_job(session, technician)
    if job is None:
        closed = just_closed(session, technician, sent, memory)
        if closed is not None:
            return closed
        job = store.open_job(session, technician, sent.sent_at)
    if job.name is None and job.turns and sent.sent_at - job.last_at > IDLE and not _goes_on(session, job, sent, memory):
        rested = title(job, sent.sent_at.tzinfo)
        return store.open_job(session, technician, sent.sent_at), (say("New job. To go on with the {job}: resume", job=rested),)
    return other_unit(session, technician, job, sent) or (job, ())


def _goes_on(session: Session, job: Job, sent: Incoming, memory: Memory) -> bool:
    """Whether a message speaks of a job that rested, such as the report the next morning."""
    return speaks_of_what_is(read(sent.text, memory.state(session, job).context()))


def _answer(session: Session, sent: Incoming, place: Place, memory: Memory, given: Deed | None) -> Taken:
    thought = _think(session, sent, place, memory)
    at = At(
        session=session,
        technician=place.technician,
        job=place.job,
        blank=not thought.before.kept,
        reopens="undo" in thought.reply.message.asks and thought.before.closed_by is not None,
        sent=sent,
        reply=thought.reply,
    )
    deeds, job = _do(at) if given is None else ([given], place.job)
    if gone := [deed.forgotten for deed in deeds if deed.forgotten]:
        memory.clear()
        reply = worded(thought.reply, (), deeds)
        left = None if "all" in gone else place.technician.id
        return Taken(record=reply.record(), language=reply.language, technician_id=left, job_id=None, reply=reply)
    if job.id != place.job.id:
        place = replace(place, job=job)
        thought = _think(session, sent, place, memory)
    told = (*take_notices(session, place.technician.id), *_doubt(session, sent, place, deeds))
    return _log(session, sent, place, memory, replace(thought, reply=worded(thought.reply, told, deeds)))


@dataclass(frozen=True, slots=True, kw_only=True)
class Thought:
    """A message with the state before it and the reply to it."""

    before: State
    turn: Turn
    reply: Reply


def _think(session: Session, sent: Incoming, place: Place, memory: Memory) -> Thought:
    store.hold(session, place.job)
    before = memory.state(session, place.job, place.technician.language)
    turn = turn_of(sent, place.job, place.technician, place.message_id, place.revision)
    return Thought(before=before, turn=turn, reply=reply_to(before, turn))


def _log(session: Session, sent: Incoming, place: Place, memory: Memory, thought: Thought) -> Taken:
    """The message and its reply into the log, and what they come to into the job's own row."""
    reply, technician, job = thought.reply, place.technician, place.job
    row = log.Sent(message_id=place.message_id, revision=place.revision, text=sent.text, sent_at=sent.sent_at)
    answered = log.Answered(record=reply.record(), talk=reply.talk, document=reply.document, language=reply.language)
    log.append(session, technician, job, row, answered)
    after = memory.follow(session, job, thought.before, replace(thought.turn, reply={**answered.record, "talk": reply.talk}))
    told = note(job, reply, after)
    if reply.language != (technician.language or "en"):
        technician.language = reply.language
    return Taken(
        record=answered.record,
        language=reply.language,
        technician_id=technician.id,
        job_id=job.id,
        document=reply.document,
        reply=reply,
        told=told,
    )


def _do(at: At) -> tuple[list[Deed], Job]:
    """Do what the message asks of the store; the job that it belongs to after that."""
    answered = leave.answered(at)
    if answered is not None:
        return [answered], at.job
    asks, job, deeds = at.reply.message.asks, at.job, []
    for ask, move in MOVES.items():
        if ask in asks:
            deeds.append(move(at))
            job = deeds[-1].job or job
    firm = is_firm(at.reply.message.dangers)
    for ask, deed in DEEDS.items():
        if ask in asks and not (firm and ask == "close_job"):  # nothing is closed on a danger
            deeds.append(deed(replace(at, job=job) if job is not at.job else at))
            job = deeds[-1].job or job
    if not deeds and (more := jobs.repaired(at) or jobs.reopened(at)) is not None:
        deeds.append(more)
    return deeds, job


def _doubt(session: Session, sent: Incoming, place: Place, deeds: list[Deed]) -> tuple[Said, ...]:
    """The name of the job, where the technician has several open and did not just speak of one."""
    if place.doubt:
        return place.doubt
    if deeds or sent.job is not None:
        return ()
    if store.has_other_open(session, place.technician, place.job):
        return (say("Job: {job}", job=title(place.job, sent.sent_at.tzinfo)),)
    return ()


def worded(reply: Reply, before: tuple[Said, ...], deeds: list[Deed]) -> Reply:
    """The reply with what the desk has to say: first the job that it is about, then what was done, then the rest."""
    tell = catalog(reply.language).tell
    message = reply.message
    own = [line for deed in deeds for line in deed.lines]
    silent = bool(deeds) and all(_is_whole(deed, message) for deed in deeds)
    said = [tell(line) for line in (*before, *own)]
    rest = [] if silent or not reply.text else [reply.text]
    texts = [*rest, *said] if is_firm(message.dangers) else [*said, *rest]  # danger comes before all else
    buttons = tuple(tell(button) for deed in deeds for button in deed.buttons)
    document = next((deed.document for deed in deeds if deed.document), reply.document)
    changed = replace(reply, text="\n".join(texts), buttons=buttons or reply.buttons, document=document)
    if silent:
        return replace(changed, buttons=buttons, answer=Answer(), cautions=(), picture=None)
    return changed


def _is_whole(deed: Deed, message: Message) -> bool:
    """Whether a deed's lines are the whole answer to a message."""
    if message.dangers:
        return False
    match deed.alone:
        case "never":
            return False
        case "unless read":  # the numbers told with it say what was put in, and ask nothing
            return not message.readings
        case "unless told":
            return not message.readings and not message.facts
