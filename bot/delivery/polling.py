"""Long polling: what came is committed before the next question confirms it."""

import asyncio
import json
import logging
import time
from typing import Any
from urllib.parse import urlencode

from telegram.error import InvalidToken, NetworkError, TelegramError
from telegram.request import BaseRequest

from bot.delivery import inbox
from bot.delivery.faults import back_off_s
from bot.delivery.rounds import Rounds
from bot.delivery.transactions import StoreAwayError

log = logging.getLogger(__name__)

POLL_S = 50
"""As long as the messenger holds a question that has no answer yet. [s]"""
SLACK_S = 10.0
A_BATCH = 100


class Poller:
    """Asks, writes down, rings."""

    def __init__(self, request: BaseRequest, base: str, rounds: Rounds) -> None:
        self._request, self._base, self._rounds = request, base, rounds
        self.last_answer = time.monotonic()
        """When the messenger last answered. [s]"""

    async def run(self) -> None:
        """
        Poll until cancelled.

        The first question carries no offset: what was written down but not confirmed comes again and is written once. So
        nothing depends on an offset that was kept, also where the messenger starts its numbers anew.

        Raises:
            telegram.error.InvalidToken: The token is not, or no longer, good.
        """
        offset: int | None = None
        failures = 0
        while True:
            try:
                updates = await self._ask(offset)
                self.last_answer = time.monotonic()
                if updates:
                    await self._rounds.receive(updates)
                    offset = updates[-1]["update_id"] + 1
                failures = 0
                await self._rounds.room()
            except InvalidToken:
                raise
            except Exception as error:
                if isinstance(error, (TelegramError, StoreAwayError, ValueError)):
                    log.warning("poll failed", extra={"why": type(error).__name__})
                else:  # whatever came over the wire, the next question is asked
                    log.exception("poll failed")
                offset = None
                await asyncio.sleep(back_off_s(failures))
                failures += 1

    async def _ask(self, offset: int | None) -> list[dict[str, Any]]:
        question = {"timeout": POLL_S, "limit": A_BATCH, "allowed_updates": json.dumps(inbox.OWN_CHAT)}
        if offset is not None:
            question["offset"] = offset
        code, payload = await self._request.do_request(f"{self._base}/getUpdates?{urlencode(question)}", "GET")
        if code in {401, 404}:
            raise InvalidToken
        answer = json.loads(payload)
        if code != 200:
            log.warning("getUpdates refused", extra={"code": code})
            await asyncio.sleep(float(answer.get("parameters", {}).get("retry_after", 0)))
            raise NetworkError(f"getUpdates answered {code}")
        return [one for one in answer["result"] if inbox.is_update(one)]
