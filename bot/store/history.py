"""Kept sets as finished days: by exercise and day, each with the target that was in force."""

from collections import defaultdict
from collections.abc import Iterable
from datetime import date

from sqlalchemy import Connection, select

from bot.store.shapes import act_of, target_of
from bot.store.tables import act, target
from core.model.acts import SetAct
from core.model.target import Session, Target


def sessions(
    conn: Connection, who: int, after: date | None, before: date, exercises: Iterable[str] | None = None
) -> dict[str, tuple[Session, ...]]:
    """Kept sets by exercise and day, days in (after, before), each with the target last in force that day.

    The last, because a first load is settled by the first set, and an ache renews what is asked.
    """
    sets = select(act.c.exercise, act.c.on, act.c.body)
    sets = sets.where(act.c.person == who, act.c.kind == "set", act.c.state == "kept", act.c.on < before)
    given = select(target.c.exercise, target.c.on, target.c.body)
    given = given.where(target.c.person == who, target.c.on < before)
    if after is not None:
        sets, given = sets.where(act.c.on > after), given.where(target.c.on > after)
    if exercises is not None:
        names = sorted(exercises)
        sets, given = sets.where(act.c.exercise.in_(names)), given.where(target.c.exercise.in_(names))
    last = {(row.exercise, row.on): row.body for row in conn.execute(given.order_by(target.c.id))}
    days: dict[tuple[str, date], list[SetAct]] = defaultdict(list)
    for row in conn.execute(sets.order_by(act.c.on, act.c.place)):
        one = act_of(row.body)
        if isinstance(one, SetAct) and row.exercise is not None:
            days[row.exercise, row.on].append(one)
    found: dict[str, list[Session]] = defaultdict(list)
    for (exercise, on), done in days.items():
        found[exercise].append(Session(on, tuple(done), _target(last.get((exercise, on)))))
    return {exercise: tuple(past) for exercise, past in found.items()}


def _target(body: str | None) -> Target | None:
    return target_of(body) if body is not None else None
