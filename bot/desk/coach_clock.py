"""What the clock brings to a coach: the morning word, the weeks, targets to be asked about, and their falling back."""

from dataclasses import replace
from datetime import datetime
from typing import Final

from sqlalchemy import Connection

from bot.desk import coach_looks, coach_plans, coach_targets
from bot.desk.office import Office, at_desk
from bot.desk.rooms import Parts
from bot.store import agenda, books, coach_clock, coaching, outbox, people
from bot.store.outbox import Letter
from bot.store.people import Person
from core.adviser import Advisers
from core.model.book import Book
from core.model.outcome import AgendaChange, Button
from core.model.target import Target
from core.order.hand import laid_over

_STEPS: Final = frozenset({"reps", "tempo", "range", "rest", "load"})


def work(conn: Connection, parts: Parts, due: agenda.Due, now: datetime) -> None:
    """Work a row that is the coach's clock's own."""
    who = people.get(conn, due.person)
    _WORK[due.kind](conn, parts, due, now, who)


def _digest(conn: Connection, parts: Parts, due: agenda.Due, now: datetime, who: Person) -> None:
    office = at_desk(conn, parts, who, now)
    if who.coaches and office.clients:
        text, buttons = coach_looks.morning(office, daily=True)
        office.tell(who.id, text, buttons)
    _again(conn, due, now, who)


def _weeks(conn: Connection, parts: Parts, due: agenda.Due, now: datetime, who: Person) -> None:
    """Every client's week is a row of its own, so that no answer to anybody waits for all of them."""
    office = at_desk(conn, parts, who, now)
    for client in office.clients.values():
        agenda.change(conn, client.id, AgendaChange(coach_clock.WEEK_OF, due.on, now))
    if office.clients:
        agenda.change(conn, who.id, AgendaChange(coach_clock.OVERVIEW, due.on, now))
    _again(conn, due, now, who)


def _week_of(conn: Connection, parts: Parts, due: agenda.Due, now: datetime, who: Person) -> None:
    agenda.done(conn, due.id, now)
    if who.coach is not None:
        office = at_desk(conn, parts, people.get(conn, who.coach), now)
        name = next((name for name, one in office.clients.items() if one.id == who.id), who.name)
        text = coach_looks.week_text(office, who, name, marked=True)
        if text is not None:
            office.tell(office.coach.id, text)


def _overview(conn: Connection, parts: Parts, due: agenda.Due, now: datetime, who: Person) -> None:
    agenda.done(conn, due.id, now)
    office = at_desk(conn, parts, who, now)
    if office.clients:
        recipe = coach_looks.overview_recipe(office)
        outbox.queue(conn, Letter(office.say("desk.overview"), kind="summary", person=who.id, recipe=recipe), now)


def _again(conn: Connection, due: agenda.Due, now: datetime, who: Person) -> None:
    """The row after this one, at the coach's hours."""
    agenda.done(conn, due.id, now)
    if who.coaches:
        coach_clock.set_rows(conn, who.id, now)


def _propose(conn: Connection, parts: Parts, due: agenda.Due, now: datetime, who: Person) -> None:
    agenda.done(conn, due.id, now)
    if who.coach is None:
        return
    coach = people.get(conn, who.coach)
    office = at_desk(conn, parts, coach, now)
    found = coaching.reins(conn, who.id, due.on)
    asked = [one for one in found if one.kind == "ask"]
    book = books.load(conn, who.id, now, parts.folding)
    planned = book.plan.on(due.on.weekday())
    if not asked or planned is None or book.hold is not None:
        return
    bare = replace(book, plan=coaching.plan_of(conn, who.id), planned_for_today=None, fixed={})
    free = laid_over(bare, [one for one in found if one.kind != "ask"], due.on)
    for item in planned.exercises:
        if any(one.concerns(item.exercise) for one in asked) and item.exercise not in free.fixed:
            _ask(office, who, free, item.exercise, due)


def _ask(office: Office, who: Person, book: Book, exercise: str, due: agenda.Due) -> None:
    advice = Advisers().today(book, due.on, exercise, ())
    if advice.way not in _STEPS:
        return
    target = Target(advice.way, advice.sets)
    body = coach_targets.as_question(exercise, due.on, target)
    key = coaching.ask(office.conn, office.coach.id, "target", body, office.case.now, about=who.id)
    what = coach_targets.said_target(office, book, exercise, target)
    name, day = office.voice.exercise(exercise), office.voice.weekday(due.on)
    text = office.say("desk.target.ask", name=who.name, day=day, exercise=name, what=what, why=advice.why[0].text)
    office.tell(office.coach.id, text, [Button(one.label, one.data) for one in office.yes_no(key)], kind="alert")


def _fall_back(conn: Connection, parts: Parts, due: agenda.Due, now: datetime, who: Person) -> None:
    agenda.done(conn, due.id, now)
    if who.coach is not None:
        office = at_desk(conn, parts, people.get(conn, who.coach), now)
        for one in coaching.questions_about(conn, (who.id,), "target"):
            if one.body["on"] <= due.on.isoformat() and coaching.close(conn, one.id, "passed"):
                name = office.voice.exercise(str(one.body["exercise"]))
                office.tell(office.coach.id, office.say("desk.target.passed", name=who.name, exercise=name))
    if any(one.kind == "ask" for one in coaching.reins(conn, who.id, due.on)):
        book = books.load(conn, who.id, now, parts.folding)
        coach_clock.set_proposal(conn, who.id, book.profile, book.plan, now)


def _plan_begins(conn: Connection, parts: Parts, due: agenda.Due, now: datetime, who: Person) -> None:
    agenda.done(conn, due.id, now)
    found = coaching.put_off_plan(conn, who.id)
    if found is not None and found.asks == who.coach:
        coach_plans.begin(at_desk(conn, parts, people.get(conn, found.asks), now), who, found)


_WORK: Final = {
    coach_clock.DIGEST: _digest,
    coach_clock.WEEKS: _weeks,
    coach_clock.WEEK_OF: _week_of,
    coach_clock.OVERVIEW: _overview,
    coach_clock.PROPOSE: _propose,
    coach_clock.FALLBACK: _fall_back,
    coach_clock.PLAN_BEGINS: _plan_begins,
}
