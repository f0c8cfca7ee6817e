"""What a job's row says of it: folded from the log, for lists and counts that must not fold."""

from bot.conversation import State
from bot.reply import Reply
from bot.store.tables import Job
from core.readings import Job as Told


def note(job: Job, reply: Reply, after: State) -> Told:
    """
    Bring the row up to what the job came to with this reply; that is given back.

    From a repair on the row stays as it is: it says what failed, and not what was put in.
    """
    told = after.job(reply.message)
    verdict = reply.answer.verdict
    if after.is_proved:
        return told
    if verdict is not None:
        job.finding, job.transformer = verdict.finding, verdict.transformer
        job.confidence, job.settled = verdict.confidence, verdict.settled
    elif not told.readings and job.finding is not None:
        job.finding = job.transformer = job.confidence = job.settled = None
    job.supply_volts, job.tap_volts, job.rated_va = facts_noted(told)
    return told


def facts_noted(told: Told) -> tuple[float | None, float | None, float | None]:
    """Supply, tap and rating, as they stand."""
    return told.number("supply_volts"), told.number("tap_volts"), told.number("rated_va")
