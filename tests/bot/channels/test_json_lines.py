"""`pipe`: whatever comes in, one line goes out for it, and the run goes on."""

import io
import json
import subprocess
import sys
from datetime import UTC, datetime

import pytest

from bot.channels.json_lines import LONGEST_BYTES, Pipe, run
from bot.desk import Memory
from bot.store.schema import open_store

NOW = datetime(2026, 3, 2, 8, 14, tzinfo=UTC)
KEYS = {
    "reply", "readings", "facts", "asks", "unread", "unclear", "verdict", "next_test", "leads", "sizing", "cautions", "buttons", "picture",
}  # fmt: skip


@pytest.fixture
def pipe():
    """A pipe on a store in memory."""
    engine = open_store("sqlite://")
    yield Pipe(engine, Memory(), lambda: NOW)
    engine.dispose()


def answers(pipe: Pipe, *lines: object) -> list[dict]:
    """What comes out for lines of bytes, or of objects as JSON."""
    data = b"".join((line if isinstance(line, bytes) else json.dumps(line).encode()) + b"\n" for line in lines)
    out = io.StringIO()
    run(pipe, io.BytesIO(data), out)
    return [json.loads(line) for line in out.getvalue().splitlines()]


def test_a_line_is_answered_by_the_whole_record(pipe: Pipe) -> None:
    """Every part of the contract is there."""
    (record,) = answers(pipe, {"technician": "t1", "text": "pri 118V sec 0V pri-ohm open"})

    assert record.keys() >= KEYS
    assert record["verdict"]["finding"] == "primary_open"


BAD = {
    "binary": b"\xff\xfe\x00\x01",
    "a zero": b"\x00",
    "no JSON": b"pri 118V",
    "half a line": b'{"technician": "t1", "text"',
    "a list": b"[1, 2]",
    "a number": b"7",
    "null": b"null",
    "no text": b'{"technician": "t1"}',
    "no technician": b'{"text": "pri 118V"}',
    "a number for text": b'{"technician": "t1", "text": 118}',
    "null for text": b'{"technician": "t1", "text": null}',
    "a number for technician": b'{"technician": 1, "text": "x"}',
    "text for edit": b'{"technician": "t1", "text": "x", "edit": "yes"}',
    "deep nesting": b"[" * 100_000,
    "a huge line": b'{"technician": "t1", "text": "' + b"x" * (LONGEST_BYTES + 10) + b'"}',
}


@pytest.mark.parametrize("line", BAD.values(), ids=BAD.keys())
def test_a_bad_line_is_answered_by_an_error_and_the_run_goes_on(pipe: Pipe, line: bytes) -> None:
    """One line out for one line in, in order."""
    bad, good = answers(pipe, line, {"technician": "t1", "text": "pri 118V"})

    assert bad.keys() == {"error"}
    assert bad["error"].strip()
    assert [r["value"] for r in good["readings"]] == [118.0]


ODD = {
    "10,000 characters": "x" * 10_000,
    "control characters": "pri\x00 118V\x07\x1b[31m",
    "half a surrogate pair": "pri 118V \ud800",
    "right to left": "מתח 118",
    "emoji": "⚡ pri 118V",
    "line ends": "pri 118V\nsec 0V",
    "nothing": "",
}


@pytest.mark.parametrize("text", ODD.values(), ids=ODD.keys())
def test_an_odd_text_is_answered(pipe: Pipe, text: str) -> None:
    """A record, short, on one line."""
    (record,) = answers(pipe, {"technician": "t1", "text": text})

    assert record.keys() >= KEYS
    assert len(record["reply"]) < 2_000


def test_blank_lines_are_passed_over(pipe: Pipe) -> None:
    """They ask nothing."""
    assert len(answers(pipe, b"", b"   ", {"technician": "t1", "text": "pri 118V"})) == 1


def test_a_last_line_without_an_end_counts(pipe: Pipe) -> None:
    """Input may stop without a line end."""
    out = io.StringIO()

    run(pipe, io.BytesIO(b'{"technician": "t1", "text": "pri 118V"}'), out)

    assert json.loads(out.getvalue())["readings"]


def test_jobs_and_technicians_are_apart(pipe: Pipe) -> None:
    """The same job word of two technicians is two jobs."""
    records = answers(
        pipe,
        {"technician": "t1", "text": "pri 118V sec 0V", "job": "a"},
        {"technician": "t2", "text": "pri-ohm open", "job": "a"},
        {"technician": "t1", "text": "pri-ohm open", "job": "a"},
        {"technician": "t1", "text": "history", "job": "b"},
    )

    assert records[2]["verdict"]["finding"] == "primary_open"
    assert records[2]["verdict"]["ranked"] != records[1]["verdict"]["ranked"]  # the volts of the first message count too
    assert "118" not in records[3]["reply"]


def test_an_edit_replaces(pipe: Pipe) -> None:
    """By the id of the message."""
    line = {"technician": "t1", "job": "a", "message_id": "m1"}
    records = answers(
        pipe,
        {**line, "text": "pri 11V"},
        {**line, "text": "pri 118V", "edit": True},
        {"technician": "t1", "job": "a", "text": "history"},
    )

    assert [r["value"] for r in records[1]["readings"]] == [118.0]
    assert "118" in records[2]["reply"]
    assert "11 V" not in records[2]["reply"]


def test_each_reply_is_flushed_at_once() -> None:
    """A program that waits for each reply before it sends the next is not left waiting."""
    with subprocess.Popen(
        [sys.executable, "-m", "bot.command_line", "pipe"], stdin=subprocess.PIPE, stdout=subprocess.PIPE
    ) as program:
        heard = []
        for text in ("pri 118V", "sec 0V"):
            program.stdin.write(json.dumps({"technician": "t1", "text": text}).encode() + b"\n")
            program.stdin.flush()
            heard.append(json.loads(program.stdout.readline())["readings"][0]["value"])
        program.stdin.close()
        left = program.wait(timeout=30)

    assert heard == [118.0, 0.0]
    assert left == 0


def test_sessions_live_on_in_a_database(sqlite_url) -> None:
    """Two runs on one store are one conversation."""
    records = []
    for text in ("pri 118V sec 0V", "pri-ohm open"):
        shown = subprocess.run(
            [sys.executable, "-m", "bot.command_line", "pipe", "--database", str(sqlite_url)],
            input=json.dumps({"technician": "t1", "text": text}) + "\n",
            capture_output=True,
            text=True,
            check=True,
        )
        records.append(json.loads(shown.stdout))

    assert records[1]["verdict"]["finding"] == "primary_open"
    assert records[1]["verdict"]["confidence"] > records[0]["verdict"]["confidence"]
