"""Volts along runs of control wire, against what a coil needs."""

from collections.abc import Callable
from typing import Final

from bot.pictures import Picture, Tell
from bot.pictures.canvas import INK, MARK, PAPER, WARN, Box, Canvas, Dot, Line, Shape, Text, fitted, text_width
from bot.pictures.falls import Fall, falls, pull_ins
from core.advice import Answer
from core.readings import Job
from core.said import Said, say
from core.standards.coil_range import PULL_IN_SHARE
from core.standards.voltage_drop import ADVISED_SHARE

WIDTH: Final = 1350
HEIGHT: Final = 1000
"""With one run; each further one adds a row of words."""
LEFT: Final = 60.0
RIGHT: Final = 1290.0
TOP: Final = 230.0
BOTTOM: Final = 860.0
GAP_PX: Final = 58.0
"""Least distance of two lines of words."""
ROW: Final = 62.0
MOST_RUNS: Final = 6
"""More than these are not told apart on a phone."""


def draw(answer: Answer, job: Job, tell: Tell) -> Picture:
    """
    A line from the transformer to each far coil.

    Args:
        answer: What sizing said, with the drop.
        job: What is known: lengths, gauges and loads.
        tell: Sets a sentence in the technician's language.

    Raises:
        ValueError: The answer has no drop to draw.
    """
    sizing = answer.sizing
    if sizing is None or sizing.volts_at_load is None or sizing.drop_volts is None:
        raise ValueError("no run to draw")
    volts, source = sizing.volts_at_load, sizing.volts_at_load + sizing.drop_volts
    drawn = falls(job, source, volts)[:MOST_RUNS]
    least, advised = PULL_IN_SHARE * source, (1.0 - ADVISED_SHARE) * source
    pulled = pull_ins(job, source)
    weakest = min((fall.points[-1][1] for fall in pulled), default=source)
    lowest = min(least, volts, weakest)
    floor = lowest - 0.15 * (source - lowest)
    longest = max(fall.points[-1][0] for fall in drawn)

    def x_of(feet: float) -> float:
        return LEFT + feet / longest * (RIGHT - LEFT)

    def y_of(v: float) -> float:
        return BOTTOM - (v - floor) / (source - floor) * (BOTTOM - TOP)

    heading = tell(say("Volts along the run"))
    starved = weakest < least
    end = tell(_end(volts, weakest if starved else None, several=len(drawn) > 1))
    start = tell(say("{volts:.1f} V at the transformer", volts=source))
    needed = tell(say("a coil needs {volts:.1f} V", volts=least))
    advice = tell(say("3 % line {volts:.2f} V", volts=advised))
    shapes: list[Shape] = [
        Text(x=LEFT, y=90, text=heading, size=fitted(heading, RIGHT - LEFT, 62, bold=True), bold=True),
        Text(
            x=LEFT,
            y=165,
            text=end,
            size=fitted(end, RIGHT - LEFT, 58, bold=True),
            bold=True,
            fill=_colour(min(volts, weakest), least),
        ),
        *_level(y_of(advised), "10 14", INK),
        *_level(y_of(least), "26 16", WARN),
    ]
    for number, fall in enumerate(drawn, start=1):
        shapes += _line(fall, least, x_of, y_of, str(number) if len(drawn) > 1 else "")
    for fall in pulled:
        shapes += _pulling(fall, least, x_of, y_of, tell)
    shapes += _words(needed, y_of(least) + 48, y_of, (source, volts))
    if abs(y_of(least) - y_of(advised)) > GAP_PX:
        shapes += _words(advice, y_of(advised) + 48, y_of, (source, volts))
    told, caption = _footer(drawn, start, tell)
    shapes += told
    height = HEIGHT + int(ROW * (len(drawn) if len(drawn) > 1 else 0))
    return Picture(svg=Canvas(width=WIDTH, height=height, shapes=tuple(shapes)).svg(), caption=f"{end}. {caption}. {needed}")


def _end(volts: float, weakest: float | None, *, several: bool) -> Said:
    if weakest is not None:
        return say("{volts:.1f} V at the coil while it pulls in", volts=weakest)
    if several:
        return say("{volts:.2f} V at the worst coil", volts=volts)
    return say("{volts:.2f} V at the coil", volts=volts)


def _colour(volts: float, least: float) -> str:
    return WARN if volts < least else MARK


def _line(fall: Fall, least: float, x_of: Callable[[float], float], y_of: Callable[[float], float], number: str) -> list[Shape]:
    """One fall of the volts, its end marked by a number where there are several."""
    points = tuple((x_of(feet), y_of(volts)) for feet, volts in fall.points)
    colour = _colour(fall.points[-1][1], least)
    shapes: list[Shape] = [Line(points=points, stroke=colour, width=12), Dot(x=LEFT, y=points[0][1], radius=16, fill=colour)]
    shapes += [Dot(x=x, y=y, radius=12, fill=colour) for x, y in points[1:-1]]
    x, y = points[-1]
    shapes.append(Dot(x=x, y=y, radius=26 if number else 16, fill=colour))
    if number:
        shapes.append(Text(x=x, y=y + 13, text=number, size=36, bold=True, fill=PAPER, anchor="middle"))
    return shapes


def _pulling(
    fall: Fall, least: float, x_of: Callable[[float], float], y_of: Callable[[float], float], tell: Tell
) -> list[Shape]:
    """The volts while the largest coil pulls in: broken, with its figure at the end."""
    points = tuple((x_of(feet), y_of(volts)) for feet, volts in fall.points)
    colour, words = _colour(fall.points[-1][1], least), tell(fall.says)
    (x, y), width = points[-1], text_width(words, 40)
    line = Line(points=points, stroke=colour, width=7, dash="30 16")
    if x - LEFT < width:
        return [line, Text(x=LEFT, y=y + 44, text=words, size=40, fill=colour)]
    return [line, Text(x=x, y=y + 44, text=words, size=40, fill=colour, anchor="end")]


def _footer(drawn: tuple[Fall, ...], start: str, tell: Tell) -> tuple[list[Shape], str]:
    """What is known of each run, and the same in one sentence."""
    y = BOTTOM + 90.0
    if len(drawn) == 1:
        run = tell(drawn[0].says)
        left = fitted(start, 0.5 * (RIGHT - LEFT), 42)
        room = RIGHT - LEFT - text_width(start, left) - 40
        shapes: list[Shape] = [
            Text(x=LEFT, y=y, text=start, size=left),
            Text(x=RIGHT, y=y, text=run, size=fitted(run, room, 42), anchor="end"),
        ]
        return shapes, f"{start}. {run}"
    rows = [f"{number}  {tell(fall.says)}" for number, fall in enumerate(drawn, start=1)]
    shapes = [Text(x=LEFT, y=y, text=start, size=42)]
    shapes += [Text(x=LEFT, y=y + ROW * (i + 1), text=row, size=fitted(row, RIGHT - LEFT, 42)) for i, row in enumerate(rows)]
    return shapes, ". ".join((start, *rows))


def _level(y: float, dash: str, stroke: str) -> tuple[Shape, ...]:
    return (Line(points=((LEFT, y), (RIGHT, y)), stroke=stroke, width=4, dash=dash),)


def _words(text: str, y: float, y_of: Callable[[float], float], ends: tuple[float, float]) -> tuple[Shape, ...]:
    """Words under a level, at the end where the line of the volts is farther away."""
    width = text_width(text, 40)
    at_left, at_right = y_of(ends[0]), y_of(ends[1])
    left = abs(at_left + (at_right - at_left) * width / 2 / (RIGHT - LEFT) - y)
    right = abs(at_right - (at_right - at_left) * width / 2 / (RIGHT - LEFT) - y)
    if left >= right:
        return (_patch(LEFT, y, width), Text(x=LEFT, y=y, text=text, size=40))
    return (_patch(RIGHT - width, y, width), Text(x=RIGHT, y=y, text=text, size=40, anchor="end"))


def _patch(x: float, y: float, width: float) -> Box:
    """Paper under words, so that no line runs through them."""
    return Box(x=x, y=y - 36, width=width, height=46, fill=PAPER)
