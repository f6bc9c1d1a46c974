"""Looks at what is there without changing it: last days trained, and every set of a lifter for export."""

from collections.abc import Iterator
from dataclasses import dataclass
from datetime import date, datetime

from sqlalchemy import Connection, func, select

from bot.store.tables import act, inbox


@dataclass(frozen=True, slots=True)
class SetRow:
    """One set as it was kept: its contract JSON, its day, when its message came, which message, what became of it."""

    body: str
    on: date
    at: datetime
    message: int
    state: str


def last_days(conn: Connection, who: list[int]) -> dict[int, date]:
    """The last day with a kept set, for those who have one."""
    query = select(act.c.person, func.max(act.c.on).label("last"))
    query = query.where(act.c.person.in_(who), act.c.kind == "set", act.c.state == "kept").group_by(act.c.person)
    return {row.person: row.last for row in conn.execute(query)}


def sets_of(conn: Connection, who: int) -> Iterator[SetRow]:
    """Every set of a lifter, oldest first, also those that no longer stand."""
    query = select(act.c.body, act.c.on, act.c.at, act.c.state, func.coalesce(inbox.c.message_id, inbox.c.seq))
    query = query.join(inbox, inbox.c.seq == act.c.message).where(act.c.person == who, act.c.kind == "set")
    for body, on, at, state, message in conn.execute(query.order_by(act.c.on, act.c.place, act.c.id)):
        yield SetRow(body, on, at, message, state)
