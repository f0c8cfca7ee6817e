"""Leads and windings as they look: wires in their colours, coils, terminals."""

from collections.abc import Mapping
from typing import Final

from bot.pictures.canvas import INK, PAPER, SHADE, Box, Curve, Dot, Line, Shape
from core.standards.lead_colours import COLOURS

INKS: Final[Mapping[str, str]] = {
    "white": "#ffffff", "black": "#111111", "red": "#d81e2c", "orange": "#ff8c00", "yellow": "#ffe000", "blue": "#1f5fd6",
    "brown": "#7a4a1e", "green": "#16883c", "gray": "#8f969c", "violet": "#7b3fb5", "pink": "#ff8fb8", "tan": "#d2a679",
}  # fmt: skip
"""Paint of each lead colour. Its word always stands beside it."""
_MARKED: Final = "#c9ced3"
"""A lead known by a mark only."""


def wire(lead: str, x1: float, x2: float, y: float) -> list[Shape]:
    """A lead from left to right, with an outline so that white shows on paper, and with its stripe."""
    base, _, stripe = lead.partition("/")
    ends = ((x1, y), (x2, y))
    shapes: list[Shape] = [
        Line(points=ends, stroke=INK, width=26),
        Line(points=ends, stroke=INKS.get(base, _MARKED), width=18),
    ]
    if stripe in COLOURS:
        shapes.append(Line(points=ends, stroke=INKS[stripe], width=8, dash="24 26"))
    return shapes


def coil(x: float, y1: float, y2: float, *, bulge: float, turns: int, width: float = 6.0) -> Shape:
    """A winding from top to bottom; its bumps look right where `bulge` is positive."""
    step = (y2 - y1) / turns
    arcs = "".join(
        f" C {x + bulge:.1f} {y1 + i * step:.1f} {x + bulge:.1f} {y1 + (i + 1) * step:.1f} {x:.1f} {y1 + (i + 1) * step:.1f}"
        for i in range(turns)
    )
    return Curve(d=f"M {x:.1f} {y1:.1f}{arcs}", width=width)


def core_lines(x: float, y1: float, y2: float) -> list[Shape]:
    """The iron between two windings."""
    return [Line(points=((at, y1), (at, y2)), width=9) for at in (x - 12.0, x + 12.0)]


def terminal(x: float, y: float) -> Shape:
    """Where a lead is landed."""
    return Dot(x=x, y=y, radius=24, fill=PAPER, stroke=INK, stroke_width=9)


def cap(x: float, y: float) -> list[Shape]:
    """The cap on a lead that is not used."""
    return [Box(x=x - 44, y=y - 25, width=56, height=50, fill=SHADE, stroke=INK, stroke_width=6, round=14)]
