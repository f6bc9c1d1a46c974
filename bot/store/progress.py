"""The estimate cache: each exercise's finished days, folded once, so that a message costs the same in the tenth year.

Every value here can be rebuilt from the acts, and from what was so on their day (the body, the coach's aim), which is
kept beside them. How days are folded is handed in; this module only knows which.
"""

from collections.abc import Callable, Iterable, Mapping
from dataclasses import dataclass, replace
from datetime import date, timedelta
from statistics import median
from typing import Final

from sqlalchemy import Connection, bindparam, select, update

from bot.store import plans
from bot.store.acts import Touched
from bot.store.history import sessions
from bot.store.shapes import noun_of, noun_text
from bot.store.tables import act, lifter, progress, trained
from bot.store.upsert import put, put_new
from core.model.lifter import Lifter
from core.model.plan import Plan
from core.model.target import Aim, Session

_DAY = timedelta(days=1)


@dataclass(frozen=True, slots=True)
class Past:
    """A finished day of one exercise, with the body and the aim of that day."""

    session: Session
    lifter: Lifter
    aim: Aim


@dataclass(frozen=True, slots=True)
class Folding:
    """How days are folded. ``version`` names the form of the result; another form is built again."""

    version: str
    aim: Callable[[Plan, str, date], Aim]
    fold: Callable[[str, str | None, tuple[Past, ...]], str]
    """(exercise, what is folded so far, later days oldest first) -> the new fold, as text."""


@dataclass(frozen=True, slots=True)
class History:
    """Folded days by exercise, and the load last usual there in kilograms."""

    folded: Mapping[str, str]
    usual: Mapping[str, float]


def touch(conn: Connection, who: int, touched: Touched) -> None:
    """Sets of these exercises and days changed: what was folded of them no longer holds."""
    through = folded_through(conn, who) if touched else None
    if through is not None:
        _empty(conn, who, {exercise for exercise, on in touched if on <= through})


def bring_up(conn: Connection, who: int, today: date, folding: Folding, through: date | None) -> History:
    """Fold the days that are over and not folded yet; give back all that is known from before ``today``.

    ``through``: what ``folded_through`` says.
    """
    last = today - _DAY
    if through is not None and through > last:
        # The day went back (a journey west, an edit of an older day): today's sets must not be in the past.
        later = select(act.c.exercise).where(act.c.person == who, act.c.on > last, act.c.kind == "set").distinct()
        _empty(conn, who, set(conn.execute(later).scalars()))
    elif through is None or through < last:
        _fold_days(conn, who, (through, today), folding)
    if through != last:
        conn.execute(update(lifter).where(lifter.c.person == who).values(folded_through=last))
    rows = conn.execute(_ROWS, {"who": who}).all()
    stale = [row.exercise for row in rows if row.body is None or row.made_by != folding.version]
    if stale:
        _build_again(conn, who, today, folding, stale)
        rows = conn.execute(_ROWS, {"who": who}).all()
    usual = {row.exercise: row.usual_kg for row in rows if row.usual_kg is not None}
    return History({row.exercise: row.body for row in rows if row.body}, usual)


_ROWS: Final = select(progress).where(progress.c.person == bindparam("who")).order_by(progress.c.exercise)


def rebuilt(conn: Connection, who: int, folding: Folding) -> dict[str, str]:
    """What the cache should hold, from the acts alone."""
    through = folded_through(conn, who)
    if through is None:
        return {}
    by_exercise = sessions(conn, who, None, through + _DAY)
    past = _past(conn, who, by_exercise, folding)
    return {exercise: folding.fold(exercise, None, days) for exercise, days in past.items()}


def past_of(conn: Connection, who: int, exercise: str, before: date, folding: Folding) -> tuple[Past, ...]:
    """The days of one exercise before that day, oldest first, with what was so on them."""
    days = sessions(conn, who, None, before, (exercise,))
    return _past(conn, who, days, folding, keep=False).get(exercise, ())


def cached(conn: Connection, who: int, version: str) -> dict[str, str]:
    """What the cache holds, without those that wait to be built again."""
    good = (progress.c.body.is_not(None), progress.c.made_by == version)
    return {row.exercise: row.body for row in conn.execute(select(progress).where(progress.c.person == who, *good))}


def empty(conn: Connection, who: int, exercises: Iterable[str]) -> None:
    """These are to be built again when they are next needed."""
    _empty(conn, who, set(exercises))


def folded_through(conn: Connection, who: int) -> date | None:
    """The last day that the cache covers; None: it was never made."""
    through: date | None = conn.execute(_THROUGH, {"who": who}).scalar()
    return through


_THROUGH: Final = select(lifter.c.folded_through).where(lifter.c.person == bindparam("who"))


def _fold_days(conn: Connection, who: int, span: tuple[date | None, date], folding: Folding) -> None:
    fresh = sessions(conn, who, *span)
    if not fresh:
        return
    rows = conn.execute(select(progress).where(progress.c.person == who, progress.c.exercise.in_(sorted(fresh)))).all()
    waiting = {row.exercise for row in rows if row.body is None or row.made_by != folding.version}
    so_far = {row.exercise: row.body for row in rows}
    for exercise, days in _past(conn, who, fresh, folding).items():
        if exercise not in waiting:
            _save(conn, who, exercise, folding, (so_far.get(exercise), days))


def _build_again(conn: Connection, who: int, today: date, folding: Folding, names: list[str]) -> None:
    whole = _past(conn, who, sessions(conn, who, None, today, names), folding)
    for exercise in names:
        if exercise in whole:
            _save(conn, who, exercise, folding, (None, whole[exercise]))
        else:
            conn.execute(progress.delete().where(progress.c.person == who, progress.c.exercise == exercise))


def _save(
    conn: Connection, who: int, exercise: str, folding: Folding, parts: tuple[str | None, tuple[Past, ...]]
) -> None:
    body = folding.fold(exercise, *parts)
    usual = _usual(parts[1][-1].session)
    put(conn, progress, person=who, exercise=exercise, body=body, usual_kg=usual, made_by=folding.version)


def _empty(conn: Connection, who: int, exercises: set[str]) -> None:
    for exercise in sorted(exercises):
        put(conn, progress, person=who, exercise=exercise, body=None, usual_kg=None, made_by="")


def _past(
    conn: Connection, who: int, days: Mapping[str, tuple[Session, ...]], folding: Folding, *, keep: bool = True
) -> dict[str, tuple[Past, ...]]:
    """The days with what was so on them; what is not kept of a day yet is now as it is, and ``keep`` keeps it so."""
    body = noun_of(Lifter, conn.execute(select(lifter.c.body).where(lifter.c.person == who)).scalar_one())
    body = replace(body, aches=(), kit=None)  # folding looks at the body, not at its aches or its gym
    planned = plans.weekly(conn, who)
    query = select(trained).where(trained.c.person == who, trained.c.exercise.in_(sorted(days)))
    kept = {(row.exercise, row.on): row for row in conn.execute(query)} if days else {}
    fresh: list[dict[str, object]] = []
    found: dict[str, list[Past]] = {}
    for exercise, ones in days.items():
        for one in ones:
            row = kept.get((exercise, one.on))
            # Both ways through text, so that what is folded now and what is rebuilt later are the same to the bit.
            if row is not None:
                then = {"lifter": row.lifter, "aim": row.aim}
            else:
                then = {"lifter": noun_text(body), "aim": noun_text(folding.aim(planned, exercise, one.on))}
                fresh.append({"person": who, "exercise": exercise, "on": one.on, **then})
            past = Past(one, noun_of(Lifter, then["lifter"]), noun_of(Aim, then["aim"]))
            found.setdefault(exercise, []).append(past)
    put_new(conn, trained, fresh if keep else [])
    return {exercise: tuple(past) for exercise, past in found.items()}


def _usual(day: Session) -> float | None:
    loads = [one.load.kg for one in day.sets if not one.warmup and one.load is not None and one.load.kg is not None]
    return float(median(loads)) if loads else None
