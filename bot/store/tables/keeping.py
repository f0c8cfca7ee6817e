"""How long things are kept, and where copies of them lie."""

from typing import Any

from sqlalchemy import JSON, String
from sqlalchemy.orm import Mapped, mapped_column

from bot.store.columns import Base, Id, Moment


class Setting(Base):
    """One thing set for the whole store, by name."""

    __tablename__ = "setting"

    name: Mapped[str] = mapped_column(String(40), primary_key=True)
    value: Mapped[Any] = mapped_column(JSON())


class BackupMade(Base):
    """A copy of the store that was written: whoever asks to be forgotten is told of it."""

    __tablename__ = "backup_made"

    id: Mapped[Id]
    file: Mapped[str]
    made_at: Mapped[Moment]
