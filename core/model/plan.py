"""The coach's plan: which days, which exercises, with which aim."""

from dataclasses import dataclass
from datetime import date, time

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

    ``easier_every`` n makes the last week of each block of n weeks easier; blocks are counted from ``starts``.
    """

    days: tuple[TrainingDay, ...] = ()
    starts: date | None = None
    easier_every: int | None = None

    def on(self, weekday: int) -> TrainingDay | None:
        """The training day of that weekday, if there is one."""
        return next((day for day in self.days if day.weekday == weekday), None)
