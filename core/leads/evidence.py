"""All that a job tells about its leads, sorted by kind."""

from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from typing import Final

from core.readings import OPEN, Job, Reading
from core.standards.lead_colours import COLOURS

GROUND: Final = "ground"
LEAK_OHM: Final = 3000.0
"""No winding of this trade reads more: above it two windings, or wet fingers, read each other through a leak. Common practice."""
LEAK_FROM_OHM: Final = 1000.0
LEAK_TIMES: Final = 8.0
"""From a kilohm up, a reading so many times over all others is a leak as well."""
_DEAD_PAIRS: Final = frozenset({"lead_ohms", "primary_ohms", "secondary_ohms", "primary_secondary_ohms"})
_SAYS: Final = {"primary_ohms": "primary", "secondary_ohms": "secondary"}
_TAP_MARKS: Final = frozenset({"120", "208", "240", "277", "480"})
_COMMON_MARKS: Final = frozenset({"com", "common", "comm"})

Pair = tuple[str, str]


def pair(a: str, b: str) -> Pair:
    """Two leads in the order that names the pair, whichever way it was read."""
    return (a, b) if a <= b else (b, a)


@dataclass(frozen=True, slots=True, kw_only=True)
class Evidence:
    """What is known of the leads."""

    leads: tuple[str, ...]
    """In the order in which they were first named."""
    ohms: Mapping[Pair, float]
    opens: frozenset[Pair]
    leaks: Mapping[Pair, float]
    """Kilohms between leads: read as open for the map, and to be read again."""
    volts: Mapping[Pair, float]
    labels: Mapping[str, str]
    """Lead to role, as a label or the technician says."""
    sides: Mapping[str, str]
    """Lead to `primary` or `secondary`, by its mark or by the measure it was read with."""
    grounded: Mapping[str, float]
    """Leads that read ohms to the core."""
    taps: tuple[float, ...]
    rated_va: float | None
    secondary_v: float
    supply_v: float | None
    secondary_ohm: float | None
    """Read across the secondary without naming its leads."""
    in_use: str | None
    """The tap lead that was landed."""
    in_use_v: float | None
    not_isolated: frozenset[Pair]
    repeated: frozenset[Pair] = frozenset()
    """Pairs whose ohms were read twice and came out the same."""
    contradicted: frozenset[Pair] = frozenset()
    """Pairs given as open though both leads read ohms to others that hold together: "the rest OL" was said too widely."""

    def open_between(self, a: str, b: str) -> bool:
        """True where the two leads read open, or kilohms."""
        key = pair(a, b)
        return key in self.opens or key in self.leaks


def gather(job: Job) -> Evidence:
    """
    Sort what a job tells of its leads.

    Args:
        job: What is known of the job.

    Returns:
        The evidence; a later reading of a pair replaces the earlier one.
    """
    dead = _latest(r for r in job.readings if r.measure in _DEAD_PAIRS and _between_leads(r))
    live = _latest(r for r in job.readings if r.measure == "lead_volts" and _between_leads(r))
    labels = _labels(job)
    finite = {p: float(r.value) for p, r in dead.items() if r.value != OPEN}
    leaks = _leaks(finite)
    told = job.told("tap_lead")
    in_use = str(told.value) if told is not None and told.value is not None else None
    names = [n for r in job.readings if r.leads and r.measure in _DEAD_PAIRS | {"lead_volts"} for n in r.leads]
    names += [*labels, *([in_use] if in_use else [])]
    leads = tuple(dict.fromkeys(n for n in names if n != GROUND))
    opens = frozenset(p for p, r in dead.items() if r.value == OPEN)
    return Evidence(
        leads=leads,
        ohms={p: ohm for p, ohm in finite.items() if p not in leaks},
        opens=opens,
        leaks=leaks,
        volts={p: float(r.value) for p, r in live.items() if r.value != OPEN},
        labels=labels | _written_on(leads),
        sides=_sides(job.readings, leads),
        grounded=_grounded(job.readings),
        taps=_nameplate(job),
        rated_va=job.number("rated_va"),
        secondary_v=job.number("rated_secondary_volts") or 24.0,
        supply_v=job.number("supply_volts"),
        secondary_ohm=_unnamed_secondary(job),
        in_use=in_use,
        in_use_v=job.number("tap_volts"),
        not_isolated=frozenset(p for p, r in dead.items() if r.not_isolated),
        repeated=_repeated(job.readings, dead),
        contradicted=_contradicted(opens, (p for p in finite if p not in leaks)),
    )


def blocks(leads: Iterable[str], pairs: Iterable[Pair]) -> tuple[tuple[str, ...], ...]:
    """Leads that hold together by ohms."""
    block = {lead: lead for lead in leads}
    for a, b in pairs:
        old, new = block[b], block[a]
        block = {lead: new if name == old else name for lead, name in block.items()}
    return tuple(tuple(lead for lead, its in block.items() if its == name) for name in dict.fromkeys(block.values()))


def _contradicted(opens: frozenset[Pair], finite: Iterable[Pair]) -> frozenset[Pair]:
    pairs = tuple(finite)
    together = [set(block) for block in blocks(dict.fromkeys(lead for p in pairs for lead in p), pairs)]
    return frozenset(p for p in opens if any(block.issuperset(p) for block in together))


def _between_leads(reading: Reading) -> bool:
    return reading.leads is not None and GROUND not in reading.leads and reading.leads[0] != reading.leads[1]


def _latest(readings: Iterable[Reading]) -> dict[Pair, Reading]:
    return {pair(*r.leads): r for r in readings if r.leads is not None}


def _repeated(readings: Iterable[Reading], latest: Mapping[Pair, Reading]) -> frozenset[Pair]:
    """Pairs of which an earlier reading says what the last one does."""
    again = {p for p, r in latest.items() if r.repeated}
    earlier = [(pair(*r.leads), r) for r in readings if r.leads and r.measure in _DEAD_PAIRS]
    return frozenset(again | {p for p, r in earlier if p in latest and r is not latest[p] and latest[p].agrees(r)})


def _leaks(finite: Mapping[Pair, float]) -> dict[Pair, float]:
    """Readings of kilohms that no winding has."""
    sound = [ohm for ohm in finite.values() if ohm < LEAK_FROM_OHM]
    least = min(LEAK_OHM, LEAK_TIMES * max(sound)) if sound else LEAK_OHM
    return {p: ohm for p, ohm in finite.items() if ohm >= max(least, LEAK_FROM_OHM)}


def _labels(job: Job) -> dict[str, str]:
    return {f.lead: _plain(f.role) for f in job.every("lead_is") if f.lead and f.role and f.lead != GROUND}


def _plain(role: str) -> str:
    """A label's role as the map names it: `240.0 V` is `240`."""
    text = role.lower().removesuffix("v").strip()
    return text.removesuffix(".0")


def _written_on(leads: Iterable[str]) -> dict[str, str]:
    """Marks that are labels by themselves."""
    taps = {n: n for n in leads if n in _TAP_MARKS}
    return taps | {n: "common" for n in leads if n in _COMMON_MARKS}


def _sides(readings: Iterable[Reading], leads: Iterable[str]) -> dict[str, str]:
    marks = {n: "primary" if n[:1] == "h" else "secondary" for n in leads if is_marked(n)}
    read = {n: _SAYS[r.measure] for r in readings if r.leads and r.measure in _SAYS for n in r.leads if n != GROUND}
    return read | marks


def is_marked(lead: str) -> bool:
    """True for H1, X2 and their like, the marks of higher and lower windings."""
    return lead not in COLOURS and lead[:1] in {"h", "x"} and lead[1:].isdigit()


def _grounded(readings: Iterable[Reading]) -> dict[str, float]:
    found: dict[str, float] = {}
    for r in readings:
        if r.leads is not None and GROUND in r.leads and r.measure == "lead_ohms":
            lead = next((n for n in r.leads if n != GROUND), GROUND)
            found.pop(lead, None)
            if r.value != OPEN:
                found[lead] = float(r.value)
    return found


def _nameplate(job: Job) -> tuple[float, ...]:
    told = job.told("nameplate_taps")
    if told is None or told.value is None:
        return ()
    values = told.value if isinstance(told.value, tuple | list) else (told.value,)
    return tuple(sorted({float(v) for v in values}))


def _unnamed_secondary(job: Job) -> float | None:
    last = job.last("secondary_ohms")
    return float(last.value) if last is not None and last.leads is None and last.value != OPEN else None
