"""Duties that one process at a time may have (to poll for a bot, to send for it, to keep its clock): who has which.

Each is an advisory lock of the database on one connection: when the process or the connection dies the database lets
go, and another process takes the duty up. Words from other processes come in on the same connection. Knows no duty.
"""

import asyncio
from collections.abc import Callable, Coroutine, Mapping
from hashlib import sha256
from typing import Any, Final

import structlog
from psycopg import AsyncConnection, OperationalError

from bot.lanes import libpq
from bot.log import fault
from bot.store.urls import SERVES

CHANNEL: Final = "rungbook_out"
"""On which is said, by a bot's name, that something of its is to be sent."""

LOOK_EVERY: Final = 2.0
"""Seconds after which a duty that another process had is tried for again, and our own connection is tried."""

Duty = Callable[[], Coroutine[Any, Any, None]]

log = structlog.get_logger(__name__)


class Duties:
    """What this process would do, and what of it is its turn. ``heard`` is called with each word from others."""

    def __init__(self, url: str, duties: Mapping[str, Duty], heard: Callable[[str], None]) -> None:
        self._url = url
        self._duties = duties
        self._heard = heard
        self._mine: dict[str, asyncio.Task[None]] = {}

    def has(self, name: str) -> bool:
        """Whether a duty is ours at this moment."""
        return name in self._mine

    async def run(self) -> None:
        """For ever. Raises what a duty raises."""
        while True:
            try:
                async with await _connected(self._url) as conn:
                    await self._while_connected(conn)
            except OperationalError as trouble:
                fault(log, "duties_lost", trouble)
            await asyncio.sleep(LOOK_EVERY)

    async def _while_connected(self, conn: AsyncConnection[Any]) -> None:
        try:
            await conn.execute(f"LISTEN {CHANNEL}")
            while True:
                await self._take(conn)
                async for word in conn.notifies(timeout=LOOK_EVERY):
                    self._heard(word.payload)
                for task in self._mine.values():
                    if task.done():
                        task.result()
        finally:  # without its lock a duty must not go on
            for task in self._mine.values():
                task.cancel()
            await asyncio.gather(*self._mine.values(), return_exceptions=True)
            self._mine.clear()

    async def _take(self, conn: AsyncConnection[Any]) -> None:
        await conn.execute("SELECT 1")
        for name, duty in self._duties.items():
            if name in self._mine:
                continue
            found = await (await conn.execute("SELECT pg_try_advisory_lock(%s)", (_number(name),))).fetchone()
            if found is not None and found[0]:
                log.info("duty_taken", what=name.rpartition("/")[2])
                self._mine[name] = asyncio.create_task(duty())


async def _connected(url: str) -> AsyncConnection[Any]:
    return await AsyncConnection.connect(
        libpq(url),
        autocommit=True,
        connect_timeout=10,
        keepalives_idle=5,
        keepalives_interval=2,
        keepalives_count=3,
        application_name=SERVES,
    )


def _number(name: str) -> int:
    """The lock's number: the same in every process, and hardly anybody else's."""
    return int.from_bytes(sha256(f"rungbook/{name}".encode()).digest()[:8], "big", signed=True)
