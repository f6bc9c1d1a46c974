"""Whose chats the page shows: a seat for each lifter, coach and group, with a user and a chat in this channel."""

from dataclasses import dataclass
from typing import Final, Literal

from sqlalchemy import Connection, select

from bot.channels.page.shape import NAME
from bot.store import people
from bot.store.people import Person
from bot.store.tables import chat, crew

Kind = Literal["lifter", "coach", "group"]

MOST: Final = 300
"""Seats of a kind that can be picked from; more cannot be looked through."""


@dataclass(frozen=True, slots=True)
class Seat:
    """A chat on the page. ``speakers``: who can write there, as (user, name); ``keys``: its chats in every channel."""

    chat: int
    kind: Kind
    name: str
    zone: str
    speakers: tuple[tuple[int, str], ...]
    keys: tuple[int, ...]
    person: int | None = None

    @property
    def private(self) -> bool:
        """Whether it is one person's own."""
        return self.kind != "group"


def take(conn: Connection) -> None:
    """Make sure that everyone, and every group, has a chat on the page."""
    for who in (*people.coaches(conn), *people.lifters(conn)):
        _reach(conn, who.id)
    for key, _ in people.groups(conn):
        if people.members(conn, key) and people.group_chat(conn, key, NAME) is None:
            people.add_chat(conn, NAME, -key, group=key)


def take_one(conn: Connection, who: int) -> None:
    """Make sure that this one has."""
    _reach(conn, who)


def seats(conn: Connection, only: int | None = None) -> tuple[Seat, ...]:
    """Every seat, or ``only`` that person's own chat: coaches first, then lifters, then groups."""
    coaches = [one for one in people.coaches(conn) if only in (None, one.id)]
    lifters = [one for one in people.lifters(conn) if only in (None, one.id) and not one.coaches]
    private = (_private(conn, who) for who in (*coaches[:MOST], *lifters[:MOST]))
    groups = () if only is not None else (_group(conn, key, name) for key, name in people.groups(conn)[:MOST])
    return tuple(seat for seat in (*private, *groups) if seat is not None)


def _reach(conn: Connection, who: int) -> None:
    if people.user_of(conn, who, NAME) is None:
        people.reach(conn, who, NAME, who)


def _private(conn: Connection, who: Person) -> Seat | None:
    user = people.user_of(conn, who.id, NAME)
    if user is None:
        return None
    keys = tuple(conn.execute(select(chat.c.id).where(chat.c.person == who.id)).scalars())
    return Seat(user, "coach" if who.coaches else "lifter", who.name, who.zone, ((user, who.name),), keys, who.id)


def _group(conn: Connection, key: int, name: str) -> Seat | None:
    here = people.group_chat(conn, key, NAME)
    if here is None:
        return None
    owner = people.get(conn, conn.execute(select(crew.c.coach).where(crew.c.id == key)).scalar_one())
    named = [(people.user_of(conn, one.id, NAME), one.name) for one in (*people.members(conn, key), owner)]
    speakers = tuple((user, one) for user, one in dict(named).items() if user is not None)
    keys = tuple(conn.execute(select(chat.c.id).where(chat.c.crew == key)).scalars())
    return Seat(here.platform, "group", name, owner.zone, speakers, keys)
