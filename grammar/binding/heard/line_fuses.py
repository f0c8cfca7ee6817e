"""A fuse on the line side is not the 24 V fuse."""

from core.heard.record import Heard, Read
from core.readings import Fact
from grammar.binding.draft import Draft, Figure
from grammar.binding.heard.taking import take
from grammar.fold import fold
from grammar.words.heard import BLOWN, LINE_SIDE, LOW_SIDE

LINE_PLACES = frozenset({"primary", "line"})
LEAST_LINE_V = 90.0
DENIES = frozenset(
    {"not", "isnt", "arent", "wasnt", "no", "aint", "never", "ni", "nunca", "if", "si", "would", "will", "could"}
)
"""Behind one of these nothing is told of it."""
REACH = 5
"""Phrases between a fuse and what is said of it."""


def on_the_line(draft: Draft, at: int) -> tuple[int, int] | None:
    """The phrases that name a fuse on the line side, around the fuse at `at`; None where it is another."""
    if not is_place(draft, at, frozenset({"fuse"})) or any(word in draft.phrases[at].text for word in LOW_SIDE):
        return None
    if any(word in draft.text[draft.phrases[at].start : draft.phrases[at].end].lower() for word in LOW_SIDE):
        return None
    before = at - 1
    while draft.kind(before) == "winding" or (draft.kind(before) == "filler" and draft.phrases[before].text in {"the", "side"}):
        before -= 1
    if before >= 0 and (
        is_place(draft, before, LINE_PLACES) or draft.phrases[before].text in LINE_SIDE or _is_leg(draft, before)
    ):
        return before, _with_mark(draft, at)
    nominal = draft.figure_at(at - 1)
    if (
        nominal is not None
        and nominal.unit == "V"
        and nominal.value >= LEAST_LINE_V
        and draft.phrases[at - 1].end + 1 >= draft.phrases[at].start
    ):
        return at - 1, _with_mark(draft, at)
    behind = _led_to(draft, at)
    if behind is not None:
        return at, _with_mark(draft, behind)
    if _with_mark(draft, at) > at or _spoken_of_before(draft):
        return at, _with_mark(draft, at)
    return None


def _spoken_of_before(draft: Draft) -> bool:
    """In "one fuse is open" behind "disconnect fuses?": the message before names which."""
    before = fold(draft.context.said_before[-1]) if draft.context.said_before else ""
    return any(name in before for name in LINE_FUSES)


LINE_FUSES = ("disconnect fuse", "line fuse", "disco fuse", "main fuse", "fusible del desconectador", "fusibles del desconectador", "fusible de linea", "fusibles de linea")  # fmt: skip
"""A fuse of the line, spoken of in a message."""


LEADS = frozenset({"the", "del", "de", "la", "el", "in", "in the", "on", "en"})


def _led_to(draft: Draft, at: int) -> int | None:
    """In "fuse in the disconnect", "fuse blown at the disconnect", "fuse on the 480 side": where it is."""
    behind = at + 1
    while draft.kind(behind) in {"is", "value"} or (behind < len(draft.phrases) and draft.phrases[behind].text in BLOWN):
        behind += 1
    led = behind
    while draft.kind(led) in {"at", "to"} or (led < len(draft.phrases) and draft.phrases[led].text in LEADS):
        led += 1
    if led == behind:
        return None
    if is_place(draft, led, LINE_PLACES) and draft.kind(led + 1) not in {"amounts", "reads"}:
        return led
    figure = draft.figure_at(led)
    is_side = figure is not None and figure.unit in {None, "V"} and figure.value >= LEAST_LINE_V
    return led + 1 if is_side and draft.kind(led + 1) == "winding" else None


def _with_mark(draft: Draft, at: int) -> int:
    """In "line fuse L2": which of them."""
    return at + 1 if _is_leg(draft, at + 1) else at


def _is_leg(draft: Draft, at: int) -> bool:
    """L1 to L3, by itself."""
    if draft.kind(at) == "shape" or draft.kind(at) != "ends" or len(draft.phrases[at].ends) != 1:
        return False
    end = draft.phrases[at].ends[0]
    return end.kind == "mark" and end.name in {"l1", "l2", "l3"}


def is_place(draft: Draft, at: int, names: frozenset[str]) -> bool:
    """True for a phrase that is one place of those names."""
    if not 0 <= at < len(draft.phrases) or draft.kind(at) != "ends":
        return False
    ends = draft.phrases[at].ends
    return len(ends) == 1 and ends[0].kind == "place" and ends[0].name in names


def line_fuses(draft: Draft) -> None:
    """Line fuses with their state; questions about their size stay what they are."""
    for at in range(len(draft.phrases)):
        named = on_the_line(draft, at)
        if named is None:
            continue
        found = _state(draft, *named)
        if found is None:
            continue
        at_state, figure, values, unit = found
        _amps(draft, named[0])
        take(draft, (*named, at_state), Heard("line_fuse", "fuse", "", values, unit), () if figure is None else (figure,))
        is_low_told = any(is_place(draft, i, frozenset({"fuse"})) for i in range(len(draft.phrases)))
        if not is_low_told:
            draft.facts = [row for row in draft.facts if row[1].value != "blown_fuse"]
        if not draft.asks:
            draft.topics = [topic for topic in draft.topics if topic not in {"line_fuse", "low_fuse"}]


def _amps(draft: Draft, begin: int) -> None:
    """In "the 3 amp line fuse blew": its rating."""
    figure = draft.figure_at(begin - 1)
    if figure is not None and figure.unit == "A" and not figure.done:
        draft.fact(figure, Fact(fact="fuse_amps", value=figure.value, unit="A"))


State = tuple[int, Figure | None, tuple[Read, ...], str]


def _state(draft: Draft, begin: int, end: int) -> State | None:
    """What is said of the fuse: where it stands, its figure, its values, their unit."""
    sentence = draft.sentence[begin]
    inside = range(begin, end + 1)
    behind = range(end + 1, min(len(draft.phrases), end + 1 + REACH))
    before = range(begin - 1, max(-1, begin - 1 - REACH), -1)
    if (told := next((row for at in inside if (row := _blown_at(draft, at)) is not None), None)) is not None:
        return told
    for step, order in ((1, behind), (-1, before)):
        for at in order:
            if draft.sentence[at] != sentence or draft.phrases[at].text in DENIES or (step < 0 and draft.kind(at) == "comma"):
                break
            if draft.kind(at) in {"ends", "device"} and not is_place(draft, at, frozenset({"fuse"})):
                break
            if (found := _said_at(draft, at)) is not None:
                return found
    return None


def _said_at(draft: Draft, at: int) -> State | None:
    figure = draft.figure_at(at)
    if figure is not None and figure.kind == "amount" and figure.unit == "ohm":
        return at, figure, (figure.value,), "ohm"
    across = draft.phrases[min(at + 1, len(draft.phrases) - 1)].text.split(" ")[0] in {"across", "entre"}
    unit = figure.unit if figure is not None else None
    if (
        figure is not None
        and figure.kind == "amount"
        and figure.value >= LEAST_LINE_V
        and (unit == "V" or (across and not unit))
    ):
        return at, figure, (figure.value,), "V"
    return _blown_at(draft, at)


def _blown_at(draft: Draft, at: int) -> State | None:
    figure = draft.figure_at(at)
    if figure is not None and figure.kind == "open":
        return at, figure, ("open",), "ohm"
    if set(draft.phrases[at].text.split()) & BLOWN and draft.kind(at) in {"filler", "novalue", "heading", "value", "unknown"}:
        return at, figure, (), ""
    return None
