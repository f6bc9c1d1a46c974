"""The coach's plan: which days, which exercises, with which aim."""

from dataclasses import dataclass, replace
from datetime import date, time, timedelta

from core.model.target import Aim


@dataclass(frozen=True, slots=True)
class Planned:
    """One exercise of a training day. ``note`` is the coach's own cue, shown as it is."""

    exercise: str
    aim: Aim
    note: str | None = None


@dataclass(frozen=True, slots=True)
class TrainingDay:
    """A day of the week (Monday is 0) with its local time and its exercises in order."""

    weekday: int
    at: time
    title: str
    exercises: tuple[Planned, ...]


@dataclass(frozen=True, slots=True)
class Plan:
    """A week that repeats, Monday first. No days: nothing is planned yet.

    ``easier_every`` n makes the last week of each block of n weeks easier. Weeks go from Monday to Sunday and are
    counted from the one with ``starts`` in it.
    """

    days: tuple[TrainingDay, ...] = ()
    starts: date | None = None
    easier_every: int | None = None

    def on(self, weekday: int) -> TrainingDay | None:
        """The training day of that weekday, if there is one."""
        return next((day for day in self.days if day.weekday == weekday), None)

    def week_number(self, on: date) -> int | None:
        """Which week of the plan that day is in, from 1; None where weeks are not counted or have not begun."""
        if self.starts is None:
            return None
        weeks = (_monday(on) - _monday(self.starts)).days // 7
        return weeks + 1 if weeks >= 0 else None

    def is_easier(self, on: date) -> bool:
        """Whether that day is in an easier week."""
        week = self.week_number(on)
        return self.easier_every is not None and week is not None and week % self.easier_every == 0

    def next_easier(self, on: date) -> date | None:
        """The Monday of the first easier week that begins on that day or later."""
        if self.starts is None or self.easier_every is None:
            return None
        from_here = max(_monday(self.starts), _monday(on - timedelta(days=1)) + timedelta(weeks=1))
        weeks = (from_here + timedelta(weeks=n) for n in range(self.easier_every + 1))
        return next((monday for monday in weeks if self.is_easier(monday)), None)


def in_week_of(day: TrainingDay, *, easier: bool) -> TrainingDay:
    """The day with aims that say whether its week is an easier one."""
    items = (replace(item, aim=replace(item.aim, easier=easier)) for item in day.exercises)
    return replace(day, exercises=tuple(items))


def _monday(on: date) -> date:
    return on - timedelta(days=on.weekday())
