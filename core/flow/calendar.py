"""What the clock brings and what is answered to it: the session announced, moved, missed; the week in numbers."""

from collections.abc import Callable, Mapping
from dataclasses import replace
from datetime import date, time, timedelta
from typing import Final, Literal

from core.flow import course, day
from core.flow.scene import Scene
from core.flow.targets import opened
from core.model.acts import Finish
from core.model.book import Book
from core.model.facts import DayTaken, Held, Missed, Moved, Told, Weekly
from core.model.outcome import AgendaChange, DayPlan
from core.model.plan import Plan, TrainingDay

Move = Literal["moved", "off", "off_tomorrow", "travelling", "did", "today", "let_go"]

PRESSES: Final[Mapping[str, Move]] = {
    "m": "moved",
    "o": "off",
    "t": "travelling",
    "d": "did",
    "y": "today",
    "l": "let_go",
}
"""The last letter of a prompt's button data."""

MOVES: Final[Mapping[str, Move]] = {move: move for move in (*PRESSES.values(), "off_tomorrow")}
"""The same answers by the name of the phrase that says them."""

WEEK: Final = 7

NOON: Final = time(12)
"""A session before it is announced the evening before, where its lead lies in quiet hours."""


def announced(scene: Scene) -> Scene:
    """The session to come in its lines, unless it has begun or is off."""
    if day.sets_on(scene.book, scene.on):
        return scene
    scene = opened(scene)
    listed = course.listed(scene, started=False)
    if listed is None:
        return scene
    ahead = scene.on > day.local(scene.now, scene.book).date()
    scene = scene.says(replace(listed, on=scene.on if ahead else None))
    return scene.says(Held(scene.book.hold.since)) if scene.book.hold else scene


def asked_about(scene: Scene, on: date) -> Scene:
    """One kind question about a planned session without a set."""
    planned = scene.book.plan.on(on.weekday())
    if planned is None or scene.book.hold or day.sets_on(scene.book, on):
        return scene
    return scene.says(Missed(on, planned.title))


def closed_by_silence(scene: Scene, on: date) -> Scene:
    """The recap of a session that nobody closed."""
    scene = replace(scene, on=on)
    done = any(isinstance(kept.act, Finish) for kept in day.acts_on(scene.book, on))
    if done or not day.sets_on(scene.book, on):
        return scene
    return course.closed(scene, by_silence=True)


def week(scene: Scene, on: date) -> Scene:
    """The week that ends on ``on``, in numbers. The book must reach back over it."""
    days = [on - timedelta(days=back) for back in reversed(range(WEEK))]
    kept = [one for one in days if day.sets_on(scene.book, one)]
    sets = sum(len(day.sets_on(scene.book, one)) for one in days)
    planned = len(scene.book.plan.days)
    if not planned and not sets:
        return scene
    return scene.says(Weekly(days[0], days[-1], len(kept), planned, sets))


def free_day_after(book: Book, on: date) -> date:
    """The next day without a session of its own; tomorrow, if every day has one."""
    days = (on + timedelta(days=ahead) for ahead in range(1, WEEK + 1))
    free = (one for one in days if book.changed_days.get(one, book.plan).on(one.weekday()) is None)
    return next(free, on + timedelta(days=1))


def pressed(scene: Scene, on: date, letter: str) -> Scene | None:
    """The answer to a button of a prompt or of a question about a missed session; None when it is too old."""
    move = PRESSES.get(letter)
    oldest = scene.on - timedelta(days=1)
    if move is None or not oldest <= on <= scene.on + timedelta(days=1):
        return None
    return _MOVES[move](scene, on)


def said(scene: Scene, move: Move) -> Scene:
    """The same, said in words: about today's session, or yesterday's where the answer is about a missed one."""
    if move in ("did", "today", "let_go"):
        return _MOVES[move](scene, scene.on - timedelta(days=1))
    if move == "off_tomorrow":
        return _off(scene, scene.on + timedelta(days=1))
    return _MOVES[move](scene, _next_session(scene))


def _next_session(scene: Scene) -> date:
    """Today; where nothing is planned today and tomorrow begins with a session, tomorrow, which was announced today."""
    tomorrow = scene.on + timedelta(days=1)
    early = _session(scene, tomorrow)
    late = day.local(scene.now, scene.book).time() >= NOON
    return tomorrow if _session(scene, scene.on) is None and early and early.at < NOON and late else scene.on


def _session(scene: Scene, on: date) -> TrainingDay | None:
    if on == scene.on:
        return day.training_day(scene.book, on)
    return scene.book.changed_days.get(on, scene.book.plan).on(on.weekday())


def _moved(scene: Scene, on: date) -> Scene:
    planned = _session(scene, on)
    if planned is None:
        return scene.says(Told("next.unplanned"))
    return _to(scene, on, planned, free_day_after(scene.book, on))


def moved_to(scene: Scene, to: date, at: time | None) -> Scene:
    """The next session on another day, or at another time of its own; a day with a session of its own is taken."""
    on = _next_session(scene)
    planned = _session(scene, on)
    if planned is None:
        return scene.says(Told("moved.none"))
    planned = replace(planned, at=at or planned.at)
    if to == on:
        here = DayPlan(on, Plan((planned,)))
        return _with_days(scene, here).says(Moved(to, at=planned.at))
    taken = _session(scene, to)
    if taken is not None:
        return scene.says(DayTaken(to, taken.title))
    return _to(scene, on, planned, to)


def _to(scene: Scene, on: date, planned: TrainingDay, to: date) -> Scene:
    there = DayPlan(to, Plan((replace(planned, weekday=to.weekday()),)))
    scene = _with_days(scene, DayPlan(on, Plan()), there).plans(AgendaChange("missed", on, None))
    return scene.says(Moved(to, at=planned.at))


def _with_days(scene: Scene, *days: DayPlan) -> Scene:
    book = scene.book
    for one in days:
        book = replace(book, planned_for_today=one.plan) if one.on == scene.on else book
    return replace(scene, book=book, out=replace(scene.out, planned=(*scene.out.planned, *days)))


def _off(scene: Scene, on: date) -> Scene:
    off = _with_days(scene, DayPlan(on, Plan())).plans(AgendaChange("missed", on, None))
    return off.says(Moved(None, on=on if on != scene.on else None))


def _travelling(scene: Scene, on: date) -> Scene:
    off = _with_days(scene, DayPlan(on, Plan())).plans(AgendaChange("missed", on, None))
    return off.says(Moved(None, travelling=True, on=on if on != scene.on else None))


def _today(scene: Scene, on: date) -> Scene:
    planned = scene.book.plan.on(on.weekday())
    if planned is None:
        return scene.says(Told("next.unplanned"))
    here = DayPlan(scene.on, Plan((replace(planned, weekday=scene.on.weekday()),)))
    scene = opened(_with_days(scene, here))
    listed = course.listed(scene)
    return scene.says(listed) if listed else scene


def _did(scene: Scene, on: date) -> Scene:
    del on
    return scene.says(Told("missed.did"))


def _let_go(scene: Scene, on: date) -> Scene:
    del on
    return scene.says(Told("missed.off"))


_MOVES: Final[Mapping[Move, Callable[[Scene, date], Scene]]] = {
    "moved": _moved,
    "off": _off,
    "off_tomorrow": _off,
    "travelling": _travelling,
    "did": _did,
    "today": _today,
    "let_go": _let_go,
}
