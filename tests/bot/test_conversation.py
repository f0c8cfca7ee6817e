"""The one path from a text to its reply: order of lines, cautions said once, halts, edits, and nothing dropped."""

from datetime import UTC, datetime, timedelta

import pytest

from bot.conversation import Turn, answer, fold, reply_to, step
from bot.reply import Reply

START = datetime(2026, 3, 2, 9, 0, tzinfo=UTC)


class Talk:
    """A conversation of one technician, as a channel would carry it."""

    def __init__(self) -> None:
        self.log: tuple[Turn, ...] = ()

    def say(self, text: str, *, edits: str | None = None) -> Reply:
        """Send a text; the reply is logged."""
        number = len(self.log) + 1
        sent = Turn(
            number=number,
            text=text,
            message_id=f"m{number}",
            edits=edits,
            sent_at=START + timedelta(minutes=number),
            technician="dana",
        )
        reply = answer(self.log, sent)
        record = {**reply.record(), "talk": dict(reply.talk)}
        logged = Turn(
            number=number,
            text=text,
            message_id=sent.message_id,
            edits=edits,
            sent_at=sent.sent_at,
            technician="dana",
            reply=record,
        )
        self.log = (*self.log, logged)
        return reply


@pytest.fixture
def talk() -> Talk:
    """An empty conversation."""
    return Talk()


def test_the_verdict_comes_first_then_the_echo(talk: Talk) -> None:
    """Readable at arm's length: the first line is what is decided."""
    reply = talk.say("pri 118V sec 0V pri-ohm open")

    first, second, third = reply.text.splitlines()[:3]
    assert first.startswith("The primary is open")
    assert second == "Transformer BAD: replace it"
    assert third == "Read: primary 118 V · secondary 0 V · primary open"


def test_a_caution_is_said_once_while_nothing_changes(talk: Talk) -> None:
    """Locking out is said with the first dead test and not with the second."""
    first = talk.say("120 supply, pri 118v sec 0v")
    second = talk.say("pri ohms open")

    assert "prove_dead" in first.cautions
    assert "prove_dead" not in second.cautions


def test_a_shock_stops_the_diagnosis_until_all_is_well(talk: Talk) -> None:
    """People first; what was sent is kept; word that all is well lets it go on."""
    stopped = talk.say("got bit working on this thing hot. pri 118v sec 0v")
    still = talk.say("pri ohms open")
    going_on = talk.say("all good, nobody hurt")

    assert stopped.record()["verdict"] is None
    assert still.record()["verdict"] is None
    assert going_on.record()["verdict"]["finding"] == "primary_open"


def test_an_edit_answers_with_the_new_text_and_says_what_changed(talk: Talk) -> None:
    """The edited value replaces the old one in the verdict too."""
    talk.say("120 supply, pri 118v sec 24.9v")
    edited = talk.say("120 supply, pri 118v sec 0v", edits="m1")

    assert {r["measure"]: r["value"] for r in edited.record()["readings"]} == {"primary_volts": 118.0, "secondary_volts": 0.0}
    assert edited.record()["verdict"]["transformer"] == "bad"


def test_a_bare_value_answers_the_test_just_asked(talk: Talk) -> None:
    """One word is enough with gloves on."""
    asked = talk.say("120 supply, pri 118v sec 0v").record()["next_test"]["measure"]
    reply = talk.say("open")

    assert [r["measure"] for r in reply.record()["readings"]] == [asked]


def test_what_was_not_understood_stands_in_the_reply(talk: Talk) -> None:
    """Nothing is dropped in silence."""
    reply = talk.say("pri 118v flibbergromble")

    assert reply.record()["unread"] == ["flibbergromble"]
    assert "flibbergromble" in reply.text


def test_spanish_is_answered_in_spanish(talk: Talk) -> None:
    """Written to in Spanish it answers so, and goes on so with bare readings."""
    talk.say("el primario me da 119 volts, no hay voltaje en el secundario")
    reply = talk.say("119")

    assert reply.language == "es"
    assert "Read:" not in reply.text


@pytest.mark.parametrize("text", ["", "   ", "\x00\x07", "😤", "مرحبا", "1e9 V pri", "-5 ohm sec", "x" * 10_000])
def test_any_text_gets_a_short_answer(talk: Talk, text: str) -> None:
    """Bad input is answered in a few lines and leaves no reading."""
    reply = talk.say(text)

    assert reply.text
    assert len(reply.text) < 4_096
    assert reply.record()["readings"] == []


def test_steps_come_to_the_same_as_a_fold(talk: Talk) -> None:
    """A restart in the middle of a job changes nothing of the next reply."""
    for text in ("120 supply, pri 118v sec 0v", "pri ohms open", "undo", "pri ohms 19.4", "sec ohms OL"):
        talk.say(text)
    state = fold(())
    for turn in talk.log:
        state = step(state, turn)
    sent = Turn(number=9, text="next", message_id="m9", sent_at=START, technician="dana")

    assert reply_to(state, sent).record() == answer(talk.log, sent).record()


def test_no_button_has_a_name_of_ours(talk: Talk) -> None:
    """A value that can't be there has no likely other reading: no button then, rather than one that nobody understands."""
    reply = talk.say("sec lifted 123V")

    assert reply.message.unclear
    assert not [button for button in reply.buttons if "_" in button]
