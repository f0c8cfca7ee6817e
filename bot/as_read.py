"""A message as it was read, to and from JSON: it is kept with the reply, so that an old log need not be read again."""

from collections.abc import Mapping
from dataclasses import fields
from typing import Any, Final

from core.heard.record import Heard
from core.readings import Fact, Reading
from core.said import Said
from grammar.message import Message, Unclear

_PLAIN: Final = ("asks", "unread", "dangers", "withdrawn", "chatter", "topics", "renewed", "unknown_loads", "lacks")
_PAIRS: Final = ("repairs",)
_SINGLE: Final = (
    "language",
    "name",
    "proved_dead",
    "qualified",
    "forgets",
    "repaired",
    "meant_va",
    "asked_device",
    "undoes",
    "turn",
)


def message_to_json(message: Message) -> dict[str, Any]:
    """Only what the message has, ready for JSON."""
    record: dict[str, Any] = {name: list(value) for name in (*_PLAIN, *_PAIRS) if (value := getattr(message, name))}
    if message.readings:
        record["readings"] = [_slim(reading) for reading in message.readings]
    if message.facts:
        record["facts"] = [_slim(fact) for fact in message.facts]
    if message.unclear:
        record["unclear"] = [
            {
                "fragment": u.fragment,
                "choices": list(u.choices),
                "readings": [_slim(r) for r in u.readings],
                "question": None if u.question is None else str(u.question),
            }
            for u in message.unclear
        ]
    if message.heard:
        record["heard"] = [[h.what, h.part, h.fragment, list(h.values), h.unit] for h in message.heard]
    return record | {name: value for name in _SINGLE if (value := getattr(message, name)) is not None}


def message_from_json(record: Mapping[str, Any]) -> Message:
    """The message that `message_to_json` wrote. A question comes back as it was asked, in English."""
    plain: dict[str, Any] = {name: tuple(record.get(name, ())) for name in _PLAIN} | {
        name: record.get(name) for name in _SINGLE
    }
    return Message(
        readings=tuple(_reading(r) for r in record.get("readings", ())),
        facts=tuple(_fact(f) for f in record.get("facts", ())),
        unclear=tuple(
            Unclear(
                fragment=u["fragment"],
                choices=tuple(u["choices"]),
                readings=tuple(_reading(r) for r in u["readings"]),
                question=None if u["question"] is None else Said(u["question"].replace("{", "{{").replace("}", "}}")),
            )
            for u in record.get("unclear", ())
        ),
        heard=tuple(
            Heard(what, part, fragment, tuple(values), unit) for what, part, fragment, values, unit in record.get("heard", ())
        ),
        repairs=tuple((written, meant) for written, meant in record.get("repairs", ())),
        **plain,
    )


def _slim(row: Reading | Fact) -> dict[str, Any]:
    values = {f.name: getattr(row, f.name) for f in fields(row)}
    return {name: value for name, value in values.items() if value is not None and value is not False}


def _reading(record: Mapping[str, Any]) -> Reading:
    leads = record.get("leads")
    return Reading(**{**record, "leads": (leads[0], leads[1]) if leads else None})


def _fact(record: Mapping[str, Any]) -> Fact:
    value = record.get("value")
    return Fact(**{**record, "value": tuple(value) if isinstance(value, list) else value})
