"""The technician's photos: made small enough to send, and their own page where the first has no room."""

import io
from collections.abc import Sequence
from typing import Final

from PIL import Image, ImageOps, UnidentifiedImageError

from bot.report.job_log import Photo
from bot.report.pdf.blocks import Setting, picture_block
from bot.report.pdf.pieces import Figure, Piece
from bot.report.pdf.sheet import MARGIN_MM, PAGE_MM, TEXT_MM, Sheet

LONGEST_PX: Final = 1400
"""At half a page's width that is 370 dots an inch."""
MOST_PIXELS: Final = 60_000_000
"""No phone takes more; a picture that claims more is not opened."""
PER_PAGE: Final = 6
BLANK_PX: Final = (400, 300)
_GAP_MM: Final = 6.0


def opened(photo: Photo, words: str) -> Figure | None:
    """
    A photo, upright and small, without the place and phone that it was taken with.

    Args:
        photo: As it was sent.
        words: Its caption.

    Returns:
        The picture, or None where the bytes are no picture or an oversized one.
    """
    out = io.BytesIO()
    try:
        image = Image.open(io.BytesIO(photo.body))
        if image.width * image.height > MOST_PIXELS:
            return None
        image.draft("RGB", (LONGEST_PX, LONGEST_PX))
        upright = ImageOps.exif_transpose(image).convert("RGB")
        upright.thumbnail((LONGEST_PX, LONGEST_PX))
        upright.save(out, "JPEG", quality=82)
    except (
        UnidentifiedImageError,
        OSError,
        ValueError,
        SyntaxError,
        Image.DecompressionBombError,
        Image.DecompressionBombWarning,
    ):
        return None
    return Figure(wide=upright.width, high=upright.height, data=out.getvalue(), words=words)


def blank(words: str) -> Figure:
    """
    The frame for a file that is no picture.

    Args:
        words: What is said under it.
    """
    return Figure(wide=BLANK_PX[0], high=BLANK_PX[1], data=Image.new("RGB", BLANK_PX, "lightgray"), words=words)


def pages(sheet: Sheet, photos: Sequence[Figure]) -> list[list[Piece]]:
    """
    Photos in two columns, as large as a page takes.

    Args:
        sheet: Breaks the captions.
        photos: With their captions.
    """
    width = (TEXT_MM - _GAP_MM) / 2.0
    room = (PAGE_MM[1] - 2 * MARGIN_MM) / (PER_PAGE / 2)
    setting = Setting(size=9.0, short=False, rows=0, picture_mm=room - 12.0)
    found: list[list[Piece]] = []
    for i, figure in enumerate(photos):
        row, column = divmod(i % PER_PAGE, 2)
        if i % PER_PAGE == 0:
            found.append([])
        block = picture_block(sheet, figure, width, setting)
        found[-1] += block.at(MARGIN_MM + column * (width + _GAP_MM), MARGIN_MM + row * room)
    return found
