"""What is told and not measured: lengths, gauges, and the facts that have a file of their own."""

from core.readings import Fact
from core.said import say
from core.standards.wire_gauges import CONTROL_GAUGES, area_mm2
from grammar.binding.draft import Draft, Figure
from grammar.binding.fuses import fuses
from grammar.binding.supply import supply
from grammar.binding.taps import taps
from grammar.binding.told import NOMINAL_V, neighbour, open_amounts
from grammar.message import Unclear


def facts(draft: Draft) -> None:
    """All of them, the plainest first."""
    _fahrenheit(draft)
    _not_ours(draft)
    _lengths(draft)
    _gauges(draft)
    _others(draft)
    taps(draft)
    supply(draft)
    fuses(draft)


FAHRENHEIT = frozenset({"f", "°f", "degrees f", "deg f", "fahrenheit"})


def _fahrenheit(draft: Draft) -> None:
    """In "150 ft of 18 at 140F": the copper's temperature, as degrees Celsius."""
    for figure in open_amounts(draft):
        text = "" if figure.amount is None else figure.amount.unit_text.lower().strip()
        if text not in FAHRENHEIT or len(figure.amounts) != 1:
            continue
        near = any(f.unit in {"ft", "AWG"} and draft.clause[f.at] == draft.clause[figure.at] for f in draft.figures)
        if near and (_of_copper(draft) or _at_a_run(draft, figure)):
            figure.unit, figure.value = "degC", round((figure.value - 32.0) / 1.8, 1)


def _not_ours(draft: Draft) -> None:
    for figure in open_amounts(draft):
        before = draft.kind(figure.at - 1)
        if figure.unit == "V" and figure.value in CAPACITOR_V and _beside_another_trade(draft, figure):
            figure.done = True
            draft.chatter.append((figure.start, figure.end))
        elif _is_part_number(draft, figure):
            figure.done = True
            draft.chatter.append((figure.start, draft.phrases[figure.at + 1].end))
        elif _is_signal(draft, figure):
            figure.done = True
            draft.chatter.append((figure.start, figure.end))
        elif figure.unit == "mm2":
            figure.done = True
            _ask_gauge(draft, figure)
        elif (
            figure.unit == "other"
            or (figure.unit == "W" and not _by_a_device(draft, figure.at))
            or (figure.unit == "degC" and not _of_copper(draft) and not _at_a_run(draft, figure))
        ):
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
        elif before == "idword" and figure.unit is None and not _has_a_meaning(draft, figure):
            figure.done = True
            draft.chatter.append((draft.phrases[figure.at - 1].start, figure.end))
        elif figure.unit == "degC":
            draft.fact(figure, Fact(fact="copper_celsius", value=figure.value, unit="degC"))


CAPACITOR_V = frozenset({330.0, 370.0, 440.0, 450.0})
"""Volts of a capacitor. [V]"""
LEAST_PART_NUMBER = 10_000.0
"""From here on a bare number before a device names it. Common practice, no source."""


def _is_part_number(draft: Draft, figure: Figure) -> bool:
    """In "a 90340 relay", "a 90-340 relay"."""
    before_a_device = draft.kind(figure.at + 1) in {"device", "transformer"} and figure.kind == "amount" and figure.unit is None
    parts = len(figure.amounts) == 2 and figure.joins[0] in {"-", "dash"}
    is_of_supply = draft.kind(figure.at - 1) == "supply"  # "supply 120000 contactor 9va": refused, and not passed over
    return before_a_device and not is_of_supply and (figure.value >= LEAST_PART_NUMBER or parts)


MODULATED = frozenset({"damper", "actuator", "economizer", "sensor"})
"""Devices that are driven by a signal."""


def _is_signal(draft: Draft, figure: Figure) -> bool:
    """In "2 to 10 vdc to the damper actuator reading 6.1 vdc": DC volts of a signal, where no place of ours is named."""
    if figure.amount is None or figure.amount.unit_text != "vdc":
        return False
    devices = {s.name for s in draft.sites.values() if s.kind == "device" and draft.sentence[s.at] == draft.sentence[figure.at]}
    places = any(
        s.kind in {"place", "pair"} and draft.sentence[s.at] == draft.sentence[figure.at] for s in draft.sites.values()
    )
    return not places and (bool(devices & MODULATED) or figure.low is not None)


def _ask_gauge(draft: Draft, figure: Figure) -> None:
    """In "40 m of 1.5 mm2": no gauge is that, and the next thinner one is offered."""
    fragment = draft.fragment(figure.start, figure.end)
    thinner = next((awg for awg in reversed(CONTROL_GAUGES) if area_mm2(awg) <= figure.value), None)
    if thinner is None or figure.value > 2.0 * area_mm2(CONTROL_GAUGES[-1]):
        draft.unread.append((figure.start, figure.end))
        return
    question = say("{area:g} mm² is no AWG. The next thinner is {awg} AWG: send the gauge", area=figure.value, awg=thinner)
    draft.unclear.append(Unclear(fragment=fragment, choices=(f"{thinner} AWG",), question=question))


def _has_a_meaning(draft: Draft, figure: Figure) -> bool:
    """In "after resetting the breaker 121 on the primary", "3 ton unit 208 3 phase": a value of what follows, and no number of what is before."""
    behind = figure.at + 1
    if draft.kind(behind) == "supply" and figure.value in NOMINAL_V:
        return True
    placed = draft.sites.get(behind + 1)
    return draft.kind(behind) in {"at", "between"} and placed is not None and placed.kind in {"place", "pair"}


def _by_a_device(draft: Draft, at: int) -> bool:
    """In "humidifier 10w" and "an 18 watt uv light"."""
    return any(draft.kind(i) == "device" and draft.clause[i] == draft.clause[at] for i in range(at - 3, at + 3) if i >= 0)


def _at_a_run(draft: Draft, figure: Figure) -> bool:
    """In "150 ft of 18 at 140F"."""
    about_a_run = any(f.unit == "ft" for f in draft.figures) or "wire_run" in draft.asks
    return draft.kind(figure.at - 1) == "at" and about_a_run


def _of_copper(draft: Draft) -> bool:
    words = {p.text for p in draft.phrases}
    if any(p.kind in {"stranded", "gaugeword", "cableword"} for p in draft.phrases):
        return True
    if any(f.unit == "AWG" for f in draft.figures) or draft.told("wire_awg") is not None:
        return True
    return bool(words & {"copper", "conductor", "conductors", "cobre", "wire", "cable"})


def _lengths(draft: Draft) -> None:
    round_trip = any(p.kind == "round_trip" for p in draft.phrases)
    wires = any(p.kind in WIRE_KINDS or p.text in {"wire", "cable", "awg", "stat"} for p in draft.phrases)
    _one_way_of_two(draft)
    for figure in open_amounts(draft):
        words = [p.text for p in draft.phrases[figure.at + 1 : figure.at + 3]]
        if figure.unit is None and words[:1] in (["miles"], ["mile"], ["millas"]) and words[1:] in (["of"], ["de"]):
            figure.unit, figure.value = "ft", figure.value * 5280.0  # "9 miles of 18 awg": core refuses it
    for figure in open_amounts(draft):
        if _metres_of_a_run(draft, figure):
            figure.unit, figure.value = "ft", round(figure.value / 0.3048, 6)
        if figure.unit == "m?":
            figure.unit = "ft" if _in_metres(draft, figure) else "ohm"
            figure.value = round(figure.value / 0.3048, 6) if figure.unit == "ft" else figure.value * 1e6
            if figure.low is not None and figure.high is not None:
                figure.low, figure.high = figure.low * 1e6, figure.high * 1e6
        if figure.unit == "ft" and draft.phrases[figure.at].text == "" and _are_tools(draft, figure):
            figure.unit, figure.done = None, True
            draft.cue_spans.append((figure.start, figure.end))
        wires = wires or _of_a_gauge(draft, figure)
        if (
            figure.unit == "ft"
            and not wires
            and (any(p.text in NO_RUN for p in draft.phrases) or _beside_another_trade(draft, figure))
        ):
            figure.done = True
            draft.chatter.append((figure.start, figure.end))
        if figure.unit == "ft" and not figure.done:
            halved = figure.value / 2 if round_trip else figure.value
            draft.fact(figure, Fact(fact="run_feet", value=round(halved, 3), unit="ft"))
        elif figure.unit is None and neighbour(draft, figure.at, 1, {"round_trip"}, 0) is not None:
            draft.fact(figure, Fact(fact="run_feet", value=figure.value / 2, unit="ft"))


def _beside_another_trade(draft: Draft, figure: Figure) -> bool:
    """In "line set is 50 ft", "pump has 8 ft of head", "vfd is at 48 hz"."""
    of = draft.phrases[figure.at + 1].text == "of" if figure.at + 1 < len(draft.phrases) else False
    near = [*range(max(0, figure.at - 4), figure.at), *([figure.at + 2] if of else [])]
    return any(
        i in draft.sites and draft.sites[i].kind == "notours" and draft.clause[i] == draft.clause[figure.at] for i in near
    )


METRE_OF = frozenset({"pull", "run", "length", "wire", "cable", "stretch"})
"""Words behind "50 meter" that make it a length, and no thing to read with."""


def _metres_of_a_run(draft: Draft, figure: Figure) -> bool:
    """In "50 meter pull there and back": a length, as feet."""
    behind = draft.phrases[figure.at + 1 : figure.at + 3]
    return (
        figure.unit is None
        and len(behind) == 2
        and behind[0].text == "meter"
        and (behind[1].text in METRE_OF or behind[1].kind in WIRE_KINDS)
    )


ONE_WAY = frozenset({"one way", "each way", "de ida"})


def _one_way_of_two(draft: Draft) -> None:
    """In "180 feet total for both conductors, so 90 each way": the way there is told, and twice as much is no further length."""
    for at, phrase in enumerate(draft.phrases):
        figure = draft.figure_at(at - 1)
        if phrase.text not in ONE_WAY or figure is None or figure.unit not in {None, "ft"}:
            continue
        figure.unit = "ft"
        for other in draft.around(at):
            if other is not figure and other.unit in {None, "ft"} and other.value == 2 * figure.value:
                other.done = True


WIRE_KINDS = frozenset({"run", "round_trip", "cableword", "gaugeword"})
NO_RUN = frozenset({
    "ladder", "tall", "high", "ceiling", "ceilings", "fell", "dropped", "drop from", "climb", "climbed", "attic", "roof", "walls", "deep", "wide", "snow", "escalera", "alto", "techo", "altura", "cai", "hondo",
})  # fmt: skip
"""Words beside a length that is none of a wire."""


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
    if small and draft.kind(figure.at + 1) == "gaugeword":  # "45 m calibre 20 bobina 10va"
        return True
    run = any(
        p.kind in {"run", "round_trip", "cableword", "gaugeword"} or p.text in {"long", "cable", "wire", "awg", "far"}
        for p in draft.phrases
    ) or any(f.unit == "AWG" for f in draft.figures)
    return (
        small
        and (run or "wire_run" in draft.asks or _of_a_gauge(draft, figure))
        and not any(s.kind in {"place", "pair"} and abs(s.at - figure.at) < 4 for s in draft.sites.values() if s.name != "load")
    )


def _of_a_gauge(draft: Draft, figure: Figure) -> bool:
    """In "30 m of 18", "30 m de 18": a bare gauge behind the length."""
    behind = draft.figure_at(figure.at + 2)
    joined = figure.at + 1 < len(draft.phrases) and draft.phrases[figure.at + 1].text in {"of", "de"}
    return joined and behind is not None and behind.unit is None and behind.value in range(10, 27)


def _gauges(draft: Draft) -> None:
    about_wire = (
        any(
            p.kind in {"run", "round_trip", "cableword", "gaugeword", "leadword"} or p.text in {"wire", "cable", "stat", "run"}
            for p in draft.phrases
        )
        or draft.told("run_feet") is not None
        or "wire_run" in draft.asks
    )
    for figure in open_amounts(draft):
        first = figure.amounts[0]
        if (
            figure.unit == "AWG"
            or (figure.unit is None and neighbour(draft, figure.at, -1, {"gaugeword"}, 1) is not None)
            or _of_a_length(draft, figure)
            or _of_the_wire(draft, figure)
            or _dictated(draft, figure)
            or _of_a_cable(draft, figure)
            or (
                len(figure.amounts) == 2
                and figure.joins[0] in {"/", "-", "slash", "dash"}
                and figure.unit is None
                and 10 <= first.value <= 26
                and first.value == int(first.value)
                and 2 <= figure.amounts[1].value <= 12
                and about_wire
                and not any(
                    s.kind == "notours" and s.name == "capacitor" and draft.clause[s.at] == draft.clause[figure.at]
                    for s in draft.sites.values()
                )
            )
        ):
            _gauge(draft, figure, float(int(first.value)))
        elif figure.unit is None and draft.kind(figure.at + 1) == "gaugeword" and 6 <= figure.value <= 30:
            _gauge(draft, figure, figure.value)


GAUGES = frozenset({10.0, 12.0, 14.0, 16.0, 18.0, 20.0, 22.0, 24.0, 26.0})
CABLES = frozenset({"cable", "wire", "alambre", "hilo", "cobre", "copper", "romex", "stat wire", "thermostat wire"})


def _of_a_cable(draft: Draft, figure: Figure) -> bool:
    """In "cable 22 y 15 metros", "22 wire and 15 meters": a gauge of the trade beside the cable, where its length is told."""
    if figure.unit is not None or figure.value not in GAUGES or len(figure.amounts) != 1 or draft.told("run_feet") is None:
        return False
    before = [draft.phrases[i].text for i in (figure.at - 1, figure.at - 2) if i >= 0]
    behind = draft.phrases[figure.at + 1].text if figure.at + 1 < len(draft.phrases) else ""
    led = bool(before) and (before[0] in CABLES or (before[0] in {"de", "del", "of", "numero"} and before[-1] in CABLES))
    return led or behind in CABLES


def _dictated(draft: Draft, figure: Figure) -> bool:
    """In "ninety feet of eighteen five wire": 18/5 as it is said."""
    spoken = figure.amount is not None and figure.amount.spoken and figure.doubt == "split" and figure.unit is None
    told = draft.told("run_feet") is not None or draft.kind(figure.at + 1) in {"leadword", "cableword"}
    return spoken and told and 14 <= figure.value < 25 and len(figure.amounts) == 1


def _of_a_length(draft: Draft, figure: Figure) -> bool:
    """In "120 ft of 18" and "50 pies del 20": a bare gauge right behind its length."""
    if figure.unit is not None or len(figure.amounts) != 1 or not 10 <= figure.value <= 26 or figure.value != int(figure.value):
        return False
    before = figure.at - 1
    while draft.kind(before) in OF_KINDS and (draft.kind(before) == "round_trip" or draft.phrases[before].text in OF_GAUGE):
        before -= 1
    length = draft.figure_at(before)
    if before >= 0 and any(p.text in RUNS for p in draft.phrases[before : figure.at]):  # "2 runs of 18: 100 ft"
        return any(f.unit == "ft" for f in draft.figures)
    return length is not None and length.unit == "ft" and draft.sentence[before] == draft.sentence[figure.at]


def _of_the_wire(draft: Draft, figure: Figure) -> bool:
    """In "wire is 18": a bare gauge of control wire."""
    told = draft.kind(figure.at - 1) == "is" and draft.phrases[figure.at - 2].text in {"wire", "cable", "alambre", "the wire"}
    bare = figure.unit is None and len(figure.amounts) == 1 and figure.value in range(10, 27)
    return told and figure.at >= 2 and bare


RUNS = frozenset({"runs", "run", "run of", "runs of", "tramos", "tramo de", "tramos de"})
OF_KINDS = frozenset({"stranded", "round_trip", "filler", "at", "with", "run", "cableword", "leadword", "between", "to"})
OF_GAUGE = frozenset(
    {
        "run of", "runs of", "of", "in", "de", "del", "en", "con", "with", "w", "wire", "cable", "stat wire", "thermostat wire", "run", "cable de",
        "alambre", "tstat wire", "control wire", "stranded", "solid", "copper", "trenzado", "cable trenzado", "solido", "cobre",
    }
)  # fmt: skip
"""Words between a length and its gauge."""


def _gauge(draft: Draft, figure: Figure, awg: float) -> None:
    if awg != int(awg) or not 0 <= awg <= 40:
        return
    draft.fact(figure, Fact(fact="wire_awg", value=awg, unit="AWG"))


USUAL_HZ = 60.0
MAINS_HZ = (45.0, 65.0)
"""What a supply can have. [Hz]"""


def _others(draft: Draft) -> None:
    for at, phrase in enumerate(draft.phrases):
        if phrase.kind == "stranded":
            draft.fact(None, Fact(fact="stranded", value="stranded"), at)
    for figure in open_amounts(draft):
        of_supply = neighbour(draft, figure.at, 1, {"supply"}, 1) or neighbour(draft, figure.at, -1, {"supply"}, 1)
        if (
            figure.unit == "Hz"
            and of_supply is None
            and (not MAINS_HZ[0] <= figure.value <= MAINS_HZ[1] or _beside_another_trade(draft, figure))
        ):
            figure.done = True  # of a drive
            draft.chatter.append((figure.start, figure.end))
        elif figure.unit == "Hz" and figure.value == USUAL_HZ and not set(draft.asks) & {"size", "expect", "tap", "fuse"}:
            figure.done = True  # of every nameplate
            draft.chatter.append((figure.start, figure.end))
        elif figure.unit == "Hz":
            draft.fact(figure, Fact(fact="supply_hertz", value=figure.value, unit="Hz"))
        elif figure.unit == "in" or (
            figure.unit is None and len(figure.amounts) in {2, 3} and figure.joins[0] in {"x", "by", "por"}
        ):
            if any(
                "core" in p.text or "nucleo" in p.text or "stack" in p.text or any(e.name == "ground" for e in p.ends)
                for p in draft.phrases
            ):
                draft.fact(figure, Fact(fact="core_inches", value=tuple(a.value for a in figure.amounts), unit="in"))
            else:
                figure.done = True
                draft.chatter.append((figure.start, figure.end))
