"""What is said to something heard."""

from dataclasses import dataclass

from core.advice import NextTest
from core.said import Said


@dataclass(frozen=True, slots=True, kw_only=True)
class Spoken:
    """The answer to one thing heard: at most two short lines, the next step among them."""

    lines: tuple[Said, ...] = ()
    cautions: tuple[str, ...] = ()
    """Names of `core.cautions.CAUTIONS` that belong to what the lines ask for."""
    decides: bool = True
    """True where it says what to do next: then nothing else is asked for."""
    next_test: NextTest | None = None
    """The next step, where it is a measure of ours: a bare value then answers it."""
