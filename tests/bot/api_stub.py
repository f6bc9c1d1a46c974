"""A Bot API on this machine, for tests: real confirm semantics, scripted faults, and a record of every call.

Behaves as Telegram's own server where the service could notice (tdlib/telegram-bot-api, read at 01a3679): an update
stays until a request with a higher offset confirms it; a newer getUpdates ends the older one with a 409; the HTTP
status equals ``error_code``; method names count in any case. Runs in a test's own loop, or as a process:
``python -m tests.bot.api_stub --token 1:a --port 8081``, then steered over ``/control/...``.
"""

import argparse
import asyncio
import json
from collections import defaultdict, deque
from collections.abc import Awaitable, Callable, Mapping
from dataclasses import dataclass, field
from io import BytesIO
from typing import Any

from aiohttp import web
from PIL import Image

from tests.bot.api_updates import BOT_ID, USERNAME, chat_of

TEXT_UNITS = 4096
CAPTION_UNITS = 1024
PHOTO_PIXELS, PHOTO_RATIO = 10_000, 20
DATA_BYTES = 64


@dataclass(frozen=True)
class Refuse:
    """Answer with an error in the Bot API's envelope."""

    status: int
    description: str
    parameters: Mapping[str, object] = field(default_factory=dict)


@dataclass(frozen=True)
class Drop:
    """Close the connection without an answer; ``accepted``: after doing what was asked."""

    accepted: bool = True


@dataclass(frozen=True)
class Garble:
    """Answer with this body, whatever it is."""

    body: bytes
    status: int = 200


Fault = Refuse | Drop | Garble


@dataclass(frozen=True)
class Call:
    """A request as it came: the method in lower case, its arguments decoded, its files as (name, content)."""

    method: str
    arguments: Mapping[str, Any]
    files: Mapping[str, tuple[str, bytes]]


@dataclass(frozen=True)
class Delivered:
    """A message that the chat now shows."""

    chat: int
    message_id: int
    text: str
    arguments: Mapping[str, Any]


class Refusal(Exception):
    """What the server says no to."""

    def __init__(self, status: int, description: str, **parameters: object) -> None:
        super().__init__(description)
        self.refuse = Refuse(status, description, parameters)


class BotApi:
    """The server and its control plane. ``blocked``, ``moved``, ``topics``, ``hook``: the chat world's state.

    ``delay``: seconds that each send takes.
    """

    def __init__(self, token: str, first_update: int = 1) -> None:
        self.token = token
        self.calls: list[Call] = []
        self.sent: list[Delivered] = []
        self.blocked: set[int] = set()
        self.moved: dict[int, int] = {}
        self.topics: set[int] = set()
        self.hook: Mapping[str, Any] | None = None
        self.delay = 0.0
        self._script: defaultdict[str, deque[Fault | None]] = defaultdict(deque)
        self._waiting: list[tuple[int, object]] = []
        self._next_update = first_update
        self._next_message = 1_000_000
        self._news = asyncio.Condition()
        self._poller = 0
        self._runner: web.AppRunner | None = None
        self.port = 0

    # -- control plane ------------------------------------------------------------------------------------------------

    @property
    def base_url(self) -> str:
        """The address in the form that the service takes."""
        return f"http://127.0.0.1:{self.port}/bot"

    @property
    def pending(self) -> int:
        """Updates that were not confirmed yet."""
        return len(self._waiting)

    async def push(self, *updates: object) -> list[int]:
        """Queue updates of any shape. An object without ``update_id`` gets the next one; the rest goes out as it is."""
        ids = []
        for update in updates:
            number, self._next_update = self._next_update, self._next_update + 1
            whole = {"update_id": number, **update} if isinstance(update, dict) else update
            self._waiting.append((number, whole))
            ids.append(number)
        await self._tell()
        return ids

    def fail(self, method: str, *faults: Fault | None) -> None:
        """The next calls of ``method`` meet these faults, one each; None lets one pass."""
        self._script[method.lower()].extend(faults)

    def texts(self, chat: int) -> list[str]:
        """What a chat was told, in order."""
        return [message.text for message in self.sent if message.chat == chat]

    def called(self, method: str) -> list[Call]:
        """The calls of one method, in order."""
        return [call for call in self.calls if call.method == method.lower()]

    async def until(self, reached: Callable[[], bool]) -> None:
        """Wait until something holds of what was called and sent; looked at before and after each call."""
        async with self._news:
            await self._news.wait_for(reached)

    async def __aenter__(self) -> "BotApi":
        return await self.start()

    async def __aexit__(self, *_: object) -> None:
        await self.stop()

    async def start(self, port: int = 0) -> "BotApi":
        """Listen on this machine's loopback; port 0 takes a free one."""
        app = web.Application(client_max_size=64 * 2**20)
        app.router.add_post("/control/{what}", self._control)
        app.router.add_get("/control/{what}", self._control)
        app.router.add_route("*", "/bot{token}/{method}", self._handle)
        self._runner = web.AppRunner(app, shutdown_timeout=0.5, access_log=None)
        await self._runner.setup()
        site = web.TCPSite(self._runner, "127.0.0.1", port)
        await site.start()
        self.port = self._runner.addresses[0][1]
        return self

    async def stop(self) -> None:
        """End open polls and close."""
        self._poller += 1
        await self._tell()
        if self._runner is not None:
            await self._runner.cleanup()

    async def _tell(self) -> None:
        async with self._news:
            self._news.notify_all()

    # -- the server ---------------------------------------------------------------------------------------------------

    async def _handle(self, request: web.Request) -> web.StreamResponse:
        if request.match_info["token"] != self.token:
            return _refusal(Refuse(401, "Unauthorized"))
        try:
            call = await _read(request)
        except ConnectionResetError:  # the caller died in the middle of asking
            return _cut(request)
        self.calls.append(call)
        await self._tell()
        script = self._script[call.method]
        fault = script.popleft() if script else None
        if isinstance(fault, Refuse):
            return _refusal(fault)
        if isinstance(fault, Garble):
            return web.Response(body=fault.body, status=fault.status, content_type="application/json")
        if fault is not None and not fault.accepted:
            return _cut(request)
        if self.delay and call.method.startswith("send"):
            await asyncio.sleep(self.delay)
        try:
            result = await _METHODS.get(call.method, BotApi._unknown)(self, call)
        except Refusal as refusal:
            return _refusal(refusal.refuse)
        await self._tell()
        return _cut(request) if fault is not None else web.json_response({"ok": True, "result": result})

    async def _get_updates(self, call: Call) -> list[object]:
        offset = int(call.arguments.get("offset", 0))
        limit = max(1, min(100, int(call.arguments.get("limit", 100))))
        timeout = max(0, min(50, int(call.arguments.get("timeout", 0))))
        if self.hook is not None:
            raise Refusal(
                409,
                "Conflict: can't use getUpdates method while webhook is active; use deleteWebhook to delete it first",
            )
        self._poller += 1
        mine = self._poller
        async with self._news:
            self._news.notify_all()
            if offset > 0:
                self._waiting = [(number, update) for number, update in self._waiting if number >= offset]
            elif offset < 0:
                self._waiting = self._waiting[offset:]
            await self._wait_for_news(mine, timeout)
            if self._poller != mine:
                raise Refusal(
                    409,
                    "Conflict: terminated by other getUpdates request; make sure that only one bot instance is running",
                )
            return [update for _, update in self._waiting[:limit]]

    async def _wait_for_news(self, mine: int, seconds: float) -> None:
        try:
            async with asyncio.timeout(seconds):
                await self._news.wait_for(lambda: self._waiting or self._poller != mine)
        except TimeoutError:
            return

    async def _send_message(self, call: Call) -> dict[str, object]:
        text = str(call.arguments.get("text", ""))
        if not text.strip():
            raise Refusal(400, "Bad Request: message text is empty")
        if _units(text) > TEXT_UNITS:
            raise Refusal(400, "Bad Request: message is too long")
        return self._deliver(call, text)

    async def _edit_message_text(self, call: Call) -> dict[str, object]:
        chat, number, text = int(call.arguments["chat_id"]), int(call.arguments["message_id"]), call.arguments["text"]
        found = next((at for at, one in enumerate(self.sent) if (one.chat, one.message_id) == (chat, number)), None)
        if found is None:
            raise Refusal(400, "Bad Request: message to edit not found")
        if self.sent[found].text == text:
            raise Refusal(400, "Bad Request: message is not modified: specified new content is exactly the same")
        self.sent[found] = Delivered(chat, number, text, call.arguments)
        return _message(self.sent[found])

    async def _send_document(self, call: Call) -> dict[str, object]:
        return self._send_file(call, "document")

    async def _send_photo(self, call: Call) -> dict[str, object]:
        if "photo" in call.files:
            wide, high = Image.open(BytesIO(call.files["photo"][1])).size
            if wide + high > PHOTO_PIXELS or max(wide, high) > PHOTO_RATIO * min(wide, high):
                raise Refusal(400, "Bad Request: PHOTO_INVALID_DIMENSIONS")
        return self._send_file(call, "photo")

    def _send_file(self, call: Call, field: str) -> dict[str, object]:
        caption = str(call.arguments.get("caption", ""))
        if field not in call.files:
            raise Refusal(400, f"Bad Request: there is no {field} in the request")
        if _units(caption) > CAPTION_UNITS:
            raise Refusal(400, "Bad Request: message caption is too long")
        return self._deliver(call, caption)

    def _deliver(self, call: Call, text: str) -> dict[str, object]:
        chat = int(call.arguments["chat_id"])
        thread = call.arguments.get("message_thread_id")
        if chat in self.blocked:
            raise Refusal(403, "Forbidden: bot was blocked by the user")
        if chat in self.moved:
            raise Refusal(
                400,
                "Bad Request: group chat was upgraded to a supergroup chat",
                migrate_to_chat_id=self.moved[chat],
            )
        if thread is not None and int(thread) not in self.topics:
            raise Refusal(400, "Bad Request: message thread not found")
        for row in call.arguments.get("reply_markup", {}).get("inline_keyboard", []):
            if any(not 1 <= len(button["callback_data"].encode()) <= DATA_BYTES for button in row):
                raise Refusal(400, "Bad Request: BUTTON_DATA_INVALID")
        message_id, self._next_message = self._next_message, self._next_message + 1
        self.sent.append(Delivered(chat, message_id, text, call.arguments))
        return _message(self.sent[-1])

    async def _get_me(self, _call: Call) -> dict[str, object]:
        return {
            "id": BOT_ID,
            "is_bot": True,
            "first_name": "Test",
            "username": USERNAME,
            "can_join_groups": True,
            "can_read_all_group_messages": False,
            "supports_inline_queries": False,
        }

    async def _set_webhook(self, call: Call) -> bool:
        if not str(call.arguments.get("url", "")).startswith("http"):
            raise Refusal(400, "Bad Request: bad webhook: An HTTPS URL must be provided for webhook")
        self.hook = call.arguments
        return True

    async def _delete_webhook(self, _call: Call) -> bool:
        self.hook = None
        return True

    async def _unknown(self, _call: Call) -> object:
        raise Refusal(404, "Not Found")

    async def _agree(self, _call: Call) -> bool:
        return True

    async def _control(self, request: web.Request) -> web.Response:
        what = request.match_info["what"]
        if what == "push":
            return web.json_response(await self.push(*await request.json()))
        if what == "fail":
            wish = await request.json()
            self.fail(wish.pop("method"), *[Refuse(**wish)])
            return web.json_response({})
        if what == "sent":
            return web.json_response([{"chat": m.chat, "id": m.message_id, "text": m.text} for m in self.sent])
        return web.json_response({"pending": self.pending, "calls": len(self.calls)})


_METHODS: dict[str, Callable[[BotApi, Call], Awaitable[object]]] = {
    "getme": BotApi._get_me,
    "getupdates": BotApi._get_updates,
    "sendmessage": BotApi._send_message,
    "senddocument": BotApi._send_document,
    "sendphoto": BotApi._send_photo,
    "editmessagetext": BotApi._edit_message_text,
    "answercallbackquery": BotApi._agree,
    "setwebhook": BotApi._set_webhook,
    "deletewebhook": BotApi._delete_webhook,
    "setmycommands": BotApi._agree,
}


def _message(shown: Delivered) -> dict[str, object]:
    return {"message_id": shown.message_id, "date": 0, "chat": chat_of(shown.chat), "text": shown.text}


async def _read(request: web.Request) -> Call:
    """Arguments from the query and a body that is a form, multipart or JSON; nested values may be JSON in a string."""
    arguments: dict[str, Any] = dict(request.query)
    files: dict[str, tuple[str, bytes]] = {}
    if request.content_type == "application/json":
        arguments |= await request.json()
    else:
        for name, value in (await request.post()).items():
            if isinstance(value, web.FileField):
                files[name] = (value.filename, value.file.read())
            else:
                arguments[name] = value
    decoded = {name: _nested(name, value) for name, value in arguments.items()}
    return Call(request.match_info["method"].lower(), decoded, files)


def _nested(name: str, value: object) -> object:
    if isinstance(value, str) and name not in {"text", "caption"} and value[:1] in {"{", "["}:
        return json.loads(value)
    return value


def _refusal(refuse: Refuse) -> web.Response:
    envelope: dict[str, object] = {"ok": False, "error_code": refuse.status, "description": refuse.description}
    if refuse.parameters:
        envelope["parameters"] = dict(refuse.parameters)
    return web.json_response(envelope, status=refuse.status)


def _cut(request: web.Request) -> web.StreamResponse:
    if request.transport is not None:
        request.transport.abort()
    return web.Response()


def _units(text: str) -> int:
    return len(text.encode("utf-16-le")) // 2


async def _serve(token: str, port: int) -> None:
    api = await BotApi(token).start(port)
    print(f"listening at {api.base_url}", flush=True)
    await asyncio.Event().wait()


def main() -> None:
    """Run as a process of its own until it is stopped."""
    options = argparse.ArgumentParser(description=main.__doc__)
    options.add_argument("--token", required=True)
    options.add_argument("--port", type=int, default=0)
    given = options.parse_args()
    asyncio.run(_serve(given.token, given.port))


if __name__ == "__main__":
    main()
