"""Values without a place in the middle of a job: "new one in, 26.8", "with everything on 24.8", "reset it, 239", "still 0"."""

from core.readings import Reading
from grammar.binding.draft import Draft, Figure
from grammar.words.follow_ups import NOW

LOW = (16.0, 32.0)
"""What the 24 V side reads. [V]"""
LINE = (90.0, 600.0)
"""What the line side reads. [V]"""
LOW_SIDE = ("secondary_volts", "secondary_volts_lifted", "control_volts", "coil_volts")
LINE_SIDE = ("line_volts", "primary_volts")
AT_REPAIR = {"transformer": "secondary_volts", "tap": "secondary_volts", "supply": "line_volts", "fuse": "control_volts", "short": "control_volts", "wiring": "control_volts"}  # fmt: skip
"""Where the volts are read that come with a repair."""
MOST = 2
PLAN = frozenset({"ill", "gonna", "will", "should", "would", "could", "if", "need", "pull", "run", "use", "voy", "debo", "necesito", "ocupo", "si", "minutes", "min", "bucks", "dollars"})  # fmt: skip
"""Words beside which a number is of a plan, and none of a meter."""


def bare_values(draft: Draft) -> None:
    """Gives each the place that the job has for it; a number in a question is none."""
    for figure in draft.figures:  # "pri 119 stays 119"
        figure.done = figure.done or (_is_bare(figure) and any(r.value == figure.value for r in draft.readings))
    free = [f for f in draft.figures if _is_bare(f)]
    if set(draft.words) & PLAN:
        return
    if not 0 < len(free) <= MOST or "?" in draft.text or set(draft.asks) - {"close_job"} or draft.unclear:
        return
    if len(free) == MOST:
        _both_sides(draft, free)
        return
    figure = free[0]
    reading = _still(draft, figure) or (_zero(draft, figure) if figure.value == 0 else _placed(draft, figure))
    if reading is not None and reading.measure not in {r.measure for r in draft.readings}:
        figure.done = True
        draft.readings.append(reading)


def _still(draft: Draft, figure: Figure) -> Reading | None:
    """In "pulled all the leads, still 11": the ohms that were asked for once more."""
    asked = draft.context.asked
    if (
        asked is None
        or not asked[0].endswith("ohms")
        or figure.unit is not None
        or not set(draft.words) & STILL
        or draft.mended
    ):
        return None
    last = next((r.value for r in reversed(draft.context.readings) if r.measure == asked[0]), None)
    near = isinstance(last, float) and 0.3 * last <= figure.value <= 3.0 * last
    return Reading(measure=asked[0], value=figure.value, leads=asked[1]) if near else None


STILL = frozenset({"still", "sigue", "todavia", "again"})


def _is_bare(figure: Figure) -> bool:
    one = figure.kind == "amount" and len(figure.amounts) == 1 and figure.unit in {None, "V"}
    return one and not figure.done and not figure.withdrawn and figure.site is None and figure.heir_of is None


def _both_sides(draft: Draft, free: list[Figure]) -> None:
    """In "238 and 27": the primary and the secondary, where volts are what is read."""
    line = [f for f in free if LINE[0] <= f.value <= LINE[1]]
    low = [f for f in free if LOW[0] <= f.value <= LOW[1]]
    if len(line) == len(low) == 1 and not draft.readings and any(r.measure in LINE_SIDE for r in draft.context.readings):
        for figure, measure in ((line[0], "primary_volts"), (low[0], "secondary_volts")):
            figure.done = True
            draft.readings.append(Reading(measure=measure, value=figure.value, assumed=True))
        return
    for figure in free:  # "put the new one in 27 and with all on 24.2"
        if figure.state is not None and (reading := _placed(draft, figure)) is not None:
            figure.done = True
            draft.readings.append(reading)


def _placed(draft: Draft, figure: Figure) -> Reading | None:
    """The reading that the value is."""
    side = LOW_SIDE if LOW[0] <= figure.value <= LOW[1] else LINE_SIDE if LINE[0] <= figure.value <= LINE[1] else ()
    if not side:
        return None
    asked = draft.context.asked[0] if draft.context.asked else ""
    if figure.state in {"lifted", "loaded"} and side == LOW_SIDE:
        return _by_state(figure, asked, set(draft.words))
    told = set(draft.words)
    if asked in side and draft.context.asked_fact is None and not draft.mended:
        return Reading(measure=asked, value=figure.value)
    if draft.mended:
        dead = None if "transformer" in draft.mended else _dead_before(draft, side)
        place = dead or AT_REPAIR.get(draft.mended[0], "")
        place = place if place in side else side[0]
        return Reading(measure=place, value=figure.value, assumed=True)
    asks_volts = asked.endswith(("volts", "lifted"))
    if asked and not asks_volts and not told & NOW and not draft.context.repaired and figure.unit is None:
        return None  # a bare number answers what was asked
    last = next((r.measure for r in reversed(draft.context.readings) if r.measure in side), None)
    if last is None:
        last = side[0] if draft.context.repaired or told & NOW else None
    if last is None or not (told & NOW or draft.context.repaired or _is_alone(draft)):
        return None
    return Reading(measure=last, value=figure.value, assumed=True)


DEAD_TO_V = 5.0


def _dead_before(draft: Draft, side: tuple[str, ...]) -> str | None:
    """The place that was read dead last: what comes back is read there."""
    dead = (
        r.measure
        for r in reversed(draft.context.readings)
        if r.measure in side and r.value != "open" and float(r.value) <= DEAD_TO_V
    )
    return next(dead, None)


def _by_state(figure: Figure, asked: str, told: set[str]) -> Reading:
    """How it was read tells where, unless another place of the 24 V side was asked for."""
    if figure.state == "lifted":
        return Reading(measure="secondary_volts_lifted", value=figure.value)
    elsewhere = asked in {"control_volts", "coil_volts"} and not told & NOW
    measure = asked if elsewhere else "secondary_volts"
    return Reading(measure=measure, value=figure.value, loaded=not elsewhere, assumed=elsewhere)


FEW = 3


def _is_alone(draft: Draft) -> bool:
    """A number with next to nothing beside it."""
    return len(draft.phrases) <= FEW


def _zero(draft: Draft, figure: Figure) -> Reading | None:
    """In "still 0": the place that read 0 before, where no volts were asked for."""
    asked = draft.context.asked[0] if draft.context.asked else ""
    if figure.state == "lifted" and any(r.measure == "secondary_volts" for r in draft.context.readings):
        return Reading(measure="secondary_volts_lifted", value=0.0)
    if not set(draft.words) & NOW or asked.endswith(("volts", "lifted", "ohms")):
        return None
    last = next((r for r in reversed(draft.context.readings) if r.value == 0.0), None)
    return None if last is None else Reading(measure=last.measure, value=0.0)
