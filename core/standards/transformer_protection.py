"""How large the line-side fuse of a transformer may be."""

from dataclasses import dataclass
from typing import Final

from core.said import say
from core.standards.rule import Rule
from core.standards.source import Source

SOURCE: Final = Source("NEC", "450.3(B), primary only", "as told in a technical Q&A on sizing control circuits, 2000")
MOTOR_CONTROL: Final = Source("NEC", "430.72(C)(4)", "read in the 2008 edition")
EXEMPT: Final = Source("NEC", "450.1 exception and 725.127", "from memory")


@dataclass(frozen=True, slots=True, kw_only=True)
class Ceiling:
    """One row of 450.3(B)."""

    from_a: float
    """Least rated primary amps that the row covers. [A]"""
    share: float
    """Of the rated primary amps."""
    may_round_up: bool
    """Note 1 to the table lets only the 125 % row go to the next size (from memory)."""


PRIMARY_ONLY: Final = (
    Ceiling(from_a=9.0, share=1.25, may_round_up=True),
    Ceiling(from_a=2.0, share=1.67, may_round_up=False),
    Ceiling(from_a=0.0, share=3.0, may_round_up=False),
)
MOTOR_CONTROL_SHARE: Final = 5.0
MOTOR_CONTROL_UNDER_A: Final = 2.0
LISTED_BRANCH_A: Final = 20.0
"""Largest branch that may feed a listed Class 2 unit."""

PRIMARY_FUSE: Final = Rule(
    says=say("NEC 450.3(B), primary only"),
    source=SOURCE,
    limits="Up to 1,000 V; a listed Class 2 unit on a branch up to 20 A may need no fuse of its own.",
)
LISTED_ON_A_BRANCH: Final = Rule(
    says=say("NEC 725.127"),
    source=EXEMPT,
    limits="A listed Class 2 unit on a branch up to 20 A; the panel or the maker may still ask for a fuse.",
)
MOTOR_CONTROL_FUSE: Final = Rule(
    says=say("NEC 430.72(C)(4)"),
    source=MOTOR_CONTROL,
    limits="Control transformers of motor circuits with under 2 A of rated primary current.",
)


def primary_ceiling_a(rated_a: float) -> Ceiling:
    """The row for a rated primary current [A]."""
    return next(row for row in PRIMARY_ONLY if rated_a >= row.from_a)


def motor_control_ceiling_a(rated_a: float) -> float | None:
    """
    The ceiling inside a motor controller.

    Args:
        rated_a: Rated primary amps. [A]

    Returns:
        Ceiling, or None from 2 A on. [A]

    Source:
        `MOTOR_CONTROL`

    >>> round(motor_control_ceiling_a(350 / 480), 1)
    3.6
    """
    return MOTOR_CONTROL_SHARE * rated_a if rated_a < MOTOR_CONTROL_UNDER_A else None
