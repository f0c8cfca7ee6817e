"""What a channel hands to the desk, and what it gets back."""

from collections.abc import Mapping
from dataclasses import dataclass
from datetime import datetime
from typing import Any

from bot.reply import Reply
from core.readings import Job


@dataclass(frozen=True, slots=True, kw_only=True)
class Incoming:
    """One message as it came in."""

    channel: str
    address: str
    """What the channel knows the technician by."""
    name: str
    """What the technician is called."""
    text: str
    sent_at: datetime
    message_id: str | None = None
    """The channel's own id. A message that comes twice is answered once."""
    edit: bool = False
    """The text replaces the earlier message of this id."""
    job: str | None = None
    """What a program calls the job; people have a current one."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Taken:
    """What the desk made of a message."""

    record: Mapping[str, Any]
    """The contract's record."""
    language: str
    technician_id: int | None
    job_id: int | None
    """The job it belongs to; None once that was forgotten, and both are once everything was."""
    document: str | None = None
    reply: Reply | None = None
    """The reply itself, from which pictures are drawn; None where the message had been answered before."""
    told: Job | None = None
    """What is known of the job with this message; pictures need it beside the reply."""

    @property
    def text(self) -> str:
        """What the technician reads."""
        return str(self.record["reply"])

    @property
    def buttons(self) -> tuple[str, ...]:
        """Likely answers."""
        return tuple(self.record["buttons"])


def storable(text: str) -> str:
    """The text as every database can hold it: half a surrogate pair and the zero sign become visible signs."""
    return text.replace("\x00", "\u2400").encode("utf-8", "replace").decode("utf-8")
