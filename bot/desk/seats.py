"""Who sits at a terminal: a name becomes a person, a group, or a newcomer, each with a user and a chat there."""

import hashlib
from collections.abc import Mapping
from dataclasses import dataclass, field
from typing import Final

from sqlalchemy import Connection

from bot.ports import StoreError
from bot.store import people
from bot.store.people import Person

COACH: Final = "coach"
GROUP: Final = "group"
"""Words that stand for the first coach and the first group, where nobody is called so."""

_NEWCOMERS: Final = 1 << 40
"""Users from here on are people whom nobody knows yet; below are our own keys."""


@dataclass(frozen=True, slots=True)
class Sitting:
    """A place at the terminal. ``members``: who speaks in the group, by name. ``known`` False: a newcomer."""

    name: str
    user: int
    chat: int
    private: bool = True
    members: Mapping[str, int] = field(default_factory=dict)
    known: bool = True


def sit_down(conn: Connection, channel: str, name: str) -> Sitting:
    """Find out who that is, and make sure that the channel knows them. Raises StoreError when several are meant."""
    person = _person(conn, name)
    if person is not None:
        user = people.user_of(conn, person.id, channel)
        if user is None:
            user = person.id
            people.reach(conn, person.id, channel, user)
        return Sitting(person.name, user, user)
    group = people.group_by_name(conn, name) or _first_group(conn, name)
    if group is not None:
        return _in_group(conn, channel, name, group)
    user = _NEWCOMERS + int.from_bytes(hashlib.sha256(name.encode()).digest()[:5], "big")
    return Sitting(name, user, user, known=False)


def _person(conn: Connection, name: str) -> Person | None:
    found = people.by_name(conn, name)
    if len(found) > 1:
        numbers = ", ".join(str(one.id) for one in found)
        raise StoreError(f"several people are called {name}: give one of their numbers ({numbers})")
    if found:
        return found[0]
    if name.isascii() and name.isdigit():
        return people.by_id(conn, int(name))
    return next(iter(people.coaches(conn)), None) if name.casefold() == COACH else None


def _first_group(conn: Connection, name: str) -> int | None:
    return next((key for key, _ in people.groups(conn)), None) if name.casefold() == GROUP else None


def _in_group(conn: Connection, channel: str, name: str, group: int) -> Sitting:
    members = people.members(conn, group)
    if not members:
        raise StoreError(f"nobody takes part in {name} yet: chat as a person instead")
    users: dict[str, int] = {}
    for one in members:
        user = people.user_of(conn, one.id, channel)
        if user is None:
            user = one.id
            people.know(conn, one.id, channel, user)
        users[one.name] = user
    chat = people.group_chat(conn, group, channel) or people.add_chat(conn, channel, -group, group=group)
    return Sitting(name, users[members[0].name], chat.platform, private=False, members=users)
