"""The agenda rows of coaches and of clients whose coach is asked first. Only which rows there are; says nothing."""

from datetime import datetime, timedelta
from typing import Final
from zoneinfo import ZoneInfo

from sqlalchemy import Connection, select

from bot.store import agenda, coaching
from bot.store.tables import agenda as agenda_table
from bot.store.tables import person
from core.due import next_fire
from core.model.book import Profile
from core.model.outcome import AgendaChange
from core.model.plan import Plan

DIGEST: Final = "digest"
WEEKS: Final = "weeks"
PROPOSE: Final = "propose"
FALLBACK: Final = "fallback"
WEEK_OF: Final = "week of client"
OVERVIEW: Final = "overview"
PLAN_BEGINS: Final = "plan begins"
KINDS: Final = frozenset({DIGEST, WEEKS, WEEK_OF, OVERVIEW, PROPOSE, FALLBACK, PLAN_BEGINS})
"""Rows that the coach's clock works; all others are core's."""

PROPOSED_BEFORE: Final = timedelta(hours=24)
"""The coach hears of a target so long before the session."""
FALLS_BACK_BEFORE: Final = timedelta(minutes=30)
"""Unanswered so long before the session, the target is the same as last time."""


def set_rows(conn: Connection, coach: int, now: datetime) -> None:
    """The next morning word and the next weeks, at the coach's hours; rows at other hours are cancelled."""
    zone = ZoneInfo(conn.execute(select(person.c.zone).where(person.c.id == coach)).scalar_one())
    hours = coaching.hours_of(conn, coach)
    cancel(conn, coach, (DIGEST, WEEKS))
    digest = next_fire(now, range(7), hours.digest_at, zone)
    weeks = next_fire(now, (hours.week_day,), hours.week_at, zone)
    for kind, found in ((DIGEST, digest), (WEEKS, weeks)):
        if found is not None:
            agenda.change(conn, coach, AgendaChange(kind, *found))


def ensure(conn: Connection, coach: int, now: datetime) -> None:
    """Rows for a coach who has none yet."""
    waiting = select(agenda_table.c.id).where(
        agenda_table.c.person == coach, agenda_table.c.kind == DIGEST, agenda_table.c.state == "waiting"
    )
    if conn.execute(waiting.limit(1)).one_or_none() is None:
        set_rows(conn, coach, now)


def cancel(conn: Connection, who: int, kinds: tuple[str, ...]) -> None:
    """Rows of these kinds that still wait are cancelled."""
    rows = select(agenda_table.c.kind, agenda_table.c.on).where(
        agenda_table.c.person == who, agenda_table.c.kind.in_(kinds), agenda_table.c.state == "waiting"
    )
    for row in conn.execute(rows).all():
        agenda.change(conn, who, AgendaChange(row.kind, row.on, None))


def set_proposal(conn: Connection, who: int, profile: Profile, plan: Plan, now: datetime) -> None:
    """The next session whose targets the coach is asked about: a day before it, and half an hour before it."""
    found = None
    for day in plan.days:
        fires = next_fire(now + FALLS_BACK_BEFORE, (day.weekday,), day.at, profile.zone)
        if fires is not None and (found is None or fires[1] < found[1]):
            found = fires
    if found is None:
        return
    on, at = found
    agenda.change(conn, who, AgendaChange(PROPOSE, on, max(now, at - PROPOSED_BEFORE)))
    agenda.change(conn, who, AgendaChange(FALLBACK, on, at - FALLS_BACK_BEFORE))
