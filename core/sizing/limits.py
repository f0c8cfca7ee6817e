"""What can't be: an input that no answer is built on, with the words for it."""

import math
from collections.abc import Callable
from dataclasses import replace
from typing import Final

from core.readings import Fact, Job
from core.said import Said, say
from core.standards.device_loads import CONTROLS_V, LEAST_DEVICE_VA, MOST_COIL_VA, MOST_DEVICE_VA, MOST_DEVICES
from core.standards.transformer_ratings import LEAST_SUPPLY_V, MOST_SUPPLY_V
from core.standards.wire_gauges import LONGEST_FT, SHORTEST_FT, THICKEST_AWG, THINNEST_AWG

MOST_LOW_VOLTAGE_FUSE_A: Final = 10.0
"""Over this a fuse belongs to a branch circuit, not to 24 V controls. [A]"""
ROUNDING: Final = 0.05
"""What the conversion of amps or metres may be off a limit."""

BOUNDS: Final[dict[str, tuple[float, float, Callable[[float], Said]]]] = {
    "run_feet": (
        SHORTEST_FT * (1 - ROUNDING),
        LONGEST_FT,
        lambda v: say("A run of {value:,g} ft makes no sense here. Send 1 to 5,000 ft, one way", value=v),
    ),
    "wire_awg": (
        THICKEST_AWG,
        THINNEST_AWG,
        lambda v: say("{value:g} AWG is no control wire. Send a gauge from 10 to 26 AWG", value=v),
    ),
    "rated_va": (
        LEAST_DEVICE_VA,
        MOST_DEVICE_VA,
        lambda v: say("{value:,g} VA is no control transformer. Send the nameplate VA, 1 to 1,000", value=v),
    ),
    "rated_secondary_volts": (
        6.0,
        120.0,
        lambda v: say("{value:g} V is no control secondary. Send the nameplate volts, usually 24", value=v),
    ),
    "supply_volts": (
        LEAST_SUPPLY_V,
        MOST_SUPPLY_V,
        lambda v: say(
            "A supply of {value:,g} V makes no sense here. Send the nominal supply: 120, 208, 240, 277 or 480", value=v
        ),
    ),
    "tap_volts": (
        LEAST_SUPPLY_V,
        MOST_SUPPLY_V,
        lambda v: say(
            "A tap of {value:,g} V makes no sense here. Send the volts of the tap: 120, 208, 240, 277 or 480", value=v
        ),
    ),
    "copper_celsius": (-40.0, 150.0, lambda v: say("Copper at {value:g} °C makes no sense here. Send -40 to 150 °C", value=v)),
    "supply_hertz": (40.0, 70.0, lambda v: say("{value:g} Hz is no supply here. Send 50 or 60 Hz", value=v)),
}
"""Least, most, and what is said outside."""


MOST_INRUSH_RATIO: Final = 20.0
"""Of sealed VA. Kissell, Ratings for Coils, has 4 to 13; with room above. Common practice, no source."""


def sound(job: Job) -> Job:
    """
    The job without what an earlier message told past sense: it was refused then, and nothing is built on it.

    Args:
        job: What is known.
    """
    return (
        replace(job, facts=tuple(f for f in job.facts if f in job.new or not _is_past_sense(f))) if job.new or job.asks else job
    )


def _is_past_sense(fact: Fact) -> bool:
    if fact.fact == "load":
        return _load(fact, CONTROLS_V) is not None
    if fact.fact not in BOUNDS or not isinstance(fact.value, int | float):
        return False
    least, most, _ = BOUNDS[fact.fact]
    return not least <= float(fact.value) <= most


def is_nonsense(job: Job) -> bool:
    """
    True where a fact of this message is past sense by itself, whatever was asked.

    Args:
        job: What is known.
    """
    return any(fact.fact in BOUNDS and _is_past_sense(fact) for fact in job.new)


def refusal(job: Job) -> Said | None:
    """
    Why no number may be built on this, or None where nothing stands against it.

    Args:
        job: What is known.

    Returns:
        What is wrong and what to send.
    """
    for fact in job.every("load"):
        if (reason := _load(fact, job.number("rated_secondary_volts") or CONTROLS_V)) is not None:
            return reason
    for name, (least, most, says) in BOUNDS.items():
        value = job.number(name)
        if value is not None and not least <= value <= most:
            return says(value)
    return _fuse(job) or _only_ohms(job)


def _load(fact: Fact, rated_v: float) -> Said | None:
    device = fact.device or "load"
    if fact.count is not None and not 1 <= fact.count <= MOST_DEVICES:
        return say("{count} × {device} makes no sense. Send how many there are, 1 to 100", count=fact.count, device=device)
    if not isinstance(fact.value, int | float):
        return _inrush(fact, device, None)
    told = float(fact.value)
    va = told * rated_v if fact.unit == "A" else told
    if not math.isfinite(va) or not LEAST_DEVICE_VA * (1 - ROUNDING) <= va <= MOST_DEVICE_VA * (1 + 1e-9):
        return say(
            "{value:,g} {unit} for one {device} can't be. Send the sealed VA off its label, 1 to 1,000 VA each",
            value=told,
            unit=fact.unit or "VA",
            device=device,
        )
    return _inrush(fact, device, va)


def _inrush(fact: Fact, device: str, va: float | None) -> Said | None:
    """What is wrong with the pull-in of a load, beside its sealed VA where they were told."""
    if fact.inrush is None:
        return None
    if va is not None and fact.inrush < va:
        return say(
            "Inrush {inrush:g} VA under sealed {sealed:g} VA can't be for one {device}. Swapped? Send both again",
            device=device,
            inrush=fact.inrush,
            sealed=va,
        )
    if LEAST_DEVICE_VA <= fact.inrush <= MOST_INRUSH_RATIO * (MOST_COIL_VA if va is None else va):
        return None
    return say(
        "Inrush {inrush:g} VA can't be for one {device}. Send the label's: 2 to 13 times the sealed VA",
        device=device,
        inrush=fact.inrush,
    )


def _fuse(job: Job) -> Said | None:
    fuse = job.number("fuse_amps")
    if fuse is None or 0.0 < fuse <= MOST_LOW_VOLTAGE_FUSE_A:
        return None
    if fuse <= 0.0:
        return say("A fuse of {value:g} A can't be. Send its rating, up to 5 A on the 24 V side", value=fuse)
    if "line_fuse" in job.topics:
        return None
    return say("No: {value:g} A has no place on 24 V controls: Class 2 allows 100 / open volts, about 3.5 A", value=fuse)


def _only_ohms(job: Job) -> Said | None:
    """Ohms of a coil where VA were wanted."""
    if "size" not in job.asks or job.last("coil_ohms") is None or job.number("rated_va") is not None:
        return None
    if any(isinstance(f.value, int | float) for f in job.every("load")):
        return None
    return say(
        "No VA from coil ohms: an AC coil draws by its impedance, not its resistance. Send the sealed VA or amps off the label, or clamp it"
    )
