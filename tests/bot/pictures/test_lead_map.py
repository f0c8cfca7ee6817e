"""The picture of the leads: every word of it stands in the pixels, none is cut, none runs over another."""

import io
from itertools import combinations

import numpy as np
import pytest
from PIL import Image

from bot.pictures import draw
from bot.pictures.canvas import SMALLEST_PX, Canvas, Text, text_width
from bot.pictures.lead_map import picture
from bot.pictures.step_down import picture as step_down
from bot.pictures.wires import INKS
from bot.wording.catalog import LANGUAGES, catalog
from core.leads import choose_tap, map_leads
from core.readings import Fact, Job
from core.standards.lead_colours import COLOURS
from tests.core.leads.test_answer import FIVE, told

SUPPLY = {volts: Fact(fact="supply_volts", value=volts) for volts in (120.0, 208.0, 240.0, 480.0)}
JOBS = {
    "map": told(FIVE),
    "land": told(FIVE, SUPPLY[208.0]),
    "no tap": told(FIVE, SUPPLY[480.0]),
    "doubt": told("black white 3.9, black red 7.4, white red 3.6, blue yellow 0.7"),
    "dual": told("h1 h2 30, h3 h4 31, x1 x2 .6, x2 x3 .7, x1 x3 1.2", SUPPLY[240.0]),
    "stripes": told("black/red violet 20, violet orange 33, black/red orange 53, yellow/blue brown .9"),
    "open": told("white black 20.4, white red 53, black red 32.9, red orange OL, blue yellow 1.2"),
    "two leads": told("white black 20.4, blue yellow 1.2", SUPPLY[120.0]),
}


def canvas_of(name: str, language: str) -> Canvas:
    """The picture of a job in a language."""
    job = JOBS[name]
    answer = choose_tap(job) if job.facts else map_leads(job)
    return picture(answer, job, catalog(language).tell)


def frame(text: Text) -> tuple[float, float, float, float]:
    """Left, top, right, bottom of its letters."""
    width = text_width(text.text, text.size, bold=text.bold)
    left = text.x - {"start": 0.0, "middle": 0.5, "end": 1.0}[text.anchor] * width
    return left, text.y - 0.73 * text.size, left + width, text.y + 0.05 * text.size


def texts(canvas: Canvas) -> list[Text]:
    """All words of a picture."""
    return [s for s in canvas.shapes if isinstance(s, Text)]


@pytest.mark.parametrize("language", LANGUAGES)
@pytest.mark.parametrize("name", JOBS)
def test_every_word_is_in_the_pixels(name: str, language: str) -> None:
    """Where a word should be, both its ink and its ground are seen."""
    canvas = canvas_of(name, language)
    shown = np.asarray(Image.open(io.BytesIO(canvas.png())).convert("L"), dtype=float)

    for text in texts(canvas):
        left, top, right, bottom = map(int, frame(text))
        inside = shown[top:bottom, left:right]
        dark = (inside < (inside.min() + inside.max()) / 2.0).mean()
        assert np.ptp(inside) > 90, text.text
        assert 0.05 < dark < 0.95, text.text


@pytest.mark.parametrize("language", LANGUAGES)
@pytest.mark.parametrize("name", JOBS)
def test_no_word_is_cut_small_or_over_another(name: str, language: str) -> None:
    """Readable at arm's length."""
    canvas = canvas_of(name, language)
    frames = [frame(t) for t in texts(canvas)]

    assert all(f[0] >= 0 and f[1] >= 0 and f[2] <= canvas.width and f[3] <= canvas.height for f in frames)
    assert all(t.size >= SMALLEST_PX - 4.0 for t in texts(canvas))
    assert not [(a, b) for a, b in combinations(frames, 2) if a[0] < b[2] and b[0] < a[2] and a[1] < b[3] and b[1] < a[3]]


def test_the_picture_says_what_the_answer_says() -> None:
    """Each lead with its word, its role and its ohms; the lead to land and those to cap."""
    words = canvas_of("land", "en").words()

    assert {"white", "black", "red", "orange", "blue", "yellow", "common", "120 V", "208 V", "240 V", "32.9 Ω"} <= set(words)
    assert (words.count("LAND"), words.count("CAP")) == (2, 2)


def test_an_open_section_is_marked_with_a_word() -> None:
    """Not by colour alone."""
    assert "open" in canvas_of("open", "en").words()


def test_spanish_leaves_no_english_word() -> None:
    """Colours and tags too."""
    words = set(canvas_of("land", "es").words())

    assert not words & {"white", "black", "red", "common", "LAND", "CAP", "Primary"}


def test_every_lead_colour_has_its_paint() -> None:
    """And no two the same."""
    assert set(INKS) == set(COLOURS)
    assert len(set(INKS.values())) == len(INKS)


@pytest.mark.parametrize("language", LANGUAGES)
def test_the_step_down_picture_fits(language: str) -> None:
    """For 120 V and for 480 V."""
    for job in (Job(), Job(facts=(SUPPLY[480.0], Fact(fact="rated_va", value=100.0)))):
        frames = [frame(t) for t in texts(step_down(job, catalog(language).tell))]

        assert all(f[0] >= 0 and f[2] <= 1350 for f in frames)
        assert not [(a, b) for a, b in combinations(frames, 2) if a[0] < b[2] and b[0] < a[2] and a[1] < b[3] and b[1] < a[3]]


def test_pictures_come_as_png_with_words_beside() -> None:
    """For those who can't see them."""
    for name in ("leads", "step_down"):
        made = draw(name, map_leads(JOBS["map"]), JOBS["map"], catalog("en").tell)

        assert made.png.startswith(b"\x89PNG")
        assert made.caption
