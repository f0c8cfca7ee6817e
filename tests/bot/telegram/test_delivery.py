"""Whatever comes in: nothing lost, nothing wrong, each message answered once. On each store."""

import sqlite3
import time
from datetime import timedelta

import pytest
from sqlalchemy import URL, create_engine, text
from sqlalchemy.orm import Session

from bot.channels.telegram import turn
from bot.delivery import inbox, outbox
from bot.delivery.clearing import clear
from bot.delivery.letters import Letter
from bot.delivery.outbox import Mark
from bot.delivery.rounds import utc_now
from tests.bot.telegram.bot_api import BotApi
from tests.bot.telegram.calls import Fault
from tests.bot.telegram.phone import Phone
from tests.bot.telegram.served import OWNER, Served


def test_each_message_is_answered_once_and_in_order(served_on_each: Served, api: BotApi) -> None:
    """Several chats at a time, each in the order of its messages."""
    phones = [Phone(api, 2000 + number) for number in range(6)]
    for phone in phones:
        served_on_each.let_in(phone.user_id)
    sent = [(phone, phone.send(f"pri {110 + turn}V")) for turn in range(4) for phone in phones]

    for phone, one in sent:
        phone.wait(one, 30)

    assert [len(phone.answers(one)) for phone, one in sent] == [1] * len(sent)
    for phone in phones:
        answered = [m["quotes"] for (chat, _), m in sorted(api.messages.items()) if chat == phone.chat_id]
        assert answered == sorted(answered)


def test_an_update_that_comes_again_is_answered_once(served_on_each: Served, api: BotApi, owner: Phone) -> None:
    """At once, and after others."""
    message = owner.message(text="pri 118V sec 0V")
    number = api.push({"message": message}, times=3)
    owner.wait(message["message_id"])

    api.push({"message": message}, number=number)
    owner.ask("help")

    assert len(owner.answers(message["message_id"])) == 1
    assert served_on_each.ask_store("SELECT count(*) FROM logged_message WHERE text LIKE 'pri 118%'") == [(1,)]


def test_updates_out_of_order_are_all_answered(served_on_each: Served, api: BotApi, owner: Phone) -> None:
    """A number lower than what was seen before is no repeat."""
    later, earlier = owner.message(text="sec 0V"), owner.message(text="pri 118V")
    api.push({"message": later}, number=5002)
    owner.wait(later["message_id"])
    api.wait(lambda: not api.pending)  # confirmed: what comes now is not confirmed with it

    api.push({"message": earlier}, number=5001)

    assert owner.wait(earlier["message_id"])


@pytest.mark.parametrize(
    "poison",
    [
        {"message": {"message_id": 5, "date": "yesterday", "chat": {"id": OWNER, "type": "private"}}},
        {"message": {"message_id": 5, "chat": {"id": OWNER}}},
        {"message": {"message_id": 5, "date": 1, "chat": {"id": OWNER, "type": "private"}, "from": {"id": "x"}, "entities": 7}},
        {"message": "not even an object"},
        {"message": {"chat": {"id": 2**80}}},
        {"callback_query": {"id": "1", "message": {"chat": {"id": OWNER}}}},
        {"something_new": {"x": 1}},
    ],
)
def test_an_update_that_cannot_be_read_is_kept_with_its_error_and_stops_nobody(
    served: Served, api: BotApi, owner: Phone, poison: dict
) -> None:
    """The next message is answered; the row says what was wrong with it."""
    number = api.push(poison)

    assert "118" in owner.ask("pri 118V")["text"]

    api.wait(lambda: served.ask_store(f"SELECT done_at FROM inbox WHERE update_id = {number} AND done_at IS NOT NULL"))
    ((error, body),) = served.ask_store(f"SELECT error, body FROM inbox WHERE update_id = {number}")
    assert error
    assert body


@pytest.mark.parametrize(
    "body",
    [
        b"<html>Log in to this network</html>",
        b"null",
        b"{}",
        b'{"ok": true, "result": 7}',
        b'{"ok": true, "result": [{"update_id": 1000000000000000000000}, {"update_id": true}, 5, {"x": 1}]}',
        b'{"ok": true, "result": ' + b"[" * 100_000,
    ],
)
def test_whatever_comes_instead_of_updates_the_next_question_is_asked(
    served: Served, api: BotApi, owner: Phone, body: bytes
) -> None:
    """A network with a login page, a broken proxy: nothing is lost and nobody has to start us again."""
    owner.ask("help")
    api.faults.append(Fault("getUpdates", body=body))
    first = owner.send("pri 118V")

    assert owner.wait(first)
    api.wait(lambda: not api.faults)
    assert owner.ask("sec 24V")


def test_a_turn_that_always_fails_is_told_after_three_times(
    served_on_each: Served, api: BotApi, owner: Phone, monkeypatch: pytest.MonkeyPatch
) -> None:
    """Never silence, never a loop; nothing of the broken turn stays, and the next message is read."""
    honest, tried = turn.take, []

    def broken(session: Session, sent, memory):
        taken = honest(session, sent, memory)
        if "trap" in sent.text:
            tried.append(sent.text)
            raise ZeroDivisionError
        return taken

    monkeypatch.setattr(turn, "take", broken)

    told = owner.ask("trap 118V")["text"]

    assert "could not be worked on" in told
    assert len(tried) == 3
    assert "24" in owner.ask("sec 24V")["text"]
    assert served_on_each.ask_store("SELECT count(*) FROM logged_message WHERE text LIKE 'trap%'") == [(0,)]
    assert served_on_each.ask_store("SELECT failures, error FROM inbox WHERE failures > 0") == [(3, "ZeroDivisionError")]


def test_a_row_that_is_due_in_a_distant_future_does_not_rest_so_long(session: Session) -> None:
    """The clock was set back while we were down: an hour at most."""
    from bot.delivery.letters import Letter

    connection = session.connection()
    outbox.put(connection, 1, OWNER, [Letter(kind="text", body={"text": "x"})])
    outbox.put_off(connection, (1, 0), utc_now() + timedelta(days=400), maybe_sent=False, why="RetryAfter")

    (row,) = outbox.unsent(connection, OWNER, utc_now())

    assert row.wait_s == outbox.LONGEST_WAIT_S


def test_old_rows_are_deleted_and_those_with_an_error_stay_longer(session: Session) -> None:
    """The delivery's tables stay as small as three days; the log of jobs is not theirs."""
    connection, now = session.connection(), utc_now()
    for number, age in ((1, 100), (2, 100), (3, 1)):
        inbox.receive(connection, [{"update_id": number, "message": {"chat": {"id": 5}}}], now - timedelta(hours=age))
    inbox.done(connection, 1, now - timedelta(hours=100))
    inbox.failed(connection, 2, "TypeError", now - timedelta(hours=100))
    inbox.done(connection, 3, now - timedelta(hours=1))
    for number in (1, 3):
        outbox.put(connection, number, 5, [Letter(kind="text", body={"text": "x"})])
    outbox.mark(connection, [Mark(key=(1, 0), message_id=7)], now - timedelta(hours=100))

    assert clear(connection, now) == 2
    assert clear(connection, now) == 0
    assert clear(connection, now + timedelta(days=31)) == 2
    assert [row.key for row in outbox.unsent(connection, 5, now)] == [(3, 0)]


def test_what_was_said_does_not_stay_in_the_delivery_tables(served_on_each: Served, api: BotApi, owner: Phone) -> None:
    """Once answered, words are in the log of the job alone, where `forget` finds them."""
    owner.ask("pri 118V sec 0V")
    api.wait(lambda: served_on_each.ask_store("SELECT count(*) FROM outbox WHERE done_at IS NULL") == [(0,)])

    assert served_on_each.ask_store("SELECT DISTINCT body FROM inbox") == [(None,)]
    assert served_on_each.ask_store("SELECT DISTINCT body FROM outbox") == [(None,)]


def test_a_database_that_drops_every_connection_loses_nothing(api: BotApi, postgres_url: URL) -> None:
    """As a restart of it does, again and again while messages come."""
    ends = (
        "SELECT pg_terminate_backend(pid) FROM pg_stat_activity WHERE datname = current_database() AND pid <> pg_backend_pid()"
    )
    phone = Phone(api, OWNER)
    with Served(api, postgres_url) as served:
        phone.ask("help")
        other = create_engine(postgres_url)
        sent = []
        for volts in range(110, 116):
            sent.append(phone.send(f"pri {volts}V"))
            with other.connect() as connection:
                connection.execute(text(ends))
        for one in sent:
            phone.wait(one, 30)
        api.wait(lambda: served.ask_store("SELECT count(*) FROM outbox WHERE done_at IS NULL") == [(0,)])
        other.dispose()

        assert served.ask_store("SELECT count(*) FROM logged_message") == [(7,)]
        assert served.ask_store("SELECT count(*) FROM inbox WHERE error IS NOT NULL") == [(0,)]


def test_a_locked_sqlite_file_is_waited_for(api: BotApi, sqlite_url: URL, monkeypatch: pytest.MonkeyPatch) -> None:
    """Another program writes for longer than we wait: the message is not to blame, and is answered afterwards."""
    monkeypatch.setattr("bot.store.engine.BUSY_MS", 100)
    phone = Phone(api, OWNER)
    with Served(api, sqlite_url) as served:
        phone.ask("help")
        other = sqlite3.connect(sqlite_url.database or "", isolation_level=None)
        other.execute("BEGIN IMMEDIATE")
        sent = phone.send("pri 118V")
        time.sleep(1.0)
        other.execute("ROLLBACK")
        other.close()

        assert phone.wait(sent, 20)
        assert served.ask_store("SELECT sum(failures) FROM inbox") == [(0,)]
