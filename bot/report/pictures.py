"""The drawn pictures of a report."""

from typing import Final

from bot.pictures import circuit, draw
from bot.pictures.canvas import Canvas
from bot.report.job_log import JobLog
from bot.report.paper import Tell
from core.advice import Answer
from core.readings import Job

PRINTED: Final = 0.7
"""A page shows the picture a good deal smaller than a phone: more dots than 250 an inch only take time."""


def drawn(log: JobLog, tell: Tell) -> dict[str, bytes]:
    """
    The circuit with its readings, and the leads where they were spoken of.

    Args:
        log: The job.
        tell: The reader's language.

    Returns:
        PNG of each picture by its name, in the order in which they stand.
    """
    answer, job = _answered(log)
    pictures = {"circuit": the_circuit(log, tell).png(PRINTED)} if job.readings else {}
    return pictures if log.leads is None else pictures | {"leads": draw("leads", answer, job, tell).png}


def the_circuit(log: JobLog, tell: Tell) -> Canvas:
    """
    The circuit as it was found, each reading where it was taken.

    Args:
        log: The job.
        tell: The reader's language.
    """
    answer, job = _answered(log)
    return circuit.without_head(answer, job, tell)


def _answered(log: JobLog) -> tuple[Answer, Job]:
    test = log.next_test if log.closed is None else None
    answer = Answer(verdict=log.verdict, next_test=test, leads=log.leads)
    return answer, Job(readings=tuple(t.reading for t in log.before_repair()), facts=log.facts())
