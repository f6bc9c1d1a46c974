"""The page beside a store: its way out, its rooms, its clock and its web side, put together for one address.

Joined to the rest of the shell in bootstrap.
"""

import asyncio
from collections.abc import Awaitable, Callable
from dataclasses import dataclass

from starlette.types import ASGIApp

from bot.channels.page import login, seating, shape
from bot.channels.page.channel import Page
from bot.channels.page.history import Openers
from bot.channels.page.rooms import Rooms
from bot.channels.page.web import Doors, application
from bot.outbox import Outbox, Pace
from bot.page_clock import Ahead, Jumps
from bot.ports import Now, RawUpdate
from bot.store import outbox
from bot.store.engine import Store
from bot.store.outbox import Reach

Keep = Callable[[tuple[RawUpdate, ...]], Awaitable[None]]


@dataclass(frozen=True, slots=True)
class Wanted:
    """How the page is to be: where it is reached, and for whom.

    ``login``: each comes in by a link and sees their own chat; without it all chats are there for whoever looks.
    ``clock``: it can be put forward. ``public``: the address under which others reach it, as in https://gym.example.
    """

    origins: frozenset[str]
    login: bool = False
    clock: bool = False
    public: str | None = None


class PageSide:
    """One page on one store."""

    def __init__(self, store: Store, now: Now, first: int) -> None:
        """``first`` is above the number of every message sent on a page before."""
        self.page = Page(first)
        self._store = store
        self._now = now
        self._post = Outbox(store, self.page, Reach(shape.NAME), now, Pace())
        self._woken = asyncio.Event()
        self._one = asyncio.Lock()

    @classmethod
    async def open(cls, store: Store, now: Now) -> "PageSide":
        """The page of this store."""
        return cls(store, now, 1 + await store.read(lambda conn: outbox.last_message(conn, shape.NAME)))

    def wake(self) -> None:
        """Something was queued."""
        self._woken.set()

    async def deliver(self) -> None:
        """Send all that waits, then tell who looks."""
        async with self._one:
            await self._post.drain()
            self.page.tell_sent()

    async def run(self) -> None:
        """Deliver for ever."""
        while True:
            self._woken.clear()
            await self.deliver()
            await self._woken.wait()

    async def application(
        self, wanted: Wanted, keep: Keep, openers: Openers, forward: tuple[Ahead, Callable[[], Awaitable[None]]]
    ) -> ASGIApp:
        """Its web side. ``forward``: the clock that can be put forward, and the look at what is due on the way."""
        if not wanted.login:
            await self._store.write(seating.take)
        key = await self._store.write(login.key)
        rooms = Rooms(self._store, self.page, keep, openers)
        jumps = Jumps(self._store, *forward) if wanted.clock else None
        secure = (wanted.public or "").startswith("https://")
        origins = wanted.origins | ({wanted.public.rstrip("/")} if wanted.public else frozenset())
        doors = Doors(self._store, self.page, rooms, self._now, origins, key, jumps, wanted.login, secure)
        return application(doors)
