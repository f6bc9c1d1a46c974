"""Kept sets as finished days: by exercise and day, each with the target that was in force."""

from collections import defaultdict
from collections.abc import Iterable
from datetime import date
from typing import Final

from sqlalchemy import Connection, bindparam, select

from bot.store.shapes import act_of, target_of
from bot.store.tables import act, target
from core.model.acts import SetAct
from core.model.target import Session, Target

_SETS: Final = (
    select(act.c.exercise, act.c.on, act.c.body)
    .where(act.c.person == bindparam("who"), act.c.kind == "set", act.c.state == "kept")
    .where(act.c.on > bindparam("after"), act.c.on < bindparam("before"))
    .order_by(act.c.on, act.c.place)
)
_SETS_OF: Final = _SETS.where(act.c.exercise.in_(bindparam("names", expanding=True)))
_GIVEN: Final = (
    select(target.c.exercise, target.c.on, target.c.body)
    .where(target.c.person == bindparam("who"), target.c.on > bindparam("after"), target.c.on < bindparam("before"))
    .order_by(target.c.id)
)
_GIVEN_OF: Final = _GIVEN.where(target.c.exercise.in_(bindparam("names", expanding=True)))


def sessions(
    conn: Connection, who: int, after: date | None, before: date, exercises: Iterable[str] | None = None
) -> dict[str, tuple[Session, ...]]:
    """Kept sets by exercise and day, days in (after, before), each with the target last in force that day.

    The last, because a first load is settled by the first set, and an ache renews what is asked.
    """
    names = sorted(exercises) if exercises is not None else []
    span = {"who": who, "after": after or date.min, "before": before} | ({"names": names} if names else {})
    sets, given = (_SETS_OF, _GIVEN_OF) if exercises is not None else (_SETS, _GIVEN)
    if exercises is not None and not names:
        return {}
    last = {(row.exercise, row.on): row.body for row in conn.execute(given, span)}
    days: dict[tuple[str, date], list[SetAct]] = defaultdict(list)
    for row in conn.execute(sets, span):
        one = act_of(row.body)
        if isinstance(one, SetAct) and row.exercise is not None:
            days[row.exercise, row.on].append(one)
    found: dict[str, list[Session]] = defaultdict(list)
    for (exercise, on), done in days.items():
        found[exercise].append(Session(on, tuple(done), _target(last.get((exercise, on)))))
    return {exercise: tuple(past) for exercise, past in found.items()}


def _target(body: str | None) -> Target | None:
    return target_of(body) if body is not None else None
