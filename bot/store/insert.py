"""Inserting a row that may be there already: the same words on both databases, of different dialects to the library."""

from typing import Any

from sqlalchemy.dialects import postgresql, sqlite

from bot.store.columns import Base

_INSERT = {"sqlite": sqlite.insert, "postgresql": postgresql.insert}


def insert_into(table: type[Base], dialect: str) -> Any:  # the library's two classes share no base that has `on_conflict_...`
    """An insert that can say what to do where the key is taken."""
    return _INSERT[dialect](table)
