"""Volt-amperes and amps of devices, and the rating of the transformer."""

from core.readings import Fact
from core.said import say
from core.standards.device_loads import DEVICE_LOADS, MOST_DEVICE_VA
from grammar.binding.draft import Draft, Figure
from grammar.binding.told import NOMINAL_V, open_amounts, volts
from grammar.message import Unclear
from grammar.words.devices import SWITCHES

MOST_STEADY_VA = 100.0
"""More than this of one 24 V coil is asked about. [VA]"""
MOST_OF_A_KIND = 60
ARTICLES = frozenset({"a", "an", "un", "una", "one", "the", "another", "el", "la", "otro", "otra"})


def loads(draft: Draft) -> None:
    """Loads and ratings of the message."""
    _inrush(draft)
    for figure in open_amounts(draft):
        if figure.unit == "VA":
            _volt_amperes(draft, figure)
    for figure in open_amounts(draft):
        if figure.unit == "A":
            _amps(draft, figure)
    _bare_in_list(draft)
    _without_figure(draft)
    _plate_volts(draft)
    sizes_asked(draft)
    _counts(draft)


def _inrush(draft: Draft) -> None:
    """In "10 va sealed 52 inrush": the figure that touches the word is no steady load."""
    for at, phrase in enumerate(draft.phrases):
        if phrase.kind != "inrush":
            continue
        before, behind = draft.figure_at(at - 1), draft.figure_at(at + 1)
        two_before = draft.figure_at(at - 2) if draft.kind(at - 1) in {"filler", "alone"} else None
        for figure in (before, two_before, behind):
            if figure is not None and figure.kind == "amount" and figure.unit in {None, "VA"} and not figure.done:
                figure.done = True
                draft.cue_spans.append((figure.start, figure.end))
                phrase.ends = ()
                phrase.text = f"inrush {figure.value}"
                break


def _device(draft: Draft, figure: Figure) -> int | None:
    """The device that a figure belongs to: the one right behind it, or the nearest free one before it in the sentence."""
    at = figure.at + 1
    while draft.kind(at) in {"filler", "each", "at", "sealed", "alone"} and draft.phrases[at].text not in {
        "and",
        "y",
        "plus",
        "mas",
        "n",
        "e",
        "then",
    }:
        at += 1
    right = at if draft.kind(at) == "device" and draft.clause[at] == draft.clause[figure.at] else None
    left = None
    for here in range(figure.at - 1, -1, -1):
        kind = draft.kind(here)
        if kind in {"stop", "line", "transformer"} or (
            kind == "amounts" and draft.figure_at(here) is not None and _is_value(draft, here)
        ):
            break
        if kind == "device":
            left = here if draft.sites[here].used == 0 else None
            break
    if left is not None and draft.clause[left] == draft.clause[figure.at] and _touches(draft, left, figure.at):
        return left
    if right is not None and (left is None or right == figure.at + 1 or draft.clause[left] != draft.clause[figure.at]):
        return right
    return left if left is not None else right


def _touches(draft: Draft, one: int, other: int) -> bool:
    """Only small words between a device and its figure, so that it is not the next device's."""
    return all(
        draft.kind(i) in {"filler", "is", "at", "colon", "reads", "each", "between", "sign"}
        and draft.phrases[i].text not in {"and", "plus"}
        for i in range(one + 1, other)
    )


def _is_value(draft: Draft, at: int) -> bool:
    figure = draft.figure_at(at)
    return figure is not None and figure.unit == "VA" and at + 1 < len(draft.phrases)


def _volt_amperes(draft: Draft, figure: Figure) -> None:
    if _is_sum(draft, figure):
        figure.done = True
        draft.cue_spans.append((figure.start, figure.end))
        return
    at = _device(draft, figure)
    if at is not None and draft.phrases[at].meaning not in SWITCHES:
        _load(draft, figure, at, "VA")
    elif len(figure.amounts) > 1 or _or_near(draft, figure):
        figure.done = True  # "40 or 75?" is a question, no nameplate
        draft.cue_spans.append((figure.start, figure.end))
    elif at is None:
        coil = next(
            (s for s in draft.sites.values() if s.name in {"coil", "load"} and draft.clause[s.at] == draft.clause[figure.at]),
            None,
        )
        if coil is not None and coil.name == "load":
            draft.unread.append((draft.phrases[coil.at].start, figure.end))
            figure.done = True
            return
        if coil is not None:
            _add_load(draft, figure, _coil_device(draft.phrases[coil.at].start, draft, coil.at), 1, "VA")
            return
        if draft.kind(figure.at - 1) == "unknown" and draft.clause[figure.at - 1] == draft.clause[figure.at]:
            figure.done = True  # a device that we don't know is no rating
            draft.unread.append((draft.phrases[figure.at - 1].start, figure.end))
            return
        draft.fact(figure, Fact(fact="rated_va", value=figure.value, unit="VA"))


def _coil_device(_start: int, draft: Draft, at: int) -> str:
    phrase = draft.phrases[at]
    words = draft.text[phrase.start : phrase.end].lower()
    return "relay" if "rel" in words else "reversing valve" if "valve" in words or "válv" in words else "contactor"


def _or_near(draft: Draft, figure: Figure) -> bool:
    return any(
        draft.kind(i) == "or" or (draft.kind(i) == "filler" and draft.phrases[i].text == "o")
        for i in (figure.at - 1, figure.at + 1, figure.at - 2)
    )


def _is_sum(draft: Draft, figure: Figure) -> bool:
    """In "= 15va total": the writer's own sum."""
    sides = (figure.at - 1, figure.at - 2, figure.at + 1, figure.at + 2)
    near = [draft.kind(i) for i in sides if 0 <= i < len(draft.phrases) and draft.clause[i] == draft.clause[figure.at]]
    if "total" in near:
        return True
    loads_before = any(f.fact == "load" for _, f in draft.facts)
    before = draft.phrases[figure.at - 1] if figure.at else None
    return before is not None and before.kind == "is" and before.text in {"=", "equals"} and loads_before


def _load(draft: Draft, figure: Figure, at: int, unit: str) -> None:
    draft.sites[at].used += 1
    _add_load(draft, figure, draft.phrases[at].meaning, _count(draft, figure, at), unit, at)


def _add_load(draft: Draft, figure: Figure, device: str, count: int, unit: str, at: int | None = None) -> None:
    figure.done = True
    if (
        unit == "VA" and MOST_STEADY_VA < figure.value <= MOST_DEVICE_VA
    ):  # zero, less, and thousands core refuses by their limits
        question = say(
            "{device} at {value:g} VA steady is more than a 24 V coil takes. What does its label say?",
            device=device,
            value=figure.value,
        )
        draft.unclear.append(Unclear(fragment=draft.fragment(figure.start, figure.end), choices=("load",), question=question))
        return
    inrush = next(
        (
            float(p.text.split()[1])
            for p in draft.phrases[figure.at : figure.at + 6]
            if p.kind == "inrush" and " " in p.text and p.text.split()[1][0].isdigit()
        ),
        None,
    )
    load = Fact(fact="load", device=device, count=count, value=figure.value, unit=unit, inrush=inrush)
    draft.facts.append((at if at is not None else figure.at, load))


def _count(draft: Draft, figure: Figure, at: int) -> int:
    """How many: the number right before the device, or before "2 8VA contactors", or behind "contactor x2"."""
    for here in (at - 1, figure.at - 1):
        candidate = draft.figure_at(here)
        if candidate is not None and candidate is not figure and _whole(candidate) and not candidate.done:
            candidate.done = True
            return int(candidate.value)
        if draft.kind(here) == "filler" and draft.phrases[here].text in {"x", "of", "de"}:
            candidate = draft.figure_at(here - 1)
            if candidate is not None and candidate is not figure and _whole(candidate) and not candidate.done:
                candidate.done = True
                return int(candidate.value)
    if len(figure.amounts) == 2 and figure.joins[0] == "x":
        return int(figure.amounts[0].value)
    behind = draft.figure_at(at + 2)
    if (
        draft.kind(at + 1) == "filler"
        and draft.phrases[at + 1].text == "x"
        and behind is not None
        and behind is not figure
        and _whole(behind)
    ):
        behind.done = True
        return int(behind.value)
    return 2 if draft.kind(at - 1) == "both" else 1


def _whole(figure: Figure) -> bool:
    return (
        figure.kind == "amount"
        and figure.unit is None
        and len(figure.amounts) == 1
        and figure.value == int(figure.value)
        and 0 < figure.value <= MOST_OF_A_KIND
    )


def _amps(draft: Draft, figure: Figure) -> None:
    """In "the gas valve draws .4 amp": a load; contact ratings and other trades' amps are none."""
    if any(draft.kind(i) == "rating" for i in range(max(0, figure.at - 2), figure.at + 2)):
        figure.done = True
        draft.cue_spans.append((figure.start, figure.end))
        return
    at = _device(draft, figure)
    if at is None or draft.phrases[at].meaning in SWITCHES or figure.value > 10:
        return
    nearer = any(
        s.kind in {"place", "notours"} and min(at, figure.at) < s.at < max(at, figure.at) for s in draft.sites.values()
    )
    place_right = any(
        s.kind == "place" and s.name in {"secondary", "primary"} and draft.clause[s.at] == draft.clause[figure.at]
        for s in draft.sites.values()
    )
    if not nearer and not place_right:
        _load(draft, figure, at, "A")


def _bare_in_list(draft: Draft) -> None:
    """In "contactor 9 va, relay 3": a bare number behind a device in a list of volt-amperes."""
    if not any(f.fact == "load" and f.unit == "VA" for _, f in draft.facts):
        return
    for figure in open_amounts(draft):
        before = figure.at - 1
        while draft.kind(before) in {"is", "at", "colon", "reads"}:
            before -= 1
        if (
            figure.unit is None
            and len(figure.amounts) == 1
            and draft.kind(before) == "device"
            and draft.kind(figure.at + 1) not in {"device", "ends"}
            and draft.sites[before].used == 0
            and draft.phrases[before].meaning not in SWITCHES
        ):
            _load(draft, figure, before, "VA")


def _without_figure(draft: Draft) -> None:
    """In "contactor 9va, gas valve, a board": a device that stands alone in a list of loads is one too, and its label is asked for."""
    if "size" not in draft.asks and not any(f.fact == "load" for _, f in draft.facts):
        return
    for at, site in list(draft.sites.items()):
        if site.kind != "device" or site.used or site.name in SWITCHES or draft.phrases[at].meaning not in DEVICE_LOADS:
            continue
        before, count = _counted_before(draft, at)
        if draft.kind(before) in LIST_ENDS and draft.kind(at + 1) in LIST_ENDS:
            site.used += 1
            if count is not None:
                count.done = True
            draft.facts.append(
                (at, Fact(fact="load", device=draft.phrases[at].meaning, count=int(count.value) if count else 1))
            )


def _counted_before(draft: Draft, at: int) -> tuple[int, Figure | None]:
    """What stands before a device, and the number of it, if there is one."""
    before, count = at - 1, draft.figure_at(at - 1)
    if count is not None and _whole(count) and not count.done:
        return before - 1, count
    if draft.kind(before) == "filler" and draft.phrases[before].text in ARTICLES:
        before -= 1
    return before, None


LIST_ENDS = frozenset({"comma", "and", "stop", "line", "colon", "sign", ""})
"""What stands on both sides of an item of a list."""


def _plate_volts(draft: Draft) -> None:
    """Volts beside a rating: the secondary at 24 or less, the supply from 100 up."""
    rated = [(at, f) for at, f in draft.facts if f.fact == "rated_va"]
    plate = bool(rated) or any(p.kind == "nameplate" for p in draft.phrases)
    for figure in open_amounts(draft):
        if figure.kind != "amount" or figure.unit not in {None, "V"}:
            continue
        if rated and _described(draft, figure):
            name = "rated_secondary_volts" if figure.value <= 24 else "supply_volts"
            draft.fact(figure, Fact(fact=name, value=figure.value, unit="V"))
            continue
        if (
            figure.unit == "V"
            and figure.value in {12.0, 16.0, 18.0, 24.0}
            and rated
            and draft.told("nameplate_taps") is not None
        ):
            draft.fact(figure, Fact(fact="rated_secondary_volts", value=figure.value, unit="V"))
            continue
        near = any(abs(at - figure.at) <= 3 and draft.sentence[at] == draft.sentence[figure.at] for at, _ in rated)
        transformer = any(draft.kind(i) == "transformer" for i in (figure.at + 1, figure.at + 2))
        values = [a.value for a in figure.amounts]
        if (
            volts(figure)
            and (figure.value in NOMINAL_V or figure.value in {12.0, 16.0, 18.0, 24.0})
            and _under_plate(draft, figure)
        ):
            name = "rated_secondary_volts" if figure.value <= 24 else "supply_volts"
            draft.fact(figure, Fact(fact=name, value=figure.value, unit="V"))
        elif (
            len(values) == 2
            and figure.joins[0] in {"/", "to", "-", "a"}
            and values[0] in NOMINAL_V
            and values[1] == 24.0
            and (plate or transformer)
        ):
            draft.fact(figure, Fact(fact="supply_volts", value=values[0], unit="V"))
            draft.fact(figure, Fact(fact="rated_secondary_volts", value=24.0, unit="V"))
        elif volts(figure) and (
            (near and _beside_rating(draft, figure))
            or (
                transformer
                and figure.unit == "V"
                and figure.value in {12.0, 16.0, 24.0}
                and figure.at + 1 < len(draft.phrases)
                and draft.kind(figure.at + 1) == "transformer"
            )
        ):
            if 0 < figure.value <= 24:
                draft.fact(figure, Fact(fact="rated_secondary_volts", value=figure.value, unit="V"))
            elif figure.value in NOMINAL_V and figure.unit == "V":
                draft.fact(figure, Fact(fact="supply_volts", value=figure.value, unit="V"))


def _described(draft: Draft, figure: Figure) -> bool:
    """In "a 40VA with 120 primary and 24 secondary": nominal volts right before their winding, both of them, and nothing measured."""
    if any(p.kind == "reads" for p in draft.phrases):
        return False
    pairs = [
        (f.value, draft.sites[f.at + 1].name)
        for f in draft.around(figure.at)
        if volts(f) and f.at + 1 in draft.sites and draft.sites[f.at + 1].kind == "place"
    ]
    mine = (figure.value, draft.sites[figure.at + 1].name) if figure.at + 1 in draft.sites else None
    nominal = all(
        (name == "primary" and value in NOMINAL_V) or (name == "secondary" and value == 24.0) for value, name in pairs
    )
    return (
        mine in pairs
        and nominal
        and (
            mine[1] == "secondary"
            or any(n == "secondary" for _, n in pairs)
            or any(f.fact == "rated_secondary_volts" for _, f in draft.facts)
        )
    )


def _under_plate(draft: Draft, figure: Figure) -> bool:
    """In "nameplate says 40 VA 24 volts 120 primary": in one sentence behind the word, and nothing measured between."""
    plate = next((i for i in range(figure.at - 1, max(-1, figure.at - 10), -1) if draft.kind(i) == "nameplate"), None)
    named = next((i for i in range(figure.at - 1, max(-1, figure.at - 4), -1) if draft.kind(i) not in {"is", "filler"}), None)
    if named is not None and draft.kind(named) == "ends" and any(e.kind != "place" for e in draft.phrases[named].ends):
        return False  # "red is 240" tells of a lead
    return (
        plate is not None
        and draft.sentence[plate] == draft.sentence[figure.at]
        and not any(draft.kind(i) == "reads" for i in range(plate, figure.at))
    )


def _beside_rating(draft: Draft, figure: Figure) -> bool:
    """No place and no measuring word between the volts and the rating."""
    at = next(at for at, f in draft.facts if f.fact == "rated_va")
    span = range(min(at, figure.at) + 1, max(at, figure.at))
    if any(i in draft.sites and draft.sites[i].kind != "notours" and draft.sites[i].name != "secondary" for i in span):
        return False
    return figure.unit == "V" or figure.value in {24.0, 12.0, 16.0}


def sizes_asked(draft: Draft) -> None:
    """In "a 40 or 75?": sizes in a question are no rating."""
    if "size" in draft.asks:
        for figure in open_amounts(draft):
            if figure.unit is None and len(figure.amounts) == 2 and figure.joins[0] in {"or", "o"}:
                figure.done = True
                draft.cue_spans.append((figure.start, figure.end))


def _counted(draft: Draft, figure: Figure) -> bool:
    """A small whole number before an ordinary noun: "3 times", "two guys"."""
    behind = draft.phrases[min(figure.at + 1, len(draft.phrases) - 1)]
    if behind.kind == "ends" and draft.text[behind.start : behind.end].lower() in {"fuses", "fusibles", "coils", "bobinas"}:
        return True
    english = behind.kind == "filler" and behind.language == "en" and behind.text.isalpha() and len(behind.text) > 1
    return english and figure.value <= 12 and behind.text not in FOLLOWS


FOLLOWS = frozenset(
    {
        "on", "at", "across", "in", "and", "to", "from", "between", "with", "when", "now", "here", "there", "but", "still", "while", "after", "before", "both", "only", "again", "though", "so", "then", "is", "i", "it", "which", "that", "this", "too", "also", "just", "steady", "solid", "even", "right", "back", "or", "my", "me", "we", "you", "not", "no", "off", "over", "under", "by", "for", "because", "once", "ok", "if",
    }
)  # fmt: skip
"""Ordinary words that may stand behind a reading; behind a small whole number any other is what was counted."""


def _counts(draft: Draft) -> None:
    """A number of things: "26 stops", "2 contactors": kept in the log."""
    for figure in open_amounts(draft):
        if (
            figure.unit is None
            and len(figure.amounts) == 1
            and (draft.kind(figure.at + 1) in {"device", "transformer", "unknown", "leadword"} or _counted(draft, figure))
            and _whole(figure)
        ):
            figure.done = True
            draft.cue_spans.append((figure.start, figure.end))
