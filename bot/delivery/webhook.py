"""The webhook: an update is answered with 200 only after it is committed."""

import hashlib
import hmac
import json
import logging

from tornado.httpserver import HTTPServer
from tornado.web import Application, RequestHandler

from bot.delivery import inbox
from bot.delivery.inbox import WIDEST
from bot.delivery.rounds import Rounds
from bot.delivery.transactions import StoreAwayError

log = logging.getLogger(__name__)

HEADER = "X-Telegram-Bot-Api-Secret-Token"
PATH = "/telegram"


def secret_of(token: str) -> str:
    """The secret that the messenger shows with each update: the same for every worker of one token, and no way back to it."""
    return hmac.new(token.encode(), b"ohmreply webhook", hashlib.sha256).hexdigest()


class Hook(RequestHandler):
    """Takes one update."""

    def initialize(self, secret: str, rounds: Rounds) -> None:
        """What the route was made with."""
        self.secret, self.rounds = secret, rounds

    async def post(self) -> None:
        """200 once it is written down, 403 for a stranger, 400 for what is no update, 503 where the store is away."""
        if not hmac.compare_digest(self.request.headers.get(HEADER, "").encode(), self.secret.encode()):
            self._refuse(403)
            return
        try:
            update = json.loads(self.request.body)
        except (ValueError, RecursionError):
            update = None
        if not inbox.is_update(update):
            self._refuse(400)
            return
        try:
            await self.rounds.receive([update])
        except StoreAwayError:
            self._refuse(503)

    def _refuse(self, code: int) -> None:
        log.warning("webhook refused", extra={"code": code})
        self.set_status(code)

    def log_exception(self, *_: object) -> None:
        """Its text could quote the message: the kind is enough."""
        log.error("webhook failed")


def webhook(secret: str, rounds: Rounds) -> HTTPServer:
    """The server of the webhook; it listens when told to. A body longer than any update is cut off unread."""
    kept = {"secret": secret, "rounds": rounds}
    application = Application([(PATH, Hook, kept)], log_function=lambda _: None)
    return HTTPServer(application, max_body_size=4 * WIDEST, xheaders=False)
