"""How points are given: a table of rows, each with a plain sentence and its reason. The first row that fits decides.

A planned session is worth one when it is kept, and one more that its exercises share evenly, so that many small
exercises bring no more than few, and nobody's strength, kit or years of training enter. Knows no forecast and no store.
"""

from collections.abc import Callable
from dataclasses import dataclass
from typing import Final, Generic, TypeVar, get_args

from core.evidence.numbers import value
from core.model.challenge import Attempt, DayDone
from core.model.quantities import Way

T = TypeVar("T")
WAYS: Final = frozenset(get_args(Way))


@dataclass(frozen=True, slots=True)
class Row(Generic[T]):
    """One row of the scoring. ``share`` is the part of the chance's worth that is earned; None: it is no chance.

    ``numbers``: what it takes from core.evidence.numbers.
    """

    id: str
    sentence: str
    reason: str
    fits: Callable[[T], bool]
    share: Callable[[], float] | None
    numbers: tuple[str, ...] = ()


def full() -> float:
    """All of it."""
    return 1.0


def nothing() -> float:
    """None of it."""
    return 0.0


def most() -> float:
    """What doing every set is worth, when it was not as asked."""
    return value("challenge.otherwise_share")


def _done(attempt: Attempt) -> bool:
    return attempt.result in ("met", "stopped", "pushed")


EXERCISE: Final[tuple[Row[Attempt], ...]] = (
    Row(
        "exercise.stop",
        "An exercise that the service took off for the day is no chance.",
        "What must not be done cannot be missed.",
        lambda one: one.way == "stop",
        None,
    ),
    Row(
        "exercise.ache",
        "Where something aches, what was not done as asked is no chance.",
        "An ache costs nothing, and need not be hidden.",
        lambda one: one.ached and not _done(one),
        None,
        ("challenge.ache_days",),
    ),
    Row(
        "exercise.waits",
        "A report that the forecast finds beyond belief counts once the coach says yes; the like counts from then on.",
        "Points are for what was done; the coach knows the lifter, the forecast only the numbers.",
        lambda one: one.word == "waits",
        nothing,
        (
            "challenge.beyond_z",
            "challenge.beyond_reps",
        ),
    ),
    Row(
        "exercise.refused",
        "A report that the coach did not let stand brings nothing.",
        "The coach's word settles it.",
        lambda one: one.word == "no",
        nothing,
    ),
    Row(
        "exercise.step",
        "A met target in which one way went up is a step, worth the same whichever way it was.",
        "More repetitions, slower, further, less rest, cleaner or heavier: each is what was open to that lifter.",
        lambda one: one.result == "met" and one.way in WAYS,
        full,
    ),
    Row(
        "exercise.kept",
        "A met target that asked for the same or for less counts as much as a step.",
        "After years of training there are fewer steps to make; doing what was asked is open to all.",
        lambda one: one.result == "met",
        full,
    ),
    Row(
        "exercise.stopped",
        "Every set, each ended at the reserve that was asked, counts in full also when repetitions were short.",
        "Stopping where it was asked is doing as asked, and leaves nothing to be won by a repetition in words only.",
        lambda one: one.result == "stopped",
        full,
    ),
    Row(
        "exercise.pushed",
        "Every set, with less in reserve than was asked, counts as much as one that was stopped, and no more.",
        "Going closer to the limit than asked must not pay.",
        lambda one: one.result == "pushed",
        full,
    ),
    Row(
        "exercise.otherwise",
        "Every set, but loose, lighter or with more left than asked, counts nine tenths and is no step.",
        "The work was done; the step was not. Saying so costs so little that there is nothing to win by hiding it.",
        lambda one: one.result == "otherwise",
        most,
        (
            "challenge.otherwise_share",
            "challenge.short_z",
        ),
    ),
    Row(
        "exercise.part",
        "An exercise with sets left out, or with less than a third of what was asked in them, brings nothing.",
        "Otherwise one set of everything would do, or one repetition.",
        lambda one: one.result == "part",
        nothing,
        ("challenge.least_share",),
    ),
    Row(
        "exercise.none",
        "An exercise that was not done brings nothing.",
        "It was a chance, and was let go.",
        lambda _: True,
        nothing,
    ),
)


def _touched(day: DayDone) -> float:
    """The share of the day's exercises that were at least begun; those that were off do not count."""
    on = [one for one in day.attempts if one.way != "stop"]
    return sum(one.result != "none" for one in on) / len(on) if on else 0.0


def _kept(day: DayDone) -> bool:
    return bool(day.attempts) and _touched(day) >= value("challenge.kept_share")


SESSION: Final[tuple[Row[DayDone], ...]] = (
    Row(
        "session.held",
        "While targets are held after an alarm, no session is a chance.",
        "Getting well is no contest.",
        lambda day: day.held,
        None,
    ),
    Row(
        "session.stop",
        "A session of which every exercise was taken off for the day is no chance.",
        "Nobody should train against an ache for points.",
        lambda day: bool(day.attempts) and all(one.way == "stop" for one in day.attempts),
        None,
    ),
    Row(
        "session.waits",
        "A session that was not told while it happened counts once the coach says yes, for once or from then on.",
        "What is told as it is done is believed; what is told as a whole, or faster than it can be done, could be "
        "anything.",
        lambda day: day.word == "waits" and _kept(day),
        nothing,
        (
            "challenge.live_share",
            "challenge.late_h",
        ),
    ),
    Row(
        "session.refused",
        "A session that the coach did not let stand brings nothing, whether it waited or not.",
        "The coach's word settles it, also where the service saw nothing to ask about.",
        lambda day: day.word == "no" and _kept(day),
        nothing,
    ),
    Row(
        "session.kept",
        "A planned session is kept when half of its exercises or more were begun, on its day or where it was moved to.",
        "A session moved is a session kept.",
        _kept,
        full,
        ("challenge.kept_share",),
    ),
    Row(
        "session.ache",
        "A session that an ache cut short or called off is no chance.",
        "An ache costs nothing, and need not be hidden.",
        lambda day: any(one.ached for one in day.attempts),
        None,
        ("challenge.ache_days",),
    ),
    Row(
        "session.off",
        "A session called off before it began is no chance, once a week.",
        "A journey or a cold costs nothing; calling off every week is no way to the top.",
        lambda day: day.off,
        None,
        ("challenge.off_week",),
    ),
    Row(
        "session.missed",
        "A planned session that was not kept brings nothing.",
        "It was a chance, and was let go.",
        lambda _: True,
        nothing,
    ),
)


def row_for(rows: tuple[Row[T], ...], one: T) -> Row[T]:
    """The first row that fits; the last one always does."""
    return next(row for row in rows if row.fits(one))
