"""The report as a PDF."""

import io
from collections.abc import Mapping, Sequence

from PIL import Image

from bot.report.job_log import Photo
from bot.report.paper import Report
from bot.report.pdf.page import laid_out
from bot.report.pdf.photos import blank, opened, pages
from bot.report.pdf.pieces import Figure
from bot.report.pdf.sheet import Sheet
from bot.report.places import clock


def as_pdf(report: Report, pictures: Mapping[str, bytes], photos: Sequence[Photo]) -> bytes:
    """
    The report on one page of US letter; photos that have no room on it follow on pages of their own.

    The same data gives the same bytes: the document is dated by the job and not by the clock.

    Args:
        report: The report.
        pictures: PNG of each drawn picture by its name, in the order in which they stand.
        photos: The technician's.

    Returns:
        The PDF.
    """
    with Sheet() as sheet:
        sheet.add_page()
        _describe(sheet, report)
        captions = dict(report.captions)
        drawn = [_drawn(png, captions.get(name, name)) for name, png in pictures.items()]
        shown = [_shown(report, photo) for photo in photos]
        page = laid_out(sheet, report, drawn, shown)
        for piece in page.pieces:
            piece.draw(sheet)
        for pieces in [] if page.photos_on_it else pages(sheet, shown):
            sheet.add_page()
            for piece in pieces:
                piece.draw(sheet)
        return bytes(sheet.output())


def _describe(sheet: Sheet, report: Report) -> None:
    log = report.log
    sheet.set_title(f"{report.title}: {log.unit or log.name}")
    sheet.set_author(", ".join(log.technicians))
    sheet.set_subject("; ".join(part.lines[0] for part in report.parts if part.name == "verdict"))
    sheet.set_creator("ohmreply")
    sheet.set_lang(report.language)
    sheet.set_creation_date(max([log.opened, *(s.at for s in log.sent), *([log.closed] if log.closed else [])]))


def _drawn(png: bytes, words: str) -> Figure:
    image = Image.open(io.BytesIO(png)).convert("RGB")
    return Figure(wide=image.width, high=image.height, data=image, words=words)


def _shown(report: Report, photo: Photo) -> Figure:
    """A photo with its caption; where it can't be opened, an empty frame that says so."""
    captions = dict(report.captions)
    words = f"{clock(photo.at, report.log.zone, days=True)}  {photo.caption or captions['photo']}"
    return opened(photo, words) or blank(f"{words}  {captions['broken']}")
