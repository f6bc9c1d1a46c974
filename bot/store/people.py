"""Who is known: coaches, lifters, groups, and the chats in which they are reached."""

from dataclasses import dataclass
from datetime import datetime, time
from typing import Any, Final
from zoneinfo import ZoneInfo

from sqlalchemy import Connection, Select, bindparam, func, insert, select, update

from bot.store.contest_tables import challenge
from bot.store.shapes import noun_text
from bot.store.tables import address, chat, chat_alias, crew, inbox, lifter, member, outbox, person, silence
from bot.store.upsert import put
from core.model.book import Profile
from core.model.lifter import Lifter

DEFAULT_PROFILE: Final = Profile(name="", zone=ZoneInfo("UTC"))


@dataclass(frozen=True, slots=True)
class Person:
    """Someone known. ``coach`` is the person who coaches them."""

    id: int
    name: str
    coaches: bool
    lifts: bool
    coach: int | None
    zone: str


@dataclass(frozen=True, slots=True)
class Chat:
    """A chat that we may write to. A private one has its person, a group's has its crew (when it is a known one)."""

    id: int
    channel: str
    platform: int
    person: int | None
    crew: int | None
    active: bool


def add(conn: Connection, name: str, zone: str, joined: datetime, *, coaches: bool = False) -> Person:
    """A new person, so far without a role but perhaps that of a coach."""
    values = {
        "name": name,
        "coaches": int(coaches),
        "lifts": 0,
        "zone": zone,
        "language": DEFAULT_PROFILE.language,
        "prompt_lead_minutes": DEFAULT_PROFILE.prompt_lead_minutes,
        "quiet_from": DEFAULT_PROFILE.quiet_from.isoformat("minutes"),
        "quiet_to": DEFAULT_PROFILE.quiet_to.isoformat("minutes"),
        "decimal": DEFAULT_PROFILE.decimal,
        "joined": joined,
    }
    key = conn.execute(insert(person).values(**values).returning(person.c.id)).scalar_one()
    return Person(key, name, coaches, lifts=False, coach=None, zone=zone)


def make_coach(conn: Connection, who: int) -> None:
    """The person coaches from now on."""
    conn.execute(update(person).where(person.c.id == who).values(coaches=1))


def make_lifter(conn: Connection, who: int, coach: int | None, body: Lifter | None = None) -> None:
    """The person trains from now on, with that coach. What is known of their body stays when they did before."""
    conn.execute(update(person).where(person.c.id == who).values(lifts=1, coach=coach))
    known = conn.execute(select(lifter.c.person).where(lifter.c.person == who)).one_or_none()
    if known is None or body is not None:
        put(conn, lifter, person=who, body=noun_text(body or Lifter()), folded_through=None)


def set_profile(conn: Connection, who: int, profile: Profile) -> None:
    """What to call them, how to speak to them, when to leave them alone. ``coach`` is not set by this."""
    values = {
        "name": profile.name,
        "zone": getattr(profile.zone, "key", "UTC"),
        "language": profile.language,
        "prompt_lead_minutes": profile.prompt_lead_minutes,
        "quiet_from": profile.quiet_from.isoformat("minutes"),
        "quiet_to": profile.quiet_to.isoformat("minutes"),
        "decimal": profile.decimal,
    }
    conn.execute(update(person).where(person.c.id == who).values(**values))
    heard = {"reminders": int(profile.reminders), "away_through": profile.away_through, "nudges": int(profile.nudges)}
    put(conn, silence, person=who, **heard)


_COACH: Final = person.alias()

PROFILES: Final = (
    select(
        person,
        _COACH.c.name.label("coach_name"),
        _COACH.c.language.label("coach_language"),
        _COACH.c.decimal.label("coach_decimal"),
        silence.c.reminders,
        silence.c.away_through,
        silence.c.nudges,
    )
    .join(_COACH, person.c.coach == _COACH.c.id, isouter=True)
    .join(silence, silence.c.person == person.c.id, isouter=True)
    .where(person.c.id == bindparam("who"))
)
"""The rows of ``profile_of``, one of ``who``."""


def profile(conn: Connection, who: int) -> Profile:
    """A person as core sees them."""
    return profile_of(conn.execute(PROFILES, {"who": who}).one())


def profile_of(row: Any) -> Profile:
    """A person from a row of ``PROFILES``."""
    return Profile(
        name=row.name,
        zone=ZoneInfo(row.zone),
        language=row.language,
        coach=row.coach_name,
        prompt_lead_minutes=row.prompt_lead_minutes,
        quiet_from=time.fromisoformat(row.quiet_from),
        quiet_to=time.fromisoformat(row.quiet_to),
        decimal=row.decimal,
        reminders=row.reminders != 0,
        away_through=row.away_through,
        nudges=row.nudges == 1,
        coach_language=row.coach_language,
        coach_decimal=row.coach_decimal,
    )


def get(conn: Connection, who: int) -> Person:
    """The person with that key."""
    return _person(conn.execute(_people().where(person.c.id == who)).one())


def by_user(conn: Connection, channel: str, user: int) -> Person | None:
    """Whom a channel's user id belongs to."""
    row = conn.execute(_BY_USER, {"of": channel, "number": user}).one_or_none()
    return _person(row) if row else None


def by_name(conn: Connection, name: str, *, coach: int | None = None) -> list[Person]:
    """Everyone of that name, whatever its case; of one coach's clients only when ``coach`` is given."""
    query = _people().order_by(person.c.id)
    if coach is not None:
        query = query.where(person.c.coach == coach)
    return [one for one in map(_person, conn.execute(query)) if one.name.casefold() == name.casefold()]


def by_id(conn: Connection, number: int) -> Person | None:
    """Whom a number names: a channel's user id first, else our own key."""
    row = conn.execute(_people().join(address).where(address.c.user == number).limit(1)).one_or_none()
    row = row or conn.execute(_people().where(person.c.id == number)).one_or_none()
    return _person(row) if row else None


def clients(conn: Connection, coach: int) -> list[Person]:
    """A coach's clients by name."""
    return [_person(row) for row in conn.execute(_people().where(person.c.coach == coach).order_by(person.c.name))]


def lifters(conn: Connection) -> list[Person]:
    """Everyone who trains, in the order of joining."""
    return [_person(row) for row in conn.execute(_people().where(person.c.lifts == 1).order_by(person.c.id))]


def coaches(conn: Connection) -> list[Person]:
    """Everyone who coaches, in the order of joining."""
    return [_person(row) for row in conn.execute(_people().where(person.c.coaches == 1).order_by(person.c.id))]


def user_of(conn: Connection, who: int, channel: str) -> int | None:
    """The person's user id in a channel."""
    query = select(address.c.user).where(address.c.person == who, address.c.channel == channel)
    found: int | None = conn.execute(query.order_by(address.c.user).limit(1)).scalar()
    return found


def know(conn: Connection, who: int, channel: str, user: int) -> None:
    """A channel's user id is this person's."""
    put(conn, address, channel=channel, user=user, person=who)


def reach(conn: Connection, who: int, channel: str, user: int) -> None:
    """A channel's user id is this person's, and so is the private chat of the same id."""
    know(conn, who, channel, user)
    known = chat_of(conn, channel, user)
    if known is None:
        add_chat(conn, channel, user, who=who)
    else:
        conn.execute(update(chat).where(chat.c.id == known.id).values(person=who, active=1))


# Chats


def add_chat(
    conn: Connection, channel: str, platform: int, *, who: int | None = None, group: int | None = None
) -> Chat:
    """A new chat: someone's private one, or a group's."""
    values = {"channel": channel, "platform": platform, "person": who, "crew": group, "active": 1}
    key = conn.execute(insert(chat).values(**values).returning(chat.c.id)).scalar_one()
    return Chat(key, channel, platform, who, group, active=True)


_CHAT: Final = select(chat).where(chat.c.channel == bindparam("of"), chat.c.platform == bindparam("number"))


def chat_of(conn: Connection, channel: str, platform: int) -> Chat | None:
    """The chat with a channel's id, the id it has now or one that it had before."""
    row = conn.execute(_CHAT, {"of": channel, "number": platform}).one_or_none()
    if row is None:
        before = select(chat).join(chat_alias, chat_alias.c.chat == chat.c.id)
        before = before.where(chat_alias.c.channel == channel, chat_alias.c.platform == platform)
        row = conn.execute(before).one_or_none()
    return _chat(row) if row else None


def is_reached(conn: Connection, who: int) -> bool:
    """Whether some private chat with the person is open to us."""
    query = select(chat.c.id).where(chat.c.person == who, chat.c.active == 1).limit(1)
    return conn.execute(query).one_or_none() is not None


_SEEN: Final = update(chat).where(chat.c.id == bindparam("this"))


def chat_seen(conn: Connection, key: int, at: datetime) -> None:
    """Something came from this chat: it is open to us."""
    conn.execute(_SEEN, {"this": key, "seen": at, "active": 1})


def set_active(conn: Connection, key: int, *, active: bool) -> None:
    """A chat closed itself to us, or opened again. What still waited for a closed one will not be sent."""
    conn.execute(update(chat).where(chat.c.id == key).values(active=int(active), not_before=None))
    if not active:
        waiting = outbox.c.state.in_(("queued", "uncertain"))
        conn.execute(update(outbox).where(outbox.c.chat == key, waiting).values(state="dead"))


def move_chat(conn: Connection, key: int, platform: int) -> None:
    """A chat goes on under a new id of its channel; the old one stays known."""
    row = conn.execute(select(chat).where(chat.c.id == key)).one()
    if row.platform == platform:
        return
    newer = chat_of(conn, row.channel, platform)
    if newer is not None and newer.id != key:
        # It already wrote to us under the new id: what is there joins the older chat.
        conn.execute(update(outbox).where(outbox.c.chat == newer.id).values(chat=key))
        conn.execute(update(chat_alias).where(chat_alias.c.chat == newer.id).values(chat=key))
        conn.execute(update(challenge).where(challenge.c.chat == newer.id).values(chat=key))
        conn.execute(chat.delete().where(chat.c.id == newer.id))
        _join_groups(conn, _chat(row), newer)
    put(conn, chat_alias, channel=row.channel, platform=row.platform, chat=key)
    conn.execute(update(chat).where(chat.c.id == key).values(platform=platform, active=1))


def _join_groups(conn: Connection, older: Chat, newer: Chat) -> None:
    """The group that a chat became under its new id is the older chat's group, or joins it."""
    if older.crew is None or newer.crew in (None, older.crew):
        conn.execute(update(chat).where(chat.c.id == older.id).values(crew=older.crew or newer.crew))
        return
    there = select(member.c.person).where(member.c.crew == older.crew)
    conn.execute(member.delete().where(member.c.crew == newer.crew, member.c.person.in_(there)))
    conn.execute(update(member).where(member.c.crew == newer.crew).values(crew=older.crew))
    conn.execute(crew.delete().where(crew.c.id == newer.crew))


# Groups


def add_group(conn: Connection, name: str, coach: int, members: list[int]) -> int:
    """People of one coach who train together."""
    key: int = conn.execute(insert(crew).values(name=name, coach=coach).returning(crew.c.id)).scalar_one()
    for who in members:
        put_member(conn, key, who)
    return key


def put_member(conn: Connection, group: int, who: int) -> None:
    """The person takes part in the group."""
    conn.execute(insert(member).values(crew=group, person=who))


def group_by_name(conn: Connection, name: str) -> int | None:
    """The group of that name, whatever its case."""
    rows = conn.execute(select(crew.c.id, crew.c.name).order_by(crew.c.id))
    return next((row.id for row in rows if row.name.casefold() == name.casefold()), None)


def groups(conn: Connection) -> list[tuple[int, str]]:
    """Every group: its key and name."""
    return [(row.id, row.name) for row in conn.execute(select(crew.c.id, crew.c.name).order_by(crew.c.id))]


def group_chat(conn: Connection, group: int, channel: str) -> Chat | None:
    """The group's chat in a channel."""
    query = select(chat).where(chat.c.crew == group, chat.c.channel == channel).order_by(chat.c.id).limit(1)
    row = conn.execute(query).one_or_none()
    return _chat(row) if row else None


def members(conn: Connection, group: int) -> list[Person]:
    """Who takes part, in the order of joining the service."""
    query = _people().join(member, member.c.person == person.c.id).where(member.c.crew == group)
    return [_person(row) for row in conn.execute(query.order_by(person.c.id))]


def is_empty(conn: Connection) -> bool:
    """Whether nobody is known and nothing came in."""
    count = select(func.count())
    return not conn.execute(count.select_from(person)).scalar() and not conn.execute(count.select_from(inbox)).scalar()


def _people() -> Select[Any]:
    return select(person.c.id, person.c.name, person.c.coaches, person.c.lifts, person.c.coach, person.c.zone)


_BY_USER: Final = (
    _people()
    .join(address, address.c.person == person.c.id)
    .where(address.c.channel == bindparam("of"), address.c.user == bindparam("number"))
)


def _person(row: Any) -> Person:
    return Person(row.id, row.name, bool(row.coaches), bool(row.lifts), row.coach, row.zone)


def _chat(row: Any) -> Chat:
    return Chat(row.id, row.channel, row.platform, row.person, row.crew, bool(row.active))
