"""Acceptance tests of real small transformers, from public Army manuals."""

import pytest

from core.diagnosis import diagnose
from core.readings import Fact, Job, Reading

T1 = (Fact(fact="supply_volts", value=208.0), Fact(fact="tap_volts", value=208.0))


def told(*facts: Fact, **readings: float | str) -> Job:
    """A job of these readings and facts."""
    return Job(readings=tuple(Reading(measure=name, value=value) for name, value in readings.items()), facts=facts)


@pytest.mark.parametrize("volts", [22.9, 23.5, 24.1])
def test_volts_within_the_manual_s_limits_do_not_condemn(volts: float) -> None:
    """TM 9-4120-401-14 paragraph 4-39: 208 V at 1-2 gives 23.5 +- 0.7 V at 3-4."""
    verdict = diagnose(told(*T1, primary_volts=208.0, secondary_volts=volts)).verdict

    assert verdict is not None
    assert verdict.transformer != "bad"


def test_an_infinite_secondary_is_replaced() -> None:
    """TM 9-4120-401-14 paragraph 4-39: open in either winding, replace."""
    verdict = diagnose(told(*T1, primary_volts=208.0, secondary_volts=0.0, secondary_ohms="open")).verdict

    assert verdict is not None
    assert (verdict.finding, verdict.transformer) == ("secondary_open", "bad")


def test_an_infinite_primary_is_replaced() -> None:
    """TM 5-4120-347-14: open in either winding, replace."""
    verdict = diagnose(told(*T1, primary_volts=208.0, secondary_volts=0.0, primary_ohms="open")).verdict

    assert verdict is not None
    assert (verdict.finding, verdict.transformer) == ("primary_open", "bad")


def test_a_winding_shorted_to_the_case_is_replaced() -> None:
    """TM 9-4120-401-14 paragraph 4-39: short winding to case, replace; read twice, since a lead still on reads the same."""
    low = Reading(measure="secondary_ground_ohms", value=0.4)
    verdict = diagnose(Job(readings=(Reading(measure="secondary_volts", value=24.0), low, low), facts=T1)).verdict

    assert verdict is not None
    assert verdict.finding == "winding_grounded"


def test_a_short_between_windings_is_replaced() -> None:
    """TM 5-4120-347-14: short primary to secondary, replace; read twice."""
    low = Reading(measure="primary_secondary_ohms", value=12.0)
    verdict = diagnose(Job(readings=(low, low), facts=T1)).verdict

    assert verdict is not None
    assert verdict.finding == "windings_bridged"


def test_right_ohms_and_volts_with_high_amps_are_not_acquitted() -> None:
    """
    TM 9-6115-464-34: no-load current over 0.04 A at 230 V fails a unit whose ohms and volts pass.

    Scaled to a 40 VA unit on 240 V: three times its full-load current with nothing connected.
    """
    facts = (Fact(fact="supply_volts", value=240.0), Fact(fact="tap_volts", value=240.0), Fact(fact="rated_va", value=40.0))
    readings = {
        "primary_volts": 240.0,
        "secondary_volts_lifted": 26.5,
        "primary_ohms": 64.0,
        "secondary_amps": 0.0,
        "primary_amps": 0.5,
    }
    verdict = diagnose(told(*facts, **readings)).verdict

    assert verdict is not None
    assert verdict.finding == "primary_shorted_turns"
    assert verdict.transformer != "good"
