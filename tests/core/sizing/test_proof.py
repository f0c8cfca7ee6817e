"""The proof after installing."""

from dataclasses import replace

import pytest

from core.readings import Job, Reading
from core.sizing import has_failed, prove
from core.sizing.proof import proof_state
from tests.core.sizing.jobs import answered, fact, job

GOOD = {
    "line_volts": 121.0,
    "secondary_volts_lifted": 27.0,
    "secondary_volts": 25.0,
    "control_volts": 24.6,
    "coil_volts": 24.0,
    "secondary_amps": 1.3,
}


def proof_job(**changed: float) -> Job:
    """A 40 VA unit on 120 V with these readings."""
    return job(
        fact("rated_va", 40),
        fact("supply_volts", 120),
        *(Reading(measure=name, value=value, loaded=name == "secondary_volts") for name, value in (GOOD | changed).items()),
        asks=("prove",),
    )


def test_all_readings_in_range_pass() -> None:
    """Six readings of a sound unit."""
    answer = prove(proof_job())

    assert str(answer.lines[0]).startswith("PASS")
    assert answer.next_test is None


@pytest.mark.parametrize(
    ("measure", "value"),
    [
        ("line_volts", 104.0),
        ("secondary_volts_lifted", 31.5),
        ("control_volts", 19.0),
        ("coil_volts", 18.0),
        ("secondary_amps", 2.2),
    ],
)
def test_one_reading_out_of_range_fails(measure: str, value: float) -> None:
    """And the line says which."""
    answer = prove(proof_job(**{measure: value}))

    assert str(answer.lines[0]).startswith("FAIL")
    assert sum(str(line).startswith("Fail,") for line in answer.lines) >= 1


@pytest.mark.parametrize("supply", [120.0, 208.0, 240.0, 277.0, 480.0])
@pytest.mark.parametrize("tap", [None, 120.0, 208.0, 240.0, 277.0, 480.0])
@pytest.mark.parametrize("line", [None, 60.0, 118.0, 250.0, 500.0])
def test_no_range_is_inverted(supply: float, tap: float | None, line: float | None) -> None:
    """Whatever supply, tap and line say of each other."""
    told = [fact("rated_va", 40), fact("supply_volts", supply)] + ([fact("tap_volts", tap)] if tap is not None else [])
    readings = [Reading(measure="line_volts", value=line)] if line is not None else []
    rows = proof_state(job(*told, *readings, asks=("prove",))).rows

    assert all(row.low < row.high for row in rows)


def test_a_supply_on_another_tap_fails_before_anything_is_read() -> None:
    """240 V on the 208 V tap proves nothing but that."""
    answer = prove(job(fact("supply_volts", 240), fact("tap_volts", 208), asks=("prove",)))

    assert str(answer.lines[0]).startswith("FAIL: 240 V supply on the 208 V tap")
    assert answer.next_test is None
    assert has_failed(job(fact("supply_volts", 240), fact("tap_volts", 208)))


def test_every_line_begins_with_a_capital() -> None:
    """Lines of a list are read one by one."""
    for told in (proof_job(), proof_job(control_volts=19.0), job(fact("rated_va", 40), asks=("prove",))):
        assert all(str(line)[0].isupper() for line in prove(told).lines)


def test_in_the_course_of_a_proof_only_what_is_new_or_wrong_is_said() -> None:
    """One reading in: its line, and the next test with its range; the list was said when it was asked for."""
    begun = job(
        fact("rated_va", 40),
        fact("supply_volts", 120),
        Reading(measure="line_volts", value=104.0),
        Reading(measure="control_volts", value=24.6),
        asks=("prove",),
    )
    answer = prove(replace(begun, fresh=frozenset({"control_volts"})))

    assert [str(line) for line in answer.lines] == [
        "FAIL: 1 reading out of its range",
        "Fail, Line: 104.0 V, expected 108.0 to 132.0 V",
        "Pass, R to C at the stat: 24.6 V, 20.4 to 24.7 V",
    ]
    assert answer.next_test is not None
    assert str(answer.next_test.instruction).endswith("read volts across the secondary: 22.2 to 24.7 V")


def test_a_proof_begun_asks_for_the_next_reading() -> None:
    """In the order they are taken."""
    answer = answered(
        fact("rated_va", 40), fact("supply_volts", 120), Reading(measure="line_volts", value=120.0), asks=("prove",)
    )

    assert str(answer.lines[0]) == "Not proved yet: 5 readings to take"
    assert answer.next_test is not None
    assert answer.next_test.measure == "secondary_volts_lifted"


def test_the_primary_read_good_proves_the_line() -> None:
    """What arrives at the primary stands at the line: it is not asked for again."""
    told = (
        fact("rated_va", 50),
        fact("supply_volts", 208),
        fact("tap_volts", 208),
        Reading(measure="primary_volts", value=208.0),
    )
    answer = prove(job(*told, asks=("prove",)))

    assert "Pass, Line: 208.0 V, 187.2 to 228.8 V" in [str(line) for line in answer.lines]
    assert answer.next_test is not None
    assert answer.next_test.measure == "secondary_volts_lifted"


def test_a_secondary_read_with_nothing_said_of_the_load_proves_no_load() -> None:
    """26.1 V in range, and read again with everything called."""
    told = (fact("rated_va", 50), fact("supply_volts", 120), Reading(measure="secondary_volts", value=26.1))
    answer = prove(job(*told, asks=("prove",)))

    assert "Secondary 26.1 V: with everything calling? Read it so" in [str(line) for line in answer.lines]
    assert str(answer.lines[0]) == "Not proved yet: 6 readings to take"


def test_a_secondary_that_fails_fails_whatever_was_called() -> None:
    """0 V."""
    answer = prove(job(fact("rated_va", 50), Reading(measure="secondary_volts", value=0.0), asks=("prove",)))

    assert str(answer.lines[0]).startswith("FAIL")


def test_a_coil_over_110_per_cent_is_high() -> None:
    """27.4 V: TM 5-683 ends at 26.4."""
    said = [str(line) for line in prove(proof_job(coil_volts=27.4)).lines]

    assert "Fail, Coil, called: 27.4 V, expected 20.4 to 26.4 V" in said
    assert "Over 110 %: check the tap and the line volts" in said
