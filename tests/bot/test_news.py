"""A reply brings what is new: the line right above it is still on the screen."""

from bot.reply import Reply
from tests.bot.test_conversation import Talk


def replies(*texts: str) -> list[Reply]:
    """The replies to the messages of one job."""
    talk = Talk()
    return [talk.say(text) for text in texts]


PROTECTION = "The low-voltage fuse or breaker is open. Sure: 99 %"


def test_a_line_of_advice_is_not_repeated_by_the_next_reading() -> None:
    """The cause of an open primary stands once; the reading that follows brings the proof alone."""
    _, opened, read_on = replies("120 building, pri 118V sec 0V", "pri-ohm open", "R-C ohms 21")
    cause = "A primary or its hidden one-shot link opens from heat: a 24 V short, overload, a wrong tap"

    assert cause in opened.text
    assert cause not in read_on.text
    assert "Proof: new one in" in read_on.text


def test_the_reasons_are_those_of_this_message_where_the_verdict_stands() -> None:
    """What convinced before is not told again; what this message brought is."""
    _, opened, read_on = replies("120 building, pri 118V sec 0V", "pri-ohm open", "R-C ohms 21")

    assert "Why: primary open" in opened.text
    assert [line for line in read_on.text.splitlines() if line.startswith("Why")] == ["Why: R–C into the load 21 Ω is good"]


def test_who_asks_gets_the_whole_answer_again() -> None:
    """`next` repeats the verdict with its cause and reasons."""
    *_, opened, asked = replies("120 building, pri 118V sec 0V", "pri-ohm open", "next")

    assert set(opened.text.splitlines()) - set(asked.text.splitlines()) <= {"Read: primary open"}


def test_the_record_keeps_every_reason() -> None:
    """Only the text is shortened: the report tells the whole why."""
    *_, read_on = replies("120 building, pri 118V sec 0V", "pri-ohm open", "R-C ohms 21")

    assert read_on.answer.verdict is not None
    assert {r.reading.measure for r in read_on.answer.verdict.reasons} >= {"primary_ohms", "secondary_volts", "load_ohms"}


def test_a_sound_circuit_behind_a_blown_fuse_is_told_what_to_do_now() -> None:
    """After the ohms of the load the advice is no longer to read them."""
    *_, read_on = replies("pri 119v sec 26.1v R-C 0v, fuse OL", "load R-C 18 ohms, transformer lifted")

    assert PROTECTION in read_on.text
    assert "No short reads there now: put the same rating back in, then read volts R to C" in read_on.text
    assert "read R to C for a short" not in read_on.text


def test_a_nameplate_in_the_middle_of_a_job_is_answered_with_the_verdict() -> None:
    """The rating that was asked for changes what is thought: the reply says so."""
    *_, rated = replies("pri 120 sec 24.1", "pri amps .9", "40va")

    assert "Read: rated 40 VA" in rated.text
    assert "Next: " in rated.text
    assert rated.answer.verdict is not None


def test_a_reading_that_no_sound_unit_gives_is_a_reason() -> None:
    """Also where it speaks for another finding as well."""
    *_, read_on = replies("pri 120 sec 24.1, hot and humming", "pri amps .9")

    assert "Why: primary 0.9 A; good is" in read_on.text
