"""What a desk works with: the parts handed to it at the start, and the one message that it has before it."""

from collections.abc import Callable, Mapping
from dataclasses import dataclass
from datetime import date, datetime
from typing import Protocol

from sqlalchemy import Connection

from bot.ports import Opened, RawUpdate
from bot.store import outbox, people
from bot.store.inbox import Arrived
from bot.store.outbox import Letter
from bot.store.progress import Folding
from core.model.book import Book, Incoming
from core.model.outcome import Outcome


class Answer(Protocol):
    """Core's door for a message."""

    def __call__(self, incoming: Incoming, book: Book, now: datetime) -> Outcome:
        """What a message changes and what is said to it."""
        ...


class Remind(Protocol):
    """Core's door for time."""

    def __call__(self, kind: str, on: date, book: Book, now: datetime) -> Outcome:
        """What is said when an agenda row is due."""
        ...


@dataclass(frozen=True, slots=True)
class Parts:
    """What the desk needs: core's doors, the folding, how updates are opened, how a code becomes a link."""

    answer: Answer
    remind: Remind
    folding: Folding
    openers: Mapping[str, Callable[[RawUpdate], Opened]]
    link: Callable[[str], str]
    reader: str
    """The version that reads, kept with each message."""


@dataclass(frozen=True, slots=True)
class Case:
    """One message on the desk, with the transaction in which it is worked."""

    conn: Connection
    parts: Parts
    arrived: Arrived
    user: int
    private: bool
    thread: int | None = None

    @property
    def now(self) -> datetime:
        """When the message came in: what it means does not depend on when it is worked."""
        return self.arrived.received

    @property
    def channel(self) -> str:
        """Where it came from."""
        return self.arrived.raw.channel

    def reply(self, text: str, chat: people.Chat) -> None:
        """Answer in the chat from which it came."""
        letter = Letter(text, chat=chat.id, thread=self.thread, reply_to=self.arrived.seq)
        outbox.queue(self.conn, letter, self.now)

    def reply_unknown(self, text: str) -> None:
        """Answer someone of whom nothing is kept."""
        letter = Letter(text, address=(self.channel, self.arrived.raw.chat), thread=self.thread)
        outbox.queue(self.conn, letter, self.now)

    def tell(self, who: int, text: str) -> None:
        """Say something to someone else, wherever they are reached."""
        outbox.queue(self.conn, Letter(text, kind="summary", person=who), self.now)
