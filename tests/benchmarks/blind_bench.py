"""
The engine against a simulated technician whose units, meter and habits it has not seen, and a fixed flow chart beside it on the same calls.

    python -m tests.benchmarks.blind_bench --units 2000
"""

import argparse
import time
from collections import Counter

import numpy as np

from core.diagnosis import diagnose
from core.readings import Job
from tests.benchmarks.technician.flow_chart import Outcome, flow_chart
from tests.benchmarks.technician.hand import Technician
from tests.benchmarks.technician.unit import SETTINGS, Unit, make

MOST_TESTS = 14


def engine(t: Technician) -> Outcome:
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


def table(name: str, units: list[Unit], outcomes: list[Outcome]) -> None:
    """One line of figures."""
    right = np.array([o.finding == u.finding for u, o in zip(units, outcomes, strict=True)])
    bad = np.array([u.is_bad for u in units])
    said = np.array([o.transformer for o in outcomes])
    decision = np.where(bad, said == "bad", said == "good")
    safe = np.where(bad, said == "bad", said != "bad")
    double = [o for u, o in zip(units, outcomes, strict=True) if u.short and u.finding != "load_short"]
    tests = np.array([o.tests for o in outcomes])
    cpu = np.array([ms for o in outcomes for ms in o.cpu_ms] or [0.0])
    print(
        f"{name:34s} finding {right.mean():6.1%}  replace {decision.mean():6.1%} ({safe.mean():6.1%} unproven as good)  "
        f"condemned {1e3 * ((said == 'bad') & ~bad).mean():5.1f}  passed {1e3 * ((said == 'good') & bad).mean():5.1f}  "
        f"unproven {1e3 * (said == 'unproven').mean():5.1f} per 1000  tests {np.median(tests):.0f}/{np.quantile(tests, 0.9):.0f}  "
        f"behind {np.mean(['load_short' in o.also for o in double]) if double else 0:6.1%}  "
        f"ECE {calibration(np.array([o.confidence for o in outcomes]), right):.1%}  cpu {np.median(cpu):.1f}/{np.quantile(cpu, 0.99):.1f} ms"
    )


def main() -> None:
    """Run and print."""
    ask = argparse.ArgumentParser(description=__doc__)
    ask.add_argument("--units", type=int, default=2000)
    ask.add_argument("--seed", type=int, default=77)
    ask.add_argument("--wrong", action="store_true", help="also print which findings were taken for which")
    told = ask.parse_args()
    everyone: list[Unit] = []
    by_engine: list[Outcome] = []
    by_chart: list[Outcome] = []
    for number, setting in enumerate(SETTINGS):
        rng = np.random.default_rng((told.seed, number))
        units = [make(rng, setting) for _ in range(told.units // len(SETTINGS))]
        ours = [engine(Technician(np.random.default_rng((told.seed, number, i)), u)) for i, u in enumerate(units)]
        chart = [flow_chart(Technician(np.random.default_rng((told.seed, number, i)), u)) for i, u in enumerate(units)]
        table(f"engine: {setting.name}", units, ours)
        everyone, by_engine, by_chart = everyone + units, by_engine + ours, by_chart + chart
    table("engine: all", everyone, by_engine)
    table("flow chart: all", everyone, by_chart)
    if told.wrong:
        wrong = Counter((u.finding, o.finding) for u, o in zip(everyone, by_engine, strict=True) if u.finding != o.finding)
        for (truth, said), count in wrong.most_common(25):
            print(f"{count:4d}  {truth} taken for {said}")


if __name__ == "__main__":
    main()
