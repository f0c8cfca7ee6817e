"""The report as one table for a spreadsheet: one row a thing sent or computed, each number under a head that names its unit."""

import csv
import io
import re
from typing import Final

from bot.report.paper import Report
from bot.report.spreadsheet_rows import HEADS, rows


def as_csv(report: Report) -> str:
    """
    The report as comma-separated values. Written to a file as `utf-8-sig`, every spreadsheet reads its signs right.

    Args:
        report: The report.

    Returns:
        A head and one row a thing, lines ended by CR LF (RFC 4180). No cell can be taken for a formula.
    """
    out = io.StringIO(newline="")
    writer = csv.DictWriter(out, fieldnames=list(HEADS), restval="", quoting=csv.QUOTE_MINIMAL)
    writer.writeheader()
    for row in rows(report):
        writer.writerow({name: safe(value) if isinstance(value, str) else value for name, value in row.items()})
    return out.getvalue()


_FORMULA: Final = re.compile(r"(^|[;\t\r\n|])(\s*)(?=[=+\-@%＝＋－＠])")
"""Where a spreadsheet could begin a formula: at the start of a cell, or after what another country's spreadsheet splits at."""


def safe(cell: str) -> str:
    """
    A text that a spreadsheet shows and never runs: an apostrophe before anything that could begin a formula.

    Args:
        cell: Any text.

    Source:
        OWASP, CSV Injection.

    >>> safe("=1+1"), safe("rtu 3"), safe("a;@b")
    ("'=1+1", 'rtu 3', "a;'@b")
    """
    return _FORMULA.sub(r"\1\2'", "".join(c for c in cell if c.isprintable() or c in "\t\r\n"))
