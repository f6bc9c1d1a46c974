"""What the shell needs of the world, and how each part can fail. Names no concrete part."""

from collections.abc import AsyncIterator, Callable
from dataclasses import dataclass
from datetime import datetime
from typing import Literal, Protocol

Now = Callable[[], datetime]
"""The wall clock, UTC and aware. Read in bot/clock.py, handed to everything else."""


class StoreError(Exception):
    """The store cannot be used; the message says what to do."""


class StoreBusy(StoreError):
    """Another process holds this store."""


class ChannelRefused(Exception):
    """The channel will not have us (a wrong token); the message says what to do and holds no secret."""


@dataclass(frozen=True, slots=True)
class RawUpdate:
    """One thing that came in on a channel, as it came. ``body`` is JSON text, kept as the truth.

    ``update_id`` is unique per channel and makes a redelivery harmless; ``chat`` gives the order.
    """

    channel: str
    update_id: int
    chat: int
    body: str


@dataclass(frozen=True, slots=True)
class Parcel:
    """One message to send: to a chat of a channel, with pressable answers as (label, data) pairs."""

    chat: int
    text: str
    buttons: tuple[tuple[str, str], ...] = ()
    thread: int | None = None
    attachment: tuple[str, bytes] | None = None
    """A file name and its bytes, sent with the text as caption."""
    edits: int | None = None
    """The channel's own number of an earlier message that this one is written over; sent anew where it is gone."""


@dataclass(frozen=True, slots=True)
class Sent:
    """It was delivered; ``message_id`` is the channel's own."""

    message_id: int | None = None
    keeps: bool = True
    """The channel keeps what was attached. False: it has no memory of its own, so the store goes on keeping it."""


@dataclass(frozen=True, slots=True)
class Later:
    """Not sent; try again after ``seconds``. ``scope`` says what must wait: the chat, or the whole bot."""

    seconds: float
    scope: Literal["chat", "bot"] = "chat"


@dataclass(frozen=True, slots=True)
class Uncertain:
    """It may have been delivered: the answer was lost."""

    why: str


@dataclass(frozen=True, slots=True)
class Refused:
    """It will never be delivered. ``chat_gone``: the chat is closed to us (blocked, kicked, deactivated)."""

    why: str
    chat_gone: bool = False


@dataclass(frozen=True, slots=True)
class Moved:
    """The chat has a new id; send there."""

    chat: int


Delivery = Sent | Later | Uncertain | Refused | Moved


class Sender(Protocol):
    """A channel's way out."""

    async def send(self, parcel: Parcel) -> Delivery:
        """Deliver one message. Never raises for what the world does; says what happened."""
        ...


class Source(Protocol):
    """A channel's way in."""

    def updates(self) -> AsyncIterator[tuple[RawUpdate, ...]]:
        """Batches of raw updates. The next batch is asked for only after the last one was persisted."""
        ...


@dataclass(frozen=True, slots=True)
class Words:
    """Text typed in a chat. ``edit``: it changes the earlier message; ``address``: it is said to the service."""

    chat: int
    user: int
    message_id: int
    text: str
    name: str = ""
    private: bool = True
    edit: bool = False
    address: bool = True
    thread: int | None = None
    language: str | None = None
    title: str = ""
    """What the group is called, where it is one."""


@dataclass(frozen=True, slots=True)
class Press:
    """A pressed answer under the message ``message_id``; ``token`` lets the channel stop its waiting mark."""

    chat: int
    user: int
    message_id: int
    data: str
    token: str
    private: bool = True
    name: str = ""


@dataclass(frozen=True, slots=True)
class Media:
    """Something that is not text (photo, voice, ...), with its caption if there was one."""

    chat: int
    user: int
    message_id: int
    kind: str
    caption: str = ""
    private: bool = True


@dataclass(frozen=True, slots=True)
class Gone:
    """The chat closed itself to us: blocked, kicked, deactivated."""

    chat: int


@dataclass(frozen=True, slots=True)
class Back:
    """The chat is open to us again, or for the first time."""

    chat: int


@dataclass(frozen=True, slots=True)
class Renamed:
    """The chat goes on under a new id."""

    chat: int
    new: int


@dataclass(frozen=True, slots=True)
class Nothing:
    """Nothing for us (a service message, a talk between others)."""


@dataclass(frozen=True, slots=True)
class Malformed:
    """Not in the channel's shape: set aside, and the rest goes on."""

    why: str


Opened = Words | Press | Media | Gone | Back | Renamed | Nothing | Malformed


class Channel(Source, Sender, Protocol):
    """A chat world: updates come in, messages go out."""

    name: str

    def open(self, raw: RawUpdate) -> Opened:
        """Read one raw update. Never raises for what is in it."""
        ...
