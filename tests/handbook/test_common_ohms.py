"""What the trade knows of sound and of dead control transformers: common practice, no source."""

import pytest

from core.diagnosis import diagnose
from core.readings import Fact, Job, Reading


def job(facts: dict[str, float] | None = None, **readings: float | str) -> Job:
    """A job of these readings and facts."""
    return Job(
        readings=tuple(Reading(measure=name, value=value) for name, value in readings.items()),
        facts=tuple(Fact(fact=name, value=value) for name, value in (facts or {}).items()),
    )


SOUND = (
    ({"tap_volts": 120.0}, {"primary_ohms": 19.0, "secondary_ohms": 1.1}),
    ({"tap_volts": 120.0}, {"primary_ohms": 20.0, "secondary_ohms": 1.3}),
    ({"tap_volts": 120.0}, {"primary_ohms": 20.0, "secondary_ohms": 1.2}),
    ({"tap_volts": 208.0}, {"primary_ohms": 53.0, "secondary_ohms": 1.2}),
    ({"tap_volts": 240.0}, {"primary_ohms": 66.5, "secondary_ohms": 1.2}),
)


@pytest.mark.parametrize(("facts", "readings"), SOUND)
def test_a_sound_unit_is_not_called_bad(facts: dict[str, float], readings: dict[str, float]) -> None:
    """About 19 to 20 ohm on a 120 V primary, 53 on 208 V, 66.5 on 240 V, a little over 1 ohm on the secondary."""
    verdict = diagnose(job(facts, **readings)).verdict

    assert verdict is not None
    assert verdict.transformer != "bad"


@pytest.mark.parametrize("volts", [26.0, 27.0, 28.0, 29.0])
def test_open_circuit_volts_of_a_sound_unit_are_not_high(volts: float) -> None:
    """A 24 V unit reads 26 to 29 V with nothing connected."""
    verdict = diagnose(
        job({"supply_volts": 120.0, "tap_volts": 120.0}, primary_volts=120.0, secondary_volts_lifted=volts)
    ).verdict

    assert verdict is not None
    assert verdict.transformer != "bad"
    assert verdict.finding not in {"wrong_tap", "low_supply"}


@pytest.mark.parametrize("supply", [118.0, 207.0, 240.0])
def test_rated_volts_in_and_nothing_out_is_a_dead_transformer(supply: float) -> None:
    """Measured right at the transformer, with nothing on the secondary that could pull it down."""
    verdict = diagnose(job(None, primary_volts=supply, secondary_volts=0.0, secondary_volts_lifted=0.0)).verdict

    assert verdict is not None
    assert verdict.transformer == "bad"
    assert verdict.finding in {"primary_open", "secondary_open"}
