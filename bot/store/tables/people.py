"""Who writes."""

from sqlalchemy import ForeignKey, UniqueConstraint
from sqlalchemy.orm import Mapped, mapped_column

from bot.store.columns import Base, Id, Key, Moment, Name, Record, Word


class Technician(Base):
    """One person on one channel."""

    __tablename__ = "technician"
    __table_args__ = (
        UniqueConstraint("channel", "address"),
        {"sqlite_autoincrement": True},  # a number once given is never given again, also after `forget`
    )

    id: Mapped[Id]
    channel: Mapped[Word]
    """`local` for terminal and pipe, `telegram`, ..."""
    address: Mapped[Key]
    """What the channel knows the person by; never a name that can change hands."""
    name: Mapped[Name]
    language: Mapped[Word | None]
    """Set by the technician; None while the words of each message decide."""
    keep_days: Mapped[int | None]
    """Closed jobs older than this are deleted; None keeps them."""
    joined_at: Mapped[Moment]


class Notice(Base):
    """Something a technician is to be told with the next reply, such as a job taken over."""

    __tablename__ = "notice"

    id: Mapped[Id]
    technician_id: Mapped[int] = mapped_column(ForeignKey("technician.id", ondelete="CASCADE"), index=True)
    template: Mapped[str]
    named: Mapped[Record]
    """What stands in the template's places."""
    made_at: Mapped[Moment]
