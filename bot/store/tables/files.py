"""Photos and papers that came with a job."""

from sqlalchemy import ForeignKey, String, UniqueConstraint
from sqlalchemy.orm import Mapped, mapped_column

from bot.store.columns import Base, Id, Key, Moment, Name, Word


class Attachment(Base):
    """One file. The bytes lie in the store, so that a backup is whole and `forget` reaches them."""

    __tablename__ = "attachment"
    __table_args__ = (UniqueConstraint("job_id", "sha256"),)

    id: Mapped[Id]
    job_id: Mapped[int] = mapped_column(ForeignKey("job.id", ondelete="CASCADE"))
    technician_id: Mapped[int] = mapped_column(ForeignKey("technician.id", ondelete="CASCADE"), index=True)
    message_id: Mapped[Key | None]
    """The channel's id of the message that it came with."""
    kind: Mapped[Word]
    """`photo` or `document`."""
    name: Mapped[Name | None]
    media_type: Mapped[Key]
    caption: Mapped[str | None]
    sha256: Mapped[str] = mapped_column(String(64))
    body: Mapped[bytes] = mapped_column(deferred=True)
    added_at: Mapped[Moment]
