"""One update, answered: the way from what arrived to the letters that go out, in one transaction."""

import re
from collections.abc import Callable, Sequence
from dataclasses import dataclass, replace
from datetime import tzinfo
from typing import Any

from sqlalchemy.orm import Session
from telegram import Bot

from bot import members
from bot.channels.telegram import leave, owner, photos, talk
from bot.channels.telegram.arrival import Arrival, Me, read
from bot.channels.telegram.menu import COMMANDS
from bot.channels.telegram.page import escaped, pages, units
from bot.channels.telegram.replies import Extras, extras, headline, letter, letters
from bot.delivery import outbox, questions
from bot.delivery.inbox import Waiting, chat_of
from bot.delivery.letters import Letter
from bot.delivery.questions import Whose
from bot.delivery.rounds import Channel, NeedsError, UnreadableError
from bot.desk import Incoming, Memory, Taken, document_for, take
from bot.members import Admitted
from bot.store.hand_over import code_in
from bot.wording.catalog import catalog
from core.said import Said, say

EXAMPLES = {"en": "pri 118V sec 0V pri-ohm open", "es": "primario 118V secundario 0V primario abierto"}
"""What `/start` works out before the eyes of a newcomer, by the language of the phone."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Here:
    """What a turn stands on."""

    bot: Bot
    me: Me
    memory: Memory
    zone: tzinfo
    """The clock by which days are told: the server's, since the messenger does not say where anybody is."""
    a_minute: int = members.A_MINUTE
    """Messages of one person that are read in a minute."""


def channel(here: Here) -> Channel:
    """This channel, as the rounds see it."""
    return Channel(work=lambda session, waiting, fetched: answer(here, session, waiting, fetched), apology=apology)


def answer(here: Here, session: Session, waiting: Waiting, fetched: Any) -> list[Letter]:
    """The letters that answer an update: none where it is not for us."""
    arrival = read(waiting.body, here.me, waiting.received_at)
    if arrival is None:
        return []
    admitted = members.admit(session, arrival.user_id, arrival.sent_at)
    if admitted is None:
        return _stranger(session, arrival, waiting)
    if admitted.sent > here.a_minute:
        return _too_many(arrival, admitted, here.a_minute)
    return HANDLERS[arrival.kind](here, session, arrival, (admitted, waiting, fetched))


def apology(waiting: Waiting) -> list[Letter]:
    """The plain sentence for a message that could not be worked on. It trusts nothing in the update but the chat."""
    try:
        part = waiting.body.get("message") or waiting.body.get("edited_message") or {}
        quoted = part.get("message_id")
        language = str(part.get("from", {}).get("language_code") or "en").split("-")[0]
    except AttributeError:
        quoted, language = None, "en"
    if (chat_of(waiting.body) or 0) < 0:
        return []  # in a group it may not have been for us at all
    answers = quoted if isinstance(quoted, int) else None
    return [Letter(kind="text", body={"text": escaped(catalog(language).tell(talk.NOT_WORKED_OUT))}, answers=answers)]


Rest = tuple[Admitted, Waiting, Any]


def _say(arrival: Arrival, *lines: Said) -> list[Letter]:
    """Sentences of this channel as a reply."""
    tell = catalog(arrival.language).tell
    return [letter(arrival, page) for page in pages("\n".join(tell(line) for line in lines))]


# --- who may not, or not now ---


def _stranger(session: Session, arrival: Arrival, waiting: Waiting) -> list[Letter]:
    now = waiting.received_at
    name, argument = _command(arrival.text)
    if name == "start" and argument and not arrival.is_group:
        if members.tried_enough(session, arrival.user_id, now):
            return []
        if members.join(session, arrival.user_id, arrival.name, argument, now):
            return [*_say(arrival, talk.WELCOME_IN), *_say(arrival, talk.WHAT_IT_DOES, talk.MORE)]
        return _say(arrival, talk.CODE_IS_NO_GOOD)
    told = members.to_be_told(session, arrival.user_id, now)
    if arrival.tap is not None:
        text = catalog(arrival.language).tell(talk.INVITATION_ONLY) if told else None
        return [Letter(kind="tapped", body={"query": arrival.tap.query_id, "text": text})]
    return _say(arrival, talk.INVITATION_ONLY) if told else []


def _too_many(arrival: Arrival, admitted: Admitted, limit: int) -> list[Letter]:
    said = say("Over {limit} messages in a minute: this one was not read. Send it again in a minute", limit=limit)
    first = admitted.sent == limit + 1
    if arrival.tap is not None:
        return [Letter(kind="tapped", body={"query": arrival.tap.query_id, "text": catalog(arrival.language).tell(said)})]
    return _say(arrival, said) if first else []


# --- what they sent ---


def _text(here: Here, session: Session, arrival: Arrival, rest: Rest) -> list[Letter]:
    """A text to the desk; an edited one refolds the job and changes our reply to it."""
    if not arrival.text:
        return _say(arrival, talk.TEXT_AND_PHOTOS)
    taken = _take(here, session, arrival, arrival.text, str(arrival.message_id))
    if not arrival.edited or taken.technician_id is None:
        return _reply(here, session, arrival, taken, rest)
    extra = _extras(here, session, arrival, taken)
    parts = outbox.parts_of(session.connection(), arrival.chat_id, arrival.message_id)
    made = letters(session, arrival, taken, extra, parts=parts)
    shown = sum(one.kind == "edit" for one in made)
    above = escaped(catalog(taken.language).tell(talk.SEE_ABOVE))
    return [*made, *(letter(arrival, above, edits=part) for part in range(shown, parts))]


def _reply(
    here: Here, session: Session, arrival: Arrival, taken: Taken, rest: Rest, *, after: Sequence[Letter] = ()
) -> list[Letter]:
    """What the desk answered, as new messages; who left is deleted from this channel's tables too."""
    admitted, waiting, _ = rest
    if taken.technician_id is None:
        more = leave.leave(session, arrival, waiting.received_at)
        return leave.last(letters(session, arrival, taken, Extras(), after=after, more=more))
    more = leave.beforehand(session, arrival, admitted.role) if leave.is_asked(taken) else []
    return letters(session, arrival, taken, _extras(here, session, arrival, taken), after=after, more=more)


def _extras(here: Here, session: Session, arrival: Arrival, taken: Taken) -> Extras:
    """Picture and papers; whoever asks in private for all of theirs gets what they sent in groups too."""
    asked = [taken]
    if taken.document == "export" and not arrival.is_group:
        asked += [replace(taken, technician_id=one) for one in session.scalars(leave.in_groups(arrival.user_id))]
    papers = [document_for(session, one, here.zone) for one in asked]
    named = [one if n == 0 else replace(one, name=f"group-{n}-{one.name}") for n, one in enumerate(p for p in papers if p)]
    return extras(taken, tuple(named))


def _take(here: Here, session: Session, arrival: Arrival, text: str, message_id: str) -> Taken:
    sent = Incoming(
        channel="telegram",
        address=arrival.address,
        name=arrival.name,
        text=text,
        sent_at=arrival.sent_at.astimezone(here.zone),
        message_id=message_id,
        edit=arrival.edited,
    )
    return take(session, sent, here.memory)


def _tap(here: Here, session: Session, arrival: Arrival, rest: Rest) -> list[Letter]:
    """A tap is the typed answer; the message that it belongs to shows it and loses its buttons."""
    tap = arrival.tap
    assert tap is not None
    whose = Whose(arrival.chat_id, arrival.user_id)
    label = questions.label(session.connection(), whose, tap.data)
    if label is None:
        said = talk.NOT_YOURS if questions.is_anothers(session.connection(), whose, tap.data) else talk.OVER
        text = catalog(arrival.language).tell(said)
        return [Letter(kind="tapped", body={"query": tap.query_id, "text": text}), *_unbuttoned(arrival, None)]
    first = Letter(kind="tapped", body={"query": tap.query_id})
    taken = _take(here, session, arrival, label, f"tap {tap.query_id}")
    made = [*_reply(here, session, arrival, taken, rest, after=[first]), *_unbuttoned(arrival, label)]
    return leave.last(made) if taken.technician_id is None else made


def _unbuttoned(arrival: Arrival, chosen: str | None) -> list[Letter]:
    """The message under which was tapped, with what was chosen and without buttons."""
    assert arrival.tap is not None
    page = arrival.tap.page
    if page is None or (arrival.is_group and chosen is None):  # another's live question may stand there
        return []
    shown = f"{page}\n▸ <b>{escaped(chosen)}</b>" if chosen else page
    return [Letter(kind="edit", body={"text": shown if units(shown) < 4_096 else page, "message": arrival.message_id})]


def _photo(here: Here, session: Session, arrival: Arrival, rest: Rest) -> list[Letter]:
    """A photo is kept; what stands under it is read like any message."""
    _, waiting, fetched = rest
    photo = arrival.photo
    assert photo is not None
    if arrival.edited:  # only what stands under it can have changed
        return _text(here, session, arrival, rest) if arrival.text else []
    if fetched is None:
        raise NeedsError(lambda: photos.fetch(here.bot, photo))
    if fetched.trouble is not None:
        kept = fetched.trouble
        return [*_say(arrival, kept), *(_text(here, session, arrival, rest) if arrival.text else [])]
    if not arrival.text:
        return _say(arrival, photos.keep(session, arrival, fetched, waiting.received_at))
    made = _text(here, session, arrival, rest)  # first, since the words can move to another job
    if not any(one.is_last for one in made):  # whoever just left leaves no photo behind
        photos.keep(session, arrival, fetched, waiting.received_at)
    return made


def _plain(said: Said) -> Callable[[Here, Session, Arrival, Rest], list[Letter]]:
    """A kind of message that is not read: what to do instead."""
    return lambda _here, _session, arrival, _rest: _say(arrival, said)


# --- commands ---


def _command(text: str) -> tuple[str, str]:
    """
    The name of a command and what stands behind it.

    >>> _command("/new  RTU 3")
    ('new', 'RTU 3')
    """
    found = re.match(r"/([A-Za-z0-9_]+)\s*(.*)", text, re.DOTALL)
    return (found[1].lower(), found[2].strip()) if found else ("", "")


def _do(here: Here, session: Session, arrival: Arrival, rest: Rest) -> list[Letter]:
    admitted, waiting, _ = rest
    name, argument = _command(arrival.text)
    command = COMMANDS.get(name)
    if name == "start":
        return _start(here, session, arrival, argument)
    if command is None:
        return _say(arrival, say("{command} is no command here. Send readings, or /help", command=f"/{name}"))
    if command.typed is not None:
        return _text(here, session, replace(arrival, text=f"{command.typed} {argument}".strip()), rest)
    if admitted.role != "owner":
        return _say(arrival, talk.OWNER_ONLY)
    if arrival.is_group:
        return _say(arrival, say("Send that to the bot alone, not in a group"))
    return _say(arrival, *owner.DEEDS[name](session, arrival, here.me, argument, waiting.received_at))


def _start(here: Here, session: Session, arrival: Arrival, argument: str) -> list[Letter]:
    """What this is, with one example that is worked out now and leaves no trace. A job's code behind it goes to the desk."""
    if code_in(argument) is not None:  # anything else was an invitation, and is not needed any more
        taken = _take(here, session, arrival, argument, str(arrival.message_id))
        return letters(session, arrival, taken, _extras(here, session, arrival, taken))
    tell = catalog(arrival.language).tell
    trial = session.begin_nested()
    example = replace(arrival, user_id=0, name="example", edited=False)
    words = EXAMPLES.get(arrival.language, EXAMPLES["en"])
    taken = _take(here, session, example, words, f"example {arrival.update_id}")
    trial.rollback()
    shown = "\n".join(pages(taken.text, headline(taken)))
    text = (
        f"<b>{escaped(tell(talk.WHAT_IT_DOES))}</b>\n\n{escaped(tell(talk.FOR_EXAMPLE))}\n<code>{escaped(words)}</code>\n\n"
        f"{escaped(tell(talk.COMES_BACK))}\n<blockquote>{shown}</blockquote>\n{escaped(tell(talk.MORE))}"
    )
    return [letter(arrival, text)]


HANDLERS: dict[str, Callable[[Here, Session, Arrival, Rest], list[Letter]]] = {
    "text": _text,
    "command": _do,
    "tap": _tap,
    "photo": _photo,
    "voice": _plain(talk.NO_VOICE),
    "video": _plain(talk.NO_VIDEO),
    "paper": _plain(Said(talk.ONLY_PHOTOS.template, (("limit", photos.LIMIT_MB),))),
    "other": _plain(talk.TEXT_AND_PHOTOS),
}

__all__ = ["Here", "UnreadableError", "answer", "apology", "channel"]
