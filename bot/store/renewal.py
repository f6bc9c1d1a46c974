"""The agenda made anew after a change of plan, zone or hours: rows to come take their new times. Says nothing."""

from datetime import datetime

from sqlalchemy import Connection, select

from bot.store import about, agenda, coach_clock, coaching, people, plans
from bot.store.tables import agenda as rows
from core import due
from core.model.outcome import AgendaChange, DayPlan


def renew(conn: Connection, who: int, now: datetime) -> None:
    """Rows of sessions and weeks still to come; what was said already is not said again."""
    person = people.get(conn, who)
    profile = people.profile(conn, who)
    if person.coaches:
        coach_clock.set_rows(conn, who, now)
    if not person.lifts:
        return
    today = now.astimezone(profile.zone).date()
    mine = select(rows.c.kind, rows.c.on).where(rows.c.person == who, rows.c.state == "waiting", rows.c.on >= today)
    for row in conn.execute(mine.where(rows.c.kind.in_(("prompt", "missed", "summary")))).all():
        agenda.change(conn, who, AgendaChange(row.kind, row.on, None))
    plan = plans.weekly(conn, who)
    changed = [DayPlan(on, once) for on, once in about.changed_days(conn, who, today)]
    for change in (*due.ahead(profile, plan, now), *due.replanned(profile, changed, now)):
        agenda.change(conn, who, change)
    for one in changed:
        if not one.plan.days:
            agenda.change(conn, who, AgendaChange("missed", one.on, None))
    coach_clock.cancel(conn, who, (coach_clock.PROPOSE, coach_clock.FALLBACK))
    if any(one.kind == "ask" for one in coaching.reins(conn, who, today)):
        coach_clock.set_proposal(conn, who, profile, plan, now)
