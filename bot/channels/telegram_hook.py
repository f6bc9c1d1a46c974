"""The door through which Telegram brings updates itself: each is on the disk before it is answered with 200.

Telegram brings an update again until it is answered so, and waits as long as ``Retry-After`` asks (read in its server,
tdlib/telegram-bot-api at 01a3679, WebhookActor): while the store is down nothing is lost. Never answers 410, which
would close the door for good. Knows no store, no lifter and no token; logs no word of what was brought.
"""

import asyncio
import hmac
from collections.abc import Awaitable, Callable, Mapping
from dataclasses import dataclass
from json import loads
from typing import Final

import structlog
from starlette.requests import ClientDisconnect, Request
from starlette.responses import PlainTextResponse, Response
from starlette.types import ASGIApp, Receive, Scope, Send

from bot.channels.telegram_shape import raw_update
from bot.log import fault
from bot.ports import RawUpdate

LARGEST: Final = 1024 * 1024
"""Bytes of one update; Telegram's own are far smaller. Judgement, no source."""

SLOWEST: Final = 20.0
"""Seconds in which an update must be here, whole. Judgement, no source."""

RETRY_AFTER: Final = 5
"""Seconds after which an update may be brought again when it could not be kept."""

HEADER: Final = "x-telegram-bot-api-secret-token"
"""In which the secret comes (Bot API, setWebhook)."""

log = structlog.get_logger(__name__)


@dataclass(frozen=True, slots=True)
class Door:
    """Where the updates of one bot go: their channel, what keeps them, and what is to be done once they are kept."""

    channel: str
    keep: Callable[[tuple[RawUpdate, ...]], Awaitable[None]]
    kept: Callable[[tuple[RawUpdate, ...]], None]


class _TooLong(Exception):
    """The body is longer than any update."""


def application(secret: str, doors: Mapping[str, Door]) -> ASGIApp:
    """The doors of all bots behind one address; the last part of the path says which, and ``""`` takes every path."""
    expected = secret.encode()

    async def app(scope: Scope, receive: Receive, send: Send) -> None:
        if scope["type"] == "http":
            await (await _answer(Request(scope, receive), expected, doors))(scope, receive, send)

    return app


async def _answer(request: Request, expected: bytes, doors: Mapping[str, Door]) -> Response:
    """One request, answered. Raises nothing for what the caller does."""
    given = request.headers.get(HEADER, "").encode("latin-1")
    if not hmac.compare_digest(given, expected):
        log.warning("hook_refused", why="secret")
        return PlainTextResponse("", 403)
    door = doors.get(request.url.path.rpartition("/")[2]) or doors.get("")
    if door is None:
        return PlainTextResponse("", 404)
    if request.method != "POST":
        return PlainTextResponse("", 405, {"Allow": "POST"})
    try:
        async with asyncio.timeout(SLOWEST):
            body = await _body(request)
    except _TooLong:
        return PlainTextResponse("", 413)
    except TimeoutError:
        return PlainTextResponse("", 408)
    except ClientDisconnect:
        return PlainTextResponse("", 400)
    return await _keep(door, body)


async def _keep(door: Door, body: bytes) -> Response:
    batch = (raw_update(_value(body), door.channel),)
    try:
        await door.keep(batch)
    except Exception as trouble:  # noqa: BLE001  # whatever it was, the update is not kept: it must come again
        fault(log, "hook_not_kept", trouble)
        return PlainTextResponse("", 503, {"Retry-After": str(RETRY_AFTER)})
    door.kept(batch)
    return PlainTextResponse("")


async def _body(request: Request) -> bytes:
    """The whole body. Raises _TooLong before it takes more than LARGEST bytes into memory."""
    length = request.headers.get("content-length", "0")
    if not length.isdecimal() or int(length) > LARGEST:
        raise _TooLong
    parts = bytearray()
    async for part in request.stream():
        parts += part
        if len(parts) > LARGEST:
            raise _TooLong
    return bytes(parts)


def _value(body: bytes) -> object:
    """The JSON value in it; what is none is kept as it is and set aside later, or it would be brought for ever."""
    try:
        value: object = loads(body)
    except (ValueError, RecursionError):
        return body.decode("utf-8", "replace")
    return value
