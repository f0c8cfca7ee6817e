"""Numbers of the day and not of the unit: the weather and the hour, taken out before anything is corrected or bound."""

from grammar.binding.draft import Draft, Figure

WARM = (60.0, 130.0)
"""What is said of the weather in "its 95 out". [degF]"""
LAST_HOUR = 24.0
WEATHER_BEHIND = frozenset({"", "comma", "stop", "line", "and", "filler", "notours"})
"""Kinds that may stand behind "its 95 out": no place and no value."""


def small_talk(draft: Draft) -> None:
    """Keeps such numbers with the log."""
    sides = {p.meaning for p in draft.phrases if p.kind == "inout"}
    for figure in draft.figures:
        if figure.kind != "amount" or figure.unit is not None or figure.done or len(figure.amounts) != 1:
            continue
        if _is_weather(draft, figure, one_side=len(sides) == 1):
            _set_aside(draft, figure, figure.at + 1)
        elif _is_hour(draft, figure) or _is_in_minutes(draft, figure):
            _set_aside(draft, figure, figure.at - 1)


def _is_weather(draft: Draft, figure: Figure, *, one_side: bool) -> bool:
    """In "its 95 out and no cooling"."""
    out = draft.phrases[figure.at + 1].text if figure.at + 1 < len(draft.phrases) else ""
    return (
        one_side
        and out == "out"
        and draft.kind(figure.at - 1) in {"is", "filler"}
        and draft.kind(figure.at + 2) in WEATHER_BEHIND
        and WARM[0] <= figure.value <= WARM[1]
        and not any(draft.kind(i) in {"ends", "reads", "transformer"} for i in range(max(0, figure.at - 4), figure.at))
    )


def _is_hour(draft: Draft, figure: Figure) -> bool:
    """In "ill be here till 4", "desde las 7"."""
    before = draft.phrases[figure.at - 1] if figure.at else None
    hour = figure.value <= LAST_HOUR and figure.value == int(figure.value)
    return before is not None and before.kind == "notours" and before.text in HOURS and hour


def _is_in_minutes(draft: Draft, figure: Figure) -> bool:
    """In "be there in 20", "calling you in 10"."""
    told = {p.text for p in draft.phrases[max(0, figure.at - 5) : figure.at]}
    minutes = figure.value <= MOST_MINUTES and figure.value == int(figure.value)
    last = draft.kind(figure.at + 1) in {"", "stop", "comma", "line", "filler"}
    return minutes and last and figure.at > 0 and draft.phrases[figure.at - 1].text in {"in", "en"} and bool(told & GOING)


MOST_MINUTES = 60.0
GOING = frozenset({"there", "back", "calling", "call", "leaving", "home", "arrive", "see", "llego", "salgo", "regreso", "vuelvo", "llamo"})  # fmt: skip
"""Words of somebody who comes or calls."""
HOURS = frozenset({"till", "til", "until", "since", "be there by", "there at", "left at", "got here at", "desde las", "a las", "las", "llego a las"})  # fmt: skip
"""Words before an hour."""


def _set_aside(draft: Draft, figure: Figure, at: int) -> None:
    figure.done = True
    beside = draft.phrases[at]
    draft.chatter.append((min(figure.start, beside.start), max(figure.end, beside.end)))
