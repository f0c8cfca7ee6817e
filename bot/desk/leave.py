"""One's own data: get it, keep it for so long, or have all of it or one job deleted."""

from sqlalchemy import func, select

from bot.as_read import message_from_json
from bot.desk.deed import At, Deed, day, title
from bot.desk.jobs import listed
from bot.store.forget import backups_since, forget, forget_job
from bot.store.history import jobs_on
from bot.store.jobs import open_jobs_meant, own, units_meant
from bot.store.log import last_read
from bot.store.retention import kept_for
from bot.store.tables import Attachment, Job, LoggedMessage
from core.said import Said, say
from grammar import Message


def ask_to_forget(at: At) -> Deed:
    """Ask once, naming what goes: everything, or one job. To start only its readings over is the conversation's."""
    match at.reply.message.forgets:
        case "readings":
            return Deed(alone="never")
        case "job":
            return _ask_for_job(at)
    jobs = at.session.scalar(select(func.count()).select_from(own(at.technician).subquery()))
    return Deed(
        lines=(
            say("This deletes all your jobs ({jobs}), messages and photos, for good", jobs=jobs),
            say("A job you shared stays with the other, without your name"),
            say("yes deletes, anything else keeps"),
            say("Only this job: forget this job. Only its numbers: clear the readings"),
        ),
        buttons=(say("yes"), say("no")),
    )


def _ask_for_job(at: At) -> Deed:
    job = _meant(at, at.reply.message)
    if job is None:
        return Deed(lines=(say("No job is called {name}", name=at.reply.message.name), *listed(at)))
    photos = at.session.scalar(select(func.count()).where(Attachment.job_id == job.id))
    lines = [
        say("This deletes {job} for good", job=title(job, at.now.tzinfo)),
        say("Messages: {messages}, photos: {photos}", messages=job.turns, photos=photos),
        say("yes deletes, anything else keeps"),
    ]
    return Deed(lines=tuple(lines), buttons=(say("yes"), say("no")))


def _meant(at: At, message: Message) -> Job | None:
    """The job that is to be forgotten: the one named, where only one can be meant, or the present one."""
    if message.name is None:
        return at.job
    found = list(open_jobs_meant(at.session, at.technician, message.name))
    if not found:
        found = [
            job for unit in units_meant(at.session, at.technician, message.name) for job in jobs_on(at.session, [unit], limit=1)
        ]
    return found[0] if len(found) == 1 else None


def answered(at: At) -> Deed | None:
    """What is done where the last reply asked whether to delete and this answers it; None where it did not."""
    asks = set(at.reply.message.asks)
    read = last_read(at.session, at.job) if asks & {"yes", "no"} else None
    last = message_from_json(read) if read else Message()
    if last.forgets not in {"all", "job"}:
        return None
    if "yes" not in asks:
        return Deed(lines=(say("Kept. Nothing was deleted"),))
    return _all_of_it(at) if last.forgets == "all" else _one_job(at, last)


def _all_of_it(at: At) -> Deed:
    messages = at.session.scalar(select(func.count()).where(LoggedMessage.technician_id == at.technician.id))
    backups = _in_backups(at)
    forget(at.session, at.technician, at.now)
    return Deed(
        lines=(say("Deleted, with all that came of it. Messages: {messages}", messages=messages), *backups), forgotten="all"
    )


def _one_job(at: At, asked: Message) -> Deed | None:
    job = _meant(at, asked)
    if job is None:
        return None
    backups, named = _in_backups(at, job), title(job, at.now.tzinfo)
    forget_job(at.session, at.technician, job, at.now)
    return Deed(lines=(say("Deleted: {job}", job=named), *backups), forgotten="job")


def _in_backups(at: At, job: Job | None = None) -> list[Said]:
    """The backups in which what is deleted still stands."""
    backups = backups_since(at.session, at.technician.joined_at if job is None else job.opened_at)
    lines = [say("Still in these backups, until they are deleted:")] if backups else []
    return [*lines, *(say("- {file}, {day}", file=made.file, day=day(made.made_at, at.now.tzinfo)) for made in backups)]


def export(at: At) -> Deed:  # noqa: ARG001  (every deed takes where the desk stands)
    """Everything kept, as a file."""
    return Deed(lines=(say("All that is kept of you, in one file"),), document="export")


def settings(at: At) -> Deed:
    """What is set, and how to set it."""
    days = at.technician.keep_days if at.technician.keep_days is not None else kept_for(at.session)
    return Deed(
        lines=(
            say("Closed jobs are kept for good") if days is None else say("Closed jobs are kept {days} days", days=days),
            say("Your data: export, or forget"),
        ),
        alone="never",
    )
