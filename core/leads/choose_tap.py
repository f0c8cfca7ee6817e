"""Which primary lead to land for a supply, which to cap, and what comes out on each choice."""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass, replace
from typing import Final

from core.advice import Answer, Landing, LeadMap, NextTest
from core.circuit.windings import FULL_LOAD_SPREAD, output_volts
from core.leads.answer import answer_of
from core.leads.belief import Belief, Hypothesis, believe
from core.leads.clues import nominal
from core.leads.evidence import Evidence, gather
from core.leads.lead_words import lead_name, listed
from core.leads.open_inside import open_lines
from core.leads.supply import READ_SUPPLY, Supply, supply_cautions, supply_lines, supply_of
from core.leads.sureness import SURE, confidence_of
from core.readings import Job
from core.said import Said, say
from core.standards.coil_range import HIGHEST_SHARE, PULL_IN_SHARE
from core.standards.source import Source

FITS: Final = 0.10
"""A tap is right within this share of its volts."""
FITS_SOURCE: Final = Source("TM 9-4120-401-14", "paragraph 4-39: 208 V control transformer tried at 208 plus or minus 20.8 V")
_MIDDLING_VA: Final = 40.0
_DOUBLE: Final = 1.6
_ALL_TOLD: Final = 3
"""Taps up to which each is told; of more only those near the supply."""
_COUNTS: Final = 0.002
"""Probability under which a map is not looked at for what it would land."""
_TOO_LITTLE: Final = 0.5
"""Under it no lead is named for landing."""
_LOOK_ALIKE: Final = (208.0, 240.0)
_USUAL_TAPS: Final = (120.0, 208.0, 240.0, 277.0, 480.0)


@dataclass(frozen=True, slots=True, kw_only=True)
class Choice:
    """One tap on this supply."""

    tap_v: float
    lead: str | None
    loaded_v: float
    open_v: float
    fits: bool


def choose_tap(job: Job) -> Answer:
    """
    Which tap to land.

    Args:
        job: What is known of the job.

    Returns:
        The landing in the map of leads, what each choice would give in the lines; a test where supply, taps or leads are not sure.
    """
    supply = supply_of(job)
    evidence = gather(job)
    belief = believe(evidence) if evidence.leads else None
    found = answer_of(belief, evidence, job) if belief is not None else Answer()
    best = belief.maps[0][0] if belief is not None and belief.maps else None
    broken = (
        list(open_lines(belief, evidence))
        if belief is not None and best is not None and any(w.open_at for w in best.windings)
        else []
    )
    if supply is None:
        lines = broken or [say("Which supply? Measure it, then take the tap that it belongs to")]
        return replace(found, lines=tuple(lines), next_test=None if broken else READ_SUPPLY)
    taps = _taps(best, evidence)
    choices = _choices(taps or [(v, None) for v in ([] if broken else _USUAL_TAPS)], supply.volts, evidence)
    right = _right(choices, supply.volts)
    landing = _landing(supply, right, choices, best)
    sure = _landing_sure(belief, evidence, supply.volts) if belief is not None and found.leads is not None else 1.0
    if sure < _TOO_LITTLE:
        told = say("First tell the leads apart: only {percent:.0f} % sure yet", percent=max(1.0, 100.0 * sure))
        return replace(found, lines=(told, *supply_lines(supply), *found.lines))
    test = _test(found, supply, right, sure) if taps or broken else _ASK_TAPS
    base = found.leads or LeadMap(windings=(), confidence=0.0)
    lines = [*broken, *_sureness(sure), *_verdict_lines(supply, right, choices, landing, best), *supply_lines(supply)]
    lines += (
        _dual_choices(choices)
        if _is_dual(best)
        else _choice_lines(choices if taps and len(taps) <= _ALL_TOLD else [c for c in choices if _is_near(c, supply.volts)])
    )
    if right is not None and _is_dual(best):
        lines += _dual_lines(best, supply.volts)
    return Answer(
        lines=tuple(lines),
        cautions=tuple(dict.fromkeys((*_cautions(landing, supply, job), *(found.cautions if sure < SURE else ())))),
        next_test=test,
        verdict=found.verdict,
        leads=replace(base, land=replace(landing, sure=sure), confirm=test if evidence.leads and sure < SURE else None),
        picture="leads" if base.windings else None,
    )


def _choices(taps: Sequence[tuple[float, str | None]], supply_v: float, evidence: Evidence) -> list[Choice]:
    return [_choice(v, lead, supply_v, evidence) for v, lead in taps]


def _landing_sure(belief: Belief, evidence: Evidence, supply_v: float) -> float:
    """
    Probability that line goes on the right two leads.

    Where the whole winding is landed it does not matter which of its ends is called common.
    """
    likely = [row for row in belief.maps if row[1] > _COUNTS]
    where = {h.key: _landed(h, evidence, supply_v) for h, _ in likely}
    return confidence_of(belief, evidence, lambda h: where.get(h.key))


def _landed(hypothesis: Hypothesis, evidence: Evidence, supply_v: float) -> tuple[float, frozenset[str]] | None:
    right = _right(_choices(_taps(hypothesis, evidence), supply_v, evidence), supply_v)
    if right is None:
        return None
    primaries = [w for w in hypothesis.windings if w.role == "primary"]
    common = {primaries[0].leads[0][0]} if len(primaries) == 1 else {lead for w in primaries for lead, _ in w.leads}
    return right.tap_v, frozenset(common | ({right.lead} if right.lead else set()))


def _test(found: Answer, supply: Supply, right: Choice | None, sure: float) -> NextTest | None:
    """What comes next: the leads while they are in doubt, the supply while it is only named, then what comes out."""
    if found.leads is not None and sure < SURE:
        return found.next_test
    if right is None:
        return None
    if not supply.measured and nominal(supply.volts) in _LOOK_ALIKE:
        return READ_SUPPLY
    return NextTest(
        measure="secondary_volts",
        instruction=say(
            "Landed and closed up: power on, read the secondary, expect {low:.1f} to {high:.1f} V",
            low=right.loaded_v * (1.0 - FULL_LOAD_SPREAD),
            high=right.open_v,
        ),
    )


_ASK_TAPS: Final = NextTest(
    measure="lead_ohms", instruction=say("Send the primary volts from the nameplate"), fact="nameplate_taps"
)


def _taps(best: Hypothesis | None, evidence: Evidence) -> list[tuple[float, str | None]]:
    """Volts and lead of each tap: from the map of leads, else from labels, else from the nameplate."""
    primaries = [w for w in best.windings if w.role == "primary"] if best is not None else []
    if len(primaries) == 1:
        w = primaries[0]
        if w.open_at:
            return [(float(role), lead) for lead, role in w.leads[1 : min(w.open_at) + 1]]
        if len(w.leads) == 2:
            return [(w.volts[1], next((lead for lead, _ in w.leads if lead != "white"), w.leads[1][0]))]
        return [(float(role), lead) for lead, role in w.leads[1:]]
    if len(primaries) == 2:
        volts = primaries[0].volts[1]
        last = primaries[1].leads[-1][0]
        return [(volts, None), (2.0 * volts, last if last.startswith("h") else None)]
    labelled = [(float(label), lead) for lead, label in evidence.labels.items() if _is_tap(label)]
    return sorted(labelled) or [(v, None) for v in evidence.taps]


def _is_tap(label: str) -> bool:
    return label.replace(".", "", 1).isdigit() and float(label) >= 100.0


def _choice(tap_v: float, lead: str | None, supply_v: float, evidence: Evidence) -> Choice:
    va = evidence.rated_va or _MIDDLING_VA
    open_v = output_volts(va, tap_v, supply_v, 0.0, rated_secondary_v=evidence.secondary_v)[1]
    return Choice(
        tap_v=tap_v,
        lead=lead,
        loaded_v=evidence.secondary_v * supply_v / tap_v,
        open_v=open_v,
        fits=abs(supply_v / tap_v - 1.0) <= FITS or nominal(supply_v) == nominal(tap_v),
    )


def _right(choices: Sequence[Choice], supply_v: float) -> Choice | None:
    """The choice whose volts are nearest, by ratio."""
    fitting = [c for c in choices if c.fits]
    return min(fitting, key=lambda c: max(supply_v / c.tap_v, c.tap_v / supply_v), default=None)


def _is_near(choice: Choice, supply_v: float) -> bool:
    return choice.fits or 0.8 <= supply_v / choice.tap_v <= 1.25


def _is_dual(best: Hypothesis | None) -> bool:
    return best is not None and sum(w.role == "primary" for w in best.windings) == 2


def _landing(supply: Supply, right: Choice | None, choices: Sequence[Choice], best: Hypothesis | None) -> Landing:
    if right is None:
        return Landing(supply_volts=supply.volts, lead=None, cap=(), volts_out=None, fits=False)
    cap = () if _is_dual(best) else tuple(lead for lead in _tapped(choices, best) if lead != right.lead)
    # The rated volts come out at the rated load, as far as units of one rating agree; with nothing connected they rise.
    out = (right.loaded_v * (1.0 - FULL_LOAD_SPREAD), right.open_v)
    return Landing(supply_volts=supply.volts, lead=right.lead, cap=cap, volts_out=out, fits=True)


def _other_end(best: Hypothesis | None, right: Choice | None) -> str | None:
    """The lead that line goes on besides that of the tap."""
    primary = next((w for w in best.windings if w.role == "primary"), None) if best is not None else None
    if primary is None or right is None:
        return None
    return next((lead for lead, _ in primary.leads if lead != right.lead), None)


def _tapped(choices: Sequence[Choice], best: Hypothesis | None) -> Iterable[str]:
    """The leads of all taps, also of those beyond an open."""
    primary = next((w for w in best.windings if w.role == "primary" and len(w.leads) > 2), None) if best is not None else None
    if primary is not None:
        return [lead for lead, _ in primary.leads[1:]]
    return [c.lead for c in choices if c.lead is not None]


def _verdict_lines(
    supply: Supply, right: Choice | None, choices: Sequence[Choice], landing: Landing, best: Hypothesis | None
) -> Iterable[Said]:
    volts = f"{supply.volts:g}"
    other = _other_end(best, right)
    if right is None and not choices:
        return
    if right is None:
        taps = [say("{volts:g} V", volts=c.tap_v) for c in choices]
        yield say("No tap fits {volts} V: this one has {taps}. Get a unit with a tap for it", volts=volts, taps=listed(taps))
    elif _is_dual(best) and right is choices[-1]:
        yield say("{volts} V: both primaries in series", volts=volts)
    elif _is_dual(best):
        yield say("{volts} V: both primaries in parallel", volts=volts)
    elif right.lead is None:
        yield say("{volts} V: land the {tap:g} V tap", volts=volts, tap=right.tap_v)
    elif other is None:
        yield say("{volts} V: land {lead}, the {tap:g} V tap", volts=volts, lead=lead_name(right.lead), tap=right.tap_v)
    else:
        yield say(
            "{volts} V: line on {lead} ({tap:g} V tap) and {common}",
            volts=volts,
            lead=lead_name(right.lead),
            tap=right.tap_v,
            common=lead_name(other),
        )
    if landing.cap:
        yield say("Cap {leads}, each one singly", leads=listed([lead_name(lead) for lead in landing.cap]))
    if not supply.measured and right is not None and nominal(supply.volts) in _LOOK_ALIKE:
        yield say("Measure the supply first: 208 and 240 V buildings look alike")


def _judged(choice: Choice) -> Said:
    share = choice.loaded_v / 24.0
    return _VERDICTS[share < PULL_IN_SHARE, share > HIGHEST_SHARE, choice.fits]


def _dual_choices(choices: Sequence[Choice]) -> Iterable[Said]:
    parallel, series = choices
    yield say("Parallel: {volts:.1f} V at rated load: {verdict}", volts=parallel.loaded_v, verdict=_judged(parallel))
    yield say("Series: {volts:.1f} V at rated load: {verdict}", volts=series.loaded_v, verdict=_judged(series))


def _choice_lines(choices: Sequence[Choice]) -> Iterable[Said]:
    for c in choices:
        yield say(
            "{tap:g} V tap: {loaded:.1f} V at rated load, {open:.1f} open: {verdict}",
            tap=c.tap_v,
            loaded=c.loaded_v,
            open=c.open_v,
            verdict=_judged(c),
        )


_LOW: Final = say("too low, coils need 20.4 V to pull in")
_HIGH: Final = say("too high, 26.4 V is the most for a coil")
_RIGHT: Final = say("right")
_BARELY: Final = say("in the coil range, but nothing to spare")
_VERDICTS: Final = {
    (True, False, False): _LOW, (True, False, True): _LOW, (False, True, False): _HIGH, (False, True, True): _HIGH,
    (False, False, True): _RIGHT, (False, False, False): _BARELY,
}  # fmt: skip
"""By: under the coil range, over it, the tap's own supply."""


def _dual_lines(best: Hypothesis | None, supply_v: float) -> Iterable[Said]:
    """How two equal primaries are joined."""
    if best is None:
        return
    one, two = [w for w in best.windings if w.role == "primary"][:2]
    a, b, c, d = (lead_name(lead) for w in (one, two) for lead, _ in w.leads)
    if supply_v / one.volts[1] > 1.5:
        yield say("In series: join {b} and {c}, line on {a} and {d}", a=a, b=b, c=c, d=d)
        yield say("Without marks prove the polarity at 24 V first: in series the wrong way gives nothing")
    else:
        yield say("In parallel: {a} with {c}, {b} with {d}, line across the two joints", a=a, b=b, c=c, d=d)
        yield say("One of them backwards is a dead short: by the marks, or prove the polarity at 24 V first")


def _sureness(sure: float) -> Iterable[Said]:
    if sure < SURE:
        yield say("The leads are only {percent:.0f} % sure: confirm them first. If they are right:", percent=100.0 * sure)


def _cautions(landing: Landing, supply: Supply, job: Job) -> Iterable[str]:
    tap = job.number("tap_volts")
    if tap is not None and supply.volts / tap > _DOUBLE:
        yield "double_volts"
    yield from supply_cautions(supply)
    if landing.cap:
        yield "cap_unused_leads"
