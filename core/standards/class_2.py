"""What a Class 2 source may be: its limits, its fuse, and what may not be tied together."""

from dataclasses import dataclass
from typing import Final

from core.said import say
from core.standards.rule import Rule
from core.standards.source import Source

SOURCE: Final = Source(
    "NEC Chapter 9", "Table 11(A), not inherently limited, AC", "cells from memory, notes read in the 2005 edition"
)
TWIN: Final = Source("IEC 60950-1", "Table 2C, limited power source")
"""The same numbers in another standard."""
LISTING: Final = Source("UL 1585 (now UL 5085-3)", "30 V rms under any load or open")
INTERCONNECTING: Final = Source(
    "NEC", "725.121(B)", "numbered so from the 2011 edition on (from memory); the rule itself is older"
)


@dataclass(frozen=True, slots=True, kw_only=True)
class SourceLimit:
    """One column of the table."""

    up_to_v: float
    """Highest output at any load, so the open-circuit volts. [V]"""
    fuse_a: float | None
    """Largest fuse, where it is one number. [A]"""
    fuse_va: float | None
    """Largest fuse times open-circuit volts, where it falls with the volts. [VA]"""


LIMITS: Final = (
    SourceLimit(up_to_v=20.0, fuse_a=5.0, fuse_va=None),
    SourceLimit(up_to_v=30.0, fuse_a=None, fuse_va=100.0),
)
MOST_VA: Final = 100.0
"""Nameplate."""
MOST_OPEN_V: Final = 30.0

CLASS_2_FUSE: Final = Rule(
    says=say("Class 2: NEC Ch. 9 Table 11(A)"),
    source=SOURCE,
    limits="AC, dry places, a source that is not inherently limited; over 20 V the fuse is at most 100 over the open-circuit volts.",
)
CLASS_2_POWER: Final = Rule(
    says=say("Class 2: NEC Ch. 9 Table 11(A)"),
    source=SOURCE,
    limits="Nameplate VA of one source, over 20 V to 30 V.",
)
CLASS_2_OPEN: Final = Rule(
    says=say("30 V open at most: UL 1585"),
    source=LISTING,
    limits="Class 2 transformers, whatever their load.",
)
NO_INTERCONNECTING: Final = Rule(
    says=say("NEC 725.121(B)"),
    source=INTERCONNECTING,
    limits="Unless the pair is listed for it.",
)


def largest_fuse_a(open_v: float) -> float | None:
    """
    Largest low-voltage fuse that Class 2 allows.

    Args:
        open_v: Output volts with nothing connected. [V]

    Returns:
        Ceiling, or None above 30 V, where the source is not Class 2. [A]

    Source:
        `SOURCE`

    >>> round(largest_fuse_a(28.0), 2)
    3.57
    """
    for row in LIMITS:
        if open_v <= row.up_to_v:
            return row.fuse_a if row.fuse_va is None else row.fuse_va / open_v
    return None
