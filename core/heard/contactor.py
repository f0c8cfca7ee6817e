"""
The coil and what its contactor feeds: where the 24 V side ends. Common practice, no source.

A coil that gets its volts and does not pull in is open or stuck; a coil that pulls in has done its part, and the fault is on the line
side of the contactor.
"""

from typing import Final

from core.advice import NextTest
from core.heard.record import Heard
from core.heard.spoken import Spoken
from core.measures import MEASURES
from core.readings import OPEN, Job
from core.said import say
from core.standards.coil_range import PULL_IN_SHARE

FED_FROM_V: Final = PULL_IN_SHARE * 24.0
"""From here a 24 V coil has what it needs to pull in. [V]"""

ASK_VOLTS: Final = Spoken(
    lines=(say("24 V at its coil: the contactor. Nothing there: the call is lost before it"),),
    next_test=NextTest(measure="coil_volts", instruction=MEASURES["coil_volts"].how, buttons=(say("0 V"), say("24 V"))),
)
STAYS_OUT: Final = Spoken(
    lines=(say("The coil is fed and stays out: contactor, not transformer"),),
    cautions=("lock_out",),
    next_test=NextTest(
        measure="coil_ohms",
        instruction=say("Power off, one coil lead off, ohm it. OL: burnt open. Ohms: it sticks. Replace it either way"),
        buttons=(say("open"),),
    ),
)
MOTOR: Final = (
    say("The coil has its 24 V. Contactor in? Read line volts in and out of its poles"),
    say("Line volts out and nothing runs: power off, bleed the capacitor, test it, then the motor"),
)
OPEN_COIL: Final = say("Open coil: replace the contactor or relay that it is in")
FED: Final = say("Its circuit is fed: the transformer is fine")
"""Said beside an open coil where the control circuit has its volts."""
COIL_SOUND: Final = say("It gets its volts and the coil has ohms: it sticks, replace it")


def stays_out(read: Heard, job: Job) -> Spoken:
    """
    What a contactor that does not pull in means.

    Args:
        read: That it stays out.
        job: What is known of its coil.
    """
    ohms = job.last("coil_ohms")
    if ohms is not None and ohms.value == OPEN:
        return Spoken(lines=(), decides=False)  # said by `open_coil`
    volts = job.figure("coil_volts")
    if volts is None:
        # A click is missed for more reasons than one, and a dead circuit is looked for before its coil.
        asks = read.what == "stays_out" and not _is_dead(job)
        return ASK_VOLTS if asks else Spoken(decides=False)
    if volts < FED_FROM_V:
        return Spoken(lines=(), decides=False)
    if ohms is not None and float(ohms.value) > 0.0:
        return Spoken(lines=(COIL_SOUND,), cautions=("lock_out",))
    return STAYS_OUT


def _is_dead(job: Job) -> bool:
    """Whether the circuit before the coil is known to have no volts."""
    known = (job.figure(name) for name in ("control_volts", "secondary_volts", "primary_volts", "line_volts"))
    return any(volts is not None and volts < FED_FROM_V for volts in known)


def motor_dead(job: Job) -> Spoken:
    """
    What a dead motor behind a fed coil means.

    Args:
        job: What is known of the coil.
    """
    if (job.figure("coil_volts") or 0.0) < FED_FROM_V or "coil_volts" not in job.fresh:
        return Spoken(lines=(), decides=False)
    return Spoken(lines=MOTOR, cautions=("meter_category", "discharge_capacitor"))


def open_coil(job: Job) -> Spoken | None:
    """
    What an open coil means; None where the message brought none.

    Args:
        job: What is known.
    """
    ohms = job.last("coil_ohms")
    if "coil_ohms" not in job.fresh or ohms is None or ohms.value != OPEN:
        return None
    fed = any((job.figure(name) or 0.0) >= FED_FROM_V for name in ("coil_volts", "control_volts"))
    return Spoken(lines=(OPEN_COIL, FED) if fed else (OPEN_COIL,), cautions=("lock_out",) if fed else (), decides=fed)
