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


@dataclass(frozen=True, slots=True)
class Bound:
    """What holds beside the rows."""

    id: str
    sentence: str
    reason: str
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
        "A report that the forecast finds beyond belief counts once the coach says yes.",
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
        "Every set, but loose, lighter or with more left than asked, counts three quarters and is no step.",
        "The work was done; the step was not. Saying so costs little, so that it is said.",
        lambda one: one.result == "otherwise",
        most,
        (
            "challenge.otherwise_share",
            "challenge.short_z",
        ),
    ),
    Row(
        "exercise.part",
        "An exercise with sets left out brings nothing.",
        "Otherwise one set of everything would do.",
        lambda one: one.result == "part",
        nothing,
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

BOUNDS: Final[tuple[Bound, ...]] = (
    Bound(
        "bound.evenly",
        "The exercises of a session share one session's worth evenly.",
        "Nobody gains by many small exercises.",
    ),
    Bound(
        "bound.exercise_week",
        "One exercise is a chance at most three times a week, the first three.",
        "Nobody gains by doing the easiest one every day.",
        ("challenge.exercise_week",),
    ),
    Bound(
        "bound.once",
        "A day counts once for each exercise, however often it is told.",
        "The same act never counts twice.",
    ),
    Bound(
        "bound.planned",
        "Only what the coach planned is a chance.",
        "Extra sessions, real or not, bring nothing.",
    ),
    Bound(
        "bound.hundred",
        "Points are what was earned of every hundred that could be.",
        "Two sessions a week or five, from the start or from the third week: the same diligence, the same points.",
    ),
    Bound(
        "bound.joined",
        "Chances begin the day after joining; pauses and days after leaving hold none; coming back keeps what was.",
        "Nothing done before is won by joining later, and leaving wipes no slate.",
    ),
    Bound(
        "bound.few",
        "A place needs as many chances as two full sessions at least.",
        "One good day is no season.",
        ("challenge.least_sessions",),
    ),
    Bound(
        "bound.ties",
        "Equal points share a place.",
        "There is nothing honest to tell them apart by.",
    ),
    Bound(
        "bound.closed",
        "What is changed after a week's close does not move that week; the coach's word still does.",
        "A closed week is a closed week.",
    ),
)

UNSEEN: Final[tuple[Bound, ...]] = (
    Bound(
        "unseen.patient",
        "Someone who makes a session up and sits through it with the phone, set by set in the time that it takes.",
        "Each such set is what a diligent beginner tells as well: just what was asked. A rule against exact sets would "
        "punish those who do as they are asked. The coach can take the session out of the count.",
    ),
    Bound(
        "unseen.form",
        "Loose form, or a range cut short, that is not said.",
        "Nobody sees the set. Saying so costs a quarter of the exercise, so that it is said.",
    ),
    Bound(
        "unseen.small",
        "A repetition or two more than were done.",
        "A forecast is not that sharp; but a set that was stopped where asked counts in full, so that it wins nothing.",
    ),
    Bound(
        "unseen.ache",
        "An ache that is said and not felt, or a session called off for no reason.",
        "What is no chance lowers nobody, so that a hundred can be kept on few sessions; the standings show how few. "
        "An ache that had to be proven would be hidden.",
    ),
)
"""What the scoring cannot see, and why nothing is made up against it."""


def row_for(rows: tuple[Row[T], ...], one: T) -> Row[T]:
    """The first row that fits; the last one always does."""
    return next(row for row in rows if row.fits(one))
