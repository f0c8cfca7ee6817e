"""Several runs of wire in one message: which gauge and which load belong to which length."""

from dataclasses import replace

from core.readings import Fact
from grammar.binding.draft import Draft

BELONGS = frozenset({"load", "wire_awg"})


def runs(draft: Draft) -> None:
    """
    Numbers the lengths, and with each the gauge and the loads that stand on its side.

    In "60 ft of 18 to a contactor, 180 ft of 20 to a damper" what follows a length is of it; in "contactor 60 ft, damper 180 ft" what
    comes before it. What was told first says which way round the message is.
    """
    lengths = sorted(at for at, fact in draft.facts if fact.fact == "run_feet")
    if len(lengths) <= 1:
        return
    leads = {
        name: any(at < lengths[0] for at, fact in draft.facts if fact.fact == name)
        and not any(at > lengths[-1] for at, fact in draft.facts if fact.fact == name)
        for name in BELONGS
    }
    draft.facts = [(at, _numbered(at, fact, lengths, comes_first=leads.get(fact.fact, False))) for at, fact in draft.facts]


def _numbered(at: int, fact: Fact, lengths: list[int], *, comes_first: bool) -> Fact:
    """The fact with the run that it belongs to; a load before all lengths of a row that goes on behind them hangs on every run."""
    if fact.fact == "run_feet":
        return replace(fact, run=lengths.index(at) + 1)
    if fact.fact not in BELONGS:
        return fact
    before = sum(length < at for length in lengths)
    run = before + 1 if comes_first else max(1, before)
    return replace(fact, run=min(run, len(lengths)))
