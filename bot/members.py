"""Who may write: the owner, and whom a code let in; how often; and who was shown out."""

import secrets
from collections.abc import Sequence
from dataclasses import dataclass
from datetime import datetime, timedelta
from hashlib import sha256

from sqlalchemy import bindparam, case, delete, func, select, update
from sqlalchemy.orm import Session

from bot.store.insert import insert_into
from bot.store.names import WIDEST
from bot.store.tables import Invite, Member, Stranger

A_MINUTE = 30
"""Messages of one person that are read in one minute."""
GOOD_FOR = timedelta(days=2)
"""How long a code lets in."""
TOLD_AGAIN = timedelta(days=1)
"""How long a stranger who was told is not told again."""
TRIES = 5
"""Wrong codes of one stranger in that time; more are not looked at."""


_ADMIT = (
    update(Member)
    .where(Member.user_id == bindparam("who"), Member.removed_at.is_(None))
    .values(minute=bindparam("now_minute"), sent=case((Member.minute == bindparam("now_minute"), Member.sent + 1), else_=1))
    .returning(Member.role, Member.sent)
)
"""One statement lets in and counts: it stands in the way of every message."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Admitted:
    """Someone who may write."""

    role: str
    """`owner` or `member`."""
    sent: int
    """Messages in this minute, this one included."""


def name_owner(session: Session, user_id: int, now: datetime) -> None:
    """The settings say who runs the bot; one who was owner before stays a member."""
    session.execute(update(Member).where(Member.role == "owner", Member.user_id != user_id).values(role="member"))
    insert = insert_into(Member, session.get_bind().dialect.name).values(
        user_id=user_id, name="owner", role="owner", joined_at=now, minute=0, sent=0
    )
    session.execute(insert.on_conflict_do_update(index_elements=["user_id"], set_={"role": "owner", "removed_at": None}))


def admit(session: Session, user_id: int, written_at: datetime) -> Admitted | None:
    """
    Let a message in, and count it; None for a stranger.

    The minute is that of the writing, so that an hour's messages that arrive together after a dead spot are no flood. A minute is
    compared only for being the same, so a clock that jumps locks nobody out.
    """
    now = {"who": user_id, "now_minute": int(written_at.timestamp()) // 60}
    row = session.connection().execute(_ADMIT, now).first()
    return None if row is None else Admitted(role=row[0], sent=row[1])


def invite(session: Session, made_by: int, now: datetime) -> str:
    """A new code that lets one person in."""
    code = secrets.token_urlsafe(12)  # fits a link's 64 signs; 96 bits are not guessed
    session.add(Invite(code_sha256=_digest(code), made_by=made_by, made_at=now, ends_at=now + GOOD_FOR))
    session.flush()
    return code


def join(session: Session, user_id: int, name: str, code: str, now: datetime) -> bool:
    """Let someone in by a code: False where it is wrong, used, too old, or where too many were tried."""
    if tried_enough(session, user_id, now):
        return False
    taken = (
        session.connection()
        .execute(
            update(Invite)
            .where(Invite.code_sha256 == _digest(code), Invite.used_by.is_(None), Invite.ends_at > now)
            .values(used_by=user_id)
            .returning(Invite.made_by)
        )
        .first()
    )
    if taken is None:
        _tried(session, user_id, now)
        return False
    insert = insert_into(Member, session.get_bind().dialect.name).values(
        user_id=user_id, name=name[:WIDEST], role="member", invited_by=taken[0], joined_at=now, minute=0, sent=0
    )
    again = {"removed_at": None, "joined_at": now, "invited_by": taken[0], "name": name[:WIDEST]}
    session.execute(insert.on_conflict_do_update(index_elements=["user_id"], set_=again))
    session.execute(delete(Stranger).where(Stranger.user_id == user_id))
    return True


def remove(session: Session, user_id: int, now: datetime) -> bool:
    """Show someone out; False where nobody of that number may write, or where it is the owner."""
    gone = session.connection().execute(
        update(Member)
        .where(Member.user_id == user_id, Member.removed_at.is_(None), Member.role != "owner")
        .values(removed_at=now)
        .returning(Member.user_id)
    )
    return gone.first() is not None


def forget(session: Session, user_id: int) -> bool:
    """Delete who somebody is; True where they are out from now on. The settings name the owner, who stays."""
    session.execute(delete(Stranger).where(Stranger.user_id == user_id))
    session.execute(delete(Invite).where(Invite.used_by == user_id))
    gone = session.connection().execute(
        delete(Member).where(Member.user_id == user_id, Member.role != "owner").returning(Member.user_id)
    )
    return gone.first() is not None


def everyone(session: Session) -> Sequence[Member]:
    """All who may write, the owner first."""
    return session.scalars(
        select(Member).where(Member.removed_at.is_(None)).order_by(Member.role.desc(), Member.joined_at)
    ).all()


def to_be_told(session: Session, user_id: int, now: datetime) -> bool:
    """Whether a stranger is to be told how to get in: once in a while, whatever they send."""
    insert = insert_into(Stranger, session.get_bind().dialect.name).values(user_id=user_id, told_at=now, tries=0)
    told = session.connection().execute(
        insert.on_conflict_do_update(
            index_elements=["user_id"],
            set_={"told_at": now, "tries": 0},
            where=(Stranger.told_at < now - TOLD_AGAIN) | (Stranger.told_at > now + TOLD_AGAIN),
        ).returning(Stranger.user_id)
    )
    return told.first() is not None


def tried_enough(session: Session, user_id: int, now: datetime) -> bool:
    """Whether codes of this stranger are not looked at any more today."""
    since = select(func.coalesce(Stranger.tries, 0)).where(Stranger.user_id == user_id, Stranger.told_at > now - TOLD_AGAIN)
    return (session.scalar(since) or 0) >= TRIES


def _tried(session: Session, user_id: int, now: datetime) -> None:
    insert = insert_into(Stranger, session.get_bind().dialect.name).values(user_id=user_id, told_at=now, tries=1)
    fresh = Stranger.told_at > now - TOLD_AGAIN
    session.execute(
        insert.on_conflict_do_update(
            index_elements=["user_id"],
            set_={"tries": case((fresh, Stranger.tries + 1), else_=1), "told_at": case((fresh, Stranger.told_at), else_=now)},
        )
    )


def _digest(code: str) -> str:
    return sha256(code.encode()).hexdigest()
