"""Whoever forgets everything leaves nothing behind, in this channel's own tables either."""

import json
from datetime import timedelta

import pytest
from sqlalchemy import LargeBinary, Text, cast, select
from sqlalchemy.orm import Session

from bot.channels.telegram import leave
from bot.delivery import inbox
from bot.delivery.rounds import utc_now
from bot.store.jobs import close_job
from bot.store.retention import keep_for
from bot.store.tables import Base, Job
from tests.bot.telegram.bot_api import BotApi
from tests.bot.telegram.phone import Phone
from tests.bot.telegram.served import OWNER, Served
from tests.bot.telegram.test_talking import labels, photo

WHO = 734_501
GROUP = -1_007_734
OPEN_PRIMARY = "pri 118V sec 0V pri-ohm open"


def places(served: Served, sought: object) -> list[str]:
    """Every column of every table that has a number or a text in it."""
    found = []
    with served.engine.connect() as connection:
        for table in Base.metadata.sorted_tables:
            for column in table.columns:
                if isinstance(column.type, LargeBinary):
                    continue
                if connection.execute(select(table).where(cast(column, Text).like(f"%{sought}%"))).first() is not None:
                    found.append(f"{table.name}.{column.name}")
    return found


def a_life(served: Served, api: BotApi) -> Phone:
    """Somebody who wrote, sent a photo, was asked, failed to be read, was too early, and wrote in a group."""
    Phone(api, WHO, name="Quillon").ask("hello")
    served.let_in(WHO, "Quillon")
    phone = Phone(api, WHO, name="Quillon")
    phone.ask("new job zanzibar freezer")
    phone.ask(OPEN_PRIMARY)
    phone.wait(phone.photo(photo(), caption="nameplate zanzibar"))
    api.push({"message": {"message_id": 5, "date": "zanzibar", "chat": {"id": WHO, "type": "private"}, "from": {"id": WHO}}})
    api.push({"message": {"message_id": 6, "date": "zanzibar", "chat": {"id": GROUP}, "from": {"id": WHO}}})
    Phone(api, WHO, name="Quillon", chat_id=GROUP).ask("@ohmreply_bot pri 117V zanzibar")
    api.wait(lambda: served.ask_store("SELECT count(*) FROM inbox WHERE error IS NOT NULL") == [(2,)])
    served.settle()
    return phone


def test_whoever_forgets_everything_stands_nowhere_any_more(served_on_each: Served, api: BotApi) -> None:
    """Jobs, photos, groups, questions, membership, invitation, what came in and what went out: no number, name or word is left."""
    phone = a_life(served_on_each, api)
    known = places(served_on_each, WHO)

    asked = phone.ask("forget everything")
    phone.tap(asked, "yes")
    told = phone.wait(asked["message_id"])
    served_on_each.settle()

    assert {"member.user_id", "invite.used_by", "outbox.chat_id", "question.user_id", "inbox.chat_id"} <= set(known)
    assert "new code" in asked["text"]
    assert "Jobs in groups go too: 1" in asked["text"]
    assert "Deleted" in told["text"]
    assert "You are out" in told["text"]
    assert [places(served_on_each, sought) for sought in (WHO, "Quillon", "zanzibar")] == [[], [], []]
    assert served_on_each.ask_store("SELECT count(*) FROM attachment") == [(0,)]
    assert "invitation" in phone.ask("pri 118V")["text"]


def test_a_yes_under_a_photo_keeps_no_photo(served: Served, api: BotApi) -> None:
    """The words are read first, and after them there is nobody to keep it for."""
    phone = a_life(served, api)
    phone.ask("forget everything")

    told = phone.wait(phone.photo(photo(61), caption="yes", file_id="photo2"))
    served.settle()

    assert "Deleted" in told["text"]
    assert places(served, WHO) == []


def test_forgetting_is_whole_or_not_at_all(served: Served, api: BotApi, monkeypatch: pytest.MonkeyPatch) -> None:
    """Where the last step of it fails, the first did not happen either."""
    phone = a_life(served, api)
    phone.ask("forget everything")
    before = places(served, "zanzibar")

    def broken(*_: object) -> bool:
        raise ZeroDivisionError

    monkeypatch.setattr(leave.members, "forget", broken)

    assert "could not be worked on" in phone.ask("yes")["text"]
    assert places(served, "zanzibar") == before
    assert served.ask_store(f"SELECT count(*) FROM member WHERE user_id = {WHO}") == [(1,)]


def test_forgetting_touches_nobody_else(served: Served, api: BotApi, owner: Phone) -> None:
    """Another's jobs, questions and place stand; a number that begins alike is another person's."""
    other, longer = Phone(api, WHO + 1, chat_id=GROUP), Phone(api, WHO * 10, chat_id=GROUP)
    for phone in (other, longer):
        served.let_in(phone.user_id)
        phone.ask(f"@ohmreply_bot {OPEN_PRIMARY}")
    leaver = a_life(served, api)

    leaver.ask("forget everything")
    leaver.ask("yes")
    served.settle()

    for phone in (other, longer):
        assert "118" in phone.ask("/history@ohmreply_bot")["text"]
        assert served.ask_store(f"SELECT count(*) FROM question WHERE user_id = {phone.user_id}") == [(1,)]
    assert owner.ask("help")["text"]


def test_in_a_group_only_what_was_sent_there_is_forgotten(served: Served, api: BotApi) -> None:
    """It says so; the private jobs and the place among the members stay."""
    phone = a_life(served, api)
    there = Phone(api, WHO, name="Quillon", chat_id=GROUP)

    asked = there.ask("/forget@ohmreply_bot")
    told = there.ask("@ohmreply_bot yes")

    assert "only what you sent in this group" in asked["text"]
    assert "Deleted" in told["text"]
    assert served.ask_store("SELECT count(*) FROM technician WHERE address LIKE '%@%'") == [(0,)]
    assert "zanzibar" in phone.ask("/jobs")["text"]


def test_the_owner_who_forgets_still_runs_the_bot(served: Served, api: BotApi, owner: Phone) -> None:
    """The settings name the owner: nobody is told of a new code, nobody is locked out."""
    owner.ask(OPEN_PRIMARY)

    asked = owner.ask("forget everything")
    told = owner.ask("yes")

    assert "code" not in asked["text"] + told["text"]
    assert "/start" in owner.ask("/invite")["text"]


def test_what_was_sent_before_the_yes_was_worked_on_is_still_answered(served: Served, api: BotApi, owner: Phone) -> None:
    """A message that waits behind the yes is a new beginning, and is not lost."""
    owner.ask(OPEN_PRIMARY)
    owner.ask("forget everything")
    messages = [owner.message(text=words) for words in ("yes", "sec 24V")]
    for message in messages:
        api.push({"message": message})

    shown = [owner.wait(message["message_id"])["text"] for message in messages]

    assert "Deleted" in shown[0]
    assert "24" in shown[1]


def test_anything_but_yes_forgets_nothing(served: Served, api: BotApi) -> None:
    """Also when it is tapped."""
    phone = a_life(served, api)
    asked = phone.ask("forget everything")
    assert labels(asked) == ["yes", "no"]

    phone.tap(asked, "no")
    phone.wait(asked["message_id"])

    assert "zanzibar" in phone.ask("/jobs")["text"]


def test_an_update_that_waits_is_not_forgotten(session: Session) -> None:
    """Only what is done with goes, and of a group only the person's own."""
    connection, now = session.connection(), utc_now()

    def arrived(number: int, chat: int, sender: int) -> None:
        raw = {"update_id": number, "message": {"chat": {"id": chat}, "from": {"id": sender}}}
        inbox.receive(connection, [json.loads(json.dumps(raw))], now)

    for number, chat, sender in ((1, WHO, WHO), (2, WHO, WHO), (3, GROUP, WHO), (4, GROUP, 7), (5, GROUP, WHO)):
        arrived(number, chat, sender)
    for number in (1, 3, 4):
        inbox.failed(connection, number, "TypeError", now)

    inbox.forget(connection, WHO, 99)

    assert inbox.waiting(connection) == 2
    assert [row[0] for row in connection.execute(select(Base.metadata.tables["inbox"].c.update_id).order_by("update_id"))] == [
        2,
        4,
        5,
    ]


def test_an_export_in_private_holds_what_was_sent_in_groups_too(served: Served, api: BotApi) -> None:
    """A file for each place; in a group only what is of that group."""
    phone = a_life(served, api)

    phone.ask("/export")
    api.wait(lambda: len(api.sent("sendDocument")) == 2, 20)
    Phone(api, WHO, name="Quillon", chat_id=GROUP).ask("/export@ohmreply_bot")
    api.wait(lambda: len(api.sent("sendDocument")) == 3, 20)

    private, group, there = (json.loads(call.files["document"]) for call in api.sent("sendDocument"))
    assert private["jobs"][-1]["name"] == "zanzibar freezer"
    assert "117V" in json.dumps(group)
    assert "118V" not in json.dumps(there)


def test_closed_jobs_whose_days_are_over_go_while_it_serves(api: BotApi, store_url, monkeypatch: pytest.MonkeyPatch) -> None:
    """`ohmreply retention` sets the days; whoever serves looks at them again and again."""
    monkeypatch.setattr("bot.delivery.rounds.CLEAR_S", 0.1)
    monkeypatch.setattr("bot.delivery.rounds.SWEEP_S", 0.1)
    with Served(api, store_url) as served:
        phone = Phone(api, OWNER)
        for name in ("older", "younger", "open"):
            phone.ask(f"new job {name}")
            phone.ask(OPEN_PRIMARY)
        with Session(served.engine) as session, session.begin():
            for days, name in ((100, "older"), (1, "younger")):
                job = session.query(Job).filter_by(name=name).one()
                close_job(session, job, None, utc_now() - timedelta(days=days))
            keep_for(session, 30)

        api.wait(lambda: served.ask_store("SELECT name FROM job ORDER BY id") == [("younger",), ("open",)], 10)
        assert served.ask_store("SELECT count(*) FROM logged_message") == [(4,)]
