"""The load budget and the wire run, in both languages: nothing runs off the edge, nothing is missing."""

import pytest

from bot.pictures import draw
from bot.pictures.canvas import SMALLEST_PX, Box, Canvas, Dot, Line, Text, text_width
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
    svg = Canvas.svg
    monkeypatch.setattr(Canvas, "svg", lambda self: seen.append(self) or svg(self))
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

    assert {"steady 34 VA", "with spare 42.5 VA", "50 VA for this load", "50"} <= set(words)
    assert any(word.startswith("pull-in 80 VA: coils keep") for word in words)


def test_a_size_that_the_pull_in_asks_for_is_the_one_on_the_picture(monkeypatch: pytest.MonkeyPatch) -> None:
    """9 VA would do on 20 VA; its 60 VA of pull-in take 30."""
    words = picture("load_budget", (Fact(fact="load", device="contactor", value=9.0, inrush=60.0),), monkeypatch).words()

    assert "30 VA for this load" in words


def several(*runs: tuple[float, float, str, float]) -> tuple[Fact, ...]:
    """Runs of feet, gauge, device and VA."""
    return tuple(
        fact
        for number, (feet, awg, device, va) in enumerate(runs, start=1)
        for fact in (
            Fact(fact="run_feet", value=feet, run=number),
            Fact(fact="wire_awg", value=awg, run=number),
            Fact(fact="load", device=device, value=va, run=number),
        )
    )


def picture(name: str, facts: tuple[Fact, ...], monkeypatch: pytest.MonkeyPatch, language: str = "en") -> Canvas:
    """The picture of these facts before it becomes pixels."""
    seen: list[Canvas] = []
    svg = Canvas.svg
    monkeypatch.setattr(Canvas, "svg", lambda self: seen.append(self) or svg(self))
    job = Job(facts=facts, asks=("size" if name == "load_budget" else "wire_run",))
    answer = size(job)
    assert answer is not None
    draw(name, answer, job, catalog(language).tell)
    return seen[0]


@pytest.mark.parametrize("language", ["en", "es"])
@pytest.mark.parametrize("count", [2, 3, 6])
def test_several_runs_have_a_line_and_a_row_of_words_each(count: int, language: str, monkeypatch: pytest.MonkeyPatch) -> None:
    """Numbered, the worst first, nothing off the edge."""
    runs = [(60.0 + 90.0 * i, 18.0 + 2.0 * (i % 2), "reversing valve", 9.0) for i in range(count)]
    canvas = picture("wire_run", several(*runs), monkeypatch, language)
    rows = [shape for shape in canvas.shapes if isinstance(shape, Text) and "AWG" in shape.text]

    assert len(rows) == count
    assert len({shape.y for shape in rows}) == count
    assert all(shape.y < canvas.height and shape.size >= SMALLEST_PX for shape in rows)
    assert sum(isinstance(shape, Text) and shape.text in {str(n) for n in range(1, 7)} for shape in canvas.shapes) == count


def test_pieces_in_a_row_are_one_line_with_a_bend(monkeypatch: pytest.MonkeyPatch) -> None:
    """50 ft of 18, then 200 ft of 20."""
    facts = tuple(f for f in several((50.0, 18.0, "relay", 1.0), (200.0, 20.0, "contactor", 20.0)) if f.device != "relay")
    canvas = picture("wire_run", facts, monkeypatch)

    assert "50 ft of 18 + 200 ft of 20" in canvas.words()
    assert max(len(shape.points) for shape in canvas.shapes if isinstance(shape, Line)) == 3


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


def test_the_title_names_the_wire_where_the_pull_in_needs_it(monkeypatch: pytest.MonkeyPatch) -> None:
    """60 VA of pull-in over 200 ft of 20: a bigger unit alone does not do it."""
    facts = (
        Fact(fact="load", device="contactor", value=9.0, inrush=60.0),
        Fact(fact="run_feet", value=200.0),
        Fact(fact="wire_awg", value=20.0),
    )

    assert "40 VA and 12 AWG for this load" in picture("load_budget", facts, monkeypatch).words()


def test_no_size_is_named_where_none_holds_the_pull_in(monkeypatch: pytest.MonkeyPatch) -> None:
    """900 VA of pull-in."""
    words = picture("load_budget", (Fact(fact="load", device="contactor", value=60.0, inrush=900.0),), monkeypatch).words()

    assert "No size holds this pull-in" in words
    assert not any("for this load" in word for word in words)


def test_the_unit_that_is_there_is_the_one_on_the_picture_where_it_carries_the_load(monkeypatch: pytest.MonkeyPatch) -> None:
    """19 VA on 40."""
    facts = (Fact(fact="rated_va", value=40.0), Fact(fact="load", device="board", value=19.0))

    assert "40 VA carries this load" in picture("load_budget", facts, monkeypatch).words()


def test_a_pull_in_that_was_not_told_is_drawn_as_usual(monkeypatch: pytest.MonkeyPatch) -> None:
    """Two contactors at 9 VA usually take 36 to 72 while one pulls in."""
    words = picture("load_budget", (Fact(fact="load", device="contactor", count=2, value=9.0),), monkeypatch).words()

    assert "pull-in, not told: usually 36 to 72 VA" in words
    assert "40 VA for this load" in words


def test_the_run_shows_the_volts_while_the_coil_pulls_in(monkeypatch: pytest.MonkeyPatch) -> None:
    """60 VA on 200 ft of 20, from full volts: 24 x 9.6 / (9.6 + 4.94) V."""
    facts = (
        Fact(fact="load", device="contactor", value=9.0, inrush=60.0),
        Fact(fact="run_feet", value=200.0),
        Fact(fact="wire_awg", value=20.0),
    )
    words = picture("wire_run", facts, monkeypatch).words()

    assert "15.8 V at the coil while it pulls in" in words
    assert "pull-in 15.8 V" in words
