"""What the grammar makes of a text: a row of small phrases, each with its place in the text."""

from dataclasses import dataclass, field
from typing import Literal


@dataclass(slots=True)
class Phrase:
    """One phrase: one word of the vocabulary, an amount, or places joined."""

    kind: str
    meaning: str
    start: int
    end: int
    text: str = ""
    """Folded words."""
    language: str | None = None
    amounts: "tuple[Amount, ...]" = ()
    """For `amounts`: one, or those that a range or a list joins."""
    joins: tuple[str, ...] = ()
    """For `amounts` and `ends`: what stands between the parts: `to`, `-`, `/`, `and`, `or`."""
    ends: "tuple[End, ...]" = ()
    """For `ends`: one place or lead, or those that are joined."""


@dataclass(slots=True)
class Amount:
    """A number as it was written, with its unit if it has one."""

    value: float
    start: int
    end: int
    unit: str | None = None
    """A meaning of `words/units.py`."""
    bound: Literal["about", "over", "under"] | None = None
    spoken: bool = False
    doubt: str | None = None
    """Why the figure itself is in doubt: `comma`, `split`, `minus`, `sound`, or None."""
    other: float | None = None
    """The other number it could be, where it is in doubt."""
    text: str = ""
    unit_text: str = ""


@dataclass(slots=True)
class End:
    """One end of a measurement: a place, a colour with its stripe, a mark or a letter."""

    kind: Literal["place", "colour", "mark", "letter"]
    name: str
    start: int
    end: int
    stripe: str | None = field(default=None)
