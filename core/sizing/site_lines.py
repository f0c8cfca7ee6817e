"""Two transformers together, the tap and the frequency of this supply, and the ground, in sentences and numbers."""

from typing import Final

from core.said import Said, say
from core.sizing.paralleling import circulating_a, phase_test_volts, secondary_side_ohm
from core.sizing.told import Part, Told
from core.standards.class_2 import NO_INTERCONNECTING
from core.standards.coil_range import COIL_RANGE, HIGHEST_SHARE, PULL_IN_SHARE
from core.standards.grounding import GROUND_SECONDARY, must_be_grounded, usual_supply
from core.standards.transformer_ratings import FREQUENCY, SIZES_VA, volts_at_hertz

MULTI_TAP_V: Final = (120.0, 208.0, 240.0)
ON_TAP: Final = 0.02
"""A supply this near to the tap is on it."""


def parallel_part(told: Told) -> Part | None:
    """
    Whether two secondaries may be joined, and the phase test.

    Args:
        told: The job.
    """
    if "parallel" not in told.job.asks:
        return None
    rated, volts = told.rated_va, told.loads.rated_v
    same, double = phase_test_volts(volts, volts)
    lines = [
        say("Usually not: buy one bigger unit, or keep two circuits apart, each with its own fuse"),
        say("Class 2 outputs are not tied together unless the pair is listed for it"),
    ]
    if rated is not None:
        bigger = next((s for s in SIZES_VA if s >= 2.0 * rated), None)
        lines.append(
            say("Two of {rated:g} VA would be over the 100 VA of Class 2", rated=rated)
            if bigger is None
            else say("One {bigger:g} VA unit carries what two of {rated:g} VA would", bigger=bigger, rated=rated)
        )
        lines.append(
            say(
                "Outputs 1 V apart push about {amps:.2f} A round the two windings, with nothing on",
                amps=circulating_a(1.0, 0.0, 2.0 * secondary_side_ohm(rated, volts)),
            )
        )
    lines += [
        say("It takes two of the same make, VA, ratio and tap on the same line pair, each fused, and the listing"),
        say(
            "Phasing, also for two units with one common: power off, join the C sides only, power on, read R to R."
            " About {same:g} V: in phase. About {double:g} V: power off, swap one secondary's leads, read again",
            same=same,
            double=double,
        ),
        say("Anything between: not the same volts, do not join them"),
    ]
    return Part(lines=tuple(lines), rules=(NO_INTERCONNECTING,), cautions=("class2_no_interconnect", "licensed_hand"))


def supply_part(told: Told) -> Part | None:
    """
    The tap for this supply and what another one gives.

    Args:
        told: The job.
    """
    supply, tap = told.job.number("supply_volts"), told.job.number("tap_volts")
    lines: list[Said] = []
    numbers: dict[str, float | bool | None] = {}
    if supply is not None and tap is not None:
        volts = told.loads.rated_v * supply / tap
        numbers["output_volts"] = round(volts, 2)
        lines.append(_output(volts, supply, tap, told.loads.rated_v))
    elif supply is not None and "size" in told.job.asks:
        lines.append(_primary(supply))
    lines += _hertz(told)
    if not lines:
        return None
    on_hertz = told.job.number("supply_hertz") is not None
    return Part(
        lines=tuple(lines),
        numbers=numbers,
        rules=(*((COIL_RANGE,) if numbers else ()), *((FREQUENCY,) if on_hertz else ())),
        cautions=("cap_unused_leads",),
    )


def _output(volts: float, supply: float, tap: float, rated_v: float) -> Said:
    """What comes out at the rated load, against what coils live on."""
    low, high = PULL_IN_SHARE * rated_v, HIGHEST_SHARE * rated_v
    if abs(supply / tap - 1.0) <= ON_TAP:
        return say(
            "{supply:g} V on the {tap:g} V tap gives {volts:.1f} V at full load: right tap", supply=supply, tap=tap, volts=volts
        )
    if low <= volts <= high:
        return say(
            "{supply:g} V on the {tap:g} V tap gives {volts:.1f} V at full load: coils stand it, but take the tap for the supply",
            supply=supply,
            tap=tap,
            volts=volts,
        )
    return say(
        "No: {supply:g} V on the {tap:g} V tap gives {volts:.1f} V at full load, coils want {low:.1f} to {high:.1f} V",
        supply=supply,
        tap=tap,
        volts=volts,
        low=low,
        high=high,
    )


def _primary(supply: float) -> Said:
    if any(abs(supply / tap - 1.0) <= ON_TAP for tap in MULTI_TAP_V):
        return say(
            "{supply:g} V supply: single primary, or multi-tap 120/208/240 on the {supply:g} V lead, the other leads capped singly",
            supply=supply,
        )
    return say("{supply:g} V supply: the primary must have a {supply:g} V tap or rating", supply=supply)


def _hertz(told: Told) -> tuple[Said, ...]:
    hertz = told.job.number("supply_hertz")
    if hertz is None:
        return ()
    if hertz < 55.0:
        return (
            say(
                "On 50 Hz use a unit marked 50 Hz or 50/60: one for 60 Hz only saturates and runs hot, good for {volts:.0f} V of its 120",
                volts=volts_at_hertz(120.0, 60.0, 50.0),
            ),
        )
    return (say("On 60 Hz a unit marked 50 Hz only runs cool at its volts, but 50 Hz coils pull weaker: match their marking"),)


def ground_part(told: Told) -> Part | None:
    """
    Whether one side of the secondary must be grounded on this supply.

    Args:
        told: The job.
    """
    supply = told.supply_v
    row = None if supply is None else usual_supply(supply)
    if row is None or not {"size", "fuse", "prove", "parallel"} & set(told.job.asks):
        return None
    line = (
        say("Ground one side of the secondary: {system} is over 150 V to ground", system=row.system)
        if must_be_grounded(row.to_ground_v)
        else say(
            "{system}: the secondary need not be grounded, unless the supply is ungrounded, has a high leg on it or the wires run overhead",
            system=row.system,
        )
    )
    return Part(lines=(line,), rules=(GROUND_SECONDARY,))
