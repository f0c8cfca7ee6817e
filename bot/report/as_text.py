"""The report as plain text, to paste into any ticket."""

from typing import Final

from bot.report.paper import Part, Report, Table

_GAP: Final = "  "


def as_text(report: Report) -> str:
    """
    The report as plain text.

    Args:
        report: The report.

    Returns:
        Lines that end in a line break; tables stand in columns.
    """
    widest = max((len(label) for label, _ in report.heads), default=0)
    blocks = [
        [report.title.upper()],
        [f"{label:<{widest}}{_GAP}{one_line(value)}" for label, value in report.heads],
        *([_title(part, report), *_body(part)] for part in report.parts),
        list(report.footer),
    ]
    return "\n\n".join("\n".join(line.rstrip() for line in block) for block in blocks if block) + "\n"


def one_line(text: str) -> str:
    r"""
    A technician's words without line breaks and control characters, which would break a layout.

    Args:
        text: Any text.

    >>> one_line("replaced\n50 va")
    'replaced 50 va'
    """
    return " ".join("".join(c if c.isprintable() else " " for c in text).split())


def _title(part: Part, report: Report) -> str:
    return f"{part.title.upper()} ({report.called(part.mark)})"


def _body(part: Part) -> list[str]:
    lines = [one_line(line) for line in part.lines]
    if part.table is not None:
        lines += _columns(part.table)
    return lines


def _columns(table: Table) -> list[str]:
    rows = [table.heads, *table.rows]
    kept = [i for i in range(len(table.heads)) if any(row[i] for row in table.rows)]
    widths = {i: max(len(row[i]) for row in rows) for i in kept}
    lines = [_GAP.join(f"{row[i]:<{widths[i]}}" for i in kept) for row in rows]
    note = table.note(len(table.rows)) if table.note else ""
    return [*lines, note] if note else lines
