"""The page's way out: whoever looks is told which chat has something new, and reads it from the store.

A message to someone of whom nothing is kept is remembered here, for as long as the program runs. Knows no store.
"""

import asyncio
from collections import defaultdict, deque
from collections.abc import Iterable, Iterator
from contextlib import contextmanager
from dataclasses import dataclass, field
from itertools import count
from typing import Final

from bot.channels.page.shape import NAME, open_update
from bot.ports import Delivery, Opened, Parcel, RawUpdate, Sent

_REMEMBERED: Final = 20

CLOCK: Final = 0
"""Stands for the clock where a chat's number is told."""


@dataclass(frozen=True, slots=True)
class Passing:
    """Something said of which the store keeps nothing. ``own``: by the one who is unknown."""

    text: str
    own: bool


@dataclass(slots=True, eq=False)
class Look:
    """One pair of eyes: the chats that have something new for them."""

    _fresh: set[int] = field(default_factory=set)
    _some: asyncio.Event = field(default_factory=asyncio.Event)

    def add(self, chats: Iterable[int]) -> None:
        """These have something new; said twice is said once."""
        self._fresh.update(chats)
        self._some.set()

    async def news(self) -> list[int]:
        """Wait until some chat has something new; they are taken."""
        await self._some.wait()
        found = sorted(self._fresh)
        self._fresh.clear()
        self._some.clear()
        return found


class Page:
    """The channel. ``first`` is a number above those of all earlier messages."""

    name = NAME

    def __init__(self, first: int) -> None:
        """Nobody looks yet."""
        self._numbers = count(first)
        self._looks: set[Look] = set()
        self._passing: dict[int, deque[Passing]] = defaultdict(lambda: deque(maxlen=_REMEMBERED))
        self._sent: set[int] = set()
        self.said = 0
        """How many messages went out so far."""
        self.strangers: frozenset[int] = frozenset()
        """Chats of which the store keeps nothing."""

    def open(self, raw: RawUpdate) -> Opened:
        """Read one update as it was kept."""
        return open_update(raw)

    async def send(self, parcel: Parcel) -> Delivery:
        """It is in the store, so it is there for whoever looks; they are told once it is marked as sent."""
        if parcel.chat in self.strangers:
            self.remember(parcel.chat, Passing(parcel.text, own=False))
        self._sent.add(parcel.chat)
        self.said += 1
        return Sent(parcel.edits if parcel.edits is not None else next(self._numbers), keeps=False)

    def tell_sent(self) -> None:
        """What was sent is marked: tell who looks."""
        sent, self._sent = self._sent, set()
        self.tell(*sent)

    def tell(self, *chats: int) -> None:
        """These chats have something new."""
        for look in self._looks if chats else ():
            look.add(chats)

    def remember(self, chat: int, said: Passing) -> None:
        """Of this the store keeps nothing."""
        self._passing[chat].append(said)

    def passing(self, chat: int) -> tuple[Passing, ...]:
        """What was said lately in a chat of which the store keeps nothing."""
        return tuple(self._passing.get(chat, ()))

    @contextmanager
    def looking(self) -> Iterator[Look]:
        """Someone looks, while the block lasts."""
        look = Look()
        self._looks.add(look)
        try:
            yield look
        finally:
            self._looks.discard(look)
