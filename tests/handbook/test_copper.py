"""Copper against worked examples of books and manuals."""

import pytest

from core.standards.wire_gauges import warmed

EXAMPLES = (
    (
        504.0,
        20.0,
        75.0,
        612.92,
        0.01,
        "Langsdorf, Theory of Alternating-Current Machinery, example 1-15 p. 33 (watts follow ohms)",
    ),
    (29.23, 25.0, 5.0, 26.98, 0.01, "TM 9-6115-672-14 p. 5-55"),
    (126.0, 20.0, -35.0, 98.80, 0.05, "Kulshreshtha, Basic Electrical Engineering, example 2.17 p. 31"),
    (50.0, 20.0, 60.0, 57.87, 0.02, "Kapoor, example 2.8 p. 24"),
    (7.77, 75.0, 20.0, 6.39, 0.005, "NEC Chapter 9 Table 8 note 2, from memory"),
)


@pytest.mark.parametrize(("ohms", "start", "end", "published", "within", "source"), EXAMPLES)
def test_copper_warms_as_published(ohms: float, start: float, end: float, published: float, within: float, source: str) -> None:
    """Resistance at another temperature."""
    assert warmed(ohms, start, end) == pytest.approx(published, abs=within), source


def test_the_rise_of_a_winding() -> None:
    """Kulshreshtha example 2.18 p. 32: 3.42 ohm at 20 degC, 4.22 ohm after a run: 59.5 to 59.6 K hotter."""
    assert warmed(3.42, 20.0, 79.5) < 4.22 < warmed(3.42, 20.0, 79.7)
