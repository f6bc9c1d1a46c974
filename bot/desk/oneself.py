"""What a wish about oneself is worked with: the person, their profile and body, how to answer. Decides nothing."""

from dataclasses import dataclass, replace
from datetime import date
from functools import cached_property

from sqlalchemy import Connection

from bot.desk import zones
from bot.desk.rooms import Case
from bot.store import about, outbox, people, renewal
from bot.store.outbox import Kind, Letter, Recipe
from bot.store.people import Chat, Person
from core.join.answers import Around
from core.join.zones import Here
from core.model.book import Profile
from core.model.lifter import Lifter
from core.model.outcome import Button
from core.say.render import Voice
from core.say.reply import voice_of


@dataclass(frozen=True)
class Oneself:
    """One person who speaks of themselves."""

    case: Case
    who: Person
    chat: Chat

    @property
    def conn(self) -> Connection:
        """The transaction of the case."""
        return self.case.conn

    @cached_property
    def profile(self) -> Profile:
        """The person as core sees them."""
        return people.profile(self.conn, self.who.id)

    @cached_property
    def body(self) -> Lifter:
        """Body and kit; the usual ones for a coach who does not train here."""
        return about.body_of(self.conn, self.who.id) if self.who.lifts else Lifter()

    @cached_property
    def voice(self) -> Voice:
        """How to speak to them."""
        return voice_of(self.profile, self.body.unit)

    @property
    def today(self) -> date:
        """Their own day."""
        return self.case.now.astimezone(self.profile.zone).date()

    @property
    def here(self) -> Here:
        """The moment and the place."""
        return zones.here(self.case.now, self.profile.zone)

    def around(self, *, busy: bool = False) -> Around:
        """What the reading of an answer leans on."""
        return Around(self.body.unit, self.here, self.profile.name, busy)

    def say(self, key: str, count: float | None = None, /, **slots: object) -> str:
        """Words for them."""
        return self.voice.say(key, count, **slots)

    def with_profile(self, **changes: object) -> "Oneself":
        """With what is known of the person changed."""
        people.set_profile(self.conn, self.who.id, replace(self.profile, **changes))  # type: ignore[arg-type]
        return Oneself(self.case, people.get(self.conn, self.who.id), self.chat)

    def with_body(self, body: Lifter) -> "Oneself":
        """With the body or the kit changed."""
        about.set_body(self.conn, self.who.id, body)
        return Oneself(self.case, self.who, self.chat)

    def renewed(self) -> "Oneself":
        """With the agenda made anew."""
        renewal.renew(self.conn, self.who.id, self.case.now)
        return self

    def reply(self, text: str, buttons: tuple[Button, ...] = ()) -> None:
        """Answer in the chat that the message came from."""
        self.queue(Letter(text, buttons=buttons))

    def make(self, text: str, recipe: Recipe, kind: Kind = "reply") -> None:
        """Something whose picture or document is made after the answer."""
        self.queue(Letter(text, kind=kind, recipe=recipe))

    def queue(self, letter: Letter) -> None:
        """Queue a letter into this chat."""
        here = replace(letter, chat=self.chat.id, thread=self.case.thread, reply_to=self.case.arrived.seq)
        outbox.queue(self.conn, here, self.case.now)

    def tell_coach(self, key: str, kind: Kind = "summary", **slots: object) -> None:
        """Word to the coach, in the coach's own language; a slot may be made with the coach's voice."""
        if self.who.coach is not None:
            voice = voice_of(people.profile(self.conn, self.who.coach), "kg")
            filled = {name: slot(voice) if callable(slot) else slot for name, slot in slots.items()}
            letter = Letter(voice.say(key, name=self.profile.name, **filled), kind=kind, person=self.who.coach)
            outbox.queue(self.conn, letter, self.case.now)
