"""The reply: the text as the technician reads it, and beside it the record that every way in carries."""

from collections.abc import Mapping
from dataclasses import dataclass, field
from typing import Any

from core.advice import Answer, LeadMap, NextTest, Sizing, Verdict, Winding
from core.measures import MEASURES
from core.readings import FACTS, Fact, Reading
from grammar.message import Message


@dataclass(frozen=True, slots=True, kw_only=True)
class Reply:
    """One answer to one message."""

    text: str
    message: Message
    """What was read."""
    answer: Answer
    """What core says to it."""
    buttons: tuple[str, ...] = ()
    cautions: tuple[str, ...] = ()
    """Names of the cautions that stand in the text."""
    picture: str | None = None
    """Name of the picture that goes with it; `bot.pictures` draws it from the answer."""
    language: str = "en"
    document: str | None = None
    """Name of a document that goes with it, such as a report."""
    talk: Mapping[str, Any] = field(default_factory=dict)
    """What the fold must remember of this reply, ready for JSON: what was read, asked, cautioned. Stored beside the record."""

    def record(self) -> dict[str, Any]:
        """The contract's record, ready for JSON."""
        return {
            "reply": self.text,
            "readings": [reading_record(r) for r in self.message.readings],
            "facts": [fact_record(f) for f in self.message.facts if f.fact != "load" or f.value is not None],
            "asks": list(self.message.asks),
            "unread": list(self.message.unread),
            "unclear": [{"fragment": u.fragment, "choices": list(u.choices)} for u in self.message.unclear],
            "verdict": verdict_record(self.answer.verdict),
            "next_test": next_test_record(self.answer.next_test),
            "leads": leads_record(self.answer.leads),
            "sizing": sizing_record(self.answer.sizing),
            "cautions": list(self.cautions),
            "buttons": list(self.buttons),
            "picture": self.picture,
        }


def reading_record(reading: Reading) -> dict[str, Any]:
    """One reading of the record."""
    return {
        "measure": reading.measure,
        "value": reading.value,
        "unit": MEASURES[reading.measure].unit,
        "leads": list(reading.leads) if reading.leads else None,
        "assumed": reading.assumed,
    }


def fact_record(fact: Fact) -> dict[str, Any]:
    """One fact of the record: only what the fact has."""
    record: dict[str, Any] = {"fact": fact.fact}
    for name in ("device", "count", "lead", "role", "inrush"):
        if (value := getattr(fact, name)) is not None:
            record[name] = value
    if fact.value is not None:
        record["value"] = list(fact.value) if isinstance(fact.value, tuple) else fact.value
        if (unit := fact.unit or FACTS[fact.fact]) is not None:
            record["unit"] = unit
    return record


def verdict_record(verdict: Verdict | None) -> dict[str, Any] | None:
    """The verdict of the record."""
    if verdict is None:
        return None
    return {
        "finding": verdict.finding,
        "confidence": round(verdict.confidence, 4),
        "settled": verdict.settled,
        "transformer": verdict.transformer,
        "also": list(verdict.also),
        "ranked": [{"finding": r.finding, "probability": round(r.probability, 4)} for r in verdict.ranked],
    }


def next_test_record(test: NextTest | None) -> dict[str, Any] | None:
    """The next test of the record."""
    if test is None:
        return None
    record: dict[str, Any] = {
        "measure": test.measure,
        "leads": list(test.leads) if test.leads else None,
        "instruction": str(test.instruction),
    }
    return record | ({"fact": test.fact} if test.fact else {})


def leads_record(leads: LeadMap | None) -> dict[str, Any] | None:
    """The map of leads of the record."""
    if leads is None:
        return None
    land = leads.land
    return {
        "windings": _windings(leads.windings),
        "confidence": round(leads.confidence, 4),
        "alternatives": [
            {"windings": _windings(a.windings), "probability": round(a.probability, 4)} for a in leads.alternatives
        ],
        "confirm": next_test_record(leads.confirm),
        "land": None
        if land is None
        else {
            "supply_volts": land.supply_volts,
            "lead": land.lead,
            "cap": list(land.cap),
            "volts_out": None if land.volts_out is None else [round(v, 2) for v in land.volts_out],
            "fits": land.fits,
        },
    }


def _windings(windings: tuple[Winding, ...]) -> list[Mapping[str, Any]]:
    return [{"role": w.role, "leads": dict(w.leads)} for w in windings]


def sizing_record(sizing: Sizing | None) -> dict[str, Any] | None:
    """The sizing of the record."""
    if sizing is None:
        return None
    names = (
        "load_va", "inrush_va", "pick_va", "secondary_amps", "primary_amps", "fuse_amps", "primary_fuse_amps", "class2",
        "drop_volts", "volts_at_load", "longest_feet", "output_volts",
    )  # fmt: skip
    return {name: getattr(sizing, name) for name in names} | {
        "refused": None if sizing.refused is None else str(sizing.refused),
        "rules": [str(rule) for rule in sizing.rules],
    }
