"""The commands as a person runs them: in a process of their own."""

import json
import os
import resource
import sqlite3
import subprocess
import sys
from collections.abc import Callable
from datetime import UTC, datetime
from pathlib import Path

import pytest
from sqlalchemy.orm import Session

from bot import command_line
from bot.desk import Incoming, Memory, take
from bot.store.schema import open_store

PROGRAM = (sys.executable, "-m", "bot.command_line")


def run(*words: str, said: str | bytes = "", home: Path, **more) -> subprocess.CompletedProcess[str]:
    """Run a command with a home of its own."""
    environment = {name: value for name, value in os.environ.items() if not name.startswith(("OHMREPLY", "LC_", "LANG"))}
    environment |= {"HOME": str(home), "XDG_DATA_HOME": str(home / "data"), "LANG": "C.UTF-8", "COLUMNS": "100"}
    environment |= more.pop("environment", {})
    data = said.encode() if isinstance(said, str) else said
    done = subprocess.run(
        [*PROGRAM, *words], input=data, capture_output=True, check=False, timeout=120, env=environment, **more
    )
    return subprocess.CompletedProcess(done.args, done.returncode, done.stdout.decode(), done.stderr.decode())


Here = Callable[..., subprocess.CompletedProcess[str]]


@pytest.fixture
def here(home: Path, monkeypatch, capsys) -> Here:
    """Run a command in this process, which is faster: for what does not hang on how a process starts or ends."""
    monkeypatch.setenv("XDG_DATA_HOME", str(home / "data"))
    monkeypatch.delenv("OHMREPLY_DATABASE", raising=False)
    monkeypatch.setenv("LC_ALL", "C.UTF-8")

    def run_here(*words: str) -> subprocess.CompletedProcess[str]:
        monkeypatch.setattr(sys, "argv", ["ohmreply", *words])
        left = command_line.run()
        shown = capsys.readouterr()
        return subprocess.CompletedProcess(words, left, shown.out, shown.err)

    return run_here


@pytest.fixture
def home(tmp_path: Path) -> Path:
    """Somebody's empty home."""
    return tmp_path


def test_ask_answers_one_message(home: Path) -> None:
    """The verdict on the first line, and nothing is written anywhere."""
    done = run("ask", "pri 118V sec 0V pri-ohm open", home=home)

    assert done.returncode == 0
    assert "primary is open" in done.stdout.splitlines()[0]
    assert list(home.iterdir()) == []


def test_ask_gives_the_record(home: Path) -> None:
    """`--json` is the whole record of the same reply."""
    text = run("ask", "which tap for 208?", home=home).stdout
    record = json.loads(run("ask", "--json", "which tap for 208?", home=home).stdout)

    assert record["reply"] == text.rstrip("\n")
    assert "tap" in record["asks"]


@pytest.mark.parametrize("text", ["", "x" * 10_000, "-5 ohm", "pri 1e9V", "⚡", "מתח", "--", "-h is not meant"])
def test_ask_answers_whatever_is_asked(here: Here, text: str) -> None:
    """Short, and without a traceback."""
    done = here("ask", "--", text)

    assert done.returncode == 0
    assert done.stdout.strip()
    assert done.stderr == ""


def imported(*words: str, home: Path, said: str = "") -> set[str]:
    """The packages that a command imports."""
    done = run(*words, home=home, said=said, environment={"PYTHONPROFILEIMPORTTIME": "1"})
    names = {
        line.rsplit("|", 1)[1].strip().split(".")[0] for line in done.stderr.splitlines() if line.startswith("import time:")
    }
    assert {"click", "lark"} <= names, "the command did not get as far as reading"
    return names


PINT = "import sys, pint; print(*{name.split('.')[0] for name in sys.modules})"


@pytest.fixture(scope="module")
def pints_own() -> set[str]:
    """What the library of units takes along by itself, where it happens to be installed."""
    return set(subprocess.run([sys.executable, "-c", PINT], capture_output=True, text=True, check=True).stdout.split())


HEAVY = {"telegram", "alembic", "fpdf", "resvg", "rich", "scipy", "prompt_toolkit", "PIL", "httpx"}


def test_ask_loads_only_what_it_needs(home: Path, pints_own: set[str]) -> None:
    """No store, no messenger, no drawing: cold start is what counts there."""
    assert imported("ask", "pri 118V", home=home) & (HEAVY | {"sqlalchemy", "sqlite3"}) <= pints_own


def test_chat_loads_no_migrations_once_the_store_is_there(home: Path, pints_own: set[str]) -> None:
    """The second start is fast."""
    run("chat", home=home, said="pri 118V\n")

    assert imported("chat", home=home, said="sec 0V\n") & HEAVY <= pints_own


def test_chat_goes_on_where_it_was_left(home: Path) -> None:
    """Quit in the middle of a job, start again, go on."""
    run("chat", home=home, said="new job rtu 3\npri 118V\nsec 0V\n")
    done = run("chat", home=home, said="pri-ohm open\n")

    assert done.stdout.splitlines()[0] == "In hand: rtu 3. Messages: 3"
    assert "The primary is open" in done.stdout


def test_chat_of_another_technician_is_another(home: Path) -> None:
    """Two people on one machine."""
    run("chat", "--technician", "t1", home=home, said="pri 118V\n")
    done = run("chat", "--technician", "t2", home=home, said="history\n")

    assert "118" not in done.stdout


def test_chat_takes_bytes_that_are_no_text(home: Path) -> None:
    """A broken encoding is answered, and the next line too."""
    done = run("chat", home=home, said=b"\xff\xfe\x00\n\npri 118V\n")

    assert done.returncode == 0
    assert "118" in done.stdout


def test_chat_writes_the_report_here_and_overwrites_nothing(home: Path) -> None:
    """The second report has a number."""
    done = run("chat", home=home, said="new job rtu 3\npri 118V sec 0V pri-ohm open\nreport\nreport\n", cwd=home)

    assert done.returncode == 0, done.stderr
    assert {file.name for file in home.glob("*.pdf")} == {"rtu-3.pdf", "rtu-3-2.pdf"}


@pytest.mark.parametrize("environment", [{}, {"NO_COLOR": "1"}])
def test_no_colours_where_nobody_sees_them(home: Path, environment: dict[str, str]) -> None:
    """Into a file go plain words."""
    done = run("chat", home=home, said="pri 118V sec 0V pri-ohm open\n", environment=environment)

    assert "\x1b" not in done.stdout


@pytest.mark.parametrize(
    "command", ["chat", "ask", "pipe", "replay", "serve", "jobs", "report", "stats", "backup", "restore", "check"]
)
def test_help_shows_how(here: Here, command: str) -> None:
    """Each command explains itself, and the whole lists them all."""
    whole, one = here("--help"), here(command, "--help")

    assert f"\n  {command} " in whole.stdout
    assert one.returncode == 0
    assert len(one.stdout.splitlines()) > 6


COMMANDS = (("chat",), ("pipe",), ("jobs",), ("stats",), ("check",))
"""Commands that open the store."""


@pytest.fixture
def a_store(home: Path) -> Path:
    """A store with one message in it."""
    file = home / "jobs.sqlite"
    engine = open_store(f"sqlite:///{file}")
    with Session(engine) as session, session.begin():
        sent = Incoming(channel="local", address="t1", name="t1", text="pri 118V", sent_at=datetime.now(UTC))
        take(session, sent, Memory())
    engine.dispose()
    return file


def refuses(done: subprocess.CompletedProcess[str], *signs: str) -> None:
    """One short line, no traceback, exit 2."""
    lines = done.stderr.strip().splitlines()
    assert done.returncode == 2, done
    assert len(lines) == 1
    assert len(lines[0]) < 160
    assert any(sign in lines[0] for sign in signs), lines


@pytest.mark.parametrize("words", COMMANDS, ids=lambda words: words[0])
@pytest.mark.parametrize(
    ("url", "sign"),
    [
        ("nonsense://here", "no database URL"),
        ("sqlite:////no/such/folder/jobs.sqlite", "can't be opened"),
        ("postgresql://nobody@127.0.0.1:1/none", "can't be reached"),
    ],
)
def test_a_store_that_can_t_be_opened_is_said_in_a_line(here: Here, words, url: str, sign: str) -> None:
    """Whatever the URL."""
    refuses(here(*words, "--database", url), sign)


@pytest.mark.parametrize("words", COMMANDS, ids=lambda words: words[0])
def test_a_file_that_is_no_store_is_left_alone(here: Here, home: Path, words) -> None:
    """Notes are not overwritten."""
    notes = home / "notes.txt"
    notes.write_text("call the office back\n" * 100)

    refuses(here(*words, "--database", str(notes)), "no store of ohmreply")
    assert notes.read_text() == "call the office back\n" * 100


def test_a_locked_store_is_said_and_the_message_can_be_sent_again(home: Path, a_store: Path) -> None:
    """`pipe` answers the line by an error and goes on."""
    holder = sqlite3.connect(a_store, isolation_level=None)
    holder.execute("BEGIN IMMEDIATE")
    done = run("pipe", "--database", str(a_store), home=home, said='{"technician": "t1", "text": "sec 0V"}\n')
    holder.rollback()
    holder.close()
    again = run("pipe", "--database", str(a_store), home=home, said='{"technician": "t1", "text": "sec 0V"}\n')

    assert "locked" in json.loads(done.stdout)["error"]
    assert json.loads(again.stdout)["readings"]


def test_a_read_only_store_can_be_listed_but_not_written(home: Path, a_store: Path) -> None:
    """Nothing is lost, and it is said."""
    url = f"sqlite:///file:{a_store}?mode=ro&uri=true"

    written = run("pipe", "--database", url, home=home, said='{"technician": "t1", "text": "sec 0V"}\n')
    listed = run("jobs", "--database", url, home=home)

    assert "read-only" in json.loads(written.stdout)["error"]
    assert listed.returncode == 0
    assert "job of" in listed.stdout


@pytest.mark.skipif(os.name == "nt" or os.geteuid() == 0, reason="root writes everywhere")
def test_a_store_in_a_folder_without_rights_is_said(home: Path, a_store: Path) -> None:
    """The rights of the file system say the same."""
    a_store.chmod(0o444)
    home.chmod(0o555)
    done = run("pipe", "--database", str(a_store), home=home, said='{"technician": "t1", "text": "sec 0V"}\n')
    home.chmod(0o755)

    assert "read-only" in done.stdout + done.stderr or "can't be opened" in done.stdout + done.stderr
    assert "Traceback" not in done.stderr


def test_a_full_disk_is_said_and_what_was_stored_stays(home: Path, a_store: Path) -> None:
    """A limit on the size of files fills the disk for this program alone."""
    size = a_store.stat().st_size

    def nearly_full() -> None:
        resource.setrlimit(resource.RLIMIT_FSIZE, (size, size))

    lines = "".join(json.dumps({"technician": "t1", "text": f"pri 118V {'x' * 9000}"}) + "\n" for _ in range(60))
    done = run("pipe", "--database", str(a_store), home=home, said=lines, preexec_fn=nearly_full)
    errors = [error for line in done.stdout.splitlines() if (error := json.loads(line).get("error"))]

    assert errors
    assert all("disk" in error for error in errors)
    assert "Traceback" not in done.stderr
    assert run("check", "--database", str(a_store), home=home).returncode == 0


def test_jobs_report_and_stats_show_what_was_done(home: Path) -> None:
    """The team's view of two technicians."""
    run(
        "chat",
        "--technician",
        "t1",
        home=home,
        said="new job rtu 3\n208 building, pri 208V sec 0V pri-ohm open\ndone, replaced, 50 va\n",
    )
    run("chat", "--technician", "t2", home=home, said="new job rtu 5\npri 240V\n")

    jobs = json.loads(run("jobs", "--json", home=home).stdout)
    stats = json.loads(run("stats", "--json", home=home).stdout)
    report = run("report", "rtu 3", home=home)

    assert {(job["name"], job["technician"], job["finding"], job["outcome"]) for job in jobs} >= {
        ("rtu 3", "t1", "primary_open", "replaced, 50 va")
    }
    assert {"of": "primary_open", "jobs": 1, "transformer_bad": 1, "settled": 0} in stats["cause"] or any(
        row["of"] == "primary_open" and row["transformer_bad"] == 1 for row in stats["cause"]
    )
    assert any(row["of"] == 208.0 for row in stats["supply_volts"])
    assert "rtu 3" in report.stdout
    for word in ("jobs", "stats"):
        shown = run(word, home=home)
        assert shown.returncode == 0
        assert "primary is open" in shown.stdout


def test_a_report_is_written_on_every_paper(home: Path) -> None:
    """PDF, text, CSV and JSON by flags."""
    run("chat", home=home, said="new job rtu 3\npri 118V sec 0V pri-ohm open\n")
    files = {flag: home / f"r.{flag}" for flag in ("pdf", "text", "csv", "json")}

    done = run("report", "1", *(word for flag, file in files.items() for word in (f"--{flag}", str(file))), home=home)

    assert done.returncode == 0, done.stderr
    assert files["pdf"].read_bytes().startswith(b"%PDF")
    assert json.loads(files["json"].read_text())["job"] == "rtu 3"
    assert "118" in files["text"].read_text()
    assert "118" in files["csv"].read_text()


def test_a_job_that_is_not_there_is_said(home: Path) -> None:
    """By number or by name."""
    refuses(run("report", "rtu 9", home=home), "No job is called rtu 9")


def test_backup_restore_and_check(home: Path, a_store: Path) -> None:
    """A restore over jobs needs a yes, and a damaged row is found."""
    copy = home / "copy.sqlite"
    at = ("--database", str(a_store))
    first = run("backup", str(copy), *at, home=home)
    again = run("backup", str(copy), *at, home=home)
    run("chat", *at, home=home, said="sec 0V\n")
    refused = run("restore", str(copy), *at, home=home)
    restored = run("restore", str(copy), *at, "--yes", home=home)
    sound = run("check", *at, home=home)
    with sqlite3.connect(a_store) as raw:
        raw.execute("UPDATE job SET turns = 7, supply_volts = 480")
    raw.close()
    wrong = run("check", *at, home=home)

    assert (first.returncode, restored.returncode, sound.returncode, wrong.returncode) == (0, 0, 0, 1)
    refuses(again, "exists")
    refuses(refused, "has jobs")
    assert sound.stdout.strip() == "1 jobs checked, 0 things wrong"
    assert "the log has gaps" in wrong.stdout


def test_check_finds_a_reply_that_the_log_does_not_bear_out(home: Path, a_store: Path) -> None:
    """A reading changed behind the program's back is seen."""
    with sqlite3.connect(a_store) as raw:
        raw.execute("UPDATE logged_reply SET record = replace(record, '118.0', '119.0')")
    raw.close()

    done = run("check", "--database", str(a_store), home=home)

    assert done.returncode == 1
    assert "reply and log disagree" in done.stdout


def test_retention_is_set_and_shown(here: Here, a_store: Path) -> None:
    """Days, forever, and nothing else."""
    at = ("--database", str(a_store))
    shown = [here("retention", *days, *at).stdout.splitlines()[-1] for days in ((), ("90",), (), ("forever",))]

    assert shown == [
        "Closed jobs are kept for good",
        "Closed jobs are kept 90 days",
        "Closed jobs are kept 90 days",
        "Closed jobs are kept for good",
    ]
    refuses(here("retention", "soon", *at), "Days are a number")


def test_a_chat_begins_by_deleting_what_is_over(home: Path, a_store: Path) -> None:
    """Nobody has to think of it."""
    at = ("--database", str(a_store))
    run("retention", "30", *at, home=home)
    with sqlite3.connect(a_store) as raw:
        raw.execute("UPDATE job SET closed_at = '2020-01-01 00:00:00'")
    raw.close()

    run("chat", *at, home=home)

    assert json.loads(run("jobs", "--json", *at, home=home).stdout or "[]") == []


def test_a_newer_store_is_refused(home: Path, a_store: Path) -> None:
    """It is told to update, and nothing is changed."""
    open_store(f"sqlite:///{a_store}").dispose()
    with sqlite3.connect(a_store) as raw:
        raw.execute("UPDATE alembic_version SET version_num = '9999'")
    raw.close()

    refuses(run("jobs", "--database", str(a_store), home=home), "later ohmreply")


def test_serve_without_a_token_says_what_is_missing(home: Path) -> None:
    """Before anything is loaded."""
    refuses(run("serve", home=home), "OHMREPLY_TOKEN")


def test_errors_speak_the_language_of_the_machine(home: Path) -> None:
    """Spanish where the machine is."""
    refuses(run("report", "rtu 9", home=home, environment={"LANG": "es_US.UTF-8"}), "Ningún trabajo se llama rtu 9")
