"""Volt-amperes and amps of devices, and the rating of the transformer."""

from core.readings import Fact
from core.standards.device_loads import DEVICE_LOADS
from core.standards.transformer_ratings import SIZES_VA
from grammar.binding.add_load import add_load, load_of
from grammar.binding.bare_devices import bare_devices, made_for
from grammar.binding.counts import counts, of_them, whole
from grammar.binding.draft import Draft, Figure
from grammar.binding.how_many import dozens, is_times
from grammar.binding.inrush import behind_inrush, inrush, is_taken
from grammar.binding.plate import plate_volts, sizes_asked
from grammar.binding.told import NOMINAL_V, open_amounts
from grammar.binding.unknown_loads import unknown_loads
from grammar.words.devices import COILS, SWITCHES

LEAST_RATED_VA = 20.0
"""Smallest control transformer of the trade. [VA]"""


def loads(draft: Draft) -> None:
    """Loads and ratings of the message."""
    dozens(draft)
    made_for(draft)
    inrush(draft)
    sums: list[Figure] = []
    for figure in open_amounts(draft):
        if figure.unit in {"VA", "W"}:
            _volt_amperes(draft, figure, sums)
        elif figure.unit == "A":
            _amps(draft, figure)
    _bare_in_list(draft)
    bare_devices(draft)
    unknown_loads(draft)
    _totals(draft, sums)
    _nominal_of_a_device(draft)
    plate_volts(draft)
    sizes_asked(draft)
    of_them(draft)
    counts(draft)


NO_BRIDGE = frozenset(
    {
        "and", "y", "plus", "mas", "n", "e", "then", "enough", "ok", "okay", "plenty", "good", "carry", "handle", "run", "do", "work",
        "power", "feed", "hold", "cover", "big enough", "suficiente", "alcanza", "aguanta", "sirve", "basta",
    }
)  # fmt: skip
"""Behind one of these the device is another thing than the figure: "is 40va enough for a contactor 10va"."""


def _device(draft: Draft, figure: Figure) -> int | None:
    """The device that a figure belongs to: the one right behind it, or the nearest free one before it in the sentence."""
    at = behind_inrush(draft, figure.at + 1)
    over = at > figure.at + 1
    while draft.kind(at) in {"filler", "each", "at", "sealed", "alone"} and draft.phrases[at].text not in NO_BRIDGE:
        at += 1
    right = at if draft.kind(at) == "device" and (over or draft.clause[at] == draft.clause[figure.at]) else None
    left = None
    for here in range(figure.at - 1, -1, -1):
        kind = draft.kind(here)
        if kind == "line" and here == figure.at - 1 and draft.kind(figure.at + 1) == "each":
            continue  # "6 zone valves / 0.3 amps each"
        if kind in {"stop", "line", "transformer"} or (
            kind == "amounts" and draft.figure_at(here) is not None and _is_value(draft, here) and not is_taken(draft, here)
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
    """Only small words between a device and its figure, so that it is not the next device's; its inrush may stand between."""
    return all(
        (
            draft.kind(i) in {"filler", "is", "at", "colon", "reads", "each", "between", "sign", "inrush"}
            and draft.phrases[i].text not in {"and", "plus"}
        )
        or is_taken(draft, i)
        or is_times(draft, i)
        for i in range(one + 1, other)
    )


def _is_value(draft: Draft, at: int) -> bool:
    figure = draft.figure_at(at)
    return figure is not None and not figure.withdrawn and figure.unit == "VA" and at + 1 < len(draft.phrases)


def _volt_amperes(draft: Draft, figure: Figure, sums: list[Figure]) -> None:
    if _is_sum(draft, figure):
        figure.done = True
        draft.cue_spans.append((figure.start, figure.end))
        sums.append(figure)
        return
    at = _device(draft, figure)
    if at is not None and draft.phrases[at].meaning in SWITCHES:
        at = None
    called = CALLED.get(draft.phrases[figure.at - 1].text) if figure.at else None
    if at is not None and called is None and _is_size_apart(draft, figure, at):
        at = None
    if called is not None:
        draft.phrases[figure.at - 1].kind = "filler"
        add_load(draft, figure, called, _number_of(draft, figure.at - 2), "VA")
    elif at is not None:
        load_of(draft, figure, at, "VA")
    elif len(figure.amounts) > 1 or _or_near(draft, figure):
        figure.done = True  # "40 or 75?" is a question, no nameplate
        draft.cue_spans.append((figure.start, figure.end))
    else:
        _without_a_device(draft, figure, sums)


def _without_a_device(draft: Draft, figure: Figure, sums: list[Figure]) -> None:
    """Volt-amperes of a coil, of the whole load, or of the transformer."""
    before = figure.at - 1
    while draft.kind(before) in {"is", "between", "reads", "filler"} and draft.phrases[before].text not in {
        "and",
        "y",
        "for",
        "para",
    }:
        before -= 1
    if draft.kind(before) == "transformer" and before < figure.at - 1:  # "el transformador es de 40 VA y la bobina ..."
        _of_the_transformer(draft, figure)
        return
    if draft.kind(figure.at + 1) == "transformer":  # "load is 140va can i use a 150va transformer"
        _of_the_transformer(draft, figure)
        return
    coil = next(
        (s for s in draft.sites.values() if s.name in {"coil", "load"} and draft.clause[s.at] == draft.clause[figure.at]),
        None,
    )
    if coil is not None and coil.name == "load":
        figure.done = True
        coil.used += 1
        sums.append(figure)
        return
    owner = None if coil is None else _owner_of(draft, coil.at)
    if owner is not None:  # "4 relays, coils 2.5va each"
        load_of(draft, figure, owner, "VA")
        return
    if coil is not None:
        add_load(draft, figure, _coil_device(draft.phrases[coil.at].start, draft, coil.at), 1, "VA")
        return
    _of_the_transformer(draft, figure)


def _of_the_transformer(draft: Draft, figure: Figure) -> None:
    """The rating, where nothing else is named that the figure could be of."""
    if draft.kind(figure.at - 1) in {"unknown", "notours"} and draft.clause[figure.at - 1] == draft.clause[figure.at]:
        figure.done = True  # a device that we don't know is no rating
        draft.unread.append((draft.phrases[figure.at - 1].start, figure.end))
        return
    behind = [p.text for p in draft.phrases[figure.at + 1 : figure.at + 3]]
    if behind[:1] == ["of"] and behind[-1].startswith("load"):
        add_load(draft, figure, "load", 1, "VA")  # "34 VA of load connected"
        return
    if _at_the_end_of_a_run(draft, figure):
        add_load(draft, figure, "load", 1, "VA")
        draft.asks += [] if draft.asks else ["wire_run"]
        return
    owner = _of_each(draft, figure)
    if owner is not None:  # "6 zone valves, 40va, each is 7va"
        load_of(draft, figure, owner, "VA")
        return
    if draft.kind(figure.at + 1) == "each" and figure.value < LEAST_RATED_VA:
        figure.done = True  # of a device whose name was not read
        draft.unread.append((figure.start, draft.phrases[figure.at + 1].end))
        return
    number = draft.figure_at(figure.at - 1)
    if number is not None and whole(number) and not number.done:  # "2 40va in parallel"
        number.done = True
        draft.cue_spans.append((number.start, number.end))
    if figure.value < LEAST_RATED_VA and any(f.fact == "load" for _, f in draft.facts):
        figure.done = True  # in a list of loads so few VA are a device that we don't know
        draft.unread.append((draft.phrases[max(0, figure.at - 1)].start, figure.end))
        return
    draft.fact(figure, Fact(fact="rated_va", value=figure.value, unit="VA"))


def _of_each(draft: Draft, figure: Figure) -> int | None:
    """The device that "each is 7va" and "7va each" speak of, in the sentence before it."""
    near = {draft.kind(figure.at + 1), *(draft.kind(i) for i in (figure.at - 1, figure.at - 2, figure.at - 3) if i >= 0)}
    if "each" not in near:
        return None
    free = [at for at, site in draft.sites.items() if site.kind == "device" and not site.used and at < figure.at]
    same = [at for at in free if draft.sentence[at] == draft.sentence[figure.at] and draft.phrases[at].meaning not in SWITCHES]
    return max(same, default=None)


END_OF_A_RUN = frozenset({"with", "w", "at", "for", "carrying", "feeding", "pulling", "con", "para", "y"})


def _at_the_end_of_a_run(draft: Draft, figure: Figure) -> bool:
    """In "150 ft of 18 with 20 va" and "20 va at the end of 90 ft of 20": what the wire feeds, where no transformer is spoken of."""
    about_wire = draft.told("run_feet") is not None or draft.told("wire_awg") is not None
    rated = {i for f in draft.figures if f.unit == "VA" and f is not figure for i in (f.at + 1, f.at + 2)}
    if not about_wire or any(p.kind in {"transformer", "nameplate"} and i not in rated for i, p in enumerate(draft.phrases)):
        return False
    before, behind = draft.phrases[figure.at - 1].text if figure.at else "", draft.phrases[figure.at + 1 : figure.at + 2]
    if figure.value < LEAST_RATED_VA:  # no transformer is so small
        return True
    return before in END_OF_A_RUN or bool(behind and behind[0].kind == "at")


def _is_size_apart(draft: Draft, figure: Figure, at: int) -> bool:
    """In "6 zone valves, 40va": a size of the trade behind a comma that is more than such a device draws is the transformer's."""
    row = DEVICE_LOADS.get(draft.phrases[at].meaning)
    if row is None or figure.value not in SIZES_VA or "sealed" in {draft.kind(figure.at - 1), draft.kind(figure.at + 1)}:
        return False
    # Behind a comma more than it draws is enough to tell; right beside it, more than three times that: "40va zone board".
    apart = draft.clause[at] != draft.clause[figure.at]
    return figure.value > (row.high_va if apart else 3.0 * row.high_va)


def _number_of(draft: Draft, at: int) -> int:
    """The count that stands at a phrase, else one."""
    count = draft.figure_at(at)
    if count is None or count.done or not whole(count):
        return 1
    count.done = True
    return int(count.value)


CALLED = {
    "valves": "zone valve", "valvulas": "zone valve",
    "defrost": "defrost board", "deshielo": "defrost board", "hum": "humidifier", "detector": "smoke detector", "pump": "condensate pump",
}  # fmt: skip
"""Words that are a device only where VA stand right behind them."""


def _totals(draft: Draft, sums: list[Figure]) -> None:
    """In "82 va load" and "total is 34 va": where no part of the load is told, its sum is the load."""
    if sums and not any(f.fact == "load" for _, f in draft.facts):
        figure = sums[-1]
        draft.facts.append((figure.at, Fact(fact="load", device="load", count=1, value=figure.value, unit="VA")))


def _owner_of(draft: Draft, at: int) -> int | None:
    """The device before a word for its coil, in the same sentence."""
    devices = [
        i for i in range(at - 1, max(-1, at - 10), -1) if draft.kind(i) == "device" and draft.sentence[i] == draft.sentence[at]
    ]
    owner = next((i for i in devices if draft.phrases[i].meaning in COILS), None)
    return owner if owner is not None and draft.sites[owner].used == 0 else None


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


def _amps(draft: Draft, figure: Figure) -> None:
    """In "the gas valve draws .4 amp": a load; contact ratings and other trades' amps are none."""
    of_contacts = draft.phrases[min(figure.at + 1, len(draft.phrases) - 1)].text in {
        "contacts",
        "contact",
        "contactos",
        "platinos",
    }
    if of_contacts or any(draft.kind(i) == "rating" for i in range(max(0, figure.at - 2), figure.at + 2)):
        figure.done = True
        draft.cue_spans.append((figure.start, figure.end))
        return
    if "prove" in draft.asks:
        return  # amps of a proof are those of the secondary
    at = _device(draft, figure)
    if at is None and (_ends_a_wire(draft, figure) or _asked_on_a_rating(draft, figure)):
        add_load(draft, figure, "load", 1, "A")
        draft.asks += ["wire_run"] if not draft.asks and _ends_a_wire(draft, figure) else []
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
        load_of(draft, figure, at, "A")


def _asked_on_a_rating(draft: Draft, figure: Figure) -> bool:
    """In "is 2.4 amps ok on a 75va": amps of the whole load, at no place of their own."""
    rated = draft.told("rated_va") is not None or any(f.unit == "VA" for f in draft.figures)
    placed = any(site.kind in {"place", "pair", "notours"} for site in draft.sites.values())
    asked = draft.kind(figure.at - 1) == "is" and any(p.kind == "novalue" for p in draft.phrases[figure.at : figure.at + 3])
    return rated and asked and not placed and 0 < figure.value <= 10


def _ends_a_wire(draft: Draft, figure: Figure) -> bool:
    """In "voltage drop 200 ft 20 awg 1 amp": amps in a message about a run, at no place of their own."""
    about_wire = draft.told("run_feet") is not None or draft.told("wire_awg") is not None or "wire_run" in draft.asks
    elsewhere = any(
        s.kind in {"place", "notours"} and draft.clause[s.at] == draft.clause[figure.at] for s in draft.sites.values()
    )
    return about_wire and not elsewhere and 0 < figure.value <= 10


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
            load_of(draft, figure, before, "VA")


def _nominal_of_a_device(draft: Draft) -> None:
    """In "a 24v damper 8va": what the device is made for, and no reading."""
    for figure in open_amounts(draft):
        at = figure.at + 1
        loaded = any(where in {at, figure.at - 1} and f.fact == "load" for where, f in draft.facts)
        kinds = {"device", "amounts"}  # "a 24v 50va load"
        if figure.unit == "V" and figure.value in {24.0, *NOMINAL_V} and kinds & {draft.kind(at)} and loaded:
            figure.done = True
            draft.cue_spans.append((figure.start, figure.end))
