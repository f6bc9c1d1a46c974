"""The page's chats for one who looks: which there are, what stands in them, and what is said there.

Whoever came in by a link sees and writes in their own chat and in no other. Knows no web.
"""

import secrets
from collections.abc import Awaitable, Callable
from dataclasses import dataclass
from datetime import timedelta
from typing import Any, Final, Literal

from bot.channels.page import history, login, seating, shape
from bot.channels.page.channel import Page, Passing
from bot.channels.page.history import Openers
from bot.channels.page.seating import Seat
from bot.ports import Now, RawUpdate
from bot.store.engine import Store

MOST_LINES: Final = 400
LONGEST: Final = 4000
"""Characters of a message."""
KINDS: Final = frozenset({"photo", "video", "audio", "document"})
"""What can be sent that is not text."""

_NEWCOMERS: Final = 1 << 40
"""Users from here on are people whom nobody knows yet."""
_NEWCOMER_BITS: Final = 40
_NEWCOMER: Final = "Someone new"

Refused = Literal["none", "shape", "long", "other"]
"""There is no such chat for them; it is not in shape; it is too long; it is another's message."""


@dataclass(frozen=True, slots=True)
class Visitor:
    """Who looks. ``only``: the one person whose chat they see; None: all chats."""

    session: str = ""
    only: int | None = None


class Rooms:
    """Every chat of the page."""

    def __init__(
        self, store: Store, page: Page, keep: Callable[[tuple[RawUpdate, ...]], Awaitable[None]], openers: Openers
    ) -> None:
        """``keep`` persists what came in; what is said is answered from there. ``openers`` read each channel's."""
        self._store = store
        self._page = page
        self._keep = keep
        self._openers = openers
        self._newcomer = _somebody()
        self._stranger(self._newcomer)

    async def seats(self, visitor: Visitor) -> tuple[Seat, ...]:
        """The chats that they see; where all are seen also one for somebody new."""
        found = await self._store.read(lambda conn: seating.seats(conn, visitor.only))
        if visitor.only is not None:
            return found
        if self._newcomer in {seat.chat for seat in found}:
            self._newcomer = _somebody()
            self._stranger(self._newcomer)
        new = Seat(self._newcomer, "lifter", _NEWCOMER, "UTC", ((self._newcomer, _NEWCOMER),), ())
        return (*found, new)

    async def seat(self, visitor: Visitor, chat: int) -> Seat | None:
        """The chat of that number, if it is there for them."""
        return next((seat for seat in await self.seats(visitor) if seat.chat == chat), None)

    async def lines(self, seat: Seat, most: int, now: Now) -> list[dict[str, Any]]:
        """The last lines of a chat, the oldest first."""
        if not seat.keys:
            return self._passed(seat, now)
        most = max(1, min(most, MOST_LINES))
        found = await self._store.read(lambda conn: history.entries(conn, seat, self._openers, most))
        return [entry.plain() for entry in found]

    async def file(self, visitor: Visitor, number: int) -> tuple[str, bytes, bool] | None:
        """A file that went into one of their chats."""
        keys = [key for seat in await self.seats(visitor) for key in seat.keys]
        return await self._store.read(lambda conn: history.file_of(conn, keys, number))

    async def hear(self, seat: Seat, said: dict[str, Any]) -> Refused | None:
        """Keep what was said there. None: it is kept, and worked from now on."""
        nonce, user = said.get("nonce"), said.get("user", seat.speakers[0][0])
        if not isinstance(nonce, str) or not nonce or user not in dict(seat.speakers):
            return "shape"
        sender = shape.From(seat.chat, user, seat.private)
        raw = await self._raw(seat, sender, said)
        if not isinstance(raw, RawUpdate):
            return raw
        if not seat.keys and isinstance(said.get("text"), str):
            self._page.remember(seat.chat, Passing(said["text"], own=True))
        await self._keep((raw,))
        self._page.tell(seat.chat)
        return None

    async def _raw(self, seat: Seat, sender: shape.From, said: dict[str, Any]) -> RawUpdate | Refused:
        nonce, text = said["nonce"], said.get("text")
        match said:
            case {"press": str(data), "message": int(message)}:
                return shape.press(sender, nonce, data, message) if len(data) <= LONGEST else "long"
            case {"text": str(text)} if len(text) > LONGEST:
                return "long"
            case {"media": str(kind), "text": str(text)}:
                return shape.media(sender, nonce, kind, text) if kind in KINDS else "shape"
            case {"text": str(text), "message": int(message)}:
                own = await self._store.read(lambda conn: history.author(conn, seat, message)) == sender.user
                return shape.words(sender, nonce, text, message) if own and text.strip() else "other"
            case {"text": str(text)} if text.strip():
                return shape.words(sender, nonce, text)
        return "shape"

    def _passed(self, seat: Seat, now: Now) -> list[dict[str, Any]]:
        """What a stranger said and heard; when is not remembered."""
        passing = self._page.passing(seat.chat)
        first = now() - timedelta(seconds=len(passing))
        lines = (
            history.Entry(
                f"x{at}",
                one.own,
                "words" if one.own else "reply",
                seat.name if one.own else "",
                one.text,
                first + timedelta(seconds=at),
            )
            for at, one in enumerate(passing)
        )
        return [line.plain() for line in lines]

    def _stranger(self, chat: int) -> None:
        self._page.strangers = frozenset({chat})


async def visitor_of(store: Store, session: str | None, now: Now) -> Visitor | None:
    """Who came in with that session; None: nobody."""
    who = None
    if session:
        moment = now()
        who = await store.read(lambda conn: login.whose_session(conn, session, moment))
    return Visitor(session or "", who) if who is not None else None


def _somebody() -> int:
    return _NEWCOMERS + secrets.randbits(_NEWCOMER_BITS)
