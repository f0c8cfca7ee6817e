"""From a log of real texts to the record of a job: what stood, what was taken back, what was read after the repair."""

from collections.abc import Sequence
from dataclasses import replace
from datetime import UTC, datetime, timedelta

from bot.conversation import Turn, answer
from bot.report import JobLog, as_text, compose
from bot.report.gather import About, gather
from bot.wording.catalog import catalog

START = datetime(2026, 7, 14, 15, 0, tzinfo=UTC)
Line = str | tuple[str, str]
"""A text, or a text with the id of the message that it replaces."""


def conversation(*lines: Line, technician: str = "Robin Example") -> list[Turn]:
    """The log of a conversation, answered as any channel would."""
    log: list[Turn] = []
    for number, line in enumerate(lines, start=1):
        text, edits = line if isinstance(line, tuple) else (line, None)
        sent_at = START + timedelta(minutes=2 * number)
        turn = Turn(number=number, text=text, message_id=f"m{number}", edits=edits, sent_at=sent_at, technician=technician)
        reply = answer(log, turn)
        log.append(replace(turn, reply=reply.record() | {"talk": reply.talk}))
    return log


def job_of(*lines: Line, closed: bool = False, outcome: str | None = None) -> JobLog:
    """The record of a conversation."""
    turns = conversation(*lines)
    return gather(turns, About(name="rtu 3", opened=START, closed=turns[-1].sent_at if closed else None, outcome=outcome))


def read(log: JobLog) -> Sequence[tuple[int, str, object, bool]]:
    """Message, measure, value and standing of each reading."""
    return [(t.number, t.reading.measure, t.reading.value, t.stands) for t in log.taken]


def test_readings_stand_in_order_with_the_time_of_their_message() -> None:
    """Each one where it was sent."""
    log = job_of("pri 118V", "sec 0V", "pri-ohm open")

    assert read(log) == [
        (1, "primary_volts", 118.0, True),
        (2, "secondary_volts", 0.0, True),
        (3, "primary_ohms", "open", True),
    ]
    assert [t.at for t in log.taken] == [START + timedelta(minutes=m) for m in (2, 4, 6)]


def test_the_verdict_comes_with_its_reasons_and_the_next_test() -> None:
    """Worked out again from the log: the record of a reply holds no reasons."""
    log = job_of("pri 118V sec 0V", "pri-ohm open")

    assert log.verdict is not None
    assert (log.verdict.finding, log.verdict.transformer) == ("primary_open", "bad")
    assert log.verdict.reasons
    assert log.next_test is not None


def test_a_reading_taken_again_stood() -> None:
    """A second look does not unsay the first."""
    assert read(job_of("sec 24.6 V", "sec 23.9 V")) == [(1, "secondary_volts", 24.6, True), (2, "secondary_volts", 23.9, True)]


def test_a_corrected_reading_is_taken_back() -> None:
    """The slip stays in the record and is marked."""
    assert read(job_of("sec 20.4 V", "*24.6")) == [(1, "secondary_volts", 20.4, False), (2, "secondary_volts", 24.6, True)]


def test_an_undone_reading_is_taken_back() -> None:
    """What was undone did not happen to the verdict, and did happen in the log."""
    assert read(job_of("sec 20.4 V", "undo")) == [(1, "secondary_volts", 20.4, False)]


def test_an_edited_message_counts_as_edited() -> None:
    """Its first text is marked, its last one stands."""
    log = job_of("sec 20.4 V", ("sec 24.6 V", "m1"))

    assert read(log) == [(1, "secondary_volts", 20.4, False), (1, "secondary_volts", 24.6, True)]


REPAIR = (
    "208 building, on the 240 tap, 40 va",
    "pri 207 V sec 20.9 V",
    "sec ohms 1.1, pri ohms 60",
    "done, replaced, 50 va, 208 tap, 2 a fuse",
    "sec 25.2 V",
    "r-c 24.9 V",
)


def test_readings_after_the_repair_do_not_change_the_verdict() -> None:
    """They speak of the new part."""
    log, early = job_of(*REPAIR, closed=True), job_of(*REPAIR[:3])

    assert log.verdict == early.verdict
    assert [(t.reading.measure, t.reading.value) for t in log.standing() if t.proof] == [
        ("secondary_volts", 25.2), ("control_volts", 24.9),
    ]  # fmt: skip
    assert [t.reading.value for t in log.before_repair()] == [207.0, 20.9, 1.1, 60.0]


def test_facts_of_the_new_part_do_not_replace_those_of_the_old_one() -> None:
    """The unit is described as it was found; what was put in stands under what was done."""
    log = job_of(*REPAIR, closed=True, outcome="replaced, 50 va, 208 tap, 2 a fuse")
    text = as_text(compose(log, catalog("en").tell))
    unit, done = (text.split(title)[1].split("\n\n")[0] for title in ("THE UNIT (as sent)", "WHAT WAS DONE (as sent)"))

    assert "Tap in use: 240 V" in unit
    assert "Transformer: 40 VA" in unit
    assert "Tap in use: 208 V" in done
    assert "Transformer: 50 VA" in done


def test_the_proof_is_judged_by_its_own_readings() -> None:
    """A reading of the old part neither passes nor fails the new one."""
    said = [str(line) for line in job_of(*REPAIR, closed=True).proved]

    assert any("25.2 V" in line for line in said)
    assert not any("20.9" in line for line in said)


def test_a_job_opened_again_is_diagnosed_again() -> None:
    """Readings of the second visit speak for the verdict, until the second repair."""
    log = job_of(*REPAIR, "back to rtu 3", "sec 0 V", "fuse open")

    assert [(t.reading.measure, t.proof) for t in log.taken[-2:]] == [("secondary_volts", False), ("fuse_ohms", False)]


def test_cautions_are_those_that_were_given() -> None:
    """By name, with the message that they answered, in order."""
    log = job_of("pri 118V sec 0V", "pri-ohm open", "can i just jump the fuse?")
    turns = conversation("pri 118V sec 0V", "pri-ohm open", "can i just jump the fuse?")
    names = [(t.number, name) for t in turns for name in (t.reply or {})["cautions"]]

    assert names
    assert [(g.number, g.name) for g in log.given] == names
    assert all(str(g.says) for g in log.given)


def test_leads_and_size_stand_in_it_only_where_they_were_spoken_of() -> None:
    """Nothing is worked out that nobody asked."""
    quiet = job_of("pri 118V sec 0V")
    asked = job_of(
        "white-black 20.4, white-red 53, white-orange 66.5, blue-yellow 1.2, which is common?",
        "size for 2 contactors 9va, gas valve 16 va",
    )

    assert (quiet.leads, quiet.sizing) == (None, None)
    assert asked.leads is not None
    assert asked.sizing is not None
    assert asked.sizing.pick_va == 50.0


def test_technicians_are_named_in_the_order_of_their_first_message() -> None:
    """Each once."""
    turns = [*conversation("sec 24 V"), *conversation("sec 0 V", technician="Sasha Invented")]

    assert gather(turns, About(name="x", opened=START)).technicians == ("Robin Example", "Sasha Invented")


def test_an_empty_log_has_a_record() -> None:
    """A job that was only opened."""
    log = gather((), About(name="x", opened=START))

    assert (log.taken, log.verdict and log.verdict.settled) == ((), log.verdict and False)


def test_the_sizing_is_what_was_asked_and_not_what_the_proof_needed() -> None:
    """What was to be bought stands in the report, whatever was read afterwards."""
    log = job_of(
        "40 va 24 v", "2 contactors 9va, gas valve 16 va, what size?", "pri 118V sec 0V", "done, replaced, 50 va", "sec 25.4 V"
    )

    assert log.sizing is not None
    assert (log.sizing.load_va, log.sizing.pick_va) == (34.0, 50.0)


def test_the_leads_stay_known_though_later_answers_speak_of_them_in_passing() -> None:
    """The map that was asked for is found again."""
    texts = (
        "white-black 20.4, white-red 53, white-orange 66.5, blue-yellow 1.2, which is common?",
        "which tap for 208?",
        "line 208 V",
    )

    assert job_of(*texts).leads is not None
