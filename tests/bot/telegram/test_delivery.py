"""Whatever breaks on the way: nothing lost, nothing wrong, each message answered once. On each store."""

import json
import sqlite3
import time
import urllib.error
import urllib.request
from datetime import timedelta

import pytest
from sqlalchemy import URL, create_engine, text
from sqlalchemy.orm import Session

from bot.channels.telegram import turn
from bot.delivery import inbox, outbox
from bot.delivery.rounds import utc_now
from bot.delivery.transactions import StoreAwayError
from bot.delivery.webhook import HEADER, PATH, secret_of
from tests.bot.telegram.bot_api import TOKEN, BotApi
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

    assert inbox.clear(connection, now) == 1
    assert inbox.clear(connection, now + timedelta(days=31)) == 2


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


# --- the webhook ---


def free_port() -> int:
    """A port nobody listens at."""
    import socket

    with socket.socket() as one:
        one.bind(("127.0.0.1", 0))
        return one.getsockname()[1]


@pytest.fixture
def hooked(api: BotApi, store_url: URL):
    """A bot behind a webhook."""
    port = free_port()
    with Served(api, store_url, webhook=f"http://127.0.0.1:{port}", listen=f"127.0.0.1:{port}") as running:
        api.wait(lambda: api.webhook.get("url"))
        yield running


def post(hooked: Served, body: bytes, secret: str | None = None) -> int:
    """Send something to the webhook; the status."""
    headers = {} if secret is None else {HEADER: secret}
    request = urllib.request.Request(f"{hooked.settings.webhook}{PATH}", data=body, headers=headers)
    try:
        with urllib.request.urlopen(request, timeout=5) as answer:
            return answer.status
    except urllib.error.HTTPError as error:
        with error:
            return error.code


def test_a_webhook_answers_each_message_once(hooked: Served, api: BotApi) -> None:
    """Set with our secret and the kinds that we read; a repeat is answered 200 and changes nothing."""
    phone = Phone(api, OWNER)
    message = phone.message(text="pri 118V sec 0V")
    api.push({"message": message}, times=2)

    assert "118" in phone.wait(message["message_id"])["text"]
    assert phone.ask("help")
    assert len(phone.answers(message["message_id"])) == 1
    assert json.loads(api.webhook["allowed_updates"]) == ["message", "edited_message", "callback_query"]
    assert len(api.webhook["secret_token"]) == 64


def test_a_forged_webhook_is_refused(hooked: Served, api: BotApi) -> None:
    """Without the secret, or with another: nothing is written."""
    forged = json.dumps({"update_id": 1, "message": Phone(api, OWNER).message(text="pri 118V")}).encode()

    statuses = [
        post(hooked, forged),
        post(hooked, forged, "0" * 64),
        post(hooked, forged, "\u00e9"),
        post(hooked, forged, TOKEN),
    ]

    assert statuses == [403, 403, 403, 403]
    assert hooked.ask_store("SELECT count(*) FROM inbox") == [(0,)]


@pytest.mark.parametrize("body", [b"", b"{", b"[]", b"7", b'{"message": {}}', b'{"update_id": "x"}', b"[" * 100_000])
def test_what_is_no_update_is_refused(hooked: Served, body: bytes) -> None:
    """400, and the bot goes on."""
    assert post(hooked, body, secret_of(TOKEN)) == 400


def test_an_update_larger_than_any_is_cut_off(hooked: Served, api: BotApi) -> None:
    """The body is not even read; the bot goes on."""
    with pytest.raises((urllib.error.URLError, ConnectionError, AssertionError)):
        assert post(hooked, b'{"update_id": 1, "x": "' + b"a" * 3_000_000 + b'"}', secret_of(TOKEN)) == 200

    assert Phone(api, OWNER).ask("help")


def test_an_update_longer_than_a_person_can_cause_is_kept_without_its_body(served: Served, api: BotApi, owner: Phone) -> None:
    """Told that it could not be worked on; the store does not fill."""
    message = owner.message(text="a" * 100_000)
    number = api.push({"message": message})

    api.wait(lambda: [m for m in api.messages.values() if "could not be worked on" in m["text"]])

    ((length,),) = served.ask_store(f"SELECT length(body) FROM inbox WHERE update_id = {number}")
    assert length < 100


# --- the health address ---


def test_the_health_address_tells_a_supervisor(api: BotApi, sqlite_url: URL) -> None:
    """200 with the figures while all is well."""
    port = free_port()
    with Served(api, sqlite_url, health=f"127.0.0.1:{port}"):
        Phone(api, OWNER).ask("help")
        with urllib.request.urlopen(f"http://127.0.0.1:{port}/health", timeout=5) as answer:
            told = json.loads(answer.read())

    assert told["well"] is True
    assert told["waiting"] == 0
    assert told["silent_s"] < 60


@pytest.mark.parametrize("trouble", ["messenger", "store"])
def test_the_health_address_says_503_where_work_has_stopped(
    api: BotApi, sqlite_url: URL, monkeypatch: pytest.MonkeyPatch, trouble: str
) -> None:
    """The messenger was silent for longer than three polls, or the store is away: a supervisor may start us again."""

    def away(*_: object) -> tuple[int, int]:
        raise StoreAwayError

    if trouble == "store":
        monkeypatch.setattr("bot.delivery.health._counts", away)
    else:
        monkeypatch.setattr("bot.delivery.health.SILENT_S", -1.0)
    port = free_port()
    with Served(api, sqlite_url, health=f"127.0.0.1:{port}"):
        Phone(api, OWNER).ask("help")
        with pytest.raises(urllib.error.HTTPError) as told, urllib.request.urlopen(f"http://127.0.0.1:{port}/health"):
            pass

    with told.value as answer:
        assert answer.code == 503
        assert json.loads(answer.read())["well"] is False
