"""A call to the stand-in, and what can be made to go wrong with one."""

from dataclasses import dataclass, field
from typing import Any


@dataclass
class Call:
    """One call that came in."""

    method: str
    args: dict[str, Any]
    at: float
    files: dict[str, bytes] = field(default_factory=dict)
    names: dict[str, str] = field(default_factory=dict)
    """What each file is called."""
    peer: Any = None
    """The other end of the connection."""
    refused: int = 0
    """The status, where it was not ok."""


@dataclass
class Fault:
    """Something to go wrong, once."""

    method: str
    code: int = 0
    """Status to answer with; 0 answers as usual."""
    wait_s: float = 0.0
    retry_after: int | None = None
    lose_answer: bool = False
    """Does what was asked, and closes the connection without saying so."""
    body: bytes | None = None
    """Answers with this, whatever it is, and does nothing."""
