"""The rows of the report's spreadsheet."""

from collections.abc import Callable, Iterator
from datetime import UTC, datetime
from typing import Final

from bot.report.job_log import Taken
from bot.report.paper import Report
from bot.report.standards import named
from core.measures import MEASURES
from core.readings import FACTS, OPEN, Fact, Reading, Value

HEADS: Final[dict[str, str]] = {
    "row": "`job`, `fact`, `reading`, `proof`, `verdict`, `also`, `why`, `lead`, `landing`, `sizing`, `done`, `caution`, "
    "`photo`, `standard` or `next`",
    "mark": "`sent` by the technician, `computed` from it, or `said` by the bot",
    "time_UTC": "when it was sent, ISO 8601",
    "message": "number of the message in the job's log",
    "what": "measure, fact, finding, lead, quantity or caution by its name in the reply record",
    "leads": "the two leads, with a slash between them where a lead's own name has none",
    "volts_V": "",
    "current_A": "",
    "resistance_ohm": "empty where the meter read open: then `over_range` says `yes`",
    "power_VA": "",
    "length_ft": "",
    "other_number": "a number whose unit stands in `other_unit`: gauge, degrees, hertz, count",
    "other_unit": "",
    "over_range": "`yes` where the meter showed OL",
    "low": "least that the finding would read, in the unit of the row's number",
    "high": "most that the finding would read",
    "good_low": "least that a sound unit would read",
    "good_high": "most that a sound unit would read",
    "probability": "0 to 1",
    "stands": "`no` where a later message took it back",
    "remark": "`after` (a fact of the repaired unit), `assumed`, `low_impedance`, `not_isolated`, `for`, `against`, `neither`, `settled`",
    "text": "words of the technician, or the sentence of the report",
}
"""Every column and what stands in it."""

Row = dict[str, object]

LIMITS: Final = ("low", "high", "good_low", "good_high")
"""Of a reason: what the finding and what a sound unit would read."""

_COLUMN: Final = {"V": "volts_V", "A": "current_A", "ohm": "resistance_ohm", "VA": "power_VA", "ft": "length_ft"}
_SIZING_UNIT: Final = {"va": "VA", "amps": "A", "volts": "V", "feet": "ft"}


def rows(report: Report) -> Iterator[Row]:
    """
    Every row of a report, in order.

    Args:
        report: The report.
    """
    for make in _MAKERS:
        yield from make(report)


def stamp(at: datetime) -> str:
    """
    A moment as machines read it.

    Args:
        at: The moment.
    """
    return at.astimezone(UTC).strftime("%Y-%m-%dT%H:%M:%SZ")


def _sent(row: str, what: str, **more: object) -> Row:
    return {"row": row, "mark": "sent", "what": what} | more


def _said(row: str, what: str, **more: object) -> Row:
    return {"row": row, "mark": "said", "what": what} | more


def _computed(row: str, what: str, **more: object) -> Row:
    return {"row": row, "mark": "computed", "what": what} | more


def _stamped(number: int, at: datetime) -> Row:
    return {"time_UTC": stamp(at), "message": number}


def _number(value: Value, unit: str | None) -> Row:
    if value == OPEN:
        return {"over_range": "yes"}
    return {_COLUMN[unit]: value} if unit in _COLUMN else {"other_number": value, "other_unit": unit or ""}


def _reading(reading: Reading) -> Row:
    return {"leads": " to ".join(reading.leads or ())} | _number(reading.value, MEASURES[reading.measure].unit)


def _lines(report: Report, name: str) -> tuple[str, ...]:
    part = report.part(name)
    return part.lines if part else ()


def _job(report: Report) -> Iterator[Row]:
    log = report.log
    yield _sent("job", "opened", time_UTC=stamp(log.opened), text=log.name)
    if log.unit:
        yield _sent("job", "unit", text=log.unit)
    yield from (_sent("job", "technician", text=name) for name in log.technicians)
    if log.closed:
        yield _sent("job", "closed", time_UTC=stamp(log.closed))


def _facts(report: Report) -> Iterator[Row]:
    for told in report.log.told:
        number = (
            _number(float(v), told.fact.unit or FACTS[told.fact.fact]) if isinstance(v := told.fact.value, int | float) else {}
        )
        stands = {"stands": "yes" if told.stands else "no", "remark": "after" if told.after else "", "text": _words(told.fact)}
        yield _sent("fact", told.fact.fact) | _stamped(told.number, told.at) | number | stands


def _words(fact: Fact) -> str:
    value = fact.value
    told = "/".join(f"{v:g}" for v in value) if isinstance(value, tuple) else value if isinstance(value, str) else None
    count = f"x {fact.count}" if fact.count else None
    inrush = f"{fact.inrush:g} VA inrush" if fact.inrush is not None else None
    return " ".join(word for word in (fact.lead, fact.role, fact.device, count, inrush, told) if word)


def _readings(report: Report) -> Iterator[Row]:
    yield from (_taken(taken) for taken in report.log.taken)


def _taken(taken: Taken) -> Row:
    remarks = " ".join(name for name in ("assumed", "low_impedance", "not_isolated") if getattr(taken.reading, name))
    kind = _sent("proof" if taken.proof else "reading", taken.reading.measure)
    return (
        kind
        | _stamped(taken.number, taken.at)
        | _reading(taken.reading)
        | {"stands": "yes" if taken.stands else "no", "remark": remarks}
    )


def _verdict(report: Report) -> Iterator[Row]:
    verdict = report.log.verdict
    if verdict is None:
        return
    text = "; ".join(_lines(report, "verdict"))
    settled = "settled" if verdict.settled else ""
    yield _computed("verdict", verdict.finding, probability=round(verdict.confidence, 4), remark=settled, text=text)
    yield from (_computed("also", name) for name in verdict.also)
    for reason in verdict.reasons:
        limits = {name: float(f"{v:.4g}") for name in LIMITS if (v := getattr(reason, name)) is not None}
        yield _computed("why", reason.reading.measure, remark=reason.speaks) | _reading(reason.reading) | limits


def _leads(report: Report) -> Iterator[Row]:
    leads = report.log.leads
    if leads is None:
        return
    for winding in leads.windings:
        for lead, role in winding.leads:
            yield _computed("lead", lead, text=f"{winding.role} {role}", probability=round(leads.confidence, 4))
    if (land := leads.land) is not None:
        out = dict(zip(("low", "high"), land.volts_out, strict=True)) if land.volts_out else {}
        yield _computed("landing", land.lead or "", volts_V=land.supply_volts) | out


def _sizing(report: Report) -> Iterator[Row]:
    sizing = report.log.sizing
    if sizing is None:
        return
    for name in sizing.__slots__:
        if isinstance(value := getattr(sizing, name), float):
            yield _computed("sizing", name) | _number(value, _unit_of(name))
    for rule in (*sizing.rules, *((sizing.refused,) if sizing.refused else ())):
        yield _computed("sizing", "rule", text=report.tell(rule))


def _unit_of(name: str) -> str:
    """The unit that a number of the sizing has by its name."""
    return next(_SIZING_UNIT[word] for word in name.split("_") if word in _SIZING_UNIT)


def _done(report: Report) -> Iterator[Row]:
    if report.log.outcome:
        yield _sent("done", "", text=report.log.outcome)
    yield from (_computed("proof", "", text=line) for line in _lines(report, "proved"))


def _cautions(report: Report) -> Iterator[Row]:
    for given in report.log.given:
        yield _said("caution", given.name, text=report.tell(given.says)) | _stamped(given.number, given.at)


def _standards(report: Report) -> Iterator[Row]:
    yield from (_said("standard", "", text=str(source)) for source in named(report.log))


def _photos(report: Report) -> Iterator[Row]:
    yield from (_sent("photo", "", time_UTC=stamp(photo.at), text=photo.caption) for photo in report.log.photos)


def _next(report: Report) -> Iterator[Row]:
    test = report.log.next_test
    if test is not None:
        yield from (_computed("next", test.measure, text=line) for line in _lines(report, "to_do"))


_MAKERS: Final[tuple[Callable[[Report], Iterator[Row]], ...]] = (
    _job,
    _facts,
    _readings,
    _verdict,
    _leads,
    _sizing,
    _done,
    _cautions,
    _photos,
    _standards,
    _next,
)
"""What the rows are made by, in their order."""
