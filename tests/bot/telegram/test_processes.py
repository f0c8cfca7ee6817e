"""Processes that are killed, stopped, started twice, or share the work."""

import json
import time
from pathlib import Path

import pytest
from sqlalchemy import URL, create_engine, text
from sqlalchemy.orm import Session

from bot import members
from bot.delivery.rounds import utc_now
from bot.store.schema import open_store
from tests.bot.telegram.bot_api import TOKEN, BotApi
from tests.bot.telegram.calls import Fault
from tests.bot.telegram.phone import Phone
from tests.bot.telegram.process import Process, free_port
from tests.bot.telegram.served import OWNER
from tests.bot.telegram.storm import storm

FREE = {"OHMREPLY_MESSAGES_A_SECOND": "0", "OHMREPLY_MESSAGES_A_MINUTE": "1000000"}


def logged(url: URL) -> int:
    """Messages in the log."""
    engine = create_engine(url)
    with engine.connect() as connection:
        count = connection.execute(text("SELECT count(*) FROM logged_message")).scalar_one()
    engine.dispose()
    return count


def let_in(url: URL, *user_ids: int) -> None:
    """Make some people members."""
    engine = open_store(url)
    with Session(engine) as session, session.begin():
        for user_id in user_ids:
            assert members.join(session, user_id, "First", members.invite(session, OWNER, utc_now()), utc_now())
    engine.dispose()


def test_killed_at_random_moments_no_message_is_lost(api: BotApi, store_url: URL) -> None:
    """Each is worked on once and answered; what is repeated is silent."""
    api.latency_s = 0.02
    chats = [Phone(api, number) for number in (OWNER, 2200, 2201)]
    let_in(store_url, 2200, 2201)

    tally = storm(api, lambda: Process(api, store_url, **FREE), chats, kills=4, a_second=20, seed=7)

    assert tally.lost == []
    assert tally.loud_repeats == 0
    assert tally.repeats <= tally.kills * len(chats)
    assert tally.out_of_order == 0
    assert logged(store_url) == tally.messages + 1


def test_of_three_workers_behind_a_webhook_any_can_be_killed(api: BotApi, postgres_url: URL) -> None:
    """What it had in hand is taken over within seconds, and no chat is served by two."""
    api.latency_s = 0.02

    def start() -> Process:
        """A worker. In production all share one address; here the stand-in calls the one that started last."""
        port = free_port()
        return Process(api, postgres_url, "--webhook", f"http://127.0.0.1:{port}", "--listen", f"127.0.0.1:{port}", **FREE)

    tally = storm(api, start, [Phone(api, OWNER)], kills=4, a_second=20, seed=8, others=2)

    assert tally.lost == []
    assert tally.loud_repeats == 0
    assert tally.repeats <= tally.kills
    assert logged(postgres_url) == tally.messages + 1


def test_a_killed_worker_is_taken_over_within_seconds(api: BotApi, postgres_url: URL) -> None:
    """One dies in the middle of a send that hangs; the other finishes it."""
    ports = [free_port(), free_port()]
    crew = [
        Process(api, postgres_url, "--webhook", f"http://127.0.0.1:{port}", "--listen", f"127.0.0.1:{port}", **FREE)
        for port in ports
    ]
    try:
        api.wait(lambda: len(api.sent("setWebhook")) == 2, 30)
        api._loop.call_soon_threadsafe(api.webhook.update, {"url": f"http://127.0.0.1:{ports[0]}/telegram"})
        phone = Phone(api, OWNER)
        phone.ask("help")
        api.faults.append(Fault("sendMessage", code=500, wait_s=30))
        sent = phone.send("pri 118V sec 0V")
        api.wait(lambda: not api.faults)

        crew[0].kill()
        killed = time.monotonic()
        phone.wait(sent, 15)

        assert time.monotonic() - killed < 6
    finally:
        for process in crew:
            process.kill()


def test_told_to_stop_it_finishes_what_is_in_hand(api: BotApi, sqlite_url: URL) -> None:
    """The reply under way arrives, with sound, once; the process ends well."""
    phone = Phone(api, OWNER)
    with Process(api, sqlite_url, **FREE) as process:
        phone.wait(phone.send("help"), 30)
        api.faults.append(Fault("sendMessage", wait_s=1.0))
        sent = phone.send("pri 118V sec 0V")
        api.wait(lambda: not api.faults)

        code = process.stop()

    assert code == 0
    assert [one["silent"] for one in phone.answers(sent)] == [False]
    with Process(api, sqlite_url, **FREE):
        phone.wait(phone.send("help"), 30)
    assert len(phone.answers(sent)) == 1


def test_a_second_process_on_the_same_file_is_refused(api: BotApi, sqlite_url: URL, tmp_path: Path) -> None:
    """In one clear line, while the first goes on; after the first was killed it starts."""
    phone = Phone(api, OWNER)
    with Process(api, sqlite_url) as first:
        phone.wait(phone.send("help"), 30)
        with (tmp_path / "second.log").open("wb") as log, Process(api, sqlite_url, log=log) as second:
            assert second.run.wait(20) == 2
        told = (tmp_path / "second.log").read_text().strip()
        assert "One process a file" in told.splitlines()[-1]
        assert "Traceback" not in told
        first.kill()

    with Process(api, sqlite_url):
        phone.wait(phone.send("pri 118V"), 30)


def test_a_refused_token_is_said_in_one_line(api: BotApi, sqlite_url: URL, tmp_path: Path) -> None:
    """And not shown."""
    with (tmp_path / "log").open("wb") as log, Process(api, sqlite_url, log=log, OHMREPLY_TOKEN="1:wrong") as process:
        assert process.run.wait(20) == 2

    told = (tmp_path / "log").read_text()
    assert "Telegram refuses the token" in told
    assert "1:wrong" not in told


def test_neither_token_nor_words_of_a_technician_stand_in_the_log(
    api: BotApi, sqlite_url: URL, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """Also where everything goes wrong: refusals, lost connections, poison, a broken turn. Every line is JSON."""
    words = "zweiundvierzig"
    phone = Phone(api, OWNER)
    with (tmp_path / "log").open("wb") as log, Process(api, sqlite_url, log=log, **FREE) as process:
        phone.wait(phone.send(f"pri 118V {words}"), 30)
        api.faults.extend(
            [
                Fault("sendMessage", code=400),
                Fault("sendMessage", code=500),
                Fault("sendMessage", code=403),
                Fault("sendMessage", lose_answer=True),
                Fault("sendMessage", code=429, retry_after=1),
            ]
        )
        for _ in range(3):
            phone.send(f"{words} <b>&")
        api.push({"message": {"message_id": 1, "date": words, "chat": {"id": OWNER, "type": "private"}, "text": words}})
        api.wait(lambda: not api.faults, 30)
        phone.wait(phone.send("help"), 30)
        process.stop()

    lines = (tmp_path / "log").read_text().splitlines()
    assert len([json.loads(line) for line in lines]) > 5
    assert any('"not sent"' in line for line in lines)
    told = "\n".join(lines)
    assert words not in told
    assert "118" not in told
    assert TOKEN not in told
    assert TOKEN.split(":")[1] not in told
