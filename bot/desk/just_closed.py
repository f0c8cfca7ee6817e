"""The job that was just closed: its proof, its report and its corrections come after the word that closed it."""

from datetime import datetime, timedelta

from sqlalchemy.orm import Session

from bot.conversation import State
from bot.desk.deed import title
from bot.desk.incoming import Incoming
from bot.desk.memory import Memory
from bot.job import LINE_SIDE, PROOF
from bot.store.jobs import current_job, last_closed
from bot.store.tables import Job, Technician
from core.readings import Reading
from core.said import Said, say
from grammar import Message, read
from grammar.message import Unclear

PROVED_WITHIN = timedelta(hours=1)
"""Readings that come later after the last word on a job are of another unit."""
SPOKEN_OF_WITHIN = timedelta(hours=16)
"""A report or a correction that comes later is of another job."""
SPEAK_OF_IT = frozenset({"report", "undo", "correct", "why", "history", "prove", "hand_over", "next", "expect", "forget"})
"""Asks that go on with the job just closed, where no other was begun."""
SAME_SUPPLY = 0.1
"""What the line side of one unit may read off within an hour, as a share."""


def in_hand(session: Session, technician: Technician, now: datetime) -> Job | None:
    """The job that what has no words belongs to, such as a photo: the current one, or else the one just closed."""
    job = current_job(session, technician)
    if job is not None:
        return job
    closed = last_closed(session, technician, now - SPOKEN_OF_WITHIN)
    return closed if closed is not None and now - closed.last_at <= PROVED_WITHIN else None


def just_closed(
    session: Session, technician: Technician, sent: Incoming, memory: Memory
) -> tuple[Job, tuple[Said, ...]] | None:
    """
    The job just closed, where a message speaks of it, and what to say of that; None where it begins something else.

    Args:
        session: An open session on the store.
        technician: Who wrote, with no job in hand.
        sent: The message.
        memory: What this program remembers of folded jobs.
    """
    job = last_closed(session, technician, sent.sent_at - SPOKEN_OF_WITHIN)
    if job is None:
        return None
    state = memory.state(session, job, technician.language)
    message = read(sent.text, state.context())
    if speaks_of_what_is(message) or _answers(message, state):
        return job, ()
    if sent.sent_at - job.last_at <= PROVED_WITHIN and proves(state, message):
        named = title(job, sent.sent_at.tzinfo)
        return job, (say("Proof of {job}. Another unit? undo, then: new job", job=named),)
    return None


def _answers(message: Message, state: State) -> bool:
    """Whether a yes or no answers what the last reply asked, such as whether to delete."""
    asked = bool(state.turns) and bool(state.turns[-1].talk.get("read", {}).get("forgets"))
    return asked and bool({"yes", "no"} & set(message.asks))


def speaks_of_what_is(message: Message) -> bool:
    """Whether a message only asks of, corrects or ends what is there already, and begins nothing."""
    if message.readings or message.unclear or message.dangers or message.name is not None:
        return False
    if "close_job" in message.asks or message.repaired:  # said again, with what was done
        return True
    return not message.facts and bool(message.asks) and set(message.asks) <= SPEAK_OF_IT


def proves(state: State, message: Message) -> bool:
    """Whether readings can be of the unit that was repaired: the secondary is read, and the line side is as it was."""
    measures = {reading.measure for reading in message.readings} | {_likeliest(unclear) for unclear in message.unclear}
    if message.asks and set(message.asks) != {"prove"} and set(message.asks) != {"correct"}:
        return False
    if not state.is_proved or not measures & PROOF or not measures <= PROOF | LINE_SIDE:
        return False
    facts = {fact.fact for fact in message.facts} - {"tap_volts", "rated_va", "fuse_amps", "load"}
    return not facts and all(_is_same_supply(reading, state) for reading in message.readings if reading.measure in LINE_SIDE)


def _likeliest(unclear: Unclear) -> str:
    """What an unclear fragment is of, where it can be of the proof: "sec 12.4" may be volts."""
    return next((choice for choice in unclear.choices if choice in PROOF), "")


def _is_same_supply(reading: Reading, state: State) -> bool:
    read_before = [r.value for r in state.proof() if r.measure in LINE_SIDE]
    told = [fact.value for fact in state.facts if fact.fact == "supply_volts"]
    value = reading.value
    return isinstance(value, int | float) and any(
        isinstance(one, int | float) and abs(value - one) <= SAME_SUPPLY * one for one in (*read_before, *told)
    )
