"""Giving a job to somebody else, and taking it."""

import re
from datetime import datetime

from sqlalchemy.orm import Session

from bot.desk.deed import At, Deed, title
from bot.store.hand_over import Kind, accept, offer, offered
from bot.store.jobs import open_jobs_meant
from bot.store.tables import HandOver, Job, Technician
from bot.store.technicians import tell_later
from core.said import say

A_COPY = re.compile(r"\b(copy|copia)\b", re.IGNORECASE)


def hand_over(at: At) -> Deed:
    """A code for the present job or the one named; a copy of it where the words say so."""
    if at.blank and at.job.name is None and at.name is None:
        return Deed(lines=(say("Nothing to hand over yet"),))
    meant = open_jobs_meant(at.session, at.technician, at.name) if at.name else ()
    job = meant[0] if meant else at.job
    kind: Kind = "copy" if A_COPY.search(at.sent.text) else "job"
    made = offer(at.session, at.technician, job, kind, at.now)
    what = (
        say("Whoever sends it first gets a copy. Good for 2 days")
        if kind == "copy"
        else say("Whoever sends it first works on the job with you. Good for 2 days")
    )
    return Deed(lines=(say("{code}", code=made.code), say("Code for {job}", job=title(job, at.now.tzinfo)), what))


def take_over(session: Session, technician: Technician, code: str, now: datetime) -> Deed:
    """Take what a code gives; both are told."""
    made = offered(session, code, now)
    if made is None:
        return Deed(lines=(say("That code gives nothing: mistyped, taken, or over 2 days old"),))
    if made.giver_id == technician.id:
        return Deed(lines=(say("That code is yours: the other one sends it"),))
    giver = session.get_one(Technician, made.giver_id)
    job = accept(session, technician, made, now)
    _tell(session, technician, made, job, now)
    if made.kind == "copy":
        lines = (say("You have a copy of {job}, from {giver}", job=title(job, now.tzinfo), giver=giver.name),)
    else:
        lines = (say("You work on {job} with {giver}", job=title(job, now.tzinfo), giver=giver.name),)
    return Deed(lines=(*lines, say("Messages so far: {count}. Send: next", count=job.turns)), job=job)


def _tell(session: Session, technician: Technician, made: HandOver, job: Job, now: datetime) -> None:
    name = job.name or session.get_one(Job, made.job_id).opened_at.strftime("%Y-%m-%d")
    if made.kind == "copy":
        said = say("{taker} took a copy of {job}", taker=technician.name, job=name)
    else:
        said = say("{taker} now works on {job} too", taker=technician.name, job=name)
    tell_later(session, made.giver_id, said, now)
