"""The health address: whether the program still does its work, for whoever restarts it."""

import time
from collections.abc import Callable

from sqlalchemy import Connection
from tornado.httpserver import HTTPServer
from tornado.web import Application, RequestHandler

from bot.delivery import inbox, outbox
from bot.delivery.transactions import StoreAwayError, Transactions

PATH = "/health"
SILENT_S = 180.0
"""A poll lasts under a minute: three of them without an answer, and the way to the messenger is broken. [s]"""


class Health(RequestHandler):
    """Answers 200 where all is well, else 503, with the figures either way."""

    def initialize(self, transactions: Transactions, last_answer: Callable[[], float]) -> None:
        """What the route was made with."""
        self.transactions, self.last_answer = transactions, last_answer

    async def get(self) -> None:
        """The state in a line of JSON."""
        silent_s = time.monotonic() - self.last_answer()
        try:
            waiting, unsent = await self.transactions.run(_counts)
        except StoreAwayError:
            self.set_status(503)
            self.write({"well": False, "store": "away", "silent_s": round(silent_s, 1)})
            return
        well = silent_s < SILENT_S
        self.set_status(200 if well else 503)
        self.write({"well": well, "store": "there", "waiting": waiting, "unsent": unsent, "silent_s": round(silent_s, 1)})


def _counts(connection: Connection) -> tuple[int, int]:
    return inbox.waiting(connection), outbox.waiting(connection)


def health(transactions: Transactions, last_answer: Callable[[], float]) -> HTTPServer:
    """The server of the health address; it listens when told to."""
    kept = {"transactions": transactions, "last_answer": last_answer}
    return HTTPServer(Application([(PATH, Health, kept)], log_function=lambda _: None))
