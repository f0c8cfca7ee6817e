"""
The engine against a simulated technician whose units, meter and habits it has not seen, and a fixed flow chart beside it on the same calls.

    python -m tests.benchmarks.blind_bench --units 2000 --reach
    python -m tests.benchmarks.blind_bench --units 1000 --world 4

Each world is by another hand. The engine was fitted on units of the first three, drawn from other seeds, and never on the fourth: that one examines it.
"""

import argparse
import time
from collections import Counter
from collections.abc import Callable, Iterator
from functools import partial

import numpy as np

from core.diagnosis import diagnose
from core.readings import Job
from tests.benchmarks.fourth_world import draw as draw4
from tests.benchmarks.fourth_world import hand as hand4
from tests.benchmarks.fourth_world import unit as unit4
from tests.benchmarks.second_world import draw as draw2
from tests.benchmarks.second_world import hand as hand2
from tests.benchmarks.second_world import unit as unit2
from tests.benchmarks.technician.flow_chart import Outcome, flow_chart
from tests.benchmarks.technician.hand import Technician
from tests.benchmarks.technician.severity import severity
from tests.benchmarks.technician.unit import SETTINGS, Unit, make
from tests.benchmarks.third_world import draw as draw3
from tests.benchmarks.third_world import hand as hand3
from tests.benchmarks.third_world import unit as unit3

MOST_TESTS = 14
AnyUnit = Unit | unit2.Unit | unit3.Unit | unit4.Unit
AnyTechnician = Technician | hand2.Technician | hand3.Technician | hand4.Technician
OTHERS = {2: (draw2.draw, hand2.Technician), 3: (draw3.draw, hand3.Technician), 4: (draw4.draw, hand4.Technician)}
"""How a unit of each other world is drawn, and who stands at it."""
Call = Callable[[], AnyTechnician]


def first(seed: int, count: int) -> Iterator[tuple[str, list[AnyUnit], list[Call]]]:
    """Units of each setting, and how to call a technician at each."""
    for number, setting in enumerate(SETTINGS):
        rng = np.random.default_rng((seed, number))
        units = [make(rng, setting) for _ in range(count // len(SETTINGS))]
        yield setting.name, units, [partial(_technician, Technician, (seed, number, i), u) for i, u in enumerate(units)]


def other(world: int, seed: int, count: int) -> Iterator[tuple[str, list[AnyUnit], list[Call]]]:
    """The same in another world."""
    draw, kind = OTHERS[world]
    units = [draw(np.random.default_rng((seed, i))) for i in range(count)]
    yield f"world {world}", units, [partial(_technician, kind, (seed, i, 1), u) for i, u in enumerate(units)]


def calls_of(world: int, seed: int, count: int) -> Iterator[tuple[str, list[AnyUnit], list[Call]]]:
    """Of any world."""
    return first(seed, count) if world == 1 else other(world, seed, count)


def _technician(kind: type, seed: tuple[int, ...], u: AnyUnit) -> AnyTechnician:
    return kind(np.random.default_rng(seed), u)


def engine(t: AnyTechnician) -> Outcome:
    """One call with the engine: it asks, the technician answers."""
    readings, facts = t.opening()
    declined: set = set()
    cpu: list[float] = []
    tests = len(readings)
    while True:
        job = Job(readings=tuple(readings), facts=tuple(facts), declined=frozenset(declined), asks=("next",), qualified=True)
        began = time.process_time()
        answer = diagnose(job)
        cpu.append(1e3 * (time.process_time() - began))
        test = answer.next_test
        if test is None or tests >= MOST_TESTS:
            break
        if test.fact is not None:
            fact = t.fact(test.fact)
            if fact is None:
                declined.add((test.fact, None))
            else:
                facts.append(fact)
            continue
        reading = t.read(test.measure, low_impedance="low-impedance" in str(test.instruction))
        if reading is None:
            declined.add((test.measure, None))
            continue
        readings.append(reading)
        tests += 1
    v = answer.verdict
    if v is None:
        return Outcome("none", "unproven", tests, 0.0, cpu_ms=tuple(cpu))
    return Outcome(v.finding, v.transformer, tests, v.confidence, v.also, tuple(cpu))


def calibration(confidence: np.ndarray, right: np.ndarray) -> float:
    """Expected calibration error over ten equal bins."""
    bins = np.minimum((confidence * 10).astype(int), 9)
    return float(
        sum(
            abs(confidence[bins == b].mean() - right[bins == b].mean()) * (bins == b).mean()
            for b in range(10)
            if (bins == b).any()
        )
    )


def table(name: str, units: list[AnyUnit], outcomes: list[Outcome]) -> None:
    """One line of figures."""
    right = np.array([o.finding == u.finding for u, o in zip(units, outcomes, strict=True)])
    bad = np.array([u.is_bad for u in units])
    said = np.array([o.transformer for o in outcomes])
    decision = np.array([is_right(u, o) for u, o in zip(units, outcomes, strict=True)])
    safe = np.where(bad, said == "bad", said != "bad")
    double = [o for u, o in zip(units, outcomes, strict=True) if u.short and u.finding != "load_short"]
    tests = np.array([o.tests for o in outcomes])
    cpu = np.array([ms for o in outcomes for ms in o.cpu_ms] or [0.0])
    print(
        f"{name:34s} finding {right.mean():6.1%}  replace {decision.mean():6.1%} ({safe.mean():6.1%} unproven as good)  "
        f"condemned {1e3 * ((said == 'bad') & ~bad).mean():5.1f}  passed {1e3 * ((said == 'good') & bad).mean():5.1f}  "
        f"unproven {1e3 * (said == 'unproven').mean():5.1f} per 1000  tests {np.median(tests):.0f}/{np.quantile(tests, 0.9):.0f}  "
        f"behind {np.mean(['load_short' in {o.finding, *o.also} for o in double]) if double else 0:6.1%}  "
        f"ECE {calibration(np.array([o.confidence for o in outcomes]), right):.1%}  cpu {np.median(cpu):.1f}/{np.quantile(cpu, 0.99):.1f} ms"
    )


def reach(units: list[AnyUnit], outcomes: list[Outcome]) -> None:
    """A line for each finding and severity."""
    rows: dict[tuple[str, str], list[tuple[AnyUnit, Outcome]]] = {}
    for u, o in zip(units, outcomes, strict=True):
        rows.setdefault((u.finding, severity(u)), []).append((u, o))
    for (finding, how), calls in sorted(rows.items()):
        right = np.mean([o.finding == u.finding for u, o in calls])
        part = np.mean([is_right(u, o) for u, o in calls])
        tests = np.mean([o.tests for _, o in calls])
        print(f"{finding:24s} {how:26s} {len(calls):4d}  finding {right:5.0%}  replace {part:5.0%}  tests {tests:4.1f}")


def is_right(u: AnyUnit, o: Outcome) -> bool:
    """Of a dead line a transformer that is not proved is as right as a good one."""
    return o.transformer == ("bad" if u.is_bad else "good") or (u.finding == "no_supply" and o.transformer == "unproven")


def main() -> None:
    """Run and print."""
    ask = argparse.ArgumentParser(description=__doc__)
    ask.add_argument("--units", type=int, default=2000)
    ask.add_argument("--seed", type=int, default=77)
    ask.add_argument("--wrong", action="store_true", help="also print which findings were taken for which")
    ask.add_argument("--world", type=int, default=1, choices=(1, *OTHERS))
    ask.add_argument("--reach", action="store_true", help="also print every finding at every severity")
    told = ask.parse_args()
    everyone: list[AnyUnit] = []
    by_engine: list[Outcome] = []
    by_chart: list[Outcome] = []
    for name, units, calls in calls_of(told.world, told.seed, told.units):
        ours = [engine(call()) for call in calls]
        chart = [flow_chart(call()) for call in calls]
        table(f"engine: {name}", units, ours)
        everyone, by_engine, by_chart = everyone + units, by_engine + ours, by_chart + chart
    table("engine: all", everyone, by_engine)
    table("flow chart: all", everyone, by_chart)
    if told.reach:
        reach(everyone, by_engine)
    if told.wrong:
        wrong = Counter((u.finding, o.finding) for u, o in zip(everyone, by_engine, strict=True) if u.finding != o.finding)
        for (truth, said), count in wrong.most_common(25):
            print(f"{count:4d}  {truth} taken for {said}")


if __name__ == "__main__":
    main()
