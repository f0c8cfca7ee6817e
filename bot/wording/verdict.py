"""The verdict: one line to be read at arm's length, what it means for the transformer, and why."""

from collections.abc import Iterator
from typing import Final

from bot.wording.amounts import amount, reading_words
from core.advice import Reason, Verdict
from core.findings import FINDINGS
from core.measures import MEASURES
from core.said import Said, say

SURE: Final = 0.9
"""From here a verdict is said flatly."""
LIKELY: Final = 0.6
"""From here it is said as likely; below, the second is named too."""

TRANSFORMER: Final[dict[str, Said]] = {
    "good": say("Transformer GOOD: keep it"),
    "bad": say("Transformer BAD: replace it"),
    "unproven": say("Transformer not proved yet"),
}


def verdict_lines(verdict: Verdict) -> Iterator[Said]:
    """The verdict first, then the transformer, then what must have come with it."""
    percent = min(99.0, 100 * verdict.confidence)
    first = FINDINGS[verdict.finding].says
    if verdict.confidence >= SURE:
        yield say("{finding}. Sure: {percent:.0f} %", finding=first, percent=percent)
    elif verdict.confidence >= LIKELY:
        yield say("Likely, {percent:.0f} %: {finding}", finding=first, percent=percent)
    else:
        second = verdict.ranked[1]
        yield say("Not clear yet. Maybe {percent:.0f} %: {finding}", finding=first, percent=percent)
        yield say("Or {percent:.0f} %: {finding}", finding=FINDINGS[second.finding].says, percent=100 * second.probability)
    if verdict.confidence >= LIKELY or verdict.transformer != "unproven":
        yield TRANSFORMER[verdict.transformer]
    for other in verdict.also:
        yield say("Also: {finding}", finding=FINDINGS[other].says)


def why_lines(verdict: Verdict, most: int = 2) -> Iterator[Said]:
    """The readings that convince, in the technician's own numbers, and the one that does not fit."""
    for reason in [r for r in verdict.reasons if r.speaks == "for"][:most]:
        yield say("Why: {reading}; {expected}", reading=reading_words(reason.reading), expected=_expected(reason))
    for reason in [r for r in verdict.reasons if r.speaks == "against"][:1]:
        yield say("Against it: {reading}; {expected}", reading=reading_words(reason.reading), expected=_expected(reason))
    if verdict.repeat is not None:
        yield say("The readings contradict each other. Take this one again: {reading}", reading=reading_words(verdict.repeat))


def _expected(reason: Reason) -> Said:
    unit = MEASURES[reason.reading.measure].unit
    if reason.low is None and reason.high is None:
        return say("it would read open")
    if reason.low is None or reason.high is None:
        return say("it would read about {value}", value=amount(reason.low or reason.high or 0.0, unit))
    low, high = amount(round(reason.low, 2), unit), amount(round(reason.high, 2), unit)
    if str(low) == str(high):
        return say("it would read about {value}", value=low)
    return say("it would read {low} to {high}", low=low, high=high)
