"""What is to go out, as the outbox keeps it."""

from collections.abc import Mapping
from dataclasses import dataclass, field
from typing import Any


@dataclass(frozen=True, slots=True, kw_only=True)
class Letter:
    """One call to the messenger. `bot.delivery.sender.CALLS` has how each kind goes out."""

    kind: str
    body: Mapping[str, Any]
    answers: int | None = None
    """The message that it quotes."""
    file: bytes | None = field(default=None, repr=False)

    @property
    def is_last(self) -> bool:
        """Nothing is kept of it once it went out: whom it is for was just forgotten."""
        return bool(self.body.get("last"))


@dataclass(frozen=True, slots=True, kw_only=True)
class Unsent:
    """A letter in the outbox."""

    update_id: int
    number: int
    chat_id: int
    letter: Letter
    again: bool = False
    """It may have arrived before."""
    armed: bool = False
    """The store knows that it is being sent."""
    attempts: int = 0
    wait_s: float = 0.0
    """How long it is to rest from now on. [s]"""

    @property
    def key(self) -> tuple[int, int]:
        """What the outbox knows it by."""
        return self.update_id, self.number
