"""What an order takes out of what stands: "delete the primary reading", "scratch the 24.6", "quita el secundario"."""

from core.measures import MEASURES
from grammar.binding.draft import Draft, Figure, Site
from grammar.binding.places import MEASURE_AT

VERBS = frozenset({
    "nvm", "nevermind", "yank", "pull", "nuke",
    "delete", "remove", "erase", "drop", "scratch", "forget", "undo", "cancel", "disregard", "ignore", "scrap", "toss", "dump", "kill", "nix", "strike", "clear", "retract",
    "borra", "borrar", "quita", "quitar", "elimina", "eliminar", "olvida", "ignora", "cancela", "descarta", "anula", "tacha",
})  # fmt: skip
BEFORE = frozenset(
    {
        "please",
        "can",
        "you",
        "could",
        "just",
        "ok",
        "pls",
        "por",
        "favor",
        "no",
        "nvm",
        "sorry",
        "hey",
        "lets",
        "oye",
        "go",
        "ahead",
        "and",
        "puedes",
        "me",
    }
)
"""Words that may stand before the order."""
NOUNS = frozenset({
    "the", "that", "my", "last", "reading", "readings", "value", "number", "measurement", "i", "sent", "gave", "you", "entry", "one", "from", "out", "please", "was", "is", "wrong", "for", "its", "it", "on", "across", "of",
    "el", "la", "los", "las", "lectura", "lecturas", "del", "de", "valor", "numero", "ese", "esa", "mi", "ultimo", "ultima", "que", "mande", "te", "di", "esta", "mal",
})  # fmt: skip
"""Words that may stand beside what is taken out."""
UNITS = {"volt": "V", "ohm": "ohm", "amp": "A"}
WRONG = frozenset(
    {
        "was wrong",
        "is wrong",
        "thats wrong",
        "not right",
        "was a typo",
        "is a typo",
        "was off",
        "was a mistake",
        "estaba mal",
        "esta equivocado",
        "estuvo mal",
        "wrong",
    }
)


def taken_out(draft: Draft) -> bool:
    """Fills what is withdrawn; True where the message is such an order and nothing else."""
    if undoes(draft) is not None:
        for row in draft.figures:  # the "two" of "undo the last two" answers nothing
            row.done = row.done or (row.unit is None and row.value <= MOST_UNDONE)
        return False
    named = _ordered(draft) or _called_wrong(draft)
    if named is None:
        return False
    site, figure, unit = named
    places = list(MEASURE_AT.get(site.name, {}).values()) if site is not None else []
    standing = [
        reading.measure
        for reading in draft.context.readings
        if (figure is None or reading.value == figure.value)
        and (site is None or _at(reading.measure, site.name))
        and (unit is None or MEASURES[reading.measure].unit == unit)
    ]
    if not standing and not places:  # a value that nobody sent: told as unread, and nothing else is taken back for it
        draft.asks = []
        draft.unread += [(row.start, row.end) for row in draft.figures if row.kind == "amount"]
        for row in draft.figures:
            row.done = True
        return True
    draft.asks = ["undo"]
    draft.withdrawn += list(dict.fromkeys(standing)) or places
    for row in draft.figures:
        row.done = True
    draft.sites.clear()
    return True


TWO = frozenset({"both", "twice", "ambos", "ambas", "dos veces"})
MOST_UNDONE = 20


def undoes(draft: Draft) -> int | None:
    """How many messages to take back in "undo the last two", "undo both", "undo undo"; None for the last alone."""
    if "undo" not in draft.asks or draft.withdrawn:
        return None
    words = [p.text for p in draft.parsed.words]
    if set(words) & TWO:
        return 2
    told = [int(p.meaning) for p in draft.parsed.words if p.meaning.isdecimal() and p.text not in {"un", "una", "one", "a"}]
    counted = told[0] if len(told) == 1 else words.count("undo")
    return counted if 1 < counted <= MOST_UNDONE else None


def _at(measure: str, place: str) -> bool:
    """A measure is taken at a place, whatever its state: volts of a secondary lifted or not."""
    return any(measure in {named, f"{named}_lifted"} for named in MEASURE_AT.get(place, {}).values())


Named = tuple[Site | None, Figure | None, str | None]


def _ordered(draft: Draft) -> Named | None:
    """The order and what stands behind it: one place, one value, or a unit with either."""
    at = 0
    while at < len(draft.phrases) and draft.phrases[at].text in BEFORE:
        at += 1
    if at >= len(draft.phrases) or draft.phrases[at].text.split(" ")[0] not in VERBS or len(draft.phrases) - at > 10:
        return None
    return None if _paused_before_a_value(draft, at + 1) else _only_named(draft, at + 1)


def _paused_before_a_value(draft: Draft, begin: int) -> bool:
    """In "undo that, sec 24.6": what is taken out ends with the pause, and what follows is new."""
    pause = next((i for i in range(begin, len(draft.phrases)) if draft.kind(i) in {"comma", "stop", "line"}), None)
    if pause is None or not all(draft.phrases[i].text in NOUNS for i in range(begin, pause)):
        return False
    return any(f.at > pause and f.kind == "amount" for f in draft.figures) and any(at > pause for at in draft.sites)


def _called_wrong(draft: Draft) -> Named | None:
    """In "that 24.6 was wrong", with nothing in its place."""
    wrong = next((at for at, p in enumerate(draft.phrases) if p.kind == "replace" and p.text in WRONG), None)
    if wrong is None or len(draft.phrases) > 8:
        return None
    site, figure, unit = _only_named(draft, 0) or (None, None, None)
    return (None, figure, unit) if site is None and figure is not None and figure.at < wrong else None


def _only_named(draft: Draft, begin: int) -> Named | None:
    sites = [s for at, s in draft.sites.items() if at >= begin and s.kind == "place"]
    figures = [f for f in draft.figures if f.at >= begin and f.kind == "amount"]
    rest = [
        p
        for p in draft.phrases[begin:]
        if p.kind not in {"ends", "amounts", "alone", "stop", "comma", "replace", "at"} and p.text not in NOUNS
    ]
    if rest or len(sites) > 1 or len(figures) > 1 or not (sites or figures):
        return None
    units = [UNITS[p.meaning] for p in draft.phrases[begin:] if p.kind == "alone" and p.meaning in UNITS]
    figure = figures[0] if figures else None
    unit = units[0] if units else figure.unit if figure is not None else None
    return sites[0] if sites else None, figure, unit
