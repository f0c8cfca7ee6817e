"""The health address, as a supervisor sees it."""

import json
import urllib.error
import urllib.request

import pytest
from sqlalchemy import URL

from bot.delivery.transactions import StoreAwayError
from tests.bot.telegram.bot_api import BotApi
from tests.bot.telegram.phone import Phone
from tests.bot.telegram.process import free_port
from tests.bot.telegram.served import OWNER, Served


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
