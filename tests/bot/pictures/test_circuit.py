"""The circuit: each reading at its place, the suspect part marked by shape and word, nothing over anything else."""

import io
from dataclasses import replace
from itertools import combinations

import numpy as np
import pytest
from PIL import Image

from bot.pictures import draw
from bot.pictures.canvas import Box, Canvas, Text, text_width
from bot.pictures.circuit import canvas_of, without_head
from bot.pictures.circuit.layout import LABEL, MEASURED_AT, PLACES
from bot.pictures.circuit.suspects import PARTS, POINTS_AT
from bot.wording.catalog import catalog
from core.advice import Answer, NextTest, Ranked, Verdict
from core.findings import FINDINGS
from core.measures import MEASURES
from core.readings import OPEN, Fact, Job, Reading

SMALLEST = 26.0 * 1350.0 / 900.0
"""26 px on a picture 900 wide is about 11 points on a phone: the least that is read at arm's length."""
LONG: dict[str, float | str] = {
    measure: {"V": 479.25, "A": 12.345, "ohm": 999.99}[MEASURES[measure].unit] for measure in MEASURED_AT
}
"""A value of many signs at each place."""
FACTS = (
    Fact(fact="supply_volts", value=480.0),
    Fact(fact="tap_volts", value=480.0),
    Fact(fact="fuse_amps", value=3.2),
    Fact(fact="run_feet", value=1250.0),
)


def verdict(finding: str, confidence: float = 0.97, also: tuple[str, ...] = ()) -> Verdict:
    """A verdict with a second finding behind it."""
    other = "no_supply" if finding != "no_supply" else "healthy"
    ranked = (Ranked(finding=finding, probability=confidence), Ranked(finding=other, probability=1 - confidence))
    return Verdict(
        finding=finding,
        confidence=confidence,
        settled=True,
        transformer=FINDINGS[finding].transformer,
        ranked=ranked,
        also=also,
    )


def readings(values: dict[str, float | str], *, assumed: bool = False) -> tuple[Reading, ...]:
    """One reading a measure."""
    return tuple(Reading(measure=m, value=v, assumed=assumed) for m, v in values.items())


def busy(finding: str, language: str, test: str | None, *, assumed: bool = False) -> Canvas:
    """The picture with a reading at every place, everything told, and something besides."""
    also = tuple(other for other in ("load_short", "overload", "protection_open") if other != finding)
    job = Job(readings=readings(LONG, assumed=assumed), facts=FACTS)
    step = None if test is None else NextTest(measure=test, instruction=MEASURES[test].how)
    return canvas_of(Answer(verdict=verdict(finding, 0.7, also), next_test=step), job, catalog(language).tell)


def frame(text: Text) -> tuple[float, float, float, float]:
    """Left, top, right, bottom of a text as it will be drawn; capitals and figures are 0.73 of the size, tails 0.2."""
    width = text_width(text.text, text.size, bold=text.bold)
    left = text.x - {"start": 0.0, "middle": 0.5, "end": 1.0}[text.anchor] * width
    return left, text.y - 0.76 * text.size, left + width, text.y + 0.2 * text.size


def overlap(a: tuple[float, float, float, float], b: tuple[float, float, float, float]) -> bool:
    """True where two frames share ink."""
    return a[0] < b[2] and b[0] < a[2] and a[1] < b[3] and b[1] < a[3]


def texts(canvas: Canvas) -> list[Text]:
    """Every text."""
    return [shape for shape in canvas.shapes if isinstance(shape, Text)]


BUSY = [(finding, language, test) for finding in FINDINGS for language in ("en", "es") for test in (None, *MEASURED_AT)]


@pytest.mark.parametrize("assumed", [False, True])
def test_no_text_lies_over_another_or_off_the_picture(*, assumed: bool) -> None:
    """Every finding, every next test, both languages, a long value at each place."""
    for finding, language, test in BUSY:
        canvas = busy(finding, language, test, assumed=assumed)
        frames = [(text.text, frame(text)) for text in texts(canvas)]
        for (one, a), (other, b) in combinations(frames, 2):
            assert not overlap(a, b), (finding, language, test, one, other)
        for words, (left, top, right, bottom) in frames:
            assert left >= 0, words
            assert right <= canvas.width, words
            assert top >= 0, words
            assert bottom <= canvas.height, words


def test_no_tag_lies_over_a_name_or_another_tag() -> None:
    """A tag is a filled box: what it covers is lost."""
    for finding, language, test in BUSY:
        canvas = busy(finding, language, test)
        boxes = [s for s in canvas.shapes if isinstance(s, Box) and s.fill != "none" and s.round > 0]
        frames = [(b.x, b.y, b.x + b.width, b.y + b.height) for b in boxes]
        for a, b in combinations(frames, 2):
            assert not overlap(a, b), (finding, language, test)
        for text in texts(canvas):
            left, top, right, bottom = frame(text)
            for a in frames:
                inside = a[0] <= left and right <= a[2] and a[1] <= top + 8 and bottom - 8 <= a[3]
                assert inside or not overlap(a, (left, top, right, bottom)), (finding, language, test, text.text)


@pytest.mark.parametrize("language", ["en", "es"])
def test_every_text_can_be_read_on_a_phone(language: str) -> None:
    """None is smaller than 26 px on a picture 900 wide."""
    sizes = {text.size for finding in FINDINGS for text in texts(busy(finding, language, "load_ohms"))}

    assert min(sizes) >= SMALLEST


@pytest.mark.parametrize("language", ["en", "es"])
def test_every_label_is_in_the_pixels(language: str) -> None:
    """The drawing library drops words silently where it lacks their letters: there is dark ink, or light on dark, in each frame."""
    canvas = busy("primary_open", language, "load_ohms")
    pixels = np.asarray(Image.open(io.BytesIO(canvas.png())).convert("L"), dtype=np.int16)

    for text in texts(canvas):
        left, top, right, bottom = (round(edge) for edge in frame(text))
        area = pixels[max(top, 0) : bottom, max(left, 0) : right]
        dark = float((area < 110).mean())
        assert 0.05 < dark < 0.95, text.text


def test_every_label_can_be_missed() -> None:
    """The check above can fail: without the texts there is no ink in their frames."""
    canvas = busy("healthy", "en", None)
    bare = replace(canvas, shapes=tuple(s for s in canvas.shapes if not isinstance(s, Text)))
    pixels = np.asarray(Image.open(io.BytesIO(bare.png())).convert("L"), dtype=np.int16)
    empty = 0
    for text in texts(canvas):
        left, top, right, bottom = (round(edge) for edge in frame(text))
        empty += float((pixels[max(top, 0) : bottom, max(left, 0) : right] < 110).mean()) < 0.05

    assert empty >= len(texts(canvas)) - 2


def test_every_measure_has_its_place() -> None:
    """But those between named leads, which belong to the map of leads."""
    assert {name for name, row in MEASURES.items() if not row.pair} == MEASURED_AT.keys()
    assert set(MEASURED_AT.values()) == PLACES.keys()


@pytest.mark.parametrize("measure", MEASURED_AT)
def test_a_reading_stands_at_its_place(measure: str) -> None:
    """Its value is nearest to the place where it was taken, and nowhere else."""
    canvas = canvas_of(Answer(), Job(readings=readings({measure: 7.25})), catalog("en").tell)
    shown = [text for text in texts(canvas) if "7.25" in text.text]
    place = PLACES[MEASURED_AT[measure]]

    assert len(shown) == 1
    assert abs(shown[0].y - place.y) < 40
    assert min(abs(shown[0].x - place.x), abs(frame(shown[0])[0] - place.x), abs(frame(shown[0])[2] - place.x)) < 40


def test_an_open_and_the_latest_of_two_readings_are_shown() -> None:
    """What stands is what is drawn."""
    told = (*readings({"primary_ohms": OPEN, "secondary_volts": 20.0}), Reading(measure="secondary_volts", value=24.5))
    words = canvas_of(Answer(), Job(readings=told), catalog("en").tell).words()

    assert "OL" in words
    assert "24.5 V" in words
    assert not any("20 V" in word for word in words)


def test_every_finding_but_the_healthy_one_points_at_a_part() -> None:
    """A new finding needs its row."""
    assert POINTS_AT.keys() == FINDINGS.keys() - {"healthy"}
    assert {part for part, _ in POINTS_AT.values()} == PARTS.keys()


@pytest.mark.parametrize("finding", POINTS_AT)
def test_the_suspect_is_marked_by_shape_and_word(finding: str) -> None:
    """A thick frame round the part and a word in a black flag: readable without colour."""
    plain = canvas_of(Answer(), Job(), catalog("en").tell)
    marked = canvas_of(Answer(verdict=verdict(finding)), Job(), catalog("en").tell)
    new = [shape for shape in marked.shapes if shape not in plain.shapes]
    word = str(POINTS_AT[finding][1])

    assert [s for s in new if isinstance(s, Box) and s.stroke_width >= 9.0 and s.fill == "none"]
    assert any(isinstance(s, Text) and s.text == word and s.fill == "#ffffff" for s in new)


def test_a_doubtful_verdict_marks_with_a_question() -> None:
    """The picture is no surer than the engine."""
    words = canvas_of(Answer(verdict=verdict("primary_open", 0.7)), Job(), catalog("en").tell).words()

    assert "OPEN?" in words
    assert "OPEN" not in words


def test_what_stands_besides_is_marked_apart() -> None:
    """A white flag with the word for it."""
    answer = Answer(verdict=verdict("primary_open", also=("load_short",)))

    assert "ALSO: SHORT" in canvas_of(answer, Job(), catalog("en").tell).words()


def test_a_healthy_circuit_has_no_suspect() -> None:
    """Nothing framed, nothing flagged."""
    canvas = canvas_of(Answer(verdict=verdict("healthy")), Job(), catalog("en").tell)

    assert not [s for s in canvas.shapes if isinstance(s, Box) and s.stroke_width >= 6.0]


@pytest.mark.parametrize("measure", MEASURED_AT)
def test_the_next_test_is_shown_where_it_is_taken(measure: str) -> None:
    """With the unit to set the meter to."""
    test = NextTest(measure=measure, instruction=MEASURES[measure].how)
    canvas = canvas_of(Answer(next_test=test), Job(), catalog("en").tell)
    sign = {"V": "V", "A": "A", "ohm": "Ω"}[MEASURES[measure].unit]
    shown = [text for text in texts(canvas) if text.text == f"NEXT: {sign}"]

    assert len(shown) == 1
    assert abs(shown[0].y - PLACES[MEASURED_AT[measure]].y) < 40


def test_a_fact_that_is_asked_for_has_no_place() -> None:
    """A question in words is not a place for the meter."""
    test = NextTest(measure="primary_volts", instruction=MEASURES["primary_volts"].how, fact="tap_volts")

    assert not any("NEXT" in word for word in canvas_of(Answer(next_test=test), Job(), catalog("en").tell).words())


def test_a_guess_is_marked_and_the_mark_explained() -> None:
    """A question mark at the value, its meaning under the picture."""
    words = canvas_of(Answer(), Job(readings=readings({"primary_volts": 118.0}, assumed=True)), catalog("en").tell).words()

    assert "118 V ?" in words
    assert "? place or unit guessed" in words


def test_the_same_job_gives_the_same_bytes() -> None:
    """Nothing of the clock, nothing of chance."""
    answer = Answer(verdict=verdict("wrong_tap", also=("overload",)))
    job = Job(readings=readings(LONG), facts=FACTS)

    assert draw("circuit", answer, job, catalog("en").tell).png == draw("circuit", answer, job, catalog("en").tell).png


def test_the_picture_of_a_page_has_no_verdict_over_it() -> None:
    """The page says it already; all else is the same."""
    answer, job, tell = Answer(verdict=verdict("wrong_tap")), Job(readings=readings(LONG), facts=FACTS), catalog("en").tell
    whole, bare = canvas_of(answer, job, tell), without_head(answer, job, tell)

    over = " ".join(word for word in whole.words() if word not in bare.words())
    assert over == "The tap in use does not match the supply. Sure: 97 % Transformer GOOD: keep it"
    assert set(bare.words()) < set(whole.words())
    assert bare.height < whole.height


def test_the_picture_is_good_in_print() -> None:
    """Black and white alone tell all: in grey, ink stands apart from paper by half the range or more."""
    canvas = busy("wrong_tap", "en", "load_ohms")
    strokes = {s.stroke for s in canvas.shapes if hasattr(s, "stroke") and s.stroke != "none"}
    greys = {s: sum(w * int(s[i : i + 2], 16) for w, i in ((0.299, 1), (0.587, 3), (0.114, 5))) for s in strokes}

    assert all(grey < 128 or stroke == "#ffffff" for stroke, grey in greys.items()), greys
    assert canvas.background == "#ffffff"
    assert LABEL >= SMALLEST
