"""A load that a message tells: its device, its figure, how many, and what it takes while it pulls in."""

from core.readings import Fact
from core.said import say
from core.standards.device_loads import MOST_DEVICE_VA
from grammar.binding.counts import MOST_OF_A_KIND, whole
from grammar.binding.draft import Draft, Figure
from grammar.binding.how_many import known_count, multiplied
from grammar.binding.inrush import inrush_near
from grammar.message import Unclear

MOST_STEADY_VA = 100.0
"""More than this of one 24 V coil is asked about. [VA]"""


def _times(figure: Figure) -> bool:
    """In "contactors 2 x 9va" and "contactor 9 va x 2"."""
    return len(figure.amounts) == 2 and figure.joins[0] == "x"


def load_of(draft: Draft, figure: Figure, at: int, unit: str) -> None:
    """
    Adds the load of a device.

    Args:
        draft: The message.
        figure: Its volt-amperes or amps.
        at: Phrase of the device.
        unit: VA or A.
    """
    draft.sites[at].used += 1
    if _times(figure) and figure.amounts[0].unit:
        figure.value = figure.amounts[0].value
    add_load(draft, figure, draft.phrases[at].meaning, _count(draft, figure, at), unit, at)


def add_load(draft: Draft, figure: Figure, device: str, count: int, unit: str, at: int | None = None) -> None:
    """
    Adds a load, unless its figure has to be asked about.

    Args:
        draft: The message.
        figure: Its volt-amperes or amps.
        device: Its English name.
        count: How many.
        unit: VA or A.
        at: Phrase of the device, where there is one.
    """
    figure.done = True
    if figure.high is not None:  # "9-10 va": a size is for the most of it
        figure.value = figure.high
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
    inrush = inrush_near(draft, min(figure.at, figure.at if at is None else at), max(figure.at, at or 0))
    load = Fact(fact="load", device=device, count=count, value=figure.value, unit=unit, inrush=inrush)
    draft.facts.append((at if at is not None else figure.at, load))


def _names_it(draft: Draft, at: int) -> bool:
    """In "2 90-340 relays": a part number between the count and the device."""
    figure = draft.figure_at(at)
    return figure is not None and figure.done and figure.unit is None and not whole(figure)


def _count(draft: Draft, figure: Figure, at: int) -> int:
    """How many: the number right before the device, or before "2 8VA contactors", or behind "contactor x2"."""
    if (times := multiplied(draft, at, figure.at)) is not None:
        return times
    for here in (at - 1, at - 2, figure.at - 1):
        if here == at - 2 != figure.at - 1 and not (_describes(draft, at - 1) or _names_it(draft, at - 1)):
            continue
        candidate = draft.figure_at(here)
        if (
            candidate is not None
            and candidate is not figure
            and not candidate.done
            and (whole(candidate) or (here == at - 1 and _many(draft, at, candidate)))
        ):
            candidate.done = True
            return int(candidate.value)
        if draft.kind(here) in {"filler", "between"} and draft.phrases[here].text in {"x", "of", "de"}:
            candidate = draft.figure_at(here - 1)
            if candidate is not None and candidate is not figure and whole(candidate) and not candidate.done:
                candidate.done = True
                return int(candidate.value)
    if _times(figure):
        return int(figure.amounts[1 if figure.amounts[0].unit else 0].value)
    if (known := known_count(draft, at)) is not None:
        return known
    return 2 if draft.kind(at - 1) == "both" else 1


ADJECTIVES = frozenset({"new", "big", "small", "little", "more", "other", "extra", "old", "similar", "identical", "same"})


def _describes(draft: Draft, at: int) -> bool:
    """In "3 new contactors" and "3 flux dampers": a word between the number and the device."""
    nominal = draft.figure_at(at)
    if nominal is not None:  # "2 24v contactors"
        return nominal.done and nominal.unit == "V"
    return draft.kind(at) == "unknown" or (draft.kind(at) == "filler" and draft.phrases[at].text in ADJECTIVES)


def _many(draft: Draft, at: int, figure: Figure) -> bool:
    """In "99 contactors": a larger count before a plural, for core to refuse where it makes no sense."""
    whole = figure.unit is None and len(figure.amounts) == 1 and figure.value == int(figure.value)
    return whole and MOST_OF_A_KIND < figure.value <= 10_000 and draft.text[draft.phrases[at].end - 1] in "sS"
