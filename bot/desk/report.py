"""The report of a job, asked for in the conversation."""

from collections.abc import Sequence

from bot.desk.deed import At, Deed, title
from bot.desk.jobs import listed
from bot.store.history import jobs_on
from bot.store.jobs import open_jobs_meant, units_meant
from bot.store.tables import Job
from core.said import say

SHOWN = 8
"""As many jobs as can be chosen from."""


def report(at: At) -> Deed:
    """The page of the present job, or of the one named."""
    name = at.reply.message.name
    found = [at.job] if name is None else _meant(at, name)
    if not found:
        return Deed(lines=(say("No job is called {name}", name=name), *listed(at)))
    if len({job.name for job in found}) > 1:
        named = [title(job, at.now.tzinfo) for job in found[:SHOWN]]
        return Deed(lines=(say("Which one?"),), buttons=tuple(say("report {job}", job=one) for one in named))
    job = found[0]
    if job.turns == 0:
        return Deed(lines=(say("Nothing on this job yet"),))
    return Deed(lines=(say("Report of {job}, one page", job=title(job, at.now.tzinfo)),), job=job, document="report")


def _meant(at: At, name: str) -> Sequence[Job]:
    """The jobs that can be meant: open ones, or else the latest on each unit of that name."""
    units = units_meant(at.session, at.technician, name)
    return open_jobs_meant(at.session, at.technician, name) or [
        job for unit in units for job in jobs_on(at.session, [unit], limit=1)
    ]
