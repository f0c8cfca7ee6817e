"""The answers to all that a message told besides its measures."""

from collections.abc import Callable
from dataclasses import replace
from typing import Final

from core.heard import across, breaker, button, contactor, grounded, holds_off, legs, line_fuse, panel, sides, switch, told_good
from core.heard.record import Heard
from core.heard.spoken import Spoken
from core.readings import Job

ALONE: Final[dict[str, Callable[[Heard], Spoken]]] = {
    "across": across.across,
    "sides": sides.sides,
    "line_fuse": line_fuse.line_fuse,
    "leg_lifted": legs.leg_lifted,
    "call": legs.call,
    "switch": switch.switch,
    "button": button.button,
    "told_good": told_good.told_good,
    "holds_off": holds_off.holds_off,
}
"""What answers from what was heard alone."""
IN_JOB: Final[dict[str, Callable[[Heard, Job], Spoken]]] = {
    "stays_out": contactor.stays_out,
    "no_click": contactor.stays_out,
    "breaker_off": breaker.breaker_off,
    "leg": legs.leg_of_job,
    "panel": panel.panel,
}
"""What needs the readings beside it."""
OF_JOB: Final[dict[str, Callable[[Job], Spoken]]] = {"motor_dead": contactor.motor_dead}
"""What only shows which readings are meant."""
NOTICED: Final[tuple[Callable[[Job], Spoken | None], ...]] = (contactor.open_coil, grounded.bonded)
"""What readings of this message show by themselves, and the diagnosis has no finding for."""


def spoken(job: Job) -> tuple[Spoken, ...]:
    """
    All answers, in the order in which the things were told.

    Args:
        job: What is known, with what the message that is answered told.
    """
    told = [_answer(read, job) for read in job.heard]
    if sum(read.what == "leg" for read in job.heard) > 1:  # the other legs are being read
        told = [replace(answer, lines=tuple(line for line in answer.lines if line != legs.GO_ON)) for answer in told]
    noticed = [answer for notice in NOTICED if (answer := notice(job)) is not None]
    return tuple(answer for answer in (*told, *noticed) if answer.lines or answer.next_test is not None)


def _answer(read: Heard, job: Job) -> Spoken:
    if read.what in ALONE:
        return ALONE[read.what](read)
    return OF_JOB[read.what](job) if read.what in OF_JOB else IN_JOB[read.what](read, job)
