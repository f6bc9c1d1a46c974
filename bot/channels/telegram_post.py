"""Sends parcels and says what became of each. Knows no updates and no store.

Never raises for what the world does: each failure is a value with one meaning (telegram_errors).
"""

from collections.abc import Callable
from dataclasses import replace
from typing import Final

import structlog
from telegram.error import RetryAfter

from bot.channels.telegram_client import Client
from bot.channels.telegram_errors import FAILURES, UNREACHABLE_WAIT, delivery_of, message_is_gone, thread_is_gone
from bot.channels.telegram_parcel import Request, anew, requests_of, unpressable, without_thread
from bot.ports import Delivery, Later, Moved, Parcel, Refused, Sent, Uncertain

FLOOD_SPAN: Final = 1.0
"""Two chats told to slow down within this many seconds mean the whole bot."""

HALFWAY_KEPT: Final = 100
"""Most long parcels of which we remember how far they got."""

log = structlog.get_logger(__name__)


class Post:
    """The way out. ``tick`` is a clock that only goes forward, in seconds."""

    def __init__(self, client: Client, tick: Callable[[], float]) -> None:
        self._client = client
        self._tick = tick
        self._halfway: dict[Parcel, int] = {}
        self._last_flood: tuple[int, float] | None = None

    async def send(self, parcel: Parcel) -> Delivery:
        """Deliver one parcel; a long one in several messages.

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

    async def _deliver(self, request: Request, chat: int) -> Delivery:
        try:
            answer = await self._client.call(request.method, **request.arguments)
            return Sent(int(answer["message_id"]))
        except FAILURES as error:
            if thread_is_gone(error) and "message_thread_id" in request.arguments:
                return await self._deliver(without_thread(request), chat)
            if message_is_gone(error) and "message_id" in request.arguments:
                return await self._deliver(anew(request), chat)
            meaning = delivery_of(error, self._client.words_of(error))
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


def _of_writing_over(meaning: Delivery, message_id: int) -> Delivery:
    """Written over twice is written over once: a doubtful try is made again, and the message keeps its number."""
    match meaning:
        case Uncertain():
            return Later(UNREACHABLE_WAIT)
        case Sent():
            return Sent(message_id)
    return meaning
