"""A clock for trying the service out: it runs as the wall clock does, and can be put forward.

How far it is ahead is kept in the store, so that a reload or a restart changes nothing. On the way to a later time
every moment at which something is due is stopped at, so that all is said when it is due, by the ordinary tick.
"""

import asyncio
from collections.abc import Awaitable, Callable
from datetime import UTC, datetime, time, timedelta
from functools import partial
from typing import Final
from zoneinfo import ZoneInfo

from sqlalchemy import Connection, func, select

from bot.ports import Now
from bot.store import challenges, settings
from bot.store.engine import Store
from bot.store.tables import agenda as rows

_KEPT: Final = "page-clock-ahead-seconds"
_LONGEST: Final = timedelta(hours=2)
"""A step while a challenge is open; its posts follow the clock at no set time."""
_MORNING: Final = time(8, 0)
_SUNDAY: Final = (6, time(20, 0))
"""When the lifters' and the coach's weeks have been told, unless someone likes another hour."""

Target = Callable[[Connection, datetime, ZoneInfo, int | None], datetime | None]


class Ahead:
    """The time it is here."""

    def __init__(self, wall: Now) -> None:
        """It shows the wall clock's time until it is put forward."""
        self._wall = wall
        self.by = timedelta()

    def __call__(self) -> datetime:
        """Now, UTC and aware."""
        return self._wall() + self.by

    async def load(self, store: Store) -> None:
        """Go on where it was left."""
        kept = await store.read(lambda conn: settings.get(conn, _KEPT))
        self.by = timedelta(seconds=float(kept or 0))

    async def put(self, store: Store, at: datetime) -> None:
        """Put it forward to that time; it never goes back."""
        by = max(self.by, at - self._wall())
        await store.write(lambda conn: settings.keep(conn, _KEPT, str(by.total_seconds())))
        self.by = by


def _morning(_conn: Connection, now: datetime, zone: ZoneInfo, _who: int | None) -> datetime:
    tomorrow = now.astimezone(zone).date() + timedelta(days=1)
    return datetime.combine(tomorrow, _MORNING, tzinfo=zone).astimezone(UTC)


def _sunday(_conn: Connection, now: datetime, zone: ZoneInfo, _who: int | None) -> datetime:
    day, hour = _SUNDAY
    local = now.astimezone(zone)
    days = (day - local.weekday()) % 7
    found = datetime.combine(local.date() + timedelta(days=days), hour, tzinfo=zone)
    return (found if found > local else found + timedelta(weeks=1)).astimezone(UTC)


def _prompt(conn: Connection, now: datetime, _zone: ZoneInfo, who: int | None) -> datetime | None:
    query = select(func.min(rows.c.due)).where(rows.c.kind == "prompt", rows.c.state == "waiting", rows.c.due > now)
    found: datetime | None = conn.execute(query if who is None else query.where(rows.c.person == who)).scalar()
    return found


TARGETS: Final[dict[str, Target]] = {
    "hour": lambda _conn, now, _zone, _who: now + timedelta(hours=1),
    "prompt": _prompt,
    "tomorrow": _morning,
    "sunday": _sunday,
}
"""Where the clock can be put, seen from now, from a zone and from a lifter."""


class Jumps:
    """Puts the clock forward; ``look`` is the ordinary tick with what it sends."""

    def __init__(self, store: Store, clock: Ahead, look: Callable[[], Awaitable[None]]) -> None:
        """One at a time."""
        self._store = store
        self._clock = clock
        self._look = look
        self._one = asyncio.Lock()

    async def to(self, where: str, zone: str, who: int | None) -> datetime | None:
        """Go there by way of all that is due before; None: there is no such time ahead."""
        async with self._one:
            now = self._clock()
            target = await self._store.read(lambda conn: TARGETS[where](conn, now, ZoneInfo(zone), who))
            if target is not None:
                await self._go(target)
            return target

    async def _go(self, target: datetime) -> None:
        step = None
        while step is None or step < target:
            step = await self._store.read(partial(_next_stop, now=self._clock(), target=target))
            await self._clock.put(self._store, step)
            await self._look()


def _next_stop(conn: Connection, now: datetime, target: datetime) -> datetime:
    waiting = select(func.min(rows.c.due)).where(rows.c.state == "waiting", rows.c.due > now)
    due: datetime | None = conn.execute(waiting).scalar()
    stops = [target, *([due] if due is not None else [])]
    if challenges.to_look_at(conn, target):
        stops.append(now + _LONGEST)
    return min(stops)
