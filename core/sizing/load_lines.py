"""What to buy for these loads, in sentences and numbers."""

from typing import Final

from core.said import Said, say
from core.sizing.loads import Part as Load
from core.sizing.told import Part, Told
from core.sizing.wire import pull_in_volts
from core.standards.class_2 import CLASS_2_POWER, MOST_VA
from core.standards.coil_range import COIL_RANGE, PULL_IN_SHARE
from core.standards.device_loads import TYPICAL_LOADS
from core.standards.transformer_ratings import SIZES_VA, SPARE, STANDARD_SIZES, next_size_va, stocked_after

MODES: Final[dict[str, Said]] = {"cooling": say("cooling"), "heating": say("heating"), "defrost": say("defrost")}


def load_part(told: Told) -> Part | None:
    """
    The load, the size for it, and whether its coils pull in.

    Args:
        told: The job.

    Returns:
        The part of the answer, or None where no load was spoken of.
    """
    if not told.loads.parts:
        return None
    load = told.load_va
    if load is None:
        return Part(lines=(say("No size yet: no load is known"), *_missing(told)), rules=(TYPICAL_LOADS,))
    if _quiet(told):
        return Part(numbers={"load_va": round(load, 2), "inrush_va": _rounded(told.loads.inrush_va)}, lines=_doubt(told))
    pick = told.pick_va
    lines = [_over(load) if pick is None else _verdict(told, load, pick)]
    lines += [*_doubt(told), *_missing(told), *_modes(told, load), *_inrush(told)]
    numbers: dict[str, float | bool | None] = {
        "load_va": round(load, 2),
        "inrush_va": _rounded(told.loads.inrush_va),
        "pick_va": pick,
        "class2": pick is not None and (told.rated_va or 0.0) <= MOST_VA,
    }
    rules = [STANDARD_SIZES] if pick is not None else [CLASS_2_POWER]
    rules += [TYPICAL_LOADS] if told.loads.unknown else []
    rules += [COIL_RANGE] if told.loads.inrush_va is not None else []
    return Part(
        lines=tuple(lines),
        numbers=numbers,
        rules=tuple(rules),
        cautions=("local_code",) if pick is not None else ("licensed_hand", "class2_no_interconnect"),
        picture="load_budget",
    )


def _quiet(told: Told) -> bool:
    """True where only a run or two units together are asked about: the load is then a means, no question."""
    asks = set(told.job.asks)
    return bool(asks & {"wire_run", "parallel"}) and not asks & {"size", "fuse"}


def _rounded(va: float | None) -> float | None:
    return None if va is None else round(va, 2)


def _verdict(told: Told, load: float, pick: float) -> Said:
    if (rated := told.rated_va) is not None:
        return _judged(rated, load, pick)
    if told.loads.unknown:
        return say("At least {pick:g} VA: the known parts draw {load:g} VA steady", pick=pick, load=load)
    if (stocked := stocked_after(pick)) is not None:
        return say(
            "Buy {pick:g} VA, or {stocked:g} VA where {pick:g} is not stocked: {load:g} VA steady with {spare:.0%} spare",
            pick=pick,
            stocked=stocked,
            load=load,
            spare=SPARE,
        )
    return say("Buy {pick:g} VA: {load:g} VA steady with {spare:.0%} spare", pick=pick, load=load, spare=SPARE)


def _judged(rated: float, load: float, pick: float) -> Said:
    """The unit that is there against its load."""
    if load > rated:
        return say("Too small: {load:g} VA steady on {rated:g} VA. Buy {pick:g} VA", load=load, rated=rated, pick=pick)
    if rated < pick:
        return say(
            "{rated:g} VA carries {load:g} VA with only {left:.0%} spare: {pick:g} VA is better",
            rated=rated,
            load=load,
            left=rated / load - 1.0,
            pick=pick,
        )
    return say("{rated:g} VA is enough: {load:g} VA steady, {left:.0%} spare", rated=rated, load=load, left=rated / load - 1.0)


def _over(load: float) -> Said:
    if load <= MOST_VA:
        return say(
            "No Class 2 size: {load:g} VA leaves no {spare:.0%} spare under 100 VA. Split the load on two transformers, fused apart,"
            " outputs never joined; or another circuit class, by code and a licensed hand",
            load=load,
            spare=SPARE,
        )
    return say(
        "Over Class 2: {load:g} VA steady, and Class 2 ends at 100 VA. Split the load on two or more transformers, fused apart,"
        " outputs never joined; or another circuit class, by code and a licensed hand",
        load=load,
    )


def _doubt(told: Told) -> tuple[Said, ...]:
    part = told.loads.doubtful()
    if part is None:
        return ()
    return (
        say(
            "{va:g} VA steady for one {device}? That may be its inrush. Send the sealed VA off the label",
            va=part.va,
            device=part.device,
        ),
    )


def _missing(told: Told) -> tuple[Said, ...]:
    """Each part without a figure, and what they may bring the size to."""
    lines = [_label(part) for part in told.loads.unknown]
    low, high = told.loads.missing_va
    if told.load_va is None or high <= 0.0:
        return tuple(lines)
    least, most = told.load_va + low, told.load_va + high
    small, large = next_size_va(least), next_size_va(most)
    if small is None:
        lines.append(
            say("With them {least:.0f} to {most:.0f} VA: likely too much for one Class 2 unit", least=least, most=most)
        )
    elif large is None:
        lines.append(
            say(
                "With them {least:.0f} to {most:.0f} VA: {small:g} VA or more, so read the labels",
                least=least,
                most=most,
                small=small,
            )
        )
    elif small == large:
        lines.append(say("With them {least:.0f} to {most:.0f} VA: {small:g} VA holds", least=least, most=most, small=small))
    else:
        lines.append(
            say(
                "With them {least:.0f} to {most:.0f} VA: {small:g} or {large:g} VA, the labels decide",
                least=least,
                most=most,
                small=small,
                large=large,
            )
        )
    return tuple(lines)


def _label(part: Load) -> Said:
    row = part.typical
    if row is None:
        return say("Not counted: {count} × {device}. Send the VA off the label", count=part.count, device=part.device)
    return say(
        "Not counted: {count} × {device}, usually {low:g} to {high:g} VA each. Send the VA off the label",
        count=part.count,
        device=part.device,
        low=row.low_va,
        high=row.high_va,
    )


def _modes(told: Told, load: float) -> tuple[Said, ...]:
    """What is on at one time, where that is less than everything."""
    sums = told.loads.by_mode()
    mode, worst = max(sums.items(), key=lambda item: item[1])
    if worst > load - 1.0:
        return ()
    size = next_size_va(worst)
    if size is None or size == told.pick_va:
        return (say("Most on at one time: {worst:g} VA, in {mode}", worst=worst, mode=MODES[mode]),)
    return (
        say(
            "Most on at one time: {worst:g} VA, in {mode}. If nothing else ever calls with it, {size:g} VA carries that",
            worst=worst,
            mode=MODES[mode],
            size=size,
        ),
    )


def _inrush(told: Told) -> tuple[Said, ...]:
    unit, peak = told.unit_va, told.loads.inrush_va
    if unit is None:
        return ()
    if peak is None:
        return _usual_inrush(told, unit)
    weak, middling = pull_in_volts(unit, peak, told.run_ohm, told.loads.rated_v)
    least = PULL_IN_SHARE * told.loads.rated_v
    if weak >= least:
        return (
            say(
                "Pull-in {peak:g} VA: the coils still see {weak:.1f} V or more, {least:.1f} V needed",
                peak=peak,
                weak=weak,
                least=least,
            ),
        )
    bigger = next(
        (s for s in SIZES_VA if s > unit and pull_in_volts(s, peak, told.run_ohm, told.loads.rated_v)[0] >= least), None
    )
    tail = say("split the load or shorten the run") if bigger is None else say("take {bigger:g} VA", bigger=bigger)
    if middling >= least:
        return (
            say(
                "Pull-in {peak:g} VA: {weak:.1f} to {middling:.1f} V at the coils, {least:.1f} V needed. To be sure, {tail}",
                peak=peak,
                weak=weak,
                middling=middling,
                least=least,
                tail=tail,
            ),
        )
    return (
        say(
            "Pull-in {peak:g} VA takes the coils to {middling:.1f} V, under the {least:.1f} V they need: {tail}",
            peak=peak,
            middling=middling,
            least=least,
            tail=tail,
        ),
    )


def _usual_inrush(told: Told, unit: float) -> tuple[Said, ...]:
    band = told.loads.typical_inrush_va
    if band is None:
        return ()
    weak, _ = pull_in_volts(unit, band[1], told.run_ohm, told.loads.rated_v)
    if weak >= PULL_IN_SHARE * told.loads.rated_v:
        return (
            say(
                "Inrush not told: usually {low:.0f} to {high:.0f} VA, which {unit:g} VA holds",
                low=band[0],
                high=band[1],
                unit=unit,
            ),
        )
    return (
        say(
            "Inrush not told: usually {low:.0f} to {high:.0f} VA. At {high:.0f} VA a coil may see only {weak:.1f} V: read the label",
            low=band[0],
            high=band[1],
            weak=weak,
        ),
    )
