"""Giving a job to somebody else, and taking it."""

import re

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


def take_over(at: At, code: str) -> Deed:
    """Take what a code gives; both are told."""
    made = offered(at.session, code, at.now)
    if made is None:
        return Deed(lines=(say("That code gives nothing: mistyped, taken, or over 2 days old"),))
    if made.giver_id == at.technician.id:
        return Deed(lines=(say("That code is yours: the other one sends it"),))
    giver = at.session.get_one(Technician, made.giver_id)
    job = accept(at.session, at.technician, made, at.now)
    _tell(at, made, job)
    if made.kind == "copy":
        lines = (say("You have a copy of {job}, from {giver}", job=title(job, at.now.tzinfo), giver=giver.name),)
    else:
        lines = (say("You work on {job} with {giver}", job=title(job, at.now.tzinfo), giver=giver.name),)
    return Deed(lines=(*lines, say("{count} messages so far. Send: next", count=job.turns)), job=job)


def _tell(at: At, made: HandOver, job: Job) -> None:
    name = job.name or at.session.get_one(Job, made.job_id).opened_at.strftime("%Y-%m-%d")
    if made.kind == "copy":
        said = say("{taker} took a copy of {job}", taker=at.technician.name, job=name)
    else:
        said = say("{taker} now works on {job} too", taker=at.technician.name, job=name)
    tell_later(at.session, made.giver_id, said, at.now)
