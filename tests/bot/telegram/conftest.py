"""A bot on each store, its stand-in of the messenger, and phones."""

from collections.abc import Iterator

import pytest
from sqlalchemy import URL

from tests.bot.telegram.bot_api import BotApi
from tests.bot.telegram.phone import Phone
from tests.bot.telegram.served import OWNER, Served


@pytest.fixture
def api() -> Iterator[BotApi]:
    """The stand-in, running."""
    with BotApi() as running:
        yield running


@pytest.fixture
def served(api: BotApi, sqlite_url: URL) -> Iterator[Served]:
    """A bot on SQLite."""
    with Served(api, sqlite_url) as running:
        yield running


@pytest.fixture
def served_on_each(api: BotApi, store_url: URL) -> Iterator[Served]:
    """A bot on each store."""
    with Served(api, store_url) as running:
        yield running


@pytest.fixture
def owner(api: BotApi) -> Phone:
    """The owner's phone."""
    return Phone(api, OWNER)
