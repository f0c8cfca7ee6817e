"""The written conversations, driven through the real library over HTTP: each reply is the one that every other channel gives."""

from collections.abc import Iterator
from dataclasses import replace
from datetime import UTC, datetime
from importlib.resources import files

import pytest

from bot.script.play import ANY_CODE, play
from bot.script.scene import Scene, read_scene
from bot.store.hand_over import CODE, code_in
from tests.bot.telegram.bot_api import BotApi
from tests.bot.telegram.phone import Phone
from tests.bot.telegram.served import Served

SCENES = sorted((one for one in files("demo_conversations").iterdir() if one.name.endswith(".chat")), key=lambda one: one.name)


class Clock:
    """The time of the conversation, for phones and bot alike."""

    def __init__(self) -> None:
        self.at = datetime(2026, 1, 5, tzinfo=UTC)

    def __call__(self) -> datetime:  # noqa: D102
        return self.at


@pytest.fixture
def clock(monkeypatch: pytest.MonkeyPatch) -> Clock:
    """A clock that the test sets; days are told in its zone."""
    monkeypatch.setattr("bot.channels.telegram.service.local_zone", lambda: UTC)
    return Clock()


@pytest.fixture
def bot(api: BotApi, sqlite_url, clock: Clock) -> Iterator[Served]:
    """A bot that lives in the conversation's time."""
    with Served(api, sqlite_url, now=clock, messages_a_minute=10_000) as running:
        yield running


@pytest.mark.parametrize("scene", SCENES, ids=lambda one: one.name.removesuffix(".chat"))
def test_a_conversation_over_telegram_is_the_one_that_is_written(bot: Served, api: BotApi, clock: Clock, scene) -> None:
    """Texts, edits, taps, several technicians: word for word what the desk says."""
    converse(bot, api, clock, read_scene(scene.read_text()))


@pytest.mark.parametrize("scene", SCENES[::3], ids=lambda one: one.name.removesuffix(".chat"))
def test_in_a_group_it_is_the_same_conversation(bot: Served, api: BotApi, clock: Clock, scene) -> None:
    """Everybody in one chat, the bot addressed by name, others talking between."""
    converse(bot, api, clock, read_scene(scene.read_text()), group=-1_007_001)


def test_two_conversations_at_once_in_one_group_are_those_two(bot: Served, api: BotApi, clock: Clock) -> None:
    """Two technicians on two roofs: what one sends is no part of the other's job."""
    one, two = (read_scene(scene.read_text()) for scene in (SCENES[0], SCENES[3]))
    for number, scene in enumerate((one, two)):
        for spoken in scene.spoken:
            spoken.who = f"{spoken.who}{number}"
    whole = replace(one, spoken=sorted([*one.spoken, *two.spoken], key=lambda spoken: spoken.sent_at), gaps={})

    converse(bot, api, clock, whole, group=-1_007_001)


def converse(bot: Served, api: BotApi, clock: Clock, written: Scene, group: int | None = None) -> None:
    """Say everything of a conversation on phones, and compare what is shown there."""
    phones: dict[str, Phone] = {}
    ids: dict[str, int] = {}
    shown: dict[str, dict] = {}
    code = ""
    for expected in play(written):
        spoken = expected.spoken
        if spoken.who not in phones:
            phones[spoken.who] = Phone(api, 3000 + len(phones), name=spoken.who, chat_id=group)
            bot.let_in(phones[spoken.who].user_id, spoken.who)
        phone = phones[spoken.who]
        clock.at = spoken.sent_at
        phone.now = clock.at.timestamp
        text = ANY_CODE.sub(code, spoken.text) if code else spoken.text
        if group is not None and not spoken.tap:
            phone.send("did anybody bring the 240 V meter?")
            text = f"@ohmreply_bot {text}"
        if spoken.tap:
            asked = shown[spoken.who]["message_id"]
            phone.tap(shown[spoken.who], text)
        elif spoken.edit:
            asked = ids[f"{spoken.who} {spoken.message_id}"]
            phone.edit(asked, text)
        else:
            asked = phone.send(text)
            ids[f"{spoken.who} {spoken.message_id}"] = asked
        _settle(bot, api)

        answers = [one for one in phone.answers(asked) if "text" in one]
        shown[spoken.who] = answers[-1]
        told = "\n".join(one["text"] for one in (answers if not spoken.edit else answers[-1:]))
        code = code_in(told) or code
        assert CODE.sub("CODE", told) == expected.reply, spoken.line


def _settle(bot: Served, api: BotApi) -> None:
    """Until nothing is waiting and nothing unsent."""

    def settled() -> bool:
        last = bot.ask_store(f"SELECT done_at IS NOT NULL FROM inbox WHERE update_id = {api.last_update}")
        return last == [(1,)] and bot.ask_store("SELECT count(*) FROM outbox WHERE done_at IS NULL") == [(0,)]

    api.wait(settled, 20)
