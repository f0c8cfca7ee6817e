"""What a technician can tell: readings, facts, and the job they belong to. The grammar fills these records and all of core takes them."""

from dataclasses import dataclass, field
from typing import TYPE_CHECKING, Final, Literal

if TYPE_CHECKING:
    from core.heard.record import Heard

OPEN: Final = "open"
"""A resistance over the meter's range."""

Value = float | Literal["open"]


@dataclass(frozen=True, slots=True, kw_only=True)
class Reading:
    """One measured value."""

    measure: str
    """A name of `core.measures.MEASURES`."""
    value: Value
    """In the measure's unit, or `"open"`."""
    leads: tuple[str, str] | None = None
    """The two leads, where they were named."""
    assumed: bool = False
    """True where place or unit had to be guessed."""
    low_impedance: bool = False
    """True where it was taken in the meter's low-impedance mode, so that a ghost voltage would have collapsed."""
    not_isolated: bool = False
    """True where the technician said that the part was still connected."""
    loaded: bool = False
    """True where the technician said, or was told, to have everything called while reading."""
    repeated: bool = False
    """True where an earlier reading of the same place came out the same."""
    before: Value | None = field(default=None, compare=False)
    """What was read there the time before, where it was read twice: a second opinion, and no other reading."""

    @property
    def is_of_two_units(self) -> bool:
        """True for volts between the R of one transformer and that of another: no winding lies between two leads of one name."""
        return (
            self.measure == "lead_volts"
            and self.leads is not None
            and (self.leads[0] == self.leads[1] or set(self.leads) == {"r1", "r2"})
        )

    def agrees(self, earlier: "Reading") -> bool:
        """
        Whether an earlier reading of the same place came out the same, as far as a hand meter repeats itself.

        Args:
            earlier: The reading before.
        """
        if OPEN in {self.value, earlier.value}:
            return self.value == earlier.value
        share = _SAME_LEAK if float(self.value) >= _LEAK else _SAME_SHARE
        return abs(float(self.value) - float(earlier.value)) <= _SAME_BY + share * float(self.value)


_SAME_BY: Final = 0.4
_SAME_SHARE: Final = 0.04
"""Two readings agree within so many ohms or volts and this share: tips sit otherwise each time. Common practice, no source."""
_LEAK: Final = 1000.0
_SAME_LEAK: Final = 0.25
"""Leaks are less steady. Common practice, no source."""


WHOLE: Final = "load"
"""The device of a load that was told as one sum."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Fact:
    """One thing told and not measured."""

    fact: str
    """A name of `FACTS`."""
    value: float | str | tuple[float, ...] | None = None
    """In `unit`; VA or A each for a load; a list of primary volts for `nameplate_taps`."""
    unit: str | None = None
    device: str | None = None
    """For a load: the English name of the device."""
    count: int | None = None
    """For a load: how many of them."""
    lead: str | None = None
    """For `lead_is`."""
    role: str | None = None
    """For `lead_is`: `common`, `secondary`, `ground`, or a tap's volts as text."""
    inrush: float | None = None
    """For a load: VA while it pulls in, where told. [VA]"""
    run: int | None = None
    """For a load, a length or a gauge: which of several runs of wire it belongs to, from 1; None where the message has one run only."""


FACTS: Final = {
    "supply_volts": "V",
    "tap_volts": "V",
    "tap_lead": None,
    "rated_va": "VA",
    "rated_secondary_volts": "V",
    "load": "VA",
    "run_feet": "ft",
    "wire_awg": "AWG",
    "fuse_amps": "A",
    "lead_is": None,
    "nameplate_taps": "V",
    "copper_celsius": "degC",
    "stranded": None,
    "core_inches": "in",
    "supply_hertz": "Hz",
    "symptom": None,
}
"""Every fact with the unit of its value."""

SYMPTOMS: Final = (
    "no_control_power", "intermittent", "hot", "hum", "burnt", "blows_fuse", "trips_breaker", "chatter", "blown_fuse",
    "shock", "smoke",
)  # fmt: skip
"""The values of the fact `symptom`."""

ASKS: Final = (
    "which_lead", "tap", "size", "fuse", "wire_run", "parallel", "expect", "va_estimate", "why", "next", "undo", "correct",
    "new_job", "report", "history", "forget", "help", "cannot", "yes", "no", "language", "winding_picture", "prove",
    "resume_job", "list_jobs", "close_job", "hand_over", "export", "all_well", "invite", "start", "settings",
)  # fmt: skip
"""Everything that can be asked for. `cannot`: the test just asked can't be done. `prove`: readings after installing."""

TOPICS: Final = (
    "line_fuse", "low_fuse", "bigger_unit", "multi_tap", "unit_50_hertz", "unit_60_hertz", "both_hertz", "shared_common", "class_2", "added", "amps", "apart", "capacity",
)  # fmt: skip
"""What the words of a message narrow its question down to. `line_fuse`, `low_fuse`: which side the fuse is on. `bigger_unit`,
`multi_tap`: what is to take the place of the unit that is there. `unit_50_hertz`: a unit for 50 Hz on another supply. `both_hertz`: one marked for either. `amps`: what a unit or a load draws on either side.
`apart`: the loads of cooling and of heating never run together. `capacity`: how much, or how many of a device, a unit carries."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Job:
    """What is known of one job at one moment: all that still stands, in the order it was told."""

    readings: tuple[Reading, ...] = ()
    facts: tuple[Fact, ...] = ()
    asks: tuple[str, ...] = ()
    """Of the message being answered, not of earlier ones."""
    fresh: frozenset[str] = frozenset()
    """Names of the measures and facts that the message being answered brought, and of what it says was put right."""
    declined: frozenset[tuple[str, tuple[str, str] | None]] = frozenset()
    """Tests (measure, leads) and facts (fact, None) that the technician said can't be had: never asked again."""
    dangers: tuple[str, ...] = ()
    """Names of dangers that the words of this message showed."""
    qualified: bool | None = None
    """True where the technician said to be qualified for work over 300 V."""
    topics: tuple[str, ...] = ()
    """What the words of this message narrow its question down to; names of `TOPICS`."""
    unread: bool = False
    """True where something with a number in it was not understood in this message."""
    unknown_loads: tuple[str, ...] = ()
    """What this message names where a device would stand, and is none that is known here, in its own words."""
    asked_device: str | None = None
    """The device of which this message asks how many the unit carries."""
    new: tuple[Fact, ...] = ()
    """The facts of this message: a question about a run is about the loads that it names."""
    meant_va: float | None = None
    """The size that is to take the place of the unit that is there, as this message asks. [VA]"""
    heard: tuple["Heard", ...] = ()
    """What this message told that is no measure and decides the call."""
    put_right: frozenset[str] = frozenset()
    """Names of `core.repairs.REPAIRS`: the parts whose repair the readings are to prove; empty where the transformer is new."""
    asks_cause: bool = False
    """True where the why that is asked is what made it fail."""

    def last(self, measure: str) -> Reading | None:
        """The latest reading of a measure, or None."""
        return next((r for r in reversed(self.readings) if r.measure == measure), None)

    def figure(self, measure: str) -> float | None:
        """The latest reading of a measure as a number in its unit, or None where it was not read or is open."""
        reading = self.last(measure)
        return float(reading.value) if reading is not None and reading.value != OPEN else None

    def told(self, fact: str) -> Fact | None:
        """The latest fact of a name, or None."""
        return next((f for f in reversed(self.facts) if f.fact == fact), None)

    def number(self, fact: str) -> float | None:
        """The latest value of a fact that is a number, or None."""
        told = self.told(fact)
        return float(told.value) if told is not None and isinstance(told.value, int | float) else None

    def every(self, fact: str) -> tuple[Fact, ...]:
        """All facts of a name, in order."""
        return tuple(f for f in self.facts if f.fact == fact)

    def symptoms(self) -> frozenset[str]:
        """The symptoms told so far."""
        return frozenset(str(f.value) for f in self.facts if f.fact == "symptom")
