"""What came in from a messenger and what is to go out: kept until it is done, so that a crash loses nothing."""

from sqlalchemy import Index, LargeBinary, text
from sqlalchemy.orm import Mapped, mapped_column

from bot.store.columns import Base, Big, Key, Moment, Word


class Inbox(Base):
    """One update as it came. It is written before it is confirmed, and worked on once."""

    __tablename__ = "inbox"
    __table_args__ = (
        Index(
            "ix_inbox_undone",
            "chat_id",
            "update_id",
            sqlite_where=text("done_at IS NULL"),
            postgresql_where=text("done_at IS NULL"),
        ),
    )

    update_id: Mapped[int] = mapped_column(Big, primary_key=True, autoincrement=False)
    chat_id: Mapped[int | None] = mapped_column(Big)
    """None where the update names no chat: such a row is born done, with its error."""
    body: Mapped[str | None]
    """The update's JSON; taken out once it is done, since the log of the job has what counts."""
    received_at: Mapped[Moment]
    done_at: Mapped[Moment | None]
    failures: Mapped[int] = mapped_column(default=0)
    error: Mapped[str | None]
    """What kind of error, and where in the code. Never what the technician wrote."""


class Outbox(Base):
    """One call that is to go out. The key makes a second answer to the same update impossible."""

    __tablename__ = "outbox"
    __table_args__ = (
        Index(
            "ix_outbox_unsent",
            "chat_id",
            "update_id",
            "number",
            sqlite_where=text("done_at IS NULL"),
            postgresql_where=text("done_at IS NULL"),
        ),
        Index("ix_outbox_answers", "chat_id", "answers"),
    )

    update_id: Mapped[int] = mapped_column(Big, primary_key=True, autoincrement=False)
    number: Mapped[int] = mapped_column(primary_key=True, autoincrement=False)
    chat_id: Mapped[int] = mapped_column(Big)
    answers: Mapped[int | None] = mapped_column(Big)
    """The technician's message that this replies to."""
    kind: Mapped[Word]
    """`text`, `edit`, `photo`, `document`, `tapped`."""
    body: Mapped[str | None]
    """The call's JSON; taken out once it is done."""
    file: Mapped[bytes | None] = mapped_column(LargeBinary)
    """Picture or paper to upload; taken out once it is done."""
    tried: Mapped[bool] = mapped_column(default=False)
    """From here on it may have arrived, even where no answer came back."""
    attempts: Mapped[int] = mapped_column(default=0)
    due_at: Mapped[Moment | None]
    """Not before this moment; None is at once."""
    message_id: Mapped[int | None] = mapped_column(Big)
    """Ours, once the messenger gave it."""
    done_at: Mapped[Moment | None]
    error: Mapped[Key | None]


class Question(Base):
    """The buttons that are live for one person in one chat: a tap on any other is too late."""

    __tablename__ = "question"

    chat_id: Mapped[int] = mapped_column(Big, primary_key=True, autoincrement=False)
    user_id: Mapped[int] = mapped_column(Big, primary_key=True, autoincrement=False)
    update_id: Mapped[int] = mapped_column(Big)
    """With its number in the outbox: the reply that asked."""
    number: Mapped[int]
    labels: Mapped[str]
    """The texts of the buttons, JSON, in order."""
