"""Loads the book: all that an answer to one lifter may depend on. Decides nothing; only how far back it looks."""

from dataclasses import dataclass, replace
from datetime import date, datetime, timedelta
from typing import Any, Final

from sqlalchemy import Connection, bindparam, select

from bot.store import about, acts, coaching, people, progress
from bot.store.progress import Folding
from bot.store.shapes import ask_of, noun_of, target_of
from bot.store.tables import day_plan, hold, lifter, pending, person, plan, target
from core.flow.day import session_day
from core.flow.mends import UNDO_WITHIN
from core.model.book import Book, Hold, Pending
from core.model.lifter import Lifter
from core.model.plan import Plan
from core.model.target import Target

RECENT: Final = timedelta(days=8)
"""How far back single acts are loaded: a named weekday may be seven days ago."""


@dataclass(frozen=True, slots=True)
class Edited:
    """The message that is read anew, and when it first came."""

    number: int
    at: datetime


_SHEET: Final = (
    people.PROFILES.join(lifter, lifter.c.person == person.c.id)
    .join(plan, plan.c.person == person.c.id, isouter=True)
    .join(pending, pending.c.person == person.c.id, isouter=True)
    .join(hold, hold.c.person == person.c.id, isouter=True)
    .add_columns(lifter.c.body.label("lifter_body"), lifter.c.folded_through, plan.c.body.label("plan_body"))
    .add_columns(pending.c.message, pending.c.at, pending.c.text, pending.c.said, pending.c.body.label("pending_body"))
    .add_columns(hold.c.sign, hold.c.since)
)
"""What there is one row of for each lifter, in one look."""
_ONCE: Final = select(day_plan.c.body).where(day_plan.c.person == bindparam("who"), day_plan.c.on == bindparam("day"))
_GIVEN: Final = (
    select(target.c.exercise, target.c.body)
    .where(target.c.person == bindparam("who"), target.c.on == bindparam("day"))
    .order_by(target.c.id)
)
_ASKED: Final = select(pending.c.person).where(pending.c.person == bindparam("who"))


def load(conn: Connection, who: int, now: datetime, folding: Folding, edited: Edited | None = None) -> Book:
    """The book of a lifter at ``now``. For an edit: as of its day, with the acts of its message, however old."""
    row = conn.execute(_SHEET, {"who": who}).one()
    profile = people.profile_of(row)
    at = now if edited is None else edited.at
    since = at.astimezone(profile.zone).date() - RECENT
    book = Book(
        profile=profile,
        lifter=noun_of(Lifter, row.lifter_body),
        plan=noun_of(Plan, row.plan_body) if row.plan_body else Plan(),
        kept=acts.kept_since(conn, who, since, edited.number if edited else None),
        pending=_pending(row) if row.pending_body is not None else None,
        hold=Hold(row.sign, row.since) if row.sign is not None else None,
        ended=() if edited else acts.ended_since(conn, who, now - UNDO_WITHIN),
    )
    on = _session_day(book, at, edited)
    history = progress.bring_up(conn, who, on, folding, row.folded_through)
    once = conn.execute(_ONCE, {"who": who, "day": on}).scalar()
    book = replace(
        book,
        targets=_targets(conn, who, on),
        progress=history.folded,
        usual=history.usual,
        planned_for_today=noun_of(Plan, once) if once else None,
        changed_days=dict(about.changed_days(conn, who, on + timedelta(days=1))),
    )
    return coaching.in_hand(conn, who, book, on)


def _session_day(book: Book, at: datetime, edited: Edited | None) -> date:
    """The day that a set done then counts for: a session past midnight keeps its day."""
    if edited is not None:
        book = replace(book, kept=tuple(one for one in book.kept if one.message < edited.number))
    return session_day(book, at)


def _targets(conn: Connection, who: int, today: date) -> dict[str, Target]:
    latest = {row.exercise: row.body for row in conn.execute(_GIVEN, {"who": who, "day": today})}
    return {exercise: target_of(body) for exercise, body in latest.items() if body}


def is_asked(conn: Connection, who: int) -> bool:
    """Whether a question about what the lifter wrote is open."""
    return conn.execute(_ASKED, {"who": who}).one_or_none() is not None


def _pending(row: Any) -> Pending:
    return Pending(ask_of(row.pending_body), row.message, row.at, row.text, row.said)
