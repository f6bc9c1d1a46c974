"""What to come back to: one row for a person, a kind and a local day, so that nothing is said twice."""

from dataclasses import dataclass
from datetime import date, datetime
from typing import Final

from sqlalchemy import Connection, bindparam, func, select, update

from bot.store.tables import agenda
from bot.store.upsert import put_new
from core.model.outcome import AgendaChange


@dataclass(frozen=True, slots=True)
class Due:
    """A row whose time has come."""

    id: int
    person: int
    kind: str
    on: date
    due: datetime


_ROW: Final = (agenda.c.person == bindparam("who"), agenda.c.kind == bindparam("of"), agenda.c.on == bindparam("day"))
_CANCEL: Final = update(agenda).where(*_ROW, agenda.c.state == "waiting")
_PUT_OFF: Final = update(agenda).where(*_ROW, agenda.c.state.in_(("waiting", "cancelled")))


def change(conn: Connection, who: int, wanted: AgendaChange) -> None:
    """Set when to come back, or cancel it. What was said already is not said again."""
    mine = {"who": who, "of": wanted.kind, "day": wanted.on}
    if wanted.due is None:
        conn.execute(_CANCEL, mine | {"state": "cancelled"})
        return
    row = {"person": who, "kind": wanted.kind, "on": wanted.on, "due": wanted.due, "state": "waiting", "attempts": 0}
    if not put_new(conn, agenda, [row]):
        conn.execute(_PUT_OFF, mine | {"due": wanted.due, "state": "waiting"})


def due(conn: Connection, now: datetime, limit: int) -> list[Due]:
    """Rows whose time has come, the earliest first."""
    query = select(agenda).where(agenda.c.state == "waiting", agenda.c.due <= now)
    rows = conn.execute(query.order_by(agenda.c.due, agenda.c.id).limit(limit))
    return [Due(row.id, row.person, row.kind, row.on, row.due) for row in rows]


def is_waiting(conn: Connection, key: int) -> bool:
    """Whether it is still to be dealt with."""
    return conn.execute(select(agenda.c.state).where(agenda.c.id == key)).scalar() == "waiting"


def done(conn: Connection, key: int, now: datetime) -> None:
    """It is dealt with, unless it was put off to a later time."""
    mine = (agenda.c.id == key, agenda.c.state == "waiting", agenda.c.due <= now)
    conn.execute(update(agenda).where(*mine).values(state="done"))


def failed(conn: Connection, key: int, most: int) -> None:
    """Dealing with it failed; after ``most`` times it is given up."""
    query = update(agenda).where(agenda.c.id == key).values(attempts=agenda.c.attempts + 1).returning(agenda.c.attempts)
    if conn.execute(query).scalar_one() >= most:
        conn.execute(update(agenda).where(agenda.c.id == key).values(state="dead"))


def next_due(conn: Connection) -> datetime | None:
    """The earliest time to come back."""
    found: datetime | None = conn.execute(select(func.min(agenda.c.due)).where(agenda.c.state == "waiting")).scalar()
    return found
