"""What an answer is made from: the job, its loads, and the unit that is meant."""

from dataclasses import dataclass, field, replace
from typing import Final

from core.advice import Sizing
from core.readings import WHOLE, Job
from core.said import Said, say
from core.sizing.loads import Budget, budget, on_the_wire
from core.sizing.runs import Run, in_a_row, runs
from core.sizing.wire import Copper, Draw
from core.standards.grounding import SUPPLIES
from core.standards.rule import Rule
from core.standards.source import COMMON_PRACTICE
from core.standards.transformer_ratings import next_size_va
from core.standards.wire_gauges import WIRE_CELSIUS

LIKE_NOMINAL: Final = 0.05
"""How far a line may be read off the supply that it is taken for. Common practice, no source."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Told:
    """What is known, once and for all parts of the answer."""

    job: Job
    loads: Budget
    wired: Budget
    """The loads at the end of the wire."""
    at_once: tuple[str, float] | None = None
    """Where only the loads of one mode count, since they never run together: the mode, and the sum of all loads. [VA]"""
    modes: tuple[tuple[Budget, Budget], ...] = ()
    """Then also the loads of each mode, all of them and those on the wire: the coils of every mode have to pull in."""
    runs: tuple[Run, ...] = ()
    """Where there are several."""

    @property
    def rated_va(self) -> float | None:
        """The nameplate, where told. [VA]."""
        return self.job.number("rated_va")

    @property
    def load_va(self) -> float | None:
        """The sealed sum of the known parts. [VA]."""
        return self.loads.load_va

    @property
    def pick_va(self) -> float | None:
        """The size for the load, or None without a load or over 100 VA. [VA]."""
        return None if self.load_va is None else next_size_va(self.load_va)

    @property
    def unit_va(self) -> float | None:
        """The unit that is to be put in, else the one that is there, else the one to buy. [VA]."""
        return self.job.meant_va or self.rated_va or self.pick_va

    @property
    def likely_va(self) -> float | None:
        """The unit that is there if it carries the load, else the one to buy where the parts without a figure draw what such parts do on the whole. [VA]."""
        if self.load_va is None:
            return self.unit_va
        if self.rated_va is not None:
            return self.rated_va if self.load_va <= self.rated_va else self.pick_va or self.rated_va
        return next_size_va(self.load_va + sum(self.loads.missing_va) / 2.0)

    @property
    def supply_v(self) -> float | None:
        """Nominal supply, else the tap in use, else the usual supply that the line reads like. [V]."""
        told = self.job.number("supply_volts") or self.job.number("tap_volts")
        line = self.job.figure("line_volts")
        if told is not None or line is None:
            return told
        row = min(SUPPLIES, key=lambda usual: abs(usual.supply_v - line))
        return row.supply_v if abs(row.supply_v - line) <= LIKE_NOMINAL * row.supply_v else None

    @property
    def phase_reading(self) -> float | None:
        """Volts from the R of one unit to that of another, where this message brought them. [V]."""
        return phase_volts(self.job)

    @property
    def is_addition(self) -> bool:
        """True where all that is known of the load is what is to be added to a unit that carries others. [-]."""
        named = [fact for fact in self.job.new if fact.fact == "load"]
        everything = len(named) == len(self.loads.parts) and all(fact.device != WHOLE for fact in named)
        return "added" in self.job.topics and self.rated_va is not None and bool(named) and everything

    @property
    def fuse_a(self) -> float | None:
        """The fuse that this message speaks of: one of an earlier message was judged then. [A]."""
        return self.job.number("fuse_amps") if "fuse_amps" in self.job.fresh else None

    @property
    def fuses_a(self) -> tuple[float, ...]:
        """All fuses that this message speaks of: "keep the 3 or go 5". [A]."""
        told = [fact.value for fact in self.job.new if fact.fact == "fuse_amps" and isinstance(fact.value, int | float)]
        return tuple(dict.fromkeys(float(value) for value in told)) or (() if self.fuse_a is None else (self.fuse_a,))

    @property
    def draw(self) -> Draw | None:
        """What sits at the far end of the run: the loads, else the whole rating, else nothing known."""
        if self.wired.load_va is not None:
            return self.wired.draw
        return None if self.rated_va is None else Draw(va=self.rated_va, rated_v=self.loads.rated_v)

    @property
    def is_about_size(self) -> bool:
        """False where only a run or two units together are asked about: the load is then a means, no question."""
        asks = set(self.job.asks)
        return not asks & {"wire_run", "parallel"} or bool(asks & {"size", "fuse"})

    @property
    def copper(self) -> Copper:
        """The kind of wire told, else solid at the temperature of the table."""
        celsius, kind = self.job.number("copper_celsius"), self.job.told("stranded")
        return Copper(
            celsius=WIRE_CELSIUS if celsius is None else celsius,
            stranded=kind is not None and kind.value not in (0, 0.0, "no", "solid"),
        )

    @property
    def feet(self) -> float | None:
        """One way; of several lengths on one common the longest. [ft]."""
        lengths = [float(f.value) for f in self.job.every("run_feet") if isinstance(f.value, int | float)]
        return max(lengths, default=None) if "shared_common" in self.job.topics else self.job.number("run_feet")

    @property
    def wire_awg(self) -> float | None:
        """The gauge told. [AWG]."""
        return self.job.number("wire_awg")

    @property
    def run_ohm(self) -> float:
        """Of the run there and back, or of all pieces in a row; 0 where no run was told. [ohm]."""
        if self.runs:
            return sum(run.ohm for run in self.runs) if in_a_row(self.runs) else 0.0
        feet, awg = self.feet, self.wire_awg
        return 0.0 if feet is None or awg is None else self.copper.loop_ohm(awg, feet)


def phase_volts(job: Job) -> float | None:
    """
    Volts between two leads of one name: those of two units, as in "R to R 48 V".

    Args:
        job: What is known.
    """
    if "lead_volts" not in job.fresh:
        return None
    read = job.last("lead_volts")
    if read is None or not read.is_of_two_units or not isinstance(read.value, int | float):
        return None
    return float(read.value)


def told(job: Job) -> Told:
    """The job, made ready for sizing."""
    facts = _at_once(Told(job=job, loads=budget(job), wired=on_the_wire(job)))
    return replace(facts, runs=runs(job, facts.wired, facts.copper))


def _at_once(facts: Told) -> Told:
    """The same with the loads of the worst mode alone, where the technician says that cooling and heating never run together."""
    everything = facts.load_va
    if "apart" not in facts.job.topics or everything is None:
        return facts
    mode, worst = facts.loads.worst_mode
    if not 0.0 < worst < everything:
        return facts
    modes = tuple((facts.loads.of_mode(name), facts.wired.of_mode(name)) for name in facts.loads.by_mode())
    loads, wired = facts.loads.of_mode(mode), facts.wired.of_mode(mode)
    return replace(facts, loads=loads, wired=wired, at_once=(mode, everything), modes=modes)


@dataclass(frozen=True, slots=True, kw_only=True)
class Part:
    """What one subject of sizing adds to the answer."""

    lines: tuple[Said, ...] = ()
    """What is said in any case, the most important first."""
    more: tuple[Said, ...] = ()
    """What is said behind the lines of all parts, where there is room."""
    numbers: dict[str, float | bool | None] = field(default_factory=dict)
    """By the names of `Sizing`."""
    rules: tuple[Rule, ...] = ()
    cautions: tuple[str, ...] = ()
    picture: str | None = None


def record(parts: tuple[Part, ...]) -> Sizing:
    """
    The numbers and rules of all parts in one record.

    Args:
        parts: What each subject adds; of two that name a number the first counts.
    """
    numbers: dict[str, float | bool | None] = {}
    for part in parts:
        for name, value in part.numbers.items():
            if numbers.get(name) is None:
                numbers[name] = value
    # What is published stands before what is only usual: a reply has room for a few.
    ranked = sorted((rule for part in parts for rule in part.rules), key=lambda rule: rule.source is COMMON_PRACTICE)
    rules = tuple(dict.fromkeys(rule.says for rule in ranked))
    return replace(Sizing(**numbers), rules=rules)  # type: ignore[arg-type]


MOST_RULES: Final = 2
"""How many rules a reply names; the record names all."""


def rule_line(rules: tuple[Said, ...]) -> Said | None:
    """
    The rules of an answer in one line, with the reminder that local code stands above them.

    Args:
        rules: Their short names.
    """
    if not rules:
        return None
    names = rules[0]
    for rule in rules[1:MOST_RULES]:
        names = say("{first}; {more}", first=names, more=rule)
    return say("Rule: {names}. Local code decides", names=names)
