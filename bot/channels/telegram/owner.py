"""What whoever runs the bot can do: let in, look, show out."""

from datetime import datetime

from sqlalchemy.orm import Session
from telegram.helpers import create_deep_linked_url

from bot import members
from bot.channels.telegram import talk
from bot.channels.telegram.arrival import Arrival, Me
from core.said import Said, say

Lines = list[Said]


def invite(session: Session, arrival: Arrival, me: Me, argument: str, now: datetime) -> Lines:  # noqa: ARG001
    """A code, as a link and as text to type."""
    code = members.invite(session, arrival.user_id, now)
    link = create_deep_linked_url(me.username, code)
    return [talk.INVITE, say("{link}", link=link), say("/start {code}", code=code)]


def everyone(session: Session, arrival: Arrival, me: Me, argument: str, now: datetime) -> Lines:  # noqa: ARG001
    """Who may write, with the numbers that `/remove` takes."""
    return [say("{number}  {name}", number=one.user_id, name=one.name) for one in members.everyone(session)]


def remove(session: Session, arrival: Arrival, me: Me, argument: str, now: datetime) -> Lines:  # noqa: ARG001
    """Show one out."""
    if not argument.isdecimal() or len(argument) > 18:
        return [talk.REMOVE_WHOM]
    if members.remove(session, int(argument), now):
        return [say("{number} is out", number=argument)]
    return [talk.NO_SUCH_MEMBER]


DEEDS = {"invite": invite, "members": everyone, "remove": remove}
