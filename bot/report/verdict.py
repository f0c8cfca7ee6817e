"""Verdict, reasons and what is left to do, as parts of a report."""

from typing import Final

from bot.report.amounts import percent
from bot.report.job_log import JobLog
from bot.report.paper import Part, Table, Tell
from bot.report.places import place, shown
from bot.wording.verdict import TRANSFORMER, good_band
from core.findings import FINDINGS
from core.said import Said, say

SPEAKS: Final[dict[str, Said]] = {"for": say("for"), "against": say("against"), "neither": say("neither")}
MOST_REASONS: Final = 6
"""Likeliest to convince first; more of them convince nobody, and those that speak for neither stand in the CSV and JSON."""
WORTH_A_LINE: Final = 0.02
"""The next likeliest finding is named from this probability on."""


def verdict(log: JobLog, tell: Tell) -> Part:
    """
    What the readings say.

    Args:
        log: The job.
        tell: The reader's language.
    """
    lines: list[Said] = []
    if (found := log.verdict) is not None:
        settled = say("settled") if found.settled else say("not settled")
        lines = [
            FINDINGS[found.finding].says,
            TRANSFORMER[found.transformer],
            say("{percent} sure, {settled}", percent=percent(found.confidence), settled=settled),
            *(say("Also: {finding}", finding=FINDINGS[name].says) for name in found.also),
        ]
        others = [r for r in found.ranked if r.finding != found.finding and r.probability >= WORTH_A_LINE]
        if others:
            other = FINDINGS[others[0].finding].says
            lines.append(say("Next likeliest: {finding}, {percent}", finding=other, percent=percent(others[0].probability)))
        if found.repeat is not None:
            lines.append(say("The readings contradict each other"))
    return Part(name="verdict", title=tell(say("Verdict")), mark="computed", lines=tuple(tell(line) for line in lines))


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
