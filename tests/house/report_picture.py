"""
The page that the README shows: the report of a demo conversation, as a picture.

Write it anew where the report, the demo or its layout changed: `python -m tests.house.report_picture`
"""

import hashlib
from dataclasses import dataclass
from datetime import UTC
from pathlib import Path

from PIL import Image, PngImagePlugin
from sqlalchemy import select
from sqlalchemy.orm import Session

from bot import report as papers
from bot.desk.job_log import job_log
from bot.pictures.canvas import Canvas
from bot.report.pdf.page import laid_out
from bot.report.pdf.pieces import Bar, Figure, Plate, Print
from bot.report.pdf.sheet import Sheet
from bot.report.pictures import drawn, the_circuit
from bot.script.play import play
from bot.script.scene import read_scene
from bot.store.schema import open_store
from bot.store.tables import Job
from bot.wording.catalog import catalog

ROOT = Path(__file__).parents[2]
SCENE = ROOT / "demo_conversations" / "17_two_visits.chat"
PICTURE = SCENE.with_suffix(".png")
SHOWS = "shows"
"""Name of the text in the file that says what it shows."""
DOTS_PER_INCH = 110
COLOURS = 64


@dataclass(frozen=True, slots=True)
class Page:
    """The page, and what is on it in a few signs."""

    pdf: bytes
    shows: str


def page() -> Page:
    """The report of the first visit, as it is now."""
    tell = catalog("en").tell
    engine = open_store("sqlite://")
    play(read_scene(SCENE.read_text(encoding="utf-8")), engine)
    with Session(engine) as session:
        log = job_log(session, session.scalars(select(Job).order_by(Job.id)).first(), UTC)
    engine.dispose()
    report = papers.compose(log, tell)
    return Page(papers.as_pdf(report, drawn(log, tell)), _shows(report, the_circuit(log, tell)))


def _shows(report: papers.Report, circuit: Canvas) -> str:
    """Every word of the page and where it stands, to a tenth of a millimetre, and the circuit in it."""
    figures = [Figure(wide=circuit.width, high=circuit.height, data=b"", words="circuit")]
    rows = [circuit.svg()]
    with Sheet() as sheet:
        pieces = laid_out(sheet, report, figures, []).pieces
    for piece in pieces:
        at = f"{piece.x:.1f} {piece.y:.1f}"
        match piece:
            case Print():
                rows.append(f"{at} {piece.size} {piece.style} {piece.text}")
            case Bar() | Plate():
                rows.append(f"{at} {piece.width:.1f} {piece.height:.1f}")
    return hashlib.sha256("\n".join(rows).encode()).hexdigest()


def shown() -> str:
    """What the picture in the tree shows."""
    with Image.open(PICTURE) as image:
        return str(image.info.get(SHOWS, ""))


def main() -> None:
    """Render the page and put it into the tree."""
    import pypdfium2

    now = page()
    document = pypdfium2.PdfDocument(now.pdf)
    image = document[0].render(scale=DOTS_PER_INCH / 72).to_pil()
    document.close()
    text = PngImagePlugin.PngInfo()
    text.add_text(SHOWS, now.shows)
    image.convert("RGB").quantize(COLOURS, method=Image.Quantize.MAXCOVERAGE).save(PICTURE, optimize=True, pnginfo=text)
    print(f"{PICTURE.name}: {image.width} x {image.height}, {PICTURE.stat().st_size // 1000} kB")


if __name__ == "__main__":
    main()
