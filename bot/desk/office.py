"""What a coach's order is worked with: own clients by name, the case, how to answer. Decides nothing."""

from collections.abc import Sequence
from dataclasses import dataclass
from datetime import date, datetime
from functools import cached_property
from typing import Final

from sqlalchemy import Connection

from bot.desk.rooms import Case, Parts
from bot.ports import RawUpdate
from bot.store import books, outbox, people, plans
from bot.store.inbox import Arrived
from bot.store.outbox import Kind, Letter, Recipe
from bot.store.people import Chat, Person
from core.model.book import Book, Profile
from core.model.outcome import Button
from core.model.quantities import Unit
from core.order.read import Around
from core.read.finding import find
from core.say.render import Voice
from core.say.reply import voice_of

FITS: Final = 64
"""Bytes of a button's data (the channel's own limit)."""


@dataclass(frozen=True)
class Office:
    """One coach at the desk."""

    case: Case
    coach: Person
    chat: Chat

    @property
    def conn(self) -> Connection:
        """The transaction of the case."""
        return self.case.conn

    @cached_property
    def clients(self) -> dict[str, Person]:
        """The coach's own clients, by a name that is theirs alone."""
        found = people.clients(self.conn, self.coach.id)
        names = [one.name.casefold() for one in found]
        twice = {name for name in names if names.count(name) > 1}
        return {(f"{one.name} ({one.id})" if one.name.casefold() in twice else one.name): one for one in found}

    @cached_property
    def profile(self) -> Profile:
        """The coach as core sees them."""
        return people.profile(self.conn, self.coach.id)

    @property
    def today(self) -> date:
        """The coach's own day."""
        return self.case.now.astimezone(self.profile.zone).date()

    @property
    def voice(self) -> Voice:
        """How to speak to the coach."""
        return voice_of(self.profile, "kg")

    def voice_in(self, unit: Unit) -> Voice:
        """How to speak to the coach of somebody who counts in that unit."""
        return voice_of(self.profile, unit)

    def around(self) -> Around:
        """What the reading of an order leans on."""
        planned = {
            name: tuple(item.exercise for day in plans.weekly(self.conn, one.id).days for item in day.exercises)
            for name, one in self.clients.items()
        }
        return Around(tuple(self.clients), find, self.today, planned, self.coach.lifts)

    def book(self, who: Person) -> Book:
        """A client's book now."""
        return books.load(self.conn, who.id, self.case.now, self.case.parts.folding)

    def say(self, key: str, count: float | None = None, /, **slots: object) -> str:
        """Words for the coach."""
        return self.voice.say(key, count, **slots)

    def reply(self, text: str, buttons: Sequence[Button] = (), attachment: tuple[str, bytes] | None = None) -> None:
        """Answer the coach in the chat that the order came from."""
        letter = Letter(
            text,
            buttons=tuple(one for one in buttons if len(one.data.encode()) <= FITS),
            chat=self.chat.id,
            thread=self.case.thread,
            reply_to=self.case.arrived.seq,
            attachment=attachment,
        )
        outbox.queue(self.conn, letter, self.case.now)

    def promise(self, text: str, recipe: Recipe) -> None:
        """Answer the coach with what is made outside of this transaction, because it takes long."""
        to = (self.chat.id, self.case.thread, self.case.arrived.seq)
        letter = Letter(text, recipe=recipe, chat=to[0], thread=to[1], reply_to=to[2])
        outbox.queue(self.conn, letter, self.case.now)

    def tell(self, who: int, text: str, buttons: Sequence[Button] = (), kind: Kind = "summary") -> None:
        """Say something to somebody else, wherever they are reached."""
        outbox.queue(self.conn, Letter(text, kind=kind, person=who, buttons=tuple(buttons)), self.case.now)

    def yes_no(self, question: int) -> tuple[Button, Button]:
        """The two answers under a question."""
        return Button(self.say("yes"), f"c:{question}:y"), Button(self.say("no"), f"c:{question}:n")

    def order_button(self, label: str, order: str) -> Button:
        """A button that stands for an order in words."""
        return Button(label, f"o:{order}")


def at_desk(conn: Connection, parts: Parts, coach: Person, now: datetime) -> Office:
    """The coach's desk without a message before it: for the clock, and for what is made later."""
    arrived = Arrived(0, RawUpdate("clock", 0, 0, "{}"), now, 0)
    return Office(Case(conn, parts, arrived, 0, private=True), coach, Chat(0, "clock", 0, coach.id, None, active=True))
