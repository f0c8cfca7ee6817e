"""A caution goes with its step, once, and again only when the circumstances change."""

from dataclasses import replace

import pytest

from core.advice import NextTest
from core.cautions import (
    CAUTIONS,
    Circumstances,
    after_a_stop,
    due,
    for_test,
    is_over_300,
    line,
    may_ask,
    spoken,
    times_live,
)
from core.measures import MEASURES
from core.readings import Fact, Job, Reading
from core.said import say

NOW = Circumstances(technician="t1", day="2026-03-02")


def step(measure: str) -> NextTest:
    """A next test of a measure."""
    return NextTest(measure=measure, instruction=say("Read it"))


def supplied(volts: float, **more: object) -> Job:
    """A job on a supply."""
    return replace(Job(facts=(Fact(fact="supply_volts", value=volts),)), **more)


@pytest.mark.parametrize("measure", [m.name for m in MEASURES.values() if not m.live])
def test_every_dead_test_is_told_to_be_proved_dead(measure: str) -> None:
    """29 CFR 1910.333(b)(2)(iv)."""
    assert for_test(step(measure), Job())[0] == "prove_dead"


@pytest.mark.parametrize("measure", ["secondary_volts", "secondary_volts_lifted", "control_volts", "coil_volts", "fuse_volts"])
def test_a_live_reading_at_24_volts_carries_no_caution(measure: str) -> None:
    """Parts under 50 V need not be de-energised: 29 CFR 1910.333(a)(1)."""
    assert for_test(step(measure), supplied(240.0)) == ()


@pytest.mark.parametrize("measure", ["line_volts", "primary_volts", "primary_amps"])
def test_a_live_reading_on_the_line_side_asks_for_the_meter_category(measure: str) -> None:
    """Line side is fixed equipment: CAT III."""
    assert for_test(step(measure), supplied(240.0)) == ("meter_category",)
    assert for_test(step(measure), supplied(480.0)) == ("over_300", "meter_category")


def test_a_capacitor_is_spoken_of_where_the_line_compartment_has_one() -> None:
    """A 240 V unit has a run capacitor beside the transformer, a 120 V one is not presumed to."""
    assert "discharge_capacitor" in for_test(step("primary_ohms"), supplied(240.0))
    assert "discharge_capacitor" not in for_test(step("primary_ohms"), supplied(120.0))
    assert "discharge_capacitor" not in for_test(step("load_ohms"), supplied(240.0))


def test_a_loose_transformer_needs_no_lockout() -> None:
    """Leads ohmed on the tailgate: nothing is connected."""
    job = Job(readings=(Reading(measure="lead_ohms", value=8.0, leads=("white", "black")),))

    assert for_test(step("lead_ohms"), job) == ()


def test_a_question_carries_no_caution() -> None:
    """Where a fact is asked for no hand goes in."""
    assert for_test(replace(step("line_volts"), fact="supply_volts"), supplied(480.0)) == ()
    assert for_test(None, supplied(480.0)) == ()


@pytest.mark.parametrize(
    ("supply_v", "over"), [(120.0, False), (208.0, False), (240.0, False), (254.0, False), (277.0, True), (480.0, True)]
)
def test_277_volts_counts_as_its_system(supply_v: float, *, over: bool) -> None:
    """It is one leg of 480 V, and is judged phase to phase as NFPA 70E does."""
    assert is_over_300(supplied(supply_v)) is over


def test_nobody_unqualified_is_asked_for_live_work_over_300_volts() -> None:
    """Unless the technician said to be qualified, the line side is not asked for; 24 V and dead tests are."""
    job = supplied(480.0)

    assert not may_ask("primary_volts", job)
    assert not may_ask("primary_volts", replace(job, qualified=False))
    assert not may_ask("secondary_volts", replace(job, qualified=False))
    assert may_ask("primary_ohms", replace(job, qualified=False))
    assert may_ask("primary_volts", replace(job, qualified=True))
    assert may_ask("secondary_volts", job)
    assert may_ask("primary_ohms", job)
    assert may_ask("primary_volts", supplied(240.0))


def test_after_a_shock_nothing_live_is_asked_before_the_primary_is_read_to_the_core() -> None:
    """The cabinet may be live: its cause is looked for dead."""
    shocked = Job(facts=(Fact(fact="symptom", value="shock"),))

    assert not may_ask("secondary_volts", shocked)
    assert may_ask("primary_ground_ohms", shocked)
    assert may_ask("secondary_volts", replace(shocked, readings=(Reading(measure="primary_ground_ohms", value="open"),)))


@pytest.mark.parametrize("measure", MEASURES.values(), ids=lambda m: m.name)
def test_each_test_says_whether_it_is_live_and_how_it_is_made_dead(measure) -> None:
    """In its first words, before the hands go anywhere; a reading with a lead lifted is made ready dead."""
    told = str(measure.how)

    assert told.startswith(("Live", "Power off"))
    assert ("Live" in told or "power on" in told) is measure.live
    assert told.startswith("Power off") or measure.live


def test_what_was_said_is_not_said_again() -> None:
    """The same person, day and state of the circuit."""
    assert due(("prove_dead",), {}, NOW) == ("prove_dead",)
    assert due(("prove_dead",), {"prove_dead": NOW}, NOW) == ()


@pytest.mark.parametrize(
    "change", [{"technician": "t2"}, {"day": "2026-03-03"}, {"times_live": 1}, {"over_300": True}, {"live": True}]
)
def test_it_is_said_again_when_the_circumstances_change(change: dict[str, object]) -> None:
    """Another person, another day, live in between, another class of supply."""
    assert due(("prove_dead",), {"prove_dead": NOW}, replace(NOW, **change)) == ("prove_dead",)


def test_what_belongs_to_a_job_is_said_once_in_it() -> None:
    """A cap on unused leads does not depend on the circuit being live."""
    given = {"cap_unused_leads": NOW}

    assert due(("cap_unused_leads",), given, replace(NOW, times_live=3, day="2026-03-03")) == ()
    assert due(("cap_unused_leads",), given, replace(NOW, technician="t2")) == ("cap_unused_leads",)


def test_what_burns_now_is_said_every_time() -> None:
    """The volts are on the controls until the power is off."""
    assert due(("double_volts",), {"double_volts": NOW}, NOW) == ("double_volts",)


def test_after_a_stop_the_circuit_is_proved_dead_anew() -> None:
    """Whoever was in there, nobody knows what is live now."""
    given = {"prove_dead": NOW, "local_code": NOW}

    assert after_a_stop(given) == {"local_code": NOW}


def test_names_unknown_or_twice_are_dropped() -> None:
    """The conversation may hand over what it has."""
    assert due(("prove_dead", "nonsense", "prove_dead"), {}, NOW) == ("prove_dead",)


def test_a_step_has_one_line_of_caution() -> None:
    """Two that belong together are said in one."""
    both = ("prove_dead", "discharge_capacitor")

    assert line(()) is None
    assert line(both) not in (None, CAUTIONS["prove_dead"].says)
    assert spoken(both) == both
    assert line(("prove_dead", "local_code")) == CAUTIONS["prove_dead"].says
    assert spoken(("prove_dead", "local_code")) == ("prove_dead",)


def test_going_live_again_is_counted() -> None:
    """Live, dead, live is twice."""
    order = ("primary_volts", "secondary_volts", "primary_ohms", "load_ohms", "control_volts")

    assert times_live(Reading(measure=m, value=1.0) for m in order) == 2
    assert times_live(()) == 0


@pytest.mark.parametrize("caution", CAUTIONS.values(), ids=lambda c: c.name)
def test_a_caution_is_one_short_line_with_its_source(caution) -> None:
    """It is read at arm's length: at most 110 characters, and no second paragraph."""
    assert len(str(caution.says)) <= 110
    assert "\n" not in str(caution.says)
    assert str(caution.source)
