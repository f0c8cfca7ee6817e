"""Showing that work goes on, where it takes longer than a second and somebody looks."""

import sys
from collections.abc import Iterator
from contextlib import contextmanager
from threading import Timer

from rich.console import Console
from rich.progress import Progress, TaskID

from bot.settings import machine_language
from bot.wording.catalog import catalog
from core.said import Said

PATIENCE_S = 1.0
"""What is over sooner shows nothing. [s]"""


@contextmanager
def waiting(said: Said) -> Iterator[None]:
    """A spinner beside a sentence, from the second second on."""
    status = Console(file=sys.stderr).status(catalog(machine_language()).tell(said))
    timer = Timer(PATIENCE_S, status.start)
    timer.daemon = True
    timer.start()
    try:
        yield
    finally:
        timer.cancel()
        status.stop()


@contextmanager
def steps(said: Said) -> "Iterator[Step]":
    """A bar for work that knows how much there is."""
    with Progress(console=Console(file=sys.stderr), transient=True) as bar:
        yield Step(bar, bar.add_task(catalog(machine_language()).tell(said), total=None))


class Step:
    """How far the work is."""

    def __init__(self, bar: Progress, task: TaskID) -> None:
        self._bar = bar
        self._task = task

    def __call__(self, done: int, whole: int) -> None:
        """Show so many of so many."""
        self._bar.update(self._task, completed=done, total=whole)
