"""Why a step-down transformer has more turns and more ohms on its primary: shown on request."""

from typing import Final

from bot.pictures import Picture, Tell
from bot.pictures.canvas import INK, MARK, SHADE, Box, Canvas, Line, Shape, Text, fitted, wrapped
from bot.pictures.wires import coil, core_lines
from core.advice import Answer
from core.circuit.windings import typical_unit
from core.leads.step_down import RULE, TITLE
from core.readings import Job
from core.said import Said, say

WIDTH: Final = 1350
HEIGHT: Final = 1050
_TOP: Final = 250.0
_BOTTOM: Final = 640.0
_MIDDLE: Final = 675.0
_MARGIN: Final = 40.0
_USUAL_VA: Final = 40.0
_USUAL_TAP_V: Final = 120.0
_USUAL_LOW_V: Final = 24.0


def draw(answer: Answer, job: Job, tell: Tell) -> Picture:  # noqa: ARG001  # every picture is drawn alike
    """
    Draw the picture.

    Args:
        answer: Not needed: it shows what is the same in every unit.
        job: With the rating and the tap, where they were told.
        tell: Sets a sentence in the technician's language.
    """
    canvas = picture(job, tell)
    return Picture(svg=canvas.svg(), caption="\n".join(tell(line) for line in (TITLE, *RULE)))


def picture(job: Job, tell: Tell) -> Canvas:
    """The picture before it is drawn."""
    tap_v = job.number("tap_volts") or job.number("supply_volts") or _USUAL_TAP_V
    low_v = job.number("rated_secondary_volts") or _USUAL_LOW_V
    va = job.number("rated_va") or _USUAL_VA
    unit = typical_unit(va, tap_v, low_v)
    title = tell(TITLE)
    shapes: list[Shape] = [
        Text(x=_MARGIN, y=92, text=title, size=fitted(title, WIDTH - 2 * _MARGIN, 64, bold=True), bold=True),
        Line(points=((_MARGIN, 124), (WIDTH - _MARGIN, 124)), width=4),
        *core_lines(_MIDDLE, _TOP - 30.0, _BOTTOM + 30.0),
        *_high(),
        *_low(),
    ]
    ohm = (unit.primary_ohm[1], unit.secondary_ohm[1])
    left = (
        say("Primary {volts:g} V", volts=tap_v),
        say("{turns:.3g} turns here", turns=tap_v / low_v),
        _about(ohm[0]),
    )
    right = (say("Secondary {volts:g} V", volts=low_v), say("for 1 turn here"), _about(ohm[1]))
    shapes += _words(left, _MARGIN, tell) + _words(right, _MIDDLE + 90.0, tell)
    return Canvas(width=WIDTH, height=HEIGHT, shapes=(*shapes, *_reasons(tell)))


def _about(ohm: float) -> Said:
    return say("about {ohm:.0f} Ω", ohm=ohm) if ohm >= 10.0 else say("about {ohm:.1f} Ω", ohm=ohm)


def _high() -> list[Shape]:
    """Many turns of thin wire."""
    x = _MIDDLE - 70.0
    ends = [Line(points=((x - 120.0, y), (x, y)), width=5) for y in (_TOP, _BOTTOM)]
    return [*ends, coil(x, _TOP, _BOTTOM, bulge=50.0, turns=20, width=5)]


def _low() -> list[Shape]:
    """Few turns of thick wire."""
    x, top, bottom = _MIDDLE + 85.0, _TOP + 80.0, _BOTTOM - 80.0
    ends = [Line(points=((x, y), (x + 110.0, y)), width=16) for y in (top, bottom)]
    return [*ends, coil(x, top, bottom, bulge=-62.0, turns=4, width=16)]


def _words(lines: tuple[Said, Said, Said], x: float, tell: Tell) -> list[Shape]:
    """What stands beside a winding: above it the volts, beside it turns and ohms."""
    head, turns, ohm = (tell(line) for line in lines)
    start = x if x < _MIDDLE else x + 150.0
    room = 400.0 if x < _MIDDLE else WIDTH - _MARGIN - start
    rows = wrapped(turns, room, 42)
    middle = (_TOP + _BOTTOM) / 2.0
    shapes: list[Shape] = [Text(x=x, y=_TOP - 50.0, text=head, size=fitted(head, 520.0, 52, bold=True), bold=True)]
    shapes += [Text(x=start, y=middle - 20.0 + i * 52.0, text=row, size=42) for i, row in enumerate(rows)]
    shapes.append(Text(x=start, y=middle - 20.0 + len(rows) * 52.0 + 12.0, text=ohm, size=50, bold=True, fill=MARK))
    return shapes


def _reasons(tell: Tell) -> list[Shape]:
    shapes: list[Shape] = [Box(x=_MARGIN, y=730, width=WIDTH - 2 * _MARGIN, height=280, fill=SHADE, round=20)]
    for i, line in enumerate(RULE):
        text = tell(line)
        shapes.append(Text(x=_MARGIN + 36.0, y=806 + i * 78.0, text=text, size=fitted(text, WIDTH - 150.0, 46), fill=INK))
    return shapes
