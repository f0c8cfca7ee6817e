"""What a reply need not repeat: the lines that stand in the reply right above it, and the reasons that have not changed."""

from dataclasses import replace

from bot.job import State
from bot.wording.catalog import Catalog
from core.advice import Answer, Verdict
from core.heard.answers import spoken
from core.readings import Job


def only_news(answer: Answer, state: State, job: Job, words: Catalog) -> Answer:
    """
    The answer without what the technician has just been told.

    Who asks gets the whole answer again; who sends one more reading of the same story gets what that reading changes.

    Args:
        answer: What core says.
        state: The job before this message.
        job: The job with it.
        words: The language of the reply.
    """
    before = state.turns[-1].reply if state.turns else None
    if before is None or job.asks:
        return answer
    told = frozenset(str(before.get("reply", "")).splitlines())
    own = frozenset(line for said in spoken(job) for line in said.lines)  # they answer this message, and nothing else would
    if answer.sizing is not None:  # what to buy, or whether it is good, is told with whatever changes
        own |= frozenset(answer.lines[:1])
    return replace(
        answer,
        lines=tuple(line for line in answer.lines if line in own or words.tell(line) not in told),
        verdict=_news(answer.verdict, before.get("verdict") or {}, job),
    )


def _news(verdict: Verdict | None, before: dict[str, object], job: Job) -> Verdict | None:
    """The verdict with the reasons that this message brought, where it says what the last one said."""
    if verdict is None or (before.get("finding"), before.get("transformer")) != (verdict.finding, verdict.transformer):
        return verdict
    reasons = tuple(r for r in verdict.reasons if r.reading.measure in job.fresh or r.speaks == "against")
    return replace(verdict, reasons=reasons)
