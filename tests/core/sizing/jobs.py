"""Jobs for the tests of sizing, short to write."""

from core.advice import Answer, Sizing
from core.readings import Fact, Job, Reading
from core.sizing import size


def load(
    device: str, value: float | None = None, *, count: int = 1, unit: str | None = None, inrush: float | None = None
) -> Fact:
    """One load."""
    return Fact(fact="load", device=device, count=count, value=value, unit=unit, inrush=inrush)


def fact(name: str, value: float) -> Fact:
    """One fact with a number."""
    return Fact(fact=name, value=value)


def job(*told: Fact | Reading, asks: tuple[str, ...] = (), topics: tuple[str, ...] = ()) -> Job:
    """A job of one message."""
    facts = tuple(t for t in told if isinstance(t, Fact))
    readings = tuple(t for t in told if isinstance(t, Reading))
    fresh = frozenset({f.fact for f in facts} | {r.measure for r in readings})
    return Job(facts=facts, readings=readings, asks=asks, fresh=fresh, topics=topics, new=facts)


def answered(*told: Fact | Reading, asks: tuple[str, ...] = (), topics: tuple[str, ...] = ()) -> Answer:
    """The answer of sizing, which there must be."""
    answer = size(job(*told, asks=asks, topics=topics))
    assert answer is not None
    return answer


def sized(*told: Fact | Reading, asks: tuple[str, ...] = ()) -> Sizing:
    """Its record."""
    sizing = answered(*told, asks=asks).sizing
    assert sizing is not None
    return sizing


def text(answer: Answer) -> str:
    """Its lines."""
    return "\n".join(str(line) for line in answer.lines)
