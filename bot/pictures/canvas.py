"""
Shapes as plain data, drawn to PNG: the only file that knows the drawing library.

How to use it: put shapes into a list, back to front, then draw them.

    shapes = [
        Box(x=40, y=40, width=600, height=120, fill=PAPER, round=16),
        Text(x=70, y=110, text=tell(say("Fuse {amps:.0f} A", amps=3)), size=44, bold=True),
        Line(points=((70, 140), (610, 140)), stroke=INK, width=6),
    ]
    png = Canvas(width=1350, height=1050, shapes=tuple(shapes)).png()

`x` of a text is its start, middle or end as `anchor` says; `y` is its baseline. `text_width` measures before drawing, `fitted` makes a text
smaller until it fits and `wrapped` breaks it into lines, so that nothing is cut in a longer language. On a phone 1350 px are about 7 cm: text
under 34 px is not read at arm's length. Colour never carries meaning alone: put a word beside it.
"""

from collections.abc import Sequence
from dataclasses import dataclass
from functools import cache
from pathlib import Path
from threading import local
from typing import TYPE_CHECKING, Final, Literal
from xml.sax.saxutils import escape, quoteattr

if TYPE_CHECKING:
    from resvg.usvg import Options

FONTS: Final = Path(__file__).parent / "fonts"
FAMILY: Final = "DejaVu Sans"
"""Shipped, loaded by path. The library drops a text without a word where it does not find the family."""

INK: Final = "#111111"
PAPER: Final = "#ffffff"
SHADE: Final = "#e9ecef"
MARK: Final = "#005a9c"
"""Blue that stands apart from ink and paper in sunlight and for every kind of colour blindness."""
WARN: Final = "#b34700"
_AS_IT_IS: Final = (1.0, 0.0, 0.0, 0.0, 1.0, 0.0)
"""No change of scale or place, row by row; the library draws nothing at all where it is taken column by column."""
SMALLEST_PX: Final = 34.0
"""Least height of a text on a picture 1350 px wide: about 11 pt on a phone."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Text:
    """One line of words."""

    x: float
    y: float
    text: str
    size: float = 40.0
    bold: bool = False
    fill: str = INK
    anchor: Literal["start", "middle", "end"] = "start"

    def svg(self) -> str:
        """As an element."""
        weight = "bold" if self.bold else "normal"
        return (
            f'<text x="{self.x:.1f}" y="{self.y:.1f}" font-family="{FAMILY}" font-size="{self.size:.1f}" font-weight="{weight}" '
            f'fill="{self.fill}" text-anchor="{self.anchor}">{escape(self.text)}</text>'
        )


@dataclass(frozen=True, slots=True, kw_only=True)
class Line:
    """A line through points."""

    points: tuple[tuple[float, float], ...]
    stroke: str = INK
    width: float = 5.0
    dash: str = ""
    """Lengths of stroke and gap, such as "18 12"."""

    def svg(self) -> str:
        """As an element."""
        points = " ".join(f"{x:.1f},{y:.1f}" for x, y in self.points)
        return (
            f'<polyline points="{points}" fill="none" stroke="{self.stroke}" stroke-width="{self.width:.1f}" '
            f'stroke-linejoin="round" stroke-linecap="round"{_dashed(self.dash)}/>'
        )


@dataclass(frozen=True, slots=True, kw_only=True)
class Curve:
    """A path in SVG's path language: arcs of a coil, an arrow."""

    d: str
    stroke: str = INK
    width: float = 5.0
    fill: str = "none"

    def svg(self) -> str:
        """As an element."""
        return (
            f'<path d={quoteattr(self.d)} fill="{self.fill}" stroke="{self.stroke}" stroke-width="{self.width:.1f}" '
            'stroke-linejoin="round" stroke-linecap="round"/>'
        )


@dataclass(frozen=True, slots=True, kw_only=True)
class Box:
    """A rectangle, its corners rounded where `round` says so."""

    x: float
    y: float
    width: float
    height: float
    fill: str = "none"
    stroke: str = "none"
    stroke_width: float = 4.0
    round: float = 0.0
    dash: str = ""

    def svg(self) -> str:
        """As an element."""
        return (
            f'<rect x="{self.x:.1f}" y="{self.y:.1f}" width="{self.width:.1f}" height="{self.height:.1f}" rx="{self.round:.1f}" '
            f'fill="{self.fill}" stroke="{self.stroke}" stroke-width="{self.stroke_width:.1f}"{_dashed(self.dash)}/>'
        )


@dataclass(frozen=True, slots=True, kw_only=True)
class Dot:
    """A filled circle."""

    x: float
    y: float
    radius: float
    fill: str = INK
    stroke: str = "none"
    stroke_width: float = 4.0

    def svg(self) -> str:
        """As an element."""
        return (
            f'<circle cx="{self.x:.1f}" cy="{self.y:.1f}" r="{self.radius:.1f}" fill="{self.fill}" stroke="{self.stroke}" '
            f'stroke-width="{self.stroke_width:.1f}"/>'
        )


Shape = Text | Line | Curve | Box | Dot


@dataclass(frozen=True, slots=True, kw_only=True)
class Canvas:
    """A picture before it is drawn."""

    width: int
    height: int
    shapes: tuple[Shape, ...]
    background: str = PAPER
    top: int = 0
    """How much is cut off above."""

    def svg(self, scale: float = 1.0) -> str:
        """The picture as SVG text, drawn so many times as large."""
        body = "\n".join(shape.svg() for shape in self.shapes)
        return (
            f'<svg xmlns="http://www.w3.org/2000/svg" width="{scale * self.width:g}" height="{scale * self.height:g}" '
            f'viewBox="0 {self.top} {self.width} {self.height}"><rect y="{self.top}" width="100%" height="100%" fill="{self.background}"/>\n{body}\n</svg>'
        )

    def png(self, scale: float = 1.0) -> bytes:
        """The picture as PNG, drawn so many times as large."""
        return rendered(self.svg(scale))

    def words(self) -> tuple[str, ...]:
        """Every text on the picture, for a caption and for tests."""
        return tuple(shape.text for shape in self.shapes if isinstance(shape, Text))


def rendered(svg: str) -> bytes:
    """A picture's SVG text as PNG."""
    import resvg  # noqa: PLC0415  # only who draws pays for it

    return resvg.render(resvg.usvg.Tree.from_str(svg, _options()), _AS_IT_IS)


def text_width(text: str, size: float, *, bold: bool = False) -> float:
    """
    How wide a text will be drawn [px].

    >>> round(text_width("208 V", 40))
    116
    """
    advance, missing = _advances(bold)
    return sum(advance.get(ord(letter), missing) for letter in text) * size


def fitted(text: str, room: float, size: float, *, bold: bool = False) -> float:
    """The size at which a text fits the room, at most `size` [px]."""
    width = text_width(text, size, bold=bold)
    return size if width <= room else size * room / width


def wrapped(text: str, room: float, size: float, *, bold: bool = False) -> tuple[str, ...]:
    """A text as lines none of which is wider than the room, broken at spaces."""
    lines: list[str] = []
    for word in text.split():
        longer = f"{lines[-1]} {word}" if lines else word
        if lines and text_width(longer, size, bold=bold) <= room:
            lines[-1] = longer
        else:
            lines.append(word)
    return tuple(lines)


def paragraph(lines: Sequence[str], *, x: float, y: float, size: float, bold: bool = False, fill: str = INK) -> list[Shape]:
    """Lines one under the other, the first with its baseline at `y`."""
    return [Text(x=x, y=y + i * size * 1.3, text=line, size=size, bold=bold, fill=fill) for i, line in enumerate(lines)]


def _dashed(dash: str) -> str:
    return f' stroke-dasharray="{dash}"' if dash else ""


_THREAD = local()
"""The library's options stay with the thread that made them: used or dropped by another they end the program."""


def _options() -> "Options":
    made: Options | None = getattr(_THREAD, "options", None)
    if made is None:
        import resvg  # noqa: PLC0415

        made = resvg.usvg.Options.default()
        for file in sorted(FONTS.glob("*.ttf")):
            made.load_font_file(str(file))
        made.font_family = FAMILY
        _THREAD.options = made
    return made


@cache
def _advances(bold: bool) -> tuple[dict[int, float], float]:  # noqa: FBT001
    """Width of each letter at size 1, and of one that the font lacks."""
    from fontTools.ttLib import TTFont  # noqa: PLC0415

    with TTFont(FONTS / ("DejaVuSans-Bold.ttf" if bold else "DejaVuSans.ttf"), lazy=True) as font:
        unit, widths = float(font["head"].unitsPerEm), font["hmtx"]
        return {code: widths[name][0] / unit for code, name in font.getBestCmap().items()}, widths[".notdef"][0] / unit
