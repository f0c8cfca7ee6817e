"""Conditions, each bound to the figure that it touches, and headings, each over the numbers that it covers."""

from grammar.binding.draft import Draft, Figure

WHOLE_LINE = frozenset({"dead", "live", "vivo", "muerto", "cold", "hot readings", "prendido", "apagado"})
"""Headings that are one only where a line or a message begins with them."""


def conditions(draft: Draft) -> None:
    """Gives figures their state."""
    _open_and_loaded(draft)
    for at, phrase in enumerate(draft.phrases):
        if phrase.text == "calling" and draft.phrases[min(at + 1, len(draft.phrases) - 1)].text in CALLED:
            continue
        if phrase.kind == "condition" and phrase.meaning in {"lifted", "loaded", "isolated"}:
            figure = _touched(draft, at)
            if figure is not None:
                figure.state = phrase.meaning


CALLED = frozenset({"you", "u", "him", "her", "them", "me", "the", "my", "back", "it", "in", "dispatch"})
"""Who is called, and no thermostat calls."""


def _open_and_loaded(draft: Draft) -> None:
    """In "sec 27.0 open, 24.1 loaded": an open circuit, and no open winding."""
    loaded = [at for at, p in enumerate(draft.phrases) if p.kind == "condition" and p.meaning == "loaded"]
    for word in draft.figures:  # "open sec 27.6"
        site, volts = draft.sites.get(word.at + 1), draft.figure_at(word.at + 2)
        told = volts is not None and volts.kind == "amount" and volts.unit in {None, "V"} and volts.value >= LEAST_OPEN_V
        if word.kind == "open" and site is not None and site.name == "secondary" and told and volts is not None:
            volts.state, word.done = "lifted", True
        site, volts = draft.sites.get(word.at - 1), draft.figure_at(word.at + 1)
        if word.kind == "open" and site is not None and site.name == "secondary" and volts is not None and _is_live_24(volts):
            volts.state, word.done = "lifted", True  # "sec open 27.6"
    for word in draft.figures:
        volts = draft.figure_at(word.at - 1)
        if word.kind != "open" or volts is None or volts.kind != "amount" or volts.unit not in {None, "V"}:
            continue
        if any(draft.sentence[at] == draft.sentence[word.at] and at > word.at for at in loaded) and volts.value >= LEAST_OPEN_V:
            volts.state, word.done = "lifted", True


def _is_live_24(figure: Figure) -> bool:
    return figure.kind == "amount" and figure.unit in {None, "V"} and LEAST_OPEN_V <= figure.value <= MOST_OPEN_V


MOST_OPEN_V = 32.0
"""Most that a 24 V secondary shows without a load. Common practice, no source. [V]"""
LEAST_OPEN_V = 18.0
"""Volts from which "open" behind them says how they were read. [V]"""


def _touched(draft: Draft, at: int) -> Figure | None:
    """The figure that a condition belongs to."""
    figures = [
        f for f in draft.around(at) if f.kind in {"amount", "nothing"} and f.unit in {None, "V", "A", "ohm"} and not f.withdrawn
    ]
    clause = draft.clause[at]
    here = [f for f in figures if draft.clause[f.at] == clause]
    left = next((f for f in reversed(here) if f.at < at), None)
    right = next((f for f in here if f.at > at), None)
    if right is not None and at in draft.sites:  # "secondary lifted 21.2"
        return right
    if left is not None and not (left.state is not None and right is not None):
        return left
    if right is not None:
        return right
    if here:
        return None
    sentence = [f for f in figures if draft.sentence[f.at] == draft.sentence[at]]
    before = next((f for f in reversed(sentence) if f.at < at and f.state is None), None)
    after = next((f for f in sentence if f.at > at), None)
    starts = not any(f.at < at for f in sentence)
    if starts and after is not None:
        return after
    return before


def flags(draft: Draft) -> tuple[bool, bool]:
    """(low impedance, still connected), as far as the message says it."""
    meanings = {p.meaning for p in draft.phrases if p.kind == "condition"}
    return "low_impedance" in meanings, "not_isolated" in meanings


HEADING_UNIT = {"live": "V", "dead": "ohm"}
UNIT_WORD = {
    "volt": "V",
    "millivolt": "V",
    "ohm": "ohm",
    "amp": "A",
    "milliamp": "A",
    "kiloohm": "ohm",
    "megaohm": "ohm",
    "volt_ampere": "VA",
}
SCALES = {"kiloohm": 1e3, "megaohm": 1e6, "milliamp": 1e-3, "millivolt": 1e-3}
"""What a unit word makes of the figures that it covers."""
MOST_HEADINGS = 12
"""Headings of one message that are looked at."""
BETWEEN_UNIT = frozenset(
    {"is", "reads", "at", "colon", "filler", "alone", "now", "was", "to", "replace", "between", "heading", "winding"}
)


def units(draft: Draft) -> None:
    """Gives bare figures the unit that a word or a heading says."""
    _voltage_of(draft)
    bare = [f for f in draft.figures if f.kind == "amount" and f.unit is None and not f.done]
    headings: list[tuple[int, str, float]] = []
    for at, phrase in enumerate(draft.phrases):
        if phrase.kind == "heading":
            draft.live = draft.live or phrase.meaning == "live"
            if _heads(draft, at):
                headings.append((at, HEADING_UNIT[phrase.meaning], 1.0))
        elif phrase.kind == "alone" and phrase.meaning in UNIT_WORD:
            unit = UNIT_WORD[phrase.meaning]
            if unit == "VA" and {"va_estimate", "size"} & set(draft.asks) and draft.kind(at + 1) != "colon":
                continue  # "what va is this, pri 19.5 sec 1.1"
            if not _local(draft, at, unit, phrase.meaning) and _heads_alone(draft, at):
                headings.append((at, unit, SCALES.get(phrase.meaning, 1.0)))
    for at, unit, scale in headings[:MOST_HEADINGS]:
        behind = [f for f in bare if f.at > at and f.unit is None]
        following = next((h[0] for h in headings if h[0] > at and h[1] != unit), len(draft.phrases))
        covered = [f for f in behind if f.at < following]
        if not behind and _of_its_clause(draft, at):
            covered = [f for f in bare if f.at < at and draft.clause[f.at] == draft.clause[at]]
            behind = covered or [f for f in bare if f.at < at]
        if not behind and not _begins_another(draft, at):
            begin = max((h[0] for h in headings if h[0] < at), default=-1)
            covered = [f for f in bare if begin < f.at < at and f.unit is None]
        for figure in covered:
            if not _is_count(draft, figure):
                figure.unit, figure.unit_from = unit, "heading"
                figure.value *= scale
    for figure in bare:  # "primary ohms 12.2, no 22.2"
        if figure.unit is None and figure.heir_of is not None and figure.heir_of.unit_from == "word":
            figure.unit, figure.unit_from = figure.heir_of.unit, "word"


def _begins_another(draft: Draft, at: int) -> bool:
    """In "pri 118 sec 0. power off primary 12 ohms": the power was switched for what follows, and not for what came before."""
    phrase = draft.phrases[at]
    if phrase.kind != "heading" or not set(phrase.text.split(" ")) & SWITCHED:
        return False
    own = any(f.at > at and f.kind in {"amount", "open"} for f in draft.around(at))
    before = any(p.kind == "ends" for p in draft.phrases[at + 1 : at + 5])
    return own and (before or not phrase.text.startswith(("all", "ohm out")))


SWITCHED = frozenset({"ohmed", "ohmd", "ohming", "ohm", "resistance", "resistances", "resistencia", "resistencias", "medido", "cold", "power", "powered", "energized", "killed", "corriente", "energizado", "desenergizado", "apagado", "prendido", "luz", "live", "dead"})  # fmt: skip
"""Words of headings that tell what was done to the power."""


def _voltage_of(draft: Draft) -> None:
    """In "ghost voltage 42 on the primary", "voltage is 24.2": the noun gives the number behind it its unit."""
    for at, phrase in enumerate(draft.phrases):
        if phrase.text not in {"voltage", "voltaje"}:
            continue
        step = _past(draft, at + 1)
        between = draft.kind(step) == "between" and draft.kind(step + 1) == "ends"  # "voltage from black to white is 121"
        begin, step = (step, _past(draft, step + 2)) if between else (at, step)
        figure = draft.figure_at(step)
        near = step - begin <= (3 if between else 2)
        if figure is not None and figure.kind == "amount" and figure.unit is None and not figure.done and near:
            figure.unit, figure.unit_from = "V", "word"


def _past(draft: Draft, step: int) -> int:
    """Over the verb behind a noun."""
    while draft.kind(step) in {"is", "reads", "colon"} or (
        step < len(draft.phrases) and draft.phrases[step].text in {"of", "de"}
    ):
        step += 1
    return step


def _of_its_clause(draft: Draft, at: int) -> bool:
    """In "sec 26.1, R-C 0, fuse OL on ohms": a heading behind the value of its clause, where other clauses speak of live volts."""
    phrase = draft.phrases[at]
    if (
        phrase.kind != "heading"
        or phrase.meaning != "dead"
        or "all" in phrase.text
        or "todo" in phrase.text
        or not _own_value(draft, at)
    ):
        return False
    others = [f for f in draft.around(at) if f.at < at and draft.clause[f.at] != draft.clause[at]]
    return any(f.kind == "amount" and f.unit in {None, "V"} and (21.5 <= f.value <= 32 or f.value >= 90) for f in others)


def _own_value(draft: Draft, at: int) -> bool:
    return any(f.at < at and draft.clause[f.at] == draft.clause[at] for f in draft.around(at))


def _is_count(draft: Draft, figure: Figure) -> bool:
    return draft.kind(figure.at + 1) == "device" and figure.value <= 20


def _heads(draft: Draft, at: int) -> bool:
    """True where the word heads a list: it begins its line or stands alone between separators."""
    phrase = draft.phrases[at]
    if _of_one_value(draft, at):
        return False
    if phrase.text not in WHOLE_LINE:
        return True
    if draft.kind(at + 1) in {"to", "transformer", "with", "and"}:
        return False  # "cold to the touch, 0 out"
    before, behind = draft.kind(at - 1), draft.kind(at + 1)
    return (
        before in {"", "line", "stop"}
        or (before in {"comma", "all"} and behind in {"comma", "", "line", "colon", "stop"})
        or behind == "colon"
    )


def _of_one_value(draft: Draft, at: int) -> bool:
    """In "fuse is open on ohms, sec 26" and "prim. resistance 27.5, sec reading 25": of the value that it touches, where more follows."""
    phrase = draft.phrases[at]
    more = [f for f in draft.around(at) if f.at > at and f.kind == "amount"]
    if phrase.text in ON_OHMS and draft.kind(at - 1) in {"amounts", "value"}:
        return bool(more)
    own = draft.figure_at(at + 1)
    single = phrase.text in {"resistance", "resistencia"} and draft.kind(at - 1) == "ends" and own is not None
    if single and own is not None and own.kind == "amount" and own.unit is None:
        own.unit, own.unit_from = "ohm", "word"
    return single


ON_OHMS = frozenset({"on ohms", "in ohms", "en ohms", "en ohmios"})


def _heads_alone(draft: Draft, at: int) -> bool:
    """A unit word that heads a list: first in its line, or after "all"."""
    at -= 1
    if draft.kind(at) == "value" and draft.kind(at + 2) in {"", "line"}:
        return True
    while draft.kind(at) in {"filler", "all", "reads", "at", "is", "idword"}:
        at -= 1
    return draft.kind(at) in {"", "line", "stop", "comma"} or (
        draft.kind(at) == "sign" and draft.phrases[at].text in {"(", "["}
    )


def _local(draft: Draft, at: int, unit: str, meaning: str) -> bool:
    """Gives the unit to the one figure beside it: "sec ohms 14.2", "*26.1 sec volts"."""
    figure = _beside(draft, at)
    if figure is None:
        return False
    figure.unit, figure.unit_from = unit, "word"
    figure.value *= SCALES.get(meaning, 1.0)
    return True


def _beside(draft: Draft, at: int) -> Figure | None:
    heads = _heads_alone(draft, at)
    step = at + 1
    while draft.kind(step) in BETWEEN_UNIT and not (heads and draft.kind(step) == "colon"):
        step += 1
    figure = draft.figure_at(step)
    if (
        figure is not None
        and figure.kind == "amount"
        and figure.unit is None
        and (not heads or _only(draft, figure))
        and draft.clause[step] == draft.clause[at]
    ):
        return figure
    step = at - 1
    places = 0
    while (
        draft.kind(step) in {"filler", "at", "ends", "winding", "leadword", "between", "is", "device"}
        and draft.clause[step] == draft.clause[at]
    ):
        places += draft.kind(step) == "ends"
        step -= 1
    figure = draft.figure_at(step)
    if (
        figure is not None
        and figure.kind == "amount"
        and figure.unit is None
        and places <= 1
        and draft.clause[step] == draft.clause[at]
    ):
        return figure
    return None


def _only(draft: Draft, figure: Figure) -> bool:
    return not any(f.kind == "amount" and f.unit is None and f.at > figure.at for f in draft.around(figure.at))
