"""New job, resume, list, close."""

import re
from collections.abc import Sequence

from bot.desk.deed import At, Deed, day, title, verdict_of
from bot.store import jobs as store
from bot.store.history import jobs_on
from bot.store.tables import Job
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
    when, found = day(job.opened_at, at.now.tzinfo), verdict_of(job)
    if found is None and job.outcome:
        return say("{day}: {outcome}", day=when, outcome=job.outcome)
    if found is None:
        return say("{day}: no verdict", day=when)
    if job.outcome:
        return say("{day}: {finding}. Done: {outcome}", day=when, finding=found, outcome=job.outcome)
    return say("{day}: {finding}", day=when, finding=found)


def resume_job(at: At) -> Deed:
    """Go on with a job by its name; without a name, with the one before the present one."""
    found = _meant(at)
    if not found:
        if at.name is None:
            return Deed(lines=(say("No other job is open"),))
        return Deed(lines=(say("No job is called {name}", name=at.name), *listed(at)))
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
    if (verdict := verdict_of(job)) is not None:
        lines.append(say("So far: {finding}", finding=verdict))
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
    return Deed(lines=tuple(listed(at)))


def listed(at: At) -> list[Said]:
    """The open jobs, a line each."""
    jobs = [job for job in store.open_jobs(at.session, at.technician) if _worth_listing(job, at)]
    if not jobs:
        return [say("No job is open")]
    more = [say("and {count} more", count=len(jobs) - SHOWN)] if len(jobs) > SHOWN else []
    return [say("Open jobs:"), *(_line(job, at) for job in jobs[:SHOWN]), *more]


def _worth_listing(job: Job, at: At) -> bool:
    return job.name is not None or (job.turns > 0 and not (job.id == at.job.id and at.blank))


def _line(job: Job, at: At) -> Said:
    found = verdict_of(job)
    if found is None:
        return say("- {job}: no verdict yet", job=title(job, at.now.tzinfo))
    return say("- {job}: {finding}", job=title(job, at.now.tzinfo), finding=found)


CLOSING = re.compile(
    r"^\W*((i'?m|we'?re|all|job'?s?|trabajo|ya)\s+)*(done|closed?|finished|complete|wrap\w*|closing|cierra|cerrar|cierro|listo|terminad[oa]|termin[eé]|acab[eé]|qued[oó])\b"
    r"(\s+(it|this|the|job|out|up|here|with|el|trabajo|listo|aqu[ií]|con)\b)*[\s,:;.-]*",
    re.IGNORECASE,
)
"""The words that close a job; what stands after them is what was done."""


def outcome_of(text: str, name: str | None = None) -> str | None:
    """
    What was done, in the technician's words.

    >>> outcome_of("done, replaced, 50 va, 208 tap")
    'replaced, 50 va, 208 tap'
    >>> outcome_of("close rtu 3, replaced it", "rtu 3")
    'replaced it'
    >>> outcome_of("job done") is None
    True
    """
    rest = (
        text
        if name is None
        else re.sub(rf"[\s,:]*{re.escape(name)}[\s,:;.-]*(is\b|est[aá]\b)?", " ", text, count=1, flags=re.IGNORECASE)
    )
    return CLOSING.sub("", rest.strip()).strip() or None


def close_job(at: At) -> Deed:
    """Close the present job, or the one named, with what was done."""
    name = at.reply.message.name
    named = store.open_jobs_meant(at.session, at.technician, at.name) if at.name else ()
    if name is not None and not named:
        return Deed(lines=(say("No job is called {name}", name=name), *listed(at)))
    if len(names := {job.name for job in named}) > 1:
        buttons = tuple(say("close {job}", job=one) for one in sorted(map(str, names))[:SHOWN])
        return Deed(lines=(say("Which one?"), *(_line(job, at) for job in named[:SHOWN])), buttons=buttons)
    job = named[0] if named else at.job
    if job is at.job and at.blank and job.name is None:
        return Deed(lines=tuple(listed(at)))
    outcome = outcome_of(at.sent.text, name)
    store.close_job(at.session, job, outcome, at.now)
    outcome = outcome or job.outcome
    done = say("Done: {outcome}", outcome=outcome) if outcome else say('To note what was done: "done, replaced, 50 va"')
    lines = [say("Closed: {job}", job=title(job, at.now.tzinfo)), done]
    if at.reply.message.repaired:
        lines.append(say("Prove it now: secondary unloaded and with everything called, R to C"))
    return Deed(lines=tuple(lines), job=job, alone="unless read")


def repaired(at: At) -> Deed | None:
    """
    What was done, told without a word that closes the job.

    "Replaced, 50 va, 208 tap" closes a job in which something was found; with readings beside it it is only noted.
    """
    if at.blank or not at.reply.message.repaired:
        return None
    if not at.reply.message.readings and (at.job.transformer == "bad" or at.reply.message.facts):
        return close_job(at)
    at.job.outcome = at.sent.text
    return None


def reopened(at: At) -> Deed | None:
    """Open the job again that was closed by the message that is now taken back."""
    if not at.reopens or at.job.closed_at is None:
        return None
    store.reopen_job(at.session, at.technician, at.job)
    at.job.outcome = None
    return Deed(lines=(say("Open again: {job}", job=title(at.job, at.now.tzinfo)),), alone="never")
