"""
The papers of a job: one report, laid out as PDF, plain text, CSV and JSON.

`compose` puts a job into the reader's words; the four papers are laid out from what it gives. No database and no clock inside.
"""

from collections.abc import Mapping, Sequence

from bot.report.as_csv import as_csv
from bot.report.as_json import as_json
from bot.report.as_text import as_text
from bot.report.compose import compose
from bot.report.job_log import Given, JobLog, Photo, Sent, Taken, Told
from bot.report.paper import Report


def as_pdf(report: Report, pictures: Mapping[str, bytes], photos: Sequence[Photo] = ()) -> bytes:
    """
    The report on one page; photos that have no room on it follow on pages of their own.

    Args:
        report: The report.
        pictures: PNG of each drawn picture by its name, in the order in which they stand.
        photos: The technician's.
    """
    from bot.report.pdf.document import as_pdf as laid  # noqa: PLC0415  # only who prints loads what prints

    return laid(report, pictures, photos)


__all__ = ["Given", "JobLog", "Photo", "Report", "Sent", "Taken", "Told", "as_csv", "as_json", "as_pdf", "as_text", "compose"]
