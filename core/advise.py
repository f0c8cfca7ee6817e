"""The one question to core: what is to be said to this job? Each part of the engineering answers for itself; this file puts the answers together."""

from dataclasses import replace
from importlib import import_module
from typing import TYPE_CHECKING, Final

from core.advice import Answer, NextTest, Verdict
from core.cautions import for_test
from core.diagnosis import diagnose
from core.heard.answers import spoken
from core.measures import MEASURES
from core.readings import OPEN, Job
from core.repairs import REPAIRS

if TYPE_CHECKING:
    from collections.abc import Callable

_SIZING: Final = frozenset({"size", "fuse", "wire_run", "parallel"})
_GO_ON: Final = frozenset({"next", "cannot", "undo", "all_well", "yes", "no"})
"""Asks that go on with the diagnosis."""
_SIZING_FACTS: Final = frozenset({"load", "run_feet", "wire_awg"})

ANSWERED_ALONE: Final = {
    "expect": ("core.diagnosis", "expect"),
    "why": ("core.diagnosis", "explain"),
    "tap": ("core.leads", "choose_tap"),
    "va_estimate": ("core.leads", "estimate_va"),
    "prove": ("core.sizing", "prove"),
    "winding_picture": ("core.leads", "step_down"),
}
"""Questions with an answer of their own, in the order in which they are answered, and whose door answers them. A door is opened only
when it is asked: most messages need the diagnosis alone, and the first reply is waited for."""


def _ask(door: str, name: str, job: Job) -> Answer | None:
    answer: Callable[[Job], Answer | None] = getattr(import_module(door), name)
    return answer(job)


def advise(job: Job) -> Answer:
    """
    Everything that the engineering says to a job at this moment.

    Args:
        job: What is known, with the asks of the message that is answered.

    Returns:
        Lines of the parts in the order in which they are to be read. The verdict speaks of the whole job; a map of leads and a sizing
        come only with a message that is about them.
    """
    if _is_a_list_of_loads(job):
        job = replace(job, asks=tuple("size" if ask == "next" else ask for ask in job.asks))
    diagnosis = diagnose(_of_the_circuit(job))
    parts = [part for part in _parts(job) if part is not None]
    heard = spoken(job)
    parts[:0] = [Answer(lines=said.lines, cautions=said.cautions, next_test=said.next_test) for said in heard]
    verdict = _worse(diagnosis.verdict, [part.verdict for part in parts])
    if any(said.decides for said in heard):  # what is to be done next is said with it
        diagnosis = replace(diagnosis, lines=(), cautions=(), next_test=None)
    # What was asked is answered first; the diagnosis has a voice of its own only where it is spoken to.
    quiet = replace(diagnosis, lines=(), cautions=(), picture=None)
    is_apart = _is_size_by_ohms(job) or _is_only_about_leads(job) or (bool(job.topics) and not job.fresh & MEASURES.keys())
    quiet = replace(quiet, next_test=None) if is_apart else quiet
    parts.append(diagnosis if is_about_the_circuit(job) else quiet)
    if "prove" in job.asks and not _has_failed(job):
        parts[-1] = replace(parts[-1], next_test=None)  # a repair that holds is not searched further
    test = _first_proof(job) or next((part.next_test for part in parts if part.next_test is not None), None)
    return Answer(
        lines=tuple(dict.fromkeys(line for part in parts for line in part.lines)),
        cautions=tuple(dict.fromkeys((*(c for part in parts for c in part.cautions), *for_test(test, job)))),
        next_test=test,
        verdict=verdict,
        leads=next((part.leads for part in parts if part.leads is not None), None),
        sizing=next((part.sizing for part in parts if part.sizing is not None), None),
        picture=next((part.picture for part in parts if part.picture is not None), None),
    )


PROVED_BY: Final = {"fuse": "control_volts", "short": "control_volts", "wiring": "control_volts", "supply": "secondary_volts", "tap": "secondary_volts"}  # fmt: skip
"""What is read first once a part was put right."""


def _first_proof(job: Job) -> NextTest | None:
    """The reading that shows whether what was put right just now is; None where nothing was, or it is told with it."""
    part = next((name for name in PROVED_BY if name in job.fresh), None)
    if part is None or "prove" not in job.asks or job.last(PROVED_BY[part]) is not None or job.fresh & _PROOF:
        return None
    return NextTest(measure=PROVED_BY[part], instruction=MEASURES[PROVED_BY[part]].how)


_PROOF: Final = frozenset({"secondary_volts", "secondary_volts_lifted", "control_volts", "coil_volts"})


def leads_and_sizing(job: Job) -> Answer:
    """
    The map of leads and the sizing that `advise` gives to a job, without the diagnosis beside them.

    Args:
        job: What is known, with the asks of the message that is answered.
    """
    parts = [part for part in _parts(job) if part is not None]
    return Answer(
        leads=next((part.leads for part in parts if part.leads is not None), None),
        sizing=next((part.sizing for part in parts if part.sizing is not None), None),
    )


def _parts(job: Job) -> list[Answer | None]:
    if _is_va_of_a_coil(job):
        job = replace(job, asks=tuple("size" if ask == "va_estimate" else ask for ask in job.asks))
    asked = set(job.asks)
    if _is_supply_of_leads(job):
        asked = (asked - {"which_lead"}) | {"tap"}
    if "core_inches" in job.fresh:  # told for one purpose only
        asked |= {"va_estimate"}
    circuit = _of_the_circuit(job)
    answers = [
        _ask(door, name, circuit if door == "core.diagnosis" else job)
        for ask, (door, name) in ANSWERED_ALONE.items()
        if ask in asked
    ]
    if _is_phase_test(job):
        asked = asked - {"which_lead"}
    about_leads = {"lead_ohms", "lead_volts", "lead_is", "nameplate_taps"}
    about_leads |= _OF_WINDINGS if _has_twin_windings(job) else set()
    about_leads -= {"nameplate_taps"} if job.topics or _is_of_a_circuit(job) else set()
    about_leads -= {"lead_volts"} if _is_phase_test(job) else set()
    goes_on = bool({"cannot", "next"} & asked) and _is_only_about_leads(job)
    if "tap" not in asked and (job.fresh & about_leads or "which_lead" in asked or goes_on):
        answers.append(_ask("core.leads", "map_leads", job))
    if _is_for_sizing(job):
        answers.append(_ask("core.sizing", "size", job))
    return answers


def _is_of_a_circuit(job: Job) -> bool:
    """True where the readings are of a circuit and of no leads: a nameplate told in the middle asks for no map."""
    of_leads = any(reading.leads is not None for reading in job.readings)
    return bool(job.readings or job.symptoms()) and not of_leads and "which_lead" not in job.asks


def _is_only_about_leads(job: Job) -> bool:
    """True where all that was read lies between named leads, but for the line."""
    between = all(reading.leads is not None or reading.measure == "line_volts" for reading in job.readings)
    of_leads = bool(_OF_LEADS & {reading.measure for reading in job.readings}) or _has_twin_windings(job)
    return between and of_leads and not job.symptoms()


def _has_twin_windings(job: Job) -> bool:
    """True where more than one pair of a side was read: that is to tell leads apart, not to judge one winding."""
    read = {(r.measure, frozenset(r.leads)) for r in job.readings if r.leads is not None and r.measure in _OF_WINDINGS}
    return len(read) > len({measure for measure, _ in read})


def _of_the_circuit(job: Job) -> Job:
    """
    The job with one reading of each winding, as the circuit has one.

    Two leads that each read ohms to another one lie on two windings, and an open between them is as it should be.
    """
    of_windings = [r for r in job.readings if r.leads and r.measure in _OF_WINDINGS]
    held = {lead for r in of_windings if r.value != OPEN for lead in r.leads or ()}
    sound = [r for r in of_windings if r.value != OPEN or not held.issuperset(r.leads or ())]
    last = {r.measure: r for r in job.readings if r.measure in _OF_WINDINGS and (r.leads is None or r in sound)}
    kept = tuple(r for r in job.readings if r.measure not in _OF_WINDINGS or last.get(r.measure) is r)
    return job if len(kept) == len(job.readings) else replace(job, readings=kept)


_OF_WINDINGS: Final = frozenset({"primary_ohms", "secondary_ohms"})


def _is_supply_of_leads(job: Job) -> bool:
    """True where the leads are told apart and the supply is told next: what is wanted is the tap."""
    return bool(job.fresh) and job.fresh <= {"supply_volts", "line_volts"} and _is_only_about_leads(job)


_OF_LEADS: Final = frozenset({"lead_ohms", "lead_volts"})


def _is_va_of_a_coil(job: Job) -> bool:
    """True where VA are asked of a coil by its ohms: that is the size's to refuse, and no transformer is meant."""
    windings = {"primary_ohms", "secondary_ohms", "secondary_volts_lifted"}
    return "va_estimate" in job.asks and "coil_ohms" in job.fresh and not job.fresh & windings


def _is_a_list_of_loads(job: Job) -> bool:
    """True where "what now" is asked in a job of loads alone: nothing is wrong there that a test would find."""
    return "next" in job.asks and bool(job.every("load")) and not (job.readings or job.symptoms() or job.heard)


def _is_size_by_ohms(job: Job) -> bool:
    """True where a size is asked for by nothing but the ohms of coils: refused, and no fault is looked for."""
    asked = "size" in job.asks or _is_va_of_a_coil(job)
    return asked and bool(job.fresh) and job.fresh <= {"coil_ohms", "load"} and not job.symptoms()


def _is_phase_test(job: Job) -> bool:
    """True for volts from the R of one unit to the R of another, just told."""
    read = job.last("lead_volts") if "lead_volts" in job.fresh else None
    return read is not None and read.is_of_two_units


def _is_for_sizing(job: Job) -> bool:
    if "prove" in job.asks:
        return False
    if _is_phase_test(job):
        return True
    if set(job.asks) & _SIZING or job.topics or "secondary_ground" in job.dangers:
        return True
    if job.fresh & _SIZING_FACTS or job.unknown_loads:
        return True
    # What only sizing can use: it says nothing to a sound nameplate or a supply alone.
    of_sizing = {"rated_va", "rated_secondary_volts", "supply_hertz", "supply_volts"}
    asked_elsewhere = {"tap", "which_lead", "expect"} & set(job.asks)
    return bool(job.fresh & of_sizing) and not job.fresh & MEASURES.keys() and not asked_elsewhere


def is_about_the_circuit(job: Job) -> bool:
    """
    True where the message brought something for the diagnosis, or asked for the next step.

    Args:
        job: What is known, with what the message that is answered brought.
    """
    if _is_supply_of_leads(job):
        return False
    own = job.fresh - {"lead_ohms", "lead_volts", "lead_is", "nameplate_taps"} - _SIZING_FACTS
    if _is_size_by_ohms(job):
        return False
    if _is_only_about_leads(job):
        own -= {"primary_ohms", "secondary_ohms", "primary_secondary_ohms"}
    if "secondary_ground" in job.dangers or job.topics:
        own -= {"supply_volts", "tap_volts"}
    # A nameplate that comes in the middle of a diagnosis belongs to it.
    is_nameplate = bool(own & _NAMEPLATE) and bool(job.readings) and not job.asks and not job.fresh & _SIZING_FACTS
    is_asked_on = bool(_GO_ON & set(job.asks)) and not _is_only_about_leads(job)
    return bool(own & (_CIRCUIT | REPAIRS.keys())) or is_nameplate or is_asked_on


_NAMEPLATE: Final = frozenset({"rated_va", "rated_secondary_volts"})


_CIRCUIT: Final = frozenset(
    {
        "line_volts", "primary_volts", "secondary_volts", "secondary_volts_lifted", "control_volts", "coil_volts", "fuse_volts",
        "primary_amps", "secondary_amps", "primary_ohms", "secondary_ohms", "primary_secondary_ohms", "primary_ground_ohms",
        "secondary_ground_ohms", "load_ohms", "fuse_ohms", "coil_ohms", "symptom", "tap_volts", "supply_volts", "tap_lead",
    }
)  # fmt: skip
"""The measures and facts that the diagnosis lives on."""


def speaks_of_circuit(job: Job, verdict: Verdict | None) -> bool:
    """
    True where the verdict is to be told: the message was about the circuit, and no other question was asked that comes before a guess.

    Args:
        job: What is known, with what the message that is answered brought.
        verdict: What is thought of the circuit.
    """
    if not is_about_the_circuit(job) or _is_decided_besides(job, verdict):
        return False
    if "prove" in job.asks:  # the search goes on where the repair does not hold
        return _has_failed(job)
    return not ANSWERED_ALONE.keys() & set(job.asks) or (verdict is not None and verdict.transformer != "unproven")


def _is_decided_besides(job: Job, verdict: Verdict | None) -> bool:
    """True where something heard says what to do next, and the readings alone are not sure."""
    is_sure = verdict is not None and verdict.confidence >= SURE
    return not is_sure and any(said.decides for said in spoken(job))


SURE: Final = 0.9
"""From this probability on a verdict is told beside what decides the call."""


def _has_failed(job: Job) -> bool:
    failed: bool = import_module("core.sizing").has_failed(job)
    return failed


def _worse(own: Verdict | None, others: list[Verdict | None]) -> Verdict | None:
    """An open seen between the leads is a finding, whatever the rest of the readings allow."""
    seen = next((v for v in others if v is not None and v.transformer == "bad"), None)
    if seen is None or (own is not None and own.finding == seen.finding and own.confidence >= seen.confidence):
        return own
    if own is not None and own.transformer == "bad" and own.confidence >= seen.confidence:
        return own
    return replace(seen, also=tuple(dict.fromkeys((*seen.also, *(own.also if own else ())))))
