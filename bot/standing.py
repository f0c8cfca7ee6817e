"""What of a job's readings and facts stands once a message came: replaced, taken back, made history by a repair."""

from collections.abc import Iterable, Mapping
from dataclasses import replace
from functools import reduce
from typing import Final

from core.measures import MEASURES
from core.readings import OPEN, WHOLE, Fact, Reading
from core.repairs import made_history
from grammar.message import Message

OF_A_WINDING: Final = frozenset({"primary_ohms", "secondary_ohms"})
"""Ohms of which there may be several, between leads that are named: H1 to H2 and H3 to H4."""


def standing_readings(kept: tuple[tuple[str, Message], ...]) -> tuple[Reading, ...]:
    """The latest reading of each measure and pair of leads that was not taken back, in the order in which those were taken."""
    return reduce(readings_after, (message for _, message in kept), ())


def readings_after(standing: tuple[Reading, ...], message: Message) -> tuple[Reading, ...]:
    """The readings that stand once a message came after those that stood. What a repair made history stands no more."""
    gone = made_history(message.renewed)
    latest = {_place(reading): reading for reading in standing if reading.measure not in gone}
    for key in [key for key, reading in latest.items() if _is_taken_back(reading, message, latest)]:
        del latest[key]
    for reading in message.readings:
        for key in [key for key, old in latest.items() if _was_misread(old, reading)]:
            del latest[key]
        key = _place(reading)
        if reading.measure in OF_A_WINDING and reading.leads is None:  # the whole of it, whatever its leads are called
            for old in [old for old in latest if old[0] == reading.measure and old != key]:
                del latest[old]
        earlier = latest.pop(key, None)
        if earlier is not None and "correct" not in message.asks:
            latest[key] = replace(reading, before=earlier.value, repeated=reading.agrees(earlier))
        else:
            latest[key] = reading
    return tuple(latest.values())


SAME_NUMBER: Final = 0.05
"""Within this share two numbers are the same one, read again."""


def _was_misread(old: Reading, new: Reading) -> bool:
    """In "secondary 9" taken for ohms, and then "sec lifted 9.1": what was guessed is said now."""
    same_place = (
        old.measure.split("_")[0] == new.measure.split("_")[0] and MEASURES[old.measure].unit != MEASURES[new.measure].unit
    )
    if not (old.assumed and not new.assumed and same_place) or OPEN in {old.value, new.value}:
        return False
    return abs(float(old.value) - float(new.value)) <= SAME_NUMBER * float(new.value)


def _place(reading: Reading) -> tuple[str, frozenset[str]]:
    is_pair = MEASURES[reading.measure].pair or reading.measure in OF_A_WINDING
    return reading.measure, frozenset(reading.leads) if reading.leads and is_pair else frozenset[str]()


def _is_taken_back(old: Reading, message: Message, latest: Mapping[tuple[str, frozenset[str]], Reading]) -> bool:
    """
    True where a message withdraws an earlier reading.

    A correction may change the place and keep the value: "that 26.3 V is with R off".
    """
    if old.measure in message.withdrawn:
        return True
    if "correct" not in message.asks:
        return False
    return any(
        new.value == old.value
        and _place(new) != _place(old)
        and _place(new) not in latest
        and MEASURES[new.measure].unit == MEASURES[old.measure].unit
        for new in message.readings
    )


def facts_after(standing: tuple[Fact, ...], message: Message) -> tuple[Fact, ...]:
    """
    The latest of each fact, of loads, symptoms and leads that of each device, symptom and lead, once a message came in.

    What was wrong before a repair is no sign of what is wrong after it.
    """
    gone = {fact.fact for fact in message.facts} & {"run_feet", "wire_awg"}  # several runs are told in one message
    devices = {fact.device for fact in message.facts if fact.fact == "load"}
    gone |= {"load"} if devices == {WHOLE} else set()  # the sum of all loads takes the place of its parts
    gone |= {*message.withdrawn, *(("symptom",) if message.renewed or message.repaired else ())}
    if "tap" in message.renewed:  # another lead is in use now, whether its volts are told or its colour
        gone |= {"tap_volts", "tap_lead"}
    off = message.withdrawn_loads
    left = (fact for fact in standing if fact.fact not in gone and not (fact.fact == "load" and fact.device in off))
    return tuple({**_counted(left), **_counted(message.facts)}.values())


def _counted(facts: Iterable[Fact]) -> dict[tuple[str, object, int], Fact]:
    """Two loads of one device in one message are two loads; in a later message they replace the earlier ones, each its own."""
    counted: dict[tuple[str, object, int], Fact] = {}
    times: dict[tuple[str, object], int] = {}
    for fact in facts:
        which = (fact.fact, _which(fact))
        times[which] = times.get(which, 0) + 1
        counted[*which, times[which]] = fact
    return counted


def _which(fact: Fact) -> object:
    return fact.value if fact.fact == "symptom" else fact.device or fact.lead
