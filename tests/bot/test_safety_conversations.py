"""Whole jobs, played through the one path: dangers answered first, cautions said once, nothing nagged."""

import json
from datetime import UTC, datetime, timedelta
from pathlib import Path

import pytest

from bot.conversation import Turn, answer
from bot.reply import Reply
from core.cautions import for_test
from core.dangers import DANGERS
from core.measures import MEASURES
from core.readings import Job

START = datetime(2026, 3, 2, 9, 0, tzinfo=UTC)
MESSAGES = Path(__file__).parents[1] / "grammar" / "danger_messages.jsonl"
ROWS = [json.loads(line) for line in MESSAGES.read_text(encoding="utf-8").splitlines()]
FIRST_WORD = {"stop": ("STOP", "ALTO"), "no": ("No.",)}


def play(*texts: str, technicians: tuple[str, ...] = (), days: tuple[int, ...] = ()) -> list[Reply]:
    """The replies to a job's messages, each logged before the next."""
    log: tuple[Turn, ...] = ()
    replies = []
    for at, text in enumerate(texts):
        sent = Turn(
            number=at + 1,
            text=text,
            message_id=f"m{at}",
            sent_at=START + timedelta(minutes=at, days=days[at] if days else 0),
            technician=technicians[at] if technicians else "dana",
        )
        reply = answer(log, sent)
        replies.append(reply)
        log = (
            *log,
            Turn(
                **{f: getattr(sent, f) for f in ("number", "text", "message_id", "sent_at", "technician")},
                reply={**reply.record(), "talk": dict(reply.talk)},
            ),
        )
    return replies


def caution_lines(reply: Reply) -> list[str]:
    """The lines of caution in the text."""
    return [line for line in reply.text.splitlines() if line.startswith(("Caution:", "Cuidado:"))]


@pytest.mark.parametrize(("text", "danger"), [(r["text"], r["danger"]) for r in ROWS if r["danger"]])
def test_a_dangerous_message_is_answered_by_its_danger_first(text: str, danger: str) -> None:
    """A stop says stop, a refusal says no, in the first word; a referral and a condition stand in the text."""
    reply = play(text)[0]
    worst = DANGERS[reply.cautions[0]].kind

    assert danger in reply.cautions or worst in {"stop", "no"}
    if worst in FIRST_WORD:
        assert reply.text.startswith(FIRST_WORD[worst])
    if worst == "stop":
        assert reply.answer.verdict is None


@pytest.mark.parametrize("text", [r["text"] for r in ROWS if r["danger"] is None])
def test_a_harmless_message_has_at_most_one_line_of_caution(text: str) -> None:
    """And it is no refusal."""
    reply = play(text)[0]

    assert len(caution_lines(reply)) <= 1
    assert not reply.text.startswith(("No.", "STOP", "ALTO"))


WHOLE_JOBS = [
    (("pri 118V sec 0V", "pri ohms OL", "load 15 ohms"), {"prove_dead": 1}),
    (("sec 24.8 V", "R to C 24.6 V"), {}),
    (("no 24 at the board", "R to C 0 V", "sec 25 V", "fuse OL"), {}),
    (("supply 480", "sec 24.2 V", "R to C 24.0 V"), {"over_300": 1}),
    (("locked out and proved dead, pri 8.2 ohms sec 0.7 ohms", "pri to core OL, sec to core OL"), {"prove_dead": 0}),
    (("primario 120 secundario 0", "primario abierto, ohms"), {"prove_dead": 1}),
    (
        (
            "240 supply, pri 241 sec 0",
            "breaker off, locked, proved dead. pri 31 ohms",
            "sec OL",
            "R-C ohms 0.4 with R lifted",
            "R-C ohms 18 now",
        ),
        {"prove_dead": 1, "find_the_short_first": 1},
    ),
    (("supply 208", "pri 207 sec 24.4", "R to C 24.1", "coil 23.9", "sec amps 0.9"), {}),
]


@pytest.mark.parametrize(("texts", "counts"), WHOLE_JOBS)
def test_a_whole_job_hears_each_caution_as_often_as_it_must(texts: tuple[str, ...], counts: dict[str, int]) -> None:
    """Required ones are there, none is repeated while nothing changes."""
    replies = play(*texts)
    said = [name for reply in replies for name in reply.cautions]

    assert {name: said.count(name) for name in counts} == counts
    assert all(len(caution_lines(reply)) <= 2 for reply in replies)
    assert len(said) == len(set(said))


@pytest.mark.parametrize("text", ["sec 24.6 V", "R to C 24.4 V", "coil 24 V", "secundario 24.6 volts"])
def test_a_24_volt_reading_carries_no_caution_of_its_own(text: str) -> None:
    """What is said, if anything, belongs to the test that comes next."""
    reply = play("new job x", text)[1]

    assert set(reply.cautions) <= set(for_test(reply.answer.next_test, Job(readings=reply.message.readings)))


@pytest.mark.parametrize(
    ("text", "has_verdict"),
    [
        ("can I jump the fuse", False),
        ("jumped the float for good, R to C 24.6 V", True),
        ("dejo el presostato puenteado, R-C 24.8 V", True),
        ("roof is soaked, reading it anyway", False),
    ],
)
def test_under_a_refusal_stands_only_what_was_read(text: str, *, has_verdict: bool) -> None:
    """Two lines say no and the safe way; no other step, and a verdict only where readings came."""
    lines = play(text)[0].text.splitlines()

    assert lines[0].startswith("No.")
    assert not any(line.startswith(("Next:", "Sigue:", "Caution:", "Cuidado:")) for line in lines)
    assert any(line.startswith(("Read:", "Leído:")) for line in lines) is has_verdict
    assert len(lines) <= 2 or has_verdict


def test_who_asks_once_more_after_a_refusal_is_refused_once_more() -> None:
    """And who sends the next reading is not."""
    replies = play("float's jumped so they have cooling", "so that's fine till monday?", "R to C 24.8 V")

    assert [reply.text.startswith("No.") for reply in replies] == [True, True, False]


def test_a_job_is_not_closed_on_a_danger() -> None:
    """The refusal stands first, whatever else the message asks."""
    reply = play("soldered a wire over the fuse, we're done here, close the job")[0]

    assert reply.text.startswith("No.")


def test_who_says_not_to_be_qualified_is_sent_to_nothing_live_over_300_volts() -> None:
    """Not to the 24 V side either: it is reached past the line side."""
    replies = play("480 unit, im no electrician, where do i measure", "sec 0 V", "what next")

    assert "qualified" in replies[0].text
    assert all(t.fact is not None or not MEASURES[t.measure].live for r in replies if (t := r.answer.next_test) is not None)


def test_a_caution_comes_back_with_another_person_and_another_day() -> None:
    """The circumstances changed."""
    texts = ("pri 118V sec 0V", "pri ohms OL")

    assert "prove_dead" not in play(*texts)[1].cautions
    assert "prove_dead" in play(*texts, technicians=("dana", "sam"))[1].cautions
    assert "prove_dead" in play(*texts, days=(0, 1))[1].cautions


def test_a_stop_holds_until_all_is_well_and_the_readings_are_kept() -> None:
    """Nothing is diagnosed in between; afterwards it goes on with all that was sent."""
    replies = play("pri 118V sec 0V", "got bit off the cabinet", "pri ohms OL", "all is well", "what next")

    assert [reply.answer.verdict is None for reply in replies[1:3]] == [True, True]
    assert replies[2].message.readings[0].measure == "primary_ohms"
    assert not replies[3].text.startswith("STOP")
    assert replies[4].answer.verdict is not None
    assert replies[4].answer.verdict.finding == "primary_open"


def test_the_reading_beside_a_danger_is_kept_and_answered() -> None:
    """The refusal first, the reading under it."""
    reply = play("roof is wet, pri 240 sec 0")[0]

    assert reply.text.startswith("No.")
    assert {r.measure for r in reply.message.readings} == {"primary_volts", "secondary_volts"}
    assert reply.answer.verdict is not None


def test_nobody_is_sent_to_480_volts_live_without_being_qualified() -> None:
    """No next test on the live line side, until the technician says to be qualified."""
    replies = play("supply 480", "sec 0 V", "lifted 0 V", "R to C 0 V", "what next")

    assert {r.answer.next_test.measure for r in replies if r.answer.next_test and r.answer.next_test.fact is None}.isdisjoint(
        {"line_volts", "primary_volts", "primary_amps"}
    )


def test_a_condition_alone_is_answered() -> None:
    """A message that holds nothing else still gets its line."""
    assert "no live work" in play("im alone on the roof")[0].text
    assert "Nothing live today" in play("been up all night")[0].text


def test_spanish_is_answered_in_spanish() -> None:
    """The refusal too."""
    assert play("puedo puentear el fusible?")[0].text.startswith("No. Un fusible puenteado")
