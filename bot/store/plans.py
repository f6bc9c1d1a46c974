"""The coach's plan of a lifter at rest: the week that repeats."""

from typing import Final

from sqlalchemy import Connection, bindparam, select

from bot.store.shapes import noun_of, noun_text
from bot.store.tables import plan
from bot.store.upsert import put
from core.model.plan import Plan

_WEEKLY: Final = select(plan.c.body).where(plan.c.person == bindparam("who"))


def weekly(conn: Connection, who: int) -> Plan:
    """The plan in force; without days when nothing is planned."""
    body = conn.execute(_WEEKLY, {"who": who}).scalar()
    return noun_of(Plan, body) if body else Plan()


def set_weekly(conn: Connection, who: int, wanted: Plan) -> None:
    """This plan is in force from now on."""
    put(conn, plan, person=who, body=noun_text(wanted))
