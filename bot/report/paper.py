"""A report: a job in the reader's words, in the order it is read. Every paper is laid out from this one record."""

from collections.abc import Callable
from dataclasses import dataclass
from typing import Literal

from bot.report.job_log import JobLog
from core.said import Said

Tell = Callable[[Said], str]
"""Puts a sentence in the reader's language."""

Mark = Literal["sent", "computed", "said"]
"""Where a part comes from: the technician sent it, it was worked out from what was sent, or the bot said it."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Table:
    """Rows under heads."""

    heads: tuple[str, ...]
    rows: tuple[tuple[str, ...], ...]
    note: Callable[[int], str] | None = None
    """What to write under so many rows, where they are not all there is; empty where they are."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Part:
    """One part of a report under its title."""

    name: str
    """What the layouts know it by."""
    title: str
    mark: Mark
    lines: tuple[str, ...] = ()
    table: Table | None = None
    short: Table | None = None
    """The table where there is no room for all of it."""
    run_in: bool = False
    """True where the lines are short and may follow each other in one paragraph."""
    with_last: bool = False
    """True where it belongs under the part before it."""

    @property
    def empty(self) -> bool:
        """True where there is nothing to show."""
        return not self.lines and self.table is None


@dataclass(frozen=True, slots=True, kw_only=True)
class Report:
    """One report."""

    title: str
    heads: tuple[tuple[str, str], ...]
    """(label, value) of unit, people and times, as sent."""
    parts: tuple[Part, ...]
    """In the order they are read; empty ones are left out."""
    marks: tuple[tuple[Mark, str], ...]
    """What each mark is called."""
    footer: tuple[str, ...]
    more: Callable[[int], str]
    """What to write where so many lines had no room."""
    captions: tuple[tuple[str, str], ...]
    """What goes under each picture, by its name; `photo` for the technician's."""
    log: JobLog
    tell: Tell
    """The language that the report is written in."""
    language: str = "en"

    def called(self, mark: Mark) -> str:
        """The word for a mark."""
        return dict(self.marks)[mark]

    def part(self, name: str) -> Part | None:
        """One part, or None where it is empty."""
        return next((p for p in self.parts if p.name == name), None)
