"""Jobs, the units they are about, and who works on them."""

from sqlalchemy import ForeignKey, Index, UniqueConstraint
from sqlalchemy.orm import Mapped, mapped_column

from bot.store.columns import Base, Id, Key, Moment, Name, Word


class Unit(Base):
    """A piece of equipment that one technician comes back to. What is known of it stands in its jobs."""

    __tablename__ = "unit"
    __table_args__ = (UniqueConstraint("owner_id", "called"),)

    id: Mapped[Id]
    owner_id: Mapped[int] = mapped_column(ForeignKey("technician.id", ondelete="CASCADE"))
    name: Mapped[Name]
    called: Mapped[Name]
    """The name without case and spacing, so that "RTU 3" and "rtu-3" are one unit."""


class Job(Base):
    """One call. Its log is the truth; the columns from `turns` on are folded from it and can be rebuilt."""

    __tablename__ = "job"
    __table_args__ = (
        UniqueConstraint("owner_id", "channel_job"),
        Index(None, "owner_id", "closed_at", "last_at"),
        {"sqlite_autoincrement": True},
    )

    id: Mapped[Id]
    owner_id: Mapped[int] = mapped_column(ForeignKey("technician.id", ondelete="CASCADE"))
    unit_id: Mapped[int | None] = mapped_column(ForeignKey("unit.id", ondelete="SET NULL"), index=True)
    name: Mapped[Name | None]
    channel_job: Mapped[Key | None]
    """What a program that speaks through `pipe` calls it."""
    copied_from_id: Mapped[int | None] = mapped_column(ForeignKey("job.id", ondelete="SET NULL"), index=True)
    opened_at: Mapped[Moment]
    closed_at: Mapped[Moment | None]
    outcome: Mapped[str | None]
    """What was done, in the technician's words."""
    last_at: Mapped[Moment]
    turns: Mapped[int] = mapped_column(default=0)
    """Messages in the log; the last one has this number."""
    finding: Mapped[Word | None]
    transformer: Mapped[Word | None]
    confidence: Mapped[float | None]
    settled: Mapped[bool | None]
    supply_volts: Mapped[float | None]
    tap_volts: Mapped[float | None]
    rated_va: Mapped[float | None]


class Guest(Base):
    """Someone who was given another's job and works on it too."""

    __tablename__ = "guest"

    job_id: Mapped[int] = mapped_column(ForeignKey("job.id", ondelete="CASCADE"), primary_key=True)
    technician_id: Mapped[int] = mapped_column(ForeignKey("technician.id", ondelete="CASCADE"), primary_key=True, index=True)
    since: Mapped[Moment]


class WorkingOn(Base):
    """The job that a technician's next message belongs to; once it is closed only what still speaks of it does."""

    __tablename__ = "working_on"

    technician_id: Mapped[int] = mapped_column(ForeignKey("technician.id", ondelete="CASCADE"), primary_key=True)
    job_id: Mapped[int] = mapped_column(ForeignKey("job.id", ondelete="CASCADE"), index=True)


class HandOver(Base):
    """A code that gives a job, or a copy of it, to whoever sends it."""

    __tablename__ = "hand_over"

    id: Mapped[Id]
    code: Mapped[Word] = mapped_column(unique=True)
    job_id: Mapped[int] = mapped_column(ForeignKey("job.id", ondelete="CASCADE"), index=True)
    giver_id: Mapped[int] = mapped_column(ForeignKey("technician.id", ondelete="CASCADE"), index=True)
    taker_id: Mapped[int | None] = mapped_column(ForeignKey("technician.id", ondelete="SET NULL"), index=True)
    kind: Mapped[Word]
    """`copy` or `job`."""
    made_at: Mapped[Moment]
    ends_at: Mapped[Moment]
    taken_at: Mapped[Moment | None]
