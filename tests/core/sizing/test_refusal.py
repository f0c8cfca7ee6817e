"""No number from nonsense."""

from dataclasses import fields

import pytest

from core.advice import Sizing
from core.readings import Fact, Reading
from tests.core.sizing.jobs import answered, fact, load

NONSENSE = [
    pytest.param((load("contactor", 0.0),), "1 to 1,000 VA", id="zero VA"),
    pytest.param((load("contactor", -9.0),), "1 to 1,000 VA", id="negative VA"),
    pytest.param((load("contactor", 5000.0),), "1 to 1,000 VA", id="5,000 VA"),
    pytest.param((load("gas valve", 50.0, unit="A"),), "1 to 1,000 VA", id="50 A at 24 V"),
    pytest.param((load("contactor", float("nan")),), "1 to 1,000 VA", id="no number"),
    pytest.param((load("contactor", 9.0, count=0),), "1 to 100", id="none of them"),
    pytest.param((load("contactor", 9.0, count=-2),), "1 to 100", id="minus two of them"),
    pytest.param((load("contactor", 50.0, inrush=9.0),), "Swapped", id="inrush under sealed"),
    pytest.param((load("flux box", 99999.0),), "1 to 1,000 VA", id="unknown device with nonsense"),
    pytest.param((load("contactor", 9.0), fact("run_feet", 9999), fact("wire_awg", 18)), "1 to 5,000 ft", id="9,999 ft"),
    pytest.param((load("contactor", 9.0), fact("run_feet", 0), fact("wire_awg", 18)), "1 to 5,000 ft", id="0 ft"),
    pytest.param((load("contactor", 9.0), fact("run_feet", -50), fact("wire_awg", 18)), "1 to 5,000 ft", id="-50 ft"),
    pytest.param((load("contactor", 9.0), fact("run_feet", 50), fact("wire_awg", 40)), "10 to 26 AWG", id="40 AWG"),
    pytest.param((load("contactor", 9.0), fact("run_feet", 50), fact("wire_awg", 2)), "10 to 26 AWG", id="2 AWG"),
    pytest.param((fact("rated_va", 5000),), "1 to 1,000", id="5,000 VA unit"),
    pytest.param(
        (fact("rated_va", 40), fact("rated_secondary_volts", 24), fact("fuse_amps", 20)), "Class 2", id="20 A on 24 V"
    ),
    pytest.param((fact("fuse_amps", -3),), "up to 5 A", id="-3 A"),
    pytest.param((load("relay", 3.0), fact("supply_volts", 7200)), "120, 208", id="7,200 V"),
    pytest.param((load("relay", 3.0), fact("copper_celsius", 900)), "150", id="900 degC"),
]


@pytest.mark.parametrize(("told", "limit"), NONSENSE)
def test_nonsense_gets_words_and_no_number(told: tuple[Fact, ...], limit: str) -> None:
    """Every number is null, and the reason names the limit."""
    answer = answered(*told, asks=("size", "fuse", "wire_run"))

    assert answer.sizing is not None
    assert limit in str(answer.sizing.refused)
    assert answer.lines == (answer.sizing.refused,)
    assert [
        f.name for f in fields(Sizing) if f.name not in {"refused", "rules"} and getattr(answer.sizing, f.name) is not None
    ] == []


@pytest.mark.parametrize(("feet", "awg", "va"), [(1, 10, 1), (5000, 10, 1), (1, 26, 1000)])
def test_the_limits_themselves_are_answered(feet: float, awg: float, va: float) -> None:
    """1 to 5,000 ft, 10 to 26 AWG, 1 to 1,000 VA."""
    answer = answered(load("relay", va), fact("run_feet", feet), fact("wire_awg", awg), asks=("wire_run",))

    assert answer.sizing is not None
    assert answer.sizing.refused is None


def test_coil_ohms_never_become_va() -> None:
    """Impedance is not resistance, and the reply says what to read instead."""
    answer = answered(Reading(measure="coil_ohms", value=11.0), asks=("size",))

    assert answer.sizing is not None
    assert answer.sizing.load_va is None
    assert "impedance, not its resistance" in str(answer.sizing.refused)


def test_coil_ohms_do_not_spoil_a_known_load() -> None:
    """What the label says still counts."""
    answer = answered(Reading(measure="coil_ohms", value=11.0), load("contactor", 9.0), asks=("size",))

    assert answer.sizing is not None
    assert answer.sizing.load_va == 9.0
