"""The leads as found: each winding with its leads in order, what each is, the ohms read, which lead to land and which to cap."""

from collections.abc import Sequence
from dataclasses import dataclass
from itertools import pairwise
from typing import Final

from bot.pictures import Picture, Tell
from bot.pictures.canvas import (
    INK,
    MARK,
    PAPER,
    SHADE,
    SMALLEST_PX,
    WARN,
    Box,
    Canvas,
    Line,
    Shape,
    Text,
    fitted,
    text_width,
    wrapped,
)
from bot.pictures.wires import cap, coil, core_lines, terminal, wire
from core.advice import Answer, LeadMap, Winding
from core.leads.evidence import Evidence, gather, pair
from core.leads.lead_words import lead_name
from core.leads.sureness import SURE
from core.readings import Job
from core.said import Said, say

WIDTH: Final = 1350
HEIGHT: Final = 1050
_TOP: Final = 284.0
_BOTTOM: Final = 830.0
_FOOT: Final = 908.0
_PRIMARY_X: Final = 640.0
_CORE_X: Final = 905.0
_SECONDARY_X: Final = 985.0
_LABEL_X: Final = 36.0
_LABEL_ROOM: Final = 410.0
_RIGHT_X: Final = 1115.0
_RIGHT_ROOM: Final = 215.0
_SERIES: Final = 1.5
"""Times the volts of one half from which on two equal primaries are joined in series."""
_TIGHT: Final = 110.0
"""Height for one lead under which its words are set smaller."""
_CAPTION_LINES: Final = 6


@dataclass(frozen=True, slots=True, kw_only=True)
class _Page:
    """What every part of the picture needs."""

    found: LeadMap
    evidence: Evidence
    tell: Tell
    bad: bool
    """True where the leads show that the unit is."""


def draw(answer: Answer, job: Job, tell: Tell) -> Picture:
    """
    Draw the map of the leads.

    Args:
        answer: With a map of leads.
        job: With the readings that it was made from.
        tell: Sets a sentence in the technician's language.
    """
    canvas = picture(answer, job, tell)
    return Picture(svg=canvas.svg(), caption="\n".join(tell(line) for line in answer.lines[:_CAPTION_LINES]))


def picture(answer: Answer, job: Job, tell: Tell) -> Canvas:
    """The map before it is drawn."""
    found = answer.leads or LeadMap(windings=(), confidence=0.0)
    page = _Page(
        found=found, evidence=gather(job), tell=tell, bad=answer.verdict is not None and answer.verdict.transformer == "bad"
    )
    primaries = [w for w in found.windings if w.role == "primary"]
    others = [w for w in found.windings if w.role != "primary"]
    shapes = [*_heading(page), *core_lines(_CORE_X, _TOP - 30.0, _BOTTOM + 30.0)]
    for side, windings in ((_left, primaries), (_right, others)):
        for winding, (top, bottom) in zip(windings, _stretches(windings), strict=True):
            shapes += side(winding, page, top, bottom)
    return Canvas(width=WIDTH, height=HEIGHT, shapes=(*shapes, *_footing(page)))


def _stretches(windings: Sequence[Winding]) -> list[tuple[float, float]]:
    """From where to where each winding goes, one below the other."""
    count = max(1, len(windings))
    between = 136.0
    room = (_BOTTOM - _TOP - between * (count - 1)) / count
    tops = [_TOP + i * (room + between) for i in range(count)]
    if count == 1 and windings and len(windings[0].leads) < 4:
        inset = 40.0 if len(windings[0].leads) == 3 else 90.0
        return [(_TOP + inset, _BOTTOM - inset)]
    return [(top, top + room) for top in tops][: len(windings)]


def _heading(page: _Page) -> list[Shape]:
    land = page.found.land
    gap = _first_open(page) if page.bad else None
    if land is None and gap is not None:
        title = say("Open from {one} to {other}: replace it", one=lead_name(gap[0]), other=lead_name(gap[1]))
    elif land is None and page.found.confidence < SURE:
        title = say("Which lead is which? {percent:.0f} % sure", percent=100.0 * page.found.confidence)
    elif land is None:
        title = say("Which lead is which")
    elif land.fits and sum(w.role == "primary" for w in page.found.windings) == 2:
        title = _joined(land.supply_volts, page.found.windings)
    elif land.lead is not None:
        title = _landed(land.supply_volts, land.lead, page.found.windings)
    elif land.fits:
        title = say("{volts:.0f} V", volts=land.supply_volts)
    else:
        title = say("No tap fits {volts:.0f} V", volts=land.supply_volts)
    told = page.tell(title)
    shapes: list[Shape] = [Text(x=_LABEL_X, y=92, text=told, size=fitted(told, WIDTH - 72.0, 68, bold=True), bold=True)]
    shapes.append(Text(x=_LABEL_X, y=178, text=page.tell(say("Primary")), size=44))
    shapes.append(Text(x=WIDTH - _LABEL_X, y=178, text=page.tell(say("Secondary")), size=44, anchor="end"))
    return [*shapes, Line(points=((_LABEL_X, 200), (WIDTH - _LABEL_X, 200)), width=4)]


def _joined(volts: float, windings: Sequence[Winding]) -> Said:
    half = next(float(role) for w in windings if w.role == "primary" for _, role in w.leads)
    if volts > _SERIES * half:
        return say("{volts} V: both primaries in series", volts=f"{volts:.0f}")
    return say("{volts} V: both primaries in parallel", volts=f"{volts:.0f}")


def _landed(volts: float, lead: str, windings: Sequence[Winding]) -> Said:
    common = next(w.leads[0][0] for w in windings if w.role == "primary")
    other = common if common != lead else next(n for w in windings if w.role == "primary" for n, _ in w.leads if n != lead)
    return say("{volts:.0f} V: line on {lead} and {common}", volts=volts, lead=lead_name(lead), common=lead_name(other))


def _first_open(page: _Page) -> tuple[str, str] | None:
    """Two neighbours on a winding that read open to each other."""
    known = [w.leads for w in page.found.windings if w.role != "unknown"]
    pairs = ((one, other) for leads in known for (one, _), (other, _) in pairwise(leads))
    return next((p for p in pairs if _is_open(*p, page)), None)


def _left(winding: Winding, page: _Page, top: float, bottom: float) -> list[Shape]:
    """A primary: labels at the left, ohms between its leads."""
    leads = winding.leads
    gap = (bottom - top) / max(1, len(leads) - 1)
    shapes: list[Shape] = []
    for i, (lead, role) in enumerate(leads):
        y = top + i * gap
        shapes += _lead_at_left(lead, role, y, page, len(leads), min(118.0, gap - 6.0))
        if i + 1 < len(leads):
            shapes += _section(lead, leads[i + 1][0], y, y + gap, page)
    return shapes


def _lead_at_left(lead: str, role: str, y: float, page: _Page, count: int, height: float) -> list[Shape]:
    tag = _tag(lead, role, page, count)
    capped = tag is _CAP
    name = page.tell(say("{lead}", lead=lead_name(lead)))
    shapes: list[Shape] = []
    if tag is not None and not capped:
        shapes.append(
            Box(x=14, y=y - 4 - height / 2, width=448, height=height, fill=PAPER, stroke=MARK, stroke_width=9, round=20)
        )
    shapes += wire(lead, 500.0, _PRIMARY_X, y)
    shapes += [] if tag is None else cap(512.0, y) if capped else [terminal(492.0, y)]
    large, small, drop = (50.0, 42.0, 40.0) if height > _TIGHT else (44.0, 37.0, 30.0)
    shapes.append(Text(x=_LABEL_X, y=y - 8, text=name, size=fitted(name, _LABEL_ROOM, large, bold=True), bold=True))
    shapes.append(Text(x=_LABEL_X, y=y + drop, text=page.tell(_role(role)), size=small))
    return [*shapes, *_pill(page.tell(tag), y - 40.0 + drop, capped=capped)] if tag is not None else shapes


def _pill(text: str, y: float, *, capped: bool) -> list[Shape]:
    """The word that says what to do with a lead."""
    size = fitted(text, 210.0, 38, bold=True)
    width = text_width(text, size, bold=True) + 28.0
    fill, ink = (SHADE, INK) if capped else (MARK, PAPER)
    return [
        Box(x=448 - width, y=y, width=width, height=46, fill=fill, stroke=INK, stroke_width=2, round=10),
        Text(x=448 - width / 2, y=y + 36, text=text, size=size, bold=True, anchor="middle", fill=ink),
    ]


def _tag(lead: str, role: str, page: _Page, count: int) -> Said | None:
    """What to do with a lead, where the tap was asked."""
    land = page.found.land
    if land is None or not land.fits:
        return None
    primaries = [w for w in page.found.windings if w.role == "primary"]
    if len(primaries) == 2:
        series = land.supply_volts > _SERIES * float(role)
        return (_IN_SERIES if series else _IN_PARALLEL)[[name for w in primaries for name, _ in w.leads].index(lead)]
    if lead in land.cap:
        return _CAP
    return _LAND if land.lead is not None and (lead == land.lead or role == "common" or count == 2) else None


_LAND: Final = say("LAND")
_CAP: Final = say("CAP")
_JOIN: Final = say("JOIN")
_LINE_1: Final = say("L1")
_LINE_2: Final = say("L2")
_IN_SERIES: Final = (_LINE_1, _JOIN, _JOIN, _LINE_2)
_IN_PARALLEL: Final = (_LINE_1, _LINE_2, _LINE_1, _LINE_2)
_OPEN: Final = say("open")


def _section(one: str, other: str, y1: float, y2: float, page: _Page) -> list[Shape]:
    """The stretch of winding between two leads, with its ohms."""
    if _is_open(one, other, page):
        return _torn(_PRIMARY_X, y1, y2, page, 66.0)
    turns = max(3, min(7, round((y2 - y1) / 42.0)))
    shapes: list[Shape] = [coil(_PRIMARY_X, y1, y2, bulge=56.0, turns=turns)]
    said = _ohms(one, other, page)
    if said is not None:
        text = page.tell(said)
        shapes.append(Text(x=_PRIMARY_X + 62, y=(y1 + y2) / 2.0 + 14, text=text, size=fitted(text, 180.0, 40)))
    return shapes


def _torn(x: float, y1: float, y2: float, page: _Page, aside: float) -> list[Shape]:
    """A stretch of winding that is open, with a cross on it and the word beside it."""
    middle = (y1 + y2) / 2.0
    ends = ((y1, middle - 18), (middle + 18, y2))
    line = [Line(points=((x, a), (x, b)), stroke=WARN, width=8, dash="16 14") for a, b in ends]
    cross = [Line(points=((x - 18, middle - s), (x + 18, middle + s)), stroke=WARN, width=8) for s in (18.0, -18.0)]
    return [*line, *cross, Text(x=x + aside, y=middle + 14, text=page.tell(_OPEN), size=42, bold=True, fill=WARN)]


def _is_open(one: str, other: str, page: _Page) -> bool:
    return page.evidence.open_between(one, other) and pair(one, other) not in page.evidence.contradicted


def _ohms(one: str, other: str, page: _Page) -> Said | None:
    """As read; where this pair was not read, from two readings that share a lead."""
    ohms = page.evidence.ohms
    if pair(one, other) in ohms:
        return say("{ohm:.1f} Ω", ohm=ohms[pair(one, other)])
    for lead in page.evidence.leads:
        first, second = ohms.get(pair(lead, one)), ohms.get(pair(lead, other))
        if first is not None and second is not None and lead not in {one, other}:
            return say("≈ {ohm:.1f} Ω", ohm=abs(second - first))
    return None


def _right(winding: Winding, page: _Page, top: float, bottom: float) -> list[Shape]:
    """A secondary: labels at the right."""
    leads = winding.leads
    if len(leads) > 1 and bottom - top > 300.0 and len(leads) < 3:
        top, bottom = top + 60.0, bottom - 60.0
    gap = (bottom - top) / max(1, len(leads) - 1)
    shapes: list[Shape] = []
    for i, (lead, role) in enumerate(leads):
        y = top + i * gap
        shapes += wire(lead, _SECONDARY_X, _RIGHT_X - 24.0, y)
        shapes += _label_at_right(lead, role, y, page)
        if i + 1 < len(leads):
            shapes += _low_section(lead, leads[i + 1][0], y, y + gap, page)
    return shapes


def _label_at_right(lead: str, role: str, y: float, page: _Page) -> list[Shape]:
    """The name, with its stripe below it where both don't fit side by side, and the role."""
    name, said = page.tell(say("{lead}", lead=lead_name(lead))), page.tell(_role(role))
    base, slash, stripe = name.partition("/")
    is_long = text_width(name, 50, bold=True) > 1.2 * _RIGHT_ROOM
    rows = [base + slash, stripe] if slash and is_long else [name]
    top = y - 4.0 - 50.0 * (len(rows) - 1)
    names = [
        Text(x=_RIGHT_X, y=top + 50.0 * i, text=row, size=fitted(row, _RIGHT_ROOM, 50, bold=True), bold=True)
        for i, row in enumerate(rows)
    ]
    return [*names, Text(x=_RIGHT_X, y=y + 44, text=said, size=fitted(said, _RIGHT_ROOM, 42))]


def _low_section(one: str, other: str, y1: float, y2: float, page: _Page) -> list[Shape]:
    if _is_open(one, other, page):
        return _torn(_SECONDARY_X, y1, y2, page, 34.0)
    shapes: list[Shape] = [coil(_SECONDARY_X, y1, y2, bulge=-56.0, turns=max(2, min(4, round((y2 - y1) / 80.0))), width=11.0)]
    said = _ohms(one, other, page)
    if said is not None:
        shapes.append(Text(x=_SECONDARY_X + 26, y=(y1 + y2) / 2.0 + 14, text=page.tell(said), size=40))
    return shapes


def _role(role: str) -> Said:
    named = _ROLES.get(role)
    return named if named is not None else say("{volts} V", volts=role)


_ROLES: Final = {"common": say("common"), "ct": say("centre tap"), "unknown": say("not known")}


def _footing(page: _Page) -> list[Shape]:
    land = page.found.land
    share = page.found.confidence if land is None or not land.fits else land.sure
    is_in_title = land is None and share < SURE and not page.bad
    words = ["" if is_in_title else page.tell(say("{percent:.0f} % sure", percent=min(99.0, 100.0 * share)))]
    if page.found.confirm is not None:
        words.append(page.tell(page.found.confirm.instruction))
    elif land is not None and land.volts_out is not None:
        low, high = land.volts_out
        words.append(page.tell(say("Expect {low:.1f} V loaded to {high:.1f} V open", low=low, high=high)))
    shapes: list[Shape] = [
        Line(points=((_LABEL_X, _FOOT), (WIDTH - _LABEL_X, _FOOT)), width=4),
        *([Text(x=_LABEL_X, y=_FOOT + 84.0, text=words[0], size=48, bold=True)] if words[0] else []),
    ]
    left = _LABEL_X + (text_width(words[0], 48, bold=True) + 40.0 if words[0] else 0.0)
    size, lines = _broken(words[1] if len(words) > 1 else "", WIDTH - _LABEL_X - left)
    first = _FOOT + 84.0 - 24.0 * (len(lines) - 1)
    return [*shapes, *(Text(x=left, y=first + i * 48.0, text=line, size=size) for i, line in enumerate(lines))]


def _broken(text: str, room: float) -> tuple[float, tuple[str, ...]]:
    """A text at the largest size at which two lines hold it; the smallest size takes three."""
    for size in (40.0, 37.0, SMALLEST_PX):
        lines = wrapped(text, room, size)
        if len(lines) <= 2:
            break
    return size, lines
