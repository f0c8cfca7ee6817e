"""A message that names another unit than the one in hand: it is never filed under the wrong one in silence."""

import re
from typing import Final

from sqlalchemy.orm import Session

from bot.desk.deed import title
from bot.desk.incoming import Incoming
from bot.store.jobs import name_job, open_jobs, work_on
from bot.store.names import called, means
from bot.store.tables import Job, Technician
from core.said import Said, say
from grammar import Context, read

NUMBERED: Final = re.compile(
    r"\b((?:rtu|ahu|mau|erv|fcu|vav|unit|equipo|unidad|chiller|boiler|furnace|azotea)\s?#?\s?(?:\d{1,3}[a-z]?|[a-z]))\b"
)
"""A kind of unit with its number or letter, in a folded text."""
SPEAKS_OF_JOBS: Final = frozenset(
    {"new_job", "resume_job", "history", "report", "close_job", "forget", "hand_over", "list_jobs", "export"}
)
"""Asks that take a name themselves."""


def other_unit(session: Session, technician: Technician, job: Job, sent: Incoming) -> tuple[Job, tuple[Said, ...]] | None:
    """
    The open job that a message with readings names, where that is not the one in hand, and what to say of it.

    Where no open job is called so, a job without a name gets this one; with one it keeps the message, and the reply says so. None where
    no other unit is named.
    """
    named = _named(sent.text)
    if named is None or (job.name is not None and means(named, job.name)):
        return None
    message = read(sent.text, Context())
    if not (message.readings or message.unclear) or set(message.asks) & SPEAKS_OF_JOBS or message.name is not None:
        return None
    zone = sent.sent_at.tzinfo
    found = [one for one in open_jobs(session, technician) if one.name is not None and means(named, one.name)]
    if len(found) == 1:
        work_on(session, technician, found[0])
        before = title(job, zone)
        return found[0], (say("Now on {job}. Other unit: back to {before}", job=title(found[0], zone), before=before),)
    if found or not named[-1].isdecimal():  # "unit a" may begin "a fuse"
        return None
    if job.name is None:
        name_job(session, job, named)
        return job, (say("Job: {job}", job=title(job, zone)),)
    return job, (say("Filed with {job}. Another unit? undo, then: new job {name}", job=title(job, zone), name=named),)


def _named(text: str) -> str | None:
    """
    What a unit is called in a text, if one is.

    >>> _named("on unit A fuse OL"), _named("RTU-2 sec 24v"), _named("unit dead, sec 24"), _named("rtu 2 and rtu 3 both dead")
    ('unit a', 'rtu 2', None, None)
    """
    names = {" ".join(name.replace("#", " ").split()) for name in NUMBERED.findall(called(text))}
    return names.pop() if len(names) == 1 else None
