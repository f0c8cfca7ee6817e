"""An open or a lost insulation that the leads themselves show: a finding, also where only the leads were asked about."""

from typing import Final

from core.advice import Ranked, Verdict
from core.leads.belief import Belief
from core.leads.evidence import Evidence, Pair
from core.leads.lead_words import lead_name, listed, pair_name
from core.leads.sureness import SURE
from core.leads.wound import Wound
from core.readings import Job
from core.said import Said, say
from core.standards.source import COMMON_PRACTICE

SOURCE: Final = COMMON_PRACTICE
LOST_BELOW_OHM: Final = 0.5e6
"""Insulation that reads less is lost. [ohm]"""
_SAID_FROM: Final = 0.80
_HOLDS: Final = 0.95


def verdict_of(belief: Belief, evidence: Evidence, job: Job) -> Verdict | None:
    """
    The finding that the leads show.

    Args:
        belief: What the evidence leaves.
        evidence: What is known.
        job: What is known of the job.

    Returns:
        None where they show none surely enough.
    """
    settled = job.last("load_ohms") is not None
    lost = _confirmed_leak(evidence)
    if lost is not None:
        return _bad("windings_bridged", _HOLDS, settled=settled)
    if any(ohm < LOST_BELOW_OHM for ohm in evidence.grounded.values()) and not evidence.not_isolated:
        return _bad("winding_grounded", _HOLDS, settled=settled)
    if evidence.leaks:
        return None
    share = {
        side: sum(h.weight for h in belief.hypotheses if any(w.open_at and w.role == side for w in h.windings))
        for side in ("primary", "secondary")
    }
    role, confidence = max(share.items(), key=lambda row: row[1])
    return _bad(f"{role}_open", min(confidence, 0.99), settled=settled) if confidence >= _SAID_FROM else None


def _bad(finding: str, confidence: float, *, settled: bool) -> Verdict:
    return Verdict(
        finding=finding,
        confidence=confidence,
        settled=settled,
        transformer="bad",
        ranked=(Ranked(finding=finding, probability=confidence), Ranked(finding="healthy", probability=1.0 - confidence)),
    )


def _confirmed_leak(evidence: Evidence) -> Pair | None:
    """A leak between windings that was read twice."""
    return next((p for p, ohm in evidence.leaks.items() if p in evidence.repeated and ohm < LOST_BELOW_OHM), None)


def open_lines(belief: Belief, evidence: Evidence) -> tuple[Said, ...]:
    """Where the winding is open, what still works where that is sure, and that it is to be replaced all the same."""
    lines: list[Said] = []
    for w in belief.maps[0][0].windings:
        names = [lead for lead, _ in w.leads]
        lines.extend(
            say("Open inside the winding between {one} and {other}", one=lead_name(names[at]), other=lead_name(names[at + 1]))
            for at in sorted(w.open_at)
        )
        if w.open_at:
            lines.append(_what_is_left(w, belief))
    return tuple(lines + _leak_lines(evidence))


def _what_is_left(winding: Wound, belief: Belief) -> Said:
    if winding.role == "secondary":
        return say("The secondary gives nothing across the open: replace it")
    if len(winding.leads) == 2:
        return say("The primary is open: replace it")
    good = _working(winding)
    if not good:
        return say("No tap works any more: replace it")
    if sum(p for h, p in belief.maps if any(_working(w) == good for w in h.windings)) < SURE:
        return say("Which taps still work is not sure: land none of them, replace it")
    return say("Still working: {taps} V. Replace it all the same, it is failing", taps=listed([role for _, role in good[1:]]))


def _working(winding: Wound) -> tuple[tuple[str, str], ...]:
    """Common and the taps before the first open, nothing where none is left."""
    good = winding.leads[: min(winding.open_at, default=0) + 1]
    return good if winding.role == "primary" and len(good) > 1 else ()


def _leak_lines(evidence: Evidence) -> list[Said]:
    return [
        _lost(pair_name(p, evidence.leads), ohm)
        if p in evidence.repeated and ohm < LOST_BELOW_OHM
        else _leaks(pair_name(p, evidence.leads), ohm)
        for p, ohm in evidence.leaks.items()
    ]


def _lost(leads: Said, ohm: float) -> Said:
    return say(
        "{pair} {kilohm:.3g} kilohm twice: insulation between windings is lost, replace it",
        pair=leads,
        kilohm=ohm / 1e3,
    )


def _leaks(leads: Said, ohm: float) -> Said:
    return say(
        "{pair} reads {kilohm:.3g} kilohm, neither winding nor open: wet leads, fingers, or insulation going",
        pair=leads,
        kilohm=ohm / 1e3,
    )
