# ruff: noqa: D102
"""
A public emulator of the Bot API (npm, telegram-test-api) as a peer that we did not write, and what it lacks put before it.

The messages, their ids and the phone's side are the emulator's own. Ours are: `is_bot` of getMe, seconds instead of milliseconds, the result
of an edit, long polling with confirmation, and a plain yes to the methods that it does not know. So it is a witness for the shapes of calls and
answers, not for delivery.
"""

import asyncio
import json
import os
import subprocess
import threading
import time
import urllib.request
from pathlib import Path
from typing import Any, Self
from urllib.parse import urlencode

from tornado.httpclient import AsyncHTTPClient
from tornado.httpserver import HTTPServer
from tornado.web import Application, RequestHandler

from tests.bot.telegram.bot_api import TOKEN
from tests.bot.telegram.process import free_port

FOLDER = os.environ.get("OHMREPLY_EMULATOR", "")
"""Where `npm install telegram-test-api` was done."""
START = "new (require('telegram-test-api'))({port: Number(process.argv[1]), host: '127.0.0.1'}).start()"
OWN = ("sendMessage", "editMessageText", "answerCallbackQuery", "getMe")
"""The methods that the emulator itself answers."""


def is_there() -> bool:
    """Whether it is installed."""
    return bool(FOLDER) and (Path(FOLDER) / "node_modules" / "telegram-test-api").is_dir()


class Emulator:
    """The emulator's process, and the layer before it in a thread."""

    def __enter__(self) -> Self:
        self.inner, self.port = free_port(), free_port()
        self._node = subprocess.Popen(["node", "-e", START, str(self.inner)], cwd=FOLDER)
        self.waiting: list[dict[str, Any]] = []
        self._ready = threading.Event()
        self._thread = threading.Thread(target=lambda: asyncio.run(self._run()), name="emulator", daemon=True)
        self._thread.start()
        assert self._ready.wait(10)
        self._until(lambda: self.phone("getUpdatesHistory", token=TOKEN) is not None)
        return self

    def __exit__(self, *_: object) -> None:
        self._loop.call_soon_threadsafe(self._end.set)
        self._thread.join(10)
        self._node.terminate()
        self._node.wait(10)

    @property
    def url(self) -> str:
        return f"http://127.0.0.1:{self.port}"

    async def _run(self) -> None:
        self._loop, self._end = asyncio.get_running_loop(), asyncio.Event()
        server = HTTPServer(Application([(rf"/bot{TOKEN}/(\w+)", Layer, {"emulator": self})], log_function=lambda _: None))
        server.listen(self.port, "127.0.0.1")
        self._ready.set()
        await self._end.wait()
        server.stop()
        await server.close_all_connections()

    # --- a phone's side, all the emulator's own ---

    def phone(self, path: str, **body: Any) -> Any:
        """One call of a phone; None while the emulator does not listen yet."""
        request = urllib.request.Request(
            f"http://127.0.0.1:{self.inner}/{path}", json.dumps(body).encode(), {"Content-Type": "application/json"}
        )
        try:
            with urllib.request.urlopen(request, timeout=5) as answer:
                return json.loads(answer.read()).get("result", True)
        except OSError:
            return None

    def send(self, user_id: int, path: str = "sendMessage", **parts: Any) -> None:
        """Send as somebody in a private chat."""
        chat = {"id": user_id, "type": "private", "first_name": "First"}
        person = {"id": user_id, "is_bot": False, "first_name": "First"}
        there = {} if "message" in parts else {"chat": chat}
        self.phone(path, botToken=TOKEN, date=int(time.time()), **{"from": person}, **there, **parts)

    def shown(self) -> list[dict[str, Any]]:
        """What the bot sent, as the emulator keeps it."""
        rows = self.phone("getUpdatesHistory", token=TOKEN)
        return [{**row["message"], "id": row["messageId"]} for row in rows if "chat_id" in row.get("message", {})]

    def wait(self, number: int) -> list[dict[str, Any]]:
        """So many messages of the bot."""
        return self._until(lambda: shown if len(shown := self.shown()) >= number else None)

    @staticmethod
    def _until(true: Any, within_s: float = 15.0) -> Any:
        end = time.monotonic() + within_s
        while not (value := true()):
            assert time.monotonic() < end
            time.sleep(0.05)
        return value


class Layer(RequestHandler):
    """One call of the bot."""

    def initialize(self, emulator: Emulator) -> None:
        self.emulator = emulator

    async def get(self, method: str) -> None:
        await self.post(method)

    async def post(self, method: str) -> None:
        args = {name: values[-1].decode() for name, values in self.request.arguments.items()}
        if method == "getUpdates":
            result: Any = await self._updates(args)
        elif method in OWN:
            result = _mended(method, args, await self._ask(method, args))
        else:
            result = True
        self.write({"ok": True, "result": result})

    async def _ask(self, method: str, args: dict[str, str]) -> Any:
        address = f"http://127.0.0.1:{self.emulator.inner}/bot{TOKEN}/{method}"
        answer = await AsyncHTTPClient().fetch(address, method="POST", body=urlencode(args))
        return json.loads(answer.body)["result"]

    async def _updates(self, args: dict[str, str]) -> list[dict[str, Any]]:
        waiting, offset = self.emulator.waiting, int(args.get("offset", 0))
        waiting[:] = [update for update in waiting if update["update_id"] >= offset]
        end = time.monotonic() + float(args.get("timeout", 0))
        while True:
            waiting += await self._ask("getUpdates", {})
            if waiting or time.monotonic() >= end:
                return [_with_instance(update) for update in waiting]
            await asyncio.sleep(0.05)


def _with_instance(update: dict[str, Any]) -> dict[str, Any]:
    if "callback_query" in update:
        query = update["callback_query"]
        query["message"] = {"date": int(time.time()), **query["message"]}
        return {**update, "callback_query": {"chat_instance": "1", **query}}
    return update


def _mended(method: str, args: dict[str, str], result: Any) -> Any:
    match method:
        case "getMe":
            return {**result, "is_bot": True}
        case "sendMessage":
            kept = {name: result[name] for name in ("message_id", "chat", "text")}
            return {**kept, "date": result["date"] // 1000}
        case "editMessageText":
            chat = {"id": int(args["chat_id"]), "type": "private"}
            return {"message_id": int(args["message_id"]), "chat": chat, "date": int(time.time()), "text": args["text"]}
    return True
