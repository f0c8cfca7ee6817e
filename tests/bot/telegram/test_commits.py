"""How often a message waits for the disk, and what a kill or a power cut could take back."""

import asyncio
from collections.abc import Iterator
from contextlib import contextmanager

import pytest
from sqlalchemy import URL, Connection, Engine, event, text

from bot.channels.telegram import turn
from bot.delivery.transactions import Transactions
from bot.store.schema import open_store
from tests.bot.telegram.bot_api import BotApi
from tests.bot.telegram.phone import Phone
from tests.bot.telegram.served import Served


@contextmanager
def commits(engine: Engine) -> Iterator[list[bool]]:
    """Each commit that wrote something: whether it waits for the disk."""
    made: list[bool] = []
    changes: list[int] = []

    def begun(connection: Connection) -> None:
        changes.append(connection.connection.driver_connection.total_changes)

    def committed(connection: Connection) -> None:
        driver = connection.connection.driver_connection
        if driver.total_changes > changes[-1]:
            made.append(not connection.get_execution_options().get("lazy", False))

    event.listen(engine, "begin", begun)
    event.listen(engine, "commit", committed)
    yield made
    event.remove(engine, "begin", begun)
    event.remove(engine, "commit", committed)


def test_a_message_alone_waits_for_the_disk_once(served: Served, api: BotApi, owner: Phone) -> None:
    """It is written down and worked on in one commit; that its answer went out is another, which waits for nothing."""
    owner.ask("pri 118V")
    served.settle()

    with commits(served.engine) as made:
        owner.ask("sec 0V")
        served.settle()

    assert made == [True, False]


def test_a_message_alone_that_fails_is_written_down_and_worked_on_later(
    served: Served, api: BotApi, owner: Phone, monkeypatch: pytest.MonkeyPatch
) -> None:
    """Its first try leaves nothing behind, not even that it came."""
    owner.ask("pri 118V")
    served.settle()
    failures = iter([ZeroDivisionError(), ZeroDivisionError()])
    real = turn.take

    def take(*args: object) -> object:
        if (failure := next(failures, None)) is not None:
            raise failure
        return real(*args)

    monkeypatch.setattr(turn, "take", take)
    sent = owner.send("sec 0V")

    assert owner.wait(sent)
    served.settle()
    assert len(owner.answers(sent)) == 1
    assert served.ask_store("SELECT max(failures) FROM inbox") == [(1,)]


def test_a_message_alone_that_came_before_is_not_worked_on_again(served: Served, api: BotApi, owner: Phone) -> None:
    """Nor does it keep its chat from the next."""
    message = owner.message(text="pri 118V sec 0V")
    number = api.push({"message": message})
    owner.wait(message["message_id"])
    served.settle()

    api.push({"message": message}, number=number)
    api.wait(lambda: not api.pending)
    owner.ask("help")

    assert len(owner.answers(message["message_id"])) == 1


def test_a_photo_alone_is_written_down_before_it_is_fetched(served: Served, api: BotApi, owner: Phone) -> None:
    """What must be asked of the messenger is asked outside of the transaction."""
    owner.ask("pri 118V")
    served.settle()

    sent = owner.photo(b"\x00no picture", file_id="none")

    assert "photo" in owner.wait(sent)["text"].lower()


def test_of_two_lazy_commits_one_waits_for_the_disk(sqlite_url: URL) -> None:
    """So a power cut takes back at most one mark beside the send that it met."""
    engine = open_store(sqlite_url)
    transactions = Transactions(engine)

    def write(connection: Connection) -> None:
        connection.execute(text("INSERT INTO setting (name, value) SELECT 'k' || count(*), '1' FROM setting"))

    def look(connection: Connection) -> None:
        connection.execute(text("SELECT count(*) FROM setting")).all()

    async def several() -> None:
        for _ in range(2):
            await transactions.run_lazily(write)
        await transactions.run_lazily(write)
        await transactions.run(look)  # brings nothing to the disk
        await transactions.run_lazily(write)
        await transactions.run(write)
        await transactions.run_lazily(write)

    with commits(engine) as made:
        asyncio.run(several())
    engine.dispose()

    assert made == [False, True, False, True, True, False]


def test_a_lazy_commit_leaves_the_setting_as_it_was_for_others(sqlite_url: URL) -> None:
    """All that is no mark waits for the disk."""
    engine = open_store(sqlite_url)

    def level(*, lazy: bool) -> object:
        with engine.connect().execution_options(lazy=lazy) as connection:
            return connection.scalar(text("PRAGMA synchronous"))

    assert [level(lazy=False), level(lazy=True), level(lazy=False)] == [2, 1, 2]
    engine.dispose()
