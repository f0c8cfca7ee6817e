"""The verdict: one line to be read at arm's length, what it means for the transformer, and why."""

from collections.abc import Iterator
from typing import Final

from bot.wording.amounts import amount, reading_words
from core.advice import Reason, Verdict
from core.findings import FINDINGS
from core.measures import MEASURES
from core.readings import OPEN
from core.said import Said, say

SURE: Final = 0.9
"""From here a verdict is said flatly."""
LIKELY: Final = 0.6
"""From here it is said as likely; below, the second is named too."""

WORTH_NAMING: Final = 0.25
"""Below this a finding is one of many, and naming it would only mislead."""
SLACK: Final = 0.03
"""A reading this far outside the band of a sound unit still counts as inside: the band comes from few worlds."""
NEXT_TO_NOTHING: Final = {"V": 1.0, "A": 0.1, "ohm": 0.6}
"""A band that starts below this is told by its upper end."""
FIGURES_FROM: Final = 10.0
"""From here a band is told in three figures, below it in two."""
OPEN_FROM_OHM: Final = 1e6
"""From here an expected resistance is told as open: what is left is what leaks over the insulation."""

TRANSFORMER: Final[dict[str, Said]] = {
    "good": say("Transformer GOOD: keep it"),
    "bad": say("Transformer BAD: replace it"),
    "unproven": say("Transformer not proved yet"),
}


def verdict_lines(verdict: Verdict) -> Iterator[Said]:
    """The verdict first, then the transformer, then what must have come with it."""
    first = FINDINGS[verdict.finding].says
    percent = min(99.0, 100 * verdict.confidence)
    if verdict.confidence >= SURE:
        yield say("{finding}. Sure: {percent:.0f} %", finding=first, percent=percent)
        yield TRANSFORMER[verdict.transformer]
    elif verdict.confidence >= LIKELY:
        yield say("Likely, {percent:.0f} %: {finding}", finding=first, percent=percent)
        yield TRANSFORMER[verdict.transformer]
    else:
        # What is decided comes first: two opens may be even, and the transformer bad all the same.
        yield TRANSFORMER[verdict.transformer] if verdict.transformer != "unproven" else say("Not clear yet")
        for one in [r for r in verdict.ranked[:2] if r.probability >= WORTH_NAMING]:
            yield say("{percent:.0f} %: {finding}", finding=FINDINGS[one.finding].says, percent=100 * one.probability)
    is_read = any(reason.reading.measure == "load_ohms" for reason in verdict.reasons)
    for other in verdict.also:
        if other == "load_short" and not is_read:
            yield say("Maybe also: {finding}", finding=FINDINGS[other].says)
        else:
            yield say("Also: {finding}", finding=FINDINGS[other].says)


def in_a_line(finding: str, transformer: str | None, confidence: float | None) -> Said:
    """A verdict where there is one line for it, as in a list of jobs: no surer than the reply was."""
    says = FINDINGS[finding].says
    if confidence is None or confidence >= SURE:
        return says
    if confidence >= LIKELY:
        return say("{finding}, {percent:.0f} %", finding=says, percent=100 * confidence)
    return TRANSFORMER[transformer] if transformer in {"good", "bad"} else say("Not clear yet")


def why_lines(verdict: Verdict, most: int = 2) -> Iterator[Said]:
    """The readings that convince, in the technician's own numbers, and the one that does not fit."""
    # What no sound unit reads is worth a line, also where other findings would read it too.
    convincing = [r for r in verdict.reasons if _tells(r) and (r.speaks == "for" or (r.speaks == "neither" and not is_good(r)))]
    for reason in sorted(convincing, key=is_good)[:most]:  # what is wrong before what is right
        if is_good(reason):
            yield say("Why: {reading} is good", reading=reading_words(reason.reading))
        else:
            yield say("Why: {reading}; good is {band}", reading=reading_words(reason.reading), band=good_band(reason))
    for reason in [r for r in verdict.reasons if r.speaks == "against"][:1]:
        yield say("Against it: {reading}; it would read {band}", reading=reading_words(reason.reading), band=_found(reason))
    if verdict.repeat is not None:
        yield say("The readings contradict each other. Take this one again: {reading}", reading=reading_words(verdict.repeat))


def is_good(reason: Reason) -> bool:
    """True where a sound unit would read this too."""
    value = float("inf") if reason.reading.value == OPEN else float(reason.reading.value)
    low = float("inf") if reason.good_low is None else reason.good_low
    high = float("inf") if reason.good_high is None else reason.good_high
    return (low <= NEXT_TO_NOTHING[_unit(reason)] or low * (1.0 - SLACK) <= value) and value <= high * (1.0 + SLACK)


def _tells(reason: Reason) -> bool:
    """False where a sound unit could read almost anything: then a reading among those convinces nobody."""
    if reason.good_low is None or reason.good_high is None or not is_good(reason):
        return True
    return reason.good_high <= NEXT_TO_NOTHING[_unit(reason)] or reason.good_high - reason.good_low <= 0.5 * reason.good_high


def _unit(reason: Reason) -> str:
    return MEASURES[reason.reading.measure].unit


def good_band(reason: Reason) -> Said:
    """What a sound unit would read there."""
    return band(reason.good_low, reason.good_high, _unit(reason))


def _found(reason: Reason) -> Said:
    return band(reason.low, reason.high, _unit(reason))


def band(low: float | None, high: float | None, unit: str) -> Said:
    """
    From the least to the most that is expected.

    Args:
        low: None for an open.
        high: None for an open.
        unit: Of the measure.
    """
    if low is None or (unit == "ohm" and low >= OPEN_FROM_OHM):
        return say("open")
    least = amount(_rounded(low), unit)
    if high is None or (unit == "ohm" and high >= OPEN_FROM_OHM):
        return say("{low} or more", low=least)
    most = amount(_rounded(high), unit)
    if low <= NEXT_TO_NOTHING[unit]:
        return say("{high} at most", high=most)
    return say("{low} to {high}", low=least, high=most)


def _rounded(value: float) -> float:
    """As many figures as the model knows."""
    return float(f"{value:.3g}" if value >= FIGURES_FROM else f"{value:.2g}")
