"""Whether the coils pull in on this unit and this run, in sentences."""

from dataclasses import dataclass, replace

from core.readings import Fact
from core.said import Said, say
from core.sizing.loads import Budget
from core.sizing.runs import in_a_row
from core.sizing.told import Told
from core.sizing.wire import pull_in_volts
from core.standards.coil_range import PULL_IN_SHARE
from core.standards.transformer_ratings import SIZES_VA
from core.standards.wire_gauges import CONTROL_GAUGES

Lines = tuple[Said, ...]
THICKEST_PULLED = 14
"""Thicker than this nobody pulls to a coil whose pull-in is only guessed: its label is read first. Common practice, no source. [AWG]"""


def inrush_lines(told: Told) -> tuple[Lines, Lines]:
    """
    What the largest pull-in does to the coils, through the unit's windings and the run.

    Args:
        told: The job.

    Returns:
        What must be said, and what may be said where there is room.
    """
    told = _hardest(told)
    unit, peak = told.likely_va, told.loads.inrush_va
    if unit is None:
        return (), ()
    if peak is None:
        usual = _usual_inrush(told, unit)
        return (usual, ()) if told.rated_va is not None and mend(told) is not None else ((), usual)
    weak, middling = at_coils(told, unit)
    least = PULL_IN_SHARE * told.loads.rated_v
    if weak >= least:
        line = say(
            "Pull-in {peak:g} VA: coils keep {weak:.1f} V or more, {least:.1f} V needed", peak=peak, weak=weak, least=least
        )
        return (), (line,)
    named = {"peak": peak, "unit": unit, "weak": weak, "middling": middling, "least": least}
    found = mend(told)
    if found is None or found.unit_va is None:
        line = say("Pull-in {peak:g} VA on {unit:g} VA takes the coils to {middling:.1f} V, {least:.1f} V needed", **named)
        return (line, say("Mend: {remedy}", remedy=remedy(told))), ()
    line = say(
        "Pull-in {peak:g} VA: {weak:.1f} V at the coils on {unit:g} VA, {held:.1f} V on {bigger:g} VA, {least:.1f} V needed",
        held=_held(told, found),
        bigger=found.unit_va,
        **named,
    )
    if found.awg is None:  # the verdict names the size
        return (line,), ()
    line = say(
        "Pull-in {peak:g} VA: {weak:.1f} V at the coils on {unit:g} VA, {held:.1f} V on {bigger:g} VA and {awg} AWG, {least:.1f} V needed",
        held=_held(told, found),
        bigger=found.unit_va,
        awg=found.awg,
        **named,
    )
    return (line, say("Run {awg} AWG or thicker", awg=found.awg)), ()


def _hardest(told: Told) -> Told:
    """The job in the mode whose coils are left with the least, where only one mode runs at a time."""
    unit = told.likely_va
    if not told.modes or unit is None:
        return told
    each = [replace(told, loads=loads, wired=wired, modes=()) for loads, wired in told.modes]
    return min(each, key=lambda only: at_coils(only, unit, usual=only.loads.inrush_va is None)[0])


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


def _holds(told: Told, unit_va: float) -> bool:
    """True where the coils pull in on this unit and this wire: by the pull-in told, else by the most that is usual."""
    usual = told.loads.inrush_va is None
    return at_coils(told, unit_va, usual=usual)[0] >= PULL_IN_SHARE * told.loads.rated_v


def _bigger(told: Told, unit: float) -> float | None:
    """The next size that holds the coils up, or None."""
    return next((s for s in SIZES_VA if s > unit and _holds(told, s)), None)


@dataclass(frozen=True, slots=True, kw_only=True)
class Mend:
    """What lets the coils pull in where the unit at hand does not."""

    unit_va: float | None
    """The size, or None where none up to 100 VA does. [VA]"""
    awg: int | None = None
    """The gauge that it takes besides, where the wire told is too thin. [AWG]"""


def mend(told: Told) -> Mend | None:
    """
    What the pull-in asks for beyond the size for the steady load.

    Args:
        told: The job.

    Returns:
        Size and gauge; None where the steady load decides, or where nothing is known of a pull-in.
    """
    if not told.modes:
        return _mend(told)
    found = [_mend(replace(told, loads=loads, wired=wired, modes=())) for loads, wired in told.modes]
    asked = [each for each in found if each is not None]
    return max(asked, key=lambda each: (each.unit_va is None, each.unit_va or 0.0), default=None)


def _mend(told: Told) -> Mend | None:
    unit = told.likely_va
    if unit is None or _holds(told, unit):
        return None
    bare = without_wire(told)
    base = unit if _holds(bare, unit) else _bigger(bare, unit)
    if base is None:
        return Mend(unit_va=None)
    up = next((s for s in SIZES_VA if s > base), base)
    near = next((s for s in (base, up) if s > unit and _holds(told, s)), None)
    if near is not None:
        return Mend(unit_va=near)
    if told.runs or told.feet is None or told.wire_awg is None:
        return Mend(unit_va=_bigger(told, base))
    pairs = ((s, thinnest_for_pull_in(told, s)) for s in SIZES_VA if s >= base)  # a thicker wire before two sizes more
    return next((Mend(unit_va=s, awg=awg) for s, awg in pairs if awg is not None), Mend(unit_va=None))


def without_wire(told: Told) -> Told:
    """The same job with everything right at the transformer."""
    return replace(told, wired=told.loads, runs=(), job=replace(told.job, facts=_no_run(told.job.facts)))


def _no_run(facts: tuple[Fact, ...]) -> tuple[Fact, ...]:
    return tuple(fact for fact in facts if fact.fact not in {"run_feet", "wire_awg"})


def thinnest_for_pull_in(told: Told, unit_va: float) -> int | None:
    """
    The thinnest gauge that lets the far coil pull in through a unit's own windings.

    Args:
        told: The job, with one run.
        unit_va: Size of the transformer. [VA]

    Returns:
        Gauge, or None where even 10 AWG is too thin. [AWG]
    """
    peak, feet = _most(told.wired, usual=told.loads.inrush_va is None), told.feet or 0.0
    rated_v, beside = told.loads.rated_v, (told.load_va or 0.0) - (told.wired.load_va or 0.0)
    if peak is None:
        return None
    return next(
        (
            awg
            for awg in CONTROL_GAUGES
            if pull_in_volts(unit_va, peak, told.copper.loop_ohm(awg, feet), rated_v, beside)[0] >= PULL_IN_SHARE * rated_v
        ),
        None,
    )


def size_for_pull_in(told: Told) -> float | None:
    """
    The size that holds the coils up where that for the steady load does not.

    Args:
        told: The job.

    Returns:
        Size, or None where the steady load decides or no size holds. [VA]
    """
    found = mend(told)
    return None if found is None else found.unit_va


def size_at_once(told: Told) -> float | None:
    """
    The size where only one mode runs at a time: for the largest sum, and for the coils of every mode while they pull in.

    Args:
        told: The job.

    Returns:
        Size, or None where none up to 100 VA holds. [VA]
    """
    sizes = []
    for mode in told.loads.by_mode():
        loads, wired = told.loads.of_mode(mode), told.wired.of_mode(mode)
        only = replace(told, loads=loads, wired=wired, job=replace(told.job, facts=_unrated(told)))
        if only.load_va is not None:
            found = mend(only)
            sizes.append(only.pick_va if found is None else found.unit_va)
    return None if None in sizes else max((size for size in sizes if size is not None), default=None)


def _unrated(told: Told) -> tuple[Fact, ...]:
    return tuple(fact for fact in told.job.facts if fact.fact != "rated_va")


def remedy(told: Told) -> Said:
    """
    What holds the coils up; where no size does, the load or the wire must give.

    Args:
        told: The job, its pull-in told.
    """
    found = mend(told)
    if found is not None and found.unit_va is not None:
        if found.awg is None:
            return say("take {bigger:g} VA", bigger=found.unit_va)
        return say("take {bigger:g} VA and {awg} AWG or thicker", bigger=found.unit_va, awg=found.awg)
    if sum(part.count for part in told.loads.parts) > 1:
        return say("split the load or shorten the run") if told.feet is not None else say("split the load")
    return say("shorten the run, or a relay there") if told.feet is not None else say("a coil that pulls in with less")


def _usual_inrush(told: Told, unit: float) -> Lines:
    """The pull-in that such coils usually take, and what it asks for beyond the size that the answer names."""
    band = told.loads.typical_inrush_va
    if band is None:
        return ()
    found = mend(told)
    named = {"low": band[0], "high": band[1], "unit": unit}
    if found is None:
        return (say("Pull-in not told, usually {low:.0f} to {high:.0f} VA: {unit:g} VA holds", **named),)
    weak, _ = at_coils(told, unit, usual=True)
    if found.unit_va is None or (found.awg is not None and found.awg < THICKEST_PULLED):
        return (
            say(
                "Pull-in not told, usually {low:.0f} to {high:.0f} VA: may sag to {weak:.1f} V, read the label",
                weak=weak,
                **named,
            ),
        )
    if found.awg is not None:
        return (
            say(
                "Pull-in not told, usually {low:.0f} to {high:.0f} VA: with the most of it {awg} AWG or thicker, read the label",
                awg=found.awg,
                **named,
            ),
        )
    if told.rated_va is None:  # the verdict names the size that holds
        return (
            say(
                "Pull-in not told, usually {low:.0f} to {high:.0f} VA: {unit:g} VA may sag to {weak:.1f} V", weak=weak, **named
            ),
        )
    return (
        say(
            "Pull-in not told, usually {low:.0f} to {high:.0f} VA: {unit:g} VA may sag to {weak:.1f} V, {bigger:g} VA holds",
            weak=weak,
            bigger=found.unit_va,
            **named,
        ),
    )


def _held(told: Told, found: Mend) -> float:
    """What the coils keep on the unit that mends it, and on the wire. [V]."""
    if found.unit_va is None:
        return 0.0
    if found.awg is None:
        return at_coils(told, found.unit_va)[0]
    thicker = Fact(fact="wire_awg", value=float(found.awg))
    return at_coils(replace(told, job=replace(told.job, facts=(*told.job.facts, thicker))), found.unit_va)[0]
