"""The webhook: who may call it, and what becomes of what is sent to it."""

import json
import urllib.error
import urllib.request

import pytest
from sqlalchemy import URL

from bot.delivery.webhook import HEADER, PATH, secret_of
from tests.bot.telegram.bot_api import TOKEN, BotApi
from tests.bot.telegram.phone import Phone
from tests.bot.telegram.process import free_port
from tests.bot.telegram.served import OWNER, Served


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
