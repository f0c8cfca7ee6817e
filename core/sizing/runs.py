"""Several runs of wire in one message: each with its own loads, or laid end to end to one far load."""

from dataclasses import dataclass

from core.readings import Fact, Job
from core.sizing.loads import Budget
from core.sizing.wire import Copper, volts_left


@dataclass(frozen=True, slots=True, kw_only=True)
class Run:
    """One run of wire, its length and gauge known."""

    feet: float
    """One way. [ft]"""
    awg: float
    loads: Budget
    ohm: float
    """There and back. [ohm]"""

    @property
    def volts(self) -> float:
        """At its far end, from full volts at the transformer. [V]."""
        return volts_left(self.loads.draw, self.ohm)


def runs(job: Job, loads: Budget, copper: Copper) -> tuple[Run, ...]:
    """
    The runs of a job that has several.

    Args:
        job: What is known.
        loads: All its loads.
        copper: The kind of wire.

    Returns:
        Each run in the order told; none where there is one run only, or no gauge at all.
    """
    lengths = [f for f in job.every("run_feet") if f.run is not None]
    gauges = [f for f in job.every("wire_awg") if isinstance(f.value, int | float)]
    if len(lengths) <= 1 or not gauges or "shared_common" in job.topics:  # on one common it is one run, as long as its longest
        return ()
    return tuple(_run(fact, gauges, loads, copper) for fact in lengths)


def _run(length: Fact, gauges: list[Fact], loads: Budget, copper: Copper) -> Run:
    """A run with its own gauge, else with the one that was told for another."""
    own = next((f for f in gauges if f.run == length.run), gauges[-1])
    feet, awg = float(str(length.value)), float(str(own.value))
    return Run(feet=feet, awg=awg, loads=loads.of_run(length.run), ohm=copper.loop_ohm(awg, feet))


def in_a_row(found: tuple[Run, ...]) -> bool:
    """
    True where the pieces lie end to end: a run to nowhere makes no sense, so where only one of them has a load, it ends there.

    Args:
        found: Runs of one message.
    """
    return sum(bool(run.loads.parts) for run in found) <= 1
