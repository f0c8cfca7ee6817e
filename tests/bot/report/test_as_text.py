"""The report as plain text: all that was sent stands in it, and nothing that was neither sent nor computed."""

import re

import pytest

from bot.report import JobLog, as_text, compose
from bot.wording.catalog import catalog
from core.readings import Reading
from tests.bot.report.sample_jobs import EVERY_VALUE, JOBS, every_measure, few_readings, repaired

NUMBER = re.compile(r"(?<![\w.])\d+(?:\.\d+)?(?:\s?[kM](?=Ω))?")


def text_of(log: JobLog, language: str = "en") -> str:
    """The report of a job as text."""
    return as_text(compose(log, catalog(language).tell, language))


def as_sent(log: JobLog) -> set[float]:
    """Every number that the log holds as sent: readings, facts, words, names, times, and the cautions, rules and sources said to it."""
    words = [log.name, log.unit or "", log.outcome or "", *log.technicians, *(p.caption for p in log.photos)]
    words += [f"{g.says} {g.source}" for g in log.given] + [str(rule) for rule in (log.sizing.rules if log.sizing else ())]
    moments = [log.opened, log.closed, *(x.at for x in (*log.sent, *log.taken, *log.told, *log.given, *log.photos))]
    words += [m.astimezone(log.zone).strftime("%Y %m %d %H %M") for m in moments if m is not None]
    numbers = {float(n) for text in words for n in re.findall(r"\d+(?:\.\d+)?", text)}
    numbers |= {float(t.reading.value) for t in log.taken if not isinstance(t.reading.value, str)}
    for told in log.told:
        value = told.fact.value
        numbers |= set(value) if isinstance(value, tuple) else {value} if isinstance(value, float) else set()
        numbers |= {float(n) for n in (told.fact.count, told.fact.inrush) if n is not None}
    return numbers | {float(len(log.sent))}


def invented(text: str, log: JobLog) -> list[str]:
    """Numbers of the parts not marked as computed that nobody sent."""
    known = as_sent(log)
    strange = []
    for block in text.split("\n\n"):
        if "(computed)" in block.splitlines()[0]:
            continue
        for found in NUMBER.findall(block):
            scale = {"k": 1e3, "M": 1e6}.get(found[-1], 1.0)
            if not any(abs(float(found.rstrip("kM ")) * scale - k) <= 1e-6 * max(k, 1.0) for k in known):
                strange.append(found)
    return strange


@pytest.mark.parametrize("language", ["en", "es"])
@pytest.mark.parametrize("name", [n for n in JOBS if n != "hostile"])
def test_no_number_is_invented(name: str, language: str) -> None:
    """A number outside the parts marked as computed was sent by somebody."""
    log = JOBS[name]()
    text = text_of(log, language).replace("(calculado)", "(computed)")

    assert invented(text, log) == []


def test_an_invented_number_would_be_seen() -> None:
    """The check above can fail."""
    log = few_readings()
    text = text_of(log).replace("118 V\n", "118.5 V\n")

    assert invented(text, log) == ["118.5"]


def test_what_was_computed_is_marked() -> None:
    """Verdict, reasons, leads, sizing and the judgement of the proof stand under a title that says so."""
    titles = [line for line in text_of(repaired()).splitlines() if line.endswith("(computed)")]

    assert titles == [
        "VERDICT (computed)", "WHY (computed)", "LEADS (computed)", "SIZING (computed)", "WHAT THE PROOF SAYS (computed)",
    ]  # fmt: skip


def test_every_reading_stands_in_it_in_order_with_its_time() -> None:
    """Each measure has its row, its value and the minute of its message."""
    log = every_measure()
    lines = text_of(log).split("READINGS (as sent)\n")[1].split("\n\n")[0].splitlines()[1:]

    assert len(lines) == len(EVERY_VALUE)
    assert [line[:5] for line in lines] == [t.at.strftime("%H:%M") for t in log.taken]
    assert lines[0].split() == ["15:05", "At", "the", "line", "terminals", "481.5", "V"]


def test_a_reading_taken_back_is_said_to_be() -> None:
    """It is not hidden, and it is not left to stand."""
    lines = [line for line in text_of(repaired()).splitlines() if "206 V" in line]

    assert [line.split()[-2:] for line in lines] == [["taken", "back"]]


def test_a_guess_is_said_to_be_one() -> None:
    """A reading whose place or unit was guessed says so."""
    assert "place or unit guessed" in next(line for line in text_of(repaired()).splitlines() if line.startswith("16:38"))


def test_readings_after_the_repair_stand_apart() -> None:
    """They prove the new part and do not speak for the verdict."""
    text = text_of(repaired())
    proof = text.split("PROOF AFTER THE REPAIR (as sent)")[1].split("\n\n")[0]

    assert "26.4 V" in proof
    assert "26.4 V" not in text.split("PROOF AFTER THE REPAIR (as sent)")[0]


def test_a_caution_given_twice_is_listed_once_with_its_first_time() -> None:
    """The page says what was warned of, not how often."""
    lines = [line for line in text_of(repaired()).splitlines() if "Lock out" in line]

    assert [line[:5] for line in lines] == ["15:29"]


def test_an_open_job_names_its_next_test_and_a_closed_one_none() -> None:
    """What is left to do is left out once it is done."""
    assert "NEXT TEST (computed)" in text_of(few_readings())
    assert "NEXT TEST" not in text_of(repaired())


def test_no_verdict_is_certain() -> None:
    """Nothing is said to be 100 % sure."""
    assert "100 %" not in "".join(text_of(job()) for job in JOBS.values())


def test_a_job_without_readings_has_a_report() -> None:
    """Names and times are enough."""
    log = few_readings()
    empty = JobLog(name="nothing yet", opened=log.opened)

    assert text_of(empty).startswith("SERVICE REPORT")
    assert "VERDICT" not in text_of(empty)


def test_control_characters_do_not_reach_a_terminal() -> None:
    """No escape, no change of direction, no line of its own in a name."""
    text = text_of(JOBS["hostile"]())

    assert all(c.isprintable() or c == "\n" for c in text)
    assert "-Robin Second line" in text


def test_days_are_written_where_a_job_took_several() -> None:
    """A time of day alone would be ambiguous."""
    table = text_of(JOBS["endless"]()).split("READINGS (as sent)\n")[1]

    assert re.match(r"Time +Place", table)
    assert re.search(r"^07-15 00:41  Gray to violet", table, re.MULTILINE)


def test_a_reading_has_every_mark_it_was_given() -> None:
    """Low-impedance mode and a part still connected are told to the reader."""
    from bot.report import Taken
    from bot.report.places import remark

    taken = Taken(
        number=1,
        at=few_readings().opened,
        reading=Reading(measure="primary_ohms", value=1.0, low_impedance=True, not_isolated=True),
    )

    assert remark(taken, catalog("en").tell) == "low-impedance mode, not isolated"
