"""Which part of the ladder each finding points at, and the word that is put on it."""

from collections.abc import Iterator
from dataclasses import dataclass
from typing import Final, Literal

from bot.pictures import Tell
from bot.pictures.canvas import INK, PAPER, WARN, Box, Shape, Text, text_width
from bot.pictures.circuit.layout import (
    COIL,
    COIL_END,
    COIL_START,
    CORE,
    DISCONNECT,
    FUSE,
    LABEL,
    LEFT,
    LINE_WIRE,
    MIDDLE,
    PRIMARY,
    RIGHT,
    SAFETY,
    SECONDARY,
    SUPPLY,
    WIRE,
)
from core.advice import Verdict
from core.said import Said, say

SURE: Final = 0.9
"""Below it the word carries a question mark."""
FLAG_HEIGHT: Final = 54.0
_PAD: Final = 16.0


@dataclass(frozen=True, slots=True, kw_only=True)
class Suspect:
    """One part with its frames, and the place of the word."""

    frames: tuple[tuple[float, float, float, float], ...]
    """(left, top, right, bottom) of each frame."""
    x: float
    y: float
    anchor: Literal["start", "middle", "end"] = "middle"


_COIL_HALF: Final = (COIL_END - COIL_START) / 14.0

PARTS: Final[dict[str, Suspect]] = {
    "supply": Suspect(frames=((LEFT - 24.0, SUPPLY - 30.0, RIGHT + 24.0, SUPPLY + 34.0),), x=MIDDLE, y=DISCONNECT - 20.0),
    "disconnect": Suspect(
        frames=((LEFT - 30.0, DISCONNECT - 58.0, LEFT + 34.0, DISCONNECT + 58.0),),
        x=LEFT + 60.0,
        y=DISCONNECT + 40.0,
        anchor="start",
    ),
    "line_wire": Suspect(
        frames=((LEFT - 22.0, LINE_WIRE - 50.0, LEFT + 22.0, LINE_WIRE + 50.0),),
        x=LEFT + 60.0,
        y=LINE_WIRE - 8.0,
        anchor="start",
    ),
    "primary": Suspect(
        frames=((COIL_START - 30.0, PRIMARY - 24.0, COIL_END + 30.0, PRIMARY + _COIL_HALF + 14.0),), x=MIDDLE, y=PRIMARY + 80.0
    ),
    "core": Suspect(frames=((COIL_START - 24.0, CORE - 28.0, COIL_END + 24.0, CORE + 28.0),), x=MIDDLE, y=CORE),
    "secondary": Suspect(
        frames=((COIL_START - 30.0, SECONDARY - _COIL_HALF - 14.0, COIL_END + 30.0, SECONDARY + 24.0),),
        x=MIDDLE,
        y=SECONDARY - 80.0,
    ),
    "fuse": Suspect(
        frames=((LEFT - 32.0, FUSE - 50.0, LEFT + 32.0, FUSE + 50.0),), x=LEFT + 70.0, y=FUSE + 95.0, anchor="start"
    ),
    "control": Suspect(
        frames=(
            (LEFT - 30.0, SAFETY - 48.0, LEFT + 34.0, SAFETY + 48.0),
            (RIGHT - 24.0, SAFETY - 48.0, RIGHT + 24.0, SAFETY + 48.0),
        ),
        x=MIDDLE,
        y=SAFETY,
    ),
    "load": Suspect(frames=((LEFT + 22.0, COIL - 64.0, RIGHT - 22.0, COIL + 64.0),), x=MIDDLE, y=WIRE + 18.0),
}
"""Every part that can be suspect."""

POINTS_AT: Final[dict[str, tuple[str, Said]]] = {
    "no_supply": ("disconnect", say("DEAD")),
    "low_supply": ("supply", say("OUT OF LIMITS")),
    "loose_line": ("line_wire", say("LOST HERE")),
    "wrong_tap": ("primary", say("WRONG TAP")),
    "primary_open": ("primary", say("OPEN")),
    "primary_shorted_turns": ("primary", say("SHORTED TURNS")),
    "secondary_open": ("secondary", say("OPEN")),
    "secondary_shorted_turns": ("secondary", say("SHORTED TURNS")),
    "windings_bridged": ("core", say("BRIDGED")),
    "winding_grounded": ("core", say("TO THE CORE")),
    "protection_open": ("fuse", say("OPEN")),
    "load_short": ("load", say("SHORT")),
    "overload": ("load", say("OVERLOAD")),
    "control_open": ("control", say("OPEN")),
}
"""Every finding but the healthy one."""


def suspects(verdict: Verdict | None, tell: Tell) -> Iterator[Shape]:
    """
    The suspect part framed and named in a black flag; what stands besides in a white one.

    Args:
        verdict: What the readings say.
        tell: Sets a sentence in the technician's language.
    """
    if verdict is None:
        return
    taken: set[str] = set()
    for finding in (verdict.finding, *verdict.also):
        if finding not in POINTS_AT or POINTS_AT[finding][0] in taken:
            continue
        part, word = POINTS_AT[finding]
        taken.add(part)
        if finding == verdict.finding:
            yield from _flagged(
                PARTS[part], tell(word if verdict.confidence >= SURE else say("{word}?", word=word)), first=True
            )
        else:
            yield from _flagged(PARTS[part], tell(say("ALSO: {word}", word=word)), first=False)


def _flagged(part: Suspect, word: str, *, first: bool) -> Iterator[Shape]:
    for left, top, right, bottom in part.frames:
        yield Box(
            x=left, y=top, width=right - left, height=bottom - top, stroke=WARN, stroke_width=9.0 if first else 6.0, round=14.0,
            dash="" if first else "6 14",
        )  # fmt: skip
    width = text_width(word, LABEL, bold=True) + 2 * _PAD
    left = {"start": part.x, "middle": part.x - width / 2.0, "end": part.x - width}[part.anchor]
    yield Box(
        x=left,
        y=part.y - FLAG_HEIGHT / 2.0,
        width=width,
        height=FLAG_HEIGHT,
        fill=INK if first else PAPER,
        stroke=INK,
        round=6.0,
    )
    yield Text(
        x=left + width / 2.0, y=part.y + 14.0, text=word, size=LABEL, bold=True, fill=PAPER if first else INK, anchor="middle"
    )
