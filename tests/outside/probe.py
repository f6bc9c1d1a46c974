"""Asking the core as anyone can: a made-up history in, a forecast out. Computes nothing that it is compared to."""

from collections.abc import Sequence
from dataclasses import replace
from datetime import date, timedelta
from functools import cache
from typing import Final

from core.advising import advise
from core.evidence.exercises import EXERCISES
from core.model.acts import SetAct
from core.model.lifter import Lifter
from core.model.quantities import BODY, Load, Tempo
from core.model.target import Aim, Forecast, Question, Session, TargetSet

FIRST: Final = date(2026, 1, 5)
OFTEN: Final = 8
"""Sessions that make a lifter well known."""


def load_for(exercise: str, kg: float) -> Load:
    """A load of the exercise's own kind; on the body, zero is the body alone."""
    kind = EXERCISES[exercise].load_kind
    if kind == "body":
        return BODY if kg == 0 else Load("added", kg)
    return Load(kind, kg)


def steady(
    exercise: str, kg: float, reps: int, sessions: int = OFTEN, rir: float | None = 0.0, bodyweight: float = 80.0
) -> Question:
    """One set a session, always the same: so many repetitions at that load with that much said to be left."""
    aim = Aim(1, (max(1, reps - 2), reps + 2), 0.0 if rir is None else rir, None, 180.0, ("reps", "load"))
    act = SetAct(exercise, load_for(exercise, kg), reps, rir=rir, form="clean")
    past = tuple(Session(FIRST + timedelta(days=4 * n), (act,)) for n in range(sessions))
    on = FIRST + timedelta(days=4 * max(sessions, 1))
    return Question(Lifter("kg", bodyweight, "some"), exercise, aim, past, on)


def forecast(question: Question, sets: Sequence[TargetSet]) -> tuple[Forecast, ...]:
    """What the core expects of these sets, done in this order."""
    return advise(replace(question, consider=tuple(sets))).forecast


def to_failure(kg: float, exercise: str, rest_s: float = 180.0, tempo: Tempo | None = None) -> TargetSet:
    """One set with nothing left in reserve."""
    return TargetSet(load_for(exercise, kg), (1, 30), 0.0, tempo, rest_s)


@cache
def reps_after_single(exercise: str, share: float, bodyweight: float = 80.0, best: float = 100.0) -> float:
    """Repetitions to failure at a share of the heaviest single, for a lifter known by singles only."""
    asked = to_failure(best * share, exercise)
    return forecast(steady(exercise, best, 1, bodyweight=bodyweight), (asked,))[0].reps


def total(exercise: str, kg: float, known: int, sets: int, rest_s: float) -> list[float]:
    """Repetitions of several sets to failure with that rest, by a lifter who does ``known`` at that load fresh."""
    asked = [to_failure(kg, exercise, rest_s)] * sets
    return [each.reps for each in forecast(steady(exercise, kg, known), asked)]
