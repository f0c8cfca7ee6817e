# ruff: noqa: D102, ARG002  (the methods are those of the published text, and each takes a call)
"""
A stand-in for the Bot API over real HTTP on loopback, written from the published text (core.telegram.org/bots/api).

It keeps what the text promises and the delivery rests on: an update is handed out until a higher offset confirms it, a webhook is tried again
until it gets a 2xx, each chat's messages one after the other; a message is refused that is too long, badly marked, or unchanged by an edit.
It can be told to fail, to be slow, to lose its answer, to send an update twice.
"""

import asyncio
import json
import threading
import time
from collections import deque
from collections.abc import Callable
from typing import Any, Self
from urllib.parse import quote

from tornado.httpclient import AsyncHTTPClient, HTTPError, HTTPRequest
from tornado.httpserver import HTTPServer
from tornado.netutil import bind_sockets
from tornado.web import Application, RequestHandler

from tests.bot.telegram.calls import Call, Fault
from tests.bot.telegram.marks import RefusedError, read_marks, units

TOKEN = "123456:stand-in-token-of-no-worth"
BOT = {"id": 123456, "is_bot": True, "first_name": "ohmreply", "username": "ohmreply_bot"}
OURS = {"quotes", "silent", "html", "edited", "at"}
"""What we remember of a message beside what the API gives of it."""


class BotApi:
    """The server, in a thread of its own. What a phone does is called from the test's thread."""

    def __init__(self) -> None:
        self.calls: list[Call] = []
        self.messages: dict[tuple[int, int], dict[str, Any]] = {}
        self.faults: deque[Fault] = deque()
        self.files: dict[str, bytes] = {}
        self.latency_s = 0.0
        self.pending: deque[dict[str, Any]] = deque()
        self.queues: dict[int, deque[dict[str, Any]]] = {}
        self.webhook: dict[str, Any] = {}
        self.handed_out: dict[int, int] = {}
        self.refuse_all = False
        self.spread: list[str] = []
        """Addresses of several workers, as something before them would share chats out; empty calls the webhook as set."""
        self.last_update, self._message = 1000, 10
        self._lock = threading.Lock()
        self._changed = threading.Condition()
        self._started = threading.Event()
        self._bell: asyncio.Event
        self._loop: asyncio.AbstractEventLoop
        self._hooks: dict[int, asyncio.Task[None]] = {}

    # --- life ---

    def __enter__(self) -> Self:
        self._thread = threading.Thread(target=lambda: asyncio.run(self._run()), name="bot api", daemon=True)
        self._thread.start()
        assert self._started.wait(10)
        return self

    def __exit__(self, *_: object) -> None:
        self._loop.call_soon_threadsafe(self._end.set)
        self._thread.join(10)

    async def _run(self) -> None:
        self._loop, self._bell, self._end = asyncio.get_running_loop(), asyncio.Event(), asyncio.Event()
        routes = [
            (rf"/bot{TOKEN}/(\w+)", Method, {"api": self}),
            (rf"/file/bot{quote(TOKEN)}/(.+)", Download, {"api": self}),
        ]
        self.server = HTTPServer(Application(routes, log_function=lambda _: None), max_body_size=60_000_000)
        sockets = bind_sockets(0, "127.0.0.1")
        self.port = sockets[0].getsockname()[1]
        self.server.add_sockets(sockets)
        self._started.set()
        await self._end.wait()
        self.server.stop()
        for task in self._hooks.values():
            task.cancel()
        await asyncio.gather(*self._hooks.values(), return_exceptions=True)
        await self.server.close_all_connections()

    @property
    def url(self) -> str:
        return f"http://127.0.0.1:{self.port}"

    # --- a phone's side ---

    def next_message(self) -> int:
        with self._lock:
            self._message += 1
            return self._message

    def push(self, update: dict[str, Any], *, times: int = 1, number: int | None = None) -> int:
        """An update for the bot; a fresh number unless one is given."""
        with self._lock:
            if number is None:
                self.last_update += 1
                number = self.last_update
        whole = {"update_id": number, **update}
        self._loop.call_soon_threadsafe(self._take, whole, times)
        return number

    def _take(self, update: dict[str, Any], times: int) -> None:
        for _ in range(times):
            if self.webhook.get("url"):
                chat = chat_of(update)
                self.queues.setdefault(chat, deque()).append(update)
                if chat not in self._hooks or self._hooks[chat].done():
                    self._hooks[chat] = asyncio.create_task(self._hook(chat))
            else:
                self.pending.append(update)
        self._bell.set()

    async def _hook(self, chat: int) -> None:
        """Each chat's updates one after the other; the next goes out when the one before got its 2xx."""
        queue, rest_s = self.queues[chat], 0.02
        while queue:
            update = queue[0]
            try:
                answer = await AsyncHTTPClient().fetch(
                    HTTPRequest(
                        self.spread[chat % len(self.spread)] if self.spread else self.webhook["url"],
                        method="POST",
                        body=json.dumps(update),
                        headers={
                            "Content-Type": "application/json",
                            "X-Telegram-Bot-Api-Secret-Token": self.webhook.get("secret_token", ""),
                        },
                        request_timeout=5,
                        connect_timeout=2,
                    ),
                    raise_error=False,
                )
                good = 200 <= answer.code < 300
            except (OSError, HTTPError):
                good = False
            if good:
                self.handed_out[update["update_id"]] = self.handed_out.get(update["update_id"], 0) + 1
                queue.popleft()
                rest_s = 0.02
            else:
                await asyncio.sleep(rest_s)
                rest_s = min(rest_s * 2, 0.5)

    def wait(self, until: Callable[[], Any], within_s: float = 10.0) -> Any:
        """The first true value of `until`, looked at after each call."""
        end = time.monotonic() + within_s
        with self._changed:
            while not (value := until()):
                left = end - time.monotonic()
                if left <= 0:
                    raise TimeoutError(f"not within {within_s} s; last calls: {[c.method for c in self.calls[-8:]]}")
                self._changed.wait(min(left, 0.05))
        return value

    def sent(self, *methods: str) -> list[Call]:
        """The calls of some methods that were answered well."""
        return [call for call in list(self.calls) if call.method in methods and not call.refused]

    # --- the bot's side ---

    def answer(self, call: Call) -> Any:
        handler = getattr(self, f"do_{call.method.lower()}", None)
        if handler is None:
            raise RefusedError(404, "Not Found")
        return handler(call)

    def do_getme(self, call: Call) -> Any:
        return {**BOT, "can_join_groups": True, "can_read_all_group_messages": False, "supports_inline_queries": False}

    def do_deletewebhook(self, call: Call) -> Any:
        left = [update for queue in self.queues.values() for update in queue]
        self.pending.extend(sorted(left, key=lambda update: update["update_id"]))
        self.queues.clear()
        self.webhook = {}
        return True

    def do_setwebhook(self, call: Call) -> Any:
        self.webhook = dict(call.args)
        left = list(self.pending)
        self.pending.clear()
        for update in left:
            self._take(update, 1)
        return True

    def do_setmycommands(self, call: Call) -> Any:
        for command in json.loads(call.args["commands"]):
            name = command["command"]
            if not (1 <= len(name) <= 32 and name.replace("_", "").isalnum() and name.islower()):
                raise RefusedError(400, "Bad Request: BOT_COMMAND_INVALID")
            if not 1 <= len(command["description"]) <= 256:
                raise RefusedError(400, "Bad Request: BOT_COMMAND_DESCRIPTION_INVALID")
        return True

    def do_sendchataction(self, call: Call) -> Any:
        return True

    def do_answercallbackquery(self, call: Call) -> Any:
        if len(call.args.get("text", "")) > 200:
            raise RefusedError(400, "Bad Request: MESSAGE_TOO_LONG")
        return True

    def do_sendmessage(self, call: Call) -> Any:
        text, entities = read_marks(call.args["text"], call.args.get("parse_mode"))
        if not text.strip():
            raise RefusedError(400, "Bad Request: message text is empty")
        if units(text) > 4096:
            raise RefusedError(400, "Bad Request: message is too long")
        return self._new(call, text=text, entities=entities or None)

    def do_sendphoto(self, call: Call) -> Any:
        if not call.files.get("photo", b"").startswith((b"\x89PNG", b"\xff\xd8")):
            raise RefusedError(400, "Bad Request: IMAGE_PROCESS_FAILED")
        return self._new(call, photo=[self._size(call.files["photo"])], caption=self._caption(call))

    def do_senddocument(self, call: Call) -> Any:
        if not call.files.get("document"):
            raise RefusedError(400, "Bad Request: file must be non-empty")
        return self._new(call, document={"file_id": "d1", "file_unique_id": "d1"}, caption=self._caption(call))

    def _caption(self, call: Call) -> str | None:
        caption = call.args.get("caption")
        if caption and units(caption) > 1024:
            raise RefusedError(400, "Bad Request: message caption is too long")
        return caption

    def _size(self, body: bytes) -> dict[str, Any]:
        return {"file_id": "p1", "file_unique_id": "p1", "width": 9, "height": 9, "file_size": len(body)}

    def _new(self, call: Call, **parts: Any) -> Any:
        chat = int(call.args["chat_id"])
        number = self.next_message()
        message = {
            "message_id": number,
            "date": int(time.time()),
            "chat": {"id": chat, "type": "private" if chat > 0 else "supergroup"},
            "from": BOT,
            **{name: part for name, part in parts.items() if part is not None},
        }
        if "reply_markup" in call.args:
            message["reply_markup"] = self._keyboard(call.args["reply_markup"])
        self.messages[chat, number] = {
            **message,
            "quotes": json.loads(call.args.get("reply_parameters", "{}")).get("message_id"),
            "silent": call.args.get("disable_notification") == "true",
            "html": call.args.get("text"),
            "at": call.at,
        }
        return message

    def _keyboard(self, text: str) -> Any:
        markup = json.loads(text)
        for row in markup.get("inline_keyboard", []):
            for button in row:
                if not 1 <= len(button["callback_data"].encode()) <= 64:
                    raise RefusedError(400, "Bad Request: BUTTON_DATA_INVALID")
        return markup

    def do_editmessagetext(self, call: Call) -> Any:
        key = int(call.args["chat_id"]), int(call.args["message_id"])
        if key not in self.messages:
            raise RefusedError(400, "Bad Request: message to edit not found")
        old = self.messages[key]
        text, entities = read_marks(call.args["text"], call.args.get("parse_mode"))
        markup = self._keyboard(call.args["reply_markup"]) if "reply_markup" in call.args else None
        if units(text) > 4096:
            raise RefusedError(400, "Bad Request: MESSAGE_TOO_LONG")
        if text == old.get("text") and call.args["text"] == old.get("html") and markup == old.get("reply_markup"):
            raise RefusedError(
                400,
                "Bad Request: message is not modified: specified new message content and reply markup are exactly the same as a"
                " current content and reply markup of the message",
            )
        old.update(text=text, entities=entities, html=call.args["text"], edited=True)
        old.pop("reply_markup", None)
        if markup:
            old["reply_markup"] = markup
        return {name: part for name, part in old.items() if name not in OURS}

    def do_getfile(self, call: Call) -> Any:
        body = self.files.get(call.args["file_id"])
        if body is None:
            raise RefusedError(400, "Bad Request: invalid file_id")
        name = call.args["file_id"]
        return {"file_id": name, "file_unique_id": name, "file_size": len(body), "file_path": f"photos/{name}"}

    async def get_updates(self, call: Call) -> Any:
        if self.webhook.get("url"):
            raise RefusedError(409, "Conflict: can't use getUpdates method while webhook is active")
        args = call.args
        if "offset" in args:
            while self.pending and self.pending[0]["update_id"] < int(args["offset"]):
                self.pending.popleft()
        end = time.monotonic() + float(args.get("timeout", 0))
        while not self.pending and (left := end - time.monotonic()) > 0:
            self._bell.clear()
            try:
                await asyncio.wait_for(self._bell.wait(), min(left, 1.0))
            except TimeoutError:
                continue
        batch = list(self.pending)[: int(args.get("limit", 100))]
        for update in batch:
            self.handed_out[update["update_id"]] = self.handed_out.get(update["update_id"], 0) + 1
        return batch

    def changed(self) -> None:
        with self._changed:
            self._changed.notify_all()


def chat_of(update: dict[str, Any]) -> int:
    """The queue that an update stands in."""
    for kind in ("message", "edited_message"):
        if isinstance(update.get(kind), dict) and isinstance(update[kind].get("chat"), dict):
            return int(update[kind]["chat"].get("id", 0))
    return 0


class Method(RequestHandler):
    """One call."""

    def initialize(self, api: BotApi) -> None:
        self.api = api

    async def get(self, method: str) -> None:
        await self.post(method)

    async def post(self, method: str) -> None:
        api = self.api
        args = {name: values[-1].decode() for name, values in self.request.arguments.items()}
        files = {name: parts[0].body for name, parts in self.request.files.items()}
        names = {name: parts[0].filename for name, parts in self.request.files.items()}
        peer = self.request.connection.context.address
        call = Call(method=method, args=args, at=time.monotonic(), files=files, names=names, peer=peer)
        fault = next((one for one in api.faults if one.method == method), None)
        if fault is not None:
            api.faults.remove(fault)
            await asyncio.sleep(fault.wait_s)
            if fault.body is not None:
                self.write(fault.body)
                return
        try:
            if api.refuse_all:
                raise RefusedError(502, "Bad Gateway")  # noqa: TRY301
            if fault is not None and fault.code:
                extra = {} if fault.retry_after is None else {"retry_after": fault.retry_after}
                raise RefusedError(fault.code, "Told to fail", **extra)  # noqa: TRY301
            result = await api.get_updates(call) if method == "getUpdates" else api.answer(call)
            answer = {"ok": True, "result": result}
        except RefusedError as refused:
            call.refused = refused.code
            self.set_status(refused.code)
            answer = {"ok": False, "error_code": refused.code, "description": str(refused)}
            if refused.parameters:
                answer["parameters"] = refused.parameters
        if method != "getUpdates":
            api.calls.append(call)
            api.changed()
            if api.latency_s:
                await asyncio.sleep(api.latency_s)
        if fault is not None and fault.lose_answer:
            self.request.connection.detach().close()
            self._finished = True
            return
        self.write(answer)


class Download(RequestHandler):
    """A file that a person sent."""

    def initialize(self, api: BotApi) -> None:
        self.api = api

    async def get(self, path: str) -> None:
        self.write(self.api.files[path.rsplit("/", 1)[-1]])
