"""What core gives back: verdict, next test, leads, sizing, and the sentences that go with them. Wording and layout are the bot's."""

from dataclasses import dataclass
from typing import Literal

from core.readings import Reading
from core.said import Said

Transformer = Literal["good", "bad", "unproven"]


@dataclass(frozen=True, slots=True, kw_only=True)
class Ranked:
    """One finding with the probability that it is the one."""

    finding: str
    probability: float


@dataclass(frozen=True, slots=True, kw_only=True)
class Reason:
    """How one reading bears on the verdict."""

    reading: Reading
    low: float | None
    """The least that the model expects under the finding, in the measure's unit; None where it expects an open."""
    high: float | None
    good_low: float | None = None
    """The least that a sound unit on this line would read there; None where that is open or nothing is known."""
    good_high: float | None = None
    speaks: Literal["for", "against", "neither"]


@dataclass(frozen=True, slots=True, kw_only=True)
class Verdict:
    """What the whole job so far says."""

    finding: str
    confidence: float
    """Probability of the finding, meant as one."""
    settled: bool
    """True when no further test could reasonably change what is done next."""
    transformer: Transformer
    also: tuple[str, ...] = ()
    """Findings that must have come with it or stand besides."""
    ranked: tuple[Ranked, ...] = ()
    """All findings, likeliest first."""
    reasons: tuple[Reason, ...] = ()
    """Likeliest to convince first."""
    repeat: Reading | None = None
    """The reading to take again, where the readings contradict each other."""


@dataclass(frozen=True, slots=True, kw_only=True)
class NextTest:
    """The one thing to find out next."""

    measure: str
    instruction: Said
    leads: tuple[str, str] | None = None
    fact: str | None = None
    """Set where a fact would tell more than the measure: the instruction then asks for it in words."""
    buttons: tuple[Said, ...] = ()
    """Likely answers, short, as they would be typed."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Winding:
    """Leads of one winding with what each is."""

    role: Literal["primary", "secondary", "unknown"]
    leads: tuple[tuple[str, str], ...]
    """(lead, role), from the common end outward: `common`, a tap's volts as text, `ct`, `unknown`."""


@dataclass(frozen=True, slots=True, kw_only=True)
class LeadAlternative:
    """Another map that the readings allow."""

    windings: tuple[Winding, ...]
    probability: float


@dataclass(frozen=True, slots=True, kw_only=True)
class Landing:
    """Which lead to land for the supply."""

    supply_volts: float
    lead: str | None
    cap: tuple[str, ...]
    volts_out: tuple[float, float] | None
    fits: bool
    sure: float = 1.0
    """Probability that line goes on the right leads: more than that of the map where it doesn't matter which end is common."""


@dataclass(frozen=True, slots=True, kw_only=True)
class LeadMap:
    """Which lead is which."""

    windings: tuple[Winding, ...]
    confidence: float
    """Probability that the whole map is right."""
    alternatives: tuple[LeadAlternative, ...] = ()
    confirm: NextTest | None = None
    land: Landing | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class Sizing:
    """What to buy and how to put it in. Each number is None where it was not asked or not known."""

    load_va: float | None = None
    inrush_va: float | None = None
    pick_va: float | None = None
    secondary_amps: float | None = None
    primary_amps: float | None = None
    fuse_amps: float | None = None
    primary_fuse_amps: float | None = None
    class2: bool | None = None
    drop_volts: float | None = None
    volts_at_load: float | None = None
    longest_feet: float | None = None
    output_volts: float | None = None
    refused: Said | None = None
    rules: tuple[Said, ...] = ()


@dataclass(frozen=True, slots=True, kw_only=True)
class Answer:
    """What one part of core says to the job: its sentences, the cautions that belong to them, and its record."""

    lines: tuple[Said, ...] = ()
    """In the order they are to be read, the one that matters most first."""
    cautions: tuple[str, ...] = ()
    """Names of `core.cautions.CAUTIONS` that belong to what the lines or the next test ask for."""
    next_test: NextTest | None = None
    verdict: Verdict | None = None
    leads: LeadMap | None = None
    sizing: Sizing | None = None
    picture: str | None = None
    """Name of a picture that shows it: `leads`, `step_down`, `load_budget`, `wire_run`, `circuit`."""
