"""What comes in: kept first, then worked, each chat in its order and no chat waiting for another.

A message is worked in one transaction. One that cannot be worked is tried a few times, then set aside, and its sender
is told. Knows no channel by name, and no rule of training.
"""

import asyncio
from collections.abc import Awaitable, Callable, Iterable
from functools import partial
from typing import Final

import structlog
from sqlalchemy.exc import OperationalError

from bot import abreast, metrics
from bot.desk import route
from bot.desk.rooms import Parts
from bot.flood import Flood
from bot.log import fault
from bot.ports import Now, RawUpdate, Source
from bot.store import inbox
from bot.store.engine import Store
from bot.store.inbox import Arrived, Lane

LANES_AT_ONCE: Final = 16
"""Chats worked at the same time."""

TRIES: Final = 3
"""Times that a message is tried before it is set aside."""

HandOn = Callable[[Iterable[Lane]], Awaitable[None]]

log = structlog.get_logger(__name__)


class Intake:
    """The way from a raw update to a committed answer. ``answered`` is called after each commit that may send.

    ``hand_on``: what is kept is worked by whoever is handed its lane, perhaps in another process; without it, here.
    ``pause`` is there for tests.
    """

    def __init__(
        self,
        store: Store,
        parts: Parts,
        now: Now,
        answered: Callable[[], None],
        hand_on: HandOn | None = None,
        pause: Callable[[float], Awaitable[None]] = asyncio.sleep,
    ) -> None:
        self._store = store
        self._parts = parts
        self._now = now
        self._answered = answered
        self._hand_on = hand_on
        self._pause = pause
        self._flood = Flood()
        self._wake = asyncio.Event()
        self._busy: set[Lane] = set()
        self._places = asyncio.Semaphore(LANES_AT_ONCE)

    async def listen(self, source: Source) -> None:
        """Keep what a source gives, for ever. It gives the next batch only after this one is on the disk."""
        async for batch in source.updates():
            await self.keep(batch)

    async def keep(self, batch: tuple[RawUpdate, ...]) -> None:
        """Persist a batch; what was there already changes nothing."""
        now = self._now()
        new = await self._store.write_beside(lambda conn: inbox.keep(conn, batch, now))
        metrics.UPDATES.labels("new").inc(new)
        metrics.UPDATES.labels("again").inc(len(batch) - new)
        log.info("kept", updates=len(batch), new=new)
        self._wake.set()
        if self._hand_on is not None:
            await self._hand_on((raw.channel, raw.chat) for raw in batch)

    def wake(self) -> None:
        """Look again for something to work."""
        self._wake.set()

    async def run(self) -> None:
        """Work what waits, for ever; first of all what an earlier run left unfinished."""
        async with asyncio.TaskGroup() as tasks:
            while True:
                self._wake.clear()
                for lane in await self._store.read(inbox.waiting_lanes):
                    if lane not in self._busy:
                        self._busy.add(lane)
                        tasks.create_task(self.work_lane(lane))
                await self._wake.wait()

    async def settle(self) -> None:
        """Work everything that waits, then come back. Raises OperationalError when the store fails."""
        while lanes := await self._store.read(inbox.waiting_lanes):
            async with asyncio.TaskGroup() as tasks:
                for lane in lanes:
                    tasks.create_task(self._empty(lane))

    async def work_lane(self, lane: Lane) -> None:
        """Work all that waits in a lane that was handed to us."""
        try:
            while await self._next_of(lane):
                await self._slow_down(lane)
        except OperationalError as trouble:
            # The store is full, locked or away: nothing is lost, nothing is counted, the next wake-up tries again.
            fault(log, "store_failed", trouble)
        else:
            self._wake.set()  # something may have come in just before the lane was left
        finally:
            self._busy.discard(lane)

    async def _slow_down(self, lane: Lane) -> None:
        """A flood of one chat is worked at a person's pace. It holds no place meanwhile, so nobody else waits."""
        self._flood.took(lane, self._now())
        wait = self._flood.wait(lane, self._now())
        if wait > 0:
            metrics.SLOWED.inc()
            await self._pause(wait)

    async def _empty(self, lane: Lane) -> None:
        while await self._next_of(lane):
            pass

    async def _next_of(self, lane: Lane) -> bool:
        """Work the next message of a lane. False: there is none."""
        async with self._places:
            arrived = await self._store.read(partial(inbox.next_waiting, lane=lane))
            if arrived is not None:
                await self._work(arrived)
        return arrived is not None

    async def _work(self, arrived: Arrived) -> None:
        try:
            work = abreast.work if self._store.shared else route.work
            await self._store.write_beside(partial(work, parts=self._parts, arrived=arrived))
        except OperationalError:
            raise
        except Exception as bug:  # noqa: BLE001  # the last resort: keep the message, go on with the next
            await self._stumbled(arrived, bug)
        else:
            metrics.WORKED.labels("done").inc()
            metrics.ANSWER.observe(max(0.0, (self._now() - arrived.received).total_seconds()))
        self._answered()

    async def _stumbled(self, arrived: Arrived, bug: Exception) -> None:
        attempts = await self._store.write(partial(inbox.failed, seq=arrived.seq))
        fault(log, "message_failed", bug, seq=arrived.seq, attempts=attempts)
        metrics.WORKED.labels("failed" if attempts < TRIES else "dead").inc()
        if attempts >= TRIES:
            await self._store.write(partial(route.give_up, parts=self._parts, arrived=arrived))
