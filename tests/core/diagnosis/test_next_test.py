"""The next test by its worth."""

import numpy as np
import pytest

from core.diagnosis.belief import believed, known
from core.diagnosis.meter import SEEN, M
from core.diagnosis.next_test import Worth, loss, ranked
from core.diagnosis.steps import STEPS, price
from core.diagnosis.worlds import NAMES
from core.readings import Fact, Job, Reading


def steps_of(job: Job) -> list[Worth]:
    """What can be asked, the most worth first."""
    k = known(job)
    return ranked(k, believed(k))


def test_certainty_leaves_nothing_at_stake() -> None:
    """And doubt does."""
    sure = np.eye(len(NAMES))
    even = np.full((1, len(NAMES)), 1.0 / len(NAMES))

    assert loss(sure, np.zeros(len(NAMES))) == pytest.approx(0.0, abs=1e-6)
    assert loss(even, np.array([0.5]))[0] > 0.5


def test_a_short_that_may_stand_behind_an_open_winding_is_at_stake() -> None:
    """Until it was looked for."""
    opened = np.eye(len(NAMES))[[NAMES.index("primary_open")]]

    assert loss(opened, np.array([0.4]))[0] > loss(opened, np.array([0.01]))[0] + 0.1


def test_dead_is_asked_before_live_where_both_tell_as_much() -> None:
    """Rated volts in and nothing out: the ohms of a winding, power off, settle it."""
    job = Job(readings=(Reading(measure="primary_volts", value=118.0), Reading(measure="secondary_volts", value=0.0)))
    steps = steps_of(job)

    assert steps[0].measure in {"primary_ohms", "secondary_ohms"}


def test_a_repeated_reading_is_not_asked_a_third_time() -> None:
    """Twice is enough."""
    twice = Reading(measure="primary_ground_ohms", value=0.4)
    job = Job(readings=(twice, twice))

    assert "primary_ground_ohms" not in {step.measure for step in steps_of(job)}


def test_a_second_reading_in_a_later_message_counts_as_one() -> None:
    """The conversation keeps one reading of a place, with what was read there before."""
    job = Job(readings=(Reading(measure="primary_ground_ohms", value=0.4, before=0.4),))

    assert "primary_ground_ohms" not in {step.measure for step in steps_of(job)}


def test_every_test_makes_the_next_one_dearer() -> None:
    """A customer waits; and the same reading again is dearer than a new one."""
    early, late = price(np.array([-1, -1]), np.array([0, 6]))
    measures = [i for i, step in enumerate(STEPS) if step.measure is not None]

    assert (late[measures] > early[measures]).all()
    assert early[len(SEEN)] > early[0]


def test_tests_of_one_setup_are_cheaper_together() -> None:
    """With the leads off already the next ohms cost little; going back to live costs more than staying."""
    after_ohms, after_volts = price(np.array([M["primary_ohms"], M["primary_volts"]]), np.array([2, 2]))

    assert after_ohms[M["secondary_ohms"]] < after_volts[M["secondary_ohms"]]
    assert after_volts[M["line_volts"]] < after_ohms[M["line_volts"]]


def test_a_told_fact_is_not_asked_for() -> None:
    """Supply and tap are asked once, or told."""
    facts = (Fact(fact="supply_volts", value=240.0), Fact(fact="tap_volts", value=240.0))
    job = Job(readings=(Reading(measure="secondary_volts", value=21.0),), facts=facts)

    assert not {"supply_volts", "tap_volts"} & {step.fact for step in steps_of(job)}
