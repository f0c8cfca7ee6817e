"""What to buy for these loads, in sentences and numbers."""

from collections.abc import Sequence
from dataclasses import replace
from typing import Final

from core.said import Said, say
from core.sizing.inrush_lines import inrush_lines, mend, size_at_once, size_for_pull_in
from core.sizing.loads import Part as Load
from core.sizing.told import Part, Told
from core.standards.class_2 import CLASS_2_POWER, MOST_VA
from core.standards.coil_range import COIL_RANGE
from core.standards.device_loads import TYPICAL_LOADS
from core.standards.transformer_ratings import SPARE, STANDARD_SIZES, next_size_va, stocked_after

MODES: Final[dict[str, Said]] = {"cooling": say("cooling"), "heating": say("heating"), "defrost": say("defrost")}
SPARE_PERCENT: Final = 100.0 * SPARE


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
        if not told.is_about_size:
            return None
        return Part(lines=(*_guessed(told), *unknown_lines(told.job.unknown_loads), *_missing(told)), rules=(TYPICAL_LOADS,))
    if not told.is_about_size:
        return Part(numbers={"load_va": round(load, 2), "inrush_va": _rounded(told.loads.inrush_va)}, lines=_doubt(told))
    pick = told.pick_va
    if (unsure := _unsure(told, load, pick)) is not None:
        numbers: dict[str, float | bool | None] = {"load_va": round(load, 2), "inrush_va": _rounded(told.loads.inrush_va)}
        more = (*unknown_lines(told.job.unknown_loads), *_missing(told))
        return Part(lines=(unsure, *more), numbers=numbers | {"pick_va": pick}, rules=(STANDARD_SIZES,))
    sags, usual = inrush_lines(told)
    return Part(
        lines=(
            *_doubt(told),
            *(_over(load) if pick is None else (_verdict(told, load, pick),)),
            *_at_once(told, load),
            *sags,
            *_missing(told),
        ),
        more=(*_by_clamp(told), *usual, *_modes(told, load)),
        numbers={
            "load_va": round(load, 2),
            "inrush_va": _rounded(told.loads.inrush_va),
            "pick_va": pick,
            "class2": pick is not None and (told.rated_va or 0.0) <= MOST_VA,
        },
        rules=(
            *((TYPICAL_LOADS,) if told.loads.unknown else ()),
            STANDARD_SIZES if pick is not None else CLASS_2_POWER,
            *((COIL_RANGE,) if told.loads.inrush_va is not None else ()),
        ),
        cautions=("local_code",) if pick is not None else ("licensed_hand", "class2_no_interconnect"),
        picture="load_budget",
    )


def _rounded(va: float | None) -> float | None:
    return None if va is None else round(va, 2)


def _unsure(told: Told, load: float, pick: float | None) -> Said | None:
    """No size is sure while a part of the load was not understood, or where only what is to be added was told."""
    if told.is_addition:
        return say("{load:g} VA more: send what the {rated:g} VA carries now", load=load, rated=told.rated_va)
    if not told.job.unread:
        return None
    if told.rated_va is not None or pick is None:
        return say("Not sure yet: {load:g} VA read, and something was not understood", load=load)
    return say("At least {pick:g} VA: {load:g} VA read, and something was not understood", pick=pick, load=load)


def _verdict(told: Told, load: float, pick: float) -> Said:
    if (rated := told.rated_va) is not None:
        return _judged_in_part(told, rated, load) or _judged(told, rated, load, pick)
    if told.loads.unknown:
        return _with_the_rest(told, load, pick)
    if (by_pull_in := _by_pull_in(told, load, pick)) is not None:
        return by_pull_in
    if (stocked := stocked_after(pick)) is not None:
        return say(
            "Buy {pick:g} VA, or {stocked:g} if not stocked: {load:g} VA steady + {spare:g} % spare",
            pick=pick,
            stocked=stocked,
            load=load,
            spare=SPARE_PERCENT,
        )
    return say("Buy {pick:g} VA: {load:g} VA steady + {spare:g} % spare", pick=pick, load=load, spare=SPARE_PERCENT)


def _by_pull_in(told: Told, load: float, pick: float) -> Said | None:
    """The size where the pull-in, and not the steady load, decides it."""
    found = mend(told)
    if found is None:
        return None
    is_told = told.loads.inrush_va is not None
    if found.unit_va is None:
        if not is_told:
            return None
        return say("No size holds it: {load:g} VA steady needs {pick:g} VA, its pull-in more than any", load=load, pick=pick)
    named = {"bigger": found.unit_va, "load": load, "pick": pick}
    if found.unit_va <= pick:
        return None
    if not is_told:
        return say("Buy {bigger:g} VA: {load:g} VA steady needs {pick:g}, the usual pull-in {bigger:g}", **named)
    return say("Buy {bigger:g} VA: {load:g} VA steady needs {pick:g}, its pull-in {bigger:g}", **named)


def _judged_in_part(told: Told, rated: float, load: float) -> Said | None:
    """The unit that is there, where some parts have no figure: not called enough by the others alone."""
    low, high = told.loads.missing_va
    if not told.loads.unknown or load > rated:
        return None
    if high <= 0.0:
        return say("Not sure yet for {rated:g} VA: only {load:g} VA of the load is known", rated=rated, load=load)
    named = {"rated": rated, "load": load, "low": low, "high": high}
    if load + low > rated:
        return say("{rated:g} VA is likely too small: {load:g} VA known, the rest usually {low:g} to {high:g} VA", **named)
    if (load + low) * (1.0 + SPARE) > rated and (size := next_size_va(load + high)) is not None:
        return say(
            "{rated:g} VA leaves too little spare: {load:g} VA known, the rest usually {low:g} to {high:g} VA. Buy {size:g} VA",
            size=size,
            **named,
        )
    if (load + high) * (1.0 + SPARE) <= rated:
        return say("{rated:g} VA is likely enough: {load:g} VA known, the rest usually {low:g} to {high:g} VA", **named)
    return say("Not sure yet for {rated:g} VA: {load:g} VA known, the rest usually {low:g} to {high:g} VA", **named)


def _with_the_rest(told: Told, load: float, pick: float) -> Said:
    """The size once the parts without a figure draw what such parts usually do."""
    low, high = told.loads.missing_va
    if high <= 0.0:
        return say("At least {pick:g} VA: the known parts draw {load:g} VA steady", pick=pick, load=load)
    named = {"load": load, "low": low, "high": high}
    size = size_for_pull_in(told) or told.likely_va
    if size is None:
        return say("Likely too much for one Class 2 unit: {load:g} VA known, the rest usually {low:g} to {high:g} VA", **named)
    return say("Buy {size:g} VA: {load:g} VA known, the rest usually {low:g} to {high:g} VA", size=size, **named)


def advised_va(told: Told) -> float | None:
    """
    The size that the answer names first.

    Args:
        told: The job.

    Returns:
        Size, or None where no Class 2 unit serves. [VA]
    """
    bigger = size_for_pull_in(told)
    if told.rated_va is None:
        return bigger or told.likely_va
    return told.pick_va if told.pick_va is None or told.loads.inrush_va is None else max(told.pick_va, bigger or 0.0)


def unit_to_have(told: Told) -> float | None:
    """
    The unit that the answer leaves the technician with: the one that is there where it serves, else the one to buy.

    Args:
        told: The job.

    Returns:
        Size, or None where none is known or none serves. [VA]
    """
    rated, load, pick = told.rated_va, told.load_va, told.pick_va
    if rated is None:
        return advised_va(told)
    bigger = size_for_pull_in(told) if told.loads.inrush_va is not None else None
    if load is None or pick is None or (load <= rated and bigger is None):
        return rated
    return max(pick, bigger or 0.0)


def _judged(told: Told, rated: float, load: float, pick: float) -> Said:
    """The unit that is there against its load, and against the pull-in where that wants more."""
    if load > rated:
        size = max(pick, size_for_pull_in(told) or 0.0)
        return say("Too small: {load:g} VA steady on {rated:g} VA. Buy {pick:g} VA", load=load, rated=rated, pick=size)
    for_pull_in = size_for_pull_in(told)
    if for_pull_in is not None and for_pull_in > rated and told.loads.inrush_va is not None:
        return say(
            "{rated:g} VA carries {load:g} VA steady, not the pull-in: buy {size:g} VA",
            rated=rated,
            load=load,
            size=max(for_pull_in, pick),
        )
    named = {"rated": rated, "load": load, "left": 100.0 * (rated / load - 1.0)}
    if rated < pick:
        return say("{rated:g} VA carries {load:g} VA with only {left:.0f} % spare: buy {pick:g} VA", pick=pick, **named)
    if for_pull_in is not None:  # by the pull-in that is only usual
        return say("{rated:g} VA carries {load:g} VA steady with {left:.0f} % spare", **named)
    return say("{rated:g} VA is enough: {load:g} VA steady, {left:.0f} % spare", **named)


def _over(load: float) -> tuple[Said, ...]:
    """No Class 2 unit carries it: what is left to do."""
    verdict = (
        say("No Class 2 size: {load:g} VA leaves no {spare:g} % spare under 100 VA", load=load, spare=SPARE_PERCENT)
        if load <= MOST_VA
        else say("Over Class 2: {load:g} VA steady, and Class 2 ends at 100 VA", load=load)
    )
    return (verdict, *_split())


def _split() -> tuple[Said, ...]:
    return (
        say("Split the load: two transformers, fused apart, outputs never joined"),
        say("Or another circuit class, by code and a licensed hand"),
    )


def _by_clamp(told: Told) -> tuple[Said, ...]:
    amps = next((part.amps for part in told.loads.parts if part.clamped), None)
    return () if amps is None else (say("By the clamp, {amps:g} A: read it with everything called", amps=amps),)


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


def unknown_lines(names: Sequence[str]) -> tuple[Said, ...]:
    """
    What stands where a device would and is none that is known: what to send for it.

    Args:
        names: As they were written.
    """
    if not names:
        return ()
    told = say("“{device}”", device=names[0])
    for name in names[1:]:
        told = say("{one}, {other}", one=told, other=say("“{device}”", device=name))
    return (
        say("{devices}: no device I know. Send the VA or amps off its label under a usual name, like relay 4 VA", devices=told),
    )


def _missing(told: Told) -> tuple[Said, ...]:
    """The parts without a figure, and from where on they ask for the next size."""
    parts = told.loads.unknown
    if not parts:
        return ()
    named = _usually(parts[0])
    for part in parts[1:]:
        named = say("{one}, {other}", one=named, other=_usually(part))
    line = say("Send the VA off the label: {devices}", devices=named)
    return (line, *_next_size(told))


def _guessed(told: Told) -> tuple[Said, ...]:
    """What devices without any figure usually draw together, beside the unit that is there."""
    low, high = told.loads.missing_va
    if high <= 0.0:
        return (say("No size yet: no load is known"),)
    named = {"low": low, "high": high, "rated": told.rated_va}
    if told.rated_va is None and next_size_va(low) is None:
        over = say("Over Class 2: such devices usually draw {low:g} to {high:g} VA in all", low=low, high=high)
        return (over, *_split())
    if told.rated_va is None:
        first = say("No size yet: such devices usually draw {low:g} to {high:g} VA in all", low=low, high=high)
        most = _size_for_the_most(told)
        if most is None:
            return (first, say("With the most of it one Class 2 unit is too small"))
        return (first, say("{size:g} VA carries the most of it, pull-in included", size=most))
    if low > told.rated_va:
        return (say("{rated:g} VA is likely too small: such devices usually draw {low:g} to {high:g} VA in all", **named),)
    return (say("Not sure yet for {rated:g} VA: such devices usually draw {low:g} to {high:g} VA in all", **named),)


def _size_for_the_most(told: Told) -> float | None:
    """The size that carries devices that all draw the most that is usual, or None. [VA]."""
    parts = tuple(
        replace(p, va=p.typical.high_va, inrush_va=None if (p.inrush_va or 0.0) < p.typical.high_va else p.inrush_va)
        for p in told.loads.unknown
        if p.typical is not None
    )
    loads = replace(told.loads, parts=parts)
    worst = replace(told, loads=loads, wired=loads)
    return size_for_pull_in(worst) or worst.pick_va


def _usually(part: Load) -> Said:
    row = part.typical
    if row is None:
        return say("{count} × {device}", count=part.count, device=part.device)
    return say(
        "{count} × {device} (usually {low:g} to {high:g} VA)",
        count=part.count,
        device=part.device,
        low=row.low_va,
        high=row.high_va,
    )


def _next_size(told: Told) -> tuple[Said, ...]:
    """How much the missing parts may draw together on the size that is named."""
    load, size, (_, most) = told.load_va, told.likely_va, told.loads.missing_va
    if load is None or size is None or told.rated_va is not None:
        return ()
    room = size / (1.0 + SPARE) - load
    if most <= room:
        return ()
    bigger = next_size_va(load + room + 1e-3)
    if bigger is None:
        return (say("Over {room:.0f} VA for the rest: no Class 2 unit", room=room),)
    return (say("Over {room:.0f} VA for the rest: {bigger:g} VA", room=room, bigger=bigger),)


def _at_once(told: Told, load: float) -> tuple[Said, ...]:
    """What was counted, where the technician says that cooling and heating never run together."""
    if told.at_once is None:
        return ()
    mode, everything = told.at_once
    return (say("Counted what is on at once: {load:g} of {all:g} VA ({mode})", load=load, all=everything, mode=MODES[mode]),)


def _worst_mode(told: Told, load: float) -> tuple[str, float] | None:
    """What is on at one time, and its sum, where that is less than everything."""
    mode, worst = told.loads.worst_mode
    return None if worst > load - 1.0 or worst <= 0.0 else (mode, worst)


def _modes(told: Told, load: float) -> tuple[Said, ...]:
    """What is on at one time, where that is less than everything."""
    found = _worst_mode(told, load)
    if found is None:
        return ()
    mode, worst = found
    size = size_at_once(told)
    if size is None or size >= (advised_va(told) or 0.0):
        return (say("Most on at once: {worst:g} VA ({mode})", worst=worst, mode=MODES[mode]),)
    return (
        say(
            "Most on at once: {worst:g} VA ({mode}). Sure that nothing else calls then: {size:g} VA",
            worst=worst,
            mode=MODES[mode],
            size=size,
        ),
    )
