"""What hangs on the transformer: every load as it was told, and the sums that sizing needs of them."""

from dataclasses import dataclass, replace
from typing import Final

from core.readings import WHOLE, Fact, Job
from core.sizing.wire import Draw
from core.standards.device_loads import CONTROLS_V, DEVICE_LOADS, MOST_COIL_VA, DeviceLoad

GAS_HEAT: Final = frozenset({"gas valve", "inducer relay"})
MOST_CLAMPED_A: Final = 10.0
"""More amps on a secondary are a short, no load. [A]"""
HEAT_PUMP: Final = frozenset({"reversing valve", "defrost board"})


@dataclass(frozen=True, slots=True, kw_only=True)
class Part:
    """One load of the job."""

    device: str
    count: int
    va: float | None
    """Sealed, each; None where it was not told. [VA]"""
    amps: float | None = None
    """Each, where it was told in amps. [A]"""
    inrush_va: float | None = None
    """Each, while it pulls in. [VA]"""
    run: int | None = None
    """Which of several runs of wire it hangs on."""
    clamped: bool = False
    """True where it was read with a clamp, not told off a label."""

    @property
    def typical(self) -> DeviceLoad | None:
        """What such a device usually draws."""
        return DEVICE_LOADS.get(self.device)

    def is_on(self, mode: str) -> bool:
        """True where such a device draws in a mode, and where nothing is known of it."""
        row = self.typical
        return row is None or "always" in row.on or mode in row.on


@dataclass(frozen=True, slots=True, kw_only=True)
class Budget:
    """All loads of a job."""

    parts: tuple[Part, ...]
    rated_v: float

    def of_run(self, run: int | None) -> "Budget":
        """The loads of one of several runs."""
        return Budget(parts=tuple(p for p in self.parts if p.run == run), rated_v=self.rated_v)

    @property
    def draw(self) -> Draw:
        """What the known parts are to the wire that feeds them."""
        return Draw(va=self.va_told_as_va, amps=self.load_a, rated_v=self.rated_v)

    @property
    def known(self) -> tuple[Part, ...]:
        """The parts whose draw was told."""
        return tuple(p for p in self.parts if p.va is not None)

    @property
    def unknown(self) -> tuple[Part, ...]:
        """The parts whose draw is still to be read off the label."""
        return tuple(p for p in self.parts if p.va is None)

    @property
    def load_va(self) -> float | None:
        """The sealed sum of the known parts, or None without any. [VA]."""
        return sum((p.va or 0.0) * p.count for p in self.known) if self.known else None

    @property
    def load_a(self) -> float:
        """Of the known parts, those told in amps. [A]."""
        return sum((p.amps or 0.0) * p.count for p in self.known)

    @property
    def va_told_as_va(self) -> float:
        """Of the known parts, those not told in amps. [VA]."""
        return sum((p.va or 0.0) * p.count for p in self.known if p.amps is None)

    @property
    def inrush_va(self) -> float | None:
        """The largest known inrush with everything else sealed, or None where no inrush is known. [VA]."""
        peaks = [p.inrush_va - (p.va or 0.0) for p in self.known if p.inrush_va is not None]
        return None if not peaks or self.load_va is None else self.load_va + max(peaks)

    @property
    def typical_inrush_va(self) -> tuple[float, float] | None:
        """What the largest inrush usually is where none was told, low and high. [VA]."""
        rows = [(p.va or 0.0, p.typical) for p in self.known if p.inrush_va is None and p.typical is not None]
        coils = [(va, row) for va, row in rows if row.inrush_high > 1.0]
        if not coils or self.load_va is None:
            return None
        return (
            self.load_va + max(va * (row.inrush_low - 1.0) for va, row in coils),
            self.load_va + max(va * (row.inrush_high - 1.0) for va, row in coils),
        )

    @property
    def missing_va(self) -> tuple[float, float]:
        """What the unknown parts usually draw together, low and high; those of no known kind left out. [VA]."""
        rows = [(p.count, p.typical) for p in self.unknown if p.typical is not None]
        return sum(n * row.low_va for n, row in rows), sum(n * row.high_va for n, row in rows)

    def of_mode(self, mode: str) -> "Budget":
        """The parts that are on in a mode, those without a figure included."""
        burns_gas = self._burns_gas()
        parts = tuple(
            p for p in self.parts if not (burns_gas and p.device == "contactor" and mode != "cooling") and p.is_on(mode)
        )
        return Budget(parts=parts, rated_v=self.rated_v)

    def by_mode(self) -> dict[str, float]:
        """The known parts that are on together, by mode. [VA]."""
        return {mode: self.of_mode(mode).load_va or 0.0 for mode in ("cooling", "heating", "defrost")}

    @property
    def worst_mode(self) -> tuple[str, float]:
        """The mode with the largest sum, and that sum. [VA]."""
        return max(self.by_mode().items(), key=lambda item: item[1])

    def _burns_gas(self) -> bool:
        """True for a furnace with an air conditioner: its contactor is off while it heats. A heat pump's is not."""
        names = {part.device for part in self.parts}
        return bool(names & GAS_HEAT) and not names & HEAT_PUMP

    def doubtful(self) -> Part | None:
        """A single coil that is said to draw more than a coil can, or None."""
        return next((p for p in self.known if (p.va or 0.0) > MOST_COIL_VA and p.device != WHOLE), None)


def on_the_wire(job: Job) -> Budget:
    """
    The loads at the end of the wire: those that this message names beside a run, else all.

    Args:
        job: What is known.
    """
    named = tuple(fact for fact in job.new if fact.fact == "load")
    about_a_run = any(fact.fact in {"run_feet", "wire_awg"} for fact in job.new)
    return budget(replace(job, facts=(*(f for f in job.facts if f.fact != "load"), *named)) if named and about_a_run else job)


def budget(job: Job) -> Budget:
    """
    The loads of a job.

    Args:
        job: What is known.

    Returns:
        Every load with its VA; amps become VA at the rated secondary volts, watts count as VA.

    >>> told = (Fact(fact="load", device="contactor", count=2, value=9.0), Fact(fact="load", device="gas valve", value=0.5, unit="A"))
    >>> budget(Job(facts=told)).load_va
    30.0
    """
    rated_v = job.number("rated_secondary_volts") or CONTROLS_V
    parts = tuple(_part(fact, rated_v) for fact in job.every("load"))
    return Budget(parts=parts or _clamped(job, rated_v), rated_v=rated_v)


def _clamped(job: Job, rated_v: float) -> tuple[Part, ...]:
    """The load by the clamp, where a size is asked for and no device was told."""
    read = job.last("secondary_amps") if "size" in job.asks else None
    if read is None or not isinstance(read.value, int | float) or not 0.0 < read.value <= MOST_CLAMPED_A:
        return ()
    return (Part(device=WHOLE, count=1, va=float(read.value) * rated_v, amps=float(read.value), clamped=True),)


def _part(fact: Fact, rated_v: float) -> Part:
    value = float(fact.value) if isinstance(fact.value, int | float) else None
    in_amps = fact.unit == "A" and value is not None
    return Part(
        device=fact.device or WHOLE,
        count=1 if fact.count is None else fact.count,
        va=value * rated_v if in_amps and value is not None else value,
        amps=value if in_amps else None,
        inrush_va=fact.inrush,
        run=fact.run,
    )
