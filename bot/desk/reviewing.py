"""Records made whole for a week's review: estimates with what they were, and what would be asked next. Says nothing."""

from dataclasses import replace
from datetime import date, datetime, timedelta
from typing import Final

from sqlalchemy import Connection

from bot.store import books, coaching, records
from bot.store.progress import Folding
from core.adviser import Advisers
from core.advising import absorb, begin, dump, load
from core.evidence.desk import desk_value
from core.flow import day
from core.foresight import standing
from core.model.book import Book
from core.model.target import Session
from core.model.week import Proposal, Record, Standing
from core.review.week import week_of

SHOWN: Final = 5
"""Exercises whose estimate is told; more would not be read."""
PROPOSED: Final = 3
_AHEAD: Final = 8


def record_of(conn: Connection, who: int, now: datetime, folding: Folding) -> Record | None:
    """One person's record with estimates and proposals; None for somebody who does not train."""
    found = records.records(conn, (who,), now).get(who)
    return whole(conn, who, found, now, folding) if found is not None else None


def whole(conn: Connection, who: int, record: Record, now: datetime, folding: Folding) -> Record:
    """The record with estimates and proposals."""
    book = caught_up(books.load(conn, who, now, folding), now)
    today = now.astimezone(book.profile.zone).date()
    return replace(record, standings=_standings(conn, who, record, book, today), proposals=_proposals(book, today))


def caught_up(book: Book, now: datetime) -> Book:
    """The book with today's sets taken for history, as they will be tomorrow."""
    on = day.session_day(book, now)
    sets = day.acts_of(day.sets_on(book, on))
    progress = dict(book.progress)
    for exercise in dict.fromkeys(one.exercise for one in sets if one.exercise is not None):
        done = tuple(one for one in sets if one.exercise == exercise)
        before = load(progress[exercise]) if exercise in progress else begin(book.lifter, exercise)
        session = Session(on, done, book.targets.get(exercise))
        progress[exercise] = dump(absorb(before, book.lifter, day.aim_of(book, on, exercise), session))
    return replace(book, progress=progress)


def for_day(conn: Connection, who: int, book: Book, on: date, now: datetime) -> Book:
    """The book as it will stand on a later day: today's sets are history, and the coach's orders are that day's."""
    if day.session_day(book, now) == on:
        return book
    return coaching.in_hand(conn, who, replace(caught_up(book, now), fixed={}), on)


def _standings(conn: Connection, who: int, record: Record, book: Book, today: date) -> tuple[Standing, ...]:
    newest = today - timedelta(weeks=desk_value("trend.weeks"))
    before = coaching.marks(conn, who, today - timedelta(weeks=desk_value("trend.oldest_weeks")), newest)
    planned = [item.exercise for day in record.plan.days for item in day.exercises]
    lately = [name for name in dict.fromkeys((*planned, *record.sessions)) if record.sessions.get(name)]
    found = []
    for name in lately[:SHOWN]:
        if name in book.progress:
            one = standing(load(book.progress[name]), book.lifter, before.get(name))
            found += [one] if one is not None else []
    return tuple(found)


def _proposals(book: Book, today: date) -> tuple[Proposal, ...]:
    """What the next planned session would ask."""
    if book.hold is not None:
        return ()
    days = ((today + timedelta(days=n)) for n in range(1, _AHEAD))
    on = next((one for one in days if book.plan.on(one.weekday())), None)
    planned = book.plan.on(on.weekday()) if on is not None else None
    if on is None or planned is None:
        return ()
    advisers = Advisers()
    found = []
    for item in planned.exercises[:PROPOSED]:
        advice = advisers.today(replace(book, planned_for_today=None), on, item.exercise, ())
        first = advice.sets[0] if advice.sets else None
        found.append(Proposal(item.exercise, advice.way, first, advice.why[0].text if advice.why else ""))
    return tuple(found)


def mark(conn: Connection, who: int, record: Record, on: date) -> None:
    """Note the estimates of a week, to compare later ones with."""
    for one in record.standings:
        coaching.set_mark(conn, who, one.exercise, on, one.estimate)


def weekly_glance(record: Record, last: date, weeks: int) -> tuple[tuple[int, int, int], ...]:
    """Kept, planned and steps of each of the last weeks, the oldest first."""
    facts = (week_of(record, last - timedelta(weeks=back)) for back in reversed(range(weeks)))
    return tuple((one.kept, one.planned, len(one.steps)) for one in facts)
