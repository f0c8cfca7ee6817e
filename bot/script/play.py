"""Playing a written conversation: each message goes the way that every channel takes, by the clock of the file."""

import re
from collections.abc import Mapping
from dataclasses import dataclass
from typing import Any

from sqlalchemy import Engine
from sqlalchemy.orm import Session

from bot.desk import Incoming, Memory, take
from bot.script.expected import EXPECTATIONS, met
from bot.script.scene import Scene, Spoken
from bot.store.hand_over import CODE, code_in
from bot.store.schema import open_store
from core.said import Said, say

ANY_CODE = re.compile(r"\bCODE\b")


@dataclass(frozen=True, slots=True)
class Played:
    """One message with what came back."""

    spoken: Spoken
    reply: str
    record: Mapping[str, Any]
    document: str | None
    untapped: bool
    """True where the message is written as a tap on a button that was not there."""


def play(scene: Scene, store: Engine | None = None) -> list[Played]:
    """The conversation, played on an empty store that is gone afterwards, or on the one given."""
    engine = store or open_store("sqlite://")
    memory, played, code = Memory(), list[Played](), ""
    last_buttons: dict[str, tuple[str, ...]] = {}
    with Session(engine) as session:
        for spoken in scene.spoken:
            sent = Incoming(
                channel="local",
                address=spoken.who,
                name=spoken.who,
                text=ANY_CODE.sub(code, spoken.text) if code else spoken.text,
                sent_at=spoken.sent_at,
                message_id=spoken.message_id,
                edit=spoken.edit,
            )
            taken = take(session, sent, memory)
            session.commit()
            code = code_in(taken.text) or code
            untapped = spoken.tap and spoken.text not in last_buttons.get(spoken.who, ())
            last_buttons[spoken.who] = taken.buttons
            played.append(Played(spoken, CODE.sub("CODE", taken.text), taken.record, taken.document, untapped))
    if store is None:
        engine.dispose()
    return played


def differences(one: Played) -> list[Said]:
    """Where what came back is not what is written; nothing where it is."""
    wrong = []
    if one.spoken.reply != one.reply.split("\n"):
        wrong.append(say("The reply is another than written"))
    if one.untapped:
        wrong.append(say("No such button was there to tap: {text}", text=one.spoken.text))
    record = {**one.record, "document": one.document}
    for expectation in one.spoken.expects:
        if expectation.split(maxsplit=1)[0] not in EXPECTATIONS:
            wrong.append(say("Nothing can be expected by that name: {expectation}", expectation=expectation))
        elif not met(record, expectation):
            wrong.append(say("Not so: {expectation}", expectation=expectation))
    return wrong
