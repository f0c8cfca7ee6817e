"""What is said to each thing heard: one or two short lines, and what they rest on."""

import pytest

from core.advise import advise, speaks_of_circuit
from core.cautions import CAUTIONS
from core.heard.answers import ALONE, IN_JOB, OF_JOB, spoken
from core.heard.record import HEARD, Heard, Read
from core.readings import Job, Reading

LONGEST = 110
"""Characters of a line that is read at arm's length."""


def told(what: str, part: str, *values: Read, unit: str = "ohm", job: Job | None = None) -> list[str]:
    """The lines said to one thing heard."""
    known = job or Job()
    answers = spoken(
        Job(readings=known.readings, facts=known.facts, fresh=known.fresh, heard=(Heard(what, part, "", values, unit),))
    )
    return [str(line) for answer in answers for line in answer.lines]


def job_with(**volts_or_ohms: float | str) -> Job:
    """A job whose message brought these readings."""
    readings = tuple(Reading(measure=name, value=value) for name, value in volts_or_ohms.items())  # type: ignore[arg-type]
    return Job(readings=readings, fresh=frozenset(volts_or_ohms))


def test_everything_that_can_be_heard_has_one_answer() -> None:
    """One row each."""
    assert {*ALONE, *IN_JOB, *OF_JOB} == set(HEARD)
    assert len(ALONE) + len(IN_JOB) + len(OF_JOB) == len(HEARD)


@pytest.mark.parametrize(
    ("part", "fed", "other", "shows"),
    [
        ("float switch", 26.0, 0.0, "the float switch is open"),
        ("float switch", 26.0, 3.0, "the float switch is open"),
        ("limit switch", 24.0, 24.0, "the limit switch passes"),
        ("fuse", 26.0, 25.8, "the fuse passes"),
        ("fuse", 26.0, 0.0, "the fuse is open"),
        ("door switch", 25.0, 15.0, "a bad contact"),
        ("fuse", 0.0, 0.0, "not fed"),
        ("limit switch", 24.0, None, "read its other side"),
        ("fuse", None, 0.0, "read its fed side"),
        ("fuse", None, 26.0, "it passes"),
    ],
)
def test_the_two_sides_of_a_part_say_whether_it_passes(part: str, fed: Read, other: Read, shows: str) -> None:
    """
    In a series loop nothing is lost over a closed part, and everything over the open one.

    Source: IEC 60050-131, Kirchhoff law for meshes (from memory): what one side has over the other stands across the part.
    """
    assert shows in told("sides", part, fed, other, unit="V")[0]


@pytest.mark.parametrize("part", ["float switch", "limit switch", "pressure switch", "door switch", "switch"])
def test_no_open_safety_is_jumped(part: str) -> None:
    """Whatever opened it is found first: a safety is never bypassed."""
    _, reason = told("sides", part, 24.0, 0.0, unit="V")

    assert "ever jump it" in reason


@pytest.mark.parametrize(
    ("values", "unit", "shows"),
    [
        (("open",), "ohm", "Line fuse open"),
        ((), "", "Line fuse open"),
        ((0.2,), "ohm", "passes"),
        ((240.0,), "V", "Line fuse open"),
        ((0.1,), "V", "passes"),
        ((240.0, 0.0), "V", "Line fuse open"),
        ((240.0, 239.0), "V", "passes"),
        ((0.0, 0.0), "V", "not fed"),
    ],
)
def test_a_line_fuse_is_answered_as_one(values: tuple[Read, ...], unit: str, shows: str) -> None:
    """All of the line stands across the open one."""
    assert shows in told("line_fuse", "fuse", *values, unit=unit)[0]


def test_an_open_line_fuse_is_looked_behind_locked_out() -> None:
    """Something blew it: the primary is read before the same rating goes back, and never a bigger one."""
    (answer,) = spoken(Job(heard=(Heard("line_fuse", "fuse", ""),)))

    assert answer.next_test is not None
    assert answer.next_test.measure == "primary_ohms"
    assert "primary to case" in str(answer.next_test.instruction)
    assert "same rating" in str(answer.next_test.instruction)
    assert "lock_out" in answer.cautions


@pytest.mark.parametrize(
    ("part", "value", "unit", "shows"),
    [
        ("y c", 0.4, "ohm", "the short is on Y"),
        ("y c", 2.2, "ohm", "a short on Y, or large coils"),
        ("y c", 22.0, "ohm", "a sound coil"),
        ("g c", 900.0, "ohm", "no short on G"),
        ("o c", "open", "ohm", "is open"),
        ("y c", 26.0, "V", "reaches here"),
        ("y c", 0.0, "V", "no call on Y"),
        ("y c", 11.0, "V", "weak"),
        ("y c", 22.0, "", "Which?"),
        ("y c", 0.0, "", "Which?"),
        ("r ground", 0.2, "ohm", "shorted to ground"),
        ("y ground", 18.0, "ohm", "bonded C"),
        ("r ground", "open", "ohm", "clear of ground"),
        ("y g", 0.3, "ohm", "they touch"),
        ("y g", 40.0, "ohm", "no short between"),
        ("r ground", 24.0, "V", "ground is no return"),
        ("y r", 24.0, "V", "no call there"),
    ],
)
def test_a_leg_is_judged_by_its_coil(part: str, value: Read, unit: str, shows: str) -> None:
    """
    A leg to C reads its coil, a leg to ground has no path of its own.

    Common practice, no source: all that a 100 VA transformer can carry reads 1 ohm or more, the coil of one contactor several.
    """
    assert shows in told("leg", part, value, unit=unit)[0]


def test_who_reads_all_legs_is_not_told_to_read_them() -> None:
    """One leg alone asks for the others."""
    rows = (Heard("leg", "w c", "", (14.0,), "ohm"), Heard("leg", "y c", "", (0.3,), "ohm"))
    lines = [str(line) for answer in spoken(Job(heard=rows)) for line in answer.lines]

    assert not any("the other legs" in line for line in lines)
    assert any("the other legs" in line for line in told("leg", "w c", 14.0))


def test_a_leg_live_at_one_end_and_dead_at_the_other_is_open_between() -> None:
    """The wire, or its common."""
    lines = told("leg", "y c", 24.6, 0.0, unit="V")

    assert "24.6 V at one end, 0 at the other" in lines[0]
    assert "open between" in lines[1]


def test_a_common_to_ground_may_be_a_bond() -> None:
    """
    C is bonded to the cabinet on many units, and must be where the primary is over 150 V to ground.

    Source: 29 CFR 1926.404(f)(1)(iii); NEC 250.20(A): circuits of less than 50 V are grounded where their transformer is so supplied.
    """
    (answer,) = spoken(Job(heard=(Heard("leg", "c ground", "", (0.2,), "ohm"),)))

    assert "no fault" in str(answer.lines[0])
    assert answer.next_test is not None
    assert answer.next_test.measure == "secondary_ground_ohms"
    assert "must be OL" in str(answer.next_test.instruction)


def test_a_secondary_to_ground_is_asked_for_without_its_bond_before_it_is_condemned() -> None:
    """The verdict is not told on that reading alone; read once more, it is the diagnosis that speaks."""
    job = job_with(secondary_volts=26.0, secondary_ground_ohms=0.3)
    again = Job(
        readings=(*job.readings, Reading(measure="secondary_ground_ohms", value=0.3, repeated=True)),
        fresh=frozenset({"secondary_ground_ohms"}),
    )

    answer = advise(job)
    assert answer.next_test is not None
    assert "lift the bond" in str(answer.next_test.instruction)
    assert not speaks_of_circuit(job, answer.verdict)
    assert spoken(again) == ()


@pytest.mark.parametrize(
    ("what", "value", "shows"),
    [
        ("leg_lifted", 22.0, "the short is on Y"),
        ("leg_lifted", 0.4, "not on Y"),
        ("leg_lifted", "open", "the short is on Y"),
        ("call", 0.6, "the short is on Y"),
    ],
)
def test_a_short_is_where_it_comes_and_goes_with_a_leg(what: str, value: Read, shows: str) -> None:
    """Whatever takes the short away has it."""
    assert shows in told(what, "y", value)[0]


def test_volts_tell_a_lifted_leg_as_well() -> None:
    """The control voltage comes back once the short is off."""
    assert "the short is on W" in told("leg_lifted", "w", 26.0, unit="V")[0]
    assert "not on W" in told("leg_lifted", "w", 2.0, unit="V")[0]


def test_a_fed_coil_that_stays_out_is_the_contactors_fault() -> None:
    """
    An AC coil has to pull in from 85 % of its volts on.

    Source: TM 5-683 / NAVFAC MO-116 / AFJMAN 32-1083, chapter 5: 85 to 110 % of rated volts.
    """
    assert "contactor, not transformer" in told("stays_out", "contactor", job=job_with(coil_volts=0.86 * 24))[0]
    assert told("stays_out", "contactor", job=job_with(coil_volts=0.84 * 24)) == []


def test_a_contactor_that_stays_out_is_asked_for_its_volts() -> None:
    """Where nothing before it is known to be dead: a dead circuit is looked for first."""
    row = Heard("stays_out", "contactor", "")
    fed = advise(Job(readings=(Reading(measure="control_volts", value=26.0),), heard=(row,)))
    dead = spoken(Job(readings=(Reading(measure="secondary_volts", value=0.0),), heard=(row,)))

    assert fed.next_test is not None
    assert fed.next_test.measure == "coil_volts"
    assert dead == ()


def test_a_coil_with_ohms_and_volts_that_stays_out_sticks() -> None:
    """Neither the coil nor its feed is left."""
    assert "sticks" in told("stays_out", "contactor", job=job_with(coil_volts=25.0, coil_ohms=11.0))[0]


def test_an_open_coil_on_a_fed_circuit_clears_the_transformer() -> None:
    """Nothing before the coil is at fault."""
    fed = [str(line) for answer in spoken(job_with(control_volts=26.0, coil_ohms="open")) for line in answer.lines]
    alone = [str(line) for answer in spoken(job_with(coil_ohms="open")) for line in answer.lines]

    assert fed == ["Open coil: replace the contactor or relay that it is in", "Its circuit is fed: the transformer is fine"]
    assert alone == fed[:1]


def test_a_dead_motor_behind_a_fed_coil_is_looked_for_on_the_line_side() -> None:
    """The capacitor is bled before it is tested."""
    (answer,) = spoken(Job(**{**_as_kwargs(job_with(coil_volts=24.0)), "heard": (Heard("motor_dead", "contactor", ""),)}))

    assert "line volts in and out of its poles" in str(answer.lines[0])
    assert "bleed the capacitor" in str(answer.lines[1])
    assert "discharge_capacitor" in answer.cautions


def test_a_breaker_found_off_ends_the_search_once_volts_are_back() -> None:
    """Without volts it goes on once, and is left off where it trips."""
    back = told("breaker_off", "breaker", job=job_with(primary_volts=121.0, secondary_volts=26.0))
    off = told("breaker_off", "breaker")

    assert "That was it" in back[0]
    assert "leave it off" in back[1]
    assert "on once" in off[0]


def test_what_decides_the_call_is_the_next_step() -> None:
    """Nothing else is asked for beside it, and a guess is not told."""
    job = Job(
        readings=(Reading(measure="secondary_volts", value=26.0),),
        heard=(Heard("sides", "float switch", "", (26.0, 0.0), "V"),),
    )
    answer = advise(job)

    assert answer.next_test is None
    assert not speaks_of_circuit(job, answer.verdict)


def _as_kwargs(job: Job) -> dict:
    return {"readings": job.readings, "fresh": job.fresh}


@pytest.mark.parametrize(
    "row",
    [
        *(Heard("sides", part, "", (24.0, 0.0), "V") for part in ("float switch", "limit switch", "pressure switch", "fuse")),
        Heard("line_fuse", "fuse", ""),
        *(Heard("leg", f"{leg} c", "", (0.3,), "ohm") for leg in ("y", "w", "g", "o", "b", "y1")),
        Heard("leg", "r ground", "", (0.3,), "ohm"),
        Heard("leg", "c ground", "", (0.3,), "ohm"),
        Heard("leg_lifted", "y", "", (22.0,), "ohm"),
        Heard("breaker_off", "breaker", ""),
    ],
)
def test_an_answer_is_two_short_lines_with_cautions_that_exist(row: Heard) -> None:
    """Read on a roof."""
    (answer,) = spoken(Job(heard=(row,)))

    lines = [*answer.lines, *((answer.next_test.instruction,) if answer.next_test is not None else ())]
    assert 1 <= len(lines) <= 2
    assert all(len(str(line)) <= LONGEST for line in lines)
    assert set(answer.cautions) <= set(CAUTIONS)
