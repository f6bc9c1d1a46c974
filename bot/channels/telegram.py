"""Telegram behind the channel port: asks for raw updates, sends parcels, and says what became of each.

The library serves as client only: its own updater confirms updates before they are worked, and one malformed update
stops it for good. Here an update is confirmed by the next request, which is made only after the batch was persisted.
The token stays inside: no error, log line or trace made here holds it. Knows no store and no lifter.
"""

import asyncio
import logging
import time
import warnings
from collections.abc import AsyncGenerator, Awaitable, Callable
from contextlib import suppress
from dataclasses import replace
from typing import Any, Final
from urllib.parse import urlsplit

import structlog
from telegram import Bot
from telegram.error import Conflict, RetryAfter, TelegramError
from telegram.request import HTTPXRequest
from telegram.warnings import PTBUserWarning

from bot.channels.telegram_errors import (
    FAILURES,
    REFUSED_TOKEN,
    UNREACHABLE_WAIT,
    delivery_of,
    flood_seconds,
    message_is_gone,
    thread_is_gone,
    without_secret,
)
from bot.channels.telegram_parcel import Request, anew, requests_of, unpressable, without_thread
from bot.channels.telegram_shape import ALLOWED_UPDATES, Me, next_offset, open_update, raw_update
from bot.ports import (
    ChannelRefused,
    Delivery,
    Later,
    Moved,
    Opened,
    Parcel,
    Press,
    RawUpdate,
    Refused,
    Sent,
    Uncertain,
)

TELEGRAM_URL: Final = "https://api.telegram.org/bot"
"""Telegram's own Bot API."""

LONGEST_POLL: Final = 50
"""Seconds that the Bot API server waits at most for updates."""

BATCH: Final = 100
"""Most updates in one answer (Bot API, getUpdates)."""

WAITS: Final = (1.0, 2.0, 4.0, 8.0, 16.0, 32.0, 60.0)
"""Seconds before the next try after the first, second, ... failure in a row; then the last one for ever."""

CONFLICT_WAIT: Final = 3.0
"""Least wait after a 409: another poller of this bot may be on its way out (a rolling restart)."""

SAME_OFFSET_WAIT: Final = 3.0
"""Seconds between two requests that confirm nothing new; the server holds such a caller back itself."""

FLOOD_SPAN: Final = 1.0
"""Two chats told to slow down within this many seconds mean the whole bot."""

HALFWAY_KEPT: Final = 100
"""Most long parcels of which we remember how far they got."""

QUIETED: Final = ("Please use 'Bot", ".*`retry_after` will be of type")
"""Warnings of the library: that it has methods of its own (the raw form is the point here), and of a coming type."""

COMMANDS: Final = (
    ("begin", "Start the session"),
    ("next", "What to do next"),
    ("today", "Where the session stands"),
    ("why", "Why this target"),
    ("undo", "Take the last one back"),
    ("done", "That's the session done"),
    ("help", "How to write to me"),
)
"""The menu of the chat: the strokes that core.flow.phrases knows."""

log = structlog.get_logger(__name__)


class Telegram:
    """The chat world Telegram. ``base_url`` is a Bot API's address that ends in ``/bot``; None: Telegram's own.

    ``sleep`` and ``tick`` (a clock that only goes forward, in seconds) are there for tests.
    """

    name: str = "telegram"

    def __init__(
        self,
        token: str,
        base_url: str | None = None,
        *,
        sleep: Callable[[float], Awaitable[None]] = asyncio.sleep,
        tick: Callable[[], float] = time.monotonic,
        poll_seconds: int = 30,
    ) -> None:
        """Raises ChannelRefused when the token cannot be one."""
        if not token or not token.isprintable() or any(letter.isspace() for letter in token):
            raise ChannelRefused("RUNGBOOK_TOKEN is no bot token; copy it anew from the account that made the bot.")
        _hush()
        self._token = token
        self._sleep = sleep
        self._tick = tick
        self._poll_seconds = min(poll_seconds, LONGEST_POLL)
        self._me: Me | None = None
        self._halfway: dict[Parcel, int] = {}
        self._last_flood: tuple[int, float] | None = None
        self._answers: set[asyncio.Task[None]] = set()
        # Each time-out that comes too early turns a delivered message into a doubtful one, so reading may take long.
        direct = {"trust_env": False} if _is_loopback(base_url) else None
        self._requests = (
            HTTPXRequest(1, read_timeout=self._poll_seconds + 10, connect_timeout=10, httpx_kwargs=direct),
            HTTPXRequest(
                16, read_timeout=20, write_timeout=10, connect_timeout=10, pool_timeout=20, httpx_kwargs=direct
            ),
        )
        polls, sends = self._requests
        self._bot = Bot(token, base_url=base_url or TELEGRAM_URL, request=sends, get_updates_request=polls)

    async def close(self) -> None:
        """Close the connections. Nothing can be sent afterwards."""
        for answer in self._answers:
            answer.cancel()
        await asyncio.gather(*self._answers, return_exceptions=True)
        for request in self._requests:
            await request.shutdown()

    async def whoami(self) -> str | None:
        """Our name, asked once; None when the API cannot be reached. Raises ChannelRefused when the token is wrong."""
        with suppress(*FAILURES):
            await self._learn_who_we_are()
        return self._me.username if self._me else None

    def link(self, code: str) -> str:
        """What a person opens (or sends as it is, before we know our own name) to come in with a code."""
        if self._me is None or self._me.username is None:
            return f"/start={code}"
        return f"https://t.me/{self._me.username}?start={code}"

    async def start(self) -> None:
        """Learn who we are and take the updates over. Tries for ever; raises ChannelRefused when the token is wrong."""
        failures = 0
        while self._me is None:
            try:
                await self._learn_who_we_are()
            except FAILURES as error:
                failures += 1
                await self._back_off("telegram_unreachable", error, failures)
        for method, arguments in _FIRST_CALLS:
            with suppress(*FAILURES):
                await self._call(method, **arguments)

    async def updates(self) -> AsyncGenerator[tuple[RawUpdate, ...], None]:
        """Batches of raw updates, for ever. A batch is confirmed by asking for the next one.

        The first request carries no offset: what was not confirmed comes again, and the store knows it by its id.
        """
        await self.start()
        offset: int | None = None
        failures = 0
        while True:
            asked = self._tick()
            try:
                batch = await self._ask(offset)
            except FAILURES as error:
                failures += 1
                await self._back_off("poll_failed", error, failures)
                continue
            failures = 0
            if batch:
                yield batch
                self._stop_waiting_marks(batch)
            following = next_offset(batch)
            if following is not None and following != offset:
                offset = following
            elif batch or self._tick() - asked < 1:
                await self._sleep(SAME_OFFSET_WAIT)

    def open(self, raw: RawUpdate) -> Opened:
        """Read one raw update. Never raises for what is in it."""
        return open_update(raw.body, self._me or Me(_id_in(self._token)))

    async def send(self, parcel: Parcel) -> Delivery:
        """Deliver one parcel; a long one in several messages. Never raises for what the world does.

        A parcel that got stuck half way goes on from there when it is sent again.
        """
        requests = requests_of(parcel)
        if not requests:
            return Refused("there is nothing in it to send")
        if unpressable(parcel):
            log.error("buttons_left_out", count=len(unpressable(parcel)))
        result: Delivery = Sent()
        for index in range(self._halfway.pop(parcel, 0), len(requests)):
            result = await self._deliver(requests[index], parcel.chat)
            if not isinstance(result, Sent):
                self._remember(parcel, index, result)
                break
        return result

    async def _learn_who_we_are(self) -> None:
        try:
            answer = await self._call("getMe")
        except REFUSED_TOKEN:
            raise ChannelRefused(
                "Telegram does not know this bot: check RUNGBOOK_TOKEN, and RUNGBOOK_API_URL if it is set."
            ) from None
        self._me = Me(int(answer.get("id", _id_in(self._token))), answer.get("username"))

    async def _deliver(self, request: Request, chat: int) -> Delivery:
        try:
            answer = await self._call(request.method, **request.arguments)
            return Sent(int(answer["message_id"]))
        except FAILURES as error:
            if thread_is_gone(error) and "message_thread_id" in request.arguments:
                return await self._deliver(without_thread(request), chat)
            if message_is_gone(error) and "message_id" in request.arguments:
                return await self._deliver(anew(request), chat)
            meaning = delivery_of(error, self._words_of(error))
            if isinstance(error, RetryAfter) and isinstance(meaning, Later):
                return self._widened(meaning, chat)
            number = request.arguments.get("message_id")
            return meaning if number is None else _of_writing_over(meaning, number)

    def _widened(self, wait: Later, chat: int) -> Later:
        """A 429 stops its chat; two of different chats in a moment stop the bot."""
        now = self._tick()
        before, self._last_flood = self._last_flood, (chat, now)
        if before is not None and before[0] != chat and now - before[1] <= FLOOD_SPAN:
            return replace(wait, scope="bot")
        return wait

    def _remember(self, parcel: Parcel, index: int, result: Delivery) -> None:
        if index == 0 or isinstance(result, Refused):
            return
        if len(self._halfway) >= HALFWAY_KEPT:
            del self._halfway[next(iter(self._halfway))]
        self._halfway[replace(parcel, chat=result.chat) if isinstance(result, Moved) else parcel] = index

    async def _ask(self, offset: int | None) -> tuple[RawUpdate, ...]:
        arguments: dict[str, Any] = {
            "timeout": self._poll_seconds,
            "limit": BATCH,
            "allowed_updates": list(ALLOWED_UPDATES),
        }
        if offset is not None:
            arguments["offset"] = offset
        answer = await self._call("getUpdates", **arguments)
        if not isinstance(answer, list):
            raise TelegramError("the answer to getUpdates is no list")
        return tuple(raw_update(item, self.name) for item in answer)

    def _stop_waiting_marks(self, batch: tuple[RawUpdate, ...]) -> None:
        """Tell the app that each press was taken. Best effort, and beside the polling: it must not wait for it."""
        for raw in batch:
            press = self.open(raw) if '"callback_query"' in raw.body else None
            if isinstance(press, Press):
                task = asyncio.create_task(self._stop_waiting_mark(press.token))
                self._answers.add(task)
                task.add_done_callback(self._answers.discard)

    async def _stop_waiting_mark(self, token: str) -> None:
        with suppress(*FAILURES):
            await self._call("answerCallbackQuery", callback_query_id=token)

    async def _call(self, method: str, **arguments: Any) -> Any:
        for message in QUIETED:  # for each call, because whoever collects warnings may have set the filters back
            warnings.filterwarnings("ignore", message=message, category=PTBUserWarning)
        return await self._bot.do_api_request(method, api_kwargs=arguments)

    async def _back_off(self, event: str, error: Exception, failures: int) -> None:
        wait = WAITS[min(failures, len(WAITS)) - 1]
        if isinstance(error, Conflict):
            wait = max(wait, CONFLICT_WAIT)
        if isinstance(error, RetryAfter):
            wait = max(wait, flood_seconds(error))
        log.warning(event, why=self._words_of(error), failures=failures, wait_s=wait)
        await self._sleep(wait)

    def _words_of(self, error: Exception) -> str:
        """What an error says, without the token; only its kind when it is not the library's (it may quote anything)."""
        said = str(error) if isinstance(error, TelegramError) else ""
        return without_secret(f"{type(error).__name__}: {said}".rstrip(": "), self._token)


_FIRST_CALLS: Final[tuple[tuple[str, dict[str, Any]], ...]] = (
    # A webhook left over from another set-up would answer every poll with a conflict. Nothing waiting is dropped.
    ("deleteWebhook", {"drop_pending_updates": False}),
    ("setMyCommands", {"commands": [{"command": word, "description": says} for word, says in COMMANDS]}),
)


def _of_writing_over(meaning: Delivery, message_id: int) -> Delivery:
    """Written over twice is written over once: a doubtful try is made again, and the message keeps its number."""
    match meaning:
        case Uncertain():
            return Later(UNREACHABLE_WAIT)
        case Sent():
            return Sent(message_id)
    return meaning


def _hush() -> None:
    """The libraries' own logs hold the token (in addresses) and people's words; all they know comes as exceptions."""
    for name, level in _HUSHED.items():
        logging.getLogger(name).setLevel(level)


_HUSHED: Final[dict[str, int]] = {
    "httpx": logging.WARNING,
    "httpcore": logging.WARNING,
    "telegram": logging.WARNING,
    "telegram.request.BaseRequest": logging.CRITICAL,  # logs an answer that it cannot read, whole, as an error
}


def _id_in(token: str) -> int:
    head = token.partition(":")[0]
    return int(head) if head.isdecimal() else 0


def _is_loopback(base_url: str | None) -> bool:
    """An API on this machine is reached directly, whatever proxy the environment names."""
    return base_url is not None and urlsplit(base_url).hostname in {"127.0.0.1", "::1", "localhost"}
