"""Verdict, reasons and what is left to do, as parts of a report."""

from collections.abc import Iterator
from typing import Final

from bot.report.amounts import percent
from bot.report.job_log import JobLog
from bot.report.paper import Part, Table, Tell
from bot.report.places import place, shown
from bot.wording.verdict import LIKELY, SURE, TRANSFORMER, good_band
from core.advice import Verdict
from core.findings import FINDINGS
from core.said import Said, say

SPEAKS: Final[dict[str, Said]] = {"for": say("for"), "against": say("against"), "neither": say("neither")}
MOST_REASONS: Final = 6
"""Likeliest to convince first; more of them convince nobody, and those that speak for neither stand in the CSV and JSON."""
MOST_OTHERS: Final = 3
"""Of the findings that it can be, where none is likely."""
WORTH_A_LINE: Final = 0.02
"""The next likeliest finding is named from this probability on."""


def verdict(log: JobLog, tell: Tell) -> Part:
    """
    What the readings say.

    Args:
        log: The job.
        tell: The reader's language.
    """
    found = log.verdict
    lines = () if found is None else (*_found(found), *_beside(found))
    return Part(name="verdict", title=tell(say("Verdict")), mark="computed", lines=tuple(tell(line) for line in lines))


def _found(found: Verdict) -> Iterator[Said]:
    """The verdict as sure as it is: below that, what is decided about the transformer comes first, and then what it can be."""
    settled = say("settled") if found.settled else say("not settled")
    if found.confidence < LIKELY:
        yield TRANSFORMER[found.transformer] if found.transformer != "unproven" else say("Not clear yet")
        for one in found.ranked[:MOST_OTHERS]:
            if one.probability >= WORTH_A_LINE:
                yield say("{percent:.0f} %: {finding}", finding=FINDINGS[one.finding].says, percent=100 * one.probability)
        yield settled
        return
    says = FINDINGS[found.finding].says
    yield says if found.confidence >= SURE else say("Likely: {finding}", finding=says)
    yield TRANSFORMER[found.transformer]
    yield say("{percent} sure, {settled}", percent=percent(found.confidence), settled=settled)


def _beside(found: Verdict) -> Iterator[Said]:
    for name in found.also:
        yield say("Also: {finding}", finding=FINDINGS[name].says)
    others = [r for r in found.ranked if r.finding != found.finding and r.probability >= WORTH_A_LINE]
    if others and found.confidence >= LIKELY:
        other = FINDINGS[others[0].finding].says
        yield say("Next likeliest: {finding}, {percent}", finding=other, percent=percent(others[0].probability))
    if found.repeat is not None:
        yield say("The readings contradict each other")


def why(log: JobLog, tell: Tell) -> Part:
    """
    Which readings speak for the verdict, and which against.

    Args:
        log: The job.
        tell: The reader's language.
    """
    given = log.verdict.reasons if log.verdict else ()
    reasons = [r for r in given if r.speaks != "neither"][:MOST_REASONS]
    rows = tuple((place(r.reading, tell), shown(r.reading), tell(good_band(r)), tell(SPEAKS[r.speaks])) for r in reasons)
    heads = (say("Place"), say("Reading"), say("Good reads"), say("Speaks"))
    return Part(
        name="why",
        title=tell(say("Why")),
        mark="computed",
        table=Table(heads=tuple(tell(head) for head in heads), rows=rows) if rows else None,
    )


def to_do(log: JobLog, tell: Tell) -> Part:
    """
    The test that is still to be made in a job that is open.

    Args:
        log: The job.
        tell: The reader's language.
    """
    open_test = log.next_test if log.closed is None else None
    lines = (tell(open_test.instruction),) if open_test else ()
    return Part(name="to_do", title=tell(say("Next test")), mark="computed", lines=lines)
