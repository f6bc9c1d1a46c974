"""Loads what a review looks at: many clients' records at once, so that a morning word costs few statements."""

from collections import defaultdict
from collections.abc import Iterable
from datetime import date, datetime, timedelta
from typing import Any, Final
from zoneinfo import ZoneInfo

from sqlalchemy import Connection, func, select

from bot.store import coaching
from bot.store.history import sessions
from bot.store.shapes import noun_of
from bot.store.tables import act, chat, day_plan, hold, lifter, person, plan
from core.model.lifter import Lifter
from core.model.plan import Plan
from core.model.week import Record

BACK: Final = timedelta(days=35)
"""How far back sessions are looked at: five weeks hold every stall and gap that a row of attention asks about."""
_AT_ONCE: Final = 400


def records(conn: Connection, who: Iterable[int], now: datetime) -> dict[int, Record]:
    """The record of each of these clients at ``now``, without estimates and proposals."""
    keys = list(who)
    found: dict[int, Record] = {}
    for start in range(0, len(keys), _AT_ONCE):
        found |= _some(conn, keys[start : start + _AT_ONCE], now)
    return found


def _some(conn: Connection, keys: list[int], now: datetime) -> dict[int, Record]:
    people = conn.execute(select(person).where(person.c.id.in_(keys))).all()
    bodies = _by_person(conn, lifter, keys)
    plans = _by_person(conn, plan, keys)
    held = {row.person: row.sign for row in conn.execute(select(hold).where(hold.c.person.in_(keys)))}
    heard = _heard(conn, keys)
    asked = coaching.set_ranges(conn, keys)
    off = _called_off(conn, keys, now.date() - BACK)
    waiting: dict[int, list[str]] = defaultdict(list)
    for one in coaching.questions_about(conn, keys, "target"):
        if one.about is not None:
            waiting[one.about].append(one.body["exercise"])
    records_: dict[int, Record] = {}
    for row in people:
        if row.id not in bodies:
            continue
        zone = ZoneInfo(row.zone)
        today = now.astimezone(zone).date()
        last = heard.get(row.id)
        records_[row.id] = Record(
            name=row.name,
            lifter=noun_of(Lifter, bodies[row.id]),
            plan=noun_of(Plan, plans[row.id]) if row.id in plans else Plan(),
            sessions=sessions(conn, row.id, today - BACK, today + timedelta(days=1)),
            joined=_first_day(conn, row.id) or row.joined.astimezone(zone).date(),
            heard=last.astimezone(zone).date() if last else None,
            called_off=tuple(off.get(row.id, ())),
            held=held.get(row.id),
            waiting=tuple(waiting.get(row.id, ())),
            sets_asked=asked.get(row.id, {}),
        )
    return records_


def _by_person(conn: Connection, table: Any, keys: list[int]) -> dict[int, str]:
    rows = conn.execute(select(table.c.person, table.c.body).where(table.c.person.in_(keys)))
    return {row.person: row.body for row in rows}


def _heard(conn: Connection, keys: list[int]) -> dict[int, datetime]:
    seen = select(chat.c.person, func.max(chat.c.seen).label("at")).where(chat.c.person.in_(keys))
    rows = conn.execute(seen.group_by(chat.c.person)).all()
    acts = select(act.c.person, func.max(act.c.at).label("at")).where(act.c.person.in_(keys)).group_by(act.c.person)
    heard: dict[int, datetime] = {}
    for row in (*rows, *conn.execute(acts).all()):
        if row.at is not None:
            heard[row.person] = max(heard.get(row.person, row.at), row.at)
    return heard


def _called_off(conn: Connection, keys: list[int], since: date) -> dict[int, list[date]]:
    rows = conn.execute(select(day_plan).where(day_plan.c.person.in_(keys), day_plan.c.on >= since))
    off: dict[int, list[date]] = defaultdict(list)
    for row in rows:
        off[row.person].append(row.on)
    return off


def _first_day(conn: Connection, who: int) -> date | None:
    """The first day with a set: someone's history may be older than their joining (a gym that was filled)."""
    first: date | None = conn.execute(select(func.min(act.c.on)).where(act.c.person == who)).scalar()
    return first


def zones(conn: Connection, who: Iterable[int]) -> dict[int, ZoneInfo]:
    """Each person's zone."""
    rows = conn.execute(select(person.c.id, person.c.zone).where(person.c.id.in_(list(who))))
    return {row.id: ZoneInfo(row.zone) for row in rows}
