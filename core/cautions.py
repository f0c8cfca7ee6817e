"""Every caution: one short line that goes with the step that needs it, and is not said again until the circumstances change."""

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass
from typing import Final, Literal

from core.advice import NextTest
from core.measures import MEASURES
from core.readings import Job, Reading
from core.said import Said, say
from core.standards.electrical_safety import (
    CAPACITOR_DISCHARGE,
    DE_ENERGISE,
    FUSES_AS_DESIGNED,
    LARGEST_240_V,
    PROVE_TESTER,
    QUALIFIED,
    STORED_ENERGY,
    VERIFY_DEAD,
)
from core.standards.insulation import WIRING
from core.standards.meter_categories import SOURCE as METER_CATEGORIES
from core.standards.source import COMMON_PRACTICE, Source

Occasion = Literal["once per job", "once per person and day", "once per circuit state", "every time"]
"""What must change before a caution is said again. The next one of these holds all that the one before it holds."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Caution:
    """One caution."""

    name: str
    says: Said
    """One line, an action."""
    source: Source
    occasion: Occasion


@dataclass(frozen=True, slots=True, kw_only=True)
class Circumstances:
    """Who works, when, and on what: the conversation fills it from the log."""

    technician: str = ""
    day: str = ""
    """Any text that differs from day to day."""
    live: bool = False
    """True where the step is taken on an energised circuit."""
    over_300: bool = False
    times_live: int = 0
    """How often the circuit has been made live in this job: see `times_live`."""


def _row(name: str, says: Said, source: Source, occasion: Occasion = "once per job") -> Caution:
    return Caution(name=name, says=says, source=source, occasion=occasion)


CAUTIONS: Final[dict[str, Caution]] = {
    row.name: row
    for row in (
        _row(
            "prove_dead",
            say("Lock out and prove dead: live source, these terminals, live source again"),
            PROVE_TESTER,
            "once per circuit state",
        ),
        _row(
            "discharge_capacitor",
            say("Capacitor: wait a minute, measure, bleed it through a resistor until it stays under 50 V"),
            CAPACITOR_DISCHARGE,
            "once per circuit state",
        ),
        _row("isolate_first", say("Power off, one end of the part lifted, or the meter reads its neighbours"), COMMON_PRACTICE),
        _row(
            "over_300",
            say("277 V and up: only if you are qualified for it, rated gloves on, meter CAT III 600 V or better"),
            QUALIFIED,
            "once per person and day",
        ),
        _row(
            "meter_category",
            say("Line side: meter and leads marked CAT III for this voltage, leads sound, one hand"),
            METER_CATEGORIES,
            "once per person and day",
        ),
        _row("high_leg", say("The high leg is 208 V to ground: find it before you land a 120 V lead"), Source("NEC", "110.15")),
        _row(
            "ghost_voltage",
            say("This may be a ghost voltage: it proves neither dead nor live. Read it again in low-impedance mode"),
            VERIFY_DEAD,
        ),
        _row(
            "recheck_low_impedance",
            say("Read it again in the meter's low-impedance mode or with a lamp across it"),
            VERIFY_DEAD,
        ),
        _row(
            "double_volts",
            say("Power off now: this tap puts far too many volts on the controls"),
            COMMON_PRACTICE,
            "every time",
        ),
        _row("backfeed", say("Fed from the 24 V side, the primary leads carry line voltage: cap them, hands off"), VERIFY_DEAD),
        _row(
            "ratio_test_primary_only",
            say("24 V goes on the two outer primary ends only, from a fused source, never on the secondary"),
            COMMON_PRACTICE,
        ),
        _row("cap_unused_leads", say("Cap every unused lead singly: each one is live"), COMMON_PRACTICE),
        _row(
            "find_the_short_first",
            say("Find the short before a new one goes in: it would burn the next one too"),
            COMMON_PRACTICE,
        ),
        _row("no_bigger_fuse", say("Same size fuse or smaller, never bigger"), FUSES_AS_DESIGNED),
        _row("no_bypass", say("No bypass stays in: the fuse or switch goes back before you leave"), FUSES_AS_DESIGNED),
        _row(
            "momentary_jumper",
            say("A jumper only to test, with you watching the unit: out before you step away"),
            COMMON_PRACTICE,
        ),
        _row(
            "class2_no_interconnect",
            say("Keep the two 24 V supplies apart: Class 2 outputs are not joined unless listed for it"),
            Source("NEC", "725.121(B)"),
        ),
        _row("no_megohm_on_boards", say("No megohm test with a board or thermostat connected: it kills them"), WIRING),
        _row(
            "ground_meant",
            say("Fed from 277 V or more the 24 V side is grounded by rule: lift that bond before you call it a fault"),
            Source("29 CFR 1926.404", "(f)(1)(iii)"),
        ),
        _row("let_it_cool_once", say("Let it cool, power off, and read it once more before you condemn it"), COMMON_PRACTICE),
        _row("local_code", say("Local code and the inspector decide"), COMMON_PRACTICE),
        _row("licensed_hand", say("A licensed hand decides and does this part"), COMMON_PRACTICE),
        _row(
            "lock_out",
            say("Disconnect off, your lock and tag on it: a thermostat or switch is no lockout"),
            STORED_ENERGY,
            "once per circuit state",
        ),
        _row(
            "live_work",
            say("Live only to measure: power off before a tool or a hand goes in"),
            DE_ENERGISE,
            "once per circuit state",
        ),
    )
}
"""All cautions by name."""

_LINE_SIDE_LIVE: Final = frozenset({"line_volts", "primary_volts", "primary_amps"})
_INTO_THE_LINE_COMPARTMENT: Final = frozenset({"primary_ohms", "primary_secondary_ohms", "primary_ground_ohms"})
_SUPPLY_VOLTS: Final = ("line_volts", "primary_volts")
_CAPACITOR_FROM_V: Final = 180.0
"""From here the unit has a compressor or a fan with a run capacitor beside the transformer. [V] Common practice, no source."""


def supply_v(job: Job) -> float | None:
    """
    The highest voltage that is told or read on the line side.

    Args:
        job: What is known.

    Returns:
        Volts, or None where nothing was told. [V]
    """
    told = [v for fact in ("supply_volts", "tap_volts") if (v := job.number(fact)) is not None]
    read = [v for name in _SUPPLY_VOLTS if (v := job.figure(name)) is not None]
    return max((*told, *read), default=None)


def is_over_300(job: Job) -> bool:
    """
    True where the line side belongs to a system over 300 V phase to phase: 277 V counts, as one leg of 480 V.

    Args:
        job: What is known.

    >>> from core.readings import Fact
    >>> is_over_300(Job(facts=(Fact(fact="supply_volts", value=277.0),)))
    True
    """
    volts = supply_v(job)
    return volts is not None and volts > LARGEST_240_V


def may_ask(measure: str, job: Job) -> bool:
    """
    False for live work on a line side over 300 V unless the technician said to be qualified for it.

    Who said not to be is asked for nothing live in such a unit: its 24 V side is reached past the line side. And where the cabinet gave
    a shock nothing live is asked before the primary was read to the core.

    Args:
        measure: The test that would be asked for.
        job: What is known.
    """
    if "shock" in job.symptoms() and job.last("primary_ground_ohms") is None:
        return not MEASURES[measure].live
    if not is_over_300(job) or job.qualified is True:
        return True
    return not MEASURES[measure].live if job.qualified is False else measure not in _LINE_SIDE_LIVE


def for_test(test: NextTest | None, job: Job) -> tuple[str, ...]:
    """
    The cautions that belong to a step.

    Args:
        test: The step that is asked for.
        job: What is known.

    Returns:
        Names, the one that matters most first; none for a reading on the 24 V side.
    """
    if test is None or test.fact is not None:
        return ()
    if test.measure == "lead_volts":
        return ("ratio_test_primary_only",)
    if test.measure in _LINE_SIDE_LIVE:
        return ("over_300", "meter_category") if is_over_300(job) else ("meter_category",)
    if MEASURES[test.measure].live or is_loose(job):
        return ()
    if test.measure in _INTO_THE_LINE_COMPARTMENT and (supply_v(job) or 0.0) >= _CAPACITOR_FROM_V:
        return ("prove_dead", "discharge_capacitor")
    return ("prove_dead",)


def is_loose(job: Job) -> bool:
    """
    True where the transformer is in the hand: leads are spoken of, and nothing was ever read live.

    Args:
        job: What is known.
    """
    if any(MEASURES[r.measure].live for r in job.readings) or job.symptoms():
        return False
    return bool(job.readings) and all(r.measure == "lead_ohms" for r in job.readings)


def times_live(readings: Iterable[Reading]) -> int:
    """
    How often the circuit was made live: runs of live readings in the order they were told.

    Args:
        readings: All readings of the job in order.

    >>> times_live([Reading(measure=m, value=1.0) for m in ("primary_volts", "primary_ohms", "secondary_volts")])
    2
    """
    runs, was_live = 0, False
    for reading in readings:
        is_live = MEASURES[reading.measure].live
        runs += is_live and not was_live
        was_live = is_live
    return runs


_SAME: Final[dict[Occasion, tuple[str, ...]]] = {
    "once per job": (),
    "once per person and day": ("technician", "day", "over_300"),
    "once per circuit state": ("technician", "day", "over_300", "live", "times_live"),
}
"""What must be as it was when the caution was given, for it to hold still."""


def due(names: Sequence[str], given: Mapping[str, Circumstances], now: Circumstances) -> tuple[str, ...]:
    """
    Which of these cautions are still to be said.

    Args:
        names: Cautions that belong to the step, the one that matters most first.
        given: Under which circumstances each was last said in this job.
        now: The circumstances of this step.

    Returns:
        The names not said yet or said under other circumstances, in order, each once.
    """
    return tuple(name for name in dict.fromkeys(names) if name in CAUTIONS and not _holds(name, given.get(name), now))


def after_a_stop(given: Mapping[str, Circumstances]) -> dict[str, Circumstances]:
    """
    What still holds of the cautions given before work was stopped: the state of the circuit is to be found out anew.

    Args:
        given: Under which circumstances each was last said in this job.
    """
    return {
        name: then
        for name, then in given.items()
        if name not in CAUTIONS or CAUTIONS[name].occasion != "once per circuit state"
    }


def _holds(name: str, then: Circumstances | None, now: Circumstances) -> bool:
    occasion = CAUTIONS[name].occasion
    if then is None or occasion == "every time":
        return False
    if then.technician != now.technician:
        return False
    return all(getattr(then, field) == getattr(now, field) for field in _SAME[occasion])


_TOGETHER: Final[dict[tuple[str, ...], Said]] = {
    ("prove_dead", "discharge_capacitor"): say(
        "Lock out, prove dead with a tester checked before and after, and bleed the capacitor under 50 V"
    ),
    ("over_300", "meter_category"): say(
        "277 V and up: only if you are qualified for it, rated gloves on, meter CAT III 600 V, leads sound"
    ),
}
"""Two cautions of one step, said in one line."""


def line(names: Sequence[str]) -> Said | None:
    """
    The one line of caution of a step: of two that belong together both, else the first.

    Args:
        names: What `due` gave.

    Returns:
        The line, or None where nothing is due.
    """
    if not names:
        return None
    return _TOGETHER.get(tuple(names[:2]), CAUTIONS[names[0]].says)


def spoken(names: Sequence[str]) -> tuple[str, ...]:
    """
    The cautions that `line` says: what counts as given.

    Args:
        names: What `due` gave.
    """
    return tuple(names[:2]) if tuple(names[:2]) in _TOGETHER else tuple(names[:1])
