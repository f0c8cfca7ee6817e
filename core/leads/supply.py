"""What the primary is to be fed with: measured before named, and the systems that want a second look."""

from dataclasses import dataclass
from typing import Final

from core.advice import NextTest
from core.leads.clues import nominal
from core.leads.evidence import GROUND
from core.readings import OPEN, Job
from core.said import Said, say
from core.standards.source import Source

HIGH_LEG_V: Final = (195.0, 218.0)
"""The high leg of a 120/240 V delta to neutral: 1.73 times 120 V. [V]"""
HIGH_LEG_SOURCE: Final = Source("NEC", "110.15")
HIGH_LEG: Final = "high_leg"
"""The danger that its words show, and the caution."""
_LEG_V: Final = (108.0, 132.0)
_PHASE_V: Final = (222.0, 254.0)
_OVER_300_FROM_V: Final = 255.0
READ_SUPPLY: Final = NextTest(
    measure="line_volts", instruction=say("Live: read volts at the unit's line terminals, phase to phase and each to ground")
)


@dataclass(frozen=True, slots=True, kw_only=True)
class Supply:
    """Volts at the primary leads."""

    volts: float
    measured: bool
    high_leg: bool
    """True where 208 V may be one leg of a delta to neutral, and not phase to phase."""
    named: float | None = None
    """What it was called, where something else is measured. [V]"""


def supply_of(job: Job) -> Supply | None:
    """
    The supply of a job.

    Args:
        job: What is known of the job.

    Returns:
        Measured volts, else named ones; None where neither is known.
    """
    read = [float(r.value) for r in job.readings if r.measure in {"line_volts", "primary_volts"} and r.value not in {OPEN, 0.0}]
    live = [v for v in read if v > _LEG_V[0] / 2.0]
    to_ground = [
        float(r.value) for r in job.readings if r.measure == "lead_volts" and r.leads and GROUND in r.leads and r.value != OPEN
    ]
    named = job.number("supply_volts")
    seen = [*live, *to_ground]
    other = any(_within(v, _LEG_V) or _within(v, _PHASE_V) for v in seen) or (named is not None and nominal(named) == 240.0)
    high_leg = HIGH_LEG in job.dangers or (any(_within(v, HIGH_LEG_V) for v in seen) and other)
    if high_leg:
        phase = next((v for v in reversed(live) if _within(v, _PHASE_V)), None)
        return Supply(volts=phase or named or 240.0, measured=phase is not None, high_leg=True)
    if live:
        other_name = named if named is not None and nominal(named) != nominal(live[-1]) else None
        return Supply(volts=live[-1], measured=True, high_leg=False, named=other_name)
    return None if named is None else Supply(volts=named, measured=False, high_leg=False)


def supply_lines(supply: Supply) -> tuple[Said, ...]:
    """What to know of this supply before a lead is landed."""
    system = nominal(supply.volts)
    if supply.high_leg:
        return (
            say(
                "208 V beside 120 or 240 V: a delta with a high leg, 208 V to neutral. Feed phase to phase, never from that leg to neutral"
            ),
        )
    if system == 240.0 and supply.named is not None and nominal(supply.named) == 208.0:
        return (say("208 V to neutral beside 240 V is a delta's high leg: never land that leg to neutral"),)
    if system == 277.0:
        return (say("277 V is one leg of 480 V to neutral: it needs a 277 V tap"),)
    if system == 480.0:
        return (say("480 V is phase to phase: it needs a 480 V tap"),)
    return ()


def supply_cautions(supply: Supply) -> tuple[str, ...]:
    """Names of the cautions of this supply."""
    found = [HIGH_LEG] if supply.high_leg else []
    return tuple([*found, "over_300"] if supply.volts >= _OVER_300_FROM_V else found)


def _within(volts: float, band: tuple[float, float]) -> bool:
    return band[0] <= volts <= band[1]
