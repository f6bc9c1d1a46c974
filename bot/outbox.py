"""Sends what is queued: in order within a chat, at the pace the channel allows, and marks what became of it.

Reads no clock: ``drain`` sends what may go now and says when to come back. Waits by itself only while the store is away
and does not take what became of a message: forgetting that would send it twice.
"""

import asyncio
from collections.abc import Callable, Mapping
from contextlib import suppress
from dataclasses import dataclass, field
from datetime import datetime, timedelta
from functools import partial
from typing import Final

import structlog
from sqlalchemy import Connection
from sqlalchemy.exc import OperationalError

from bot import metrics
from bot.log import fault
from bot.making import make
from bot.ports import Delivery, Later, Moved, Now, Parcel, Refused, Sender, Sent, Uncertain
from bot.store import outbox, people
from bot.store.engine import Store
from bot.store.outbox import Kind, Queued, Reach, Undrawn

RESEND_AFTER: Final = timedelta(seconds=30)
"""How long to wait before a message that may have been delivered is sent once more."""

PROMPT_LASTS: Final = timedelta(hours=12)
"""How long a prompt that could not be sent is still worth sending."""

MOST_AT_ONCE: Final = 16
"""Sends in flight; more make the client slower, not faster."""

_RESENT: Final[Mapping[Kind, bool]] = {"reply": True, "alert": True, "prompt": True, "summary": True, "post": False}
"""Whether a message of that kind that may have arrived is sent once more.

Once too often to one who waits for it is better than never; a post that comes twice disturbs a whole group.
"""

_TRIES: Final = 2
"""Times that a message may be sent without knowing whether it arrived."""

_LAST_SENDS: Final = timedelta(seconds=10)
"""How long sends in flight may take when we stop."""

_MARKING: Final = (0.2, 0.5, 1.0, 2.0, 4.0)
"""Seconds between tries to mark what became of a message while the store is away; then it is left to be sent again."""

log = structlog.get_logger(__name__)

_To = tuple[str, int]

_MAKING: Final = "making"
"""Stands for the channel of what is only made and not sent yet, so that it holds up no chat."""


@dataclass(frozen=True, slots=True)
class _View:
    untidy: bool
    heads: list[Queued]
    undrawn: list[Undrawn]
    halted: datetime | None
    again: datetime | None


@dataclass(frozen=True, slots=True)
class Allowance:
    """A steady rate with a burst: ``burst`` at once, then one every ``every``."""

    every: timedelta
    burst: int


@dataclass(frozen=True, slots=True)
class Pace:
    """What a channel allows in all, to one person, and to one group. None: no limit known."""

    overall: Allowance | None = None
    person: Allowance | None = None
    group: Allowance | None = None


TELEGRAM_PACE: Final = Pace(
    # Telegram says: 30 a second in all, 1 a second to a chat with short bursts, 20 a minute to a group. A burst and
    # what follows it within the span must stay below: 5 + 25 a second, 3 + 17 a minute.
    overall=Allowance(timedelta(seconds=1) / 25, 5),
    person=Allowance(timedelta(seconds=1), 3),
    group=Allowance(timedelta(minutes=1) / 17, 3),
)


REMEMBERED: Final = 10_000
"""Chats in memory before those whose allowance is whole again are dropped."""


@dataclass(slots=True)
class Buckets:
    """How much of each allowance is used, as the time at which it will be whole again (a leaky bucket)."""

    pace: Pace
    _full_at: dict[object, datetime] = field(default_factory=dict)

    def opens(self, one: Queued, now: datetime) -> datetime:
        """The first moment at which the message may go."""
        return max((self._opens(key, rate, now) for key, rate in self._of(one)), default=now)

    def take(self, one: Queued, now: datetime) -> None:
        """It goes now."""
        if len(self._full_at) >= REMEMBERED:
            self._full_at = {key: at for key, at in self._full_at.items() if at > now}
        for key, rate in self._of(one):
            self._full_at[key] = max(self._used(key, rate, now), now) + rate.every

    def _opens(self, key: object, rate: Allowance, now: datetime) -> datetime:
        return max(now, self._used(key, rate, now) - rate.every * (rate.burst - 1))

    def _used(self, key: object, rate: Allowance, now: datetime) -> datetime:
        """Never further ahead than a whole burst: a clock that was put back must not silence anyone."""
        at = self._full_at.get(key)
        if at is None:
            return now
        used = self._full_at[key] = min(at, now + rate.every * rate.burst)
        return used

    def _of(self, one: Queued) -> list[tuple[object, Allowance]]:
        of_chat = self.pace.person if one.private else self.pace.group
        both = (("all", self.pace.overall), ((one.channel, one.platform), of_chat))
        return [(key, rate) for key, rate in both if rate is not None]


class Outbox:
    """One channel's way out."""

    def __init__(self, store: Store, sender: Sender, reach: Reach, now: Now, pace: Pace) -> None:
        self._store = store
        self._sender = sender
        self._reach = reach
        self._now = now
        self._buckets = Buckets(pace)
        self._wake = asyncio.Event()

    def wake(self) -> None:
        """Something was queued."""
        self._wake.set()

    async def run(self) -> None:
        """Send for ever: now, when woken, and when the next message may go."""
        while True:
            until = await self.drain()
            wait = None if until is None else max(0.0, (until - self._now()).total_seconds())
            with suppress(TimeoutError):
                async with asyncio.timeout(wait):
                    await self._wake.wait()

    async def drain(self) -> datetime | None:
        """Send all that may go now. Says when the next may; None: nothing waits for a time."""
        flying: dict[_To, asyncio.Task[None]] = {}
        try:
            while True:
                self._wake.clear()
                until = await self._start(flying)
                if not flying:
                    return until
                await self._until_one_lands(flying)
        finally:
            if flying:  # what was sent must be marked as sent, also when we are told to stop
                await asyncio.wait(flying.values(), timeout=_LAST_SENDS.total_seconds())

    async def _start(self, flying: dict[_To, asyncio.Task[None]]) -> datetime | None:
        """Start what may go now, one message to a chat; says when the earliest of the others may."""
        now = self._now()
        view = await self._store.read(partial(self._look, now=now))
        if view.untidy:
            await self._store.write_beside(partial(self._tidy, now=now))
            view = await self._store.read(partial(self._look, now=now))
        if view.halted is not None and view.halted > now:
            return view.halted if view.heads else None
        for thing in view.undrawn:
            if (_MAKING, thing.seq) not in flying and not any(kind == _MAKING for kind, _ in flying):
                made = make(self._store, thing, self._now, pictures=getattr(self._sender, "pictures", True))
                flying[_MAKING, thing.seq] = asyncio.create_task(made)
        later = [view.again] if view.again is not None and view.again > now else []
        for one in view.heads:
            to = (one.channel, one.platform)
            opens = max(self._buckets.opens(one, now), one.not_before or now)
            if to in flying or len(flying) >= MOST_AT_ONCE:
                continue
            if opens > now:
                later.append(opens)
                continue
            self._buckets.take(one, now)
            flying[to] = asyncio.create_task(self._send(one))
        return min(later, default=None)

    def _tidy(self, conn: Connection, now: datetime) -> None:
        outbox.drop_stale(conn, now - PROMPT_LASTS)
        outbox.assign(conn, self._reach)

    def _look(self, conn: Connection, now: datetime) -> _View:
        return _View(
            outbox.is_untidy(conn, self._reach, now - PROMPT_LASTS),
            outbox.heads(conn, self._reach, now, _TRIES),
            outbox.undrawn(conn, self._reach),
            outbox.halted_until(conn, self._reach.channel),
            outbox.next_time(conn, _TRIES),
        )

    async def _until_one_lands(self, flying: dict[_To, asyncio.Task[None]]) -> None:
        woken = asyncio.create_task(self._wake.wait())
        try:
            await asyncio.wait({*flying.values(), woken}, return_when=asyncio.FIRST_COMPLETED)
        finally:
            woken.cancel()
        for to in [to for to, task in flying.items() if task.done()]:
            flying.pop(to).result()

    async def _send(self, one: Queued) -> None:
        buttons = tuple((b.label, b.data) for b in one.buttons)
        parcel = Parcel(one.platform, one.text, buttons, one.thread, one.attachment, one.edits)
        try:
            became = await self._sender.send(parcel)
        except Exception as bug:  # noqa: BLE001  # a sender's bug must not stop the other chats
            fault(log, "sender_failed", bug, seq=one.seq)
            became = Uncertain(type(bug).__name__)
        await self._mark(partial(_settle, one=one, became=became, now=self._now()))
        metrics.SENDS.labels(one.kind, type(became).__name__.lower()).inc()
        if not isinstance(became, Sent):
            log.info("not_sent", seq=one.seq, kind=one.kind, became=type(became).__name__)

    async def _mark(self, settle: Callable[[Connection], None]) -> None:
        for wait in _MARKING:
            try:
                await self._store.write_beside(settle)
            except OperationalError as trouble:
                fault(log, "store_failed", trouble)
                await asyncio.sleep(wait)
            else:
                return
        await self._store.write_beside(settle)


def _settle(conn: Connection, one: Queued, became: Delivery, now: datetime) -> None:
    """Mark what became of a message."""
    match became:
        case Sent(message_id, keeps):
            outbox.sent(conn, one.seq, message_id, kept_elsewhere=keeps)
        case Later(seconds, scope):
            outbox.later(conn, one, now + timedelta(seconds=seconds), whole_channel=scope == "bot")
        case Uncertain():
            again = _RESENT[one.kind] or one.edits is not None
            outbox.uncertain(conn, one, now + RESEND_AFTER if again else None)
        case Moved(chat) if one.chat is not None and chat != one.platform:
            people.move_chat(conn, one.chat, chat)
        case Refused(_, chat_gone):
            outbox.dead(conn, one.seq)
            if chat_gone and one.chat is not None:
                people.set_active(conn, one.chat, active=False)
        case Moved():
            outbox.dead(conn, one.seq)
