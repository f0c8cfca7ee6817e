"""Devices that are told without a figure: each is a load whose label is asked for."""

from core.readings import Fact
from core.standards.device_loads import DEVICE_LOADS
from grammar.binding.counts import whole
from grammar.binding.draft import Draft, Figure
from grammar.binding.told import NOMINAL_V
from grammar.words.devices import SWITCHES

ARTICLES = frozenset({"a", "an", "un", "una", "one", "the", "another", "el", "la", "otro", "otra"})
LEADS_IN = frozenset({
    "trae", "tiene", "need", "for", "para", "with", "con", "got", "has", "have", "tengo", "lleva", "plus", "mas",
    "run", "feed", "power", "handle", "carry", "drive", "hold", "take", "aguanta", "alimenta",
})  # fmt: skip
"""Words before the first item of a list."""
HOW_MANY = frozenset({"many", "cuantos", "cuantas"})
LIST_ENDS = frozenset({"comma", "and", "stop", "line", "colon", "sign", ""})
"""What stands on both sides of an item of a list."""
OF_A_LIST = LIST_ENDS | {"device", "both"}
"""Kinds of phrases that a bare list of devices is made of, beside its counts and articles."""


def bare_devices(draft: Draft) -> None:
    """In "contactor 9va, gas valve, a board" and "two contactors": a device that stands alone in a list of loads is one too."""
    lists = any(f.fact == "load" for _, f in draft.facts)
    goes_on = len(draft.phrases) <= 3 and draft.context.asked is None and any(f.fact == "load" for f in draft.context.facts)
    rated = draft.told("rated_va") is not None  # "6 zone valves, 40va"
    nothing_else = _is_a_bare_list(draft)
    if not ("size" in draft.asks or lists or goes_on or rated or nothing_else):
        return
    for at, site in list(draft.sites.items()):
        if site.kind != "device" or site.used or site.name in SWITCHES or draft.phrases[at].meaning not in DEVICE_LOADS:
            continue
        before, count = _counted_before(draft, at)
        if not (lists or goes_on or nothing_else or "size" in draft.asks) and count is None:
            continue
        if "capacity" in draft.topics and count is None and draft.phrases[at - 1].text in HOW_MANY:
            site.used += 1
            draft.asked_device = draft.phrases[at].meaning
            continue
        if draft.kind(before) in LIST_ENDS and _ends_item(draft, at + 1):
            site.used += 1
            if count is not None:
                count.done = True
            number = int(count.value) if count else 2 if draft.kind(at - 1) == "both" else 1
            draft.facts.append((at, Fact(fact="load", device=draft.phrases[at].meaning, count=number)))


ASKS_BEHIND = frozenset({
    "what", "which", "how", "que", "cual", "de", "cuantos", "need", "necesito", "ocupo", "please", "porfa", "por", "total", "only", "thats", "that's", "will", "can", "is", "does", "do", "no",
})  # fmt: skip
"""Words behind the last item of a list that ask, or end it."""


def _ends_item(draft: Draft, at: int) -> bool:
    """In "board, stat what size" and "a board and a stat on a 40va": the list ends, and goes on as a question."""
    if draft.kind(at) in LIST_ENDS:
        return True
    if draft.kind(at) in {"filler", "is", "no", "between"} and "size" in draft.asks and draft.phrases[at].text in ASKS_BEHIND:
        return True
    figures = (draft.figure_at(i) for i in (at + 1, at + 2))
    return draft.kind(at) == "at" and any(f is not None and f.unit == "VA" for f in figures)


def _is_a_bare_list(draft: Draft) -> bool:
    """In "two contactors" and "board, contactor, stat": devices and how many, and nothing that could be about one of them."""
    told = draft.context.said_before and _is_led_in(draft)
    if (draft.context.asked is not None and not told) or draft.asks:
        return False
    colons = [at for at, phrase in enumerate(draft.phrases) if phrase.kind == "colon"]
    first = (
        colons[-1] + 1 if colons and not any(f.at < colons[-1] for f in draft.figures) else 0
    )  # "for a heat pump: contactor, stat"
    devices = [at for at in range(first, len(draft.phrases)) if draft.kind(at) == "device"]
    if any(draft.phrases[at].meaning in SWITCHES for at in devices):
        return False
    for at, phrase in enumerate(draft.phrases):
        if at < first:
            continue
        figure = draft.figure_at(at)
        counts = figure is not None and ((whole(figure) and draft.kind(at + 1) in {"device", "amounts"}) or figure.done)
        if told and at < devices[0] and (phrase.kind in {"reads", "filler", "is", "at", "colon", "with"} and figure is None):
            continue
        article = phrase.kind == "filler" and phrase.text in ARTICLES | {"and", "plus", "y"}
        if phrase.kind not in OF_A_LIST and not counts and not article:
            return False
    return len(devices) > 1 or any(draft.kind(at - 1) == "both" or draft.figure_at(at - 1) is not None for at in devices)


LED_IN = frozenset({"whats", "what's", "on", "it", "trae", "tiene", "has", "got", "have", "lleva", "alimenta", "carga", "cuelgan", "feeds", "runs", "its", "theres", "there", "there's", "is", "hay", "hangs", "hanging", "connected", "i", "we", "we've", "ive"})  # fmt: skip
"""Words before a list of what hangs on the transformer."""


def _is_led_in(draft: Draft) -> bool:
    """In "whats on it: 2 contactors and a board", "trae 2 contactores": a list, whatever was asked for."""
    first = next((at for at in range(len(draft.phrases)) if draft.kind(at) == "device"), 0)
    before = {word for p in draft.phrases[:first] if p.kind not in {"amounts", "colon", "stop"} for word in p.text.split()}
    return bool(before) and before <= LED_IN | ARTICLES


def made_for(draft: Draft) -> None:
    """In "contactor 24v coil" and "2 24v contactors": nominal volts, and no reading."""
    if draft.context.asked is not None or draft.context.readings or any(p.kind == "reads" for p in draft.phrases):
        return
    for figure in list(draft.figures):
        if _is_made_for(draft, figure):
            figure.done = True
            draft.cue_spans.append((figure.start, figure.end))
        elif _is_of_a_coil(draft, figure):
            _coil_of_a_device(draft, figure)


def _is_of_a_coil(draft: Draft, figure: Figure) -> bool:
    nominal = figure.kind == "amount" and figure.unit == "V" and figure.value in {24.0, *NOMINAL_V} and not figure.done
    coil = draft.sites.get(figure.at + 1)
    return nominal and coil is not None and coil.name == "coil" and _device_before(draft, figure.at) is not None


def _device_before(draft: Draft, at: int) -> int | None:
    """In "contactor 24v coil" and "contactor with a 24v coil"."""
    at -= 1
    while draft.kind(at) in {"with", "filler"} and draft.phrases[at].text in {"with", "w", "a", "con", "de", "its", "has"}:
        at -= 1
    return at if draft.kind(at) == "device" and draft.phrases[at].meaning in DEVICE_LOADS else None


def _coil_of_a_device(draft: Draft, figure: Figure) -> None:
    """The device is a load, unless its VA are told too."""
    at, coil = _device_before(draft, figure.at), draft.sites[figure.at + 1]
    figure.done = True
    coil.used += 1
    draft.cue_spans.append((figure.start, draft.phrases[coil.at].end))
    told_va = any(f.unit in {"VA", "A", "W"} for f in draft.around(figure.at) if f.at > figure.at)
    if at is None or draft.sites[at].used or told_va:
        return
    draft.sites[at].used += 1
    _, count = _counted_before(draft, at)
    if count is not None:
        count.done = True
    draft.facts.append((at, Fact(fact="load", device=draft.phrases[at].meaning, count=int(count.value) if count else 1)))


def _is_made_for(draft: Draft, figure: Figure) -> bool:
    """In "2 24v contactors": the nominal volts of devices that are counted."""
    nominal = figure.kind == "amount" and figure.unit == "V" and figure.value in {24.0, *NOMINAL_V} and not figure.done
    count = draft.figure_at(figure.at - 1)
    return nominal and draft.kind(figure.at + 1) == "device" and count is not None and whole(count)


def _counted_before(draft: Draft, at: int) -> tuple[int, Figure | None]:
    """What stands before a device, and the number of it, if there is one."""
    if (made_for := draft.figure_at(at - 1)) is not None and made_for.unit == "V" and made_for.done:
        at -= 1
    before, count = at - 1, draft.figure_at(at - 1)
    if count is not None and whole(count) and not count.done:
        first = before - 1
        if draft.kind(first) == "filler" and draft.phrases[first].text in ARTICLES:  # "a dozen dampers"
            first -= 1
        return -1 if first >= 0 and draft.phrases[first].text in LEADS_IN else first, count
    if draft.kind(before) in {"filler", "both"} and draft.phrases[before].text in ARTICLES | {"both", "ambos", "ambas"}:
        before -= 1
    if before >= 0 and draft.phrases[before].text in LEADS_IN:
        return -1, None
    return before, None
