"""Where a published value comes from. Every table of `core.standards` opens with one of these."""

from dataclasses import dataclass
from typing import Final


@dataclass(frozen=True, slots=True)
class Source:
    """A title with edition and clause, as it can be cited in a reply or a report."""

    title: str
    clause: str = ""
    note: str = ""
    """How it was read: `from memory` where nobody had the text open."""

    def __str__(self) -> str:
        return ", ".join(part for part in (self.title, self.clause) if part)


COMMON_PRACTICE: Final = Source("common practice, no source")
"""A rule of the trade that no published text backs."""
