"""Whatever breaks on the way out: nothing lost, at worst a silent repeat, and one chat in trouble holds up no other. On each store."""

import time
from datetime import timedelta

import pytest
from sqlalchemy import URL, text

from bot.delivery import inbox
from bot.delivery.rounds import utc_now
from tests.bot.telegram.bot_api import BotApi
from tests.bot.telegram.calls import Fault
from tests.bot.telegram.phone import Phone
from tests.bot.telegram.served import OWNER, Served


def test_a_429_is_waited_for_and_the_others_go_on(served_on_each: Served, api: BotApi, owner: Phone) -> None:
    """The chat that was refused rests as long as it was told; another is served meanwhile; the order stays."""
    served_on_each.let_in(2100)
    api.faults.append(Fault("sendMessage", code=429, retry_after=4))
    began = time.monotonic()
    first, second = owner.send("pri 118V"), owner.send("sec 0V")
    api.wait(lambda: [c for c in api.calls if c.refused == 429])

    other = Phone(api, 2100).ask("pri 239V")
    rests = owner.answers(first) == []
    shown = owner.wait(first), owner.wait(second)

    assert other["text"]
    assert rests
    assert time.monotonic() - began >= 4.0
    assert shown[0]["message_id"] < shown[1]["message_id"]
    assert not shown[0]["silent"]  # a 429 says that nothing was sent


@pytest.mark.parametrize("code", [500, 502, 504])
def test_a_5xx_is_tried_again(served_on_each: Served, api: BotApi, owner: Phone, code: int) -> None:
    """Nobody knows whether it arrived: the second comes without a sound, quoting the message."""
    api.faults.append(Fault("sendMessage", code=code))
    sent = owner.send("pri 118V sec 0V")

    shown = owner.wait(sent)

    assert (shown["silent"], shown["quotes"]) == (True, sent)
    assert len(owner.answers(sent)) == 1


def test_a_reply_whose_answer_was_lost_is_repeated_silently(served_on_each: Served, api: BotApi, owner: Phone) -> None:
    """Better twice than not at all: a double is seen to be the same answer, and makes no sound."""
    api.faults.append(Fault("sendMessage", lose_answer=True))
    sent = owner.send("pri 118V sec 0V")

    api.wait(lambda: len(owner.answers(sent)) == 2)

    first, second = owner.answers(sent)
    assert first["text"] == second["text"]
    assert [first["silent"], second["silent"]] == [False, True]


def test_an_edit_whose_answer_was_lost_is_no_double(served_on_each: Served, api: BotApi, owner: Phone) -> None:
    """The refusal "message is not modified" means done."""
    sent = owner.send("pri 118V sec 246V")
    owner.wait(sent)
    api.faults.append(Fault("editMessageText", lose_answer=True))

    owner.edit(sent, "pri 118V sec 24.6V")
    api.wait(lambda: [c for c in api.calls if c.method == "editMessageText" and c.refused == 400])

    api.wait(lambda: served_on_each.ask_store("SELECT count(*) FROM outbox WHERE done_at IS NULL") == [(0,)])
    assert len(owner.answers(sent)) == 1


def test_a_reply_that_was_deleted_is_sent_anew_when_it_would_be_edited(served: Served, api: BotApi, owner: Phone) -> None:
    """The corrected verdict arrives in any case."""
    sent = owner.send("pri 118V sec 246V")
    api.messages.pop((OWNER, owner.wait(sent)["message_id"]))

    owner.edit(sent, "pri 118V sec 24.6V")

    assert "24.6" in owner.wait(sent)["text"]


def test_marks_that_are_refused_go_out_plain(served: Served, api: BotApi, owner: Phone, monkeypatch) -> None:
    """The words matter more than the bold."""
    monkeypatch.setattr("bot.channels.telegram.replies.pages", lambda text, _: [f"<blink>{text}"])

    assert "118" in owner.ask("pri 118V sec 0V")["text"]


def test_a_person_who_blocked_the_bot_blocks_nobody(served: Served, api: BotApi, owner: Phone) -> None:
    """That reply is given up with its reason, and the next goes out."""
    api.faults.append(Fault("sendMessage", code=403))
    lost = owner.send("pri 118V")

    owner.ask("sec 0V")

    assert owner.answers(lost) == []
    assert served.ask_store("SELECT error FROM outbox WHERE error IS NOT NULL") == [("Forbidden",)]


def test_nothing_is_lost_while_telegram_refuses_everything(served_on_each: Served, api: BotApi, owner: Phone) -> None:
    """It comes back, and so do the answers, in order."""
    owner.ask("help")
    api.refuse_all = True
    sent = [owner.send(f"pri {volts}V") for volts in (115, 116, 117)]
    time.sleep(1.5)
    api.refuse_all = False

    shown = [owner.wait(one, 30)["message_id"] for one in sent]

    assert shown == sorted(shown)
    assert [len(owner.answers(one)) for one in sent] == [1, 1, 1]


def test_a_slow_telegram_holds_up_its_chat_alone(served_on_each: Served, api: BotApi, owner: Phone) -> None:
    """Others are served while one send hangs."""
    served_on_each.let_in(2101)
    api.faults.append(Fault("sendMessage", wait_s=5.0))
    slow = owner.send("pri 118V")
    api.wait(lambda: not api.faults)

    Phone(api, 2101).ask("pri 239V")

    assert owner.answers(slow) == []
    assert owner.wait(slow)


def test_telegram_unreachable_at_the_start_is_waited_for(sqlite_url: URL) -> None:
    """The connection is refused at first; nobody has to start us again."""
    with BotApi() as api:
        api.refuse_all = True
        with Served(api, sqlite_url):
            sent = Phone(api, OWNER).send("pri 118V")
            time.sleep(1.0)
            api.refuse_all = False

            assert Phone(api, OWNER).wait(sent, 20)


def test_what_was_not_sent_goes_out_after_a_restart(api: BotApi, store_url: URL) -> None:
    """The reply was committed with its state: stopped before it could be sent, it is sent by the next."""
    with Served(api, store_url) as first:
        phone = Phone(api, OWNER)
        phone.ask("help")
        api.faults.extend(Fault("sendMessage", code=429, retry_after=30) for _ in range(1))
        sent = phone.send("pri 118V sec 0V")
        api.wait(lambda: [c for c in api.calls if c.refused == 429])
        api.wait(lambda: first.ask_store("SELECT attempts FROM outbox WHERE done_at IS NULL") == [(1,)])
        with first.engine.begin() as connection:
            connection.exec_driver_sql("UPDATE outbox SET due_at = NULL")

    with Served(api, store_url):
        shown = phone.wait(sent)

    assert "118" in shown["text"]
    assert len(phone.answers(sent)) == 1


def test_what_was_received_and_not_worked_on_is_answered_after_a_restart(api: BotApi, store_url: URL) -> None:
    """It was confirmed to the messenger, so only we have it."""
    phone = Phone(api, OWNER)
    message = phone.message(text="pri 118V sec 0V")
    with Served(api, store_url) as first:
        first.stop()
        with first.engine.begin() as connection:
            inbox.receive(connection, [{"update_id": 77, "message": message}], utc_now())

    with Served(api, store_url):
        assert "118" in phone.wait(message["message_id"])["text"]


def wait_until_put_off(served: Served) -> None:
    """Until the store has it in writing that a row goes out later: by the clock as it is now."""
    for _ in range(100):
        with served.engine.connect() as connection:
            if connection.scalar(text("SELECT count(*) FROM outbox WHERE due_at IS NOT NULL")):
                return
        time.sleep(0.005)
    pytest.fail("no row was put off")


@pytest.mark.parametrize("hours", [-30, 30])
def test_a_clock_that_jumps_silences_nobody(api: BotApi, sqlite_url: URL, hours: int) -> None:
    """A reply is resting when the clock is set: it goes out soon all the same, and new messages are read."""
    shift = timedelta()
    with Served(api, sqlite_url, now=lambda: utc_now() + shift) as served:
        phone = Phone(api, OWNER)
        api.faults.append(Fault("sendMessage", code=429, retry_after=1))
        sent = phone.send("pri 118V")
        api.wait(lambda: [c for c in api.calls if c.refused == 429])
        wait_until_put_off(served)
        shift = timedelta(hours=hours)

        assert phone.wait(sent, 10)
        assert phone.ask("sec 0V")
