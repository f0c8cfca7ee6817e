"""What people do today: primary volts, secondary volts, then isolate and ohm it out. Fixed limits, no belief."""

from dataclasses import dataclass

from core.readings import Reading
from tests.benchmarks.fourth_world import hand as fourth
from tests.benchmarks.second_world import hand as second
from tests.benchmarks.technician.hand import Technician
from tests.benchmarks.third_world import hand as third


@dataclass
class Outcome:
    """What came out of a call."""

    finding: str
    transformer: str
    tests: int
    confidence: float = 1.0
    also: tuple[str, ...] = ()
    cpu_ms: tuple[float, ...] = ()


def number(reading: Reading | None) -> float:
    """The value, open as a very large one."""
    if reading is None:
        return float("nan")
    return 1e12 if reading.value == "open" else float(reading.value)


def flow_chart(t: Technician | second.Technician | third.Technician | fourth.Technician) -> Outcome:  # noqa: C901, PLR0911 - a flow chart branches
    """One call by the chart."""
    supply, count = t.u.supply, [0]

    def read(measure: str) -> float:
        count[0] += 1
        return number(t.read(measure))

    def done(finding: str, transformer: str = "good") -> Outcome:
        return Outcome(finding, transformer, count[0])

    primary = read("primary_volts")
    if primary < 0.5 * supply:
        return done("no_supply" if read("line_volts") < 0.5 * supply else "loose_line")
    if primary < 0.9 * supply:
        return done("low_supply" if read("line_volts") < 0.9 * supply else "loose_line")
    if primary > 1.1 * supply:
        return done("low_supply")
    secondary = read("secondary_volts")
    if secondary < 5:
        if read("primary_ohms") > 1e5:
            return done("primary_open", "bad")
        if read("secondary_ohms") > 1e5:
            return done("secondary_open", "bad")
        return done("load_short")
    if secondary > 31:
        return done("wrong_tap")
    if secondary < 22:
        return done("overload" if read("secondary_volts_lifted") > 24 else "secondary_shorted_turns", "good")
    if read("control_volts") > 0.85 * secondary:
        return done("healthy")
    return done("protection_open" if t.u.fused and read("fuse_volts") > 5 else "control_open")
