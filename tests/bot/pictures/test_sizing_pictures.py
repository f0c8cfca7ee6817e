"""The load budget and the wire run, in both languages: nothing runs off the edge, nothing is missing."""

import pytest

from bot.pictures import draw
from bot.pictures.canvas import SMALLEST_PX, Box, Canvas, Dot, Text, text_width
from bot.wording.catalog import catalog
from core.advice import Answer
from core.readings import Fact, Job
from core.sizing import size

LOADS = (
    Fact(fact="load", device="contactor", value=10.0, inrush=56.0),
    Fact(fact="load", device="zone valve", count=4, value=6.0),
    Fact(fact="wire_awg", value=20.0),
)


def drawn(name: str, feet: float, language: str, monkeypatch: pytest.MonkeyPatch, more: float = 0.0) -> Canvas:
    """The picture before it becomes pixels."""
    seen: list[Canvas] = []
    png = Canvas.png
    monkeypatch.setattr(Canvas, "png", lambda self: seen.append(self) or png(self))
    extra = (Fact(fact="load", device="relay", count=10, value=more),) if more else ()
    job = Job(facts=(*LOADS, *extra, Fact(fact="run_feet", value=feet)), asks=("size",))
    answer = size(job)
    assert answer is not None
    picture = draw(name, answer, job, catalog(language).tell)
    assert picture.png.startswith(b"\x89PNG")
    assert picture.caption
    return seen[0]


@pytest.mark.parametrize("language", ["en", "es"])
@pytest.mark.parametrize("feet", [10.0, 120.0, 2000.0])
@pytest.mark.parametrize("name", ["load_budget", "wire_run"])
@pytest.mark.parametrize("more", [0.0, 9.0, 60.0])
def test_everything_stays_on_the_picture(
    name: str, feet: float, language: str, more: float, monkeypatch: pytest.MonkeyPatch
) -> None:
    """Words, bars and dots, whatever the load and the length."""
    canvas = drawn(name, feet, language, monkeypatch, more)

    for shape in canvas.shapes:
        if isinstance(shape, Text):
            width = text_width(shape.text, shape.size, bold=shape.bold)
            start = shape.x - {"start": 0.0, "middle": width / 2, "end": width}[shape.anchor]
            assert start >= 0.0, shape.text
            assert start + width <= canvas.width, shape.text
            assert shape.size >= SMALLEST_PX
        if isinstance(shape, Box):
            assert shape.x + shape.width <= canvas.width
        if isinstance(shape, Dot):
            assert 0.0 <= shape.y <= canvas.height


def test_the_bars_carry_load_spare_and_pull_in(monkeypatch: pytest.MonkeyPatch) -> None:
    """34 VA, a quarter more, and 80 VA while pulling in."""
    words = drawn("load_budget", 10.0, "en", monkeypatch).words()

    assert {"steady 34 VA", "with spare 42.5 VA", "pull-in 80 VA", "50 VA for this load", "50"} <= set(words)


def test_the_run_carries_both_ends_and_what_a_coil_needs(monkeypatch: pytest.MonkeyPatch) -> None:
    """Volts at the transformer, at the coil, and the 85 % line."""
    words = " ".join(drawn("wire_run", 120.0, "es", monkeypatch).words())

    assert "24.0 V en el transformador" in words
    assert "una bobina necesita 20.4 V" in words


@pytest.mark.parametrize("name", ["load_budget", "wire_run"])
def test_nothing_known_draws_nothing(name: str) -> None:
    """A picture without numbers would lie."""
    with pytest.raises(ValueError, match="to draw"):
        draw(name, Answer(), Job(), str)
