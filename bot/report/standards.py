"""Which published texts a job leaned on."""

from bot.report.job_log import JobLog
from core.standards.source import COMMON_PRACTICE, Source


def named(log: JobLog) -> tuple[Source, ...]:
    """
    The sources behind the cautions of a job, each once, in the order of their first use; the rules of a sizing name their own.

    Args:
        log: The job.
    """
    first = {str(given.source): given.source for given in reversed(log.given) if given.source != COMMON_PRACTICE}
    return tuple(reversed(first.values()))
