"""What is said to something heard."""

from dataclasses import dataclass

from core.said import Said


@dataclass(frozen=True, slots=True, kw_only=True)
class Spoken:
    """The answer to one thing heard: at most two short lines."""

    lines: tuple[Said, ...]
    cautions: tuple[str, ...] = ()
    """Names of `core.cautions.CAUTIONS` that belong to what the lines ask for."""
    decides: bool = True
    """True where the lines say what to do next: then nothing else is asked for."""
