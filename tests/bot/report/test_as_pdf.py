"""The printed report: one page, all of it legible, the same bytes for the same job, read back by another library."""

import io
import re
import subprocess
import sys
from dataclasses import replace
from functools import cache
from itertools import pairwise

import pytest
from PIL import Image
from pypdf import PdfReader

from bot.report import JobLog, Photo, as_pdf, compose
from bot.report.pdf.page import SETTINGS
from bot.report.pdf.sheet import Sheet
from bot.report.pictures import drawn
from bot.report.places import shown
from bot.wording.catalog import catalog
from core.findings import FINDINGS
from tests.bot.report.sample_jobs import JOBS, few_readings, photo, repaired


def png(width: int = 1350, height: int = 1050) -> bytes:
    """A stand-in for a drawn picture."""
    out = io.BytesIO()
    Image.new("RGB", (width, height), "white").save(out, "PNG")
    return out.getvalue()


def printed(log: JobLog, language: str = "en") -> bytes:
    """The report of a job on paper, its pictures drawn."""
    tell = catalog(language).tell
    return as_pdf(compose(log, tell, language), drawn(log, tell), log.photos)


@cache
def paper(name: str, language: str = "en") -> bytes:
    """The paper of an invented job, laid out once."""
    return printed(JOBS[name](), language)


def read(pdf: bytes) -> PdfReader:
    """The paper as another library reads it."""
    return PdfReader(io.BytesIO(pdf))


def words(pdf: bytes, page: int = 0) -> str:
    """The text of a page, its line breaks and fixed spaces as plain ones."""
    return re.sub(r"\s+", " ", read(pdf).pages[page].extract_text())


def sizes(pdf: bytes) -> set[float]:
    """The letter sizes of the first page, in points."""
    found: set[float] = set()
    read(pdf).pages[0].extract_text(visitor_text=lambda text, _cm, _tm, _font, size: found.add(size) if text.strip() else None)
    return found


@pytest.mark.parametrize("language", ["en", "es"])
@pytest.mark.parametrize("name", JOBS)
def test_a_job_is_one_page_and_more_only_for_photos(name: str, language: str) -> None:
    """Whatever it holds; pages of photos hold nothing but photos and their captions."""
    log = JOBS[name]()
    pages = read(paper(name, language)).pages

    assert len(pages) <= 1 + -(-len(log.photos) // 6)
    assert len(read(printed(replace(log, photos=()), language)).pages) == 1
    assert all(len(page.images) >= 1 for page in pages[1:])


@pytest.mark.parametrize("name", JOBS)
def test_nothing_is_too_small_to_read(name: str) -> None:
    """Seven points are the least of the matter; the names of columns and marks are half a point smaller."""
    assert min(sizes(paper(name))) >= 6.5


@pytest.mark.parametrize("name", JOBS)
def test_nothing_runs_off_the_paper_or_into_the_foot(name: str) -> None:
    """Every line of letters starts on the page, and none stands under the foot."""
    heights: list[float] = []
    lefts: list[float] = []

    def note(text: str, _cm: object, tm: list[float], _font: object, _size: float) -> None:
        if text.strip():
            lefts.append(tm[4])
            heights.append(tm[5])

    read(paper(name)).pages[0].extract_text(visitor_text=note)

    assert min(lefts) >= 12.0 / 25.4 * 72 - 0.5
    assert min(heights) >= 12.0 / 25.4 * 72 - 0.5
    assert max(lefts) <= 612 - 12.0 / 25.4 * 72


@pytest.mark.parametrize("language", ["en", "es"])
def test_a_job_of_forty_messages_is_legible(language: str) -> None:
    """Seven and a half points or more, each place's latest reading there."""
    log = repaired()
    pdf = paper("repaired", language)
    page = words(pdf)

    assert len(log.sent) == 40
    assert min(sizes(pdf)) >= 6.5
    assert all(shown(t.reading) in page for t in log.standing())


def test_every_part_stands_on_the_page() -> None:
    """Unit, people, times, verdict with confidence, reasons, readings, leads, sizing, repair, proof, cautions, standards."""
    page = words(paper("repaired"))

    for expected in (
        "rtu 3 library", "Robin Example, Sasha Invented", "2026-07-14 15:05 UTC", "2026-07-14 17:05 UTC",
        "The tap in use does not match the supply", "96 % sure, settled", "23.1 V to 27.9 V", "against", "208.4 V",
        "white common", "orange 240 V", "Transformer to buy: 50 VA", "replaced, 50 va, 208 tap, 2 a fuse", "24.8 V",
        "PASS: every reading is in its range", "Lock out and prove dead", "DOE Electrical Safety Handbook", "computed", "as sent",
    ):  # fmt: skip
        assert expected in page


def test_a_shortened_table_says_how_many_there_are() -> None:
    """Nobody takes the page for all of it."""
    log = repaired()
    page = words(paper("repaired"))
    before = [t for t in log.taken if not t.proof]

    if "readings, the latest at each place" in page:
        assert re.search(rf"\d+ of {len(before)} readings, the latest at each place", page)
    else:
        assert all(shown(t.reading) in page for t in before)


def test_the_count_of_an_endless_job_is_true() -> None:
    """The rows on the page are as many as the note says."""
    log = JOBS["endless"]()
    page = words(paper("endless"))
    count, of = re.search(r"(\d+) of (\d+) readings, the latest", page).groups()

    assert int(of) == len([t for t in log.taken if not t.proof])
    assert len(re.findall(r"07-1[45] \d\d:\d\d \w+ to \w+ \d", page)) == int(count)


def test_few_photos_stand_on_the_page_and_many_on_their_own() -> None:
    """Where there is room they need no second page."""
    two = replace(few_readings(), photos=(photo("nameplate"), photo("burnt spade")))
    nine = replace(few_readings(), photos=tuple(photo(f"view {i}", i) for i in range(9)))

    few, many = printed(two), printed(nine)
    assert [len(page.images) for page in read(few).pages] == [3]
    assert [len(page.images) for page in read(many).pages] == [1, 6, 3]
    assert "view 8" in words(many, page=2)


@pytest.mark.parametrize("body", [b"", b"not a picture", png(8000, 8000)[:-2000]], ids=["empty", "text", "cut"])
def test_a_file_that_is_no_picture_is_said_to_be_none(body: bytes) -> None:
    """The report is printed all the same."""
    page = words(printed(replace(few_readings(), photos=(Photo(at=few_readings().opened, body=body, caption="odd"),))))

    assert "odd This file could not be opened as a picture" in page


def test_a_picture_that_claims_to_be_huge_is_not_opened() -> None:
    """A few bytes may not cost gigabytes."""
    huge = png(9000, 9000)

    assert "could not be opened" in words(
        printed(replace(few_readings(), photos=(Photo(at=few_readings().opened, body=huge),)))
    )


def test_the_document_says_what_it_is() -> None:
    """Title, author, subject and language are those of the job; its date is the job's and not the clock's."""
    document = read(paper("repaired", "es"))

    assert document.metadata.title == "Informe de servicio: circuito de control: rtu 3 library"
    assert document.metadata.author == "Robin Example, Sasha Invented"
    assert document.metadata.subject == catalog("es").tell(FINDINGS["wrong_tap"].says)
    assert document.metadata.creation_date == repaired().closed
    assert document.trailer["/Root"]["/Lang"] == "es"


@pytest.mark.parametrize("name", JOBS)
def test_the_same_job_gives_the_same_bytes(name: str) -> None:
    """Also in the second drawing of one process."""
    assert paper(name) == printed(JOBS[name]())


def test_the_same_job_gives_the_same_bytes_in_another_process() -> None:
    """No clock, no random order."""
    code = (
        "import sys, hashlib\n"
        "from tests.bot.report.sample_jobs import every_measure\n"
        "from tests.bot.report.test_as_pdf import printed\n"
        "print(hashlib.sha256(printed(every_measure())).hexdigest())"
    )
    runs = {
        subprocess.run(
            [sys.executable, "-c", code], capture_output=True, text=True, check=True, env={"PYTHONHASHSEED": seed}
        ).stdout
        for seed in ("1", "2")
    }

    assert len(runs) == 1


def test_odd_names_are_printed_with_what_the_letters_have() -> None:
    """A sign without a letter becomes a question mark; no markup is obeyed."""
    page = words(paper("hostile"))

    assert "?? ? {braces} %s <b>bold</b>" in page


def test_the_settings_go_from_loose_to_tight() -> None:
    """The first that fits is the most legible one."""
    keys = [(s.lines, not s.short, s.picture_mm, s.size, s.rows) for row in SETTINGS for s in row]

    assert min(size for _, _, _, size, _ in keys) >= 7.0
    for row in SETTINGS:
        sizes_of_row = [(s.size, s.picture_mm, s.rows, s.lines) for s in row]
        assert all(a >= b for one, other in pairwise(sizes_of_row) for a, b in zip(one, other, strict=True))
    assert len(words(paper("every_measure"))) > 500


def test_the_files_of_the_letters_are_closed_behind_a_page() -> None:
    """Two files a report would stay open until the garbage is collected: `serve` makes reports for years."""
    with Sheet() as sheet:
        files = [font.ttfont.reader.file for font in sheet.fonts.values()]

    assert files
    assert all(file.closed for file in files)
