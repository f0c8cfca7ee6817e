"""The report as JSON: the reply record's names and units, each thing with its time and where it comes from."""

import json
from collections.abc import Mapping
from typing import Any, Final

from bot.reply import fact_record, leads_record, next_test_record, reading_record, sizing_record, verdict_record
from bot.report.job_log import Taken
from bot.report.paper import Report
from bot.report.spreadsheet_rows import LIMITS, stamp
from bot.report.standards import named
from core.advice import Reason

KEYS: Final[dict[str, str]] = {
    "format": "`ohmreply report 1`; the number grows when a key changes its meaning",
    "language": "of the sentences in it",
    "job": "name of the job, as sent",
    "unit": "name of the unit, as sent, or null",
    "technicians": "who wrote, in the order of their first message",
    "opened_utc": "ISO 8601",
    "closed_utc": "ISO 8601, or null while the job is open",
    "messages": "sent: number, at_utc, by, text, and edits (the id of the message it replaces, or null)",
    "facts": "sent: as in the reply record, with at_utc, message, stands (false where it was taken back or told anew) and after (true "
    "where it was told of the repaired unit)",
    "readings": "sent: as in the reply record (value in the unit beside it, or `open`), with at_utc, message, stands, proof (true where it "
    "was read after the repair), low_impedance and not_isolated",
    "verdict": "computed: as in the reply record, or null",
    "why": "computed: each reading with low and high (what the finding would read, in the reading's unit; null where that is open), "
    "good_low and good_high (what a sound unit would read) and speaks (`for`, `against`, `neither`)",
    "leads": "computed: as in the reply record, or null",
    "sizing": "computed: as in the reply record (VA, A, V, ft by the names), or null",
    "next_test": "computed: as in the reply record, or null in a closed job",
    "outcome": "sent: what was done, in the technician's words, or null",
    "proved": "computed: what the readings after the repair say",
    "cautions": "said by the bot: name, at_utc, message, text, source",
    "standards": "said by the bot: titles and clauses behind the cautions (those of the sizing stand in its rules); note where a text was not open when it was put down",
    "photos": "sent: at_utc, caption, bytes (how many; the pictures themselves stand in the PDF)",
    "computed": "names of the keys that were worked out and not sent",
}
"""Every key at the top and what it holds."""

COMPUTED: Final = ("verdict", "why", "leads", "sizing", "next_test", "proved")


def as_json(report: Report) -> str:
    """
    The report as JSON.

    Args:
        report: The report.

    Returns:
        One object with the keys of `KEYS`, indented, not escaped beyond need.
    """
    return json.dumps(_record(report), ensure_ascii=False, indent=2) + "\n"


def _record(report: Report) -> Mapping[str, Any]:
    log = report.log
    proved = report.part("proved")
    return {
        "format": "ohmreply report 1",
        "language": report.language,
        "job": log.name,
        "unit": log.unit,
        "technicians": list(log.technicians),
        "opened_utc": stamp(log.opened),
        "closed_utc": stamp(log.closed) if log.closed else None,
        "messages": [
            {"number": s.number, "at_utc": stamp(s.at), "by": s.by, "text": s.text, "edits": s.edits} for s in log.sent
        ],
        "facts": [
            fact_record(t.fact) | {"at_utc": stamp(t.at), "message": t.number, "stands": t.stands, "after": t.after}
            for t in log.told
        ],
        "readings": [_reading(taken) for taken in log.taken],
        "verdict": verdict_record(log.verdict),
        "why": [_reason(reason) for reason in log.verdict.reasons] if log.verdict else [],
        "leads": leads_record(log.leads),
        "sizing": sizing_record(log.sizing),
        "next_test": next_test_record(log.next_test) if log.closed is None else None,
        "outcome": log.outcome,
        "proved": list(proved.lines) if proved else [],
        "cautions": [
            {"name": g.name, "at_utc": stamp(g.at), "message": g.number, "text": report.tell(g.says), "source": str(g.source)}
            for g in log.given
        ],
        "standards": [{"title": s.title, "clause": s.clause, "note": s.note} for s in named(log)],
        "photos": [{"at_utc": stamp(p.at), "caption": p.caption, "bytes": len(p.body)} for p in log.photos],
        "computed": list(COMPUTED),
    }


def _reading(taken: Taken) -> dict[str, Any]:
    reading = taken.reading
    return reading_record(reading) | {
        "at_utc": stamp(taken.at),
        "message": taken.number,
        "stands": taken.stands,
        "proof": taken.proof,
        "low_impedance": reading.low_impedance,
        "not_isolated": reading.not_isolated,
    }


def _reason(reason: Reason) -> dict[str, Any]:
    limits = {name: None if (v := getattr(reason, name)) is None else float(f"{v:.4g}") for name in LIMITS}
    return reading_record(reason.reading) | limits | {"speaks": reason.speaks}
