"""PLAN -> TEXT, in the notation that ``read_plan`` reads: reading what was written gives the same plan (a law)."""

from collections.abc import Callable

from core.model.plan import Plan, Planned, TrainingDay
from core.model.quantities import Tempo
from core.notation.clauses import MAX_REPS
from core.notation.words import DAY_NAMES

NameExercise = Callable[[str], str]
"""An id -> the name to write, one that reads back as the same id."""

_PHASE_WORDS = ("lower", "pause", "lift", "top")


def write_plan(plan: Plan, name: NameExercise) -> str:
    """The plan as a note on paper."""
    parts = ["\n".join([_day(day), *(_line(item, name) for item in day.exercises)]) for day in plan.days]
    if plan.easier_every:
        parts.append(f"{plan.easier_every - 1} weeks, then an easier one")
    return "\n\n".join(parts)


def _day(day: TrainingDay) -> str:
    return f"{DAY_NAMES[day.weekday]} {day.at:%H:%M} {day.title}".rstrip()


def _line(item: Planned, name: NameExercise) -> str:
    aim = item.aim
    low, high = aim.reps
    parts = [
        f"{name(item.exercise)} {aim.sets}x{low}" + (f"-{high}" if high != low else "") + _hold(high),
        f"{_figure(aim.rir)} left",
        *_tempo(aim.tempo),
        *([f"rest {_duration(aim.rest_s)}"] if aim.rest_s is not None else []),
        *([", then ".join(aim.ways)] if aim.ways else []),
    ]
    note = f" ({item.note})" if item.note else ""
    return ", ".join(parts) + note


def _hold(high: int) -> str:
    """Counts past the ceiling of repetitions are seconds of a hold, and must be written so to read back."""
    return " s" if high > MAX_REPS else ""


def _tempo(tempo: Tempo | None) -> list[str]:
    if tempo is None:
        return []
    return [f"{word} {_figure(phase)} s" for word, phase in zip(_PHASE_WORDS, tempo, strict=True) if phase is not None]


def _duration(seconds: float) -> str:
    minutes = seconds / 60
    return f"{_figure(minutes)} min" if minutes >= 1 and minutes == round(minutes, 1) else f"{_figure(seconds)} s"


def _figure(value: float) -> str:
    return f"{value:g}"
