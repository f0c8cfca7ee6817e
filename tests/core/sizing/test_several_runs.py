"""Several runs in one message, pieces in a row, and one common for several loads."""

import numpy as np
import pytest

from core.readings import Fact
from core.sizing.common import common_v, volts_on_common
from core.sizing.loads import budget
from core.sizing.wire import loop_ohm
from tests.core.sizing.jobs import answered, fact, job, load, sized, text


def run(number: int, feet: float, awg: float, *loads: Fact) -> tuple[Fact, ...]:
    """One of several runs with what hangs on it."""
    return (
        Fact(fact="run_feet", value=feet, run=number),
        Fact(fact="wire_awg", value=awg, run=number),
        *(Fact(fact="load", device=f.device, count=f.count, value=f.value, inrush=f.inrush, run=number) for f in loads),
    )


CONTACTOR, DAMPER = load("contactor", 9.0), load("damper", 6.0)
TWO = (*run(1, 60.0, 18.0, CONTACTOR), *run(2, 180.0, 20.0, DAMPER))


def test_each_run_has_its_own_volts_the_worst_first() -> None:
    """The damper's 96 ohm behind 4.445 ohm: 22.94 V; the contactor's 64 ohm behind 0.932 ohm: 23.66 V."""
    answer = answered(*TWO, asks=("wire_run",))

    assert str(answer.lines[0]) == "22.94 V at the damper, 180 ft of 20 AWG: good"
    assert str(answer.lines[1]) == "23.66 V at the contactor, 60 ft of 18 AWG: good"
    assert answer.sizing is not None
    assert (answer.sizing.drop_volts, answer.sizing.volts_at_load) == (1.06, 22.94)


def test_the_load_of_one_run_does_not_pull_down_the_other() -> None:
    """A heavy second run changes nothing at the end of the first."""
    heavy = (*run(1, 60.0, 18.0, CONTACTOR), *run(2, 180.0, 20.0, load("damper", 20.0, count=2)))

    assert "23.66 V at the contactor" in text(answered(*heavy, asks=("wire_run",)))


def test_a_run_that_starves_its_coil_is_called_out() -> None:
    """30 VA at 400 ft of 20 AWG."""
    told = (*run(1, 60.0, 18.0, CONTACTOR), *run(2, 400.0, 20.0, load("damper", 30.0)))

    assert str(answered(*told, asks=("wire_run",)).lines[0]).startswith("Too long: ")


def test_pieces_without_loads_of_their_own_lie_in_a_row() -> None:
    """50 ft of 18 and 200 ft of 20 are 0.776 + 4.939 ohm before 28.8 ohm: 20.03 V."""
    told = (*run(1, 50.0, 18.0), *run(2, 200.0, 20.0, load("contactor", 20.0)))
    answer = answered(*told, asks=("wire_run",))
    ohm = loop_ohm(18, 50.0) + loop_ohm(20, 200.0)

    assert str(answer.lines[0]).startswith("Too long: 50 ft of 18 + 200 ft of 20 in a row leave 20.03 V")
    assert answer.sizing is not None
    assert answer.sizing.volts_at_load == pytest.approx(24.0 * 28.8 / (28.8 + ohm), abs=0.005)
    assert "Two runs of their own?" in text(answer)


def test_a_gauge_told_once_is_that_of_every_run() -> None:
    """60 and 180 ft of 18."""
    told = (*TWO[:3], TWO[3], TWO[5])

    assert "180 ft of 18 AWG" in text(answered(*told, asks=("wire_run",)))


def test_a_run_with_nothing_on_it_is_asked_about() -> None:
    """Two have loads, the third has none."""
    told = (*TWO, *run(3, 90.0, 18.0))

    assert "90 ft of 18 AWG: send its VA" in text(answered(*told, asks=("wire_run",)))


def test_the_pull_in_runs_through_the_wire_of_its_own_run() -> None:
    """60 VA beside the transformer hold on 40 VA; at the end of 380 ft they do not."""
    peak = load("contactor", 9.0, inrush=60.0)
    near = (*run(1, 10.0, 18.0, peak), *run(2, 380.0, 20.0, DAMPER), fact("rated_va", 40))
    far = (*run(1, 10.0, 18.0, DAMPER), *run(2, 380.0, 20.0, peak), fact("rated_va", 40))

    assert "coils keep" in text(answered(*near, asks=("size",)))
    assert "not the pull-in" in text(answered(*far, asks=("size",))) or "takes the coils to" in text(
        answered(*far, asks=("size",))
    )


def solved(loads_ohm: list[float], wire_ohm: float) -> list[float]:
    """Volts at each load by the nodes: the common's far end and each load's hot end against it."""
    n = len(loads_ohm)
    matrix, right = np.zeros((n + 1, n + 1)), np.zeros(n + 1)
    for i, ohm in enumerate(loads_ohm):  # amps of load i through its hot wire and itself, from 24 V to the common's end
        matrix[i, i], matrix[i, n], right[i] = ohm + wire_ohm, 1.0, 24.0
        matrix[n, i] = 1.0
    matrix[n, n] = -1.0 / wire_ohm  # all of them through the common
    amps = np.linalg.solve(matrix, right)[:n]
    return [float(a * ohm) for a, ohm in zip(amps, loads_ohm, strict=True)]


def test_a_shared_common_is_the_circuit_solved_by_its_nodes() -> None:
    """Three valves of 72 ohm and a relay of 192 ohm on 1.5 ohm wires."""
    loads = budget(job(load("zone valve", 8.0, count=3), load("relay", 3.0)))
    volts = [volts_on_common(part, loads, 1.5) for part in loads.parts]

    assert [volts[0], volts[1]] == pytest.approx([solved([72.0] * 3 + [192.0], 1.5)[0], solved([72.0] * 3 + [192.0], 1.5)[3]])


def test_amps_on_a_common_are_those_told() -> None:
    """Two of 0.5 A on 1 ohm: 1 V in the common, 0.5 V in each hot wire."""
    loads = budget(job(load("gas valve", 0.5, unit="A", count=2)))

    assert common_v(loads, 1.0) == pytest.approx(1.0)
    assert volts_on_common(loads.parts[0], loads, 1.0) == pytest.approx(22.5)


def test_one_common_for_several_is_answered_as_such() -> None:
    """3 zone valves at 200 ft of 18: worst volts, what the common loses, and what one of its own would leave."""
    told = (fact("run_feet", 200), fact("wire_awg", 18), load("zone valve", 8.0, count=3))
    answer = answered(*told, asks=("wire_run",), topics=("shared_common",))
    said = text(answer)

    assert str(answer.lines[0]) == "One common holds: 22.09 V at the zone valve, 20.4 V needed"
    assert "All 0.92 A come back on the common: it alone loses 1.43 V" in said
    assert "With a common of its own it would have 23.01 V" in said
    # Less than both conductors of a pair carrying all, more than a pair for each.
    pair = sized(*told, asks=("wire_run",)).volts_at_load
    assert answer.sizing is not None
    assert pair is not None
    assert answer.sizing.volts_at_load is not None
    assert pair < answer.sizing.volts_at_load < 23.01


def test_a_run_that_starves_the_pull_in_is_said_first_and_is_not_called_good() -> None:
    """60 VA on 200 ft of 20 from full volts: 24 x 9.6 / (9.6 + 4.94) = 15.8 V, while its 9 VA steady leave 22.3 V."""
    runs = (
        Fact(fact="run_feet", value=200.0, run=1),
        Fact(fact="wire_awg", value=20.0, run=1),
        Fact(fact="load", device="contactor", value=9.0, inrush=60.0, run=1),
        Fact(fact="run_feet", value=380.0, run=2),
        Fact(fact="load", device="damper", value=6.0, run=2),
    )
    said = text(answered(*runs, asks=("wire_run",)))

    assert said.startswith("Too long for the pull-in: 15.8 V at the contactor, 200 ft of 20 AWG, 20.4 V needed")
    assert "22.28 V at the contactor" not in said
    assert "21.86 V at the damper, 380 ft of 20 AWG: good" in said


def test_a_pull_in_on_a_shared_common_has_the_amps_of_the_others_on_it() -> None:
    """
    60 VA beside 9 VA sealed on 150 ft of 18, one common, from full volts.

    By hand: 1.1646 ohm each way; the coil 9.6 ohm, the other 64 ohm. The common carries both: with its volts u,
    (24 - u) / 10.7646 + (24 - u) / 65.1646 = u / 1.1646, so u = 2.69 V, and the coil has 21.31 x 9.6 / 10.7646 = 19.0 V.
    """
    told = (load("contactor", 9.0, count=2, inrush=60.0), fact("run_feet", 150), fact("wire_awg", 18))
    said = text(answered(*told, asks=("wire_run",), topics=("shared_common",)))

    assert said.startswith("Too much on one common for the pull-in: 19.0 V, 20.4 V needed")
    assert "One common holds" not in said
