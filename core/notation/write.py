"""PLAN -> TEXT, in the notation that ``read_plan`` reads: reading what was written gives the same plan (a law)."""

from collections.abc import Callable
from typing import Final

from core.evidence.exercises import EXERCISES
from core.model.plan import Plan, Planned, TrainingDay
from core.model.quantities import Tempo
from core.model.target import Aim
from core.notation.words import DAY_NAMES, MONTHS

NameExercise = Callable[[str], str]
"""An id -> the name to write, one that reads back as the same id."""

_PHASE_WORDS: Final = ("lower", "pause", "lift", "top")
_SHORT: Final = frozenset(half / 2 for half in range(20))
"""Seconds that the short form of a tempo can write: up to 9.5, in halves."""
_HELD: Final = frozenset({"hold", "carry"})
_MONTH_NAMES: Final = {number: name for name, number in MONTHS.items()}
"""The last name of each month in the table is its long one."""


def write_plan(plan: Plan, name: NameExercise) -> str:
    """The plan as a note on paper."""
    parts = ["\n".join([_day(day), *(line_of(item, name) for item in day.exercises)]) for day in plan.days]
    if plan.starts:
        parts.insert(0, f"from {plan.starts.day} {_MONTH_NAMES[plan.starts.month].capitalize()} {plan.starts.year}")
    if plan.easier_every:
        parts.append(f"every {plan.easier_every}{_ordinal(plan.easier_every)} week easier")
    return "\n\n".join(parts)


def line_of(item: Planned, name: NameExercise) -> str:
    """One exercise with its aim."""
    note = f" note: {item.note}" if item.note else ""
    text = f"{name(item.exercise)} {amount_of(item.exercise, item.aim)}, {', '.join(clauses_of(item.aim))}"
    return text[:1].upper() + text[1:] + ("." if note else "") + note


def amount_of(exercise: str, aim: Aim) -> str:
    """Sets and repetitions: 3x8-12, or 3x30-45 s of a hold."""
    low, high = aim.reps
    held = " s" if EXERCISES[exercise].pattern in _HELD else ""
    return f"{aim.sets}x{low}" + (f"-{high}" if high != low else "") + held


def clauses_of(aim: Aim) -> list[str]:
    """All else that an aim says, a clause each."""
    return [
        f"{_figure(aim.rir)} left",
        *_tempo(aim.tempo),
        *([f"rest {_duration(aim.rest_s)}"] if aim.rest_s is not None else []),
        ", then ".join(aim.ways) or "form only",
    ]


def _day(day: TrainingDay) -> str:
    return f"{DAY_NAMES[day.weekday]} {day.at:%H:%M} {day.title}".rstrip()


def _tempo(tempo: Tempo | None) -> list[str]:
    if tempo is None:
        return []
    known = [phase for phase in tempo if phase is not None]
    if len(known) == len(tempo) and all(phase in _SHORT for phase in known):
        return ["tempo " + "-".join(_figure(phase) for phase in known)]
    return [f"{word} {_figure(phase)} s" for word, phase in zip(_PHASE_WORDS, tempo, strict=True) if phase is not None]


def _duration(seconds: float) -> str:
    minutes = seconds / 60
    return f"{_figure(minutes)} min" if minutes >= 1 and minutes == round(minutes, 1) else f"{_figure(seconds)} s"


def _ordinal(number: int) -> str:
    return {1: "st", 2: "nd", 3: "rd"}.get(number, "th")


def _figure(value: float) -> str:
    return f"{value:g}"
