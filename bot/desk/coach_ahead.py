"""What if: a client's own state run forward under two orders of ways. Asked in the transaction, run outside of it.

The answer to a coach is a letter with a recipe; whoever makes it runs the courses in processes of their own.
"""

from collections.abc import Sequence
from dataclasses import dataclass
from datetime import date, datetime, timedelta
from typing import Final

from pydantic import TypeAdapter

from bot.desk import coach_targets, reviewing
from bot.desk.office import Office
from bot.store.outbox import Recipe
from bot.store.people import Person
from core.advising import load
from core.foresight import Course, run_forward, span_of
from core.model.book import Book, Profile
from core.model.course import Ahead
from core.model.lifter import Lifter
from core.model.plan import Planned
from core.model.quantities import Way
from core.order.hand import ordered
from core.order.orders import WhatIf
from core.say import desk, figures
from core.say.render import Voice
from core.say.reply import voice_of

DRAWN: Final = 200
"""Sessions simulated for one order of ways; with them an answer takes less than two seconds."""
FEWEST: Final = 5
MOST: Final = 40
KIND: Final = "what_if"


@dataclass(frozen=True, slots=True)
class Question:
    """All that the answer depends on, as it was when it was asked. ``progress`` is the folded history as text."""

    coach: int
    name: str
    lifter: Lifter
    item: Planned
    progress: str
    orders: tuple[tuple[Way, ...], tuple[Way, ...]]
    days: tuple[date, ...]
    weeks: int
    draws: int


QUESTION: Final = TypeAdapter(Question)


def what_if(office: Office, who: Person, order: WhatIf) -> None:
    """Say at once what cannot be asked; else leave the courses to be run outside of this transaction."""
    book = reviewing.caught_up(office.book(who), office.case.now)
    if book.hold is not None:
        office.reply(office.say("what_if.held", name=order.who))
        return
    item = _item(book, order.exercise)
    if item is None or item.exercise not in book.progress:
        exercise = item.exercise if item is not None else order.exercise
        key = "what_if.unknown" if exercise else "what_if.none"
        name = office.voice.exercise(exercise) if exercise else ""
        office.reply(office.say(key, name=order.who, exercise=name))
        return
    days = _days(book, item.exercise, office.case.now, order.weeks)
    draws = max(FEWEST, min(MOST, DRAWN // max(len(days), 1)))
    orders = _orders(item.aim.ways, order.ways)
    asked = Question(office.coach.id, order.who, book.lifter, item, book.progress[item.exercise], orders, days,
                     order.weeks, draws)  # fmt: skip
    office.promise("", Recipe("what-if.png", KIND, QUESTION.dump_json(asked).decode()))


def course(asked: Question, ways: tuple[Way, ...]) -> Course:
    """One order of ways, run forward. Long: for a process of its own."""
    return run_forward(load(asked.progress), asked.lifter, asked.item.aim, ways, asked.days, asked.draws)


def answer(asked: Question, coach: Profile, courses: Sequence[Course]) -> tuple[str, Ahead]:
    """The words for both courses, and what their picture shows."""
    voice = voice_of(coach, asked.lifter.unit)
    exercise = asked.item.exercise
    slots = {"name": asked.name, "exercise": voice.exercise(exercise), "weeks": asked.weeks, "n": asked.draws}
    lines = [voice.say("what_if.head", **slots), *(_line(voice, exercise, one) for one in courses)]
    rows = tuple(
        (coach_targets.ways_said(voice, one.ways), tuple(span_of(at) for at in zip(*one.asked, strict=True)))
        for one in courses
    )
    title = f"{asked.name}: {voice.exercise(exercise)}"
    words = desk.ahead_words(voice, in_reps=courses[0].in_reps)
    return "\n".join(lines), Ahead(title, asked.lifter.unit, courses[0].in_reps, asked.days, rows, words)


def _orders(now: tuple[Way, ...], first: tuple[Way, ...]) -> tuple[tuple[Way, ...], tuple[Way, ...]]:
    """The order asked about, and the one to compare with: the present one, or the other way round."""
    asked = ordered(now, first)
    return asked, now if now and now != asked else ordered(now, tuple(reversed(first)))


def _item(book: Book, exercise: str | None) -> Planned | None:
    """The exercise asked about; without one, the first planned one with a history."""
    items = [item for day in book.plan.days for item in day.exercises]
    if exercise is not None:
        return next((item for item in items if item.exercise == exercise), None)
    return next((item for item in items if item.exercise in book.progress), None)


def _days(book: Book, exercise: str, now: datetime, weeks: int) -> tuple[date, ...]:
    today = now.astimezone(book.profile.zone).date()
    on = {day.weekday for day in book.plan.days if any(item.exercise == exercise for item in day.exercises)}
    span = (today + timedelta(days=ahead) for ahead in range(1, 7 * weeks + 1))
    return tuple(day for day in span if day.weekday() in on)


def _line(voice: Voice, exercise: str, one: Course) -> str:
    middle, low, high = span_of([row[-1] for row in one.asked])
    end = min(one.last, key=lambda last: abs(_figure(last.load.kg if last.load else None, last.reps[0], one) - middle))
    what = figures.asked(voice, exercise, end)
    steps = sorted(one.steps)[len(one.steps) // 2]
    ends = [voice.number(at, 0) if one.in_reps else voice.mass(at) for at in (low, high)]
    slots = {"ways": coach_targets.ways_said(voice, one.ways), "end": what, "low": ends[0], "high": ends[1]}
    return voice.say("what_if.line", **slots, steps=steps)


def _figure(kg: float | None, reps: int, one: Course) -> float:
    return float(reps) if one.in_reps or kg is None else kg
