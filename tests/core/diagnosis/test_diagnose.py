"""The verdict, the next test and what is said to do, at jobs whose answer an experienced technician knows."""

import pytest

from core.cautions import CAUTIONS
from core.diagnosis import diagnose, expect, explain
from core.diagnosis.causes import CAUSES, HALVE
from core.findings import FINDINGS
from core.measures import MEASURES
from core.readings import Fact, Job, Reading


def job(
    facts: dict[str, object] | None = None, asks: tuple[str, ...] = (), declined: tuple[str, ...] = (), **readings: float | str
) -> Job:
    """A job of these facts and readings."""
    return Job(
        readings=tuple(Reading(measure=name, value=value) for name, value in readings.items()),
        facts=tuple(Fact(fact=name, value=value) for name, value in (facts or {}).items()),
        asks=asks,
        declined=frozenset((name, None) for name in declined),
    )


CLEAR = (
    ("primary_open", "bad", {}, {"primary_volts": 118.0, "secondary_volts": 0.0, "primary_ohms": "open"}),
    ("secondary_open", "bad", {}, {"primary_volts": 240.0, "secondary_volts": 0.0, "primary_ohms": 66.0, "secondary_ohms": "open"}),
    ("protection_open", "good", {}, {"primary_volts": 121.0, "secondary_volts": 27.0, "control_volts": 0.0, "fuse_volts": 27.0}),
    ("wrong_tap", "good", {"supply_volts": 208.0, "tap_volts": 240.0}, {"primary_volts": 208.0, "secondary_volts": 21.5}),
    ("low_supply", "good", {"supply_volts": 120.0, "tap_volts": 120.0}, {"line_volts": 101.0, "primary_volts": 101.0, "secondary_volts": 22.0}),
    ("loose_line", "good", {"supply_volts": 240.0}, {"line_volts": 240.0, "primary_volts": 0.0}),
    ("load_short", "good", {"supply_volts": 120.0, "tap_volts": 120.0, "rated_va": 40.0}, {"primary_volts": 119.0, "secondary_volts": 6.0, "secondary_volts_lifted": 27.0, "load_ohms": 0.4, "secondary_amps": 9.0}),
    ("overload", "good", {"supply_volts": 120.0, "tap_volts": 120.0, "rated_va": 40.0}, {"primary_volts": 120.0, "secondary_volts": 21.0, "secondary_volts_lifted": 27.0, "secondary_amps": 2.9, "load_ohms": 4.0}),
    ("control_open", "good", {}, {"primary_volts": 120.0, "secondary_volts": 27.0, "control_volts": 0.0, "fuse_volts": 0.0, "fuse_ohms": 0.1}),
    ("secondary_shorted_turns", "bad", {"supply_volts": 120.0, "tap_volts": 120.0}, {"primary_volts": 120.0, "secondary_volts": 17.5, "secondary_volts_lifted": 18.0}),
)  # fmt: skip


@pytest.mark.parametrize(("finding", "transformer", "facts", "readings"), CLEAR, ids=[row[0] for row in CLEAR])
def test_a_clear_job_gets_its_finding(
    finding: str, transformer: str, facts: dict[str, object], readings: dict[str, float | str]
) -> None:
    """What every experienced technician would say."""
    verdict = diagnose(job(facts, **readings)).verdict

    assert verdict is not None
    assert verdict.finding == finding
    assert verdict.transformer == transformer
    assert verdict.confidence > 0.6


def test_probabilities_are_whole_and_in_order() -> None:
    """All fifteen, likeliest first, together one."""
    verdict = diagnose(job(primary_volts=118.0, secondary_volts=0.0)).verdict

    assert verdict is not None
    assert {r.finding for r in verdict.ranked} == set(FINDINGS)
    assert sum(r.probability for r in verdict.ranked) == pytest.approx(1.0, abs=1e-5)
    assert [r.probability for r in verdict.ranked] == sorted((r.probability for r in verdict.ranked), reverse=True)
    assert verdict.ranked[0].finding == verdict.finding


def test_nothing_told_gives_no_verdict() -> None:
    """And no test, unless it was asked for."""
    assert diagnose(Job()).verdict is None
    assert diagnose(Job()).next_test is None
    assert diagnose(job(asks=("next",))).verdict is None
    assert diagnose(job(asks=("next",))).next_test is not None


def test_after_an_open_winding_the_control_circuit_is_read() -> None:
    """It is not settled before that."""
    answer = diagnose(job(primary_volts=118.0, secondary_volts=0.0, primary_ohms="open"))

    assert answer.verdict is not None
    assert not answer.verdict.settled
    assert answer.next_test is not None
    assert answer.next_test.measure == "load_ohms"


def test_a_short_behind_an_open_winding_is_named_and_forbids_the_new_part() -> None:
    """With how to find it, and the caution."""
    answer = diagnose(job(primary_volts=118.0, secondary_volts=0.0, primary_ohms="open", load_ohms=0.3))

    assert answer.verdict is not None
    assert answer.verdict.also == ("load_short",)
    assert {"find_the_short_first", "no_bigger_fuse"} <= set(answer.cautions)
    assert any("energise" in str(line) for line in answer.lines)


def test_a_declined_test_is_not_asked_again() -> None:
    """Another one takes its place."""
    first = diagnose(job(primary_volts=118.0, secondary_volts=0.0)).next_test
    assert first is not None
    second = diagnose(job(declined=(first.measure,), primary_volts=118.0, secondary_volts=0.0)).next_test

    assert second is not None
    assert second.measure != first.measure


def test_nothing_live_is_asked_on_480_volts() -> None:
    """Not on the line side, unless the technician is qualified."""
    told = job({"supply_volts": 480.0, "symptom": "no_control_power"}, asks=("next",))
    test = diagnose(told).next_test

    assert test is not None
    assert test.measure not in {"line_volts", "primary_volts", "primary_amps"}


@pytest.mark.parametrize("ohms", [0.6e6, 2e6, 7e6])
def test_doubtful_insulation_is_not_proved_either_way(ohms: float) -> None:
    """Between half a megohm and eight only a megohm test tells."""
    verdict = diagnose(
        job({"supply_volts": 120.0}, primary_volts=120.0, secondary_volts=26.0, control_volts=26.0, primary_secondary_ohms=ohms)
    ).verdict

    assert verdict is not None
    assert verdict.transformer == "unproven"


def test_no_transformer_is_condemned_on_one_reading_of_its_insulation() -> None:
    """A lead left on or damp hands read the same: once more, and then it is bad."""
    volts = (Reading(measure="primary_volts", value=120.0), Reading(measure="secondary_volts", value=26.0))
    once = diagnose(Job(readings=(*volts, Reading(measure="primary_secondary_ohms", value=40000.0))))
    twice = diagnose(Job(readings=(*volts, Reading(measure="primary_secondary_ohms", value=41000.0, before=40000.0))))

    assert once.verdict is not None
    assert once.verdict.transformer == "unproven"
    assert once.next_test is not None
    assert once.next_test.measure == "primary_secondary_ohms"
    assert twice.verdict is not None
    assert twice.verdict.finding == "windings_bridged"
    assert twice.verdict.transformer == "bad"


def test_symptoms_alone_condemn_nothing() -> None:
    """A burnt smell is no reading."""
    verdict = diagnose(job({"supply_volts": 120.0, "symptom": "burnt"})).verdict

    assert verdict is not None
    assert verdict.transformer == "unproven"


def test_ohms_of_a_part_that_is_still_connected_condemn_nothing() -> None:
    """A bonded common reads near nothing to the core."""
    fed = (Reading(measure="primary_volts", value=120.0), Reading(measure="secondary_volts", value=26.0))
    tied = Reading(measure="secondary_ground_ohms", value=0.3, not_isolated=True)
    verdict = diagnose(Job(readings=(*fed, tied))).verdict

    assert verdict is not None
    assert verdict.finding != "winding_grounded"


def test_a_measured_line_need_not_be_asked_for() -> None:
    """243 V is a 240 V supply."""
    read = diagnose(job(asks=("next",), line_volts=243.0, secondary_volts=26.1))

    assert read.next_test is None or read.next_test.fact != "supply_volts"


def test_a_ground_that_may_be_the_neutral_is_read_again() -> None:
    """On 120 V the neutral is tied to earth: near nothing when the leads were not off."""
    answer = diagnose(
        job({"supply_volts": 120.0}, primary_volts=120.0, secondary_volts=26.0, control_volts=26.0, primary_ground_ohms=0.4)
    )

    assert answer.verdict is not None
    assert not answer.verdict.settled
    assert answer.next_test is not None


def test_every_finding_has_its_cause_and_known_cautions() -> None:
    """Each tells what to do, and names only cautions that exist."""
    assert set(CAUSES) == set(FINDINGS)
    assert {name for cause in CAUSES.values() for name in cause.cautions} <= set(CAUTIONS)


def test_every_test_asked_for_is_a_known_measure() -> None:
    """Whatever was told before."""
    for name in MEASURES:
        if MEASURES[name].pair:
            continue
        test = diagnose(job(asks=("next",), **{name: 20.0})).next_test
        assert test is None or test.measure in MEASURES


def test_absurd_numbers_do_not_break_it() -> None:
    """A gigavolt is a slip, not a crash."""
    verdict = diagnose(job(primary_volts=1e9, secondary_volts=0.0, load_ohms=-5.0)).verdict

    assert verdict is not None
    assert 0.0 <= verdict.confidence <= 1.0


def test_expect_answers_for_the_facts_told() -> None:
    """208 V on its tap gives the volts of a 24 V unit."""
    lines = [str(line) for line in expect(job({"supply_volts": 208.0, "rated_va": 40.0})).lines]

    assert "208 V" in lines[0]
    assert "26 to 28 V" in lines[0]


def test_why_speaks_in_the_numbers_of_the_job() -> None:
    """The turns and the volts that were read."""
    lines = " ".join(str(line) for line in explain(job({"tap_volts": 240.0}, primary_volts=238.0, secondary_volts=19.5)).lines)

    assert "238" in lines
    assert "19.5" in lines
    assert "10.00 to 1" in lines


def test_what_is_good_in_the_secondary_is_what_the_nameplate_allows() -> None:
    """40 VA over 24 V is 1.67 A: apparent power is volts times amps. Source: IEC 60050-131, 131-11-41 (from memory)."""
    told = Job(
        readings=(Reading(measure="secondary_volts", value=18.9), Reading(measure="secondary_amps", value=3.1)),
        facts=(Fact(fact="rated_va", value=40.0), Fact(fact="rated_secondary_volts", value=24.0)),
    )

    verdict = diagnose(told).verdict

    assert verdict is not None
    amps = next(r for r in verdict.reasons if r.reading.measure == "secondary_amps")
    assert amps.good_high == pytest.approx(40 / 24)


@pytest.mark.parametrize("symptom", sorted({"burnt", "hot", "hum", "chatter", "trips_breaker", "blown_fuse"}))
def test_no_symptom_alone_condemns_or_acquits(symptom: str) -> None:
    """A smell, a hum or a chattering contactor is a reason to read, and no verdict on the transformer. Common practice, no source."""
    told = Job(facts=(Fact(fact="symptom", value=symptom), Fact(fact="supply_volts", value=120.0)))

    verdict = diagnose(told).verdict

    assert verdict is None or verdict.transformer == "unproven"


def test_a_short_that_was_read_is_looked_for_before_all_is_decided() -> None:
    """0.3 ohm into the control circuit: halving it comes at once, though fuse and short are still two findings."""
    answer = diagnose(job({"symptom": "blows_fuse"}, load_ohms=0.3))

    assert HALVE in answer.lines
    assert "find_the_short_first" in answer.cautions


def test_a_dead_call_begins_with_a_plain_reading() -> None:
    """Volts somewhere, and no lead lifted for it. Common practice, no source."""
    test = diagnose(job({"symptom": "no_control_power"}, asks=("next",))).next_test

    assert test is not None
    assert test.measure in {"line_volts", "primary_volts", "secondary_volts", "control_volts"}


def test_a_ghost_alone_acquits_nobody() -> None:
    """54 V on a leg that may be dead says nothing of the transformer."""
    verdict = diagnose(job(primary_volts=54.0)).verdict

    assert verdict is not None
    assert verdict.transformer == "unproven"


def test_heat_and_hum_condemn_no_transformer_whose_volts_are_right() -> None:
    """A sound one is warm and hums: the readings must condemn without them. Common practice, no source."""
    facts = (Fact(fact="symptom", value="hot"), Fact(fact="symptom", value="hum"), Fact(fact="supply_volts", value=120.0))
    volts = (("primary_volts", 120.0), ("secondary_volts", 26.2), ("control_volts", 26.0))
    told = Job(readings=tuple(Reading(measure=name, value=value) for name, value in volts), facts=facts)

    verdict = diagnose(told).verdict

    assert verdict is not None
    assert verdict.transformer != "bad"


def test_what_was_read_before_makes_another_job() -> None:
    """Two readings that agree are no single reading, though they end on the same value."""
    once = diagnose(job(primary_ground_ohms=0.4))
    twice = diagnose(Job(readings=(Reading(measure="primary_ground_ohms", value=0.4, before=0.4),)))

    assert once.verdict is not None
    assert twice.verdict is not None
    assert once.verdict.confidence != twice.verdict.confidence


def test_a_primary_of_a_tenth_of_its_ohms_is_condemned_once_it_was_read_twice() -> None:
    """0.4 ohm, leads off, on 120 V that trips: burnt together from end to end. Common practice, no source."""
    facts = (Fact(fact="symptom", value="trips_breaker"), Fact(fact="supply_volts", value=120.0))
    twice = Reading(measure="primary_ohms", value=0.4, before=0.4)

    verdict = diagnose(Job(readings=(Reading(measure="secondary_ohms", value=1.1), twice), facts=facts)).verdict

    assert verdict is not None
    assert verdict.finding == "primary_shorted_turns"


def test_nothing_is_settled_before_something_is_read() -> None:
    """A 208 V supply on the 240 V tap, both only told: one reading shows it."""
    answer = diagnose(job({"supply_volts": 208.0, "tap_volts": 240.0, "rated_va": 40.0}))

    assert answer.verdict is not None
    assert answer.verdict.finding == "wrong_tap"
    assert not answer.verdict.settled
    assert answer.next_test is not None


def test_behind_a_dead_line_nothing_live_is_asked() -> None:
    """0.4 V in low-impedance mode on a 240 V line: what hangs on it is read dead."""
    dead = Reading(measure="line_volts", value=0.4, low_impedance=True)

    test = diagnose(Job(readings=(dead,), facts=(Fact(fact="supply_volts", value=240.0),))).next_test

    assert test is None or not MEASURES[test.measure].live
