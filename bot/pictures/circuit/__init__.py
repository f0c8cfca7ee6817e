"""The circuit from supply to load, each reading where it was taken, the suspect part marked, the place of the next test shown."""

from collections.abc import Iterator
from dataclasses import replace
from typing import Final

from bot.pictures import Picture, Tell
from bot.pictures.canvas import Canvas, Shape, Text, wrapped
from bot.pictures.circuit.ladder import ladder
from bot.pictures.circuit.layout import BOTTOM, HEAD, LABEL, LINE_HEIGHT, MARGIN, MEASURED_AT, WIDTH
from bot.pictures.circuit.suspects import suspects
from bot.pictures.circuit.tags import drawn, tags
from bot.wording.verdict import verdict_lines
from core.advice import Answer
from core.readings import Job
from core.said import say

_SIZES: Final = (50.0, 46.0, 42.0, LABEL)
"""Of the verdict: the largest at which it fits above the ladder."""


def draw(answer: Answer, job: Job, tell: Tell) -> Picture:
    """
    The circuit of a job.

    Args:
        answer: What core said: its verdict and next test are marked.
        job: The readings and what is known of the unit.
        tell: Sets a sentence in the technician's language.
    """
    canvas = canvas_of(answer, job, tell)
    return Picture(svg=canvas.svg(), caption=" · ".join(canvas.words()))


def canvas_of(answer: Answer, job: Job, tell: Tell) -> Canvas:
    """
    The picture before it is drawn.

    Args:
        answer: What core said.
        job: The readings and what is known of the unit.
        tell: Sets a sentence in the technician's language.
    """
    bare = without_head(answer, job, tell)
    return replace(bare, top=0, height=bare.height + bare.top, shapes=(*_head(answer, tell), *bare.shapes))


def without_head(answer: Answer, job: Job, tell: Tell) -> Canvas:
    """
    The picture without the verdict over it, for a page that already says it.

    Args:
        answer: What core said.
        job: The readings and what is known of the unit.
        tell: Sets a sentence in the technician's language.
    """
    foot = tuple(_foot(job, tell))
    shapes = [
        *ladder(job, tell),
        *suspects(answer.verdict, tell),
        *(shape for tag in tags(job, answer.next_test, tell) for shape in drawn(tag)),
        *foot,
    ]
    height = BOTTOM + LABEL * LINE_HEIGHT * len(foot) + MARGIN - HEAD
    return Canvas(width=WIDTH, height=round(height), top=round(HEAD), shapes=tuple(shapes))


def _head(answer: Answer, tell: Tell) -> Iterator[Shape]:
    """The verdict over the ladder, as large as it fits."""
    said = list(verdict_lines(answer.verdict))[:2] if answer.verdict is not None else [say("No verdict yet")]
    for size in _SIZES:
        rows = [(n, row) for n, line in enumerate(said) for row in wrapped(tell(line), WIDTH - 2 * MARGIN, size, bold=n == 0)]
        if len(rows) * size * LINE_HEIGHT <= HEAD - MARGIN:
            break
    for i, (n, row) in enumerate(rows):
        yield Text(x=MARGIN, y=MARGIN + size * (0.9 + i * LINE_HEIGHT), text=row, size=size, bold=n == 0)


def _foot(job: Job, tell: Tell) -> Iterator[Shape]:
    """What a sign on a tag means, where it stands there."""
    said = []
    if any(reading.assumed for reading in job.readings if reading.measure in MEASURED_AT):
        said.append(say("? place or unit guessed"))
    if between := sum(reading.leads is not None and reading.measure not in MEASURED_AT for reading in job.readings):
        said.append(say("Between named leads: {count:d} readings more", count=between))
    for n, line in enumerate(said):
        yield Text(x=MARGIN, y=BOTTOM + LABEL * LINE_HEIGHT * (n + 0.8), text=tell(line), size=LABEL)
