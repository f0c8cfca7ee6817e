"""One's own data: get it, keep it for so long, or have it deleted."""

from sqlalchemy import func, select

from bot.desk.deed import At, Deed, day
from bot.store.forget import backups_since, forget
from bot.store.jobs import own
from bot.store.log import last_asks
from bot.store.retention import kept_for
from bot.store.tables import LoggedMessage
from core.said import say


def ask_to_forget(at: At) -> Deed:
    """Ask once."""
    jobs = at.session.scalar(select(func.count()).select_from(own(at.technician).subquery()))
    return Deed(
        lines=(
            say("This deletes all your jobs, messages and photos: {jobs} jobs, for good", jobs=jobs),
            say("A job you shared stays with the other, without your name"),
            say("yes deletes, anything else keeps"),
            say("To start over only: new job"),
        ),
        buttons=(say("yes"), say("no")),
    )


def confirmed(at: At) -> Deed | None:
    """Delete where the last thing said was the question and this is a yes; None where it is not."""
    if "yes" not in at.reply.message.asks or "forget" not in last_asks(at.session, at.job):
        return None
    messages = at.session.scalar(select(func.count()).where(LoggedMessage.technician_id == at.technician.id))
    backups = backups_since(at.session, at.technician.joined_at)
    zone = at.now.tzinfo
    forget(at.session, at.technician, at.now)
    lines = [say("Deleted: {messages} messages and all that came of them", messages=messages)]
    if backups:
        lines.append(say("Still in these backups, until they are deleted:"))
        lines += [say("- {file}, {day}", file=made.file, day=day(made.made_at, zone)) for made in backups]
    return Deed(lines=tuple(lines), forgotten=True)


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
