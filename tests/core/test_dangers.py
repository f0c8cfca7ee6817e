"""Dangers by readings, and the three answers to them."""

from dataclasses import replace

import pytest

from core.cautions import CAUTIONS, Circumstances
from core.dangers import DANGERS, Standing, from_readings, from_words, respond
from core.dangers.answer import AFTER_A_SHOCK
from core.measures import MEASURES
from core.readings import FACTS, Fact, Job, Reading

NOW = Circumstances(technician="t1", day="2026-03-02")


def job(readings: dict[str, object] | None = None, facts: dict[str, object] | None = None, **more: object) -> Job:
    """A job whose newest message brought all of it."""
    read = tuple(Reading(measure=m, value=v) for m, v in (readings or {}).items())
    told = tuple(Fact(fact=f, value=v) for f, v in (facts or {}).items())
    fresh = frozenset(r.measure for r in read) | frozenset(f.fact for f in told)
    return replace(Job(readings=read, facts=told, fresh=fresh), **more)


@pytest.mark.parametrize(
    ("shown", "danger"),
    [
        (job({"primary_volts": 240.0}, {"tap_volts": 120.0}), "tap_too_low"),
        (job({}, {"supply_volts": 480.0, "tap_volts": 240.0}), "tap_too_low"),
        (job({}, {"supply_volts": 208.0, "tap_volts": 120.0}), "tap_too_low"),
        (job({"line_volts": 0.3, "primary_volts": 118.0}), "backfeed"),
        (job({"primary_volts": 0.0, "secondary_volts": 24.0}), "backfeed"),
        (job({}, {"fuse_amps": 10.0}), "bigger_fuse"),
        (job({"primary_volts": 478.0}), "over_300"),
        (job({}, {"supply_volts": 277.0}), "over_300"),
        (job({"primary_volts": 118.0, "secondary_volts": 0.0}), "line_live_controls_dead"),
        (job({"line_volts": 240.0, "control_volts": 0.0}), "line_live_controls_dead"),
        (job({"line_volts": 62.0}), "ghost_voltage"),
        (job({"secondary_ground_ohms": 0.4}, {"supply_volts": 480.0}), "ground_meant"),
    ],
)
def test_readings_show_a_danger(shown: Job, danger: str) -> None:
    """The numbers alone."""
    assert danger in from_readings(shown)


@pytest.mark.parametrize(
    "shown",
    [
        job({"primary_volts": 118.0, "secondary_volts": 24.6}),
        job({"primary_volts": 208.0}, {"tap_volts": 208.0}),
        job({"primary_volts": 208.0}, {"tap_volts": 240.0}),
        job({}, {"supply_volts": 277.0 - 30.0, "tap_volts": 240.0}),
        job({}, {"fuse_amps": 3.0}),
        job({}, {"fuse_amps": 5.0}),
        job({}, {"fuse_amps": 20.0}),
        job({"line_volts": 0.0}),
        job({"primary_volts": 104.0}),
        job({"primary_ohms": 8.0, "secondary_ohms": 0.7}),
        job({"secondary_ground_ohms": "open"}, {"supply_volts": 480.0}, fresh=frozenset({"secondary_ground_ohms"})),
    ],
)
def test_sound_readings_show_none(shown: Job) -> None:
    """A right tap, a dead line that reads dead, a branch fuse, a low supply that is no ghost."""
    assert from_readings(shown) == ()


def test_a_low_impedance_reading_is_no_ghost() -> None:
    """A ghost collapses in that mode."""
    reading = Reading(measure="line_volts", value=62.0, low_impedance=True)

    assert from_readings(Job(readings=(reading,), fresh=frozenset({"line_volts"}))) == ()


def test_ohms_on_a_part_still_connected_are_told() -> None:
    """The meter reads its neighbours."""
    reading = Reading(measure="primary_ohms", value=8.0, not_isolated=True)

    assert from_readings(Job(readings=(reading,), fresh=frozenset({"primary_ohms"}))) == ("not_isolated",)


def test_only_what_the_newest_message_brought_counts() -> None:
    """A reading of an hour ago is not shown again."""
    shown = job({"primary_volts": 118.0, "secondary_volts": 0.0})

    assert from_readings(replace(shown, fresh=frozenset({"load_ohms"}))) == ()


def test_words_come_worst_first() -> None:
    """A shock outweighs a jumped fuse, and a name that nobody knows is dropped."""
    assert from_words(Job(dangers=("bypass_fuse", "shock", "nonsense"))) == ("shock", "bypass_fuse")


def test_two_conditions_are_said_where_the_words_show_them() -> None:
    """Alone at 480 V is both; what the readings show beside it can wait."""
    answer = respond(job({}, {"supply_volts": 480.0}, dangers=("over_300", "alone")), Standing(now=NOW))

    assert answer.names == ("over_300", "alone")


@pytest.mark.parametrize("name", [d.name for d in DANGERS.values() if d.kind == "stop"])
def test_a_stop_halts_the_diagnosis_until_all_is_well(name: str) -> None:
    """People first: nothing else is answered, also in the next message."""
    first = respond(job({"primary_volts": 118.0}, dangers=(name, "bypass_fuse")), Standing(now=NOW))
    second = respond(job({"secondary_volts": 0.0}), Standing(halted=first.names, now=NOW))
    third = respond(Job(asks=("all_well",)), Standing(halted=first.names, now=NOW))

    assert first.halt
    assert first.names == (name,)
    assert str(first.lines[0]).startswith("STOP")
    assert second.halt
    assert not third.halt
    assert third.lines == ((AFTER_A_SHOCK,) if name == "shock" else ())


def test_all_well_beside_a_new_stop_does_not_release() -> None:
    """A shock told with "but I'm fine" still stops."""
    assert respond(Job(asks=("all_well",), dangers=("shock",)), Standing(halted=("shock",))).halt


@pytest.mark.parametrize("name", [d.name for d in DANGERS.values() if d.kind == "stop"])
def test_a_stop_names_the_emergency_number(name: str) -> None:
    """Somewhere in its two lines."""
    assert "911" in str(DANGERS[name].says) + str(DANGERS[name].instead)


@pytest.mark.parametrize("danger", [d for d in DANGERS.values() if d.kind == "no"], ids=lambda d: d.name)
def test_a_refusal_says_no_and_the_safe_way(danger) -> None:
    """The word first, then the way to the same end; it is said every time."""
    given = dict.fromkeys((danger.name, *danger.cautions), NOW)
    answer = respond(Job(dangers=(danger.name,)), Standing(given=given, now=NOW))

    assert str(danger.says).startswith("No.")
    assert danger.instead is not None
    assert answer.lines[:2] == (danger.says, danger.instead)
    assert not answer.halt


def test_a_condition_is_said_once() -> None:
    """Not again until the circumstances change; one at a time."""
    shown = job({"primary_volts": 118.0, "secondary_volts": 0.0})
    first = respond(shown, Standing(now=NOW))
    given = dict.fromkeys((*first.names, *first.cautions), NOW)
    again = respond(job({"primary_volts": 118.0, "secondary_volts": 0.0}), Standing(given=given, now=NOW))
    other = respond(
        job({"primary_volts": 118.0, "secondary_volts": 0.0}), Standing(given=given, now=replace(NOW, technician="t2"))
    )

    assert first.names == ("line_live_controls_dead",)
    assert len(first.lines) == 1
    assert again.lines == ()
    assert other.names == ("line_live_controls_dead",)


def test_a_condition_without_a_caution_of_its_own_is_said_once_a_day() -> None:
    """Alone, tired, at the edge."""
    given = {"alone": NOW}

    assert respond(Job(dangers=("alone",)), Standing(given=given, now=NOW)).lines == ()
    assert respond(Job(dangers=("alone",)), Standing(given=given, now=replace(NOW, day="2026-03-03"))).names == ("alone",)


def test_refusals_come_before_conditions_and_at_most_two() -> None:
    """A wall of them is read by nobody."""
    answer = respond(Job(dangers=("alone", "bypass_fuse", "wet", "bare_ends")), Standing(now=NOW))

    assert answer.names == ("wet", "bypass_fuse", "bare_ends")
    assert len(answer.lines) == 4


def test_a_wrong_tap_is_told_with_its_volts() -> None:
    """240 V on the 120 V tap of a 24 V transformer: 48 V (exact by the ratio)."""
    answer = respond(job({"primary_volts": 240.0}, {"tap_volts": 120.0}), Standing(now=NOW))

    assert answer.lines[0].named["out"] == pytest.approx(48.0)
    assert "double_volts" in answer.cautions


def test_a_fuse_is_told_with_its_amps() -> None:
    """The number that was sent."""
    assert "10 A" in str(respond(job({}, {"fuse_amps": 10.0}), Standing(now=NOW)).lines[0])


def test_a_second_feed_is_told_apart_from_a_test_meant() -> None:
    """From readings it is there already; from words it is about to be done."""
    by_reading = respond(job({"line_volts": 0.3, "primary_volts": 118.0}), Standing(now=NOW))
    by_words = respond(Job(dangers=("backfeed",)), Standing(now=NOW))

    assert "live from somewhere else" in str(by_reading.lines[0])
    assert by_words.lines[0] == DANGERS["backfeed"].says


@pytest.mark.parametrize("danger", DANGERS.values(), ids=lambda d: d.name)
def test_a_danger_names_its_source_and_known_cautions(danger) -> None:
    """Nothing published stands without one; short lines."""
    assert str(danger.source)
    assert set(danger.cautions) <= CAUTIONS.keys()
    assert all(len(str(said)) <= 120 for said in (danger.says, danger.instead) if said is not None)


def test_signs_name_measures_and_facts_that_exist() -> None:
    """A spelling mistake would be a danger never shown."""
    from core.dangers.recognise import _SIGNS

    assert _SIGNS.keys() <= DANGERS.keys()
    assert {name for names, _ in _SIGNS.values() for name in names} <= MEASURES.keys() | FACTS.keys()
