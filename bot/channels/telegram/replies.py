"""What the desk answered, as letters for the outbox."""

from collections.abc import Sequence
from dataclasses import dataclass

from sqlalchemy.orm import Session

from bot.channels.telegram.arrival import Arrival
from bot.channels.telegram.page import pages, units
from bot.delivery import questions
from bot.delivery.letters import Letter
from bot.delivery.questions import Whose
from bot.desk import Document, Taken
from bot.pictures import PICTURES, Picture, draw
from bot.wording.catalog import catalog
from bot.wording.verdict import verdict_lines
from core.dangers import DANGERS
from core.said import Said

CAPTION_WIDEST = 1_000
"""The messenger takes 1024. [UTF-16 units]"""
ROW_WIDEST = 26
"""Signs that a row of buttons shows on a phone without cutting them."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Extras:
    """What goes with the text."""

    picture: Picture | None = None
    documents: tuple[Document, ...] = ()


def extras(taken: Taken, documents: tuple[Document, ...]) -> Extras:
    """The picture that a reply names; it is drawn when it is sent."""
    reply = taken.reply
    if reply is None or taken.told is None or reply.picture not in PICTURES:
        return Extras(documents=documents)
    return Extras(picture=draw(reply.picture, reply.answer, taken.told, catalog(taken.language).tell), documents=documents)


def letters(
    session: Session,
    arrival: Arrival,
    taken: Taken,
    extra: Extras,
    *,
    after: Sequence[Letter] = (),
    parts: int = 0,
    more: Sequence[Said] = (),
) -> list[Letter]:
    """
    The reply to an arrival.

    Args:
        session: The turn's.
        arrival: What is answered.
        taken: What the desk made of it.
        extra: Picture and paper.
        after: Letters of the same turn that go before these.
        parts: Messages of the earlier reply that this one is put in the place of; 0 for a new one.
        more: What this channel has to add.
    """
    made = list(after)
    tell = catalog(taken.language).tell
    whole = pages("\n".join((taken.text, *map(tell, more))), headline(taken))
    last = len(after) + len(whole) - 1
    key = (arrival.update_id, last)
    for part, page in enumerate(whole):
        rows = keyboard(taken.buttons, key) if len(made) == last else None
        made.append(letter(arrival, page, buttons=rows, edits=part if part < parts else None))
    questions.put(session.connection(), Whose(arrival.chat_id, arrival.user_id), key, taken.buttons)
    if extra.picture is not None:
        made.append(_photo(arrival, extra.picture))
    return [*made, *(_document(arrival, one) for one in extra.documents)]


def headline(taken: Taken) -> str | None:
    """The line to be read first: what stops or refuses, else the verdict; None where the reply has neither."""
    reply = taken.reply
    if reply is None:
        return None
    if reply.talk.get("halted") or any(DANGERS[name].kind != "caution" for name in reply.cautions if name in DANGERS):
        return taken.text.split("\n", 1)[0]
    verdict = reply.answer.verdict
    return None if verdict is None else catalog(taken.language).tell(next(verdict_lines(verdict)))


def letter(arrival: Arrival, page: str, *, buttons: list[list[list[str]]] | None = None, edits: int | None = None) -> Letter:
    """One message with marks; in the place of an earlier part where `edits` names it."""
    body: dict[str, object] = {"text": page}
    if arrival.thread is not None:
        body["thread"] = arrival.thread
    if buttons:
        body["buttons"] = buttons
    if edits is not None:
        body |= {"edits": arrival.message_id, "part": edits}
    return Letter(kind="text" if edits is None else "edit", body=body, answers=arrival.message_id)


def keyboard(labels: Sequence[str], key: tuple[int, int]) -> list[list[list[str]]]:
    """Buttons in rows that a gloved thumb can hit: as many beside each other as are read without being cut."""
    rows: list[list[list[str]]] = []
    width = ROW_WIDEST + 1
    for index, label in enumerate(labels):
        button = [label, questions.tag(key, index)]
        if width + len(label) + 4 > ROW_WIDEST or len(rows[-1]) == 3:
            rows.append([])
            width = 0
        rows[-1].append(button)
        width += len(label) + 4
    return rows


def _photo(arrival: Arrival, picture: Picture) -> Letter:
    caption = picture.caption
    while units(caption) > CAPTION_WIDEST:
        caption = caption[: CAPTION_WIDEST // 2 - 1] + "…"
    body = {"name": "ohmreply.png", "caption": caption, "thread": arrival.thread}
    return Letter(kind="photo", body=body, answers=arrival.message_id, file=picture.svg.encode())


def _document(arrival: Arrival, document: Document) -> Letter:
    body = {"name": document.name, "thread": arrival.thread}
    return Letter(kind="document", body=body, answers=arrival.message_id, file=document.body)
