"""Which published texts a job leaned on."""

from typing import Final

from bot.report.job_log import JobLog
from core.standards.source import COMMON_PRACTICE, Source

BEHIND_A_FINDING: Final[dict[str, tuple[Source, ...]]] = {}
"""Texts whose limits decide a finding."""


def named(log: JobLog) -> tuple[Source, ...]:
    """
    The sources behind what was said in a job, each once, in the order of their first use.

    Args:
        log: The job.
    """
    finding = log.verdict.finding if log.verdict else ""
    cited = (*BEHIND_A_FINDING.get(finding, ()), *(given.source for given in log.given))
    unique = {str(source): source for source in reversed(cited) if source != COMMON_PRACTICE}
    return tuple(reversed(unique.values()))
