"""What should be read: the plant asked for numbers, for this unit as far as it is known."""

from dataclasses import dataclass
from typing import Final

from core.advice import Answer
from core.circuit.windings import TAPS, estimate_rating, output_volts, typical_unit
from core.diagnosis.belief import load_va
from core.readings import Job
from core.said import Said, say

NEAR: Final = 0.13
"""A reading this near to a voltage of the trade means it."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Unit:
    """The unit as far as it is known, the rest by custom."""

    rated_va: float
    tap_v: float
    supply_v: float
    rated_secondary_v: float
    load_va: float | None
    is_va_told: bool
    is_supply_told: bool


def unit(job: Job) -> Unit:
    """
    The unit of a job.

    Args:
        job: The job so far.

    Returns:
        Nameplate and building as told, else as the readings show, else as is usual.
    """
    told = job.number("supply_volts")
    read = [v for m in ("primary_volts", "line_volts") if (v := job.figure(m)) is not None]
    live = next((v for v in read if v > 90.0), None)
    supply = told or (nearest(live) if live else None) or job.number("tap_volts") or 120.0
    tap = job.number("tap_volts") or nearest(supply) or supply
    v2 = job.number("rated_secondary_volts") or 24.0
    va = job.number("rated_va")
    return Unit(
        rated_va=va or _guess(job, tap, v2),
        tap_v=tap,
        supply_v=live if live and told is None else supply,
        rated_secondary_v=v2,
        load_va=load_va(job),
        is_va_told=va is not None,
        is_supply_told=told is not None or live is not None or job.told("tap_volts") is not None,
    )


def nearest(volts: float) -> float | None:
    """The voltage of the trade that a reading means, or None."""
    best = min(TAPS, key=lambda v: abs(v - volts))
    return best if abs(best - volts) <= NEAR * best else None


def _guess(job: Job, tap_v: float, v2: float) -> float:
    odds = estimate_rating(job.figure("primary_ohms"), job.figure("secondary_ohms"), None, tap_v, v2)
    return max(odds, key=lambda va: odds[va])


def proof(job: Job) -> Said:
    """
    The readings that prove the new transformer.

    Args:
        job: The job so far.

    Returns:
        One sentence with volts unloaded and loaded, on the right tap.
    """
    u = unit(job)
    tap = nearest(u.supply_v) or u.supply_v
    low, _, high = output_volts(u.rated_va, tap, u.supply_v, 0.0, rated_secondary_v=u.rated_secondary_v)
    least = output_volts(
        u.rated_va, tap, u.supply_v, min(u.load_va or u.rated_va, u.rated_va), rated_secondary_v=u.rated_secondary_v
    )[0]
    return say(
        "Proof: new one in, expect {low:.0f} to {high:.0f} V unloaded, at least {least:.1f} V with everything called",
        low=low,
        high=high,
        least=least,
    )


def expect(job: Job) -> Answer:
    """
    What should be read on a sound unit.

    Args:
        job: The job so far, with the facts that narrow it.

    Returns:
        Volts of the secondary unloaded and loaded, and ohms of both windings; what was taken for granted is said.

    >>> from core.readings import Fact
    >>> print(expect(Job(facts=(Fact(fact="supply_volts", value=208.0),))).lines[0])
    Sound, 208 V on the 208 V tap: secondary 26 to 28 V unloaded, 23.1 to 24.8 V fully loaded
    """
    u = unit(job)
    low, _, high = output_volts(u.rated_va, u.tap_v, u.supply_v, 0.0, rated_secondary_v=u.rated_secondary_v)
    loaded = output_volts(u.rated_va, u.tap_v, u.supply_v, u.load_va or u.rated_va, rated_secondary_v=u.rated_secondary_v)
    typical = typical_unit(u.rated_va, u.tap_v, u.rated_secondary_v)
    lines = [
        say(
            "Sound, {supply:.0f} V on the {tap:.0f} V tap: secondary {low:.0f} to {high:.0f} V unloaded, {least:.1f} to {most:.1f} V fully loaded",
            supply=u.supply_v,
            tap=u.tap_v,
            low=low,
            high=high,
            least=loaded[0],
            most=loaded[2],
        ),
        say(
            "Dead and isolated: primary about {p_low:.0f} to {p_high:.0f} Ω, secondary {s_low:.1f} to {s_high:.1f} Ω plus your leads",
            p_low=typical.primary_ohm[0],
            p_high=typical.primary_ohm[2],
            s_low=typical.secondary_ohm[0],
            s_high=typical.secondary_ohm[2],
        ),
        say("Line and primary alike, R to C within a volt of the secondary, nothing across a good fuse"),
    ]
    if not u.is_va_told:
        lines.append(say("Taken as {va:.0f} VA: tell me the nameplate if it differs", va=u.rated_va))
    if not u.is_supply_told:
        lines.append(say("Taken as {volts:.0f} V supply: tell me if it differs", volts=u.supply_v))
    return Answer(lines=tuple(lines))
