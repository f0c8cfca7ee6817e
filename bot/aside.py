"""Messages that stand in a job's log and speak of others: whoever else works on the job is not shown them."""

from collections.abc import Mapping
from typing import Any, Final

OF_OTHERS: Final = frozenset({"list_jobs", "resume_job", "new_job", "settings", "export", "invite", "start", "language"})
"""Asks that have nothing to do with the job in which they were asked."""
WITH_A_NAME: Final = frozenset({"history", "close_job", "report", "forget", "hand_over"})
"""Asks that have not where they name a job."""


def is_aside(read: Mapping[str, Any]) -> bool:
    """
    Whether a message only speaks of other jobs.

    Args:
        read: What was read of it, as it is kept.

    >>> is_aside({"asks": ["list_jobs"]}), is_aside({"asks": ["close_job"], "name": "rtu 9"}), is_aside({"asks": ["close_job"]})
    (True, True, False)
    """
    asks = set(read.get("asks", ()))
    told = read.get("readings") or read.get("facts")
    return bool(asks) and not told and asks <= (OF_OTHERS | WITH_A_NAME if read.get("name") else OF_OTHERS)
