"""Telegram behind the channel port: asks for raw updates, and joins what reads them to what sends answers.

The library serves as client only: its own updater confirms updates before they are worked, and one malformed update
stops it for good. Here an update is confirmed by the next request, which is made only after the batch was persisted.
Knows no store and no lifter.
"""

import asyncio
import time
from collections.abc import AsyncGenerator, Awaitable, Callable
from contextlib import suppress
from typing import Any, Final

import structlog
from telegram.error import Conflict, RetryAfter, TelegramError

from bot.channels.telegram_client import Client
from bot.channels.telegram_errors import FAILURES, REFUSED_TOKEN, flood_seconds, webhook_is_set
from bot.channels.telegram_post import Post
from bot.channels.telegram_shape import ALLOWED_UPDATES, Me, next_offset, open_update, raw_update
from bot.ports import ChannelRefused, Delivery, Opened, Parcel, Press, RawUpdate

LONGEST_POLL: Final = 50
"""Seconds that the Bot API server waits at most for updates."""

BATCH: Final = 100
"""Most updates in one answer (Bot API, getUpdates)."""

BROUGHT: Final = 40
"""Updates that Telegram may bring at the same time (Bot API, setWebhook: 1 to 100, of itself 40)."""

WAITS: Final = (1.0, 2.0, 4.0, 8.0, 16.0, 32.0, 60.0)
"""Seconds before the next try after the first, second, ... failure in a row; then the last one for ever."""

CONFLICT_WAIT: Final = 3.0
"""Least wait after a 409: another poller of this bot may be on its way out (a rolling restart)."""

SAME_OFFSET_WAIT: Final = 3.0
"""Seconds between two requests that confirm nothing new; the server holds such a caller back itself."""

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
        self._sleep = sleep
        self._tick = tick
        self._poll_seconds = min(poll_seconds, LONGEST_POLL)
        self._client = Client(token, base_url, self._poll_seconds)
        self._post = Post(self._client, tick)
        self._me: Me | None = None
        self._answers: set[asyncio.Task[None]] = set()

    async def close(self) -> None:
        """Close the connections. Nothing can be sent afterwards."""
        for answer in self._answers:
            answer.cancel()
        await asyncio.gather(*self._answers, return_exceptions=True)
        await self._client.close()

    async def whoami(self) -> str | None:
        """Our name, asked once; None when the API cannot be reached. Raises ChannelRefused when the token is wrong."""
        with suppress(*FAILURES):
            await self._learn_who_we_are()
        return self._me.username if self._me else None

    async def is_known(self) -> bool:
        """Whether Telegram has told us who we are: without it nothing was ever reached."""
        return self._me is not None

    def link(self, code: str) -> str:
        """What a person opens (or sends as it is, before we know our own name) to come in with a code."""
        if self._me is None or self._me.username is None:
            return f"/start={code}"
        return f"https://t.me/{self._me.username}?start={code}"

    async def start(self) -> None:
        """Learn who we are and take the updates over. Tries for ever; raises ChannelRefused when the token is wrong."""
        await self._learn_for_sure()
        with suppress(*FAILURES):  # a poll that meets a webhook takes it away itself
            await self._client.call("deleteWebhook", drop_pending_updates=False)
        await self._show_commands()

    async def start_hook(self, url: str, secret: str) -> None:
        """Learn who we are and have the updates brought to ``url``. Tries for ever; raises ChannelRefused as above."""
        await self._learn_for_sure()
        hook = {
            "url": url,
            "secret_token": secret,
            "allowed_updates": list(ALLOWED_UPDATES),
            "max_connections": BROUGHT,
        }
        await self._tirelessly("hook_not_set", lambda: self._client.call("setWebhook", **hook))
        await self._show_commands()

    async def _learn_for_sure(self) -> None:
        if self._me is None:
            await self._tirelessly("telegram_unreachable", self._learn_who_we_are)

    async def _tirelessly(self, event: str, act: Callable[[], Awaitable[object]]) -> None:
        """Try for ever, ever more slowly."""
        failures = 0
        while True:
            try:
                await act()
            except FAILURES as error:
                failures += 1
                await self._back_off(event, error, failures)
            else:
                return

    async def _show_commands(self) -> None:
        menu = [{"command": word, "description": says} for word, says in COMMANDS]
        with suppress(*FAILURES):
            await self._client.call("setMyCommands", commands=menu)

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
                if webhook_is_set(error):
                    with suppress(*FAILURES):
                        await self._client.call("deleteWebhook", drop_pending_updates=False)
                continue
            failures = 0
            if batch:
                yield batch
                self.kept(batch)
            following = next_offset(batch)
            if following is not None and following != offset:
                offset = following
            elif batch or self._tick() - asked < 1:
                await self._sleep(SAME_OFFSET_WAIT)

    def open(self, raw: RawUpdate) -> Opened:
        """Read one raw update. Never raises for what is in it."""
        return open_update(raw.body, self._me or Me(self._client.bot_id))

    async def send(self, parcel: Parcel) -> Delivery:
        """Deliver one parcel. Never raises for what the world does."""
        return await self._post.send(parcel)

    async def _learn_who_we_are(self) -> None:
        try:
            answer = await self._client.call("getMe")
        except REFUSED_TOKEN:
            raise ChannelRefused(
                "Telegram does not know this bot: check RUNGBOOK_TOKEN, and RUNGBOOK_API_URL if it is set."
            ) from None
        self._me = Me(int(answer.get("id", self._client.bot_id)), answer.get("username"))

    async def _ask(self, offset: int | None) -> tuple[RawUpdate, ...]:
        arguments: dict[str, Any] = {
            "timeout": self._poll_seconds,
            "limit": BATCH,
            "allowed_updates": list(ALLOWED_UPDATES),
        }
        if offset is not None:
            arguments["offset"] = offset
        answer = await self._client.call("getUpdates", **arguments)
        if not isinstance(answer, list):
            raise TelegramError("the answer to getUpdates is no list")
        return tuple(raw_update(item, self.name) for item in answer)

    def kept(self, batch: tuple[RawUpdate, ...]) -> None:
        """A batch is persisted: tell the app that each press was taken. Best effort; nothing waits for it."""
        for raw in batch:
            press = self.open(raw) if '"callback_query"' in raw.body else None
            if isinstance(press, Press):
                task = asyncio.create_task(self._stop_waiting_mark(press.token))
                self._answers.add(task)
                task.add_done_callback(self._answers.discard)

    async def _stop_waiting_mark(self, token: str) -> None:
        with suppress(*FAILURES):
            await self._client.call("answerCallbackQuery", callback_query_id=token)

    async def _back_off(self, event: str, error: Exception, failures: int) -> None:
        wait = WAITS[min(failures, len(WAITS)) - 1]
        if isinstance(error, Conflict):
            wait = max(wait, CONFLICT_WAIT)
        if isinstance(error, RetryAfter):
            wait = max(wait, flood_seconds(error))
        log.warning(event, why=self._client.words_of(error), failures=failures, wait_s=wait)
        await self._sleep(wait)
