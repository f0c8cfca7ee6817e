"""Which lead is which, as an answer: the map, how sure it is, why, and the one reading that would tell more."""

from collections.abc import Iterable
from typing import Final

from core.advice import Answer, LeadAlternative, LeadMap, NextTest, Verdict, Winding
from core.leads.belief import Belief, Hypothesis, believe, expected, fits, worst_misfit
from core.leads.clues import label_fits, roles
from core.leads.doubt import doubt_lines
from core.leads.evidence import Evidence, blocks, gather, pair
from core.leads.lead_test import LeadTest, asked, best_test
from core.leads.lead_words import lead_name, pair_name, winding_line
from core.leads.open_inside import open_lines, verdict_of
from core.leads.supply import READ_SUPPLY
from core.leads.sureness import SURE, confidence_of, unchecked
from core.leads.wound import Wound
from core.readings import Job
from core.said import Said, say

_LISTED_FROM: Final = 0.005
_MOST_LISTED: Final = 6
RISES: Final = 1.08
"""Ohms per volt from which on they are said to rise."""
_SLIP_NAMED: Final = 0.5
_LINE_V: Final = 60.0
_LOW_V: Final = (15.0, 34.0)


def map_leads(job: Job) -> Answer:
    """
    Which lead is which.

    Args:
        job: What is known of the job.

    Returns:
        The map with its probability; under 0.9 with the next test to take. No map where no lead was spoken of.
    """
    evidence = gather(job)
    if not evidence.leads:
        return Answer(lines=(_HOW_TO,), next_test=NextTest(measure="lead_ohms", instruction=_FIRST_TEST))
    return answer_of(believe(evidence), evidence, job)


def answer_of(belief: Belief, evidence: Evidence, job: Job) -> Answer:
    """The answer that a belief gives."""
    if not belief.hypotheses:
        return _unmapped(evidence)
    confidence = confidence_of(belief, evidence)
    verdict = verdict_of(belief, evidence, job)
    lone = unchecked(belief, evidence) if confidence < SURE <= belief.maps[0][1] else ()
    wanted = best_test(belief, evidence, job.declined, lone) if _asks(belief, evidence, confidence, verdict) else None
    test = None if wanted is None else asked(wanted, evidence.leads)
    if test is None and verdict is None and "next" in job.asks:
        test = READ_SUPPLY
    found = LeadMap(
        windings=windings_of(belief.maps[0][0]),
        confidence=confidence,
        alternatives=_alternatives(belief),
        confirm=test,
    )
    return Answer(
        lines=tuple(_lines(belief, evidence, confidence, wanted)),
        cautions=_cautions(belief, evidence, wanted),
        next_test=test,
        verdict=verdict,
        leads=found,
        picture="leads",
    )


def windings_of(hypothesis: Hypothesis) -> tuple[Winding, ...]:
    """The windings of the record, primaries first, and leads whose winding is not known."""
    found = [Winding(role=w.role, leads=w.leads) for w in hypothesis.windings]
    return (*found, *(Winding(role="unknown", leads=((lead, "unknown"),)) for lead in hypothesis.strays))


def _asks(belief: Belief, evidence: Evidence, confidence: float, verdict: Verdict | None) -> bool:
    """Whether more is to be read: not of a unit that is bad already."""
    slip = belief.slip()
    if verdict is not None:
        return False
    return confidence < SURE or bool(evidence.leaks) or (slip is not None and slip[1] > _SLIP_NAMED)


def _alternatives(belief: Belief) -> tuple[LeadAlternative, ...]:
    others = [row for row in belief.maps[1:] if row[1] >= _LISTED_FROM][:_MOST_LISTED]
    return tuple(LeadAlternative(windings=windings_of(h), probability=p) for h, p in others)


def _unmapped(evidence: Evidence) -> Answer:
    """Leads are named and nothing ties them together yet."""
    one = evidence.leads[0]
    other = evidence.leads[1] if len(evidence.leads) > 1 else None
    test = (
        NextTest(measure="lead_ohms", instruction=_FIRST_TEST)
        if other is None
        else asked(LeadTest(kind="ohms", leads=pair(one, other)))
    )
    unknown = tuple(Winding(role="unknown", leads=((lead, "unknown"),)) for lead in evidence.leads)
    found = LeadMap(windings=unknown, confidence=0.0, confirm=test)
    return Answer(lines=(say("No winding can be made of these readings yet"),), next_test=test, leads=found)


_FIRST_TEST: Final = say("Power off and proved dead, all leads free: read ohms from one lead to each other lead")
_HOW_TO: Final = say("Send ohms lead to lead, like: white black 20.4, white red 53, blue yellow 1.2, rest OL")


def _lines(belief: Belief, evidence: Evidence, confidence: float, wanted: LeadTest | None) -> Iterable[Said]:
    maps = belief.maps
    best = maps[0][0]
    if _is_backfed(best, evidence):
        yield say("Primary leads at line voltage with 24 V on the secondary: if that is your source, switch it off now")
    yield from open_lines(belief, evidence)
    yield from (winding_line(w) for w in best.windings)
    yield from (say("{lead}: not known yet", lead=lead_name(lead)) for lead in best.strays)
    yield say("Sure: {percent:.0f} %", percent=_percent(confidence))
    yield from _slip_lines(belief, evidence)
    yield from _label_lines(best, evidence)
    yield from _how_joined(best)
    if confidence >= SURE:
        yield from _why(best, evidence)
    else:
        yield from doubt_lines(((best, min(maps[0][1], confidence)), *maps[1:]), evidence, wanted)


def _percent(probability: float) -> float:
    """Never a round 100: nothing here is certain."""
    return min(99.0, max(1.0, 100.0 * probability))


def _why(best: Hypothesis, evidence: Evidence) -> Iterable[Said]:
    for w in best.windings:
        if w.role == "primary" and len(w.leads) > 2 and not w.open_at and _is_read(w, evidence):
            inner = w.sections_ohm[0] / (w.volts[1] - w.volts[0])
            outer = w.sections_ohm[-1] / (w.volts[-1] - w.volts[-2])
            if outer >= RISES * inner:
                yield say(
                    "Ohms per volt rise outward: {inner:.2g} at {common}, {outer:.2g} at {far}",
                    inner=inner,
                    outer=outer,
                    common=lead_name(w.leads[0][0]),
                    far=lead_name(w.leads[-1][0]),
                )


def _is_read(winding: Wound, evidence: Evidence) -> bool:
    """True where ohms tie all its leads together: labels alone say nothing of its wire."""
    leads = {lead for lead, _ in winding.leads}
    return len(blocks(leads, (p for p in evidence.ohms if leads.issuperset(p)))) == 1


def _how_joined(best: Hypothesis) -> Iterable[Said]:
    primaries = [w for w in best.windings if w.role == "primary"]
    if len(primaries) > 1:
        volts = primaries[0].volts[1]
        yield say("Two equal primaries: in parallel for {volts:g} V, in series for {twice:g} V", volts=volts, twice=2.0 * volts)


def _slip_lines(belief: Belief, evidence: Evidence) -> Iterable[Said]:
    slip = belief.slip()
    best = belief.maps[0][0]
    if slip is not None and slip[1] > _SLIP_NAMED:
        yield from _misread(best, slip[0], evidence)
    elif not fits(best, evidence) and (worst := worst_misfit(best, evidence)) is not None:
        yield from _misread(best, worst[0], evidence)


def _misread(best: Hypothesis, leads: tuple[str, str], evidence: Evidence) -> Iterable[Said]:
    due, seen = expected(best, *leads), evidence.ohms.get(leads)
    if seen is None:
        return
    if due is None:
        yield say(
            "{pair} {seen:g} ohm does not fit: the rest say open. Read it again",
            pair=pair_name(leads, evidence.leads),
            seen=seen,
        )
    else:
        yield say(
            "{pair} {seen:g} ohm does not fit: the rest say {due:.1f}. Read it again",
            pair=pair_name(leads, evidence.leads),
            seen=seen,
            due=due,
        )


def _label_lines(best: Hypothesis, evidence: Evidence) -> Iterable[Said]:
    known = roles(best.windings)
    short = {lead for w in best.windings if len(w.leads) == 2 for lead, _ in w.leads}
    for lead, label in evidence.labels.items():
        if lead in known and not label_fits(label, *known[lead], two_leads=lead in short):
            yield say(
                "The label calls {lead} {label}, the ohms {role}: trust the ohms, not the label",
                lead=lead_name(lead),
                label=_role_word(label),
                role=_role_word(known[lead][1]),
            )


def _role_word(role: str) -> Said | str:
    return say("{volts} V", volts=role) if role.replace(".", "").isdigit() else _ROLE_WORDS.get(role, role)


_ROLE_WORDS: Final = {
    "common": say("common"), "ct": say("centre tap"), "secondary": say("secondary"), "primary": say("primary"),
}  # fmt: skip


def _cautions(belief: Belief, evidence: Evidence, wanted: LeadTest | None) -> tuple[str, ...]:
    names = []
    if _is_backfed(belief.maps[0][0], evidence):
        names.append("backfeed")
    if wanted is not None and wanted.kind == "ratio":
        names.append("ratio_test_primary_only")
    return tuple(names)


def _is_backfed(best: Hypothesis, evidence: Evidence) -> bool:
    """Low volts on the secondary while the primary leads, free for ohms, carry line voltage."""
    at = {pair(a, b): w.role for w in best.windings for i, (a, _) in enumerate(w.leads) for b, _ in w.leads[i + 1 :]}
    low = any(at.get(p) == "secondary" and _LOW_V[0] <= v <= _LOW_V[1] for p, v in evidence.volts.items())
    high = any(at.get(p) == "primary" and v >= _LINE_V for p, v in evidence.volts.items())
    return low and high
