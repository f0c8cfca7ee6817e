"""Which leads belong to one winding: who reads ohms to whom, where an open inside a winding may part it, which reading may be a slip."""

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass
from itertools import combinations
from math import log
from typing import Final

from core.leads.evidence import Evidence, Pair, blocks
from core.leads.meter import slip_density
from core.leads.order_along_winding import MOST_LEADS
from core.leads.tap_sets import MISSED_CONTACT, OPEN_SECTION, SAID_TOO_WIDELY, SLIP

MOST_BLOCKS: Final = 7
MOST_GROUPINGS: Final = 16
"""How many ways to share out the leads are looked at; with few readings there are hundreds, and none of them is sure."""
_UNREAD_LINK: Final = log(0.5)
"""Weight of two parts being one winding where nobody read between them."""
_MIXED: Final = log(0.05)
"""Weight of a winding some of whose leads are labelled primary and some secondary."""
_STRAY: Final = log(0.02)
"""Weight of a lead whose winding can't be said yet."""
_LONE: Final = log(1e-4)
"""The same where it reads open to every other lead: no lead comes out of nowhere."""


@dataclass(frozen=True, slots=True)
class Group:
    """Leads of one winding."""

    leads: tuple[str, ...]
    fragments: tuple[frozenset[str], ...] = ()
    """Where the winding is open inside: the parts that still hold together."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Grouping:
    """One way to share out all leads among windings."""

    groups: tuple[Group, ...]
    strays: tuple[str, ...]
    slip: Pair | None
    """A reading across two windings, taken as a slip."""
    log_weight: float
    """Of the opens and of what reads across windings."""


def groupings(evidence: Evidence) -> tuple[Grouping, ...]:
    """
    Ways to share out the leads, as the readings allow.

    Args:
        evidence: What is known of the leads.

    Returns:
        At least one where there are few enough leads, those that ask least of chance first.
    """
    found: dict[tuple[frozenset[Group], Pair | None], Grouping] = {}
    for slip in (None, *_bridges(evidence)):
        together = blocks(evidence.leads, (p for p in evidence.ohms if p != slip))
        if len(together) > MOST_BLOCKS:
            continue
        for parts in _partitions(together):
            made = _grouping(parts, evidence, slip)
            if made is not None:
                found.setdefault((frozenset(made.groups), slip), made)
    best = max((g.log_weight for g in found.values()), default=0.0)
    near = sorted((g for g in found.values() if g.log_weight > best - 14.0), key=lambda g: -g.log_weight)
    return tuple(near[:MOST_GROUPINGS])


def _grouping(parts: Sequence[Sequence[tuple[str, ...]]], evidence: Evidence, slip: Pair | None) -> Grouping | None:
    groups, strays, weight, inside = [], [], 0.0, 0
    for part in parts:
        leads = tuple(lead for block in part for lead in block)
        if len(leads) == 1:
            strays.append(leads[0])
            others = [lead for lead in evidence.leads if lead != leads[0]]
            weight += _LONE if all(evidence.open_between(leads[0], lead) for lead in others) else _STRAY
            continue
        fragments = _fragments(part, evidence)
        if fragments is None or len(leads) > MOST_LEADS:
            return None
        weight += log(OPEN_SECTION) * max(0, len(fragments) - 1)
        weight += _UNREAD_LINK * (0 if fragments else len(part) - 1)
        weight += _MIXED if len({_side(lead, evidence) for lead in leads} - {None}) > 1 else 0.0
        inside += _opens_inside(fragments or (frozenset(leads),), evidence)
        groups.append(Group(leads, fragments))
    if inside:
        weight += log(SAID_TOO_WIDELY + (1.0 - SAID_TOO_WIDELY) * MISSED_CONTACT**inside)
    if slip is not None:
        weight += log(SLIP * slip_density(evidence.ohms[slip]))
    return Grouping(groups=tuple(groups), strays=tuple(strays), slip=slip, log_weight=weight)


def _side(lead: str, evidence: Evidence) -> str | None:
    """What a mark or a label says of the side of a lead."""
    label = evidence.labels.get(lead)
    if label in {"secondary", "24"} or label is None:
        return "secondary" if label else evidence.sides.get(lead)
    return "primary" if label in {"primary", "common"} or label.isdigit() else None


def _fragments(part: Sequence[tuple[str, ...]], evidence: Evidence) -> tuple[frozenset[str], ...] | None:
    """
    The parts of an open winding, nothing for a whole one, None where these blocks can't be one winding.

    Blocks that nobody read against each other may simply be one winding.
    """
    if len(part) == 1:
        return ()
    apart = [_read_open(a, b, evidence) for a, b in combinations(part, 2)]
    if not any(apart):
        return ()
    return tuple(frozenset(block) for block in part) if all(apart) and len(part) <= 3 else None


def _read_open(a: Iterable[str], b: Sequence[str], evidence: Evidence) -> bool:
    return any(evidence.open_between(x, y) for x in a for y in b)


def _opens_inside(fragments: Sequence[frozenset[str]], evidence: Evidence) -> int:
    """How many pairs of sound stretches were given as open: not touched well, or swept up by "the rest OL"."""
    return sum(evidence.open_between(a, b) for f in fragments for a, b in combinations(sorted(f), 2))


def _bridges(evidence: Evidence) -> Iterator[Pair]:
    """Readings that alone hold two parts together which otherwise read open."""
    whole = len(blocks(evidence.leads, evidence.ohms))
    for p in evidence.ohms:
        apart = blocks(evidence.leads, (q for q in evidence.ohms if q != p))
        if len(apart) == whole:
            continue
        a, b = (next(block for block in apart if lead in block) for lead in p)
        if _read_open(a, b, evidence) or (len(a) > 1 and len(b) > 1):
            yield p


def _partitions(loose: Sequence[tuple[str, ...]]) -> Iterator[list[list[tuple[str, ...]]]]:
    """All ways to put blocks together."""
    if not loose:
        yield []
        return
    first, rest = loose[0], loose[1:]
    for parts in _partitions(rest):
        yield [[first], *parts]
        for i, part in enumerate(parts):
            if len(first) + sum(map(len, part)) <= MOST_LEADS:
                yield [*parts[:i], [first, *part], *parts[i + 1 :]]
