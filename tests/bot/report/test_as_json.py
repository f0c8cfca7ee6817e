"""The report as JSON: the reply record's names, documented keys, all that was sent."""

import json
import re

import pytest

from bot.report import JobLog, as_json, compose
from bot.report.as_json import COMPUTED, KEYS
from bot.wording.catalog import catalog
from tests.bot.report.sample_jobs import JOBS, few_readings, hostile, repaired


def record_of(log: JobLog, language: str = "en") -> dict:
    """The record read back."""
    return json.loads(as_json(compose(log, catalog(language).tell, language)))


@pytest.mark.parametrize("job", JOBS.values(), ids=JOBS)
def test_its_keys_are_the_documented_ones(job) -> None:
    """No key more and no key less, in their order."""
    assert list(record_of(job())) == list(KEYS)


def test_what_is_computed_is_named_and_documented_so() -> None:
    """The list in the record is what the documentation marks."""
    assert set(record_of(repaired())["computed"]) == set(COMPUTED)
    assert {key for key, says in KEYS.items() if says.startswith("computed:")} == set(COMPUTED)


def test_readings_are_those_of_the_reply_record_with_their_times() -> None:
    """Value, unit and leads as everywhere; message and time besides."""
    reading = record_of(repaired())["readings"][28]

    assert reading == {
        "measure": "lead_ohms", "value": 20.4, "unit": "ohm", "leads": ["white", "black"], "assumed": False,
        "at_utc": "2026-07-14T16:29:00Z", "message": 29, "stands": True, "proof": False, "low_impedance": False,
        "not_isolated": False,
    }  # fmt: skip


def test_words_are_kept_as_they_were_sent() -> None:
    """JSON needs no repair of anybody's text."""
    record, log = record_of(hostile()), hostile()

    assert (record["job"], record["unit"], record["outcome"]) == (log.name, log.unit, log.outcome)


def test_sentences_are_in_the_readers_language_and_keys_are_not() -> None:
    """A Spanish report has English keys."""
    english, spanish = record_of(few_readings()), record_of(few_readings(), "es")

    assert english["cautions"][0]["text"] != spanish["cautions"][0]["text"]
    assert list(english) == list(spanish)
    assert english["readings"] == spanish["readings"]


def test_times_are_of_one_form() -> None:
    """ISO 8601 in UTC, whatever clock the job was written by."""
    stamps = re.findall(r'_utc": "([^"]*)"', as_json(compose(repaired(), catalog("en").tell)))

    assert stamps
    assert all(re.fullmatch(r"\d{4}-\d\d-\d\dT\d\d:\d\d:\d\dZ", s) for s in stamps)
