"""Acts at rest. One that no longer stands is marked and points to what took its place; none is overwritten."""

from collections.abc import Iterable
from dataclasses import dataclass
from datetime import date, datetime
from typing import Any, Final

from sqlalchemy import Connection, Row, bindparam, func, insert, select, update

from bot.codec import ACTS
from bot.store.shapes import act_of, act_text
from bot.store.tables import act, inbox
from core.model.acts import Act, Alarm
from core.model.book import Ended, Kept
from core.model.outcome import Keep

PLACES: Final = 1_000
"""Acts that one message may hold; a text of 4,096 characters holds fewer."""

_KINDS: Final = {kind: name for name, kind in ACTS.items()}

Touched = set[tuple[str, date]]
"""Exercises and days whose sets changed."""


@dataclass(frozen=True, slots=True)
class Cause:
    """What changes something: whose it is, the number of the message (None: the clock did it), when it came."""

    person: int
    number: int | None
    at: datetime


def keep(conn: Connection, cause: Cause, kept: Iterable[Keep]) -> Touched:
    """Keep what a message reports, in its order; the answer to a question belongs to the message that raised it."""
    rows: list[dict[str, Any]] = []
    places: dict[int | None, int] = {}
    for one in kept:
        number = cause.number if one.message is None else one.message
        places[number] = places[number] + 1 if number in places else _next_place(conn, cause.person, number)
        row = _row(cause.person, one.act, one.on) | {"at": cause.at, "message": number, "origin": number}
        rows.append(row | {"place": places[number]})
    if rows:
        conn.execute(_INSERT, rows)
    return {(row["exercise"], row["on"]) for row in rows if row["exercise"]}


_INSERT: Final = insert(act)
_LAST_PLACE: Final = select(func.max(act.c.place)).where(act.c.person == bindparam("who"))
_LAST_PLACE_OF: Final = _LAST_PLACE.where(act.c.origin == bindparam("number"))


def _next_place(conn: Connection, who: int, number: int | None) -> int:
    """After all that the message said before; what the clock did comes after everything."""
    if number is None:
        return (conn.execute(_LAST_PLACE, {"who": who}).scalar() or 0) + 1
    taken = conn.execute(_LAST_PLACE_OF, {"who": who, "number": number}).scalar()
    return number * PLACES if taken is None else taken + 1


def replace(conn: Connection, cause: Cause, key: int, new: Act | None) -> Touched:
    """The act no longer stands; ``new`` takes its place and its day, or nothing does."""
    old = conn.execute(select(act).where(act.c.id == key, act.c.person == cause.person)).one()
    touched: Touched = {(old.exercise, old.on)} if old.exercise else set()
    successor = None
    if new is not None:
        row = _row(cause.person, new, old.on)
        row |= {"at": old.at, "message": cause.number, "origin": old.origin, "place": old.place}
        successor = conn.execute(insert(act).values(**row).returning(act.c.id)).scalar_one()
        touched |= {(row["exercise"], old.on)} if row["exercise"] else set()
    state = "amended" if new is not None else "erased"
    ended = {"state": state, "superseded_by": successor, "ended_by": cause.number}
    conn.execute(update(act).where(act.c.id == key).values(**ended))
    return touched


def reopen(conn: Connection, cause: Cause) -> Touched:
    """An edited message is read anew: what it had amended or erased of other messages stands again."""
    ended = select(act).where(act.c.person == cause.person, act.c.ended_by == cause.number)
    touched: Touched = set()
    for old in conn.execute(ended.where(act.c.message != cause.number)).all():
        heir = _heir(conn, old.superseded_by)
        while heir is not None and heir.state != "kept" and heir.ended_by == cause.number:
            heir = _heir(conn, heir.superseded_by)  # the same message changed it twice
        if heir is not None and heir.state != "kept":
            continue  # something later changed it again, and that stands
        if heir is not None:
            _end(conn, heir.id, cause)
            touched |= _touch(heir)
        again = {"state": "kept", "superseded_by": None, "ended_by": None}
        conn.execute(update(act).where(act.c.id == old.id).values(**again))
        touched |= _touch(old)
    return touched


def _heir(conn: Connection, key: int | None) -> Row[Any] | None:
    return conn.execute(select(act).where(act.c.id == key)).one_or_none() if key is not None else None


def supersede(conn: Connection, cause: Cause) -> Touched:
    """All acts that the message first reported, in whatever form they stand by now, no longer stand.

    What others had erased of them is the message's own past too, so that no undo brings it back beside the new reading.
    """
    mine = select(act).where(act.c.person == cause.person, act.c.origin == cause.number)
    touched: Touched = set()
    for old in conn.execute(mine.where(act.c.state == "kept")).all():
        _end(conn, old.id, cause)
        touched |= _touch(old)
    past = (act.c.person == cause.person, act.c.origin == cause.number, act.c.state != "kept")
    conn.execute(update(act).where(*past).values(ended_by=act.c.message))
    return touched


def take_back(conn: Connection, cause: Cause) -> Touched:
    """What the message changed stands as before, and what it reported is erased; an alarm is not taken back by a word.

    The message itself ended them, not the one that asked for it, so that taking back cannot be taken for a change.
    """
    touched = reopen(conn, cause)
    mine = select(act).where(act.c.person == cause.person, act.c.origin == cause.number, act.c.state == "kept")
    for old in conn.execute(mine.where(act.c.kind != _KINDS[Alarm])).all():
        conn.execute(update(act).where(act.c.id == old.id).values(state="erased", ended_by=old.message))
        touched |= _touch(old)
    return touched


_HEIR: Final = act.alias()
_ENDED: Final = (
    select(act, inbox.c.received, _HEIR.c.state.label("heir_state"))
    .join(inbox, inbox.c.seq == act.c.ended_by)
    .join(_HEIR, _HEIR.c.id == act.c.superseded_by, isouter=True)
    .where(act.c.person == bindparam("who"), act.c.ended_by > 0, act.c.state != "kept")
    .where(inbox.c.received >= bindparam("since"))
    .order_by(act.c.ended_by, act.c.id)
)


def ended_since(conn: Connection, who: int, since: datetime) -> tuple[Ended, ...]:
    """What messages that arrived since then amended or erased of others, where nothing changed it again."""
    rows = {row.id: row for row in conn.execute(_ENDED, {"who": who, "since": since})}
    found = []
    for row in rows.values():
        heir, state = row.superseded_by, row.heir_state
        while state not in (None, "kept") and heir in rows and rows[heir].ended_by == row.ended_by:
            heir, state = rows[heir].superseded_by, rows[heir].heir_state  # the same message changed it twice
        if row.ended_by != row.message and state in (None, "kept"):
            kept = Kept(row.id, act_of(row.body), row.on, row.at, row.origin or 0)
            found.append(Ended(kept, row.ended_by, row.received, heir))
    return tuple(found)


_STANDING: Final = select(act.c.id, act.c.body, act.c.on, act.c.at, act.c.origin, act.c.place).where(
    act.c.person == bindparam("who"), act.c.state == "kept"
)
_SINCE: Final = _STANDING.where(act.c.on >= bindparam("since"))
_OF_MESSAGE: Final = _STANDING.where(act.c.origin == bindparam("number"))


def kept_since(conn: Connection, who: int, since: date, of_message: int | None) -> tuple[Kept, ...]:
    """What stands from that day on, and what stands of one message whatever its day, oldest first."""
    rows = {row.id: row for row in conn.execute(_SINCE, {"who": who, "since": since})}
    if of_message is not None:
        rows |= {row.id: row for row in conn.execute(_OF_MESSAGE, {"who": who, "number": of_message})}
    ordered = sorted(rows.values(), key=lambda row: row.place)
    return tuple(Kept(row.id, act_of(row.body), row.on, row.at, row.origin or 0) for row in ordered)


def _row(who: int, one: Act, on: date) -> dict[str, Any]:
    kind = _KINDS[type(one)]
    exercise = getattr(one, "exercise", None)
    body = act_text(one)
    return {"person": who, "kind": kind, "exercise": exercise, "on": on, "body": body, "state": "kept"}


def _end(conn: Connection, key: int, cause: Cause) -> None:
    conn.execute(update(act).where(act.c.id == key).values(state="amended", ended_by=cause.number))


def _touch(row: Row[Any]) -> Touched:
    return {(row.exercise, row.on)} if row.exercise else set()
