"""The proof after installing: what to read, what to expect, and pass or fail once the readings are in."""

from dataclasses import dataclass
from typing import Final

from core.advice import Answer, NextTest
from core.circuit.windings import output_volts
from core.measures import MEASURES
from core.readings import Job, Reading
from core.said import Said, say
from core.sizing.told import Part, Told, record, rule_line, told
from core.standards.coil_range import COIL_RANGE, HIGHEST_SHARE, PULL_IN_SHARE
from core.standards.supply_limits import OUT_OF_LIMITS

CLAMP_A: Final = 0.1
"""What a clamp meter is off by on an amp or two."""
METER_V: Final = 0.05
"""What rounding to a tenth of a volt is worth."""
TAP_FITS: Final = 0.06
"""How far a supply may be off its tap: 230 V on the 240 V tap. Wider apart it is another tap's."""
NEAR: Final = 0.2
"""A line farther off its nominal fails by itself, and no range is made from it."""
USUAL_VA: Final = 40.0
USUAL_V: Final = 120.0

UNDER_LOAD: Final = "secondary_volts"
"""The reading that counts only with everything called."""
NAMES: Final[dict[str, Said]] = {
    "line_volts": say("Line"),
    "secondary_volts_lifted": say("Secondary, one lead off"),
    "secondary_volts": say("Secondary, all calling"),
    "control_volts": say("R to C at the stat"),
    "coil_volts": say("Coil, called"),
    "secondary_amps": say("Secondary amps, all calling"),
}
"""The readings of the proof, in the order they are taken."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Expected:
    """One reading of the proof."""

    measure: str
    low: float
    high: float

    def fails(self, reading: Reading | None) -> bool:
        """True where a reading is in and out of the range; an open is no live reading."""
        if reading is None:
            return False
        slack = CLAMP_A / 2.0 if MEASURES[self.measure].unit == "A" else METER_V
        value = reading.value
        return not isinstance(value, int | float) or not self.low - slack <= value <= self.high + slack


def expected(facts: Told) -> tuple[Expected, ...]:
    """
    The readings of the proof, in the order they are taken.

    The ranges are those of the right tap: where supply and tap do not fit each other, no reading on that tap could prove anything.

    Args:
        facts: The job; the ranges follow its rating, supply, tap and the volts read on the line.

    Returns:
        Each reading with the least and the most that passes.
    """
    rated_v, unit = facts.loads.rated_v, facts.unit_va or USUAL_VA
    supply = facts.supply_v
    line = _line_v(facts.job, supply)
    told_tap = facts.job.number("tap_volts")
    tap = supply or line if told_tap is None or tap_misfits(facts.job) else told_tap
    load = unit if facts.load_va is None else min(max(facts.load_va, unit), 1.25 * unit)
    open_low, _, open_high = output_volts(unit, tap, line, 0.0, rated_secondary_v=rated_v)
    full_low, _, _ = output_volts(unit, tap, line, load, rated_secondary_v=rated_v)
    least = min(PULL_IN_SHARE * rated_v, open_high)
    low, high = OUT_OF_LIMITS
    rows = [] if supply is None else [Expected(measure="line_volts", low=low * supply, high=high * supply)]
    return (
        *rows,
        Expected(measure="secondary_volts_lifted", low=open_low, high=open_high),
        Expected(measure="secondary_volts", low=max(least, full_low), high=open_high),
        Expected(measure="control_volts", low=least, high=open_high),
        Expected(measure="coil_volts", low=least, high=HIGHEST_SHARE * rated_v),
        Expected(measure="secondary_amps", low=0.0, high=unit / rated_v),
    )


def _line_v(job: Job, supply_v: float | None) -> float:
    """What feeds the unit: as it was read, unless that itself is nothing to go by, else the nominal."""
    for name in ("primary_volts", "line_volts"):
        read = job.last(name)
        value = 0.0 if read is None or not isinstance(read.value, int | float) else float(read.value)
        if value > 0.0 and (supply_v is None or abs(value / supply_v - 1.0) <= NEAR):
            return value
    return supply_v or USUAL_V


def tap_misfits(job: Job) -> bool:
    """True where the nominal supply is not that of the tap in use."""
    supply, tap = job.number("supply_volts"), job.number("tap_volts")
    return supply is not None and tap is not None and abs(supply / tap - 1.0) > TAP_FITS


@dataclass(frozen=True, slots=True, kw_only=True)
class State:
    """How far a proof has come."""

    rows: tuple[Expected, ...]
    read: dict[str, Reading | None]
    misfits: bool
    of_part: bool = False
    """True where a part was put right: the transformer and what it carries are the old ones."""

    @property
    def failed(self) -> tuple[Expected, ...]:
        """The readings out of their range."""
        return tuple(row for row in self.rows if row.fails(self.read[row.measure]))

    @property
    def missing(self) -> tuple[Expected, ...]:
        """The readings still to be taken, or to be taken again under load."""
        return tuple(row for row in self.rows if self.read[row.measure] is None or self.is_unloaded(row))

    def is_unloaded(self, row: Expected) -> bool:
        """True for a secondary that was read well, but with nothing said of what was called: that proves no load."""
        reading = self.read[row.measure]
        return (
            not self.of_part
            and row.measure == UNDER_LOAD
            and reading is not None
            and not reading.loaded
            and not row.fails(reading)
        )


PROVED_BY: Final[dict[str, tuple[str, ...]]] = {
    "fuse": ("control_volts",),
    "short": ("control_volts",),
    "wiring": ("control_volts",),
    "supply": ("line_volts", "secondary_volts"),
    "tap": ("line_volts", "secondary_volts"),
}
"""What proves a part that was put right, the transformer being the old one. Common practice, no source."""


def _of_parts(job: Job, rows: tuple[Expected, ...]) -> tuple[Expected, ...]:
    """The rows that the repair asks for, and those that were read besides."""
    if not job.put_right:
        return rows
    wanted = {measure for part in job.put_right for measure in PROVED_BY[part]}
    return tuple(row for row in rows if row.measure in wanted or job.last(row.measure) is not None)


def proof_state(job: Job) -> State:
    """
    The readings of a proof beside what they should be.

    Args:
        job: What is known; its readings are those of the repaired unit.
    """
    rows = _of_parts(job, expected(told(job)))
    read = {row.measure: job.last(row.measure) for row in rows}
    if "line_volts" in read and read["line_volts"] is None:
        read["line_volts"] = job.last("primary_volts")  # what arrives at the primary stands at the line
    return State(rows=rows, read=read, misfits=tap_misfits(job), of_part=bool(job.put_right))


def has_failed(job: Job) -> bool:
    """
    True where a reading of the repaired unit is out of its range.

    Args:
        job: What is known.
    """
    state = proof_state(job)
    return state.misfits or bool(state.failed)


def prove(job: Job) -> Answer:
    """
    The proof of an installed unit, as far as its readings are in.

    Args:
        job: What is known.

    Returns:
        Pass, fail or what is still to be read, each reading with its range, and the next one to take.

    >>> from core.readings import Reading
    >>> str(prove(Job(readings=(Reading(measure="secondary_amps", value=2.4),))).lines[0])
    'FAIL: 1 reading out of its range'
    """
    facts, state = told(job), proof_state(job)
    # Asked for, the whole list; in the course of it, what has just come in and what is wrong.
    whole = not job.fresh & (NAMES.keys() | {"primary_volts"})
    fresh = job.fresh | ({"line_volts"} if "primary_volts" in job.fresh else set())
    shown = [row for row in state.rows if whole or row in state.failed or row.measure in fresh]
    lines = [_verdict(job, state), *(_told_line(state, row) for row in shown), *_over_volts(state)]
    if facts.unit_va is None and whole:
        lines.append(say("Ranges are for {usual:g} VA: send the nameplate VA for your own", usual=USUAL_VA))
    sizing = record((*_numbers(facts), Part(rules=(COIL_RANGE,))))
    rule = rule_line(sizing.rules) if whole else None
    following = state.missing[0] if state.missing and not state.misfits else None
    return Answer(
        lines=tuple(lines) + ((rule,) if rule else ()),
        cautions=("no_bigger_fuse",) if state.failed else (),
        next_test=None if following is None else _next(following, ranged=not whole),
        sizing=sizing,
    )


UNDER_LOAD_HOW: Final = say("Live, everything calling: read volts across the secondary, right at the transformer")


def _next(row: Expected, *, ranged: bool) -> NextTest:
    """The next reading to take, with its range where no list of the ranges stands above it."""
    how = UNDER_LOAD_HOW if row.measure == UNDER_LOAD else MEASURES[row.measure].how
    if not ranged:
        instruction = how
    elif MEASURES[row.measure].unit == "A":
        instruction = say("{how}: up to {high:.2f} A", how=how, high=row.high)
    else:
        instruction = say("{how}: {low:.1f} to {high:.1f} V", how=how, low=row.low, high=row.high)
    return NextTest(measure=row.measure, instruction=instruction)


def _numbers(facts: Told) -> tuple[Part, ...]:
    load = facts.load_va
    if load is None:
        return ()
    return (Part(numbers={"load_va": round(load, 2), "secondary_amps": round(load / facts.loads.rated_v, 3)}),)


def _verdict(job: Job, state: State) -> Said:
    failed, missing = len(state.failed), len(state.missing)
    if state.misfits:
        return say(
            "FAIL: {supply:g} V supply on the {tap:g} V tap. Power off, land the {supply:g} V lead, then prove it",
            supply=job.number("supply_volts"),
            tap=job.number("tap_volts"),
        )
    if failed == 1:
        return say("FAIL: 1 reading out of its range")
    if failed:
        return say("FAIL: {failed} readings out of their range", failed=failed)
    if missing == 1:
        return say("Not proved yet: 1 reading to take")
    if missing:
        return say("Not proved yet: {missing} readings to take", missing=missing)
    return say("PASS: every reading is in its range")


def _told_line(state: State, row: Expected) -> Said:
    reading = state.read[row.measure]
    if state.is_unloaded(row) and reading is not None:
        return say("Secondary {value:.1f} V: with everything calling? Read it so", value=reading.value)
    return _line(row, reading)


def _over_volts(state: State) -> tuple[Said, ...]:
    """A coil over its range has a reason ahead of the coil."""
    high = any(row.measure == "coil_volts" and _is_over(row, state.read[row.measure]) for row in state.rows)
    return (say("Over 110 %: check the tap and the line volts"),) if high else ()


def _is_over(row: Expected, reading: Reading | None) -> bool:
    return reading is not None and isinstance(reading.value, int | float) and row.fails(reading) and reading.value > row.high


def _line(row: Expected, reading: Reading | None) -> Said:
    name = NAMES[row.measure]
    value = None if reading is None else reading.value
    if isinstance(value, str):
        return say("Fail, {name}: open is no live reading", name=name)
    if MEASURES[row.measure].unit == "A":
        return _amps_line(row, value, name, failed=row.fails(reading))
    named = {"name": name, "low": row.low, "high": row.high}
    if value is None:
        return say("{name}: {low:.1f} to {high:.1f} V", **named)
    if row.fails(reading):
        return say("Fail, {name}: {value:.1f} V, expected {low:.1f} to {high:.1f} V", value=value, **named)
    return say("Pass, {name}: {value:.1f} V, {low:.1f} to {high:.1f} V", value=value, **named)


def _amps_line(row: Expected, value: float | None, name: Said, *, failed: bool) -> Said:
    if value is None:
        return say("{name}: up to {high:.2f} A", name=name, high=row.high)
    if failed:
        return say("Fail, {name}: {value:.2f} A, at most {high:.2f} A", name=name, value=value, high=row.high)
    return say("Pass, {name}: {value:.2f} A, at most {high:.2f} A", name=name, value=value, high=row.high)
