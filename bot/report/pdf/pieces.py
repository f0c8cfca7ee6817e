"""Pieces of a page, placed but not drawn yet: whether a page fits is known before anything is put on paper."""

from collections.abc import Iterable
from dataclasses import dataclass, replace
from typing import TYPE_CHECKING

from bot.report.pdf.sheet import FAMILY, POINT_MM, Sheet, Style

if TYPE_CHECKING:
    from PIL.Image import Image


@dataclass(frozen=True, slots=True, kw_only=True)
class Print:
    """One line of letters; `y` is its top."""

    x: float
    y: float
    text: str
    size: float
    """[pt]"""
    style: Style = ""
    grey: int = 0
    """0 is black."""

    def draw(self, sheet: Sheet) -> None:
        """Put it on the present page."""
        sheet.set_font(FAMILY, self.style, self.size)
        sheet.set_text_color(self.grey)
        sheet.text(self.x, self.y + self.size * POINT_MM, sheet.printable(self.text))


@dataclass(frozen=True, slots=True, kw_only=True)
class Bar:
    """A filled or framed rectangle: a thin rule, or the frame of the verdict."""

    x: float
    y: float
    width: float
    height: float
    framed: bool = False

    def draw(self, sheet: Sheet) -> None:
        """Put it on the present page."""
        sheet.set_draw_color(0)
        sheet.set_fill_color(0)
        sheet.set_line_width(0.7)
        sheet.rect(self.x, self.y, self.width, self.height, style="D" if self.framed else "F")


@dataclass(frozen=True, slots=True, kw_only=True)
class Figure:
    """A picture that can be printed."""

    wide: int
    high: int
    """[px]"""
    data: "Image | bytes"
    """Bytes where they are printed as they are: a photo stays a JPEG."""
    words: str
    """Its caption, and what it shows for those who can't see it."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Plate:
    """A picture."""

    x: float
    y: float
    width: float
    height: float
    figure: Figure

    def draw(self, sheet: Sheet) -> None:
        """Put it on the present page."""
        sheet.image(self.figure.data, self.x, self.y, self.width, self.height, alt_text=self.figure.words)


Piece = Print | Bar | Plate


@dataclass(frozen=True, slots=True, kw_only=True)
class Laid:
    """A block with its height; its pieces are placed from its top left corner, in mm."""

    height: float
    pieces: tuple[Piece, ...] = ()

    def at(self, x: float, y: float) -> tuple[Piece, ...]:
        """The pieces with the corner at a place, in mm."""
        return tuple(replace(piece, x=piece.x + x, y=piece.y + y) for piece in self.pieces)


def stacked(blocks: Iterable[Laid], gap: float = 0.0) -> Laid:
    """
    Blocks one under the other.

    Args:
        blocks: From the top.
        gap: Between two of them. [mm]
    """
    pieces: list[Piece] = []
    y = 0.0
    for block in blocks:
        pieces += block.at(0.0, y)
        y += block.height + gap
    return Laid(height=max(y - gap, 0.0), pieces=tuple(pieces))
