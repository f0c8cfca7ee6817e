"""The parts of a report as blocks of a page: a title, lines, a table, a picture."""

from dataclasses import dataclass
from itertools import accumulate
from typing import Final

from bot.report.as_text import one_line
from bot.report.paper import Part, Report, Table
from bot.report.pdf.pieces import Bar, Figure, Laid, Piece, Plate, Print, stacked
from bot.report.pdf.sheet import Sheet, Style, line_mm

GREY: Final = 80
"""Of what stands beside the matter, such as where a part comes from; dark enough for any printer."""
GAP_MM: Final = 1.8
"""Between two columns of a table."""
MOST_LETTERS: Final = 420
"""Of one line of a technician's words; the text, CSV and JSON have them all."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Setting:
    """How tightly a page is set."""

    size: float
    """Of the letters. [pt]"""
    short: bool
    """True to show of each place only the latest reading."""
    rows: int
    """Most rows of a table."""
    lines: int = 99
    """Most lines of a list."""
    picture_mm: float
    """Most height of a picture."""


def paragraph(sheet: Sheet, text: str, width: float, size: float, style: Style = "") -> Laid:
    """
    A text in lines.

    Args:
        sheet: Breaks the lines.
        text: Any text.
        width: Room. [mm]
        size: Of the letters. [pt]
        style: Plain or bold.
    """
    step = line_mm(size)
    lines = sheet.broken(one_line(text), width, size, style)
    pieces = tuple(Print(x=0.0, y=i * step, text=line, size=size, style=style) for i, line in enumerate(lines))
    return Laid(height=step * len(lines), pieces=pieces)


def shortened(words: str) -> str:
    """
    The start of a very long line, with a sign that there was more.

    Args:
        words: As sent.
    """
    return words if len(words) <= MOST_LETTERS else words[:MOST_LETTERS].rstrip() + " …"


def title(sheet: Sheet, part: Part, mark: str, width: float, size: float) -> Laid:
    """
    The head of a part, with where it comes from, over a rule.

    Args:
        sheet: Measures the words.
        part: The part.
        mark: The word for where it comes from.
        width: Room. [mm]
        size: Of the letters. [pt]
    """
    beside = sheet.width_of(part.title, size + 0.5, "B") + 1.6
    step = line_mm(size + 0.5)
    pieces = (
        Print(x=0.0, y=0.0, text=part.title, size=size + 0.5, style="B"),
        Print(x=beside, y=0.15, text=mark, size=size - 0.5, grey=GREY),
        Bar(x=0.0, y=step, width=width, height=0.25),
    )
    return Laid(height=step + 0.9, pieces=pieces)


def part_block(sheet: Sheet, report: Report, part: Part, width: float, setting: Setting) -> Laid:
    """
    One part of a report.

    Args:
        sheet: Measures the words.
        report: Knows what marks are called.
        part: The part.
        width: Room. [mm]
        setting: How tightly.
    """
    blocks = [title(sheet, part, report.called(part.mark), width, setting.size)]
    lines = tuple(shortened(line) for line in part.lines[: setting.lines])
    if len(lines) < len(part.lines):
        lines = (*lines, report.more(len(part.lines) - len(lines)))
    lines = (" · ".join(lines),) if part.run_in else lines
    blocks += [paragraph(sheet, line, width, setting.size) for line in lines]
    shown = part.short if setting.short and part.short is not None else part.table
    if shown is not None:
        blocks += _table(sheet, shown, width, setting)
    return stacked(blocks)


def _table(sheet: Sheet, table: Table, width: float, setting: Setting) -> list[Laid]:
    rows = table.rows[-setting.rows :]
    kept = [i for i in range(len(table.heads)) if any(row[i] for row in rows)]
    widths = _widths(sheet, [table.heads, *rows], kept, width, setting.size)
    laid = [_row(sheet, [table.heads[i] for i in kept], widths, setting.size - 0.5, grey=GREY)]
    laid += [_row(sheet, [row[i] for i in kept], widths, setting.size) for row in rows]
    if table.note and (note := table.note(len(rows))):
        laid.append(paragraph(sheet, note, width, setting.size - 0.5))
    return laid


def _widths(sheet: Sheet, rows: list[tuple[str, ...]], kept: list[int], width: float, size: float) -> list[float]:
    """Each column as wide as its words; where that is too much, the widest give way until they fit, and the others stay whole."""
    wanted = [max(sheet.width_of(row[i], size) for row in rows) + 0.2 for i in kept]
    room = width - GAP_MM * (len(kept) - 1)
    for count, narrower in enumerate(sorted(wanted)):
        share = room / (len(wanted) - count)
        if narrower > share:
            return [min(one, share) for one in wanted]
        room -= narrower
    return wanted


def _row(sheet: Sheet, cells: list[str], widths: list[float], size: float, grey: int = 0) -> Laid:
    starts = accumulate((w + GAP_MM for w in widths[:-1]), initial=0.0)
    step = line_mm(size)
    pieces: list[Piece] = []
    tallest = 1
    for start, width, cell in zip(starts, widths, cells, strict=True):
        lines = sheet.broken(one_line(cell), width + 0.1, size) if cell else []
        tallest = max(tallest, len(lines))
        pieces += [Print(x=start, y=i * step, text=line, size=size, grey=grey) for i, line in enumerate(lines)]
    return Laid(height=step * tallest, pieces=tuple(pieces))


def picture_block(sheet: Sheet, figure: Figure, width: float, setting: Setting) -> Laid:
    """
    A picture with its caption under it.

    Args:
        sheet: Breaks the caption.
        figure: The picture.
        width: Room. [mm]
        setting: How tightly.
    """
    scale = min(width / figure.wide, setting.picture_mm / figure.high)
    wide, high = figure.wide * scale, figure.high * scale
    plate = Plate(x=(width - wide) / 2.0, y=0.0, width=wide, height=high, figure=figure)
    return stacked([Laid(height=high + 0.6, pieces=(plate,)), paragraph(sheet, figure.words, width, setting.size - 0.5)])
