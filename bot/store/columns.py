"""What all tables share: the base, the names of constraints, and the kinds of column."""

from collections.abc import Mapping
from datetime import UTC, datetime
from typing import Annotated, Any

from sqlalchemy import JSON, BigInteger, DateTime, Dialect, Integer, MetaData, String, TypeDecorator
from sqlalchemy.orm import DeclarativeBase, mapped_column


class Utc(TypeDecorator[datetime]):
    """A moment: kept in UTC, given back with its zone, on databases that keep zones and on SQLite, which does not."""

    impl = DateTime(timezone=True)
    cache_ok = True

    def process_bind_param(self, value: datetime | None, dialect: Dialect) -> datetime | None:  # noqa: ARG002
        """To the database: a time without a zone is a mistake, never guessed."""
        if value is None:
            return None
        if value.tzinfo is None:
            raise ValueError(f"a time without its zone: {value}")
        return value.astimezone(UTC)

    def process_result_value(self, value: datetime | None, dialect: Dialect) -> datetime | None:  # noqa: ARG002
        """From the database: always in UTC."""
        if value is None:
            return None
        return value.replace(tzinfo=UTC) if value.tzinfo is None else value.astimezone(UTC)


Id = Annotated[int, mapped_column(primary_key=True)]
Moment = Annotated[datetime, mapped_column(Utc())]
Name = Annotated[str, mapped_column(String(80))]
"""What a person calls something."""
Key = Annotated[str, mapped_column(String(120))]
"""What a channel calls something: an address, the id of a message."""
Word = Annotated[str, mapped_column(String(40))]
"""One of our own names: a finding, a kind."""
Big = BigInteger().with_variant(Integer(), "sqlite")
"""A number that a messenger gives: past 32 bits. SQLite's only kind of integer holds it, and is the fast one as a key."""
Record = Annotated[Mapping[str, Any], mapped_column(JSON())]


class Base(DeclarativeBase):
    """All tables. Constraints are named by rule, or no later migration could drop one."""

    metadata = MetaData(
        naming_convention={
            "pk": "pk_%(table_name)s",
            "uq": "uq_%(table_name)s_%(column_0_N_name)s",
            "fk": "fk_%(table_name)s_%(column_0_name)s_%(referred_table_name)s",
            "ix": "ix_%(table_name)s_%(column_0_N_name)s",
        }
    )
