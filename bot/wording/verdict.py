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


def why_lines(verdict: Verdict, most: int = 2) -> Iterator[Said]:
    """The readings that convince, in the technician's own numbers, and the one that does not fit."""
    for reason in [r for r in verdict.reasons if r.speaks == "for" and _tells(r)][:most]:
        yield say("Why: {reading}; {expected}", reading=reading_words(reason.reading), expected=_expected(reason))
    for reason in [r for r in verdict.reasons if r.speaks == "against"][:1]:
        yield say("Against it: {reading}; {expected}", reading=reading_words(reason.reading), expected=_expected(reason))
    if verdict.repeat is not None:
        yield say("The readings contradict each other. Take this one again: {reading}", reading=reading_words(verdict.repeat))


def _tells(reason: Reason) -> bool:
    """False where the model would have allowed almost any value: then the reading convinces nobody."""
    if reason.low is None or reason.high is None or reason.reading.value == OPEN:
        return True
    near_nothing = 1.0 if MEASURES[reason.reading.measure].unit == "V" else 0.1
    return reason.high <= near_nothing or reason.high - reason.low <= 0.5 * reason.high


def _expected(reason: Reason) -> Said:
    unit = MEASURES[reason.reading.measure].unit
    if reason.low is None or (unit == "ohm" and reason.low >= OPEN_FROM_OHM):
        return say("it would read open")
    if reason.high is None:
        return say("it would read about {value}", value=amount(reason.low, unit))
    low, high = amount(round(reason.low, 2), unit), amount(round(reason.high, 2), unit)
    if str(low) == str(high):
        return say("it would read about {value}", value=low)
    return say("it would read {low} to {high}", low=low, high=high)
