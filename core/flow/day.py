"""Where a session stands, derived from the kept acts of its day: lines, sets done, what is on, what is next.

Nothing here is stored: a conversation's state is always read off the book. It may not know texts or targets' making.
"""

from collections.abc import Iterable
from dataclasses import dataclass, replace
from datetime import date, datetime, timedelta
from typing import Final

from core.evidence.aims import default_aim
from core.model.acts import Begin, Finish, OnlyKit, SetAct, Skip, Swap
from core.model.book import Book, Kept
from core.model.lifter import Lifter
from core.model.plan import TrainingDay, in_week_of
from core.model.target import Aim
from core.model.working import working_sets

CARRIED_OVER: Final = timedelta(hours=4)
"""A session that runs past midnight keeps its day while its last set is not older than this. Choice of ours."""

ALTERNATING: Final = 3
"""Sets in turn (A, B, A) after which two exercises are taken to be done in turn. Choice of ours."""


@dataclass(frozen=True, slots=True)
class Place:
    """One exercise of today: its aim, the coach's cue, what it stands in for, and whether it was left out."""

    exercise: str
    aim: Aim
    note: str | None = None
    instead_of: str | None = None
    left_out: bool = False


def local(now: datetime, book: Book) -> datetime:
    """The lifter's wall clock."""
    return now.astimezone(book.profile.zone)


def session_day(book: Book, now: datetime) -> date:
    """The local day that a set done now counts for."""
    today = local(now, book).date()
    yesterday = today - timedelta(days=1)
    before = [kept for kept in book.kept if kept.on == yesterday]
    closed = any(isinstance(kept.act, Finish) for kept in before)
    begun_today = any(kept.on == today for kept in book.kept)
    last = _last_of_run(book, yesterday, before)
    if last is not None and not closed and not begun_today and now - last <= CARRIED_OVER:
        return yesterday
    return today


def _last_of_run(book: Book, on: date, kept: list[Kept]) -> datetime | None:
    """When a session of that day was last heard of: on the day itself, or soon after. A late report is none."""
    last: datetime | None = None
    for at in sorted(one.at for one in kept if isinstance(one.act, SetAct | Begin)):
        if local(at, book).date() == on or (last is not None and at - last <= CARRIED_OVER):
            last = at
    return last


def acts_on(book: Book, on: date) -> tuple[Kept, ...]:
    """All acts kept for a day, oldest first."""
    return tuple(kept for kept in book.kept if kept.on == on)


def sets_on(book: Book, on: date, exercise: str | None = None) -> tuple[Kept, ...]:
    """The sets kept for a day, of one exercise or of all, oldest first."""
    return tuple(
        kept for kept in acts_on(book, on) if isinstance(kept.act, SetAct) and exercise in (None, kept.act.exercise)
    )


def acts_of(kept: Iterable[Kept]) -> tuple[SetAct, ...]:
    """The set acts themselves."""
    return tuple(one.act for one in kept if isinstance(one.act, SetAct))


def training_day(book: Book, on: date) -> TrainingDay | None:
    """What is planned for a day: a one-off change of today first, else the weekly plan."""
    plan = book.plan if book.planned_for_today is None else book.planned_for_today
    planned = plan.on(on.weekday())
    return in_week_of(planned, easier=True) if planned is not None and book.plan.is_easier(on) else planned


def places(book: Book, on: date) -> tuple[Place, ...]:
    """Today's exercises in the plan's order, with the swaps and the skips that were said."""
    day = training_day(book, on)
    found = [Place(one.exercise, one.aim, one.note) for one in day.exercises] if day else []
    for kept in acts_on(book, on):
        if isinstance(kept.act, Swap) and kept.act.to is not None:
            found = [_swapped(place, kept.act.from_, kept.act.to) for place in found]
        elif isinstance(kept.act, Skip):
            gone = kept.act.exercise
            found = [replace(place, left_out=True) if gone in (None, place.exercise) else place for place in found]
    return tuple(found)


def _swapped(place: Place, from_: str | None, to: str) -> Place:
    if place.exercise != from_:
        return place
    return replace(place, exercise=to, instead_of=place.instead_of or from_, left_out=False, note=None)


def lifter_on(book: Book, on: date) -> Lifter:
    """The lifter with the kit that is there on a day: what was said last of that day, else the usual one."""
    said = [kept.act for kept in acts_on(book, on) if isinstance(kept.act, OnlyKit)]
    return replace(book.lifter, kit=said[-1].kit) if said else book.lifter


def aim_of(book: Book, on: date, exercise: str) -> Aim:
    """The coach's aim for an exercise today; without one, the default of its kind."""
    for place in places(book, on):
        if place.exercise == exercise:
            return place.aim
    usual = (one.aim for day in book.plan.days for one in day.exercises if one.exercise == exercise)
    return replace(next(usual, None) or default_aim(exercise), easier=book.plan.is_easier(on))


def is_off(book: Book, place: Place) -> bool:
    """Left out by the lifter, or not to be done today."""
    target = book.targets.get(place.exercise)
    return place.left_out or (target is not None and target.way == "stop")


def is_complete(book: Book, on: date, exercise: str) -> bool:
    """As many sets as its target (else its aim) asks are done."""
    target = book.targets.get(exercise)
    asked = len(target.sets) if target is not None and target.sets else aim_of(book, on, exercise).sets
    return len(working_sets(acts_of(sets_on(book, on, exercise)))) >= asked


def last_set(book: Book, on: date) -> Kept | None:
    """The set kept last for a day."""
    return next(reversed(sets_on(book, on)), None)


def now_on(book: Book, on: date) -> str | None:
    """The exercise that the session is on: the last one while it has sets to go, else the next of the plan."""
    last = last_set(book, on)
    if last is None or not isinstance(last.act, SetAct) or last.act.exercise is None:
        return _to_start_with(book, on)
    current = last.act.exercise
    if is_complete(book, on, current) or _is_left(book, on, current):
        return next_after(book, on, current) or current
    return _in_turn(book, on, current) or current


def _is_left(book: Book, on: date, exercise: str) -> bool:
    return any(is_off(book, place) for place in places(book, on) if place.exercise == exercise) or any(
        isinstance(kept.act, Swap) and kept.act.from_ == exercise for kept in acts_on(book, on)
    )


def _to_start_with(book: Book, on: date) -> str | None:
    return next((place.exercise for place in places(book, on) if not is_off(book, place)), None)


def _in_turn(book: Book, on: date, current: str) -> str | None:
    """The other exercise, when the last sets went A, B, A and B has sets to go."""
    names = [one.exercise for one in acts_of(sets_on(book, on))][-ALTERNATING:]
    if len(names) < ALTERNATING or names[0] != names[2] or names[0] == names[1] or names[-1] != current:
        return None
    other = names[1]
    return None if other is None or is_complete(book, on, other) else other


def next_after(book: Book, on: date, current: str | None) -> str | None:
    """The next exercise with sets to go: the first after ``current`` in the plan, else the first left behind."""
    todo = places(book, on)
    at = next((i for i, place in enumerate(todo) if place.exercise == current), -1)
    for place in (*todo[at + 1 :], *todo[: at + 1]):
        if place.exercise != current and not is_off(book, place) and not is_complete(book, on, place.exercise):
            return place.exercise
    return None
