"""The proof after installing: what to read, what to expect, and pass or fail once the readings are in."""

from collections.abc import Iterator
from dataclasses import dataclass

from core.advice import Answer, NextTest
from core.circuit.windings import output_volts
from core.measures import MEASURES
from core.readings import Job
from core.said import Said, say
from core.sizing.told import Part, Told, record, rule_line, told
from core.standards.coil_range import COIL_RANGE, HIGHEST_SHARE, PULL_IN_SHARE

SUPPLY_SHARE = 0.10
"""What a supply may be off its nominal. Common practice, no source; service voltage laws are narrower."""
CLAMP_A = 0.1
"""What a clamp meter is off by on an amp or two."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Expected:
    """One reading of the proof."""

    measure: str
    low: float
    high: float


def expected(facts: Told) -> tuple[Expected, ...]:
    """
    The readings of the proof, in the order they are taken.

    Args:
        facts: The job; the ranges follow its rating, supply, tap and the volts read on the line.

    Returns:
        Each reading with the least and the most that passes.
    """
    rated_v, unit = facts.loads.rated_v, facts.unit_va or 40.0
    supply = facts.supply_v
    tap = facts.job.number("tap_volts") or supply
    line = _line_v(facts.job) or supply or 120.0
    tap = tap or line
    load = facts.load_va if facts.load_va is not None else unit
    open_low, _, open_high = output_volts(unit, tap, line, 0.0, rated_secondary_v=rated_v)
    full_low, _, _ = output_volts(unit, tap, line, min(max(load, unit), 1.25 * unit), rated_secondary_v=rated_v)
    rows = [] if supply is None else [Expected(measure="line_volts", low=0.9 * supply, high=1.1 * supply)]
    least = PULL_IN_SHARE * rated_v
    amps = unit / rated_v
    return (
        *rows,
        Expected(measure="secondary_volts_lifted", low=open_low, high=open_high),
        Expected(measure="secondary_volts", low=max(least, full_low), high=open_high),
        Expected(measure="control_volts", low=least, high=open_high),
        Expected(measure="coil_volts", low=least, high=max(HIGHEST_SHARE * rated_v, open_high)),
        Expected(measure="secondary_amps", low=0.0, high=amps),
    )


def _line_v(job: Job) -> float | None:
    for name in ("primary_volts", "line_volts"):
        read = job.last(name)
        if read is not None and isinstance(read.value, int | float) and read.value > 0.0:
            return float(read.value)
    return None


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
    facts = told(job)
    rows = expected(facts)
    read = {row.measure: job.last(row.measure) for row in rows}
    failed = [row for row in rows if _fails(row, _value(job, row.measure))]
    open_rows = [row for row in rows if read[row.measure] is None]
    lines = [_verdict(len(failed), len(open_rows))]
    lines += [_line(row, _value(job, row.measure)) for row in rows]
    if facts.unit_va is None:
        lines.append(say("Ranges are for 40 VA: send the nameplate VA for your own"))
    part = Part(lines=tuple(lines), rules=(COIL_RANGE,))
    sizing = record((*_numbers(facts), part))
    rule = rule_line(sizing.rules)
    return Answer(
        lines=tuple(lines) + ((rule,) if rule else ()),
        cautions=("no_bigger_fuse", "local_code") if failed else ("local_code",),
        next_test=NextTest(measure=open_rows[0].measure, instruction=MEASURES[open_rows[0].measure].how) if open_rows else None,
        sizing=sizing,
    )


def _numbers(facts: Told) -> Iterator[Part]:
    if facts.load_va is not None:
        yield Part(
            numbers={"load_va": round(facts.load_va, 2), "secondary_amps": round(facts.load_va / facts.loads.rated_v, 3)}
        )


def _value(job: Job, measure: str) -> float | str | None:
    read = job.last(measure)
    return None if read is None else read.value


def _fails(row: Expected, value: float | str | None) -> bool:
    if value is None:
        return False
    slack = CLAMP_A / 2.0 if MEASURES[row.measure].unit == "A" else 0.05
    return not isinstance(value, int | float) or not row.low - slack <= value <= row.high + slack


def _verdict(failed: int, missing: int) -> Said:
    if failed == 1:
        return say("FAIL: 1 reading out of its range")
    if failed:
        return say("FAIL: {failed} readings out of their range", failed=failed)
    if missing == 1:
        return say("Not proved yet: 1 reading to take")
    if missing:
        return say("Not proved yet: {missing} readings to take", missing=missing)
    return say("PASS: every reading is in its range")


def _line(row: Expected, value: float | str | None) -> Said:
    place, failed = MEASURES[row.measure].place, _fails(row, value)
    if isinstance(value, str):
        return say("Fail, {place}: open is no live reading", place=place)
    if MEASURES[row.measure].unit == "A":
        return _amps_line(row, value, place, failed=failed)
    named = {"place": place, "low": row.low, "high": row.high}
    if value is None:
        return say("{place}: expect {low:.1f} to {high:.1f} V", **named)
    if failed:
        return say("Fail, {place}: {value:.1f} V, expected {low:.1f} to {high:.1f} V", value=value, **named)
    return say("Pass, {place}: {value:.1f} V, expected {low:.1f} to {high:.1f} V", value=value, **named)


def _amps_line(row: Expected, value: float | None, place: Said, *, failed: bool) -> Said:
    if value is None:
        return say("{place}: expect up to {high:.2f} A", place=place, high=row.high)
    if failed:
        return say("Fail, {place}: {value:.2f} A, at most {high:.2f} A", place=place, value=value, high=row.high)
    return say("Pass, {place}: {value:.2f} A, at most {high:.2f} A", place=place, value=value, high=row.high)
