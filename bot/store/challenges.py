"""Challenges at rest: what is open where, who takes part since when, what the coach said. Statements, no rules."""

import json
import secrets
from collections.abc import Mapping
from dataclasses import dataclass
from datetime import date, datetime, timedelta
from typing import Any, Final

from sqlalchemy import Connection, delete, insert, select, update

from bot.store.contest_tables import challenge, contest_day, entrant, stay, verdict
from bot.store.tables import chat, crew, member, person
from bot.store.upsert import put_new
from core.model.challenge import Challenge, Entrant, Stay, Word

_CODE_BYTES: Final = 12
_DAY: Final = timedelta(days=1)
_LIVE: Final = ("new", "on")
"""States in which a challenge can be joined; a new one is not posted yet, because it was opened in quiet hours."""
_WATCHED: Final = (*_LIVE, "ending")
"""States in which something is still to be posted."""
_OPEN: Final = select(challenge, person.c.language).join(person, person.c.id == challenge.c.coach)


@dataclass(frozen=True, slots=True)
class Open:
    """A challenge in its group. ``closed`` weeks are closed; ``post`` is this week's standings in the outbox."""

    id: int
    chat: int
    coach: int
    noun: Challenge
    zone: str
    thread: int | None
    state: str
    closed: int
    post: int | None
    said: str | None
    looked: datetime | None
    door: str | None
    language: str = "en"
    """The coach's, in which the group is spoken to."""


@dataclass(frozen=True, slots=True)
class Waiting:
    """A report that waits for the coach's word, or had it. ``exercise`` "" is the whole session."""

    id: int
    challenge: int
    person: int
    on: date
    exercise: str
    word: Word


def add(conn: Connection, chat: int, coach: int, noun: Challenge, zone: str, thread: int | None) -> int:
    """A new challenge, not posted yet, with a code by which people without a coach come in; the group will see it."""
    values = {
        "chat": chat,
        "coach": coach,
        "title": noun.title,
        "starts": noun.starts,
        "weeks": noun.weeks,
        "counts": noun.counts,
        "teams": json.dumps(list(noun.teams), ensure_ascii=False),
        "zone": zone,
        "thread": thread,
        "state": "new",
        "closed": 0,
        "door": secrets.token_urlsafe(_CODE_BYTES),
    }
    key: int = conn.execute(insert(challenge).values(**values).returning(challenge.c.id)).scalar_one()
    return key


def in_chat(conn: Connection, chat: int) -> Open | None:
    """What is on in a group's chat."""
    query = _OPEN.where(challenge.c.chat == chat, challenge.c.state.in_(_LIVE))
    row = conn.execute(query.order_by(challenge.c.id.desc()).limit(1)).one_or_none()
    return _open(row) if row else None


def get(conn: Connection, key: int) -> Open:
    """The challenge with that key."""
    return _open(conn.execute(_OPEN.where(challenge.c.id == key)).one())


def by_door(conn: Connection, code: str) -> Open | None:
    """What a code lets into, while it is on."""
    query = _OPEN.where(challenge.c.door == code, challenge.c.state.in_(_LIVE))
    row = conn.execute(query).one_or_none()
    return _open(row) if row else None


def of_person(conn: Connection, who: int) -> list[Open]:
    """What a person takes part in that is on, oldest first."""
    mine = select(entrant.c.challenge).where(entrant.c.person == who)
    query = _OPEN.where(challenge.c.id.in_(mine), challenge.c.state.in_(_LIVE)).order_by(challenge.c.id)
    return [_open(row) for row in conn.execute(query)]


def of_coach(conn: Connection, coach: int) -> list[Open]:
    """What a coach has opened that is on, oldest first."""
    query = _OPEN.where(challenge.c.coach == coach, challenge.c.state.in_(_LIVE)).order_by(challenge.c.id)
    return [_open(row) for row in conn.execute(query)]


def to_look_at(conn: Connection, before: datetime) -> list[int]:
    """Challenges that were not looked at since then."""
    stale = challenge.c.looked.is_(None) | (challenge.c.looked < before)
    return list(conn.execute(select(challenge.c.id).where(challenge.c.state.in_(_WATCHED), stale)).scalars())


def mark(conn: Connection, key: int, **values: object) -> None:
    """Remember how far it has come: state, closed, post, said, looked, door."""
    conn.execute(update(challenge).where(challenge.c.id == key).values(**values))


def groups_of(conn: Connection, coach: int, channel: str) -> list[tuple[int, str]]:
    """The open chats of a coach's groups in a channel, with the groups' names."""
    query = select(chat.c.id, crew.c.name).join(crew, crew.c.id == chat.c.crew)
    rows = conn.execute(
        query.where(crew.c.coach == coach, chat.c.channel == channel, chat.c.active == 1).order_by(chat.c.id)
    )
    return [(row.id, row.name) for row in rows]


def coach_of(conn: Connection, where: int) -> int | None:
    """Whose group a chat is."""
    query = select(crew.c.coach).join(chat, chat.c.crew == crew.c.id).where(chat.c.id == where)
    found: int | None = conn.execute(query).scalar()
    return found


def is_active(conn: Connection, where: int) -> bool:
    """Whether a chat is open to us."""
    return conn.execute(select(chat.c.active).where(chat.c.id == where)).scalar() == 1


def found_group(conn: Connection, where: int, name: str, coach: int) -> None:
    """A chat becomes a coach's group."""
    key = conn.execute(insert(crew).values(name=name, coach=coach).returning(crew.c.id)).scalar_one()
    conn.execute(update(chat).where(chat.c.id == where).values(crew=key))


def in_group(conn: Connection, where: int, who: int) -> None:
    """The person is one of the group whose chat it is."""
    key = conn.execute(select(chat.c.crew).where(chat.c.id == where)).scalar()
    if key is not None:
        put_new(conn, member, [{"crew": key, "person": who}])


# Who takes part


def entrants(conn: Connection, key: int) -> list[tuple[Entrant, bool]]:
    """Everyone who takes part or did, with whether the coach trusts what is told in one go."""
    stays: dict[int, dict[str, list[Stay]]] = {}
    for row in conn.execute(select(stay).where(stay.c.challenge == key).order_by(stay.c.since, stay.c.id)):
        stays.setdefault(row.person, {"in": [], "pause": []})[row.kind].append(Stay(row.since, row.until))
    query = select(entrant).where(entrant.c.challenge == key).order_by(entrant.c.person)
    return [(_entrant(row, stays.get(row.person, {})), bool(row.trusted)) for row in conn.execute(query)]


def entrant_of(conn: Connection, key: int, who: int) -> Entrant | None:
    """One who takes part or did."""
    return next((one for one, _ in entrants(conn, key) if one.who == who), None)


def enter(conn: Connection, key: int, who: int, shown: str, team: str | None, on: date) -> None:
    """Take part from the day after ``on``, shown by that name; coming back keeps what was."""
    fresh = {"challenge": key, "person": who, "shown": shown, "team": team, "trusted": 0}
    if not put_new(conn, entrant, [fresh]):
        show(conn, key, who, shown, team)
    if not _is_open(conn, key, who, "in"):
        conn.execute(insert(stay).values(challenge=key, person=who, kind="in", since=on))


def show(conn: Connection, key: int, who: int, shown: str, team: str | None) -> None:
    """Shown by that name, in that team, from now on."""
    mine = (entrant.c.challenge == key, entrant.c.person == who)
    conn.execute(update(entrant).where(*mine).values(shown=shown, team=team))


def leave(conn: Connection, key: int, who: int, on: date) -> bool:
    """Take part no longer, from the day after ``on``. False: they did not."""
    _close(conn, key, who, "pause", on)
    return _close(conn, key, who, "in", on)


def pause(conn: Connection, key: int, who: int, on: date) -> None:
    """A pause from the day after ``on``."""
    if not _is_open(conn, key, who, "pause"):
        conn.execute(insert(stay).values(challenge=key, person=who, kind="pause", since=on + _DAY))


def back(conn: Connection, key: int, who: int, on: date) -> bool:
    """The pause ends with ``on``. False: there was none."""
    return _close(conn, key, who, "pause", on)


def trust(conn: Connection, key: int, who: int) -> None:
    """Sessions that this member tells in one go count from now on."""
    mine = (entrant.c.challenge == key, entrant.c.person == who)
    conn.execute(update(entrant).where(*mine).values(trusted=1))


def forget(conn: Connection, who: int) -> None:
    """Nothing is kept of the person in any challenge; the others' points stay what they are."""
    for table in (verdict, contest_day, stay, entrant):
        conn.execute(delete(table).where(table.c.person == who))


def _is_open(conn: Connection, key: int, who: int, kind: str) -> bool:
    mine = (stay.c.challenge == key, stay.c.person == who, stay.c.kind == kind, stay.c.until.is_(None))
    return conn.execute(select(stay.c.id).where(*mine).limit(1)).one_or_none() is not None


def _close(conn: Connection, key: int, who: int, kind: str, on: date) -> bool:
    mine = (stay.c.challenge == key, stay.c.person == who, stay.c.kind == kind, stay.c.until.is_(None))
    return conn.execute(update(stay).where(*mine).values(until=on)).rowcount > 0


# The coach's word


def ask(conn: Connection, key: int, who: int, on: date, exercise: str) -> int | None:
    """A report waits for the coach's word from now on; None: it did already, or has it."""
    row = {"challenge": key, "person": who, "on": on, "exercise": exercise, "word": "waits"}
    if not put_new(conn, verdict, [dict(row)]):
        return None
    found: int = conn.execute(select(verdict.c.id).where(*_is(who=who, key=key, on=on, exercise=exercise))).scalar_one()
    return found


def _is(*, who: int, key: int, on: date, exercise: str) -> tuple[Any, ...]:
    same_day = (verdict.c.challenge == key, verdict.c.person == who, verdict.c.on == on)
    return (*same_day, verdict.c.exercise == exercise)


def waiting(conn: Connection, number: int) -> Waiting | None:
    """A report by the number of its question."""
    row = conn.execute(select(verdict).where(verdict.c.id == number)).one_or_none()
    return _waiting(row) if row else None


def still_waiting(conn: Connection, key: int, who: int | None = None) -> list[Waiting]:
    """The reports that were asked about and still wait, the oldest question first: of one member, or of all."""
    query = select(verdict).where(verdict.c.challenge == key, verdict.c.word == "waits")
    if who is not None:
        query = query.where(verdict.c.person == who)
    return [_waiting(row) for row in conn.execute(query.order_by(verdict.c.id))]


def settle(conn: Connection, number: int, word: Word) -> None:
    """The coach's word is given."""
    conn.execute(update(verdict).where(verdict.c.id == number).values(word=word))


def rule(conn: Connection, key: int, who: int, on: date, word: Word) -> None:
    """The coach's word on a member's session of a day, asked for or not; and on all of that day that still waits."""
    ask(conn, key, who, on, "")
    same_day = (verdict.c.challenge == key, verdict.c.person == who, verdict.c.on == on)
    conn.execute(update(verdict).where(*same_day, verdict.c.word == "waits").values(word=word))
    conn.execute(update(verdict).where(*_is(who=who, key=key, on=on, exercise="")).values(word=word))


def words(conn: Connection, key: int) -> Mapping[tuple[int, date], dict[str, Word]]:
    """All of the coach's words, by member and day, then by exercise."""
    found: dict[tuple[int, date], dict[str, Word]] = {}
    for row in conn.execute(select(verdict).where(verdict.c.challenge == key)):
        found.setdefault((row.person, row.on), {})[row.exercise] = row.word
    return found


def _entrant(row: Any, stays: Mapping[str, list[Stay]]) -> Entrant:
    return Entrant(row.person, row.shown, tuple(stays.get("in", ())), tuple(stays.get("pause", ())), row.team)


def _waiting(row: Any) -> Waiting:
    return Waiting(row.id, row.challenge, row.person, row.on, row.exercise, row.word)


def _open(row: Any) -> Open:
    noun = Challenge(row.title, row.starts, row.weeks, row.counts, tuple(json.loads(row.teams)))
    return Open(
        id=row.id,
        chat=row.chat,
        coach=row.coach,
        noun=noun,
        zone=row.zone,
        thread=row.thread,
        state=row.state,
        closed=row.closed,
        post=row.post,
        said=row.said,
        looked=row.looked,
        door=row.door,
        language=row.language,
    )
