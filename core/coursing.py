"""The course of one exercise: the estimate after each session, with its span, and which way moved when.

Beside foresight: it folds the same days in the same way and asks what could be lifted once after each of them.
"""

from typing import Final

from core.advising import absorb, begin
from core.flow.steps import step_of
from core.foresight import standing
from core.model.acts import SetAct
from core.model.course import Course, CoursePoint
from core.model.lifter import Lifter
from core.model.quantities import Way
from core.model.target import Aim, Session, Target
from core.review.seen import met

Past = tuple[Lifter, Aim, Session]
"""A finished day with the body and the aim of that day."""

SHOWN: Final = 60
"""Sessions in a picture, the last ones; more cannot be told apart on a phone. Choice of ours."""


def course_of(exercise: str, title: str, lifter: Lifter, past: tuple[Past, ...]) -> Course | None:
    """The course up to the last session; None without one."""
    if not past:
        return None
    progress = begin(past[0][0], exercise)
    points: list[CoursePoint] = []
    in_reps = False
    for place, (body, aim, session) in enumerate(past):
        progress = absorb(progress, body, aim, session)
        if len(past) - place > SHOWN:
            continue
        found = standing(progress, body)
        if found is not None:
            in_reps = found.in_reps
            points.append(CoursePoint(session.on, found.estimate, found.low, found.high, _way(exercise, session)))
    return Course(title, lifter.unit, in_reps, tuple(points)) if points else None


def _way(exercise: str, session: Session) -> Way | None:
    step = step_of(exercise, session.target, session.sets, lambda sets, target: _met(session, sets, target))
    return step.way if step is not None else None  # type: ignore[return-value]


def _met(session: Session, sets: tuple[SetAct, ...], target: Target) -> bool:
    return met(Session(session.on, sets, target))
