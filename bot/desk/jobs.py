"""New job, resume, list, close."""

import re
from collections.abc import Sequence

from bot.desk.deed import At, Deed, day, title
from bot.store import jobs as store
from bot.store.history import jobs_on
from bot.store.tables import Job
from core.findings import FINDINGS
from core.said import Said, say

SHOWN = 8
"""As many jobs as one message lists."""


def new_job(at: At) -> Deed:
    """Open a job. One in which nothing was told yet just takes the name."""
    job = at.job
    if not (at.blank and job.name is None):
        job = store.open_job(at.session, at.technician, at.now, name=at.name)
    elif at.name:
        store.name_job(at.session, job, at.name)
        store.work_on(at.session, at.technician, job)
    lines = [say("New job: {job}", job=title(job, at.now.tzinfo)) if job.name else say("New job")]
    return Deed(lines=(*lines, *_before(at, job)), job=job)


def _before(at: At, job: Job) -> Sequence[Said]:
    """The last job on the same unit, so that nobody starts from nothing twice."""
    unit = store.unit_called(at.session, job.owner_id, job.name) if job.name else None
    earlier = jobs_on(at.session, [unit], but=job, limit=1) if unit else ()
    still_open = [say("An older job of that name is still open")] if earlier and earlier[0].closed_at is None else []
    return [*(past(old, at) for old in earlier), *still_open]


def past(job: Job, at: At) -> Said:
    """One earlier job in a line."""
    when, found = day(job.opened_at, at.now.tzinfo), FINDINGS.get(job.finding or "")
    if found is None and job.outcome:
        return say("{day}: {outcome}", day=when, outcome=job.outcome)
    if found is None:
        return say("{day}: no verdict", day=when)
    if job.outcome:
        return say("{day}: {finding}. Done: {outcome}", day=when, finding=found.says, outcome=job.outcome)
    return say("{day}: {finding}", day=when, finding=found.says)


def resume_job(at: At) -> Deed:
    """Go on with a job by its name; without a name, with the one before the present one."""
    found = _meant(at)
    if not found:
        if at.name is None:
            return Deed(lines=(say("No other job is open"),))
        return Deed(lines=(say("No job is called {name}", name=at.name), *_listed(at)))
    names = {job.name for job in found}
    if len(names) > 1 and at.name is not None:
        buttons = tuple(say("resume {job}", job=title(job, at.now.tzinfo)) for job in found[:SHOWN])
        return Deed(lines=(say("Which one?"), *(_line(job, at) for job in found[:SHOWN])), buttons=buttons)
    job = found[0]
    reopened = job.closed_at is not None
    store.reopen_job(at.session, at.technician, job)
    if reopened:
        lines = [say("Open again: {job}", job=title(job, at.now.tzinfo))]
    else:
        lines = [say("Back on {job}", job=title(job, at.now.tzinfo))]
    if job.finding:
        lines.append(say("So far: {finding}", finding=FINDINGS[job.finding].says))
    return Deed(lines=tuple(lines), job=job)


def _meant(at: At) -> Sequence[Job]:
    """The jobs that can be meant: open ones, or else the latest on the unit of that name."""
    if at.name is None:
        return [job for job in store.open_jobs(at.session, at.technician) if job.id != at.job.id and job.turns][:1]
    found = store.open_jobs_meant(at.session, at.technician, at.name)
    if found:
        return found
    units = store.units_meant(at.session, at.technician, at.name)
    return [job for unit in units for job in jobs_on(at.session, [unit], limit=1)]


def list_jobs(at: At) -> Deed:
    """The open jobs, each with where it stands."""
    return Deed(lines=tuple(_listed(at)))


def _listed(at: At) -> list[Said]:
    jobs = [job for job in store.open_jobs(at.session, at.technician) if _worth_listing(job, at)]
    if not jobs:
        return [say("No job is open")]
    more = [say("and {count} more", count=len(jobs) - SHOWN)] if len(jobs) > SHOWN else []
    return [say("Open jobs:"), *(_line(job, at) for job in jobs[:SHOWN]), *more]


def _worth_listing(job: Job, at: At) -> bool:
    return job.name is not None or (job.turns > 0 and not (job.id == at.job.id and at.blank))


def _line(job: Job, at: At) -> Said:
    if job.finding is None:
        return say("- {job}: no verdict yet", job=title(job, at.now.tzinfo))
    return say("- {job}: {finding}", job=title(job, at.now.tzinfo), finding=FINDINGS[job.finding].says)


CLOSING = re.compile(
    r"^\W*((i'?m|we'?re|all|job'?s?|trabajo|ya)\s+)*(done|closed?|finished|complete|wrap\w*|listo|terminad[oa]|termin[eé]|acab[eé]|qued[oó])\b"
    r"(\s+(it|this|the|job|out|up|here|el|trabajo|listo|aqu[ií])\b)*[\s,:;.-]*",
    re.IGNORECASE,
)
"""The words that close a job; what stands after them is what was done."""


def outcome_of(text: str) -> str | None:
    """
    What was done, in the technician's words.

    >>> outcome_of("done, replaced, 50 va, 208 tap")
    'replaced, 50 va, 208 tap'
    >>> outcome_of("job done") is None
    True
    """
    return CLOSING.sub("", text).strip() or None


def close_job(at: At) -> Deed:
    """Close the present job, or the one named, with what was done."""
    named = store.open_jobs_meant(at.session, at.technician, at.name) if at.name else ()
    job = named[0] if named else at.job
    if job is at.job and at.blank and job.name is None:
        return Deed(lines=tuple(_listed(at)))
    outcome = outcome_of(at.sent.text)
    store.close_job(at.session, job, outcome, at.now)
    done = say("Done: {outcome}", outcome=outcome) if outcome else say('To note what was done: "done, replaced, 50 va"')
    return Deed(lines=(say("Closed: {job}", job=title(job, at.now.tzinfo)), done), job=job, alone="unless read")
