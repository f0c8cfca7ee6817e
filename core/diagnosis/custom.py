"""
What a practised person takes first where two steps are worth nearly the same: the plain one, the one that shows what is suspected, the dead one.

It decides only between steps; whether one more is worth its cost is the worth's alone. Common practice, no source.
"""

from typing import Final

import numpy as np

from core.circuit.plant import Floats
from core.diagnosis.belief import Belief, Known
from core.diagnosis.ghost import LINE_SIDE, may_be_ghost
from core.diagnosis.meter import M
from core.diagnosis.steps import STEPS
from core.diagnosis.worlds import NAMES
from core.measures import MEASURES

SHOWS: Final[dict[str, tuple[str, ...]]] = {
    "healthy": ("control_volts",),
    "no_supply": ("line_volts", "primary_ohms"),
    "low_supply": ("line_volts", "primary_volts"),
    "loose_line": ("primary_volts", "line_volts"),
    "wrong_tap": ("primary_volts", "tap_volts"),
    "primary_open": ("primary_ohms",),
    "primary_shorted_turns": ("primary_amps", "primary_ohms"),
    "secondary_open": ("secondary_ohms",),
    "secondary_shorted_turns": ("secondary_volts_lifted",),
    "windings_bridged": ("primary_secondary_ohms",),
    "winding_grounded": ("primary_ground_ohms", "secondary_ground_ohms"),
    "protection_open": ("fuse_volts", "fuse_ohms"),
    "load_short": ("secondary_volts_lifted", "load_ohms"),
    "overload": ("secondary_amps",),
    "control_open": ("control_volts", "fuse_volts"),
}
"""Where each finding is looked for."""
SUSPECTED: Final = 0.04
"""What it counts that a step shows what is suspected, times the suspicion."""
PLAIN_FIRST: Final = (
    ("secondary_volts_lifted", "secondary_volts"),
    ("coil_volts", "control_volts"),
    ("fuse_volts", "secondary_volts"),
    ("primary_amps", "control_volts"),
    ("secondary_amps", "control_volts"),
    ("primary_secondary_ohms", "primary_ohms"),
    ("primary_secondary_ohms", "secondary_ohms"),
    ("fuse_ohms", "secondary_volts"),
    ("primary_ohms", "primary_volts"),
    ("primary_ohms", "secondary_volts"),
    ("secondary_ohms", "secondary_volts"),
)
"""A measure, and the plainer one that a person takes before it."""
FANCY: Final = 0.02
"""What it counts against the first where the second was not taken, and against looking behind an open part before it is known which is open."""
ASKED: Final = 0.03
"""What it counts against a question while little is read: volts first, the nameplate when it bears on them."""
LITTLE: Final = 2
"""So many readings are little."""
ONCE_MORE: Final = 0.25
"""What it counts that volts which may be a ghost are read once more, so that they are none."""
OPENED: Final = frozenset({"primary_open", "secondary_open", "protection_open", "control_open"})
FRONT_FIRST: Final = 0.8
"""Up to this probability it is not known."""
BEHIND: Final = ("load_ohms", "coil_ohms")
OPENERS: Final = ("secondary_volts", "primary_volts", "control_volts", "line_volts")
OPENS: Final = 0.06
"""What it counts that a call begins with volts at places that everybody finds."""
BURNT: Final = frozenset({"burnt", "smoke", "trips_breaker"})
LIVE_ON_BURNT: Final = 0.06
"""What it counts against energising what smells burnt or trips, while its windings are not read or are likely bad."""
WINDINGS: Final = ("primary_ohms", "secondary_ohms")
IS_LIKELY: Final = 0.5
DEAD_V: Final = 10.0
"""Up to here a line is dead: what hangs on it is then read dead. [V]"""
LIVE_ON_DEAD: Final = 0.06
"""What it counts against live readings behind a dead line, and for the ohms of the primary there."""
_AT: Final = {step.measure or step.fact: i for i, step in enumerate(STEPS) if not step.again}
_AGAIN: Final = {step.measure: i for i, step in enumerate(STEPS) if step.again}
_IS_LIVE: Final = np.array([step.measure is not None and MEASURES[step.measure].live for step in STEPS])
_IS_QUESTION: Final = np.array([step.fact is not None for step in STEPS])
_SHOWS: Final = np.zeros((len(NAMES), len(STEPS)))
for _finding, _shown in SHOWS.items():
    _SHOWS[NAMES.index(_finding), [_AT[name] for name in _shown]] = 1.0


def leaning(k: Known, belief: Belief) -> Floats:
    """
    How far custom leans towards each step.

    Args:
        k: What is known of the job.
        belief: What is believed of it.

    Returns:
        One number a step of `STEPS`, in units of the loss.
    """
    lean = SUSPECTED * belief.findings @ _SHOWS
    is_read = not k.times.keys().isdisjoint(WINDINGS)
    is_dead = k.evidence.value[0, M["line_volts"]] < DEAD_V
    is_burnt = not k.job.symptoms().isdisjoint(BURNT) and (not is_read or belief.bad > IS_LIKELY)
    for measure, plain in PLAIN_FIRST:
        is_barred = (is_dead or is_burnt) and MEASURES[plain].live
        lean[_AT[measure]] -= FANCY * (not k.times[plain] and not is_barred)
    if len(k.readings) < LITTLE:
        lean[[_AT[name] for name in OPENERS]] += OPENS
    lean[_IS_QUESTION] -= ASKED * (len(k.readings) < LITTLE) + FANCY * (
        belief.best in {*OPENED, "no_supply"}
    )  # an open is one, whatever the nameplate says
    for name in LINE_SIDE:
        lean[_AGAIN[name]] += ONCE_MORE * may_be_ghost(k.latest.get(name), k.job)
    if belief.best in OPENED:
        lean[[_AT[name] for name in BEHIND]] -= FANCY * (belief.confidence < FRONT_FIRST)
    lean[_AT["primary_ohms"]] += LIVE_ON_DEAD * is_dead
    lean[_IS_LIVE] -= LIVE_ON_BURNT * is_burnt + LIVE_ON_DEAD * is_dead
    return np.asarray(lean, dtype=np.float64)
