"""Whether the coils pull in on this unit and this run, in sentences."""

from core.said import Said, say
from core.sizing.loads import Budget
from core.sizing.runs import in_a_row
from core.sizing.told import Told
from core.sizing.wire import pull_in_volts
from core.standards.coil_range import PULL_IN_SHARE
from core.standards.transformer_ratings import SIZES_VA, next_size_va

Lines = tuple[Said, ...]


def inrush_lines(told: Told) -> tuple[Lines, Lines]:
    """
    What the largest pull-in does to the coils, through the unit's windings and the run.

    Args:
        told: The job.

    Returns:
        What must be said, and what may be said where there is room.
    """
    unit, peak = told.likely_va, told.loads.inrush_va
    if unit is None:
        return (), ()
    if peak is None:
        return (), _usual_inrush(told, unit)
    weak, middling = at_coils(told, unit)
    least = PULL_IN_SHARE * told.loads.rated_v
    if weak >= least:
        line = say(
            "Pull-in {peak:g} VA: coils keep {weak:.1f} V or more, {least:.1f} V needed", peak=peak, weak=weak, least=least
        )
        return (), (line,)
    named = {"peak": peak, "middling": middling, "least": least, "tail": _mend(told, unit)}
    if middling >= least:
        line = say(
            "Pull-in {peak:g} VA: {weak:.1f} to {middling:.1f} V at the coils, {least:.1f} V needed. To be sure {tail}",
            weak=weak,
            **named,
        )
    else:
        line = say("Pull-in {peak:g} VA takes the coils to {middling:.1f} V, {least:.1f} V needed: {tail}", **named)
    return (line,), ()


def at_coils(told: Told, unit_va: float, *, usual: bool = False) -> tuple[float, float]:
    """
    The least that coils see while the largest of them pulls in, on the worst of several runs.

    Args:
        told: The job.
        unit_va: Size of the transformer. [VA]
        usual: True for the most that such coils usually take, False for what was told.

    Returns:
        Volts of a weak and of a middling unit; the rated volts where nothing pulls in. [V]
    """
    rated_v, load = told.loads.rated_v, told.load_va or 0.0
    ends: list[tuple[Budget, float]] = [(told.wired, told.run_ohm)]
    if told.runs and not in_a_row(told.runs):
        ends = [(run.loads, run.ohm) for run in told.runs]
    if told.wired != told.loads:
        ends.append((told.loads, 0.0))  # what hangs beside the wire that this message is about
    seen = []
    for loads, ohm in ends:
        peak = _most(loads, usual=usual)
        if peak is not None:
            seen.append(pull_in_volts(unit_va, peak, ohm, rated_v, beside_va=load - (loads.load_va or 0.0)))
    return min(seen, default=(rated_v, rated_v))


def _most(loads: Budget, *, usual: bool) -> float | None:
    if not usual:
        return loads.inrush_va
    band = loads.typical_inrush_va
    return None if band is None else band[1]


def _bigger(told: Told, unit: float, *, usual: bool = False) -> float | None:
    """The next size that holds the coils up, or None."""
    least = PULL_IN_SHARE * told.loads.rated_v
    return next((s for s in SIZES_VA if s > unit and at_coils(told, s, usual=usual)[0] >= least), None)


def size_for_pull_in(told: Told) -> float | None:
    """
    The size that holds the coils up where that for the steady load does not.

    Args:
        told: The job, its largest pull-in told.

    Returns:
        Size, or None where the steady load decides or no size holds. [VA]
    """
    unit = told.likely_va
    if unit is None or told.loads.inrush_va is None or at_coils(told, unit)[0] >= PULL_IN_SHARE * told.loads.rated_v:
        return None
    return _bigger(told, unit)


def size_for_mode(told: Told, worst_va: float) -> float | None:
    """
    The size for the loads that are on together, that also holds the coils up while the largest pulls in.

    Args:
        told: The job.
        worst_va: Steady, of the worst mode. [VA]

    Returns:
        Size, or None where none up to 100 VA holds. [VA]
    """
    size, usual = next_size_va(worst_va), told.loads.inrush_va is None
    if size is None or at_coils(told, size, usual=usual)[0] >= PULL_IN_SHARE * told.loads.rated_v:
        return size
    return _bigger(told, size, usual=usual)


def _mend(told: Told, unit: float) -> Said:
    """What holds the coils up; where no size does, the load or the wire must give."""
    bigger = _bigger(told, unit)
    if bigger is not None:
        return say("take {bigger:g} VA", bigger=bigger)
    return say("split the load or shorten the run") if told.feet is not None else say("split the load")


def _usual_inrush(told: Told, unit: float) -> Lines:
    band = told.loads.typical_inrush_va
    if band is None:
        return ()
    named = {"low": band[0], "high": band[1], "unit": unit}
    weak, _ = at_coils(told, unit, usual=True)
    if weak >= PULL_IN_SHARE * told.loads.rated_v:
        return (say("Pull-in not told, usually {low:.0f} to {high:.0f} VA: {unit:g} VA holds", **named),)
    bigger = _bigger(told, unit, usual=True)
    if bigger is None:
        return (
            say(
                "Pull-in not told, usually {low:.0f} to {high:.0f} VA: may sag to {weak:.1f} V, read the label",
                weak=weak,
                **named,
            ),
        )
    return (
        say(
            "Pull-in not told, usually {low:.0f} to {high:.0f} VA: {unit:g} VA may sag to {weak:.1f} V, {bigger:g} VA holds",
            weak=weak,
            bigger=bigger,
            **named,
        ),
    )
