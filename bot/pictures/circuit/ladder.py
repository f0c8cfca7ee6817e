"""The circuit itself, from supply to load: rails, parts and their names."""

from collections.abc import Callable, Iterator
from typing import Final

from bot.pictures import Tell
from bot.pictures.canvas import INK, Box, Curve, Dot, Line, Shape, Text, wrapped
from bot.pictures.circuit.layout import (
    COIL,
    COIL_END,
    COIL_START,
    CORE,
    DISCONNECT,
    FUSE,
    LABEL,
    LEFT,
    LINE,
    LINE_HEIGHT,
    MARGIN,
    MIDDLE,
    PRIMARY,
    RIGHT,
    ROOM_LEFT,
    SAFETY,
    SECONDARY,
    SUPPLY,
    TERMINALS,
    TURNS,
    WIRE,
)
from core.readings import Job
from core.said import Said, say

WIRE_PX: Final = 5.0
_NAMES: Final[tuple[tuple[Said, float], ...]] = (
    (say("Disconnect, fuse, door switch"), DISCONNECT),
    (say("Line terminals"), LINE),
    (say("Primary"), PRIMARY - 14.0),
    (say("Secondary"), SECONDARY + 14.0),
    (say("Low-voltage fuse"), FUSE),
    (say("Safety switch, joints"), SAFETY),
    (say("Control wire"), WIRE),
    (say("Coil, load"), COIL),
)
"""What stands beside the hot rail, and at what height."""

_TOLD: Final[dict[str, tuple[str, Callable[[float], Said]]]] = {
    "Primary": ("tap_volts", lambda volts: say("tap {volts:g} V", volts=volts)),
    "Low-voltage fuse": ("fuse_amps", lambda amps: say("{amps:g} A", amps=amps)),
    "Control wire": ("run_feet", lambda feet: say("{feet:g} ft", feet=feet)),
}
"""The fact that stands under a name."""


def ladder(job: Job, tell: Tell) -> Iterator[Shape]:
    """
    The drawing without readings.

    Args:
        job: What was told of the unit stands beside its parts.
        tell: Sets a sentence in the technician's language.
    """
    yield from _line_side(job, tell)
    yield from _transformer()
    yield from _low_voltage_side()
    for name, y in _NAMES:
        yield from _label(tell(name), _detail(name, job, tell), y)


def _line_side(job: Job, tell: Tell) -> Iterator[Shape]:
    supply = job.number("supply_volts")
    words = tell(say("Supply")) if supply is None else tell(say("Supply {volts:g} V", volts=supply))
    yield Text(x=MIDDLE, y=SUPPLY + 14.0, text=words, size=LABEL, anchor="middle")
    for x, letter, anchor, shift in ((LEFT, "L1", "end", -26.0), (RIGHT, "L2/N", "start", 26.0)):
        yield Text(x=x + shift, y=SUPPLY + 14.0, text=letter, size=LABEL, anchor=anchor)  # type: ignore[arg-type]
        yield Line(points=((x, SUPPLY), (x, PRIMARY)), width=WIRE_PX)
        yield Dot(x=x, y=SUPPLY, radius=12.0)
        yield from _terminal(x, LINE)
    yield from _switch(LEFT, DISCONNECT)


def _transformer() -> Iterator[Shape]:
    for y, up in ((PRIMARY, 0), (SECONDARY, 1)):
        step = (COIL_END - COIL_START) / TURNS
        arcs = " ".join(
            f"A {step / 2:.1f} {step / 2:.1f} 0 0 {up} {COIL_START + step * n:.1f} {y:.1f}" for n in range(1, TURNS + 1)
        )
        yield Curve(d=f"M {LEFT} {y} L {COIL_START} {y} {arcs} L {RIGHT} {y}", width=WIRE_PX)
    for y in (CORE - 9.0, CORE + 9.0):
        yield Line(points=((COIL_START, y), (COIL_END, y)), width=WIRE_PX)
    end = COIL_END + 60.0
    yield Line(points=((COIL_END, CORE), (end, CORE), (end, CORE + 30.0)), width=WIRE_PX)
    for n, half in enumerate((30.0, 20.0, 9.0)):
        yield Line(points=((end - half, CORE + 30.0 + 12.0 * n), (end + half, CORE + 30.0 + 12.0 * n)), width=WIRE_PX)


def _low_voltage_side() -> Iterator[Shape]:
    for x in (LEFT, RIGHT):
        yield Line(points=((x, SECONDARY), (x, COIL)), width=WIRE_PX)
        yield from _terminal(x, TERMINALS)
    yield Text(x=LEFT - 26.0, y=TERMINALS + 15.0, text="R", size=LABEL, bold=True, anchor="end")
    yield Text(x=RIGHT + 26.0, y=TERMINALS + 15.0, text="C", size=LABEL, bold=True)
    yield Box(x=LEFT - 15.0, y=FUSE - 36.0, width=30.0, height=72.0, fill="#ffffff", stroke=INK, stroke_width=WIRE_PX)
    yield Line(points=((LEFT, FUSE - 36.0), (LEFT, FUSE + 36.0)), width=3.0)
    yield from _switch(LEFT, SAFETY)
    yield Line(points=((LEFT, COIL), (RIGHT, COIL)), width=WIRE_PX)
    yield Box(
        x=LEFT + 40.0, y=COIL - 46.0, width=RIGHT - LEFT - 80.0, height=92.0, fill="#ffffff", stroke=INK, stroke_width=WIRE_PX
    )


def _terminal(x: float, y: float) -> Iterator[Shape]:
    yield Dot(x=x, y=y, radius=12.0, fill="#ffffff", stroke=INK, stroke_width=WIRE_PX)


def _switch(x: float, y: float) -> Iterator[Shape]:
    """A closed switch in a rail."""
    yield Line(points=((x, y - 34.0), (x, y + 34.0)), stroke="#ffffff", width=WIRE_PX + 4.0)
    for end in (y - 34.0, y + 34.0):
        yield Dot(x=x, y=end, radius=8.0)
    yield Line(points=((x, y + 34.0), (x + 9.0, y - 38.0)), width=WIRE_PX)


def _label(name: str, detail: str, y: float) -> Iterator[Shape]:
    """A name beside the hot rail, what was told of the part under it; the block is centred on the part."""
    lines = [*wrapped(name, ROOM_LEFT, LABEL), *([detail] if detail else [])]
    step = LABEL * LINE_HEIGHT
    top = y - step * len(lines) / 2.0 + LABEL
    for n, line in enumerate(lines):
        yield Text(x=MARGIN, y=top + n * step, text=line, size=LABEL, bold=bool(detail) and n == len(lines) - 1)


def _detail(name: Said, job: Job, tell: Tell) -> str:
    """What was told of a part, in its own figures."""
    fact, says = _TOLD.get(name.template, ("", None))
    value = job.number(fact) if fact else None
    return "" if value is None or says is None else tell(says(value))
