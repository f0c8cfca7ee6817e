"""The record of one danger."""

from dataclasses import dataclass
from typing import Literal

from core.said import Said
from core.standards.source import Source

Kind = Literal["stop", "no", "refer", "caution"]
"""How it is answered, worst first. *stop*: people before anything, and no diagnosis until all is well. *no*: refused, with the safe
way to the same end. *refer*: who decides. *caution*: under which condition the next step is safe."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Danger:
    """One thing that hurts or burns."""

    name: str
    kind: Kind
    says: Said
    """What is said first; a *no* begins with the word."""
    instead: Said | None = None
    """The safe way to the same end."""
    trigger: str
    """What shows it, for the developers' table."""
    source: Source
    cautions: tuple[str, ...] = ()
    """Names of `core.cautions.CAUTIONS` that its lines say as well."""
