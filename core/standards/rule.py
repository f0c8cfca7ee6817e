"""A rule of a code or of the trade: its short name for a reply, where it stands, and how far it may be used."""

from dataclasses import dataclass

from core.said import Said
from core.standards.source import Source


@dataclass(frozen=True, slots=True, kw_only=True)
class Rule:
    """One rule. Local code decides over every one of them."""

    says: Said
    """The rule in a few words, as a reply names it."""
    source: Source
    limits: str
    """What it covers and where it stops."""
