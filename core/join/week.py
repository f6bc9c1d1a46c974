"""A lifter's own changes of the weekly plan: days in, out, moved. Exercises stay as the coach wrote them."""

from dataclasses import replace
from datetime import time
from typing import Final

from core.model.plan import Plan, TrainingDay

USUAL_TIME: Final = time(18, 0)
"""For a training day said without a time; the receipt says so. Choice of ours."""


def without(plan: Plan, weekday: int) -> Plan:
    """The plan without that day."""
    return replace(plan, days=tuple(day for day in plan.days if day.weekday != weekday))


def moved(plan: Plan, weekday: int, to: int, at: time | None) -> Plan | None:
    """The plan with a day moved to another, or to another time. None: no such day, or the other one is taken."""
    day = plan.on(weekday)
    if day is None or (to != weekday and plan.on(to) is not None):
        return None
    there = replace(day, weekday=to, at=at or day.at)
    return replace(plan, days=_in_order((*without(plan, weekday).days, there)))


def training_on(plan: Plan, days: tuple[tuple[int, time | None], ...], title: str) -> Plan | None:
    """A plan for those days. A plan with exercises keeps its days and takes the times; None: its days are others."""
    written = any(day.exercises for day in plan.days)
    if written and {day for day, _ in days} != {day.weekday for day in plan.days}:
        return None
    made = []
    for weekday, at in days:
        day = plan.on(weekday) or TrainingDay(weekday, at or USUAL_TIME, title, ())
        made.append(replace(day, at=at or day.at))
    return replace(plan, days=_in_order(tuple(made)))


def _in_order(days: tuple[TrainingDay, ...]) -> tuple[TrainingDay, ...]:
    return tuple(sorted(days, key=lambda day: day.weekday))
