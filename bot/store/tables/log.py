"""The log: rows are added, never changed. An edit is a row of its own."""

from collections.abc import Mapping
from typing import Any

from sqlalchemy import JSON, ForeignKey, UniqueConstraint
from sqlalchemy.orm import Mapped, mapped_column

from bot.store.columns import Base, Id, Key, Moment, Name, Record, Word


class LoggedMessage(Base):
    """One text as the technician sent it."""

    __tablename__ = "logged_message"
    __table_args__ = (
        UniqueConstraint("job_id", "number"),
        UniqueConstraint("technician_id", "message_id", "revision"),
    )

    id: Mapped[Id]
    job_id: Mapped[int] = mapped_column(ForeignKey("job.id", ondelete="CASCADE"))
    technician_id: Mapped[int] = mapped_column(ForeignKey("technician.id", ondelete="CASCADE"))
    written_by: Mapped[Name]
    """The name at the time; a copied job keeps who wrote what."""
    author_id: Mapped[int | None] = mapped_column(ForeignKey("technician.id", ondelete="SET NULL"), index=True)
    """Who wrote it, where that is another than whose job it stands in: in a copy."""
    number: Mapped[int]
    """Place in the job's log, from 1."""
    message_id: Mapped[Key]
    """What the channel calls the message. An edit has the id of what it replaces."""
    revision: Mapped[int] = mapped_column(default=0)
    """0 as first sent, 1 for its first edit, ..."""
    text: Mapped[str]
    sent_at: Mapped[Moment]


class LoggedReply(Base):
    """What was answered to one message."""

    __tablename__ = "logged_reply"

    logged_message_id: Mapped[int] = mapped_column(ForeignKey("logged_message.id", ondelete="CASCADE"), primary_key=True)
    record: Mapped[Record]
    talk: Mapped[Mapping[str, Any] | None] = mapped_column(JSON(none_as_null=True))
    """What the fold must remember of the reply beside its record."""
    document: Mapped[Word | None]
    language: Mapped[Word]
