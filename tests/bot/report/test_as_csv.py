"""The report as a table: safe to open, every number under a head that names its unit."""

import csv
import io
from dataclasses import replace

import pytest
from hypothesis import given
from hypothesis import strategies as st

from bot.report import JobLog, as_csv, compose
from bot.report.as_csv import safe
from bot.report.spreadsheet_rows import HEADS
from bot.wording.catalog import catalog
from core.advice import Sizing
from core.measures import MEASURES
from tests.bot.report.sample_jobs import JOBS, every_measure, few_readings, repaired

FORMULA_STARTS = "=+-@＝＋－＠%"
"""OWASP, CSV Injection: signs at the start of a cell that a spreadsheet may run, their wide forms, and the percent sign besides."""


def rows_of(log: JobLog) -> list[dict[str, str]]:
    """The table read back by the standard library."""
    return list(csv.DictReader(io.StringIO(as_csv(compose(log, catalog("en").tell)), newline="")))


@pytest.mark.parametrize("job", JOBS.values(), ids=JOBS)
def test_no_cell_can_be_taken_for_a_formula(job) -> None:
    """Numbers aside, no cell starts as a formula does, also where it is split at semicolons."""
    for row in rows_of(job()):
        for head, cell in row.items():
            if head in {"text", "what", "leads", "remark"}:
                assert not any(part.lstrip(" ").startswith(tuple(FORMULA_STARTS)) for part in cell.split(";"))


@given(st.text(alphabet=st.sampled_from("=+-@＝＋; \t\r\n|%'\"a1\u200b\u00a0")) | st.text())
def test_safe_text_never_starts_a_formula(text: str) -> None:
    """Whatever was sent."""
    shown = safe(text)
    for separator in (None, ";", "|", "\t", "\n", "\r"):
        for cell in [shown] if separator is None else shown.split(separator):
            assert not cell.strip().startswith(tuple(FORMULA_STARTS))


@given(st.text(alphabet="abc 123.,:()"))
def test_plain_words_are_left_alone(text: str) -> None:
    """Only what could run is changed."""
    assert safe(text) == text


def test_every_reading_stands_under_the_head_of_its_unit() -> None:
    """Volts under volts, amps under amps, ohms under ohms, over-range as a word of its own."""
    head = {"V": "volts_V", "A": "current_A", "ohm": "resistance_ohm"}
    log = every_measure()
    read = [row for row in rows_of(log) if row["row"] == "reading"]

    assert len(read) == len(log.taken)
    for row, taken in zip(read, log.taken, strict=True):
        unit = MEASURES[taken.reading.measure].unit
        assert row["what"] == taken.reading.measure
        if taken.reading.value == "open":
            assert (row["over_range"], row[head[unit]]) == ("yes", "")
        else:
            assert float(row[head[unit]]) == taken.reading.value
        assert [row[h] for h in head.values() if h != head[unit]] == ["", ""]


def test_every_number_has_a_head_that_names_its_unit() -> None:
    """A number whose head names no unit has it in the column beside it."""
    for job in JOBS.values():
        assert all(bool(row["other_number"]) <= bool(row["other_unit"]) for row in rows_of(job()))


def test_each_row_says_where_it_comes_from() -> None:
    """Sent, computed, or said by the bot."""
    marks = {(row["row"], row["mark"]) for row in rows_of(repaired())}

    assert {mark for row, mark in marks if row in {"verdict", "also", "why", "lead", "landing", "sizing"}} == {"computed"}
    assert {mark for row, mark in marks if row in {"job", "fact", "reading", "done", "photo"}} == {"sent"}
    assert {mark for row, mark in marks if row in {"caution", "standard"}} == {"said"}


def test_the_heads_are_documented_and_in_order() -> None:
    """The first line is the table of heads."""
    assert as_csv(compose(few_readings(), catalog("en").tell)).splitlines()[0] == ",".join(HEADS)


def test_a_row_taken_back_says_so() -> None:
    """It can be filtered out."""
    gone = [row for row in rows_of(repaired()) if row["stands"] == "no"]

    assert [(row["what"], row["volts_V"]) for row in gone] == [("secondary_volts", "206.0")]


def test_every_number_of_a_sizing_has_its_unit() -> None:
    """Also of a wire run, whose volts stand at the load."""
    sizing = Sizing(
        load_va=18.0, secondary_amps=0.75, drop_volts=1.4, volts_at_load=22.6, longest_feet=210.0, output_volts=24.0
    )
    found = {row["what"]: row for row in rows_of(replace(repaired(), sizing=sizing)) if row["row"] == "sizing"}

    heads = ("power_VA", "current_A", "volts_V", "volts_V", "length_ft", "volts_V")
    assert [float(row[head]) for row, head in zip(found.values(), heads, strict=True)] == [18.0, 0.75, 1.4, 22.6, 210.0, 24.0]
