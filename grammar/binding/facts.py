"""What is told and not measured: supply, tap, nameplate, fuse, run and gauge, and what a label says of leads."""

from core.readings import Fact
from grammar.binding.draft import Draft, Figure, Site

NOMINAL_V = frozenset(
    {
        100.0,
        110.0,
        115.0,
        120.0,
        200.0,
        208.0,
        220.0,
        230.0,
        240.0,
        265.0,
        277.0,
        347.0,
        380.0,
        400.0,
        415.0,
        440.0,
        460.0,
        480.0,
        575.0,
        600.0,
    }
)
"""Volts that are a nominal supply. Common practice, no source."""
LOW_SIDE = frozenset({12.0, 16.0, 18.0, 24.0})
"""Volts of a low side."""
SMALL = frozenset(
    {
        "filler",
        "is",
        "at",
        "between",
        "colon",
        "to",
        "lands",
        "each",
        "winding",
        "with",
        "run",
        "cableword",
        "leadword",
        "no",
        "now",
    }
)
MEASURING = frozenset({"reads", "heading"})


def volts(figure: Figure) -> bool:
    """A figure that can be volts: bare or with the unit."""
    return figure.kind == "amount" and figure.unit in {None, "V"} and len(figure.amounts) == 1


def open_amounts(draft: Draft) -> list[Figure]:
    """Amounts that are nothing yet."""
    return [f for f in draft.figures if f.kind == "amount" and not f.done and not f.withdrawn]


def facts(draft: Draft) -> None:
    """All of them, the plainest first."""
    _not_ours(draft)
    _lengths(draft)
    _gauges(draft)
    _others(draft)
    _taps(draft)
    _supply(draft)
    _fuses(draft)


def _neighbour(draft: Draft, at: int, step: int, kinds: frozenset[str] | set[str], most: int = 3) -> int | None:
    """The nearest phrase of some kinds on one side, only small words between, in the same clause."""
    seen = 0
    here = at + step
    while 0 <= here < len(draft.phrases) and seen <= most and draft.clause[here] == draft.clause[at]:
        if draft.kind(here) in kinds:
            return here
        if draft.kind(here) not in SMALL:
            return None
        seen += 1
        here += step
    return None


def _not_ours(draft: Draft) -> None:
    for figure in open_amounts(draft):
        before = draft.kind(figure.at - 1)
        if figure.unit in {"other", "mm2"} or (figure.unit == "degC" and not _of_copper(draft)):
            figure.done = True
            draft.chatter.append((figure.start, figure.end))
        elif (
            figure.unit is None
            and draft.phrases[min(figure.at + 1, len(draft.phrases) - 1)].text == ")"
            and draft.phrases[figure.at + 1].start == figure.end
            and figure.value <= 20
        ):
            figure.done = True  # "1) ... 2) ..."
            draft.cue_spans.append((figure.start, figure.end))
        elif before == "idword" and figure.unit is None:
            figure.done = True
            draft.chatter.append((draft.phrases[figure.at - 1].start, figure.end))
        elif figure.unit == "degC":
            draft.fact(figure, Fact(fact="copper_celsius", value=figure.value, unit="degC"))


def _of_copper(draft: Draft) -> bool:
    words = {p.text for p in draft.phrases}
    return bool(words & {"copper", "conductor", "conductors", "cobre", "wire", "cable"})


def _lengths(draft: Draft) -> None:
    round_trip = any(p.kind == "round_trip" for p in draft.phrases)
    for figure in open_amounts(draft):
        if figure.unit == "m?":
            figure.unit = "ft" if _in_metres(draft, figure) else "ohm"
            figure.value = round(figure.value / 0.3048, 6) if figure.unit == "ft" else figure.value * 1e6
            if figure.low is not None and figure.high is not None:
                figure.low, figure.high = figure.low * 1e6, figure.high * 1e6
        if figure.unit == "ft" and draft.phrases[figure.at].text == "" and _are_tools(draft, figure):
            figure.unit, figure.done = None, True
            draft.cue_spans.append((figure.start, figure.end))
        if figure.unit == "ft" and figure.value > 0 and not figure.done:
            halved = figure.value / 2 if round_trip else figure.value
            draft.fact(figure, Fact(fact="run_feet", value=round(halved, 3), unit="ft"))
        elif figure.unit is None and _neighbour(draft, figure.at, 1, {"round_trip"}, 0) is not None:
            draft.fact(figure, Fact(fact="run_feet", value=figure.value / 2, unit="ft"))


def _are_tools(draft: Draft, figure: Figure) -> bool:
    """In "two meters on the sec": things to read with, and no length."""
    assert figure.amount is not None
    run = any(
        p.kind in {"run", "round_trip", "cableword", "gaugeword", "leadword"} or p.text in {"long", "awg", "far"}
        for p in draft.phrases
    )
    return figure.amount.unit == "meter" and figure.amount.value <= 3 and not run


def _in_metres(draft: Draft, figure: Figure) -> bool:
    assert figure.amount is not None
    small = draft.text[figure.start : figure.end].rstrip().endswith("m")
    run = any(
        p.kind in {"run", "round_trip", "cableword", "gaugeword"} or p.text in {"long", "cable", "wire", "awg", "far"}
        for p in draft.phrases
    )
    return (
        small
        and run
        and not any(s.kind in {"place", "pair"} and abs(s.at - figure.at) < 4 for s in draft.sites.values() if s.name != "load")
    )


def _gauges(draft: Draft) -> None:
    about_wire = (
        any(
            p.kind in {"run", "round_trip", "cableword", "gaugeword", "leadword"} or p.text in {"wire", "cable", "stat", "run"}
            for p in draft.phrases
        )
        or draft.told("run_feet") is not None
    )
    for figure in open_amounts(draft):
        first = figure.amounts[0]
        if (
            figure.unit == "AWG"
            or (figure.unit is None and _neighbour(draft, figure.at, -1, {"gaugeword"}, 0) is not None)
            or (
                len(figure.amounts) == 2
                and figure.joins[0] in {"/", "-", "slash", "dash"}
                and figure.unit is None
                and 10 <= first.value <= 26
                and first.value == int(first.value)
                and 2 <= figure.amounts[1].value <= 12
                and about_wire
                and not any(s.kind == "notours" and s.name == "capacitor" for s in draft.sites.values())
            )
        ):
            _gauge(draft, figure, first.value)
        elif figure.unit is None and draft.kind(figure.at + 1) == "gaugeword" and 6 <= figure.value <= 30:
            _gauge(draft, figure, figure.value)


def _gauge(draft: Draft, figure: Figure, awg: float) -> None:
    if awg != int(awg) or not 0 < awg <= 40:
        return
    draft.fact(figure, Fact(fact="wire_awg", value=awg, unit="AWG"))


def _others(draft: Draft) -> None:
    for at, phrase in enumerate(draft.phrases):
        if phrase.kind == "stranded":
            draft.fact(None, Fact(fact="stranded", value="stranded"), at)
    for figure in open_amounts(draft):
        if figure.unit == "Hz":
            draft.fact(figure, Fact(fact="supply_hertz", value=figure.value, unit="Hz"))
        elif figure.unit == "in":
            if any(
                "core" in p.text or "nucleo" in p.text or "stack" in p.text or any(e.name == "ground" for e in p.ends)
                for p in draft.phrases
            ):
                draft.fact(figure, Fact(fact="core_inches", value=tuple(a.value for a in figure.amounts), unit="in"))
            else:
                figure.done = True
                draft.chatter.append((figure.start, figure.end))


def _taps(draft: Draft) -> None:
    plate = any(p.kind in {"plate_high", "nameplate", "tapword", "transformer"} for p in draft.phrases)
    plate = plate or any(f.unit == "VA" for f in draft.figures)
    for figure in open_amounts(draft):
        if figure.unit not in {None, "V"}:
            continue
        if len(figure.amounts) > 1:
            _tap_list(draft, figure, plate=plate)
        elif figure.value >= 100 and (at := _tap_beside(draft, figure)) is not None:
            draft.fact(figure, Fact(fact="tap_volts", value=figure.value, unit="V"))
            draft.taken.add(at)
    _plate_list(draft)
    _withdrawn_taps(draft)


def _tap_list(draft: Draft, figure: Figure, *, plate: bool) -> None:
    """In "120/208/240", "120/208/240 to 24v": the taps of a nameplate."""
    values = tuple(a.value for a in figure.amounts)
    high, low = (values[:-1], values[-1]) if len(values) > 2 and values[-1] in LOW_SIDE else (values, None)
    if figure.joins[0] not in TAP_JOINS or not all(v in NOMINAL_V for v in high) or not (plate or len(values) > 2):
        return
    draft.fact(figure, Fact(fact="nameplate_taps", value=high, unit="V"))
    if low is not None:
        draft.fact(figure, Fact(fact="rated_secondary_volts", value=low, unit="V"))


TAP_JOINS = frozenset({"/", "slash", "-", "or", "and", "to"})


def _tap_beside(draft: Draft, figure: Figure) -> int | None:
    """The word that makes the figure a tap: right behind it, or before it with nothing measured between."""
    behind = _neighbour(draft, figure.at, 1, {"tapword"}, 0)
    if behind is not None:
        reach = range(behind, min(behind + 5, len(draft.phrases)))
        capped = any(draft.kind(i) == "capped" for i in reach if draft.clause[i] == draft.clause[behind])
        return None if capped else behind
    before = _neighbour(draft, figure.at, -1, {"tapword"}, 3)
    if before is None or draft.kind(before - 1) == "amounts" or draft.kind(figure.at + 1) == "supply":
        return None
    meant = draft.phrases[before].text not in {"taps", "tomas"} and not _asked_for(draft, before)
    return before if meant and not _measured_between(draft, before, figure.at) else None


def _asked_for(draft: Draft, at: int) -> bool:
    """In "which tap for 208": the tap is asked for, the number is the supply."""
    return "tap" in draft.asks and any(draft.phrases[i].text in ASKING for i in range(max(0, at - 3), at))


ASKING = frozenset({"which", "what", "wich", "cual", "que", "right", "correct", "correcto", "whats", "best", "proper", "mejor"})


def _plate_list(draft: Draft) -> None:
    """In "multi tap 120, 208, 240": several nominal volts in a row behind such a word."""
    at = next((i for i, p in enumerate(draft.phrases) if p.kind == "plate_high" or p.text in {"taps", "tomas"}), None)
    if at is None:
        return
    row = [
        f
        for f in open_amounts(draft)
        if f.at > at and volts(f) and f.value in NOMINAL_V and draft.sentence[f.at] == draft.sentence[at]
    ]
    if len(row) > 1:
        for figure in row:
            figure.done = True
        draft.fact(row[0], Fact(fact="nameplate_taps", value=tuple(f.value for f in row), unit="V"))


def _measured_between(draft: Draft, one: int, other: int) -> bool:
    return any(draft.kind(i) in MEASURING for i in range(min(one, other), max(one, other)))


def _withdrawn_taps(draft: Draft) -> None:
    """Of two taps with a mark of correction between them the last one stands."""
    taps = [row for row in draft.facts if row[1].fact == "tap_volts"]
    moved = any(
        p.text in {"moved", "switched", "swapped", "changed", "from", "moving", "cambie", "movi"} for p in draft.phrases
    )
    if len(taps) > 1 and (moved or any(p.kind == "withdraw" for p in draft.phrases[taps[0][0] : taps[-1][0]])):
        draft.facts = [row for row in draft.facts if row[1].fact != "tap_volts" or row is taps[-1]]


def _supply_of_a_question(draft: Draft) -> None:
    """In "what line fuse for a 75 va on 240": a nominal voltage behind "on" or "for", and no place behind it."""
    if not {"tap", "fuse", "expect", "size", "why"} & set(draft.asks) or draft.told("supply_volts") is not None:
        return
    for figure in open_amounts(draft):
        before, behind = draft.phrases[figure.at - 1] if figure.at else None, draft.kind(figure.at + 1)
        led = before is not None and (
            before.text in {"on", "for", "with", "off", "a", "para", "con", "de"} or before.kind == "at"
        )
        if volts(figure) and figure.value in NOMINAL_V and led and behind in {"", "stop", "comma", "line", "filler", "unit"}:
            draft.fact(figure, Fact(fact="supply_volts", value=figure.value, unit="V"))
            return


def _supply_by_itself(draft: Draft) -> None:
    """In "it's 480, can I check it live": a nominal voltage that is all of its clause."""
    if draft.context.asked is not None or draft.told("supply_volts") is not None or draft.told("tap_volts") is not None:
        return
    if any(p.kind in {"withdraw", "no", "not", "replace"} for p in draft.phrases):
        return
    for figure in open_amounts(draft):
        clause = [
            i
            for i in range(max(0, figure.at - 4), min(len(draft.phrases), figure.at + 4))
            if draft.clause[i] == draft.clause[figure.at]
        ]
        kinds = {draft.kind(i) for i in clause} - {"comma", "stop", "line"}
        first = next((draft.kind(i) for i in clause if draft.kind(i) not in {"comma", "stop", "line", "filler"}), "")
        if (
            first == "is"
            and kinds <= {"is", "amounts", "filler"}
            and volts(figure)
            and figure.value in NOMINAL_V
            and figure.value >= 200
        ):
            draft.fact(figure, Fact(fact="supply_volts", value=figure.value, unit="V"))
            return


PLACES_OF_WORK = frozenset(
    {"building", "bldg", "bldng", "bulding", "site", "edificio", "service", "house is", "store is", "shop is"}
)
"""Supply words behind which a nominal figure is nominal, whatever verb stands there."""


def _supply(draft: Draft) -> None:
    for figure in open_amounts(draft):
        if not volts(figure) or figure.value not in NOMINAL_V:
            continue
        before = _neighbour(draft, figure.at, -1, {"supply"}, 2)
        behind = _neighbour(draft, figure.at, 1, {"supply"}, 2)
        near = before if before is not None else behind
        if near is not None and (not _measured_between(draft, near, figure.at) or draft.phrases[near].text in PLACES_OF_WORK):
            draft.fact(figure, Fact(fact="supply_volts", value=figure.value, unit="V"))
            draft.taken.add(near)
        elif (
            behind is None
            and draft.kind(figure.at + 1) == "idword"
            and draft.phrases[figure.at + 1].text in {"unit", "system", "rtu", "circuit", "unidad", "equipo"}
        ):
            draft.fact(figure, Fact(fact="supply_volts", value=figure.value, unit="V"))
            draft.taken.add(figure.at + 1)
    for figure in open_amounts(draft):  # "240 tap on 208"
        kinds = [draft.kind(i) for i in (figure.at - 3, figure.at - 2, figure.at - 1)]
        if (
            kinds == ["amounts", "tapword", "at"]
            and volts(figure)
            and figure.value in NOMINAL_V
            and draft.told("supply_volts") is None
        ):
            draft.fact(figure, Fact(fact="supply_volts", value=figure.value, unit="V"))
    _supply_of_a_question(draft)
    _supply_by_itself(draft)
    air = any(s.kind == "notours" and s.name == "temperature" for s in draft.sites.values())
    for at, phrase in enumerate(draft.phrases):  # "supply reads 203" is measured, so at the line
        if phrase.kind == "supply" and not air and at not in draft.taken and not phrase.text.endswith((" is", " es de", " de")):
            draft.sites[at] = Site(at, "place", "line")


def _fuses(draft: Draft) -> None:
    """Amps of a fuse: beside it, "fusible de 5", "a 3 amp breaker", "will a 3 fuse do"."""
    for figure in open_amounts(draft):
        if len(figure.amounts) == 1 and (
            _beside_a_fuse(draft, figure)
            or _of_a_fuse(draft, figure)
            or _of_a_breaker(draft, figure)
            or _asked_fuse(draft, figure)
        ):
            draft.fact(figure, Fact(fact="fuse_amps", value=figure.value, unit="A"))


def _is_fuse(draft: Draft, at: int) -> bool:
    return at in draft.sites and draft.sites[at].name == "fuse"


def _beside_a_fuse(draft: Draft, figure: Figure) -> bool:
    reach = range(max(0, figure.at - 6), min(len(draft.phrases), figure.at + 7))
    fuse = next((i for i in reach if _is_fuse(draft, i) and draft.sentence[i] == draft.sentence[figure.at]), None)
    return figure.unit == "A" and fuse is not None and _fuse_between(draft, fuse, figure.at)


def _of_a_fuse(draft: Draft, figure: Figure) -> bool:
    of = figure.unit is None and draft.phrases[max(0, figure.at - 1)].text in {"de", "of"} and 1 <= figure.value <= 30
    return of and _is_fuse(draft, figure.at - 2)


def _of_a_breaker(draft: Draft, figure: Figure) -> bool:
    behind = draft.phrases[min(figure.at + 1, len(draft.phrases) - 1)]
    return figure.unit == "A" and figure.value <= 10 and behind.text in {"breaker", "cb"}


def _asked_fuse(draft: Draft, figure: Figure) -> bool:
    whole = figure.unit is None and 1 <= figure.value <= 30 and figure.value == int(figure.value)
    free = "fuse" in draft.asks and draft.told("fuse_amps") is None and _neighbour(draft, figure.at, -1, {"supply"}, 1) is None
    return whole and free and _is_fuse(draft, figure.at + 1)


def _fuse_between(draft: Draft, one: int, other: int) -> bool:
    """No other place or device stands between fuse and amps."""
    span = range(min(one, other) + 1, max(one, other))
    return not any(i in draft.sites or draft.kind(i) == "amounts" for i in span)


def nominal_in_question(draft: Draft) -> None:
    """In "which tap for 208": a nominal voltage without a place, where something about it is asked."""
    if not {"tap", "expect", "fuse"} & set(draft.asks) or draft.told("supply_volts") is not None:
        return
    free = [f for f in open_amounts(draft) if volts(f) and f.site is None and f.value in NOMINAL_V]
    if len(free) == 1:
        draft.fact(free[0], Fact(fact="supply_volts", value=free[0].value, unit="V"))
