"""A shell to test with: real store, desk, intake and outbox, around a core and a channel that do as they are told."""

import json
from collections.abc import AsyncIterator, Callable
from contextlib import asynccontextmanager
from dataclasses import dataclass, field
from datetime import UTC, date, datetime, timedelta
from pathlib import Path
from typing import Any

from sqlalchemy import Table, select

from bot.clock import Tick
from bot.desk.rooms import Parts
from bot.folding import FOLDING
from bot.intake import Intake
from bot.outbox import Outbox, Pace
from bot.ports import (
    Back,
    Delivery,
    Gone,
    Malformed,
    Media,
    Nothing,
    Opened,
    Parcel,
    Press,
    RawUpdate,
    Renamed,
    Sent,
    Words,
)
from bot.store import people
from bot.store.engine import Store
from bot.store.outbox import Reach
from core.model.acts import SetAct
from core.model.book import Book, Incoming
from core.model.outcome import Keep, Outcome, Reply
from core.model.quantities import Load
from tests.bot.stores import url_in

CHANNEL = "wire"
MONDAY = datetime(2026, 3, 2, 17, 0, tzinfo=UTC)
INES, RUTH, TOMAS, OTHER = 900001, 1000001, 1000002, 777
GROUP = -55
KINDS: dict[str, Any] = {
    kind.__name__.lower(): kind for kind in (Words, Press, Media, Gone, Back, Renamed, Nothing, Malformed)
}


class HandClock:
    """A clock that stands until it is moved."""

    def __init__(self, at: datetime = MONDAY) -> None:
        self.at = at

    def __call__(self) -> datetime:
        return self.at

    def move(self, **span: float) -> None:
        self.at += timedelta(**span)


def squat(reps: int, kg: float = 60.0, **more: Any) -> SetAct:
    return SetAct("back-squat", Load("total", kg), reps=reps, **more)


def keeping(*acts: SetAct, on: date | None = None, text: str = "kept") -> Callable[[Incoming, Book, datetime], Outcome]:
    """An answer that keeps these sets for the day of the message (or ``on``)."""
    return lambda _i, _b, now: Outcome(replies=(Reply(text),), keep=tuple(Keep(act, on or now.date()) for act in acts))


def _played(planned: Any, *asked: object) -> Outcome:
    """What was planned: an outcome, a function that makes one, or a bug."""
    if isinstance(planned, Exception):
        raise planned
    outcome: Outcome = planned(*asked) if callable(planned) else planned
    return outcome


@dataclass
class FakeCore:
    """Core that says what it was told to say, and remembers what it was asked."""

    script: dict[str, Any] = field(default_factory=dict)
    reminders: dict[str, Any] = field(default_factory=dict)
    asked: list[tuple[Incoming, Book]] = field(default_factory=list)

    def answer(self, incoming: Incoming, book: Book, now: datetime) -> Outcome:
        self.asked.append((incoming, book))
        planned = self.script.get(incoming.text, Outcome(replies=(Reply(f"heard {incoming.text}"),)))
        return _played(planned, incoming, book, now)

    def remind(self, kind: str, on: date, book: Book, now: datetime) -> Outcome:
        return _played(self.reminders.get(kind, Outcome()), kind, on, book, now)


@dataclass
class FakeWire:
    """A channel whose deliveries are scripted: each chat's next answers, then Sent."""

    name: str = CHANNEL
    sent: list[Parcel] = field(default_factory=list)
    script: dict[int, list[Delivery]] = field(default_factory=dict)
    tried: list[Parcel] = field(default_factory=list)

    async def send(self, parcel: Parcel) -> Delivery:
        self.tried.append(parcel)
        planned = self.script.get(parcel.chat, [])
        became = planned.pop(0) if planned else Sent(len(self.tried))
        if isinstance(became, Sent):
            self.sent.append(parcel)
        return became

    def open(self, raw: RawUpdate) -> Opened:
        try:
            row = json.loads(raw.body)
            opened: Opened = KINDS[row.pop("is")](**row)
        except ValueError:
            return Malformed("no JSON")
        return opened

    def texts(self, chat: int) -> list[str]:
        return [parcel.text for parcel in self.sent if parcel.chat == chat]


@dataclass
class Shell:
    """Everything joined."""

    store: Store
    core: FakeCore
    wire: FakeWire
    clock: HandClock
    intake: Intake
    post: Outbox
    tick: Tick
    parts: Parts
    url: str
    number: int = 0

    def raw(self, **what: Any) -> RawUpdate:
        """The next update: ``kind`` (words) and its fields; chat and user default to one another."""
        self.number += 1
        kind = what.pop("kind", "words")
        chat = what.pop("chat", None) or what["user"]
        row: dict[str, Any] = {"is": kind, "chat": chat, **what}
        if kind == "words":
            row = {"message_id": self.number, **row}
        return RawUpdate(CHANNEL, self.number, chat, json.dumps(row))

    async def hear(self, *batch: RawUpdate) -> None:
        """Keep a batch, work it, send what is said."""
        await self.intake.keep(batch)
        await self.settle()

    async def settle(self) -> None:
        await self.intake.settle()
        await self.post.drain()

    async def say(self, user: int, text: str, **more: Any) -> list[str]:
        """One message; what came back into its chat."""
        raw = self.raw(user=user, text=text, **more)
        before = len(self.wire.texts(raw.chat))
        await self.hear(raw)
        return self.wire.texts(raw.chat)[before:]

    async def rows(self, table: Table) -> list[Any]:
        first = next(iter(table.primary_key))
        return await self.store.read(lambda conn: list(conn.execute(select(table).order_by(first)).all()))


@asynccontextmanager
async def shell(folder: Path, *, pace: Pace | None = None, clock: HandClock | None = None) -> AsyncIterator[Shell]:
    """A shell on a fresh store (or the one that is in the folder already)."""
    clock = clock or HandClock()
    core, wire = FakeCore(), FakeWire()
    url = url_in(folder)
    async with await Store.open(url) as store:
        parts = Parts(core.answer, core.remind, FOLDING, {CHANNEL: wire.open}, lambda code: f"/start={code}", "test")
        post = Outbox(store, wire, Reach(CHANNEL), clock, pace or Pace())
        intake = Intake(store, parts, clock, post.wake)
        yield Shell(store, core, wire, clock, intake, post, Tick(store, parts, clock, post.wake), parts, url)


async def with_people(room: Shell) -> Shell:
    """A coach and two clients, each with a chat."""

    def seed(conn: Any) -> None:
        coach = people.add(conn, "Ines", "UTC", MONDAY, coaches=True)
        people.reach(conn, coach.id, CHANNEL, INES)
        for name, user in (("Ruth", RUTH), ("Tomas", TOMAS)):
            one = people.add(conn, name, "UTC", MONDAY)
            people.make_lifter(conn, one.id, coach.id)
            people.reach(conn, one.id, CHANNEL, user)

    await room.store.write(seed)
    return room
