"""Volts along a run of control wire, against what a coil needs."""

from collections.abc import Callable
from typing import Final

from bot.pictures import Picture, Tell
from bot.pictures.canvas import INK, MARK, WARN, Canvas, Dot, Line, Shape, Text, fitted, text_width
from core.advice import Answer
from core.readings import Job
from core.said import say
from core.standards.coil_range import PULL_IN_SHARE
from core.standards.voltage_drop import ADVISED_SHARE

WIDTH: Final = 1350
HEIGHT: Final = 1000
LEFT: Final = 60.0
RIGHT: Final = 1290.0
TOP: Final = 230.0
BOTTOM: Final = 860.0
GAP_PX: Final = 58.0
"""Least distance of two lines of words."""


def draw(answer: Answer, job: Job, tell: Tell) -> Picture:
    """
    A line from the transformer to the far coil.

    Args:
        answer: What sizing said, with the drop.
        job: What is known: length and gauge.
        tell: Sets a sentence in the technician's language.

    Raises:
        ValueError: The answer has no drop to draw.
    """
    sizing = answer.sizing
    if sizing is None or sizing.volts_at_load is None or sizing.drop_volts is None:
        raise ValueError("no run to draw")
    volts, source = sizing.volts_at_load, sizing.volts_at_load + sizing.drop_volts
    least, advised = PULL_IN_SHARE * source, (1.0 - ADVISED_SHARE) * source
    floor = min(least, volts) - 0.15 * (source - min(least, volts))
    low_enough = volts < least

    def y_of(v: float) -> float:
        return BOTTOM - (v - floor) / (source - floor) * (BOTTOM - TOP)

    heading = tell(say("Volts along the run"))
    end = tell(say("{volts:.2f} V at the coil", volts=volts))
    start = tell(say("{volts:.1f} V at the transformer", volts=source))
    run = tell(say("{feet:g} ft, {awg:g} AWG", feet=job.number("run_feet") or 0.0, awg=job.number("wire_awg") or 0.0))
    needed = tell(say("a coil needs {volts:.1f} V", volts=least))
    advice = tell(say("3 % line {volts:.2f} V", volts=advised))
    colour = WARN if low_enough else MARK
    shapes: list[Shape] = [
        Text(x=LEFT, y=90, text=heading, size=fitted(heading, RIGHT - LEFT, 62, bold=True), bold=True),
        Text(x=LEFT, y=165, text=end, size=fitted(end, RIGHT - LEFT, 58, bold=True), bold=True, fill=colour),
        *_level(y_of(advised), "10 14", INK),
        *_level(y_of(least), "26 16", WARN),
        Line(points=((LEFT, y_of(source)), (RIGHT, y_of(volts))), stroke=colour, width=12),
        Dot(x=LEFT, y=y_of(source), radius=16, fill=colour),
        Dot(x=RIGHT, y=y_of(volts), radius=16, fill=colour),
        Text(x=LEFT, y=BOTTOM + 90, text=start, size=fitted(start, 760, 42)),
        Text(x=RIGHT, y=BOTTOM + 90, text=run, size=42, anchor="end"),
    ]
    shapes += _words(needed, y_of(least) + 48, y_of, (source, volts))
    if abs(y_of(least) - y_of(advised)) > GAP_PX:
        shapes += _words(advice, y_of(advised) + 48, y_of, (source, volts))
    caption = f"{end}. {start}. {run}. {needed}"
    return Picture(png=Canvas(width=WIDTH, height=HEIGHT, shapes=tuple(shapes)).png(), caption=caption)


def _level(y: float, dash: str, stroke: str) -> tuple[Shape, ...]:
    return (Line(points=((LEFT, y), (RIGHT, y)), stroke=stroke, width=4, dash=dash),)


def _words(text: str, y: float, y_of: Callable[[float], float], ends: tuple[float, float]) -> tuple[Shape, ...]:
    """Words under a level, at the end where the line of the volts is farther away."""
    width = text_width(text, 40)
    at_left, at_right = y_of(ends[0]), y_of(ends[1])
    left = abs(at_left + (at_right - at_left) * width / 2 / (RIGHT - LEFT) - y)
    right = abs(at_right - (at_right - at_left) * width / 2 / (RIGHT - LEFT) - y)
    if left >= right:
        return (Text(x=LEFT, y=y, text=text, size=40),)
    return (Text(x=RIGHT, y=y, text=text, size=40, anchor="end"),)
