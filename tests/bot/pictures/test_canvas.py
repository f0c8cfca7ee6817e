"""Shapes become pixels, and no word is lost on the way."""

import io
from xml.etree import ElementTree as ET

import numpy as np
import pytest
from PIL import Image

from bot.pictures.canvas import FONTS, INK, Box, Canvas, Line, Text, fitted, text_width, wrapped


def pixels(canvas: Canvas) -> np.ndarray:
    """Brightness, row by row."""
    return np.asarray(Image.open(io.BytesIO(canvas.png())).convert("L"), dtype=float)


@pytest.mark.parametrize("bold", [False, True])
@pytest.mark.parametrize("word", ["white", "Ω", "cable café ñ", "≈ 32.9 Ω", "≥ 20.4 V", "90 °", "“OL”"])
def test_every_letter_is_drawn(word: str, *, bold: bool) -> None:
    """The library drops a text in silence where its font is not found, and draws a box where a letter is missing."""
    plain = pixels(Canvas(width=700, height=120, shapes=(Text(x=20, y=80, text=word, size=60, bold=bold),)))
    boxes = pixels(Canvas(width=700, height=120, shapes=(Text(x=20, y=80, text="\ue123" * len(word), size=60, bold=bold),)))

    assert (plain < 128).sum() > 40 * len(word.replace(" ", ""))
    assert np.abs(plain - boxes).sum() > 0


def test_a_text_is_as_wide_as_measured() -> None:
    """So that nothing is cut or runs over its neighbour."""
    dark = pixels(Canvas(width=900, height=120, shapes=(Text(x=20, y=80, text="Secundario 24 V", size=60),))) < 128
    columns = np.flatnonzero(dark.any(axis=0))

    assert columns[-1] - 20 == pytest.approx(text_width("Secundario 24 V", 60), abs=8)


def test_a_long_text_is_made_to_fit_or_broken() -> None:
    """At spaces only."""
    text = "Known-good fused 24 V across white and orange"

    assert text_width(text, fitted(text, 400.0, 60.0), bold=False) <= 400.5
    assert " ".join(wrapped(text, 400.0, 40.0)) == text
    assert all(text_width(line, 40.0) <= 400.0 for line in wrapped(text, 400.0, 40.0))


def test_what_a_person_wrote_can_not_break_the_picture() -> None:
    """Brackets, quotes and ampersands are words like others."""
    canvas = Canvas(width=400, height=100, shapes=(Text(x=1, y=50, text="<b>&\"'</b>"), Box(x=1, y=1, width=9, height=9)))

    ET.fromstring(canvas.svg())
    assert canvas.words() == ("<b>&\"'</b>",)


def test_a_line_is_where_it_was_put() -> None:
    """And nowhere else."""
    shown = pixels(Canvas(width=100, height=100, shapes=(Line(points=((10, 50), (90, 50)), stroke=INK, width=10),)))

    assert shown[50, 50] < 60
    assert shown[20, 50] > 250


def test_the_font_ships_with_its_licence() -> None:
    """Regular and bold."""
    assert {p.name for p in FONTS.iterdir()} >= {"DejaVuSans.ttf", "DejaVuSans-Bold.ttf", "LICENSE"}
