"""One page: head and verdict across it, two columns under them, as tightly as the job needs and no tighter."""

from collections.abc import Sequence
from dataclasses import dataclass, replace
from typing import Final

from bot.report.paper import Part, Report
from bot.report.pdf.blocks import GREY, Setting, paragraph, part_block, picture_block, shortened
from bot.report.pdf.pieces import Bar, Figure, Laid, Piece, Print, stacked
from bot.report.pdf.sheet import MARGIN_MM, PAGE_MM, TEXT_MM, Sheet

LEFT_MM: Final = 96.0
GUTTER_MM: Final = 5.0
RIGHT_MM: Final = TEXT_MM - LEFT_MM - GUTTER_MM
BLOCK_GAP_MM: Final = 2.6
BESIDE_MM: Final = 66.0
"""Most height of a picture under the first."""
LEFT_PARTS: Final = ("known", "why", "readings")
"""What always stands left, beside the pictures; the rest goes where there is more room."""

LEAST_WITH_PHOTOS: Final = 8.0
"""Photos go on a page of their own rather than that the letters get smaller. [pt]"""

SETTINGS: Final = (
    tuple(Setting(size=size, short=False, rows=99, picture_mm=116.0) for size in (10.0, 9.5, 9.0, 8.5, 8.0)),
    tuple(Setting(size=size, short=False, rows=99, picture_mm=104.0) for size in (8.5, 8.0)),
    tuple(Setting(size=size, short=True, rows=99, picture_mm=116.0) for size in (8.5, 8.0)),
    tuple(Setting(size=size, short=True, rows=99, picture_mm=high) for size, high in ((8.0, 104.0), (7.5, 96.0), (7.0, 88.0))),
    tuple(Setting(size=7.0, short=True, rows=rows, picture_mm=88.0) for rows in (30, 24, 18, 12)),
    tuple(Setting(size=7.0, short=True, rows=rows, lines=6, picture_mm=80.0) for rows in (24, 18, 12, 6)),
    (Setting(size=7.0, short=True, rows=6, lines=3, picture_mm=60.0),),
)
"""From the loosest to the tightest; within a row each takes less room than the one before it. The first that fits is taken."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Page:
    """A page laid out."""

    pieces: tuple[Piece, ...]
    photos_on_it: bool


def laid_out(sheet: Sheet, report: Report, pictures: Sequence[Figure], photos: Sequence[Figure]) -> Page:
    """
    The first setting in which the job fits one page; with the photos on it where there is room for them.

    Args:
        sheet: Measures the words.
        report: The report.
        pictures: Drawn pictures in the order in which they stand.
        photos: The technician's.
    """
    foot = stacked([paragraph(sheet, line, TEXT_MM, 7.0) for line in report.footer])
    room = PAGE_MM[1] - 2 * MARGIN_MM - foot.height - BLOCK_GAP_MM
    strip = _strip(sheet, photos)
    for row in SETTINGS:
        tightest = _body(sheet, report, pictures, row[-1])
        if tightest.height > room and row is not SETTINGS[-1]:
            continue
        for setting in row:
            body = tightest if setting is row[-1] else _body(sheet, report, pictures, setting)
            if strip is not None and setting.size >= LEAST_WITH_PHOTOS:
                with_photos = stacked([body, strip], BLOCK_GAP_MM)
                if with_photos.height <= room:
                    return Page(pieces=_placed(with_photos, foot), photos_on_it=True)
            if body.height <= room:
                return Page(pieces=_placed(body, foot), photos_on_it=False)
    return Page(pieces=_placed(body, foot), photos_on_it=False)


def _placed(body: Laid, foot: Laid) -> tuple[Piece, ...]:
    """What stands on the page, and the foot under its rule."""
    bottom = PAGE_MM[1] - MARGIN_MM - foot.height
    rule = Bar(x=MARGIN_MM, y=bottom - 0.8, width=TEXT_MM, height=0.25)
    return (*body.at(MARGIN_MM, MARGIN_MM), rule, *foot.at(MARGIN_MM, bottom))


def _body(sheet: Sheet, report: Report, pictures: Sequence[Figure], setting: Setting) -> Laid:
    """Head, verdict, and the two columns."""
    left, right = _columns(sheet, report, pictures, setting)
    beside = (*left.pieces, *right.at(LEFT_MM + GUTTER_MM, 0.0))
    columns = Laid(height=max(left.height, right.height), pieces=beside)
    return stacked([_head(sheet, report, setting), _verdict(sheet, report, setting), columns], BLOCK_GAP_MM)


def _head(sheet: Sheet, report: Report, setting: Setting) -> Laid:
    """Title, then unit, people and times in two columns."""
    rows = [
        _pair(sheet, label, value, (LEFT_MM if i % 2 == 0 else RIGHT_MM), setting.size)
        for i, (label, value) in enumerate(report.heads)
    ]
    lines = []
    for i in range(0, len(rows), 2):
        pair = rows[i : i + 2]
        pieces = tuple(p for n, cell in enumerate(pair) for p in cell.at(n * (LEFT_MM + GUTTER_MM), 0.0))
        lines.append(Laid(height=max(cell.height for cell in pair), pieces=pieces))
    return stacked([paragraph(sheet, report.title, TEXT_MM, 14.0, "B"), Laid(height=0.8), *lines])


def _pair(sheet: Sheet, label: str, value: str, width: float, size: float) -> Laid:
    beside = 24.0
    words = paragraph(sheet, shortened(value), width - beside, size, "B")
    return Laid(height=words.height, pieces=(Print(x=0.0, y=0.0, text=label, size=size, grey=GREY), *words.at(beside, 0.0)))


def _verdict(sheet: Sheet, report: Report, setting: Setting) -> Laid:
    """The verdict in a frame, its first line large."""
    part = report.part("verdict")
    if part is None:
        return Laid(height=0.0)
    inset, size = 2.2, setting.size + 0.5
    width = TEXT_MM - 2 * inset
    first, *rest = part.lines
    mark = Print(
        x=width - sheet.width_of(report.called(part.mark), size - 1.0),
        y=0.6,
        text=report.called(part.mark),
        size=size - 1.0,
        grey=GREY,
    )
    head = paragraph(sheet, first, width - 22.0, 13.0, "B")
    under = paragraph(sheet, " · ".join(rest), width, size) if rest else Laid(height=0.0)
    inner = stacked([Laid(height=head.height, pieces=(*head.pieces, mark)), under], 0.4)
    frame = Bar(x=0.0, y=0.0, width=TEXT_MM, height=inner.height + 2 * inset - 0.6, framed=True)
    return Laid(height=frame.height, pieces=(frame, *inner.at(inset, inset - 0.4)))


def _columns(sheet: Sheet, report: Report, pictures: Sequence[Figure], setting: Setting) -> tuple[Laid, Laid]:
    """Pictures right, readings left, every other part where there is more room."""
    left = [_part(sheet, report, part, LEFT_MM, setting) for part in report.parts if part.name in LEFT_PARTS]
    under = replace(setting, picture_mm=min(BESIDE_MM, 0.6 * setting.picture_mm))
    right = [picture_block(sheet, figure, RIGHT_MM, under if i else setting) for i, figure in enumerate(pictures)]
    goes_left = True
    for part in report.parts:
        if part.name in {*LEFT_PARTS, "verdict", "photos"}:
            continue
        goes_left = goes_left if part.with_last else _height(left) <= _height(right)
        (left if goes_left else right).append(_part(sheet, report, part, LEFT_MM if goes_left else RIGHT_MM, setting))
    return stacked(left, BLOCK_GAP_MM), stacked(right, BLOCK_GAP_MM)


def _part(sheet: Sheet, report: Report, part: Part, width: float, setting: Setting) -> Laid:
    return part_block(sheet, report, part, width, setting)


def _height(blocks: Sequence[Laid]) -> float:
    return sum(block.height + BLOCK_GAP_MM for block in blocks)


def _strip(sheet: Sheet, photos: Sequence[Figure]) -> Laid | None:
    """Up to four photos side by side; more need a page of their own."""
    if not 0 < len(photos) <= 4:
        return None
    room = (TEXT_MM - GUTTER_MM * 3) / 4
    setting = Setting(size=8.0, short=False, rows=0, picture_mm=38.0)
    cells = [picture_block(sheet, figure, room, setting) for figure in photos]
    pieces = tuple(p for i, cell in enumerate(cells) for p in cell.at(i * (room + GUTTER_MM), 0.0))
    return Laid(height=max(cell.height for cell in cells), pieces=pieces)
