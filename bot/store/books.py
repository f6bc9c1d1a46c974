"""Loads the book: all that an answer to one lifter may depend on. Decides nothing; only how far back it looks."""

from dataclasses import dataclass, replace
from datetime import date, datetime, timedelta
from typing import Final

from sqlalchemy import Connection, select

from bot.store import about, acts, coaching, people, plans, progress
from bot.store.progress import Folding
from bot.store.shapes import ask_of, noun_of, target_of
from bot.store.tables import day_plan, hold, lifter, pending, target
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


def load(conn: Connection, who: int, now: datetime, folding: Folding, edited: Edited | None = None) -> Book:
    """The book of a lifter at ``now``. For an edit: as of its day, with the acts of its message, however old."""
    body = conn.execute(select(lifter.c.body).where(lifter.c.person == who)).scalar_one()
    profile = people.profile(conn, who)
    at = now if edited is None else edited.at
    since = at.astimezone(profile.zone).date() - RECENT
    book = Book(
        profile=profile,
        lifter=noun_of(Lifter, body),
        plan=plans.weekly(conn, who),
        kept=acts.kept_since(conn, who, since, edited.number if edited else None),
        pending=_pending(conn, who),
        hold=_hold(conn, who),
        ended=() if edited else acts.ended_since(conn, who, now - UNDO_WITHIN),
    )
    on = _session_day(book, at, edited)
    history = progress.bring_up(conn, who, on, folding)
    once = conn.execute(select(day_plan.c.body).where(day_plan.c.person == who, day_plan.c.on == on)).scalar()
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
    query = select(target.c.exercise, target.c.body).where(target.c.person == who, target.c.on == today)
    latest = {row.exercise: row.body for row in conn.execute(query.order_by(target.c.id))}
    return {exercise: target_of(body) for exercise, body in latest.items() if body}


def is_asked(conn: Connection, who: int) -> bool:
    """Whether a question about what the lifter wrote is open."""
    return conn.execute(select(pending.c.person).where(pending.c.person == who)).one_or_none() is not None


def _pending(conn: Connection, who: int) -> Pending | None:
    row = conn.execute(select(pending).where(pending.c.person == who)).one_or_none()
    return Pending(ask_of(row.body), row.message, row.at, row.text, row.said) if row else None


def _hold(conn: Connection, who: int) -> Hold | None:
    row = conn.execute(select(hold).where(hold.c.person == who)).one_or_none()
    return Hold(row.sign, row.since) if row else None
