"""What an answer is made from: the job, its loads, and the unit that is meant."""

from dataclasses import dataclass, field, replace
from typing import Final

from core.advice import Sizing
from core.readings import Job
from core.said import Said, say
from core.sizing.loads import Budget, budget
from core.sizing.wire import Draw, loop_ohm
from core.standards.rule import Rule
from core.standards.transformer_ratings import next_size_va
from core.standards.wire_gauges import WIRE_CELSIUS


@dataclass(frozen=True, slots=True, kw_only=True)
class Told:
    """What is known, once and for all parts of the answer."""

    job: Job
    loads: Budget

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
        """The unit that is there, else the one to buy. [VA]."""
        return self.rated_va or self.pick_va

    @property
    def supply_v(self) -> float | None:
        """Nominal supply, else the tap in use. [V]."""
        return self.job.number("supply_volts") or self.job.number("tap_volts")

    @property
    def draw(self) -> Draw | None:
        """What sits at the far end of the run: the loads, else the whole rating, else nothing known."""
        if self.load_va is not None:
            return Draw(va=self.loads.va_told_as_va, amps=self.loads.load_a, rated_v=self.loads.rated_v)
        return None if self.rated_va is None else Draw(va=self.rated_va, rated_v=self.loads.rated_v)

    @property
    def celsius(self) -> float:
        """Of the copper. [degC]."""
        told = self.job.number("copper_celsius")
        return WIRE_CELSIUS if told is None else told

    @property
    def stranded(self) -> bool:
        """True where the wire was said to be stranded."""
        fact = self.job.told("stranded")
        return fact is not None and fact.value not in (0, 0.0, "no", "solid")

    @property
    def run_ohm(self) -> float:
        """Of the run there and back; 0 where no run was told. [ohm]."""
        feet, awg = self.job.number("run_feet"), self.job.number("wire_awg")
        return 0.0 if feet is None or awg is None else loop_ohm(awg, feet, self.celsius, stranded=self.stranded)


def told(job: Job) -> Told:
    """The job, made ready for sizing."""
    return Told(job=job, loads=budget(job))


@dataclass(frozen=True, slots=True, kw_only=True)
class Part:
    """What one subject of sizing adds to the answer."""

    lines: tuple[Said, ...] = ()
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
    rules = tuple(dict.fromkeys(rule.says for part in parts for rule in part.rules))
    return replace(Sizing(**numbers), rules=rules)  # type: ignore[arg-type]


MOST_RULES: Final = 3
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
