"""Which one reading between leads would tell most: a pair not read yet, a pair to read again, or the ratio test."""

import math
from collections.abc import Iterable, Sequence
from dataclasses import dataclass, replace
from typing import Final

import numpy as np

from core.advice import NextTest
from core.leads.belief import Belief, Hypothesis, unread_pairs
from core.leads.evidence import Evidence, Pair, pair
from core.leads.lead_words import lead_name
from core.leads.meter import slip_density, spread
from core.leads.section_fit import Floats
from core.leads.tap_sets import MISSED_CONTACT, SLIP
from core.leads.wound import Wound
from core.said import say

TEST_V: Final = 24.0
_WEIGHED: Final = 40
"""Hypotheses that a test is weighed against."""
_WORTH: Final = 0.015
"""Least that a test must add to the probability of the map that then leads."""
_LIVE_COSTS: Final = 0.04
"""A ratio test must add so much more than ohms: it takes a source and its care. Common practice, no source."""
_SLIP_NAMED: Final = 0.5

Expect = tuple[float, float] | None
"""What a hypothesis expects of a reading and its standard deviation; None for open."""


@dataclass(frozen=True, slots=True, kw_only=True)
class LeadTest:
    """One reading that could be taken."""

    kind: str
    """`ohms`, `again`, `check`, `others`, `ratio` or `label`."""
    leads: Pair | None
    ends: Pair | None = None
    """Where the 24 V goes, for a ratio test."""
    fact: str | None = None
    """What is asked for, where no reading would tell."""
    hopes: float = 0.0
    """Probability of the likeliest map that is to be expected after it."""


def ratio_expected(hypothesis: Hypothesis, ends: Pair, leads: Pair) -> Expect:
    """
    Volts that a hypothesis expects between two leads with 24 V across two others.

    Args:
        hypothesis: One way in which the unit may be wound.
        ends: Where the 24 V goes.
        leads: Where it is read.

    Returns:
        Volts and their spread, None where nothing can be read. [V]
    """
    fed, read = _apart(hypothesis, ends), _apart(hypothesis, leads)
    if not fed or not read:
        return None
    volts = TEST_V * read[0] / fed[0]
    return volts, math.hypot(0.15, volts * (0.012 if fed[1] is read[1] else 0.06))


Declined = frozenset[tuple[str, tuple[str, str] | None]]


def best_test(belief: Belief, evidence: Evidence, declined: Declined, unchecked: Sequence[Pair] = ()) -> LeadTest | None:
    """
    The test to ask for.

    Args:
        belief: What the evidence leaves.
        evidence: What is known.
        declined: Tests that can't be done.
        unchecked: Readings that alone hold up a map which would be sure with them.

    Returns:
        None where nothing is left to ask.
    """
    first = _doubtful(belief, evidence, declined, unchecked)
    if first is not None:
        return first
    if belief.hypotheses and not any(w.role == "secondary" for w in belief.hypotheses[0].windings):
        return None if ("lead_ohms", None) in declined else LeadTest(kind="others", leads=None)
    now = belief.maps[0][1] if belief.hypotheses else 0.0
    tests = [t for t in _candidates(belief, evidence) if not _is_declined(_MEASURE[t.kind], t.leads, declined)]
    weighed = [(t.hopes - (_LIVE_COSTS if t.kind == "ratio" else 0.0), t) for t in tests]
    gain, best = max(weighed, key=lambda row: row[0], default=(0.0, None))
    if best is not None and gain > now + _WORTH:
        return _source_first(best, belief, evidence)
    facts = ("lead_is",) if _same_taps(belief) or evidence.taps else ("nameplate_taps", "lead_is")
    wanted = next((fact for fact in facts if (fact, None) not in declined), None)
    return None if wanted is None or ("lead_ohms", None) in declined else LeadTest(kind="label", leads=None, fact=wanted)


def _doubtful(belief: Belief, evidence: Evidence, declined: Declined, unchecked: Sequence[Pair]) -> LeadTest | None:
    """A reading that is to be taken again, or borne out, before anything else."""
    slip = belief.slip()
    again = [p for p in evidence.leaks if p not in evidence.repeated]
    again += [slip[0]] if slip is not None and slip[1] > _SLIP_NAMED else []
    rows = [("again", p) for p in again] + [("check" if p in evidence.ohms else "ohms", p) for p in unchecked]
    return next((LeadTest(kind=kind, leads=p) for kind, p in rows if not _is_declined("lead_ohms", p, declined)), None)


def _same_taps(belief: Belief) -> bool:
    """True where the two likeliest maps differ in the places of the leads and not in their volts: no nameplate tells them apart."""
    taps = [sorted(v for w in h.windings if w.role == "primary" for v in w.volts) for h, _ in belief.maps[:2]]
    return len(taps) == 2 and taps[0] == taps[1]


def _source_first(test: LeadTest, belief: Belief, evidence: Evidence) -> LeadTest:
    """Once a ratio was read and still leaves doubt, the volts of the source itself are what is missing."""
    if test.kind != "ratio" or test.ends is None or pair(*test.ends) in evidence.volts:
        return test
    side = {lead for w in belief.maps[0][0].windings if w.role == "primary" for lead, _ in w.leads}
    begun = any(side.issuperset(p) for p in evidence.volts)
    return LeadTest(kind="ratio", leads=test.ends, ends=test.ends, hopes=test.hopes) if begun else test


_MEASURE: Final = {"ohms": "lead_ohms", "again": "lead_ohms", "check": "lead_ohms", "ratio": "lead_volts", "label": "lead_ohms"}


def asked(test: LeadTest, leads: Sequence[str] = ()) -> NextTest:
    """
    The test as it is asked for.

    Args:
        test: What is wanted.
        leads: In the order in which they were named: a pair is asked for in the same order.
    """
    if test.kind != "ratio" and test.leads is not None:
        low, high = sorted(test.leads, key=lambda lead: leads.index(lead) if lead in leads else len(leads))
        test = replace(test, leads=(low, high))
    if test.kind == "others":
        return NextTest(measure="lead_ohms", instruction=_OTHERS)
    if test.kind == "label" or test.leads is None:
        fact = test.fact or "nameplate_taps"
        return NextTest(measure="lead_ohms", instruction=_ASK_FACT[fact], fact=fact)
    one, other = (lead_name(lead) for lead in test.leads)
    if test.kind == "ratio" and test.ends == test.leads:
        return NextTest(
            measure="lead_volts",
            leads=test.leads,
            instruction=say("With the 24 V still across {one} and {other}: read volts between these two", one=one, other=other),
        )
    if test.kind == "ratio" and test.ends is not None:
        return NextTest(
            measure="lead_volts",
            leads=test.leads,
            instruction=say(
                "Known-good fused 24 V across {low} and {high}, all else free: read volts there and {one} to {other}",
                low=lead_name(test.ends[0]),
                high=lead_name(test.ends[1]),
                one=one,
                other=other,
            ),
        )
    again = say("Dry the leads, keep hands off the tips, and read ohms {one} to {other} again", one=one, other=other)
    check = say("Read ohms {one} to {other} once more: nothing else bears it out", one=one, other=other)
    first = say("Power off and proved dead, all leads free: read ohms {one} to {other}", one=one, other=other)
    return NextTest(
        measure="lead_ohms",
        leads=test.leads,
        instruction={"again": again, "check": check}.get(test.kind, first),
        buttons=(say("open"),),
    )


_OTHERS: Final = say("Read ohms between the other leads too: the secondary reads about 1 ohm")
_ASK_FACT: Final = {
    "nameplate_taps": say("Send the primary volts from the nameplate or the unit's drawing"),
    "lead_is": say("Look for a label or a drawing: send what it calls each lead"),
}


def _candidates(belief: Belief, evidence: Evidence) -> Iterable[LeadTest]:
    """Pairs not read yet, and a ratio test once none of the primary is left: ohms need no source."""
    some = belief.hypotheses[:_WEIGHED]
    if not some:
        return
    maps = {key: i for i, key in enumerate(dict.fromkeys(h.key for h in some))}
    of_map = np.eye(len(maps))[[maps[h.key] for h in some]]
    unread = unread_pairs(evidence)
    for p in unread:
        yield LeadTest(kind="ohms", leads=p, hopes=_hopes(some, of_map, [_ohms_expected(h, p) for h in some]))
    if any(_stretch(some[0], p) is not None for p in unread):
        return
    for ends, leads in _ratio_pairs(some[0], evidence):
        due = [ratio_expected(h, ends, leads) for h in some]
        yield LeadTest(kind="ratio", leads=leads, ends=ends, hopes=_hopes(some, of_map, due))


def _ratio_pairs(best: Hypothesis, evidence: Evidence) -> Iterable[tuple[Pair, Pair]]:
    """From one outer end to each inner lead; across the secondary where that tells the volts."""
    primaries = [w for w in best.windings if w.role == "primary" and not w.open_at]
    for w in primaries[:1]:
        names = [lead for lead, _ in w.leads]
        ends = (names[0], names[-1])
        reads = [(names[0], name) for name in names[1:-1]]
        reads += [(s.leads[0][0], s.leads[-1][0]) for s in best.windings if s.role == "secondary" and not s.open_at]
        yield from ((ends, r) for r in reads if pair(*r) not in evidence.volts)


def _hopes(some: Sequence[Hypothesis], of_map: Floats, due: Sequence[Expect]) -> float:
    """Expected probability of the likeliest map once the reading is known."""
    weight = np.array([h.weight for h in some])
    share = (weight * _densities(due)) @ of_map
    return float(weight @ (share.max(axis=1) / share.sum(axis=1)) / weight.sum())


def _densities(due: Sequence[Expect]) -> Floats:
    """Of each reading as one hypothesis expects it (row), under each hypothesis (column)."""
    is_open = np.array([d is None for d in due])
    value, sigma = np.array([(1.0, 1.0) if d is None else d for d in due]).T
    both = np.hypot(sigma[:, None], sigma)
    slip = SLIP * np.array([slip_density(float(v)) for v in value])[:, None]
    near = (1.0 - SLIP) * np.exp(-0.5 * ((value[:, None] - value) / both) ** 2) / (both * 2.507) + slip
    # Open was seen (row), or is due (column).
    return np.where(is_open[:, None], np.where(is_open, 1.0, MISSED_CONTACT), np.where(is_open, slip, near))


def _ohms_expected(hypothesis: Hypothesis, leads: Pair) -> Expect:
    found = _stretch(hypothesis, leads)
    if found is None:
        return None
    w, low, high = found
    if any(low <= s < high for s in w.open_at):
        return None
    slope = [ohm if low <= i < high else 0.0 for i, ohm in enumerate(w.sections_ohm)] + [1.0]
    var = sum(a * b * w.spread[i][j] for i, a in enumerate(slope) for j, b in enumerate(slope))
    ohm = sum(w.sections_ohm[low:high]) + w.test_leads_ohm
    return ohm, math.sqrt(var + spread(ohm) ** 2)


def _stretch(hypothesis: Hypothesis, leads: Pair) -> tuple[Wound, int, int] | None:
    for w in hypothesis.windings:
        place = {lead: i for i, (lead, _) in enumerate(w.leads)}
        if leads[0] in place and leads[1] in place:
            low, high = sorted((place[leads[0]], place[leads[1]]))
            return w, low, high
    return None


def _apart(hypothesis: Hypothesis, leads: Pair) -> tuple[float, Wound] | None:
    found = _stretch(hypothesis, leads)
    return None if found is None else (found[0].volts[found[2]] - found[0].volts[found[1]], found[0])


def _is_declined(measure: str, leads: Pair | None, declined: Declined) -> bool:
    names = None if leads is None else frozenset(leads)
    return any(m == measure and (None if p is None else frozenset(p)) == names for m, p in declined)
