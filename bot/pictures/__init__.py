"""The door of the pictures: `draw(name, answer, job, tell)` gives a picture and its caption. A picture's module is imported only when drawn."""

from collections.abc import Callable
from dataclasses import dataclass
from importlib import import_module
from typing import Final, Protocol, cast

from core.advice import Answer
from core.readings import Job
from core.said import Said

Tell = Callable[[Said], str]
"""Sets a sentence in the technician's language."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Picture:
    """A picture ready to send."""

    svg: str
    caption: str
    """What it shows, in words: also for those who can't see it."""

    @property
    def png(self) -> bytes:
        """Drawn now: that takes longer than the rest of a reply."""
        from bot.pictures.canvas import rendered  # noqa: PLC0415

        return rendered(self.svg)


class _Drawer(Protocol):
    def draw(self, answer: Answer, job: Job, tell: Tell) -> Picture:
        """The picture of one module."""


PICTURES: Final = {
    "circuit": "bot.pictures.circuit",
    "leads": "bot.pictures.lead_map",
    "step_down": "bot.pictures.step_down",
    "load_budget": "bot.pictures.load_budget",
    "wire_run": "bot.pictures.wire_run",
}
"""The module that draws each picture: it has a function `draw(answer, job, tell) -> Picture`."""


def draw(name: str, answer: Answer, job: Job, tell: Tell) -> Picture:
    """
    The picture of a name.

    Args:
        name: A name of `PICTURES`.
        answer: What core said.
        job: What is known of the job.
        tell: Sets a sentence in the technician's language.

    Raises:
        KeyError: No picture has that name.
    """
    return cast("_Drawer", import_module(PICTURES[name])).draw(answer, job, tell)


__all__ = ["PICTURES", "Picture", "Tell", "draw"]
