"""Two transformers together, the tap for this supply, and the ground, in sentences and numbers."""

from core.said import Said, say
from core.sizing.paralleling import circulating_a, phase_test_volts, secondary_side_ohm
from core.sizing.told import Part, Told
from core.standards.class_2 import MOST_VA, NO_INTERCONNECTING
from core.standards.coil_range import COIL_RANGE, HIGHEST_SHARE, PULL_IN_SHARE
from core.standards.grounding import GROUND_SECONDARY, LIMIT_TO_GROUND_V, must_be_grounded, usual_supply
from core.standards.transformer_ratings import MULTI_TAP_V, ON_TAP, SIZES_VA


def parallel_part(told: Told) -> Part | None:
    """
    Whether two secondaries may be joined, and the phase test.

    Args:
        told: The job.
    """
    if "parallel" not in told.job.asks and told.phase_reading is None:
        return None
    if (read := told.phase_reading) is not None:
        return Part(
            lines=_phase_read(read, told.loads.rated_v), rules=(NO_INTERCONNECTING,), cautions=("class2_no_interconnect",)
        )
    lines: list[Said] = []
    if "parallel_class2" not in told.job.dangers:  # the refusal has said so before
        lines += [
            say("Usually not: buy one bigger unit, or keep two circuits apart, each with its own fuse"),
            say("Class 2 outputs, commons too, are joined only where listed for it"),
        ]
    return Part(
        lines=(
            *lines,
            *_bigger(told),
            say("It takes the same make, VA, ratio and tap on one line pair, each fused, and the listing"),
            *_phase_test(told.loads.rated_v),
        ),
        more=() if "parallel_class2" in told.job.dangers else _circulating(told),
        rules=(NO_INTERCONNECTING,),
        cautions=("class2_no_interconnect", "licensed_hand"),
    )


def _bigger(told: Told) -> tuple[Said, ...]:
    rated = told.rated_va
    if rated is None:
        return ()
    bigger = next((s for s in SIZES_VA if s >= 2.0 * rated), None)
    if bigger is None:
        return (say("Two of {rated:g} VA would be over the {most:g} VA of Class 2", rated=rated, most=MOST_VA),)
    return (say("One {bigger:g} VA unit carries what two of {rated:g} VA would", bigger=bigger, rated=rated),)


def _phase_test(volts: float) -> tuple[Said, ...]:
    """Step by step, with what to read."""
    same, double = phase_test_volts(volts, volts)
    return (
        say("Phase test for one common: power off, join the two C sides only, power on, read R to R"),
        say(
            "About {same:g} V: in phase. About {double:g} V: power off, swap one secondary's leads, read again",
            same=same,
            double=double,
        ),
        say("In between: their volts differ, take the joint apart"),
    )


def _phase_read(read_v: float, rated_v: float) -> tuple[Said, ...]:
    """What a reading from R to R says of two secondaries whose C sides are joined."""
    same, double = phase_test_volts(rated_v, rated_v)
    if abs(read_v - same) <= PHASE_SLACK * rated_v:
        return (
            say("{volts:g} V R to R: in phase", volts=read_v),
            say("Class 2 outputs stay joined, commons too, only where listed for it"),
        )
    if abs(read_v - double) <= 2.0 * PHASE_SLACK * rated_v:
        return (
            say("{volts:g} V R to R: out of phase", volts=read_v),
            say("Power off, swap the two leads of one secondary, read again: about {same:g} V", same=same),
        )
    return (
        say("{volts:g} V R to R: neither {same:g} nor {double:g} V", volts=read_v, same=same, double=double),
        say("Take the joint apart, read each secondary by itself: their volts differ, or only one is live"),
    )


PHASE_SLACK = 0.15
"""Of the rated volts: two units read a volt or two apart with nothing on. Common practice, no source."""


def _circulating(told: Told) -> tuple[Said, ...]:
    rated = told.rated_va
    if rated is None:
        return ()
    amps = circulating_a(1.0, 0.0, 2.0 * secondary_side_ohm(rated, told.loads.rated_v))
    return (say("Outputs 1 V apart push {amps:.2f} A round the two windings, with nothing on", amps=amps),)


def supply_part(told: Told) -> Part | None:
    """
    What comes out on this tap, or the primary to buy for this supply.

    Args:
        told: The job.
    """
    supply, tap = told.job.number("supply_volts"), told.job.number("tap_volts")
    if supply is not None and tap is not None:
        volts = told.loads.rated_v * supply / tap
        return Part(
            lines=_output(volts, supply, tap, told.loads.rated_v),
            numbers={"output_volts": round(volts, 2)},
            rules=(COIL_RANGE,),
            cautions=("cap_unused_leads",),
        )
    if supply is not None and "size" in told.job.asks and "supply_volts" in told.job.fresh:
        return Part(more=(_primary(supply),), cautions=("cap_unused_leads",))
    return None


def _output(volts: float, supply: float, tap: float, rated_v: float) -> tuple[Said, ...]:
    """What comes out at the rated load, against what coils live on."""
    low, high = PULL_IN_SHARE * rated_v, HIGHEST_SHARE * rated_v
    named = {"supply": supply, "tap": tap, "volts": volts}
    if abs(supply / tap - 1.0) <= ON_TAP:
        return (say("{supply:g} V on the {tap:g} V tap gives {volts:.1f} V at full load: right tap", **named),)
    land = say("Land the {supply:g} V lead; none on it: a unit for {supply:g} V", supply=supply)
    if low <= volts <= high:
        return (
            say("{supply:g} V on the {tap:g} V tap gives {volts:.1f} V at full load: coils stand it, not for long", **named),
            land,
        )
    return (
        say(
            "No: {supply:g} V on the {tap:g} V tap gives {volts:.1f} V, coils want {low:.1f} to {high:.1f} V",
            low=low,
            high=high,
            **named,
        ),
        land,
    )


def _primary(supply: float) -> Said:
    if any(abs(supply / tap - 1.0) <= ON_TAP for tap in MULTI_TAP_V):
        return say("Primary {supply:g} V, or multi-tap on its {supply:g} V lead, the others capped singly", supply=supply)
    return say("Primary: one with a {supply:g} V tap or rating", supply=supply)


def ground_part(told: Told) -> Part | None:
    """
    Whether one side of the secondary must be grounded on this supply.

    Args:
        told: The job.
    """
    supply, is_asked = told.supply_v, "secondary_ground" in told.job.dangers
    row = None if supply is None else usual_supply(supply)
    if row is None:
        return Part(lines=_by_volts_to_ground(), rules=(GROUND_SECONDARY,)) if is_asked else None
    if must_be_grounded(row.to_ground_v):
        lines = (
            say(
                "Ground one side of the secondary: {system}, over {limit:g} V to ground",
                system=row.system,
                limit=LIMIT_TO_GROUND_V,
            ),
            *_how_to_ground(told.loads.rated_v, is_asked=is_asked),
        )
        is_due = is_asked or "load" in told.job.fresh or bool({"size", "fuse", "prove", "parallel"} & set(told.job.asks))
        return Part(lines=lines, rules=(GROUND_SECONDARY,), cautions=("licensed_hand",)) if is_due else None
    if not is_asked:
        return None
    return Part(
        lines=(
            say("Need not be grounded: {system} is {volts:g} V to ground", system=row.system, volts=row.to_ground_v),
            say("It must be on an ungrounded supply, a high leg, or wires overhead outdoors"),
            *_how_to_ground(told.loads.rated_v, is_asked=True),
        ),
        rules=(GROUND_SECONDARY,),
    )


def _by_volts_to_ground() -> tuple[Said, ...]:
    return (
        say("Must be grounded: fed from 277 or 480 V, an ungrounded supply or a high leg, or wires overhead outdoors"),
        say("Need not be: fed from 120, 208Y/120 or 120/240 V. Send the supply"),
        say("The C side to the cabinet's ground, at one place only"),
    )


def _how_to_ground(rated_v: float, *, is_asked: bool) -> tuple[Said, ...]:
    """Which side, and what it reads then."""
    if not is_asked:
        return ()
    return (
        say("The C side to the cabinet's ground, at one place only"),
        say("Then C to ground reads 0 V, R to ground {volts:g} V; floating readings before it are no fault", volts=rated_v),
    )
