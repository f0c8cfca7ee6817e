"""Places that only a job makes plain: "0 at contactor", "120 at the switch", "240 at the panel, 0 at the unit", "208 here", "a 3 amp on the board"."""

from itertools import pairwise

from core.heard.record import Heard
from core.readings import OPEN, Fact, Reading
from grammar.binding.draft import Draft, Figure
from grammar.binding.in_hand import in_job, speaks_of_fuse
from grammar.binding.job_units import job_units
from grammar.binding.plausible import fits_live
from grammar.binding.told import NOMINAL_V
from grammar.binding.topics import SIZES_VA
from grammar.words.devices import COILS

AT_DEVICE = {
    **dict.fromkeys(COILS, "coil_volts"), "contactor": "coil_volts", "relay": "coil_volts", "fan relay": "coil_volts", "heat relay": "coil_volts", "reversing valve": "coil_volts", "thermostat": "control_volts", "board": "control_volts",
}  # fmt: skip
"""What a meter at a device reads in volts."""
LEAST_FED_V = 16.0
LEAST_LINE_V = 90.0
MOST_LINE_V = 600.0
MOST_FUSE_A = 10.0
SMALL = frozenset({"at", "is", "reads", "now", "and", "filler", "idword", "winding", "between", "comma"})
"""Kinds of words between a value and the place that it is of."""
UNIT = frozenset({"unit", "unidad", "equipo", "rtu", "furnace", "condenser"})
PANEL = frozenset({"panel", "panels", "tablero", "centro de carga", "main", "breaker box"})
SAID_LEG = frozenset({"y", "w", "g"})


def job_places(draft: Draft) -> None:
    """Before the ordinary binding: what is placed here is placed nowhere else."""
    if draft.name is not None:
        return
    if not in_job(draft):
        for figure in list(draft.figures):
            if figure.kind == "amount" and not figure.done and len(figure.amounts) == 1:
                _at_switch(draft, figure)
                behind = draft.phrases[figure.at + 2].text if figure.at + 2 < len(draft.phrases) else ""
                if draft.kind(figure.at + 1) == "at" and behind in UNIT:
                    _at_panel_or_unit(draft, figure)
        return
    job_units(draft)
    _button(draft)
    _into_the_load(draft)
    _at_the_transformer(draft)
    _other_side(draft)
    _red_to_common(draft)
    for figure in list(draft.figures):
        _line_again(draft, figure)
        _told_good(draft, figure)
        _at_a_valve(draft, figure)
        if figure.done or figure.withdrawn or figure.kind not in {"amount", "nothing"} or len(figure.amounts) > 1:
            continue
        _of_a_size(draft, figure)
        _fuse_on_the_board(draft, figure)
        _new_fuse(draft, figure)
        _here(draft, figure)
        _at_panel_or_unit(draft, figure)
        _at_switch(draft, figure)
        _at_device(draft, figure)


def _beside(draft: Draft, figure: Figure) -> int | None:
    """The nearest word for a place on either side, only small words between; the side that "at" leads to comes first."""
    led = draft.kind(figure.at + 1) == "at"
    for step in (1, -1) if led else (-1, 1):
        at = figure.at + step
        while draft.kind(at) in SMALL and draft.phrases[at].text not in UNIT | PANEL:
            if draft.kind(at) == "comma":
                break
            at += step
        if draft.kind(at) == "device" or (0 <= at < len(draft.phrases) and draft.phrases[at].text in UNIT | PANEL):
            return at
    return None


def _is_volts(figure: Figure) -> bool:
    return figure.kind == "nothing" or figure.unit in {None, "V"}


def _take(draft: Draft, figure: Figure, at: int, measure: str, *, assumed: bool) -> None:
    value = 0.0 if figure.kind == "nothing" else figure.value
    draft.readings.append(Reading(measure=measure, value=value, assumed=assumed))
    figure.done = True
    if at in draft.sites:
        draft.sites[at].used += 1


def _fuse_on_the_board(draft: Draft, figure: Figure) -> None:
    """In "there's a 3 amp on the board": a fuse, and no load of the board."""
    on_board = (
        draft.kind(figure.at + 1) == "at"
        and draft.kind(figure.at + 2) == "device"
        and draft.phrases[figure.at + 2].meaning == "board"
    )
    if figure.unit == "A" and on_board and figure.value <= MOST_FUSE_A and figure.value == int(figure.value):
        draft.fact(figure, Fact(fact="fuse_amps", value=figure.value, unit="A"))
        if figure.at + 2 in draft.sites:
            draft.sites[figure.at + 2].used += 1


NEW = frozenset({"new", "nuevo", "nueva", "otro", "another"})


def _new_fuse(draft: Draft, figure: Figure) -> None:
    """In "fusible nuevo de 3", "new 3 in the fuse holder": its rating, and no ohms."""
    near = range(max(0, figure.at - 4), min(len(draft.phrases), figure.at + 3))
    named = any(end.name == "fuse" for i in near for end in draft.phrases[i].ends)
    new = any(draft.phrases[i].text in NEW for i in near)
    whole = (
        figure.kind == "amount"
        and figure.unit in {None, "A"}
        and 0 < figure.value <= MOST_FUSE_A
        and figure.value == int(figure.value)
    )
    named = named or (figure.unit == "A" and speaks_of_fuse(draft))
    if not (named and new and whole) or figure.done:
        return
    draft.fact(figure, Fact(fact="fuse_amps", value=figure.value, unit="A"))
    for i in near:
        if i in draft.sites:
            draft.sites[i].used += 1


def _into_the_load(draft: Draft) -> None:
    """In "R lifted, 300k": ohms that are read with R off are those of the control circuit, where no winding was asked for."""
    asked = draft.context.asked[0] if draft.context.asked else ""
    lifted = any(p.kind == "condition" and p.meaning == "lifted" and " r " in f" {p.text} " for p in draft.phrases)
    ohms = [f for f in draft.figures if f.unit == "ohm" and not f.done and not f.withdrawn and len(f.amounts) == 1]
    named = any(len(p.ends) > 1 or any(end.name != "r" for end in p.ends) for p in draft.phrases)
    if lifted and len(ohms) == 1 and not draft.readings and not asked.endswith("_ohms") and not named:
        ohms[0].done = True
        draft.readings.append(Reading(measure="load_ohms", value=ohms[0].value, assumed=True))


OTHER_SIDE = frozenset({"other", "otro"})


def _other_side(draft: Draft) -> None:
    """In "other side nothing", behind volts at the primary: the secondary."""
    told = draft.words
    sided = any(one in OTHER_SIDE and two in {"side", "lado"} for one, two in pairwise(told))
    figures = [
        f
        for f in draft.figures
        if not f.done and f.kind in {"amount", "nothing"} and f.unit in {None, "V"} and len(f.amounts) <= 1
    ]
    last = draft.context.readings[-1].measure if draft.context.readings else ""
    if sided and last == "primary_volts" and len(figures) == 1 and not any(p.kind in {"ends", "device"} for p in draft.phrases):
        value = 0.0 if figures[0].kind == "nothing" else figures[0].value
        if value == 0.0 or fits_live("secondary", value):
            figures[0].done = True
            draft.readings.append(Reading(measure="secondary_volts", value=value))


def _red_to_common(draft: Draft) -> None:
    """In "red to common 22", "rojo a común 22", where R to C was asked for."""
    asked = draft.context.asked[0] if draft.context.asked else ""
    told = set(draft.words)
    red = any(end.name in {"red", "r"} for p in draft.phrases for end in p.ends)
    figures = [f for f in draft.figures if not f.done and f.kind in {"amount", "open", "nothing"} and len(f.amounts) <= 1]
    if asked not in {"load_ohms", "control_volts"} or not red or not told & {"common", "comun", "com"} or len(figures) != 1:
        return
    figure = figures[0]
    ohms = asked == "load_ohms"
    if figure.unit not in {None, "ohm" if ohms else "V"}:
        return
    value = OPEN if figure.kind == "open" and ohms else 0.0 if figure.kind == "nothing" else figure.value
    figure.done = True
    draft.readings.append(Reading(measure=asked, value=value))  # type: ignore[arg-type]
    draft.taken.update(range(len(draft.phrases)))


def _button(draft: Draft) -> None:
    """In "there is a little breaker on the side of the transformer, popped": its own protection has opened."""
    fuse = next((at for at, p in enumerate(draft.phrases) if any(end.name == "fuse" for end in p.ends)), None)
    told = set(draft.words)
    opened = told & {"popped", "tripped", "boto", "botado", "salto", "brinco"}
    if (
        fuse is None
        or not opened
        or "?" in draft.text
        or any(f.fact == "symptom" for _, f in draft.facts)
        or any(f.kind == "amount" for f in draft.figures)
    ):
        return
    if "again" in told or told & {"no", "not", "isnt", "never"}:
        return
    draft.facts.append((fuse, Fact(fact="symptom", value="blown_fuse")))
    if told & BUTTON and any(p.kind == "transformer" for p in draft.phrases):
        span = (draft.phrases[fuse].start, draft.phrases[fuse].end)
        draft.heard.append((span, Heard("button", "breaker", "")))
    if fuse in draft.sites:
        draft.sites[fuse].used += 1


BUTTON = frozenset({"button", "breaker", "reset", "boton"})


LINE_MENDED = frozenset(
    {"tightened", "retightened", "remade", "fixed", "cleaned", "replaced", "aprete", "arregle", "limpie", "cambie", "rehice"}
)
AGAIN = frozenset({"now", "ahora", "ya"})


def _at_the_transformer(draft: Draft) -> None:
    """In "ok at the transformer 209": line volts there are the primary's, control volts the secondary's."""
    figures = [f for f in draft.figures if f.kind == "amount" and not f.done and len(f.amounts) == 1]
    named = [at for at, p in enumerate(draft.phrases) if p.kind == "transformer"]
    placed = any(p.kind in {"ends", "device"} for p in draft.phrases)
    if len(figures) != 1 or len(named) != 1 or placed or draft.asks or "?" in draft.text or figures[0].unit not in {None, "V"}:
        return
    figure = figures[0]
    led = draft.kind(named[0] - 1) == "at" and abs(figure.at - named[0]) <= REACH_OF_IT
    line, low = LEAST_LINE_V <= figure.value <= MOST_LINE_V, fits_live("secondary", figure.value)
    if led and (line or low):
        figure.done = True
        draft.readings.append(Reading(measure="primary_volts" if line else "secondary_volts", value=figure.value))


REACH_OF_IT = 3


def _line_again(draft: Draft, figure: Figure) -> None:
    """In "tightened the contactor lugs, 229 now", where the line was lost on its way: what comes through now."""
    told = set(draft.words)
    bare = figure.kind == "amount" and figure.unit in {None, "V"} and len(figure.amounts) == 1 and not figure.done
    lost = draft.context.finding in {"loose_line", "no_supply"}
    if bare and lost and told & LINE_MENDED and told & AGAIN and LEAST_LINE_V <= figure.value <= MOST_LINE_V:
        figure.done = True
        measure = "primary_volts" if draft.context.finding == "loose_line" else "line_volts"
        draft.readings.append(Reading(measure=measure, value=figure.value, assumed=True))
        draft.mended.append("supply")


def _told_good(draft: Draft, figure: Figure) -> None:
    """In "fuse on the board is fine": by looking at it, which proves little."""
    near = range(max(0, figure.at - 5), min(len(draft.phrases), figure.at + 4))
    fuse = next((at for at in near if any(end.name == "fuse" for end in draft.phrases[at].ends)), None)
    amounts = any(f.kind == "amount" for f in draft.figures)
    if figure.kind != "good" or fuse is None or amounts or "?" in draft.text or draft.context.asked == ("fuse_ohms", None):
        return
    begin, end = sorted((fuse, figure.at))
    span = (draft.phrases[begin].start, draft.phrases[end].end)
    figure.done = True
    draft.unread.append(span)
    draft.heard.append((span, Heard("told_good", "fuse", "")))


def _at_a_valve(draft: Draft, figure: Figure) -> None:
    """In "24.3 on the valve now", "válvula 0"."""
    near = range(max(0, figure.at - 3), min(len(draft.phrases), figure.at + 4))
    valve = any(draft.phrases[at].text in {"valve", "valvula"} and draft.clause[at] == draft.clause[figure.at] for at in near)
    bare = figure.kind == "amount" and figure.unit in {None, "V"} and len(figure.amounts) == 1 and not figure.done
    if valve and bare and (figure.value == 0 or LEAST_FED_V <= figure.value <= 32.0) and not draft.asks:
        figure.done = True
        draft.readings.append(Reading(measure="coil_volts", value=figure.value))


LEAST_VA = 20.0
OF_A_SIZE = frozenset({"a", "de", "the", "el", "un"})


def _of_a_size(draft: Draft, figure: Figure) -> None:
    """In "what fuse goes with a 40", "qué fusible le va a uno de 40": the transformer, called by its size."""
    before = draft.phrases[figure.at - 1].text if figure.at else ""
    bare = figure.kind == "amount" and figure.unit is None and figure.value in SIZES_VA and figure.value >= LEAST_VA
    if bare and "fuse" in draft.asks and before in OF_A_SIZE:
        draft.fact(figure, Fact(fact="rated_va", value=figure.value, unit="VA"))


HERE = frozenset({"here", "aqui", "there", "aca"})


def _here(draft: Draft, figure: Figure) -> None:
    """In "208 here", "aquí hay 208": the supply of the building, whatever was asked for."""
    bare = figure.kind == "amount" and figure.unit in {None, "V"} and figure.value in NOMINAL_V
    strange = [
        p
        for p in draft.phrases
        if p.kind not in {"filler", "amounts", "reads", "is", "comma", "stop", "idword", "between"} or p.text in {"meter"}
    ]
    unit = set(draft.words) & UNIT and not strange and draft.kind(figure.at - 1) != "at"
    if (bare and set(draft.words) & HERE and not strange) or (bare and unit):
        draft.fact(figure, Fact(fact="supply_volts", value=figure.value, unit="V"))


def _at_panel_or_unit(draft: Draft, figure: Figure) -> None:
    """In "240 at the panel, 0 at the unit": the unit's own terminals are the line; the panel is before them."""
    at = _beside(draft, figure)
    if at is None or not _is_volts(figure):
        return
    value = 0.0 if figure.kind == "nothing" else figure.value
    text, line = draft.phrases[at].text, LEAST_LINE_V <= value <= MOST_LINE_V
    led = any(draft.kind(i) == "at" for i in range(min(at, figure.at) - 1, max(at, figure.at)) if i >= 0)
    if text in UNIT and led and (line or value == 0):
        _take(draft, figure, at, "line_volts", assumed=True)
    elif text in PANEL and line:
        figure.done = True
        begin, end = sorted((at, figure.at))
        span = (draft.phrases[begin].start, draft.phrases[end].end)
        draft.unread.append(span)
        draft.heard.append((span, Heard("panel", "panel", "", (value,), "V")))


def _at_switch(draft: Draft, figure: Figure) -> None:
    """In "120 at the switch": line volts at the service switch; volts across one say "across"."""
    at = _beside(draft, figure)
    if at is None or draft.phrases[at].meaning != "switch" or not _is_volts(figure) or figure.kind != "amount":
        return
    across = any(p.text in {"across", "entre"} for p in draft.phrases)
    if LEAST_LINE_V <= figure.value <= MOST_LINE_V and not across:
        _take(draft, figure, at, "line_volts", assumed=True)


def _at_device(draft: Draft, figure: Figure) -> None:
    """In "0 at contactor", "board 0": volts, where the 24 V side is what is read."""
    at = _beside(draft, figure)
    measure = None if at is None else AT_DEVICE.get(draft.phrases[at].meaning)
    if at is None or measure is None or not _is_volts(figure):
        return
    told = set(draft.words) & SAID_LEG and not draft.parsed.spanish
    coil_dead = any(r.measure == "coil_volts" and r.value == 0.0 for r in draft.context.readings)
    asked = draft.context.asked[0] if draft.context.asked else ""
    fed = any(
        r.measure.endswith(("volts", "lifted")) and r.value != "open" and float(r.value) >= LEAST_FED_V
        for r in draft.context.readings
    )
    if figure.kind == "nothing" or figure.value == 0:
        if fed or asked in {"control_volts", "coil_volts"}:
            _take(draft, figure, at, measure, assumed=False)
    elif (
        (told or coil_dead)
        and measure == "control_volts"
        and draft.phrases[at].meaning == "thermostat"
        and LEAST_FED_V <= figure.value <= 32.0
    ):
        figure.done = True  # "y has 26 at the stat"
        begin, end = sorted((at, figure.at))
        begin = max(0, begin - 2) if told else begin
        span = (draft.phrases[begin].start, draft.phrases[end].end)
        draft.unread.append(span)
        draft.heard.append((span, Heard("leg", "y c", "", (figure.value,), "V")))
        draft.sites[at].used += 1
