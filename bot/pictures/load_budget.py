"""The load against the sizes to be had: steady, with spare, and while the largest coil pulls in."""

from typing import Final

from bot.pictures import Picture, Tell
from bot.pictures.canvas import INK, MARK, SHADE, WARN, Box, Canvas, Line, Shape, Text, fitted, text_width
from core.advice import Answer, Sizing
from core.readings import Job
from core.said import Said, say
from core.sizing.inrush_lines import at_coils, mend
from core.sizing.load_lines import advised_va
from core.sizing.told import Told, told
from core.standards.coil_range import PULL_IN_SHARE
from core.standards.transformer_ratings import SIZES_VA, SPARE

WIDTH: Final = 1350
HEIGHT: Final = 860
LEFT: Final = 50.0
RIGHT: Final = 1300.0
TOP: Final = 200.0
"""Where the lines of the sizes begin."""
BAR: Final = 90.0
STEP: Final = 185.0
LEAST_SCALE_VA: Final = 110.0
REST: Final = "#868e96"
"""Grey of a bar that may go past its line."""


def draw(answer: Answer, job: Job, tell: Tell) -> Picture:
    """
    Bars on one scale of VA, crossed by the sizes.

    Args:
        answer: What sizing said, with its load.
        job: What is known.
        tell: Sets a sentence in the technician's language.

    Raises:
        ValueError: The answer has no load to draw.
    """
    sizing = answer.sizing
    if sizing is None or sizing.load_va is None:
        raise ValueError("no load to draw")
    facts = told(job)
    pick = None if sizing.pick_va is None else advised_va(facts)
    bars = _bars(sizing, facts, facts.rated_va or pick)
    px_per_va = (RIGHT - LEFT) / max(LEAST_SCALE_VA, 1.06 * max(va for va, _, _ in bars))
    title, is_good = _title(sizing, facts, pick)
    heading = tell(title)
    size = fitted(heading, RIGHT - LEFT, 68, bold=True)
    fill = INK if is_good else WARN
    shapes: list[Shape] = [Text(x=LEFT, y=95, text=heading, size=size, bold=True, fill=fill)]
    carries = pick is not None and facts.rated_va is not None and facts.rated_va >= pick
    shapes += _sizes(facts.rated_va if carries else pick, px_per_va)
    for row, (va, words, fill) in enumerate(bars):
        y = TOP + 45 + row * STEP
        shapes += [
            Box(x=LEFT, y=y + 55, width=va * px_per_va, height=BAR, fill=fill),
            *_label(tell(words), y + 40),
        ]
    caption = ". ".join((heading, *(tell(words) for _, words, _ in bars)))
    return Picture(svg=Canvas(width=WIDTH, height=HEIGHT, shapes=tuple(shapes)).svg(), caption=caption)


def _title(sizing: Sizing, facts: Told, pick: float | None) -> tuple[Said, bool]:
    """What the picture shows, the same as the answer says; False where it is no good news."""
    if pick is None:
        return (say("Over Class 2: 100 VA"), False) if sizing.class2 is False else (say("Load against the sizes"), True)
    found = mend(facts) if sizing.inrush_va is not None else None
    if found is not None and found.unit_va is None:
        return say("No size holds this pull-in"), False
    if found is not None and found.awg is not None:
        return say("{pick:g} VA and {awg} AWG for this load", pick=found.unit_va, awg=found.awg), True
    if facts.rated_va is not None and facts.rated_va >= pick:
        return say("{pick:g} VA carries this load", pick=facts.rated_va), True
    return say("{pick:g} VA for this load", pick=pick), True


def _bars(sizing: Sizing, facts: Told, unit_va: float | None) -> tuple[tuple[float, Said, str], ...]:
    """Each bar with its words; that of the pull-in is a warning only where the coils fall too low."""
    load = sizing.load_va or 0.0
    spared = load * (1.0 + SPARE)
    rows = [(load, say("steady {va:g} VA", va=load), INK), (spared, say("with spare {va:.1f} VA", va=spared), MARK)]
    band = facts.loads.typical_inrush_va
    if sizing.inrush_va is not None:
        rows.append(_pull_in(sizing.inrush_va, facts, unit_va))
    elif band is not None and band[1] > spared:
        rows.append((band[1], say("pull-in, not told: usually {low:.0f} to {high:.0f} VA", low=band[0], high=band[1]), REST))
    return tuple(rows)


def _pull_in(peak_va: float, facts: Told, unit_va: float | None) -> tuple[float, Said, str]:
    if unit_va is None:
        return peak_va, say("pull-in {va:g} VA", va=peak_va), WARN
    volts, _ = at_coils(facts, unit_va)
    if volts >= PULL_IN_SHARE * facts.loads.rated_v:
        return peak_va, say("pull-in {va:g} VA: coils keep {volts:.1f} V, enough", va=peak_va, volts=volts), REST
    return peak_va, say("pull-in {va:g} VA: coils at {volts:.1f} V, too low", va=peak_va, volts=volts), WARN


def _label(text: str, y: float) -> tuple[Shape, ...]:
    """Words on a patch of paper, so that no line of a size runs through them."""
    size = fitted(text, RIGHT - LEFT, 46)
    return (
        Box(x=LEFT - 6, y=y - 46, width=text_width(text, size) + 18, height=58, fill="#ffffff"),
        Text(x=LEFT, y=y, text=text, size=size),
    )


def _sizes(pick: float | None, px_per_va: float) -> list[Shape]:
    """A line for each size, the one to buy thick; labels that would touch their neighbour are left out."""
    shapes: list[Shape] = []
    taken: list[tuple[float, float]] = []
    for va in sorted(SIZES_VA, key=lambda size: size != pick):
        x, chosen = LEFT + va * px_per_va, va == pick
        shapes.append(Line(points=((x, TOP), (x, HEIGHT - 40)), stroke=MARK if chosen else "#adb5bd", width=9 if chosen else 3))
        text, size = f"{va:g}", 52.0 if chosen else 38.0
        half = text_width(text, size, bold=chosen) / 2 + 8
        if all(x + half < left or x - half > right for left, right in taken):
            taken.append((x - half, x + half))
            if chosen:
                shapes.append(Box(x=x - half - 6, y=TOP - 68, width=2 * half + 12, height=64, fill=SHADE, round=12))
            shapes.append(
                Text(x=x, y=TOP - 18, text=text, size=size, bold=chosen, anchor="middle", fill=MARK if chosen else INK)
            )
    shapes.append(Text(x=LEFT, y=TOP - 18, text="VA", size=38))
    return shapes
