"""Who may use a channel that strangers can reach."""

from sqlalchemy import String
from sqlalchemy.orm import Mapped, mapped_column

from bot.store.columns import Base, Big, Moment, Name, Word


class Member(Base):
    """Someone who may write, or who might once and was removed."""

    __tablename__ = "member"

    user_id: Mapped[int] = mapped_column(Big, primary_key=True, autoincrement=False)
    name: Mapped[Name]
    role: Mapped[Word]
    """`owner` or `member`."""
    invited_by: Mapped[int | None] = mapped_column(Big)
    joined_at: Mapped[Moment]
    removed_at: Mapped[Moment | None]
    minute: Mapped[int] = mapped_column(Big, default=0)
    """The minute that `sent` counts, since 1970."""
    sent: Mapped[int] = mapped_column(default=0)


class Invite(Base):
    """A code that lets one person in, once, until it ends."""

    __tablename__ = "invite"

    code_sha256: Mapped[str] = mapped_column(String(64), primary_key=True)
    """The code itself is only told."""
    made_by: Mapped[int] = mapped_column(Big)
    made_at: Mapped[Moment]
    ends_at: Mapped[Moment]
    used_by: Mapped[int | None] = mapped_column(Big)


class Stranger(Base):
    """Someone not let in: told so once a day at most."""

    __tablename__ = "stranger"

    user_id: Mapped[int] = mapped_column(Big, primary_key=True, autoincrement=False)
    told_at: Mapped[Moment]
    tries: Mapped[int] = mapped_column(default=0)
    """Wrong codes since `told_at`."""
