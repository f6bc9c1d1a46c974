"""Loads what a review looks at: many clients' records at once, so that a morning word costs few statements."""

from collections import defaultdict
from collections.abc import Iterable
from datetime import date, datetime, timedelta
from typing import Any, Final
from zoneinfo import ZoneInfo

from sqlalchemy import BindParameter, Connection, bindparam, func, select

from bot.store import coaching
from bot.store.desk_tables import plan_version
from bot.store.history import sessions
from bot.store.shapes import noun_of
from bot.store.tables import act, chat, day_plan, hold, lifter, person, plan
from core.model.lifter import Lifter
from core.model.plan import Plan
from core.model.week import Record

BACK: Final = timedelta(days=35)
"""How far back sessions are looked at: five weeks hold every stall and gap that a row of attention asks about."""
_AT_ONCE: Final = 400


_KEYS: Final[BindParameter[int]] = bindparam("keys", expanding=True)
_PEOPLE: Final = select(person).where(person.c.id.in_(_KEYS))
_BODIES: Final = select(lifter.c.person, lifter.c.body).where(lifter.c.person.in_(_KEYS))
_PLANS: Final = select(plan.c.person, plan.c.body).where(plan.c.person.in_(_KEYS))
_HELD: Final = select(hold).where(hold.c.person.in_(_KEYS))
_SEEN: Final = (
    select(chat.c.person, func.max(chat.c.seen).label("at")).where(chat.c.person.in_(_KEYS)).group_by(chat.c.person)
)
_ACTED: Final = (
    select(act.c.person, func.max(act.c.at).label("at")).where(act.c.person.in_(_KEYS)).group_by(act.c.person)
)
_OFF: Final = select(day_plan.c.person, day_plan.c.on).where(
    day_plan.c.person.in_(_KEYS), day_plan.c.on >= bindparam("since")
)
_FIRST: Final = (
    select(act.c.person, func.min(act.c.on).label("on")).where(act.c.person.in_(_KEYS)).group_by(act.c.person)
)
_VERSIONS: Final = (
    select(plan_version.c.person, plan_version.c.by, plan_version.c.at, plan_version.c.body)
    .where(plan_version.c.person.in_(_KEYS))
    .order_by(plan_version.c.id)
)
_ZONES: Final = select(person.c.id, person.c.zone).where(person.c.id.in_(_KEYS))
"""The statements, made once: making one costs more than its running."""


def records(conn: Connection, who: Iterable[int], now: datetime) -> dict[int, Record]:
    """The record of each of these clients at ``now``, without estimates and proposals."""
    keys = list(who)
    found: dict[int, Record] = {}
    for start in range(0, len(keys), _AT_ONCE):
        found |= _some(conn, keys[start : start + _AT_ONCE], now)
    return found


def _some(conn: Connection, keys: list[int], now: datetime) -> dict[int, Record]:
    people = conn.execute(_PEOPLE, {"keys": keys}).all()
    bodies = {row.person: row.body for row in conn.execute(_BODIES, {"keys": keys})}
    plans = {row.person: row.body for row in conn.execute(_PLANS, {"keys": keys})}
    held = {row.person: row.sign for row in conn.execute(_HELD, {"keys": keys})}
    first = {row.person: row.on for row in conn.execute(_FIRST, {"keys": keys})}
    heard = _heard(conn, keys)
    asked = coaching.set_ranges(conn, keys)
    off = _called_off(conn, keys, now.date() - BACK)
    versions = _versions(conn, keys)
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
            # someone's history may be older than their joining (a gym that was filled)
            joined=min(filter(None, (first.get(row.id), row.joined.astimezone(zone).date()))),
            heard=last.astimezone(zone).date() if last else None,
            called_off=tuple(off.get(row.id, ())),
            held=held.get(row.id),
            waiting=tuple(waiting.get(row.id, ())),
            sets_asked=asked.get(row.id, {}),
            plans=_in_force(versions.get(row.id, ()), zone),
        )
    return records_


def _heard(conn: Connection, keys: list[int]) -> dict[int, datetime]:
    heard: dict[int, datetime] = {}
    for row in (*conn.execute(_SEEN, {"keys": keys}).all(), *conn.execute(_ACTED, {"keys": keys}).all()):
        if row.at is not None:
            heard[row.person] = max(heard.get(row.person, row.at), row.at)
    return heard


def _called_off(conn: Connection, keys: list[int], since: date) -> dict[int, list[date]]:
    rows = conn.execute(_OFF, {"keys": keys, "since": since})
    off: dict[int, list[date]] = defaultdict(list)
    for row in rows:
        off[row.person].append(row.on)
    return off


def zones(conn: Connection, who: Iterable[int]) -> dict[int, ZoneInfo]:
    """Each person's zone."""
    rows = conn.execute(_ZONES, {"keys": list(who)})
    return {row.id: ZoneInfo(row.zone) for row in rows}


def _versions(conn: Connection, keys: list[int]) -> dict[int, list[Any]]:
    found: dict[int, list[Any]] = defaultdict(list)
    for row in conn.execute(_VERSIONS, {"keys": keys}):
        found[row.person].append(row)
    return found


def _in_force(rows: Iterable[Any], zone: ZoneInfo) -> tuple[tuple[date, Plan], ...]:
    """Each plan from its day on; one of which nobody noted when it came was always there."""
    return tuple(
        (date.min if row.by is None else row.at.astimezone(zone).date(), noun_of(Plan, row.body)) for row in rows
    )
