"""Another kind of unit in the place of the one that is there: bigger, multi-tap, for another frequency."""

from dataclasses import replace
from typing import Final

from core.said import Said, say
from core.sizing.protection import line_fuse
from core.sizing.told import Part, Told
from core.standards.class_2 import CLASS_2_POWER, MOST_VA
from core.standards.fuse_sizes import fuse_type_v
from core.standards.transformer_ratings import BY_LABEL, FREQUENCY, MULTI_TAP_V, ON_TAP, SPARE, STANDARD_SIZES, volts_at_hertz

FIFTY: Final = 50.0
SIXTY: Final = 60.0
DIED: Final = frozenset({"burnt", "smoke", "blows_fuse", "blown_fuse", "trips_breaker"})
"""Symptoms of a unit that something has killed."""


def swap_part(told: Told) -> Part | None:
    """
    The answer to a change of kind.

    Args:
        told: The job.
    """
    topics = told.job.topics
    if "bigger_unit" in topics and told.job.meant_va is not None:
        part = _another_size(told, told.job.meant_va)
        return (
            _landed(told, part) if "multi_tap" in topics and part.numbers.get("class2") and part.cautions != REFUSED else part
        )
    if "multi_tap" in topics:
        return _multi_tap(told)
    if "both_hertz" in topics:
        return Part(lines=(say("Yes: marked 50/60 Hz it runs on either, at its marked volts"),), rules=(BY_LABEL,))
    if told.job.number("supply_hertz") is not None and "supply_hertz" in told.job.fresh:
        return Part(lines=_hertz(told), rules=(FREQUENCY,))
    return None


def _another_size(told: Told, meant: float) -> Part:
    """More, or less, VA in the same box."""
    if meant > MOST_VA:
        return Part(
            lines=(
                say(
                    "No: {meant:g} VA is over the {most:g} VA of Class 2. Its wiring and fusing follow other rules",
                    meant=meant,
                    most=MOST_VA,
                ),
                say("Split the load on two Class 2 units, or leave it to a licensed hand"),
            ),
            numbers={"class2": False},
            rules=(CLASS_2_POWER,),
            cautions=("licensed_hand",),
        )
    numbers: dict[str, float | bool | None] = {"class2": True}
    if (refused := _too_small(told, meant)) is not None:
        return Part(lines=(refused,), numbers=numbers, rules=(STANDARD_SIZES,), cautions=REFUSED)
    supply = told.supply_v
    fuse = None if supply is None or "line_fuse" in told.job.topics else line_fuse(meant, supply).size_a
    return Part(
        lines=(
            say("Yes, {meant:g} VA, if the volts in and out match, it is marked Class 2 and it fits", meant=meant),
            say("The 24 V fuse stays as it is: it follows the load and the wire, not the new rating"),
            *(
                ()
                if fuse is None or supply is None
                else (say("Line fuse: {size:g} A time-delay at most, {volts:g} V type", size=fuse, volts=fuse_type_v(supply)),)
            ),
        ),
        numbers=numbers | ({"primary_fuse_amps": fuse} if fuse is not None else {}),
        rules=(CLASS_2_POWER,),
        cautions=("find_the_short_first",) if DIED & told.job.symptoms() else (),
    )


REFUSED: Final = ("local_code",)


def _too_small(told: Told, meant: float) -> Said | None:
    """A unit that the load asks more of, or a smaller one whose load is not known."""
    load, most = told.load_va, meant / (1.0 + SPARE)
    if load is not None and load > most:
        return say("No: {load:g} VA steady asks for more, {meant:g} VA carries {most:g} VA", load=load, meant=meant, most=most)
    if load is None and told.rated_va is not None and meant < told.rated_va:
        return say(
            "Not smaller without the load: {meant:g} VA carries {most:g} VA steady. Send the devices", meant=meant, most=most
        )
    return None


def _multi_tap(told: Told) -> Part:
    """A multi-tap unit for one of two taps, or of one."""
    land = _land(told)
    if land is None:
        supply = told.job.number("supply_volts")
        return Part(
            lines=(
                say("No: none of its taps is for {supply:g} V", supply=supply),
                say("Get one with a {supply:g} V tap", supply=supply),
            ),
            rules=(BY_LABEL,),
        )
    return Part(
        lines=(
            say("Yes: same VA or more, same secondary volts, Class 2 mark"),
            *land,
            say("Prove it: volts with one secondary lead off, then with everything called"),
        ),
        rules=(BY_LABEL,),
        cautions=("cap_unused_leads",),
    )


def _land(told: Told) -> tuple[Said, ...] | None:
    """Which lead of a multi-tap to land, and what the others are; None where it has none for this supply."""
    supply, taps = told.job.number("supply_volts"), _taps(told)
    left = say("The leads left over are live, up to {most:g} V", most=max(taps))
    if supply is None:
        return say("Read the line first, then land common and the lead of that supply"), left
    if not any(abs(supply / tap - 1.0) <= ON_TAP for tap in taps):
        return None
    return say("Land common and the {supply:g} V lead", supply=supply), left


def _landed(told: Told, part: Part) -> Part:
    """A bigger unit that is a multi-tap besides."""
    land = _land(told)
    if land is None:
        return _multi_tap(told)
    return replace(part, lines=(*part.lines[:1], *land, *part.lines[1:]), cautions=(*part.cautions, "cap_unused_leads"))


def _taps(told: Told) -> tuple[float, ...]:
    """The taps of the unit that is offered, else those of the usual multi-tap."""
    named = [f.value for f in told.job.every("nameplate_taps") if isinstance(f.value, tuple)]
    return max(named, key=len) if named and max(map(len, named)) > len(MULTI_TAP_V) - 1 else MULTI_TAP_V


def _hertz(told: Told) -> tuple[Said, ...]:
    hertz, topics = told.job.number("supply_hertz") or SIXTY, told.job.topics
    on_fifty = "unit_60_hertz" in topics or ("unit_50_hertz" not in topics and hertz < (FIFTY + SIXTY) / 2.0)
    volts = volts_at_hertz(120.0, SIXTY, FIFTY)
    if on_fifty:
        return (
            say("No: a 60 Hz unit on 50 Hz saturates, hums and burns. It is good for {volts:.0f} V of its 120", volts=volts),
            say("Take one marked 50 Hz or 50/60"),
        )
    return (
        say("A 50 Hz unit on 60 Hz runs cool at its own volts: fit it only if the label says 60 or 50/60"),
        say("Coils marked 50 Hz pull weaker on 60 Hz: match them too"),
    )
