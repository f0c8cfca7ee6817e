"""The pictures that stand in a report: only those that the job has something for."""

from collections.abc import Mapping

from bot.pictures import PICTURES, Tell, draw
from bot.report.job_log import JobLog
from core.advice import Answer
from core.readings import Job


def report_pictures(log: JobLog, tell: Tell) -> Mapping[str, bytes]:
    """
    PNG of each picture by its name.

    Args:
        log: The job.
        tell: Sets a sentence in the reader's language.
    """
    answer = Answer(verdict=log.verdict, next_test=log.next_test, leads=log.leads, sizing=log.sizing)
    job = Job(readings=tuple(t.reading for t in log.before_repair()), facts=log.facts())
    wanted = {"circuit": bool(job.readings), "leads": log.leads is not None}
    return {name: draw(name, answer, job, tell).png for name, has in wanted.items() if has and name in PICTURES}
