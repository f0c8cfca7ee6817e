"""The paper: a letter page, the shipped letters, and words broken into lines as they will be printed."""

import re
from collections.abc import Container, Sequence
from typing import TYPE_CHECKING, Final, Literal, Self, cast

from fpdf import FPDF

from bot.pictures.canvas import FONTS

if TYPE_CHECKING:
    from fpdf.fonts import TTFFont

FAMILY: Final = "dejavu"
PAGE_MM: Final = (215.9, 279.4)
"""US letter."""
MARGIN_MM: Final = 12.0
TEXT_MM: Final = PAGE_MM[0] - 2 * MARGIN_MM
POINT_MM: Final = 25.4 / 72.0
LEADING: Final = 1.28
"""Height of a line over the size of its letters."""

Style = Literal["", "B"]
_AMOUNT: Final = re.compile(r"(?<=\d) (?=(V|A|VA|Ω|kΩ|MΩ|ft|%)\b|%|Ω)")
"""Between a number and its unit no line breaks."""


class Sheet(FPDF):
    """A document of letter pages that nothing breaks by itself. In a `with`: behind it the files of the letters are closed."""

    def __init__(self) -> None:
        super().__init__(format="letter", unit="mm")
        self.set_auto_page_break(auto=False)
        self.set_margin(MARGIN_MM)
        self.c_margin = 0.0
        self.add_font(FAMILY, "", FONTS / "DejaVuSans.ttf")
        self.add_font(FAMILY, "B", FONTS / "DejaVuSans-Bold.ttf")
        self.widths: dict[tuple[str, Style], float] = {}
        """Of each word in letters of one point."""
        self.letters: Container[int] = cast("TTFFont", self.fonts[FAMILY]).cmap

    def __enter__(self) -> Self:
        return self

    def __exit__(self, *_: object) -> None:
        for font in self.fonts.values():
            cast("TTFFont", font).ttfont.close()  # the library leaves them to the garbage collector

    def printable(self, text: str) -> str:
        """The text with a question mark for each sign that the letters do not have."""
        return "".join(c if ord(c) in self.letters and c.isprintable() else "?" if c.isprintable() else " " for c in text)

    def broken(self, text: str, width: float, size: float, style: Style = "") -> Sequence[str]:
        """
        A text as lines that fit a width, broken at spaces, and inside a word only where that is wider than a line.

        The library's own search measures every letter anew; a page is tried in up to twenty settings, and the widths of words stay.

        Args:
            text: One paragraph.
            width: Room. [mm]
            size: Of the letters. [pt]
            style: Plain or bold.
        """
        lines = [""]
        for word in _AMOUNT.sub("\u00a0", self.printable(text)).split(" "):
            longer = f"{lines[-1]} {word}" if lines[-1] else word
            if self.width_of(longer, size, style) <= width:
                lines[-1] = longer
            elif self.width_of(word, size, style) <= width:
                lines.append(word)
            else:
                self.set_font(FAMILY, style, size)
                parts = cast("list[str]", self.multi_cell(width, text=word, dry_run=True, output="LINES", align="L"))
                lines += parts
        return [line for line in lines if line] or [""]

    def width_of(self, text: str, size: float, style: Style = "") -> float:
        """
        Width of a text on one line, in mm.

        Args:
            text: Any text.
            size: Of the letters. [pt]
            style: Plain or bold.
        """
        return sum(self._word(word, style) for word in text.split(" ")) * size + text.count(" ") * self._word(" ", style) * size

    def _word(self, word: str, style: Style) -> float:
        """Width of a word in letters of one point, measured once."""
        if (word, style) not in self.widths:
            self.set_font(FAMILY, style, 1.0)
            self.widths[word, style] = float(self.get_string_width(self.printable(word)))
        return self.widths[word, style]


def line_mm(size: float) -> float:
    """
    Height of one line, in mm.

    Args:
        size: Of the letters. [pt]
    """
    return size * POINT_MM * LEADING
